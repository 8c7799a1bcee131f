package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
	"catchplate/planner/tables"
)

// The chains that only flat parts have.
const (
	ChainSpot Chain = "spot" // spotted, drilled and reamed like the holes of a pattern
	ChainHead Chain = "head" // bored by a boring head
	ChainSink Chain = "sink" // a flat floor round a hole that is there: counterbored
	ChainTurn Chain = "turn" // an outline turned
	ChainFile Chain = "file" // an outline filed
)

// FlatChains lists how a bore of a flat part can be made here, and why the other ways fall out.
func (c *Context) FlatChains(f *partspec.Bore) (chains []Chain, lacking []string) {
	why := c.spotLack(f)
	if why == "" {
		return []Chain{ChainSpot}, nil
	}
	lacking = append(lacking, why)
	if f.FlatBottom {
		if why = c.SunkLack(f); why == "" {
			chains = append(chains, ChainSink)
		} else {
			lacking = append(lacking, why)
		}
	}
	if why = c.headLack(f); why == "" {
		chains = append(chains, ChainHead)
	} else {
		lacking = append(lacking, why)
	}
	if c.Lathe.Kind == "" {
		return chains, append(lacking, fmt.Sprintf("boring %s on a lathe: none is owned", f.Name))
	}
	sub := c.centred(float64(f.At.X.Value), float64(f.At.Y.Value))
	for _, h := range sub.Holes {
		if h.Name == f.Name {
			list, lack := sub.Chains(h)
			chains, lacking = append(chains, list[:min(1, len(list))]...), append(lacking, lack...)
		}
	}
	return chains, lacking
}

// asHoles is a bore as a pattern of one hole.
func asHoles(f *partspec.Bore) *partspec.Holes {
	return &partspec.Holes{FeatureHead: f.FeatureHead, Make: partspec.PlainHole, Places: []partspec.Point{*f.At}, Diameter: f.Diameter, From: f.From, Through: f.Through, Depth: f.Depth}
}

// spotLack says why a bore is not drilled, or drilled and reamed, like a hole of a pattern.
func (c *Context) spotLack(f *partspec.Bore) string {
	if f.FlatBottom {
		return fmt.Sprintf("drilling %s: a drill leaves no flat floor", f.Name)
	}
	s, lacking := c.spotted(asHoles(f))
	if len(lacking) > 0 {
		return lacking[0]
	}
	off := float64(tables.PlaceError(tables.ByDrill))
	if s.marked() {
		off += c.markError()
	} else {
		off += c.graduationOff() + dialDoubt
	}
	if within := c.placeWithin(s.Holes); within > 0 && within < off {
		return fmt.Sprintf("drilling %s: it may lie %.3f off its place, a drill lands within %.3f", f.Name, within, off)
	}
	if to, within := c.bound(f.Name); to != "" && within < 2*c.drilledOff(s) {
		return fmt.Sprintf("drilling %s: it may lie %.3f off its place from %s, two drilled holes lie within %.3f of where they should from each other", f.Name, within, to, 2*c.drilledOff(s))
	}
	return ""
}

// bound is the closest position that a relation binds a feature by, to what and how far off it may lie radially; no name when none does.
func (c *Context) bound(name string) (to string, within float64) {
	for _, r := range c.Part.Relations {
		other := r.To.Feature
		switch {
		case r.Kind != partspec.Position && r.Kind != partspec.Concentric:
			continue
		case r.To.Feature == name:
			other = r.Of.Feature
		case r.Of.Feature != name:
			continue
		}
		if half := float64(r.Within) / 2; to == "" || half < within {
			to, within = other, half
		}
	}
	return to, within
}

// drilledOff is how far a drilled hole may lie off its place, radially, beside what all that is made in its setting has off alike.
func (c *Context) drilledOff(s spotted) float64 {
	off := float64(tables.PlaceError(tables.ByDrill))
	if s.marked() {
		return off + c.markError()
	}
	return off + math.Sqrt2*c.placesOff(s)
}

// What the boring head leaves: roughing for finishing on diameter, and how deep its passes go on radius (cutting table, rows of boring).
const (
	headLeaves = 0.6
	headDepth  = 0.4
)

