package process

import (
	"fmt"
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// Minutes at a pattern. Ours, no source.
const (
	minutesAPlace   = 0.5 // bring the spindle over the next place
	minutesAMark    = 1.0 // lines and a punch mark
	minutesMarkOut  = 4.0 // colour, find the centre or the edges
	minutesATapHole = 1.5
)

// markHoles marks the places of a pattern at the bench, with a scriber and a punch or through its mate.
func (c *Context) markHoles(s spotted, tool partspec.Tool, write func(spotted, Task, Way, Job) (plan.Operation, Done)) Task {
	t := c.holesTask(s, "mark", plan.MarkOut, s.drillMM, 0)
	t.Place = 0
	w := Way{Machine: partspec.Bench, End: s.From, Tool: tool, SizeMM: s.spots.drillMM, Minutes: minutesMarkOut + minutesAMark*float64(len(s.Places)), Span: [2]float64{t.Z0, t.Z1}}
	w.Write = func(j Job) (plan.Operation, Done) { return write(s, t, w, j) }
	t.Ways = []Way{w}
	return t
}

func (c *Context) writeMarks(s spotted, t Task, w Way, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Mark out %s: %s", s.Name, holesInWords(len(s.Places))))
	p.op.Card, p.op.RPM = nil, 0
	for i, at := range s.Places {
		x, y := float64(at.X.Value), float64(at.Y.Value)
		p.op.Holes = append(p.op.Holes, plan.HoleLine{Number: i + 1, XMM: tidyMM(x), YMM: tidyMM(y)})
		p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: fmt.Sprintf("mark %d", i+1), At: &plan.Place{XMM: tidyMM(x), YMM: tidyMM(y), By: "scribed line", WithinMM: c.markError()}})
	}
	p.note("Colour the face, scribe, punch lightly, look at each mark with a glass and draw it over if it is off; then punch to the drill's size.")
	if s.Circle != nil {
		p.note("Step the dividers round the circle before punching: after %s they must close.", holesInWords(len(s.Places)))
	}
	p.chords(s, 0)
	p.why(fmt.Sprintf("marks lie within %s of their places", units.Length(c.markError()).Text(c.unit())), "C-24")
	return p.finish()
}

// drillHoles spots and drills the holes of a pattern: all with one tool, then all with the next (rule C-26).
func (c *Context) drillHoles(s spotted) Task {
	reach := s.depth + pointLength(s.drillMM)
	t := c.holesTask(s, "drill", plan.Drill, s.drillMM, 0)
	if !s.Through {
		t = c.holesTask(s, "drill", plan.Drill, s.drillMM, reach)
	}
	t.Depth = s.drillMM / 2
	if s.reamMM == 0 && s.Thread == nil && !s.saw.is() {
		t.Stage, t.Makes, t.Tight = shape.Finishing, []string{s.Name}, float64(s.Diameter.Width())
	}
	steps := c.drillStepsFrom(0, s.drillMM)
	for _, w := range c.holeWays(s, false) {
		w.Tool, w.SizeMM, w.ForceAt = s.drill, s.drillMM, s.drillMM/4
		w.Rate = c.drillRate(w.Machine, s.drillMM, s.drill, steps)
		w.ForceN, w.ThrustN = c.drillsForce(steps, w.Rate.FeedMM), c.drillsThrust(steps, w.Rate.FeedMM)
		w.SureN = w.ForceN // a drill cuts its whole width
		w.Span = s.span(w.End, s.past(w.End, s.drillMM))
		deep := w.Span[1] - w.Span[0]
		for _, d := range append([]float64{0}, steps...) {
			w.Minutes += minutesADrill + minutesAPlace*float64(len(s.Places))
			if d > 0 {
				r := c.drillRate(w.Machine, d, s.drill, steps)
				w.Minutes += float64(len(s.Places)) * (deep/(r.FeedMM*r.RPM) + pecks(deep, d)*minutesAPeck)
			}
		}
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeHoles(s, t, w, steps, j) }
		t.Ways = append(t.Ways, w)
	}
	return t
}

// past is how far a tool goes below the surface that it enters: its point through and clear, or to the depth.
func (s spotted) past(from partspec.End, d float64) float64 {
	if !s.Through {
		return s.depth + pointLength(d)
	}
	return s.thick() + overrun + 1 + pointLength(d)
}

// thick is the most metal under any hole.
func (s spotted) thick() float64 {
	most := 0.0
	for _, l := range s.columns {
		most = math.Max(most, l.z1-l.z0)
	}
	return most
}

