package holding

import (
	"cmp"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/tables"
)

// onTable lists the ways a turned part stands on a mill's or a drilling machine's table, and lies at the bench.
func (s Shop) onTable() []Mount {
	var mounts []Mount
	for _, machine := range []partspec.Machine{s.Mill, s.Drill} {
		if machine.Kind == "" || !s.wanted(machine.Kind) {
			continue
		}
		for _, h := range s.Shop.Holdings {
			if s.stands(h, machine.Kind) {
				mounts = append(mounts, s.onTableBy(h, machine.Kind)...)
			}
		}
	}
	if s.Bench.Kind != "" && s.wanted(partspec.Bench) {
		mounts = append(mounts, s.atBench()...)
	}
	return mounts
}

// onTableBy lists what one holding does on a machine's table.
func (s Shop) onTableBy(h partspec.Holding, on partspec.MachineKind) []Mount {
	switch h.Kind {
	case partspec.ThreeJaw, partspec.FourJaw:
		return append(s.uprightBar(h, on), s.uprightChuck(h, on)...)
	case partspec.TableClamps, partspec.AnglePlate:
		if on == partspec.Mill {
			return s.throughBore(h)
		}
	case partspec.Vice, partspec.VeeBlock:
		return s.lying(h, on)
	case partspec.DividingHead:
		if on == partspec.Mill {
			return append(s.onHead(h), s.onUpright(h)...)
		}
	case partspec.TiltingPlate:
		if on == partspec.Mill {
			return s.onTilted(h)
		}
	case partspec.VerticalSlide:
		if vice, ok := s.viceOf(h); ok && on == partspec.Mill {
			return sprung(s.lying(vice, on))
		}
	}
	return nil
}

// wanted reports whether any task can be done on a machine.
func (s Shop) wanted(k partspec.MachineKind) bool {
	for _, t := range s.Tasks {
		for _, w := range t.Ways {
			if w.Machine == k {
				return true
			}
		}
	}
	return false
}

// centreError is how far the middle of a round surface lies off once it is found: with an indicator in the spindle, else from an edge on each side.
func (s Shop) centreError() float64 {
	for _, i := range s.Shop.Instruments {
		if i.Kind == partspec.DialIndicator {
			return float64(tables.PlaceError(tables.ByClocking))
		}
	}
	return math.Sqrt2 * s.edgeError()
}

// edgeError is how far an edge lies off once it is found.
func (s Shop) edgeError() float64 {
	for _, t := range s.Shop.Tools {
		if t.Kind == partspec.EdgeFinder {
			if t.Accuracy > 0 {
				return float64(t.Accuracy)
			}
			return float64(tables.PlaceError(tables.ByEdge))
		}
	}
	return float64(tables.PlaceError(tables.ByTool))
}

// tableFacts are the facts of a case on a table or at the bench.
func (s Shop) tableFacts(m Mount, task int, way process.Way, light float64) rules.Case {
	t := s.Tasks[task]
	c := rules.Case{Holding: m.Holding, Surface: m.Surface, Op: t.Op, Diameter: 2 * m.Radius, Length: m.Z1 - m.Z0, JawLength: m.Z1 - m.Z0, Packed: m.Packed, Through: m.Stop,
		Hexagon: s.Part.Stock.Kind == partspec.Hexagon && s.supplied(m.Surface), Largest: float64(s.Part.Stock.EnvelopeDiameter())}
	way.Off += s.counted(&c, m, t, way)
	c.PlaceOff, c.PlaceAllow = placeOff(m, t, way, 0)
	if m.Machine == partspec.Bench {
		return c
	}
	if t.Process != plan.Drill && t.Process != plan.Ream {
		c.PassDepth = way.Rate.DepthMM * light
	}
	c.Slide = s.slideFacts(m, t, way, c.PassDepth)
	c.Pressed = !m.Across && pressesDown(t) // set over, too: what tips it is reckoned with its force
	switch m.GripKind() {
	case "clamps":
		c.Capacity, c.LeastN, c.FirmN = s.boltCapacity(m), s.boltHolds(m, t, way, light), BoltPull(m.Holding)
		c.Cuts = way.Span[0] < 0 && m.Free == partspec.Right || way.Span[1] > s.Length && m.Free == partspec.Left // into the plate
		return c
	case "vice", "vee":
		c.Capacity, c.Lying = lyingCapacity(m), m.Across
		if m.Across {
			s.overhang(&c, m, way)
		}
	default:
		c.Capacity = s.capacity(m)
	}
	if m.swings() {
		s.support(&c, m, t, way, light)
		c.Capacity = cmp.Or(c.Capacity, s.headCapacity(m))
	}
	c.Length -= s.edged(m)
	c.Cuts = s.hitsJaws(m, t, way)
	s.demand(&c, m, t, way, light)
	return c
}

// overhang is how far a cut stands out of the jaws that lying work is held by, and how thick the work is there when it is finished.
func (s Shop) overhang(c *rules.Case, m Mount, way process.Way) {
	r := s.reach(m, process.Task{}, way)
	if inward(m.Free)*(r.tip-r.front) <= 0 {
		return // it lies over the jaws, or on their other side
	}
	lo, hi := span(r.front, r.tip)
	c.StickOut, c.Body = r.length(), 2*s.end.Outer.Greatest(lo, hi)
}

