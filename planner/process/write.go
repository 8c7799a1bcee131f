package process

import (
	"fmt"
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/numbers/dial"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// Done is what an operation as written really takes away, graduations and all.
type Done struct {
	Outer, Inner solid.Curve
	Keep         *[2]float64
	Flat         *shape.FlatCut  // of a flat part; nil where it takes just what its task says
	Beside       []plan.FlatHole // holes beside the axis, or in a flat part, as they then are
}

// Apply takes it off.
func (d Done) Apply(b solid.Body) solid.Body {
	if !d.Outer.Empty() {
		b = b.TurnTo(d.Outer)
	}
	if !d.Inner.Empty() {
		b = b.BoreTo(d.Inner)
	}
	if d.Keep != nil {
		b = b.Keep(d.Keep[0], d.Keep[1])
	}
	return b
}

// page writes one operation out: it keeps the dials' noughts and collects cuts and card lines.
type page struct {
	c     *Context
	j     Job
	op    plan.Operation
	done  Done
	tool  partspec.Tool
	rate  Rate             // under the caps of the holding
	on    partspec.Machine // where it is done
	head  int64            // count of a dividing head
	turns []stand          // where each hole of a ring is turned to by an upright one
	most  float64          // depth of one pass, as light as the holding wants it
}

func (c *Context) page(j Job, t Task, w Way, title string) *page {
	w.Rate.glued = j.Glued
	if w.Rate.kind != 0 {
		w.Rate = c.capped(w.Rate, j.Caps...)
	}
	most := w.Rate.DepthMM * j.Light
	if w.SkinMM > 0 {
		most = w.Rate.DepthMM
	}
	if w.Rate.kind == cutGroove || w.Rate.kind == cutPart || w.SkinMM > 0 { // a blade cuts its full width, a first cut goes under the skin: light cuts are a finer feed, F being in proportion to f^(1-mc)
		w.Rate.FeedMM = math.Floor(1000*w.Rate.FeedMM*math.Pow(j.Light, 1/(1-c.Part.Material.Mc))) / 1000
	}
	p := &page{c: c, j: j, rate: w.Rate, tool: w.Tool, on: c.MachineFor(w.Machine), most: most}
	p.op = plan.Operation{ID: t.ID, Feature: t.Feature, Process: t.By(w), Title: title,
		Tool: plan.ToolRef{ID: w.Tool.ID(), Text: toolText(w.Tool, w.SizeMM), SizeMM: w.SizeMM},
		RPM:  w.Rate.RPM, WantedRPM: w.Rate.WantedRPM, SpeedWhy: w.Rate.Why, FeedMM: w.Rate.FeedMM, DepthMM: p.most,
		ForceN: math.Ceil(w.Force(j.Light)), Minutes: w.Minutes}
	p.why(w.Rate.Text, "C-02")
	return p
}

func toolText(t partspec.Tool, sizeMM float64) string {
	if sizeMM > 0 && t.Kind != partspec.BoringHead && t.Kind != partspec.FlyCutter { // those are set to a size, and have none
		return fmt.Sprintf("%s mm %s", units.Decimal(sizeMM, 3), singular(t))
	}
	if t.Name == string(t.Kind) {
		return singular(t)
	}
	return t.Name
}

func singular(t partspec.Tool) string {
	word, ok := map[partspec.ToolKind]string{
		partspec.Drills: "drill", partspec.Reamers: "reamer", partspec.CentreDrill: "centre drill", partspec.Turning: "turning tool", partspec.Boring: "boring bar",
		partspec.RecessTool: "recess tool", partspec.Parting: "parting tool", partspec.Grooving: "grooving tool", partspec.RoundNose: "round-nosed tool", partspec.ChamferTool: "chamfer tool",
		partspec.ThreadExternal: "outside threading tool", partspec.ThreadInternal: "inside threading tool", partspec.KnurlTool: "knurling tool",
		partspec.EndMill: "end mill", partspec.BallNose: "ball-nosed cutter", partspec.FlyCutter: "fly-cutter", partspec.BoringHead: "boring head",
		partspec.HoleSaw: "hole saw", partspec.Counterbores: "counterbore", partspec.Countersink: "countersink", partspec.EdgeFinder: "edge finder", partspec.Scriber: "scriber and punch",
		partspec.Saw: "hacksaw", partspec.Files: "files",
	}[t.Kind]
	if ok && (t.Name == string(t.Kind) || t.Kind == partspec.Drills || t.Kind == partspec.Reamers) {
		return word
	}
	return t.Name
}

func (p *page) why(text, rule string) {
	if text != "" && p.c.Rules.Has(rule) {
		p.op.Why = append(p.op.Why, plan.Reason{Text: text, Rule: rule})
	}
}

func (p *page) note(format string, a ...any) {
	p.op.Notes = append(p.op.Notes, fmt.Sprintf(format, a...))
}

// toChuck is +1 when going towards the headstock lowers Z.
func (p *page) toChuck() float64 {
	if p.j.Free == partspec.Right {
		return -1
	}
	return 1
}

func (p *page) dial(name string) partspec.Dial {
	d, _ := p.on.Dial(name)
	return d
}

// radial is how far one graduation of the cross dial moves the tool, in radius.
func radial(d partspec.Dial) float64 { return Moved(d, d.Graduation) }

// Moved is how far a slide moves by what its dial counts as such a figure: half of it where the dial reads diameters.
func Moved(d partspec.Dial, figure units.Dimension) float64 {
	if d.Reads == partspec.ReadsDiameter {
		return float64(figure.Value) / 2
	}
	return float64(figure.Value)
}

// crossZero sets the cross dial to nought on a diameter.
func (p *page) crossZero(diameter float64, outward bool, how string) {
	p.op.Zeros = append(p.op.Zeros, plan.Zero{Dial: "cross", ReferenceMM: diameter, Outward: outward, How: how})
}

// saddleZero sets the saddle to nought on the setup's datum face.
func (p *page) saddleZero() {
	z := plan.Zero{Dial: "saddle", ReferenceMM: p.j.DatumZ, How: "touch the faced end"}
	if p.tool.Kind == partspec.RoundNose { // its side touches; its middle is what counts
		z.ReferenceMM -= p.toChuck() * float64(p.tool.Radius)
		z.How = "touch the faced end with the side of the nose"
	}
	if p.j.Seated {
		z.How = "level with the high points of the seat's rim, the work turned by hand"
	}
	p.op.Zeros = append(p.op.Zeros, z)
}

// touch is the outside radius that a tool can be set on for a cut between two places: there if it is a plain cylinder, else on the nearest one that is, else on
// the nearest corner.
func (p *page) touch(z0, z1 float64) float64 {
	outer := p.j.Before.Outer
	r := outer.Greatest(z0, z1)
	if r-outer.Least(z0, z1) < sizeNoise {
		return r
	}
	off := math.Inf(1)
	for _, piece := range outer.Pieces() {
		plain := !piece.IsArc() && math.Abs(piece.R1-piece.R0) < sizeNoise && piece.Z1-piece.Z0 > touchLength
		if d := math.Max(0, math.Max(piece.Z0-z1, z0-piece.Z1)); plain && d < off {
			off, r = d, piece.R0
		}
	}
	if !math.IsInf(off, 1) {
		return r
	}
	for _, piece := range outer.Pieces() {
		for _, corner := range []solid.Point{{Z: piece.Z0, R: piece.R0}, {Z: piece.Z1, R: piece.R1}} {
			if d := math.Max(0, math.Max(corner.Z-z1, z0-corner.Z)); d < off {
				off, r = d, corner.R
			}
		}
	}
	return r
}

// touchLength is the shortest cylinder that a tool is set on. Common practice, no source.
const touchLength = 0.5

func (p *page) zero(name string) plan.Zero {
	for _, z := range p.op.Zeros {
		if z.Dial == name {
			return z
		}
	}
	for _, z := range p.j.Table { // set earlier in the setting
		if z.Dial == name {
			return z
		}
	}
	return plan.Zero{}
}

// cross gives the count for a radius so that metal stays on (rule C-11), and the radius really reached.
func (p *page) cross(r float64) (marks int64, reached float64) {
	z, g := p.zero("cross"), radial(p.dial("cross"))
	travel := z.ReferenceMM/2 - r
	if z.Outward {
		travel = -travel
	}
	marks = p.whole(travel / g)
	return marks, p.radiusAt(marks)
}

func (p *page) radiusAt(marks int64) float64 {
	z, g := p.zero("cross"), radial(p.dial("cross"))
	if z.Outward {
		return z.ReferenceMM/2 + float64(marks)*g
	}
	return z.ReferenceMM/2 - float64(marks)*g
}

// whole rounds a travel in graduations down, so that metal stays on; without the rule, to the nearest.
func (p *page) whole(marks float64) int64 {
	if !p.c.Rules.Has("C-11") {
		return int64(math.Round(marks))
	}
	return int64(math.Floor(marks + markNoise))
}

// markNoise lets a travel that is a whole number of graduations but for rounding count as whole.
const markNoise = 1e-6

// saddle gives the count nearest to a position, and the position really reached.
func (p *page) saddle(z float64) (marks int64, reached float64) {
	zero, g := p.zero("saddle"), float64(p.dial("saddle").Graduation.Value)
	marks = int64(math.Round((z - zero.ReferenceMM) * p.toChuck() / g))
	return marks, p.positionAt(marks)
}

// saddleShort gives the last count that does not pass a position on the way to the headstock.
func (p *page) saddleShort(z float64) (marks int64, reached float64) {
	zero, g := p.zero("saddle"), float64(p.dial("saddle").Graduation.Value)
	marks = int64(math.Floor((z-zero.ReferenceMM)*p.toChuck()/g + markNoise))
	return marks, p.positionAt(marks)
}

func (p *page) positionAt(marks int64) float64 {
	return p.zero("saddle").ReferenceMM + p.toChuck()*float64(marks)*float64(p.dial("saddle").Graduation.Value)
}

func at(cross, saddle int64) []plan.Reading {
	return []plan.Reading{{Dial: "cross", Graduations: cross}, {Dial: "saddle", Graduations: saddle}}
}

// cut adds a movement.
func (p *page) cut(name string, from, to []plan.Reading, m *plan.Measured) {
	p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: name, From: from, To: to, ToMeasure: m})
}