// span is where a tool is that goes so deep from a face.
func (s spotted) span(from partspec.End, deep float64) [2]float64 {
	top := s.columns[0].entry(from)
	low, high := ordered(top, top+into(from)*deep)
	return [2]float64{low, high}
}

func (c *Context) writeHoles(s spotted, t Task, w Way, steps []float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Drill %s: %s, %s mm", s.Name, holesInWords(len(s.Places)), units.Decimal(s.drillMM, 3)))
	p.begin(s, w)
	if s.Mate != nil {
		p.note("Drill one hole in its spot first; lay %s on again and try it with its screw or a drill through both, then the rest.", s.Match.Part)
		p.why("one hole shows an error before the others have it", "A-33")
	} else if c.Rules.Has("A-02") {
		p.spotHoles(s, w, steps[0])
	}
	for _, d := range steps {
		tool, size, _ := c.sized(partspec.Drills, d, d)
		deep := s.past(w.End, d)
		if !s.Through { // a smaller drill's point is shorter: it stops where the last one's full diameter will
			deep = s.depth + pointLength(s.drillMM)
		}
		p.eachHole(s, w, tool, size, units.Decimal(d, 3)+" mm drill", deep, s.Through, p.drillSpeed(d))
	}
	if n := pecks(s.past(w.End, s.drillMM), s.drillMM); n > 0 && c.Rules.Has("C-05") {
		p.note("Clear the chips at 3 drill diameters, then at every further diameter.")
		p.why("deep for its diameter", "C-05")
	}
	if len(steps) > 1 {
		p.why("the web of a large drill only pushes: smaller ones go first", "A-25")
	}
	if s.Through {
		p.note("A board or clear air under the work where the drill comes out; ease the feed there.")
		p.why("what is behind the hole keeps the drill from snatching as it comes out", "B-35")
	}
	if p.quill() != "" {
		p.note("Touch off anew with every tool: their lengths differ.")
	}
	p.chords(s, s.drillMM)
	p.why("all holes with one tool, then all with the next, each from the same nought", "C-26")
	if t.Stage == shape.Finishing {
		p.op.Checks = append(p.op.Checks, c.check(s.Name+", diameter", s.Name, s.Diameter, insideCheck))
	}
	p.holesDone(s, w.End, s.drillMM)
	return p.finish()
}

// faceNow is where a face of flat work lies that a tool comes down on: milled to a graduation, it is off its drawn place by what that leaves.
func (p *page) faceNow(z float64, e partspec.End) float64 {
	switch {
	case !p.c.Part.Flat() || !near(z, p.c.endZ(e)):
		return z
	case e == partspec.Left:
		return p.j.Flat.Back
	}
	return p.j.Flat.Front
}

// begin sets the dials of a pattern's operation to nought and lists the places.
func (p *page) begin(s spotted, w Way) {
	if !w.Marked {
		p.tableZeros()
		p.why("each place is counted from one nought, always coming up in the same direction", "C-08")
	}
	p.quillZero(p.faceNow(s.columns[0].entry(w.End), w.End), "the tool's point just touches the face")
	if w.Indexed {
		p.index(s)
		return
	}
	for i, at := range s.Places {
		line := plan.HoleLine{Number: i + 1, XMM: tidyMM(float64(at.X.Value)), YMM: tidyMM(float64(at.Y.Value))}
		if !w.Marked {
			st := p.overDials(line.XMM, line.YMM)
			line.X, line.Y = st.x, st.y
		}
		p.op.Holes = append(p.op.Holes, line)
	}
}

// over puts the spindle over a hole's place.
func (p *page) over(s spotted, w Way, i int) stand {
	x, y := tidyMM(float64(s.Places[i].X.Value)), tidyMM(float64(s.Places[i].Y.Value))
	switch {
	case w.Indexed:
		return p.turns[i]
	case !w.Marked:
		return p.overDials(x, y)
	}
	place := &plan.Place{XMM: x, YMM: y, By: "punch mark", WithinMM: p.c.markError()}
	switch {
	case s.inHole:
		place.By, place.WithinMM = "hole", 0
	case s.Mate != nil:
		place = s.mated(x, y)
	}
	if s.by == partspec.LocateScribe {
		place.By = "scribed line"
	}
	return stand{place: place}
}

// named is a cut with what its line of the card would tell beside it, where no dial has a line.
func named(name, note string) string {
	return strings.TrimSuffix(name+", "+note, ", ")
}