// headLack says why a bore is not made by a boring head on the mill.
func (c *Context) headLack(f *partspec.Bore) string {
	d := float64(f.Diameter.High)
	switch {
	case !c.coordinates():
		return fmt.Sprintf("boring %s on a mill: none with dials x, y and quill (or z) is owned", f.Name)
	case !f.Through:
		return fmt.Sprintf("boring %s by a boring head: it is blind", f.Name)
	}
	if why := c.unmeasurable(f.Name, f.Diameter, insideCheck); why != "" {
		return "boring " + why
	}
	best := fmt.Sprintf("boring %s on the mill: no boring head is owned", f.Name)
	for _, t := range c.tools(partspec.BoringHead) {
		switch _, open := c.headDrill(f, t); {
		case d > float64(t.MostSwing)+sizeNoise:
			best = fmt.Sprintf("boring %s on the mill: Ø%.1f is over the %.1f that the %s swings", f.Name, d, float64(t.MostSwing), t.Name)
		case open == 0:
			best = fmt.Sprintf("boring %s on the mill: no drill owned opens it for the %s, which wants Ø%.1f", f.Name, t.Name, float64(t.LeastSwing))
		case float64(t.Reach) > 0 && float64(t.Reach) < c.Length+through:
			best = fmt.Sprintf("boring %s on the mill: the %s reaches %.1f deep, %.1f is wanted", f.Name, t.Name, float64(t.Reach), c.Length+through)
		default:
			return ""
		}
	}
	return best
}

// headDrillMost is the largest drill that opens a bore for a boring head: what a small mill and a few clamps bear (rule A-25; the figure is ours).
const headDrillMost = 20.0

// headDrill is the largest drill that leaves a boring head its cut and lets it in; 0 when there is none.
func (c *Context) headDrill(f *partspec.Bore, head partspec.Tool) (partspec.Tool, float64) {
	var tool partspec.Tool
	best := 0.0
	for _, t := range c.tools(partspec.Drills) {
		for _, s := range t.Sizes {
			if v := float64(s); v <= float64(f.Diameter.Low)-boreLeave && v >= float64(head.LeastSwing)-sizeNoise && v > best && (v <= headDrillMost || best == 0) {
				tool, best = t, v
			}
		}
	}
	return tool, best
}

func (c *Context) head(f *partspec.Bore) partspec.Tool {
	for _, t := range c.tools(partspec.BoringHead) {
		if _, open := c.headDrill(f, t); open > 0 && float64(f.Diameter.High) <= float64(t.MostSwing)+sizeNoise {
			return t
		}
	}
	return partspec.Tool{}
}

// flatBore makes the tasks of a bore of a flat part by the chain chosen for it.
func (c *Context) flatBore(f *partspec.Bore) []Task {
	if f.AsSupplied {
		return nil
	}
	chain, ok := c.Bored[f.Name]
	switch {
	case !ok:
		_, lacking := c.FlatChains(f)
		return []Task{{Op: shape.Op{ID: f.ID() + "/bore", Feature: f.Name, Process: plan.BoreHead}, Lacking: lacking}}
	case chain == ChainSpot:
		return c.pattern(asHoles(f))
	case chain == ChainHead:
		return c.headHole(f)
	case chain == ChainSink:
		return []Task{c.sunkBore(f)}
	}
	return c.latheHole(f)
}

// headHole makes the tasks of a bore made by a boring head: drilled by the dials, roughed, and finished to measure.
func (c *Context) headHole(f *partspec.Bore) []Task {
	head := c.head(f)
	tool, open := c.headDrill(f, head)
	s := spotted{Holes: asHoles(f), by: partspec.LocateDial, from: []partspec.End{f.From, f.From.Other()}, columns: []column{{0, c.Length}}, drill: tool, drillMM: open, reamMM: float64(f.Diameter.Mid())}
	d := float64(f.Diameter.Mid())
	tasks := []Task{c.drillHoles(s)}
	tasks[0].Place = 0 // the head bores where the spindle stands
	if d-headLeaves > open+sizeNoise {
		tasks = append(tasks, c.headTask(s, f, head, "rough", open, d-headLeaves))
		open = d - headLeaves
	}
	return append(tasks, c.headTask(s, f, head, "bore", open, d))
}

// headTask bores from one diameter to another.
func (c *Context) headTask(s spotted, f *partspec.Bore, head partspec.Tool, verb string, from, to float64) Task {
	t := c.holesTask(s, verb, plan.BoreHead, to, 0)
	t.Depth, t.Place = (to-from)/2, 0
	finish := verb == "bore"
	if finish {
		t.Stage, t.Makes, t.Tight, t.Round = shape.Finishing, []string{f.Name}, float64(f.Diameter.Width()), c.roundness(f.Diameter)
		t.Place = c.placeWithin(s.Holes)
	}
	for _, w := range c.holeWays(s, true) {
		w.Tool, w.SizeMM, w.ForceAt, w.Ordinary = head, to, to/2, true
		w.Rate = c.rateOn(partspec.Mill, cutBore, to, head)
		w.deep(c, (to-from)/2)
		w.Span = s.span(w.End, c.Length+through)
		n := passes((to-from)/2, headDepth)
		w.Minutes = minutesADrill + float64(n+1)*(c.Length/(w.Rate.FeedMM*w.Rate.RPM)+minutesAPass)
		if finish {
			w.Minutes += minutesTrial
		}
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeHead(s, f, t, w, from, to, finish, j) }
		t.Ways = append(t.Ways, w)
	}
	return t
}

