package holding

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/process"
)

// A tilting plate lies on the mill's table, its hinge along x, and carries a chuck. For all that grips it is that chuck, upright; what is its own: it sets the work
// over, so that holes square to a seat stand under the spindle.

// onTilted lists, for every tilt that is wanted, the grips of an upright chuck, set over.
func (s Shop) onTilted(h partspec.Holding) []Mount {
	if !s.Rules.Has("C-37") {
		return nil
	}
	chuck := chuckOf(h)
	var mounts []Mount
	for _, lean := range s.tilts() {
		if lean.Deg > float64(h.TiltsTo) {
			continue
		}
		sine := float64(h.SineLength)
		steps := math.Round(sine * math.Sin(lean.Deg*math.Pi/180) / plan.PackingMM)
		for _, m := range append(s.uprightBar(chuck, partspec.Mill), s.uprightChuck(chuck, partspec.Mill)...) {
			if m.Free != lean.From {
				continue
			}
			m.Lean, m.Tilted = &lean, &plan.Tilt{SineMM: sine, RiseMM: math.Round(steps*plan.PackingMM*1e4) / 1e4, AlongDeg: lean.AlongDeg}
			high := finderMM * math.Tan(m.Tilted.Degrees()*math.Pi/180) / 2
			m.Locate = math.Hypot(s.edgeError(), s.edgeError()+high) + straightMM + packedMM/sine*lean.ReachMM
			mounts = append(mounts, m)
		}
	}
	return mounts
}

// tilts are the tilts that the ways of the tasks want, each once.
func (s Shop) tilts() (list []process.Lean) {
	for _, t := range s.Tasks {
		for _, w := range t.Ways {
			if w.Lean != nil && !slices.Contains(list, *w.Lean) {
				list = append(list, *w.Lean)
			}
		}
	}
	return list
}

// leansAs reports whether a mount sets the work over as a way of working wants it.
func (m Mount) leansAs(w process.Way) bool {
	if m.Lean == nil || w.Lean == nil {
		return m.Lean == w.Lean
	}
	return *m.Lean == *w.Lean
}

const (
	// straightMM is how nearly straight a seat is laid along the x slide by an indicator, and packedMM how far packing is off when it is made up. Common practice, no source.
	straightMM = 0.02
	packedMM   = 0.02
	// belowEdgeMM is how far the end of the edge finder stands below the rim's edge on the raised side, where the rim leans out under it; finderMM how nearly it is brought there.
	belowEdgeMM = 1.0
	finderMM    = 0.05
)

// tiltedTable is where the table's dials read nought when the work is set over: half way between both sides of the rim along x, and half way between the edges of its end along y;
// each wound back whole turns.
func (m Mount) tiltedTable(c *process.Context) []plan.Zero {
	x, okX := c.Mill.Dial("x")
	y, okY := c.Mill.Dial("y")
	if !okX || !okY {
		return nil
	}
	sin, cos := math.Sincos(m.Tilted.Degrees() * math.Pi / 180)
	end := 0.0
	if m.Free == partspec.Right {
		end = c.Length
	}
	back := float64(c.Part.Stock.EnvelopeDiameter())/2 + runOff
	return []plan.Zero{
		woundBack(plan.Zero{Dial: "x", How: "the spindle half way between both sides of the rim, each found by the edge finder below the hollow"}, process.Moved(x, x.PerTurn), back),
		woundBack(plan.Zero{Dial: "y", ReferenceMM: belowEdgeMM*sin/cos/2 - end*sin, How: fmt.Sprintf("the spindle half way between the edges of the rim's end, each found with the edge finder's end %s below that edge", units.Length(belowEdgeMM))},
			process.Moved(y, y.PerTurn), back),
	}
}

// tips is the thrust of a tool on work that is set over: it goes past the middle of the grip, beside it along x and, as it runs through the pipe's axis, along y. So it tips the work,
// and twists it besides what the tool's own torque does.
func (m Mount) tips(d *mechanics.GripDemand, t process.Task, way process.Way) {
	if way.ThrustN <= 0 {
		return
	}
	sin, cos := math.Sincos(m.Tilted.Degrees() * math.Pi / 180)
	beside, across := 0.0, (m.Lean.AxisMM-m.Lean.High((m.Z0+m.Z1)/2))*sin
	for _, spot := range t.Spots {
		u, _ := m.Lean.Level(spot.X, spot.Y)
		beside = math.Max(beside, math.Abs(u))
	}
	d.CutRadiusMM = d.MainN*d.CutRadiusMM/way.ThrustN + beside*sin
	d.MainN, d.PassiveN, d.FeedN, d.OverhangMM = way.ThrustN, 0, way.ThrustN*cos, math.Hypot(across, beside*cos)
}

// tiltInWords is how far the plate is set over.
func (m Mount) tiltInWords() string {
	if m.Tilted.RiseMM == 0 {
		return "shut"
	}
	return "set over by " + inDegrees(math.Round(m.Tilted.Degrees()*100)/100)
}

// howTilted tells how the plate is set over and the work laid on it.
func (m Mount) howTilted() []string {
	t := m.Tilted
	raised := math.Mod(t.AlongDeg+90, 360)
	if m.Free == partspec.Left {
		raised = math.Mod(t.AlongDeg+270, 360)
	}
	over := "The plate stays shut, with nothing under it: these holes do not lean."
	if t.RiseMM > 0 {
		over = fmt.Sprintf("Raise that side by packing of %s, %s from the hinge: sin(%s) = %s/%s. Lock the plate, and try the angle with a protractor.",
			units.Length(t.RiseMM).Text(units.InMM), units.Length(t.SineMM), inDegrees(math.Round(t.Degrees()*100)/100), units.Decimal(t.RiseMM, 2), units.Decimal(t.SineMM, 2))
	}
	return []string{
		fmt.Sprintf("Tilting plate bolted down, shut, its hinge along the x slide within 0.02 over 100 by an indicator; chuck flat on it, bolted down; the direction %s of the drawing on the side away from you.", inDegrees(raised)),
		over,
		fmt.Sprintf("Turn the work in the chuck until an indicator that is run along the hollow by the x slide stands still within %s, then tighten.", units.Length(straightMM)),
		"Find both sides of the rim along x, and both edges of its end along y, and stand half way between: the hollow's lowest line then runs along x under every hole of this setting.",
	}
}