// eachHole cuts every hole of a pattern with one tool, so deep below the face.
func (p *page) eachHole(s spotted, w Way, tool partspec.Tool, size float64, name string, deep float64, through bool, note string) {
	marks, reached := int64(0), deep
	if q := p.quill(); q != "" {
		marks, reached = p.sunk(deep, through)
		p.line(name, q, marks, p.both(reached, q)+" below the face", note, false)
	} else {
		p.note("%s: until its end is %s below the face, by the machine's own stop.", named(name, note), p.both(reached, ""))
	}
	under, over := p.stopBetween(s, tool, through)
	for i := range s.Places {
		top := p.faceNow(s.columns[i].entry(w.End), w.End)
		cut := p.plunge(fmt.Sprintf("hole %d, %s", i+1, name), p.over(s, w, i), marks, top+into(w.End)*(reached-under), top+into(w.End)*(reached+over))
		cut.ToolID, cut.ToolSizeMM = tool.ID(), size
		p.op.Cuts = append(p.op.Cuts, cut)
	}
}

// stopWithin is how far past its depth a drill may go where only the machine's stop holds it, in mm. Common practice, no source.
func (p *page) stopWithin(through bool) float64 {
	if through {
		return 2
	}
	return 0.5
}

// stopBetween is how far short of a depth, and how far past it, a stop that is set by measuring may let a tool go: no further than the drawing lets it.
func (p *page) stopBetween(s spotted, tool partspec.Tool, through bool) (under, over float64) {
	over = p.stopWithin(through)
	switch {
	case through || tool.Kind == partspec.CentreDrill:
	case p.op.Process == plan.Countersink:
		over = math.Min(over, float64(s.Sink.Diameter.Width())/4/math.Tan(s.Sink.Angle.Radians()/2))
		under = over
	case p.op.Process == plan.Counterbore:
		over = math.Min(over, float64(s.Sink.Depth.Width())/2)
		under = over
	default: // no less deep: a tap, or what goes in, wants the room
		over = math.Min(over, float64(s.Depth.Width())/2)
	}
	return under, over
}

// spotHoles starts every hole with a centre drill, no wider than the first drill.
func (p *page) spotHoles(s spotted, w Way, first float64) {
	tool := p.c.tools(partspec.CentreDrill)[0]
	size := float64(tool.Sizes[0])
	deep := math.Min(size, first) / 2 / math.Tan(units.Angle(plan.CentreDrillDeg/2).Radians())
	p.eachHole(s, w, tool, size, "spot", deep, false, "a centre for the drill")
	p.why("a long drill bends at the start; the spot holds it true", "A-02")
}

// chords are the distances over pins that show a wrong count before metal is lost (rule C-25).
func (p *page) chords(s spotted, pinMM float64) {
	if len(s.Places) < 2 || s.Mate != nil || !p.c.Rules.Has("C-25") {
		return
	}
	within := 2 * p.c.placeWithin(s.Holes)
	add := func(i, k int) {
		d := math.Hypot(float64(s.Places[k].X.Value-s.Places[i].X.Value), float64(s.Places[k].Y.Value-s.Places[i].Y.Value))
		p.op.Chords = append(p.op.Chords, plan.ChordCheck{From: i + 1, To: k + 1, DistanceMM: math.Round(d*1e4) / 1e4, WithinMM: within, OverMM: math.Round((d+pinMM)*1e4) / 1e4, PinMM: pinMM})
	}
	add(0, 1)
	switch n := len(s.Places); {
	case n == 2:
	case s.Circle != nil:
		add(0, n/2)
	default:
		add(0, n-1)
	}
	p.why("the distance over two pins shows a wrong count", "C-25")
}

// holesDone notes the holes as this operation leaves them.
func (p *page) holesDone(s spotted, from partspec.End, d float64) {
	for i := range s.Places {
		p.done.Beside = append(p.done.Beside, p.hole(s, i, from, d))
	}
}

func (p *page) hole(s spotted, i int, from partspec.End, d float64) plan.FlatHole {
	h := plan.FlatHole{Number: i + 1, Feature: s.Name, XMM: tidyMM(float64(s.Places[i].X.Value)), YMM: tidyMM(float64(s.Places[i].Y.Value)), DiameterMM: d, FromZ: s.columns[i].z0, ToZ: s.columns[i].z1}
	top := s.columns[i].entry(s.From)
	switch {
	case s.inHole:
		h.FromZ, h.ToZ = top, s.columns[i].entry(s.From.Other())
	case !s.Through:
		h.FromZ, h.ToZ = ordered(top, top+into(s.From)*s.depth)
	}
	return h
}

func holesInWords(n int) string {
	if n == 1 {
		return "one hole"
	}
	return fmt.Sprintf("%d holes", n)
}

// tidyMM takes the noise of sums out of a place: a nanometre is far below anything that is set.
func tidyMM(v float64) float64 { return math.Round(v*1e6) / 1e6 }
