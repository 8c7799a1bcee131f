package process

import (
	"fmt"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// faces makes the tasks of the two end faces.
func (c *Context) faces() []Task {
	var tasks []Task
	for _, e := range ends() {
		if c.stockEnd(e) != c.endZ(e) {
			tasks = append(tasks, c.face(e))
		}
	}
	return tasks
}

// stockEnd is where the metal ends before the end is faced.
func (c *Context) stockEnd(e partspec.End) float64 {
	if c.Place.OnBar() && e == c.Place.Held() {
		return c.Place.BarEnd(c.Length)
	}
	if e == partspec.Left {
		return c.Place.LeftZ
	}
	return c.Place.RightZ
}

func (c *Context) face(e partspec.End) Task {
	z := c.endZ(e)
	keep := shape.Stretch{Z0: z, Z1: far}
	if e == partspec.Right {
		keep = shape.Stretch{Z0: -far, Z1: z}
	}
	name := "face." + e.String()
	from := c.stockEnd(e)
	t := Task{Op: shape.Op{ID: name, Feature: name, Process: plan.Face, Stage: shape.Finishing, End: e, Z0: min(z, from), Z1: max(z, from), Keep: &keep,
		Makes: append([]string{name}, c.planesAt(z, e)...), Tight: float64(c.Part.Length.Width()), Depth: max(z-from, from-z)}}
	r := float64(c.Part.Stock.EnvelopeDiameter()) / 2
	for _, tool := range c.tools(partspec.Turning) {
		if tool.Hand == "left" {
			continue
		}
		rate := c.rate(cutFace, 2*r, tool)
		w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, ForceAt: r, Span: [2]float64{t.Z0, t.Z1},
			Minutes: cutMinutes(r, passes(t.Depth, rate.DepthMM), rate) + minutesTrial*c.secondEnd(e)}
		w.ForceN = c.force(min(t.Depth, rate.DepthMM), rate.FeedMM)
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeFace(t, w, j) }
		t.Ways = append(t.Ways, w)
	}
	if len(t.Ways) == 0 {
		t.Lacking = append(t.Lacking, "no right-hand turning tool is owned: add tool \"turning\" { hand = \"right\" }")
	}
	return t
}

// far is beyond every part.
const far = 1e5

// secondEnd is 1 for the end that is faced to length, 0 for the one that lengths are taken from.
func (c *Context) secondEnd(e partspec.End) float64 {
	if c.Place.OnBar() && e == c.Place.Free {
		return 0
	}
	return 1
}

// planesAt names the plane faces of features at z that look towards an end: "rim.left".
func (c *Context) planesAt(z float64, e partspec.End) []string {
	var names []string
	for _, b := range c.Blocks {
		if e == partspec.Left && b.Z0 == z || e == partspec.Right && b.Z1 == z {
			names = append(names, b.Name+"."+e.String())
		}
	}
	return names
}

func (c *Context) writeFace(t Task, w Way, j Job) (plan.Operation, Done) {
	z := c.endZ(t.End)
	p := c.page(j, t, w, fmt.Sprintf("Face the %s end", t.End))
	r := j.Before.Outer.Greatest(t.Z0-faceLook, t.Z1+faceLook)
	p.crossZero(2*r, false, fmt.Sprintf("touch the outside, %s", "Ø"+units.Length(2*r).Round(2).Text(c.unit())))
	first := !c.toLength(t.End, j)
	from := c.stockEnd(t.End)
	reference := z
	if !first {
		reference = from
	}
	p.op.Zeros = append(p.op.Zeros, plan.Zero{Dial: "saddle", ReferenceMM: reference, How: c.faceZeroText(first)})
	centre := p.centre(j, t)
	n := passes(t.Depth, p.most)
	for i := 1; i <= n; i++ {
		target := from + (z-from)*float64(i)/float64(n)
		marks, reached := p.saddle(target)
		var m *plan.Measured
		if i == n && !first {
			m, reached = c.lengthAim(t.End), z
			p.line("to length", "saddle", marks, "length "+p.both(c.Length, "saddle"), "measure the length now and take off the difference", true)
		}
		if i == n {
			marks, _ = p.saddle(z)
			p.done.Keep = keepFrom(t.End, reached)
		}
		p.cut(passName(i, n), at(0, marks), at(centre, marks), m)
	}
	if first {
		p.note("Take the least that cleans the whole end, then set the saddle dial to nought: every length is taken from this face.")
		p.why("lengths are taken from this face", "A-01")
	} else {
		p.why("the second end, faced to length", "A-20")
		p.op.Checks = append(p.op.Checks, c.check("length over all", "part", c.Part.Length, outsideCheck))
	}
	return p.finish()
}

// toLength reports whether facing an end brings the part to its length: the other end is faced already.
func (c *Context) toLength(e partspec.End, j Job) bool {
	z0, z1 := j.Before.Ends()
	if e == partspec.Right {
		return near(z0, 0)
	}
	return near(z1, c.Length)
}

func near(a, b float64) bool { return a-b < faceNoise && b-a < faceNoise }

// faceNoise lets a face count as being in its place when it is off by less than can be measured; faceLook is how far about a face its
// diameter is looked for.
const (
	faceNoise = 1e-3
	faceLook  = 0.01
)

func keepFrom(e partspec.End, z float64) *[2]float64 {
	if e == partspec.Right {
		return &[2]float64{-far, z}
	}
	return &[2]float64{z, far}
}

func (c *Context) faceZeroText(first bool) string {
	if first {
		return "on the face itself, once it is clean"
	}
	return "touch the sawn or parted end; measure the length there"
}

// lengthAim is where the second face may lie, as a position.
func (c *Context) lengthAim(e partspec.End) *plan.Measured {
	low, high := float64(c.Part.Length.Low), float64(c.Part.Length.High)
	if e == partspec.Right {
		return &plan.Measured{What: "position", LowMM: low, HighMM: high}
	}
	mid := c.Length
	return &plan.Measured{What: "position", LowMM: mid - high, HighMM: mid - low}
}

// centre is the cross count that carries a facing cut to the axis, or just into the bore.
func (p *page) centre(j Job, t Task) int64 {
	inner := j.Before.Inner.Least(t.Z0-faceLook, t.Z1+faceLook)
	marks, reached := p.cross(inner)
	if reached > 0 {
		marks++
	}
	return marks
}

func passName(i, n int) string {
	switch {
	case i == n && n > 1:
		return "finish"
	case n == 1:
		return "cut"
	}
	return fmt.Sprintf("rough %d", i)
}