func (c *Context) writeHead(s spotted, f *partspec.Bore, t Task, w Way, from, to float64, finish bool, j Job) (plan.Operation, Done) {
	title := fmt.Sprintf("Rough %s with the boring head to Ø%s", f.Name, units.Length(to).Text(c.unit()))
	if finish {
		title = fmt.Sprintf("Bore %s%s with the boring head", f.Name, aimedAt(f.Diameter))
	}
	p := c.page(j, t, w, title)
	p.begin(s, w)
	top := j.Flat.Front
	if w.End == partspec.Left {
		top = j.Flat.Back
	}
	p.setQuill(top, "the tool's point just touches the face")
	marks, reached := p.sunk(j.Flat.Front-j.Flat.Back+through, true)
	p.line("run to", p.quill(), marks, p.both(reached, p.quill())+" below the face", "through", false)
	st := p.over(s, w, 0)
	n := passes((to-from)/2, headDepth*j.Light)
	if finish {
		n = max(n, 2)
	}
	for k := 1; k <= n; k++ {
		cut := p.plunge(passName(k, n), st, marks, 0, 0)
		cut.ToolID, cut.ToolSizeMM = w.Tool.ID(), tidyMM(from+(to-from)*float64(k)/float64(n))
		if finish && k == n {
			cut.ToMeasure = &plan.Measured{What: "diameter", LowMM: float64(f.Diameter.Low), HighMM: float64(f.Diameter.High)}
		}
		p.op.Cuts = append(p.op.Cuts, cut)
		p.note("%s: the head set to Ø%s.", passName(k, n), p.both(cut.ToolSizeMM, ""))
	}
	p.op.DepthMM = (to - from) / 2 / float64(n)
	if finish {
		p.note("Measure after the last but one; set the head by what is left, and repeat the last pass until nothing more comes off.")
		p.why("dials give differences, not sizes", "C-15")
		p.op.Checks = append(p.op.Checks, c.check(f.Name+", diameter", f.Name, f.Diameter, insideCheck))
	}
	p.why("boring puts the hole where the spindle stands, whatever the drill did", "A-26")
	p.done.Flat = t.Flat
	p.done.Beside = []plan.FlatHole{{Feature: f.Name, XMM: s.place(0)[0], YMM: s.place(0)[1], DiameterMM: to, FromZ: 0, ToZ: c.Length}}
	return p.finish()
}

func (s spotted) place(i int) [2]float64 {
	return [2]float64{tidyMM(float64(s.Places[i].X.Value)), tidyMM(float64(s.Places[i].Y.Value))}
}

// setQuill sets the depth dial's nought anew.
func (p *page) setQuill(z float64, how string) {
	for i := range p.op.Zeros {
		if p.op.Zeros[i].Dial == p.quill() {
			p.op.Zeros[i].ReferenceMM, p.op.Zeros[i].How = z, how
		}
	}
}

// centreMark marks the place of a bore that is made on the lathe, where there are no datum edges to set it running by.
func (c *Context) centreMark(f *partspec.Bore) []Task {
	if len(c.Part.Outline.Datum) > 0 || len(c.tools(partspec.Scriber)) == 0 || c.Bench.Kind == "" {
		return nil
	}
	s := spotted{Holes: asHoles(f), by: partspec.LocatePunch, from: []partspec.End{f.From}, columns: []column{{0, c.Length}}, drillMM: 1}
	return []Task{c.markHoles(s, c.tools(partspec.Scriber)[0], c.writeMarks)}
}

// nearBore reports whether an edge ends up so near to a large bore that the metal between must stay thick until the bore is made.
func (c *Context) nearBore(edge int) bool {
	for _, f := range c.Part.Features {
		b, ok := f.(*partspec.Bore)
		if !ok || b.At == nil {
			continue
		}
		_, _, off := c.Flat.Drawn.Edges[edge].Nearest(float64(b.At.X.Value), float64(b.At.Y.Value))
		if d := float64(b.Diameter.Mid()); rules.ThinWeb(off-d/2, d) && !c.datumEdge(edge) && c.Rules.Has("A-34") {
			return true
		}
	}
	return false
}
