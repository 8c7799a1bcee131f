package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
	"catchplate/planner/tables"
)

// milled is a plane or a slot cut along the outside of a turned part: its floor above the axis, how far each side of the axis it reaches, and its stretch.
type milled struct {
	f         partspec.Feature
	deg       float64
	low, high float64 // of the floor, above the axis
	half      float64 // to each side of the axis
	z0, z1    float64
	open      [2]bool // whether the cutter may run out past the left and the right end
	top       float64
}

// openEnds reports at which ends of a stretch nothing as high stands, so that a cutter may run out over it.
func (c *Context) openEnds(z0, z1, floor float64) (open [2]bool) {
	most := func(a, b float64) float64 {
		r := 0.0
		for _, k := range c.Blocks {
			if lo, hi := math.Max(a, k.Z0), math.Min(b, k.Z1); lo < hi-faceNoise {
				r = math.Max(r, k.Curve.Greatest(lo, hi))
			}
		}
		return r
	}
	return [2]bool{most(0, z0) <= floor+sizeNoise, most(z1, c.Length) <= floor+sizeNoise}
}

// flats makes one task for each of a part's like flats: the work is turned on between them.
func (c *Context) flats(f *partspec.Flat) []Task {
	z0, z1 := float64(f.Span.Left), float64(f.Span.Right)
	var tasks []Task
	for i := range max(1, f.Count) {
		verb := "mill"
		if f.Count > 1 {
			verb = fmt.Sprintf("mill_%d", i+1)
		}
		m := milled{f: f, deg: math.Mod(float64(f.Angle)+360*float64(i)/float64(max(1, f.Count)), 360), low: float64(f.Distance.Low), high: float64(f.Distance.High), z0: z0, z1: z1}
		t := crossTask(f, verb, plan.MillFlat, z0, z1)
		r, ok := c.outsideAt(z0, z1)
		if !ok {
			tasks = append(tasks, t.orLacking(fmt.Sprintf("%s: the outside is no plain cylinder all along it", f.Name)))
			continue
		}
		mid := (m.low + m.high) / 2
		m.top, m.half, m.open = r, math.Sqrt(math.Max(0, r*r-mid*mid)), c.openEnds(z0, z1, mid)
		if bore := c.insideAt(z0, z1); mid < bore {
			tasks = append(tasks, t.orLacking(fmt.Sprintf("%s: %.2f from the axis it cuts into the bore of Ø%.2f", f.Name, mid, 2*bore)))
			continue
		}
		t.Tight = float64(f.Distance.Width())
		if i == max(1, f.Count)-1 {
			t.Makes = []string{f.Name}
		}
		tasks = append(tasks, c.mill(t, m, 0))
	}
	return tasks
}

// slot makes the task of a slot along the outside.
func (c *Context) slot(f *partspec.Slot) []Task {
	z0, z1 := float64(f.Span.Left), float64(f.Span.Right)
	t := crossTask(f, "mill", plan.MillSlot, z0, z1)
	r, ok := c.outsideAt(z0, z1)
	if !ok {
		return []Task{t.orLacking(fmt.Sprintf("%s: the outside is no plain cylinder all along it", f.Name))}
	}
	m := milled{f: f, deg: float64(f.Angle), low: r - float64(f.Depth.High), high: r - float64(f.Depth.Low), half: float64(f.Width.Mid()) / 2, z0: z0, z1: z1, top: r}
	m.open = c.openEnds(z0, z1, m.low)
	t.Makes, t.Tight = []string{f.Name}, float64(f.Width.Width())
	return []Task{c.mill(t, m, float64(f.Width.Low))}
}

// mill lists the end mills that cut a flat, or a slot at least so wide (0 for a flat).
func (c *Context) mill(t Task, m milled, width float64) Task {
	t.Stage, t.Depth = shape.Finishing, m.top-(m.low+m.high)/2
	t.Place = c.alongPlace(m)
	t.Rim, t.Aside, t.Middle = c.asideOf(m)
	if !c.coordinates() {
		return t.orLacking(fmt.Sprintf("%s: no mill with dials x, y and quill (or z) is owned", m.f.Head().Name))
	}
	for _, tool := range c.tools(partspec.EndMill) {
		for _, size := range tool.Sizes {
			d := float64(size)
			if slot, ok := m.f.(*partspec.Slot); ok && (d > float64(slot.Width.High)+sizeNoise || d < width/2) {
				continue
			}
			if m.cusp(d)/2 > t.Place && t.Place > 0 {
				continue // its round ends leave no slot within the limits of the length
			}
			if z0, z1 := m.run(d); z1 < z0 {
				continue // no longer than the cutter is wide
			}
			t.Ways = append(t.Ways, c.millWays(t, m, tool, d)...)
		}
	}
	if width > 0 {
		return t.orLacking(fmt.Sprintf("%s: no end mill of Ø%.2f or down to half of it is owned", m.f.Head().Name, width))
	}
	return t.orLacking(fmt.Sprintf("%s: no end mill is owned that fits into its length", m.f.Head().Name))
}