// line adds a line to the dial card.
func (p *page) line(label, dialName string, marks int64, makes, note string, byMeasure bool) {
	p.op.Card = append(p.op.Card, p.lineOf(label, dialName, marks, makes, note, byMeasure))
}

// lineOf is one line of a dial card.
func (p *page) lineOf(label, dialName string, marks int64, makes, note string, byMeasure bool) plan.Line {
	d := p.dial(dialName)
	l := plan.Line{Label: label, Dial: dialName, Total: marks, Marks: marks, Reads: string(d.Reads), Makes: makes, Note: note, ByMeasure: byMeasure}
	if perTurn := int64(p.ring(dialName).Marks()); perTurn > 0 && marks >= 0 {
		l.Counted, l.Turns, l.Marks = true, marks/perTurn, marks%perTurn
	}
	l.Reading = units.Length(float64(marks) * float64(d.Graduation.Value)).Text(d.Graduation.Unit())
	return l
}

// unit is the unit the part is drawn in.
func (c *Context) unit() units.Unit {
	if c.Part.Inches {
		return units.InInch
	}
	return units.InMM
}

// both writes a length in the drawing's unit, and in the dial's when that differs.
func (p *page) both(mm float64, dialName string) string {
	l := units.Length(mm).Round(3)
	if p.dial(dialName).Graduation.Unit() != p.c.unit() && p.c.Rules.Has("C-10") {
		return l.Both(p.c.unit())
	}
	return l.Text(p.c.unit())
}

