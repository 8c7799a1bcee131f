package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/numbers/steps"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// seatRun is how far past the rim a cutter runs at each end of a pass, in mm, beside its own radius.
const seatRun = 2.0

// seatWays are the ways of one cutter that steps a seat, with its table.
func (c *Context) seatWays(s saddle, t Task, tool partspec.Tool, d float64, r steps.Request, table steps.Table) []Way {
	w := Way{Machine: partspec.Mill, End: s.On, Tool: tool, SizeMM: d, Rate: c.millRate(d, r.MostDepthMM+roughCrest(r.Cutter), tool), ForceAt: float64(s.Across) / 2}
	low, high := ordered(s.end, s.crownZ())
	w.Span = [2]float64{low, high}
	rough := seatRough(table, r.Cutter, r.Across.GraduationMM, gradsIn(math.Max(s.low, -float64(s.Across)/2), r), gradsIn(math.Min(s.high, float64(s.Across)/2), r))
	w.ForceN = c.millForce(tool.Kind, d, w.Rate.DepthMM)
	w.SureN = w.ForceN
	w.Minutes = minutesTrial + float64(len(table.Cuts)+len(rough))*((s.to-s.from+d+2*seatRun)/(w.Rate.FeedMM*w.Rate.RPM)+minutesAPass)
	ways := []Way{w}
	if s.side != nil {
		ways = c.sideWays(s, w)
	}
	for i, w := range ways {
		ways[i].Write = func(j Job) (plan.Operation, Done) { return c.writeSeatSteps(s, t, w, r, table, rough, j) }
	}
	return ways
}

// roughPass is one pass along the pipe's axis before the steps: at one place across, so deep.
type roughPass struct {
	layer         int
	across, depth int64
}

// How far, in diameters, a cutter that roughs moves over from pass to pass: a square end leaves nothing between two passes, a ball a crest.
const (
	roughShare = 0.6
	ballShare  = 0.3
)

// gradsIn is a place across the pipe's axis in whole graduations, towards it.
func gradsIn(acrossMM float64, r steps.Request) int64 { return int64(acrossMM / r.Across.GraduationMM) }

func roughStep(c steps.Cutter) float64 {
	if c.Kind == steps.RoundNose {
		return ballShare * 2 * c.RadiusMM
	}
	return roughShare * c.WidthMM
}

// roughCrest is what stands between two passes of a ball nose that roughs: r - sqrt(r^2 - (step/2)^2).
func roughCrest(c steps.Cutter) float64 {
	if c.Kind != steps.RoundNose {
		return 0
	}
	half := roughStep(c) / 2
	return c.RadiusMM - math.Sqrt(c.RadiusMM*c.RadiusMM-half*half)
}

// seatRough lays the passes that take the bulk off, layer after layer, so that no step is cut deeper than the most (rule A-39). The middle of the cutter stays over
// the work, from one graduation to another: beyond, it would cut air.
func seatRough(t steps.Table, c steps.Cutter, grad float64, low, high int64) []roughPass {
	var out []roughPass
	layer := 0
	for i, p := range t.Rough.Passes {
		if i == 0 || p.DepthGrads != t.Rough.Passes[i-1].DepthGrads {
			layer++
		}
		p.FromGrads, p.ToGrads = max(p.FromGrads, low), min(p.ToGrads, high)
		if p.ToGrads < p.FromGrads {
			continue
		}
		n := int64(math.Ceil(float64(p.ToGrads-p.FromGrads) * grad / roughStep(c)))
		for k := int64(0); k <= n; k++ {
			at := p.FromGrads
			if n > 0 {
				at += (p.ToGrads - p.FromGrads) * k / n
			}
			out = append(out, roughPass{layer, at, p.DepthGrads})
		}
	}
	return out
}