// alongPlace is how far a flat or a slot may lie from its place along the axis: the general tolerance of its length, where it ends in metal; 0 where it runs out.
func (c *Context) alongPlace(m milled) float64 {
	if m.open[0] && m.open[1] {
		return 0
	}
	d, err := tables.ISO2768(c.Part.General, tables.GeneralLength, units.Length(m.z1-m.z0))
	if err != nil {
		return 0
	}
	return float64(d.Upper)
}

// fromOn is how far a stretch may lie off along the axis because the dial is set on another face than the one it is measured from: the nearer of the two ends of what
// it lies on counts, for the drawing does not say from which it is measured.
func (c *Context) fromOn(m milled, free partspec.End) float64 {
	on := ""
	switch f := m.f.(type) {
	case *partspec.Flat:
		on = f.On
	case *partspec.Slot:
		on = f.On
	}
	for _, b := range c.Blocks {
		if b.Name == on {
			return math.Min(c.fromFace(b.Z0, free), c.fromFace(b.Z1, free))
		}
	}
	return 0
}

// run is where the middle of a cutter goes along the axis.
func (m milled) run(d float64) (z0, z1 float64) {
	z0, z1 = m.z0+d/2-m.cusp(d)/2, m.z1-d/2+m.cusp(d)/2 // half of what stays is left in the middle, half is cut too far beside it
	if m.open[0] {
		z0 = m.z0 - d/2 - seatRun
	}
	if m.open[1] {
		z1 = m.z1 + d/2 + seatRun
	}
	return z0, z1
}

// cusp is what stands in the middle of a slot's end between the passes of a cutter smaller than it: r - sqrt(r² - e²) for passes e beside the middle.
func (m milled) cusp(d float64) float64 {
	if _, slot := m.f.(*partspec.Slot); !slot || d >= 2*m.half {
		return 0
	}
	r, e := d/2, m.half-d/2
	return r - math.Sqrt(math.Max(0, r*r-e*e))
}

// sides are the places beside the axis where the middle of a cutter goes: a slot's walls by the cutter's own sides; a flat once over the middle where the cutter
// covers it and runs out at both ends, else from rim to rim.
func (m milled) sides(d float64) []float64 {
	reach := m.half
	if _, slot := m.f.(*partspec.Slot); slot {
		reach = math.Max(0, m.half-d/2)
		if reach < sizeNoise {
			return []float64{0}
		}
		return []float64{-reach, reach}
	}
	if d >= 2*m.half+1 && m.open[0] && m.open[1] {
		return []float64{0}
	}
	n := int(math.Ceil(2 * reach / (roughShare * d)))
	var list []float64
	for k := 0; k <= n; k++ {
		list = append(list, -reach+2*reach*float64(k)/float64(n))
	}
	return list
}

func (c *Context) millWays(t Task, m milled, tool partspec.Tool, d float64) []Way {
	z0, z1 := m.run(d)
	deep := m.standing(d, c.Stock) - (m.low+m.high)/2
	most := math.Min(c.slotDepth(d), m.top-(m.low+m.high)/2+c.inCorner(m)) // what stands higher where it runs out comes off in layers as deep
	layers := passes(deep, most)
	var ways []Way
	for _, w := range c.crossWays(m.deg, false, z0-d/2, z1+d/2) {
		w.Tool, w.SizeMM, w.Rate, w.ForceAt = tool, d, c.millRate(d, most, tool), m.top
		w.DeepMM = deep
		w.Off += c.fromOn(m, w.End)
		w.ForceN = c.millForce(partspec.EndMill, d, w.Rate.DepthMM)
		w.Minutes = minutesADrill + minutesTrial + float64(layers*len(m.tracks(d, c.graduationAlong())))*((z1-z0)/(w.Rate.FeedMM*w.Rate.RPM)+minutesAPass)
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeMilled(t, m, w, j) }
		ways = append(ways, w)
	}
	return ways
}

