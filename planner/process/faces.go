package process

import (
	"fmt"
	"math"

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
	if t.Lacking = c.lengthUnsure(e); len(t.Lacking) > 0 {
		return t
	}
	r := float64(c.Part.Stock.EnvelopeDiameter()) / 2
	for _, tool := range c.tools(partspec.Turning) {
		if tool.Hand == "left" {
			continue
		}
		rate := c.rate(cutFace, 2*r, tool)
		w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, ForceAt: r, Span: [2]float64{t.Z0, t.Z1},
			Minutes: cutMinutes(r, passes(t.Depth, rate.DepthMM), rate) + minutesTrial*c.secondEnd(e)}
		w.deep(c, t.Depth+c.lengthSlack(e))
		if c.secondEnd(e) > 0 {
			w.SureN = c.force(c.unsureDepth(), rate.FeedMM)
		}
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeFace(t, w, j) }
		t.Ways = append(t.Ways, w)
	}
	if len(t.Ways) == 0 {
		t.Lacking = append(t.Lacking, "no right-hand turning tool is owned: add tool \"turning\" { hand = \"right\" }")
	}
	return t
}

// lengthSlack is how much deeper the last facing cut may be than reckoned, where it ends by measuring.
func (c *Context) lengthSlack(e partspec.End) float64 {
	return c.secondEnd(e) * (float64(c.Part.Length.Width())/2 + forceSlack)
}

// unsureDepth is the deepest cut that facing to length may come to, however light its passes: a sawn end is known no better than the saw wanders.
func (c *Context) unsureDepth() float64 {
	doubt := c.lengthDoubt(lightDoubt)
	if c.Place.ByHand {
		return lightStand + sawWander - lightLeave + doubt
	}
	return lightLeave + doubt + float64(c.Part.Length.Width())/2
}

// DepthSlack is how far over a task's depth one pass of it may come out: forceSlack, and a hundredth for its rounding.
const DepthSlack = forceSlack + 0.01

// forceSlack is what roughing may have left over what it should, on radius or length: graduations rounded to metal on.
const forceSlack = 0.05

func z0OrZ1(z0, z1 float64) [2]float64 { return [2]float64{z0, z1} }

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
	out := j.Before.Outer.Greatest(t.Z0-faceLook, t.Z1+faceLook)
	touched := p.touch(t.Z0-faceLook, t.Z1+faceLook)
	p.crossZero(2*touched, false, fmt.Sprintf("touch the outside, %s", "Ø"+units.Length(2*touched).Round(2).Text(c.unit())))
	start, _ := p.cross(out)
	first := !c.toLength(t.End, j)
	from := z0OrZ1(j.Before.Ends())[t.End-partspec.Left]
	reference := z
	if !first {
		reference = from
	}
	p.op.Zeros = append(p.op.Zeros, plan.Zero{Dial: "saddle", ReferenceMM: reference, How: c.faceZeroText(first)})
	centre := p.centre(j, t, float64(w.Tool.NoseRadius))
	if first {
		p.faceDown(from, z, start, centre)
		p.done.Keep = keepFrom(t.End, z)
	} else {
		p.faceToLength(t.End, from, z, start, centre)
	}
	p.line("across to", "cross", centre, "past the middle", "", false)
	if first {
		p.note("Take the least that cleans the whole end, then set the saddle dial to nought: every length is taken from this face.")
		p.why("lengths are taken from this face", "A-01")
	} else {
		p.why("the second end, faced to length", "A-20")
		p.op.Checks = append(p.op.Checks, c.check("length over all", "part", c.Part.Length, outsideCheck))
	}
	return p.finish()
}

// faceDown faces from the sawn end to the place that becomes the saddle's nought.
func (p *page) faceDown(from, z float64, start, centre int64) {
	n := passes(math.Abs(z-from), p.wholeMost())
	for i := 1; i <= n; i++ {
		marks, _ := p.saddle(z + (from-z)*float64(n-i)*p.wholeMost()/math.Abs(z-from))
		p.cut(passName(i, n), at(start, marks), at(centre, marks), nil)
		if i < n {
			p.line(passName(i, n), "saddle", marks, "", "", false)
		}
	}
}

