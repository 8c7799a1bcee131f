package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// veeFlank is one flank of a vee whose middle is open: the blade is fed in along it, from the surface to the bottom, with the top slide set over. Its end
// cuts, and its side stands clear of the flank by half the vee's angle.
func (c *Context) veeFlank(v vee, side partspec.End) Task {
	z0, z1, _ := v.flank(side).Domain()
	t := v.task("flank_"+side.String(), shape.Finishing, z0, z1, v.flank(side))
	t.Tight = float64(v.f.Width.Width())
	top, owned := c.Lathe.Dial("top")
	cross, _ := c.Lathe.Dial("cross")
	long := c.flankTravel(v)
	switch {
	case !owned || top.Travel > 0 && float64(top.Travel) < long:
		return t.orLacking(fmt.Sprintf("%s: the top slide must travel %.1f along a flank", v.f.Name, long))
	case radial(cross)/v.rise() > v.room():
		return t.orLacking(fmt.Sprintf("%s: the cross dial places a flank within %.3f, its limits allow %.3f: widen them", v.f.Name, radial(cross)/v.rise(), v.room()))
	}
	for _, tool := range c.veeBlades(v) {
		if float64(tool.Width) > v.width()+sizeNoise {
			continue
		}
		rate := c.rate(cutGroove, 2*v.top, tool)
		for _, e := range ends() {
			if _, _, ok := c.bladeRun(v, tool, e); !ok {
				continue
			}
			w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, ForceAt: v.top, Span: [2]float64{z0, z1}}
			w.Minutes = minutesSlideSet + cutMinutes(long, passes(v.run(), flankStep), rate)
			w.ForceN = c.force(float64(tool.Width), rate.FeedMM)
			w.Write = func(j Job) (plan.Operation, Done) { return c.writeFlank(v, t, w, side, j) }
			t.Ways = append(t.Ways, w)
		}
	}
	return t.orLacking(c.veeLack(v))
}

// room is how far along the axis a flank may stand from its drawn place: the limits of the width and of the bottom both let it.
func (v vee) room() float64 { return v.off + float64(v.f.Bottom.Width())/4/v.rise() }

// flankTravel is the longest way of the top slide along a flank.
func (c *Context) flankTravel(v vee) float64 {
	saddle, _ := c.Lathe.Dial("saddle")
	return (v.depth() + clearance + float64(saddle.Graduation.Value)*v.rise()) / math.Sin(units.Angle(v.flankDeg).Radians())
}

// flankCut is a flank in the frame of one setting.
type flankCut struct {
	vee
	foot   float64 // where the blade's sharp corner would stand at the bottom
	up     float64 // +1 when the flank rises towards greater Z
	corner float64 // from the blade's point to the corner that cuts
	angle  float64 // of the top slide
}

func (c *Context) flankCut(v vee, side, free partspec.End, tool partspec.Tool) flankCut {
	k := flankCut{vee: v, foot: v.left, up: -1, angle: -v.flankDeg}
	if side == partspec.Right {
		k.foot, k.up = v.right, 1
	}
	k.foot += k.up * noseShift(float64(tool.NoseRadius), v.flankDeg) / v.rise()
	if side == free { // the corner on the free end's side cuts, going towards the headstock
		k.corner = k.up * float64(tool.Width)
	} else {
		k.angle = v.flankDeg - 180
	}
	return k
}

// line is the radius at which the cutting corner stands on the flank.
func (k flankCut) line(z float64) float64 { return k.bottom + k.up*(z-k.foot)*k.rise() }