func (p *page) diameter(r float64) string { return "Ø" + p.both(2*r, "cross") }

// aim is the last setting for a size between limits: on the dial where two graduations fit into the limits, else by measuring.
type aim struct {
	marks   int64
	radius  float64
	measure *plan.Measured
}

// aimAt finds the setting for a diameter between low and high.
func (p *page) aimAt(low, high float64) aim {
	z := p.zero("cross")
	kind := dial.Outside
	if z.Outward {
		kind = dial.Bore
	}
	ring := p.ring("cross")
	promise, err := dial.Promise(ring, kind, units.Length(high-low), true)
	if err == nil && (promise.Promised || !p.c.Rules.Has("C-12")) && (high-low > trialWidth || !p.c.Rules.Has("C-15")) {
		want := dial.Want{Kind: kind, From: units.Length(z.ReferenceMM), To: units.Length((low + high) / 2), Limits: units.Limits{Low: units.Length(low), High: units.Length(high)}}
		if s, err := dial.Set(ring, want); err == nil && p.c.Rules.Has("C-11") && (s.Standing == dial.OnSize || s.Standing == dial.Inside) {
			return aim{int64(s.Graduations), float64(s.Made) / 2, nil}
		}
	}
	// Metal stays on: the dial's figure is a guide, the size comes from measuring.
	marks, _ := p.cross((low + high) / 4)
	if len(promise.Ways) > 0 {
		ways := make([]string, len(promise.Ways))
		for i, way := range promise.Ways {
			ways[i] = string(way)
		}
		p.note("The cross dial is too coarse for these limits: %s.", strings.Join(ways, "; or "))
	}
	return aim{marks, (low + high) / 4, &plan.Measured{What: "diameter", LowMM: low, HighMM: high}}
}

// ring is a dial of the machine as the dial sums know it.
func (p *page) ring(name string) dial.Dial {
	d := p.dial(name)
	reads := dial.ReadsRadius // a slide's own travel
	switch d.Reads {
	case partspec.ReadsDiameter:
		reads = dial.ReadsDiameter
	case partspec.ReadsIndicator:
		reads = dial.ReadsIndicator
	}
	return dial.Dial{Name: name, Graduation: d.Graduation.Value, PerTurn: d.PerTurn.Value, Reads: reads, Backlash: d.Backlash}
}

// trialWidth is the tolerance at and below which a trial cut is measured (rule C-15).
const trialWidth = 0.05

// dialled is the most depth of a pass that stays under the most even when the dial rounds it up by a graduation.
func (p *page) dialled() float64 {
	if g := radial(p.dial("cross")); p.most > 2*g {
		return p.most - g
	}
	return p.most
}

// passes splits a depth into equal passes no deeper than most.
func passes(depth, most float64) int {
	if depth <= 0 {
		return 1
	}
	return int(math.Max(1, math.Ceil(depth/most-passNoise)))
}

// passNoise lets a depth that is a whole number of passes but for rounding count as whole.
const passNoise = 1e-6

func (p *page) finish() (plan.Operation, Done) {
	p.onHead()
	p.op.Passes = len(p.op.Cuts)
	return p.op, p.done
}