// wholeMost is the most depth of a facing pass in whole graduations of the saddle.
func (p *page) wholeMost() float64 {
	g := float64(p.dial("saddle").Graduation.Value)
	return math.Max(g, math.Floor(p.most/g+markNoise)*g)
}

// What facing to length leaves for the last cut, how far off that may be, and how much must stand before the first measured cut: a sawn end is known no better
// (sawWander). Where only light cuts may be taken (lightPass) it leaves less.
const (
	lengthLeave, lightLeave = 0.4, 0.25
	lengthDoubt, lightDoubt = 0.1, 0.05
	lengthStand, lightStand = 0.8, 0.55
	lightPass               = 0.5
)

// faceToLength faces the second end: by the dial from the touched face while there is plenty, then to a measured length and a little, then to length.
func (p *page) faceToLength(e partspec.End, from, z float64, start, centre int64) {
	leave, doubt, stand := lengthLeave, lengthDoubt, lengthStand
	if p.most <= lightPass {
		leave, doubt, stand = lightLeave, lightDoubt, lightStand
	}
	doubt = p.c.lengthDoubt(doubt)
	dir := math.Copysign(1, z-from)
	depth := math.Abs(z - from)
	low, high := p.c.endRange(e, p.j.More)
	deepest, last := 0.0, depth
	if n := passes(depth-stand, p.wholeMost()); depth > stand+doubt {
		deepest = p.wholeMost()
		before, _ := p.saddle(from)
		for i := 1; i <= n; i++ {
			marks, _ := p.saddle(from + dir*math.Min(depth-stand, float64(i)*p.wholeMost()))
			if marks == before {
				continue
			}
			before = marks
			p.cut(fmt.Sprintf("rough %d", i), at(start, marks), at(centre, marks), nil)
			p.line(fmt.Sprintf("rough %d", i), "saddle", marks, "", "from the touched face", false)
		}
	}
	if depth > leave+2*doubt {
		a, b := z-dir*(leave-doubt), z-dir*(leave+doubt)
		marks, _ := p.saddle(z - dir*leave)
		deepest, last = math.Max(deepest, math.Min(depth, stand)-leave+doubt), leave+doubt
		p.cut("clean", at(start, marks), at(centre, marks), &plan.Measured{What: "position", LowMM: math.Min(a, b), HighMM: math.Max(a, b)})
		p.line("clean", "saddle", marks, "length "+p.both(p.c.Length+leave, "saddle"), "measure", true)
	}
	p.op.DepthMM = math.Ceil(100*math.Max(deepest, last)) / 100
	marks, _ := p.saddle(z)
	p.cut("to length", at(start, marks), at(centre, marks), &plan.Measured{What: "position", LowMM: low, HighMM: high})
	p.line("to length", "saddle", marks, "length "+p.both(p.c.Length, "saddle"), "measure the length now and take off the difference", true)
	p.done.Keep = keepFrom(e, z)
}

// sureLength is what the finest instrument that takes the length over all can be wrong by, with what stands before it is faced; far where none does.
func (c *Context) sureLength() float64 {
	best := far
	for _, in := range c.Shop.Instruments {
		if in.Kind == partspec.BoreGauge || in.Kind == partspec.PlugGauge {
			continue
		}
		if float64(in.Smallest) <= c.Length && (in.Largest == 0 || float64(in.Largest) >= c.Length+lengthStand) {
			best = math.Min(best, float64(in.Uncertainty()))
		}
	}
	return best
}

// lengthDoubt is how far a length that is measured before the last cut may be off: no less than the instruments here can tell, to which a quarter of the range is
// left (rule E-01).
func (c *Context) lengthDoubt(usual float64) float64 { return math.Max(usual, 2*c.sureLength()) }