func (c *Context) writeSeatSteps(s saddle, t Task, w Way, r steps.Request, table steps.Table, rough []roughPass, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Step the seat %s, R%s, %d cuts", s.Name, s.Radius.Value.Text(c.unit()), len(table.Cuts)))
	across, along, _ := s.seatSides()
	down := p.quill()
	below := "face"
	if s.side != nil {
		below = "crown of the round"
		p.beginAcross(w, s.end, "the cutter's end just touches the crown of the round")
	} else {
		p.tableZeros()
		p.quillZero(p.endNow(s), "the cutter's end just touches the face")
	}
	middle := p.along(across, s.middle)
	clear := w.SizeMM/2 + seatRun
	from, to := p.along(along, s.from-clear), p.along(along, s.to+clear)
	if p.sense(along) < 0 { // the dial still counts up
		from, to = p.along(along, s.to+clear), p.along(along, s.from-clear)
	}
	p.line("each pass from", along, from, "clear of the work", "", false)
	p.line("each pass to", along, to, "clear of the work", "wind back in the air", false)
	pass := func(name string, at, deep int64) {
		set := func(k int64) []plan.Reading {
			return []plan.Reading{{Dial: across, Graduations: middle + at}, {Dial: along, Graduations: k}, {Dial: down, Graduations: deep}}
		}
		p.cut(name, set(from), set(to), nil)
		p.line(name, across, middle+at, "", "", false)
	}
	layer := 0
	for k, cut := range rough {
		if cut.layer != layer {
			layer = cut.layer
			p.line(fmt.Sprintf("layer %d", layer), down, cut.depth, p.both(float64(cut.depth)*r.Depth.GraduationMM, down)+" below the "+below, "", false)
		}
		pass(fmt.Sprintf("layer %d, rough %d", cut.layer, k+1), cut.across, cut.depth)
	}
	cuts := inOrder(table)
	for _, cut := range cuts {
		pass(cut.label, cut.AcrossGrads, cut.DepthGrads)
		p.line(cut.label, down, cut.DepthGrads, "", "", false)
	}
	p.op.Steps = p.seatData(s, table, r, cuts, below)
	p.seatWords(s)
	switch {
	case s.side != nil:
		p.sideSeatNotes(across, along, middle)
	case c.Part.Flat():
		p.note("The steps lie to both sides of the seat's middle, which stands %d marks from nought on the %s (%s).", middle, p.c.millDial(across), p.lineOf("", across, middle, "", "", false).Reading)
		p.note("Passes go along the pipe's axis, which lies along the %s; feed one way, against the teeth, and wind back in the air.", c.millSlide(along))
		p.note("Only the bench takes the part after this: no machine holds it by the face that is gone.")
	default:
		p.plugged(s)
		p.note("Passes go along the pipe's axis, the scribed line set square to the %s; feed one way, against the teeth, and wind back in the air.", c.millSlide(across))
	}
	p.why("both dials go one way only in each run", "C-08")
	p.why("the inner corners of the steps lie on the seat and are the witness for the file", "A-39")
	return p.finish()
}

// seatData is the table as the plan keeps it, in the frame of the mill's slides.
func (p *page) seatData(s saddle, t steps.Table, r steps.Request, cuts []numbered, below string) *plan.StepTable {
	stops := map[string]string{}
	plain := append([]numbered(nil), cuts...)
	for i, cut := range plain {
		if cut.resume {
			stops[cut.label] = fmt.Sprintf("%s below the %s", p.both(cut.DepthMM, p.quill()), below)
		}
		plain[i].resume = false
	}
	d := p.stepData(t, r, plain, s.meanLength())
	d.AcrossDial, _, _ = s.seatSides()
	d.DepthDial, d.AcrossLeft = p.quill(), false
	for i := range d.Steps {
		d.Steps[i].Stop = stops[d.Steps[i].Label]
	}
	return d
}

// seatWords are the figures that go with a seat however it is cut: depth, gauging, what a wrong radius costs, what is left under each hole.
func (p *page) seatWords(s saddle) {
	c := p.c
	half := float64(s.Across) / 2
	if s.side != nil {
		p.sideSeatWords(s)
	} else {
		p.note("Depth at the crown %s below the face: R - sqrt(R² - (w/2)²) with R %s and w %s.", p.both(s.depth, p.quill()), s.Radius.Value.Text(c.unit()), s.Across.Text(c.unit()))
		p.op.Checks = append(p.op.Checks, plan.Check{What: s.Name + ", depth at the crown", Feature: s.Name, Limits: units.Length(s.depth).Round(2).Text(c.unit()) + ", by the part's height over the crown", When: "before release",
			IfLarge: "the part sits lower by as much", IfSmall: "go on to depth"})
	}
	p.op.Checks = append(p.op.Checks, plan.Check{What: s.Name + ", on its pipe", Feature: s.Name, Limits: "blue on both edges and the crown, over 60 % for metal contact", When: "before release",
		IfLarge: "it rocks on the crown: relieve the crown", IfSmall: "it bears on two edges: ease the edges"})
	p.why("the pipe is the gauge: blue it at its very place, lay the part on without rocking, rub 2 mm each way", "E-14")
	e := math.Max(float64(s.RadiusBy), float64(s.Radius.Width())/2)
	if e > 0 {
		p.note("A radius wrong by %s opens %s at the edges.", units.Length(e).Round(3).Text(c.unit()), units.Length(seatGap(s.radius, half, e)).Round(3).Text(c.unit()))
		p.why("gap at the edges: the difference of two sagittas over the seat's width", "C-21")
	}
	if s.Chord != nil && s.Rise != nil {
		p.note("The radius comes from the mate as measured: chord %s, rise %s; it is known within %s.", s.Chord.Value.Text(c.unit()), s.Rise.Value.Text(c.unit()), s.RadiusBy.Round(2).Text(c.unit()))
		p.why("an error in the rise shows 8 R² / c² times in the radius", "C-20")
	}
	for _, f := range c.Part.Features {
		if h, ok := f.(*partspec.Holes); ok && s.side == nil {
			p.underHoles(s, h)
		}
	}
}