func (c *Context) writeFlank(v vee, t Task, w Way, side partspec.End, j Job) (plan.Operation, Done) {
	k := c.flankCut(v, side, j.Free, w.Tool)
	whose, towards := "headstock's", "towards the headstock"
	if side == j.Free {
		whose, towards = "free end's", "away from the headstock"
	}
	p := c.page(j, t, w, fmt.Sprintf("Cut the vee %s out to its flank on the %s side", v.f.Name, whose))
	p.op.TopSlideDeg = k.angle
	before := j.Before.Outer.Greatest(t.Z0, t.Z1)
	p.crossZero(2*before, false, "touch the outside there, "+p.diameter(before))
	p.saddleZero()
	p.op.Zeros = append(p.op.Zeros, plan.Zero{Dial: "top", How: "wound back to the start of the cut"})
	p.flankPasses(k, before)
	lean := units.Angle(90 - v.flankDeg)
	p.note("Set the top slide over %s from square across the lathe, its handle %s, so that winding in follows the flank; then turn the tool square to the work again and touch both noughts anew.", lean.DegreesMinutes(), towards)
	p.note("Try the angle with an indicator in the tool post against a faced end: it runs %.3f for 25 of slide travel.", 25*math.Sin(lean.Radians()))
	p.note("Lock the saddle and wind every pass in from the surface; wind the top slide back to nought before the saddle is moved. The saddle's figure is for the corner of the blade nearest to the headstock.")
	p.note("With both flanks cut the vee is %s wide at the surface.", v.widthText(c))
	p.why("a short cone is cut by the top slide", "C-22")
	p.why("the flanks come after the middle", veeRule)
	return p.finish()
}

// flankPasses cuts a flank out to its line in passes side by side; the cross slide stands the same in all of them. The saddle lets the flank be placed to a
// graduation only: the cross slide makes up for what is left.
func (p *page) flankPasses(k flankCut, surface float64) {
	sin, cos := math.Sin(units.Angle(k.flankDeg).Radians()), math.Cos(units.Angle(k.flankDeg).Radians())
	topG, saddleG := float64(p.dial("top").Graduation.Value), float64(p.dial("saddle").Graduation.Value)
	start := k.foot + k.up*((surface+clearance-k.bottom)/k.rise()+saddleG/2) // no nearer than clearance, however the saddle is rounded
	_, z := p.saddle(start - k.corner)
	last, _ := p.cross(k.line(z + k.corner))
	n := passes(k.run(), flankStep)
	p.op.DepthMM = k.run() / float64(n) // along the axis, for each pass
	shown := int64(0)
	for i := 1; i <= n; i++ {
		shift := k.run() * float64(n-i) / float64(n)
		s, z := p.saddle(start - k.up*shift - k.corner)
		corner := z + k.corner
		marks, r := last, p.radiusAt(last)
		if i == n || saddleG > flankStep/4 {
			marks, r = p.cross(k.line(corner) + shift*k.rise())
		}
		switch {
		case i == 1 && saddleG <= flankStep/4:
			p.line("all passes start at", "cross", marks, p.diameter(r), "clear of the work", false)
		case marks != shown:
			p.line(passName(i, n), "cross", marks, p.diameter(r), "start, clear of the work", false)
		}
		shown = marks
		travel := k.up * (corner - k.foot) / cos // to the wall of the middle
		if i == n {
			travel = (r - k.deepest()) / sin
		}
		along := int64(math.Floor(travel/topG + markNoise))
		from := append(at(marks, s), plan.Reading{Dial: "top", Graduations: 0})
		to := append(at(marks, s), plan.Reading{Dial: "top", Graduations: along})
		p.cut(passName(i, n), from, to, nil)
		p.line(passName(i, n), "saddle", s, "", "", false)
		p.line(passName(i, n), "top", along, "", "", false)
		tip := solid.Point{Z: p.positionAt(s), R: r}
		foot := solid.Point{Z: tip.Z - k.up*float64(along)*topG*cos, R: r - float64(along)*topG*sin}
		cut := p.blade().Sweep(tip, foot)
		p.done.Outer = solid.Lower(p.done.Outer, cut).Join(p.done.Outer).Join(cut)
	}
}

// deepest is the radius at which a flank's last pass ends: at the bottom, or where that is worked to by measuring at its upper limit.
func (v vee) deepest() float64 {
	if float64(v.f.Bottom.Width()) <= trialWidth {
		return float64(v.f.Bottom.High) / 2
	}
	return v.bottom
}

// blade is the edge of the page's blade.
func (p *page) blade() solid.Edge {
	side := solid.TowardsPlus
	if p.j.Free == partspec.Left {
		side = solid.TowardsMinus
	}
	return solid.BladeEdge(float64(p.tool.Width), float64(p.tool.NoseRadius), side)
}