func (c *Context) writeMilled(t Task, m milled, w Way, j Job) (plan.Operation, Done) {
	name := m.f.Head().Name
	title := fmt.Sprintf("Mill the flat %s, %s from the axis", name, units.Length((m.low+m.high)/2).Round(3).Text(c.unit()))
	if _, slot := m.f.(*partspec.Slot); slot {
		title = fmt.Sprintf("Mill the slot %s", name)
	}
	m.top = crownNow(m.z0, m.z1, j)
	p := c.page(j, t, w, title)
	p.beginAcross(w, m.top, "the end mill just touches the crown")
	floor, measured := p.lowered(m.low, m.high)
	above := m.standing(w.SizeMM, j.Before) - m.top
	over := p.graduationsOver(above)
	g := float64(p.dial(p.quill()).Graduation.Value)
	corner := c.inCorner(m) // the first pass takes it as well
	if over == 1 {          // and what the dial has left on the round: a pass of its own over it would cut air
		over, corner = 0, corner+above
	}
	all := floor + over
	layers := int(p.layersOf(all, math.Max(p.most-corner, p.most/2)))
	p.op.DepthMM = math.Max(p.op.DepthMM, float64((all+int64(layers)-1)/int64(layers))*g+corner) // no finer than a graduation
	for k := 1; k <= layers; k++ {
		deep := all*int64(k)/int64(layers) - over
		label := fmt.Sprintf("layer %d", k)
		p.line(label, p.quill(), deep, "", "", measured != nil && k == layers)
		for i, track := range m.tracks(w.SizeMM, c.graduationAlong()) {
			x0, x1, y0, y1 := p.along("x", track.z0), p.along("x", track.z1), p.along("y", track.y0), p.along("y", track.y1)
			set := func(x, y int64) []plan.Reading {
				return []plan.Reading{{Dial: "x", Graduations: x}, {Dial: "y", Graduations: y}, {Dial: p.quill(), Graduations: deep}}
			}
			cut := plan.Cut{Name: fmt.Sprintf("%s, pass %d", label, i+1), From: set(x0, y0), To: set(x1, y1)}
			if k == layers {
				cut.ToMeasure = measured
			}
			p.op.Cuts = append(p.op.Cuts, cut)
			if k == 1 {
				p.trackLines(i+1, x0, x1, y0, y1)
			}
		}
	}
	if f, ok := m.f.(*partspec.Flat); ok && f.Count > 1 && j.Setup.Dividing == nil {
		p.note("The %d flats are set round by a square or protractor on the one that is cut already: this one looks up at %.0f degrees.", f.Count, m.deg)
	}
	p.why("the round is finished before it is crossed", "A-22")
	return p.finish()
}

// graduationAlong is what one graduation of the mill's dial x moves.
func (c *Context) graduationAlong() float64 {
	d, _ := c.Mill.Dial("x")
	return float64(d.Graduation.Value)
}

// standing is how high the metal stands at most that a cutter meets on its run: where it runs out over what is still to be turned, more than the finished round.
func (m milled) standing(d float64, work solid.Body) float64 {
	z0, z1 := m.run(d)
	return math.Max(m.top, work.Outer.Greatest(z0-d/2, z1+d/2))
}

// inCorner is how much the round in the corner of a shoulder, left by the nose of the tool that turned it, adds to what stands before a cutter at a closed end.
func (c *Context) inCorner(m milled) float64 {
	most := 0.0
	for _, t := range c.tools(partspec.Turning) {
		if (!m.open[0] || !m.open[1]) && float64(t.NoseRadius) <= float64(c.Part.InnerCorner) {
			most = math.Max(most, float64(t.NoseRadius))
		}
	}
	return most
}

// graduationsOver is so much height in graduations of the spindle's dial, rounded up.
func (p *page) graduationsOver(heightMM float64) int64 {
	d, _ := p.c.Mill.Dial(p.quill())
	g := float64(d.Graduation.Value)
	if g <= 0 || heightMM <= sizeNoise {
		return 0
	}
	return int64(math.Ceil(heightMM/g - sizeNoise))
}

// track is the way of a cutter's middle over the work: along the axis, or across it at a closed end of a flat, which is then straight.
type track struct{ z0, z1, y0, y1 float64 }

// tracks are a cutter's ways over the work. Where both ends are closed and it is as long as the flat, within a graduation of the dial, it goes across once.
func (m milled) tracks(d, graduation float64) []track {
	z0, z1 := m.run(d)
	sides := m.sides(d)
	var list []track
	for _, y := range sides {
		list = append(list, track{z0, z1, y, y})
	}
	first, last := sides[0], sides[len(sides)-1]
	if _, slot := m.f.(*partspec.Slot); slot || first == last {
		return list
	}
	if !m.open[0] && !m.open[1] && z1-z0 < graduation {
		return []track{{(z0 + z1) / 2, (z0 + z1) / 2, first, last}}
	}
	for i, z := range []float64{z0, z1} {
		if !m.open[i] {
			list = append(list, track{z, z, first, last})
		}
	}
	return list
}

// trackLines puts the counts of one track on the card.
func (p *page) trackLines(n int, x0, x1, y0, y1 int64) {
	p.line(fmt.Sprintf("pass %d from", n), "x", x0, "", "", false)
	p.line(fmt.Sprintf("pass %d from", n), "y", y0, "", "", false)
	if x1 != x0 {
		p.line(fmt.Sprintf("pass %d to", n), "x", x1, "", "wind back in the air", false)
	}
	if y1 != y0 {
		p.line(fmt.Sprintf("pass %d to", n), "y", y1, "", "", false)
	}
}