// betweenJaws reports whether a tool goes down between the jaws of a vice into work that lies in it: a hole across the axis that comes out in a bore, or not at all.
func (s Shop) betweenJaws(m Mount, t process.Task) bool {
	f, ok := s.Part.Feature(t.Feature).(*partspec.CrossHole)
	return ok && m.GripKind() == "vice" && !f.Through && (t.Z1-t.Z0)/2+jawClearance <= m.Radius
}

// pressesDown reports whether a task's tool only presses along its own axis.
func pressesDown(t process.Task) bool {
	switch t.Process {
	case plan.Drill, plan.Ream, plan.Tap, plan.Counterbore, plan.Countersink:
		return true
	}
	return false
}

// insideJaws is how far a tool that goes down into the work stays inside the jaws around it: the clearance of rule B-45 and what a hole may lie off.
const insideJaws = toolRoom + 0.2

// hitsJaws reports whether a tool comes within the clearance of jaws that stand around the work below it.
func (s Shop) hitsJaws(m Mount, t process.Task, way process.Way) bool {
	if t.Process == plan.MarkOut || s.betweenJaws(m, t) {
		return false
	}
	low := way.Span[0] - m.Z1
	if m.Free == partspec.Left {
		low = m.Z0 - way.Span[1]
	}
	switch {
	case low >= jawClearance:
		return false
	case m.Tilted != nil: // a rim between jaws is not found by its edges
		return true
	}
	for _, spot := range t.Spots {
		if math.Hypot(spot.X, spot.Y)+spot.Radius+insideJaws > m.Radius {
			return true
		}
	}
	return len(t.Spots) == 0
}

// Table is where the dials of the mill's table read nought: on the middle of the surface that is clocked, wound back whole turns so that every count is a
// positive one and every place is come to from the same side.
func (m Mount) Table(c *process.Context) []plan.Zero {
	if m.Machine != partspec.Mill {
		return nil
	}
	switch {
	case m.Across:
		return m.lyingTable(c)
	case m.Tilted != nil:
		return m.tiltedTable(c)
	}
	var zeros []plan.Zero
	for _, name := range []string{"x", "y"} {
		d, ok := c.Mill.Dial(name)
		if !ok {
			return nil
		}
		z := plan.Zero{Dial: name, How: "the spindle clocked over the middle of " + m.clocked()}
		if m.indexes() {
			z.How = "the spindle clocked over the head's own axis"
		}
		if turn := process.Moved(d, d.PerTurn); turn > 0 {
			turns := math.Ceil((float64(c.Part.Stock.EnvelopeDiameter())/2 + runOff) / turn)
			z.ReferenceMM, z.WoundBack = -turns*turn, int64(turns)
			if name == "x" && m.Free == partspec.Left {
				z.ReferenceMM = turns * turn
			}
			z.How += ", then wound back " + wholeTurns(turns)
		}
		zeros = append(zeros, z)
	}
	return zeros
}

// runOff is how far past the work the table must go with its counts still positive, for cutters that run out over the rim.
const runOff = 15.0

// clocked is what the indicator is swept on.
func (m Mount) clocked() string {
	if m.Surface == "stock" {
		return "the outside as turned, or the bore"
	}
	return m.Surface
}

// lyingTable is where the table's dials read nought when the part's axis lies along it: x at the free end's face, y over the axis, half way between both sides of
// the round; each wound back whole turns.
func (m Mount) lyingTable(c *process.Context) []plan.Zero {
	x, okX := c.Mill.Dial("x")
	y, okY := c.Mill.Dial("y")
	if !okX || !okY {
		return nil
	}
	face := 0.0
	if m.Free == partspec.Right {
		face = c.Length
	}
	back := c.Length + runOff + seatAxis(c)
	return []plan.Zero{
		woundBack(plan.Zero{Dial: "x", ReferenceMM: face, How: "the spindle over the " + m.Free.String() + " face, found by its edge"}, process.Moved(x, x.PerTurn), back),
		woundBack(plan.Zero{Dial: "y", How: "the spindle over the axis: an edge found on each side of the round, and half way between"}, process.Moved(y, y.PerTurn), float64(c.Part.Stock.EnvelopeDiameter())/2+runOff),
	}
}

// seatAxis is how far outside the part the axis of a seat's pipe lies at most.
func seatAxis(c *process.Context) float64 {
	most := 0.0
	for _, f := range c.Part.Features {
		if s, ok := f.(*partspec.Seat); ok {
			most = math.Max(most, math.Max(-float64(s.AxisZ), float64(s.AxisZ)-c.Length))
		}
	}
	return most
}

// woundBack takes a nought back by whole turns, at least so far.
func woundBack(z plan.Zero, turn, by float64) plan.Zero {
	if turn > 0 {
		turns := math.Ceil(by / turn)
		z.ReferenceMM -= turns * turn
		z.WoundBack = int64(turns)
		z.How += ", then wound back " + wholeTurns(turns)
	}
	return z
}