// plugged says what stands in a bore that is finished already while the seat is cut through its mouth.
func (p *page) plugged(s saddle) {
	for _, h := range p.c.Holes {
		low, high := ordered(s.end, s.crownZ())
		if h.Z0 < high && h.Z1 > low && p.j.Before.Inner.Least(low, high) > h.Radius-finishedWithin {
			p.note("%s is at size already: a tight plug, or the bolt's close bush, stands in it up to the crown while the seat is cut.", h.Name)
			p.why("more than 3 mm stays where seat and bore meet, so that the bore may be finished first, with a plug in it", "A-37")
			return
		}
	}
	p.why("the pilot gives the axis; the bore is finished after the seat and takes the feathered edge off", "A-37")
}

// finishedWithin is how near to its size a bore counts as finished: less than any metal left for a last cut, in radius.
const finishedWithin = 0.1

// seatGap is what opens at the edges of a seat of half that width that is cut e wider than its pipe: the difference of the sagittas.
func seatGap(r, half, e float64) float64 {
	sagitta := func(r float64) float64 { return r - math.Sqrt(math.Max(0, r*r-half*half)) }
	return math.Abs(sagitta(r) - sagitta(r+e))
}

// underHoles tells the thickness at every hole of a pattern, and how long a thread is where the seat is deepest beside it.
func (p *page) underHoles(s saddle, h *partspec.Holes) {
	text := ""
	for i, thick := range p.c.seatThickness(s, h, 0) {
		if i > 0 {
			text += ", "
		}
		text += units.Length(thick).Round(1).Text(p.c.unit())
	}
	p.note("Metal left at the holes of %s, 1 onward: %s.", h.Name, text)
	if h.Thread != nil && h.Through {
		least := slices.Min(p.c.seatThickness(s, h, float64(h.Thread.Thread.Major)/2))
		p.note("Full all round, on the side towards the crown, the shortest thread of %s has %s.", h.Name, units.Length(math.Min(least, float64(h.Thread.Length.Value))).Round(1).Text(p.c.unit()))
	}
	p.why("thickness under each hole: H - (sqrt(R² - x²) - sqrt(R² - w²/4))", "C-20")
}

// seatThickness is the metal left at each hole once the seat is cut, where it is thinnest within a radius about the hole's axis.
func (c *Context) seatThickness(s saddle, h *partspec.Holes, within float64) []float64 {
	var out []float64
	for _, at := range h.Places {
		x, y := float64(at.X.Value), float64(at.Y.Value)
		thick := c.Length
		if l, why := c.columnAt(x, y, float64(h.Diameter.Value)/2, h.From); why == "" {
			thick = l.z1 - l.z0
		}
		out = append(out, thick-s.under(x, y, within))
	}
	return out
}

// fileSeat takes the crests of the steps off at the bench, to blue on the pipe.
func (c *Context) fileSeat(s saddle, cut Task) Task {
	t := Task{Op: shape.Op{ID: s.ID() + "/file", Feature: s.Name, Process: plan.FileSeat, Stage: shape.Finishing, End: s.On, Z0: cut.Z0, Z1: cut.Z1, Makes: []string{s.Name}, Depth: c.seatLeft(s.Seat)}}
	area := 2 * math.Asin(math.Min(1, float64(s.Across)/2/s.radius)) * s.radius * s.meanLength()
	end := s.On
	if s.side != nil { // whichever end is up
		end = partspec.Right
	}
	if c.Bench.Kind != "" {
		for _, tool := range c.tools(partspec.Files) {
			w := Way{Machine: partspec.Bench, End: end, Tool: tool, Minutes: 5 + area*minutesFileArea, Span: [2]float64{t.Z0, t.Z1}}
			w.Write = func(j Job) (plan.Operation, Done) {
				p := c.page(j, t, w, fmt.Sprintf("File the seat %s to its pipe", s.Name))
				p.note("Blue the steps. File with a half-round file along the pipe's axis until the blue at the inner corner of every step just vanishes: those corners lie on the seat.")
				p.note("At most %s mm is to come off anywhere, square to the surface. Last strokes on bare blue; cloth wrapped round the pipe adds 0.3 to 0.5 to the radius.", units.Decimal(c.seatLeft(s.Seat), 2))
				p.op.DepthMM, p.op.FeedMM, p.op.RPM = c.seatLeft(s.Seat), 0, 0
				p.why("the crests are the file's, the inner corners are the witness", "C-18")
				p.seatWords(s)
				return p.finish()
			}
			t.Ways = append(t.Ways, w)
			break
		}
	}
	return t.orLacking(s.Name + ": no bench with files is owned to take the crests off")
}