// lengthUnsure says why the second end cannot be faced to length: nothing owned measures it finely enough.
func (c *Context) lengthUnsure(e partspec.End) []string {
	if c.secondEnd(e) == 0 {
		return nil // lengths are taken from it
	}
	low, high := c.endRange(e, false)
	want := math.Min(lengthDoubt/2, (high-low)/4)
	if !c.Rules.Has("E-01") || c.sureLength() <= want+sizeNoise {
		return nil
	}
	return []string{fmt.Sprintf("facing to length: no instrument owned takes %s within %.3f (a quarter of what it may be off, rule E-01): add a finer one (measuring \"caliper\" { resolution = 0.02 })", units.Length(c.Length).Text(c.unit()), want)}
}

// endRange is where the second end may lie: inside the limits of the length over all, and of the block that ends there, whose other face is made. When more lengths are
// cut from this end in the same setting they move with it: then no block's length may be spoiled.
func (c *Context) endRange(e partspec.End, more bool) (low, high float64) {
	b := c.Blocks[0]
	if e == partspec.Right {
		b = c.Blocks[len(c.Blocks)-1]
	}
	half := float64(c.Part.Length.Width()) / 2
	for _, other := range c.Blocks {
		sp, ok := other.Feature.(*partspec.Spigot)
		if ok && len(c.Blocks) > 1 && (more || other.Name == b.Name) {
			off := c.besideMark(other.Z0, partspec.Right, e, more) + c.besideMark(other.Z1, partspec.Left, e, more)
			half = math.Min(half, math.Max(leastEndHalf, float64(sp.Length.Width())/2-math.Max(faceDoubt, off+faceNoise)))
		}
	}
	z := c.endZ(e)
	if taper, ok := b.Feature.(*partspec.Taper); ok && !b.Cylinder() { // its diameter at the face moves with the face
		slope := (b.Greatest - b.Least) / (b.Z1 - b.Z0)
		half = math.Min(half, coneShare*float64(min(taper.Large.Width(), taper.Small.Width()))/4/slope)
	}
	if !b.Cylinder() { // a curve or cone ends at the drawn face: beyond it metal would be left standing
		if e == partspec.Left {
			return z, z + half
		}
		return z - half, z
	}
	return z - half, z + half
}

// besideMark is how far from its drawn place the saddle leaves a face, at the mark nearest to it: one that looks to the end that is faced is set from there, when more is cut
// in that setting; one that looks to the other end was set from that.
func (c *Context) besideMark(z float64, behind, e partspec.End, more bool) float64 {
	from := behind.Other()
	if from == e && !more {
		return 0
	}
	d, _ := c.Lathe.Dial("saddle")
	g := float64(d.Graduation.Value)
	marks := math.Abs(z-c.endZ(from)) / g
	return g * math.Abs(marks-math.Round(marks))
}

// coneShare is the part of a cone's limits that the place of its end face may spend; the cross dial has the rest. Ours, no source.
const coneShare = 0.8

// leastEndHalf is the narrowest that a measured length is asked for: what a micrometer holds.
const leastEndHalf = 0.02

// faceDoubt is how far a shoulder set by the saddle dial may be off. Common practice, no source: half a graduation of a coarse saddle.
const faceDoubt = 0.05

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

// centre is the cross count that carries a facing cut past the axis, or well into the bore: the tool's trailing edge leaves a ring else.
func (p *page) centre(j Job, t Task, nose float64) int64 {
	inner := j.Before.Inner.Least(t.Z0-faceLook, t.Z1+faceLook)
	past := inner - clearance - nose
	if inner <= 0 {
		past = -pipClear - nose
	}
	marks, reached := p.cross(past)
	if reached > past {
		marks++
	}
	return marks
}

// pipClear is how far past the axis a solid end is faced, so that no pip is left.
const pipClear = 0.15

func passName(i, n int) string {
	switch {
	case i == n && n > 1:
		return "finish"
	case n == 1:
		return "cut"
	}
	return fmt.Sprintf("rough %d", i)
}
