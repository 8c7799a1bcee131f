package process

import (
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/numbers/speed"
	"catchplate/planner/tables"
)

// millingCutter is a milling cutter of a set.
type millingCutter struct {
	partspec.Tool
	kind partspec.ToolKind
	size float64
}

// endMills lists the end mills owned, largest first.
func (c *Context) endMills() []millingCutter {
	var list []millingCutter
	for _, t := range c.tools(partspec.EndMill) {
		for _, s := range t.Sizes {
			list = append(list, millingCutter{t, partspec.EndMill, float64(s)})
		}
	}
	slices.SortStableFunc(list, func(a, b millingCutter) int { return int(math.Copysign(1, b.size-a.size)) })
	return list
}

// sideMill is the smallest end mill that edges are milled with where a larger one is owned: smaller ones bend and take all day. Common practice, no source.
const sideMill = 6.0

// sideMills are the end mills that edges are milled with, largest first.
func (c *Context) sideMills() []millingCutter {
	list := c.endMills()
	for i, m := range list {
		if m.size < sideMill {
			return list[:max(1, i)]
		}
	}
	return list
}

// faceCutters are the largest end mill, and a fly-cutter swung wide enough to cover the work at once where that can be.
func (c *Context) faceCutters(wide float64) []millingCutter {
	list := c.endMills()
	list = list[:min(1, len(list))]
	for _, t := range c.tools(partspec.FlyCutter) {
		if swing := math.Min(float64(t.MostSwing), wide+2*runClear); swing >= float64(t.LeastSwing) && swing > 0 {
			list = append(list, millingCutter{t, partspec.FlyCutter, math.Floor(swing)})
		}
	}
	return list
}

// millWay begins a way on the mill with a cutter.
func (c *Context) millWay(e partspec.End, tool millingCutter) Way {
	kind := cutEdge
	if tool.kind == partspec.FlyCutter {
		kind = cutFly
	}
	return Way{Machine: partspec.Mill, End: e, Tool: tool.Tool, SizeMM: tool.size, Ordinary: true, Rate: c.rateOn(partspec.Mill, kind, tool.size, tool.Tool), Off: c.graduationOff()}
}

// graduationOff is how far any place lies from the table's graduations nearest to it at most, radially.
func (c *Context) graduationOff() float64 {
	x, _ := c.Mill.Dial("x")
	y, _ := c.Mill.Dial("y")
	return math.Hypot(radial(x), radial(y)) / 2
}

// teethOf is how many an end mill is taken to have: two below 6 mm, four above. Common practice, no source; the workshop file does not say.
func teethOf(size float64) float64 {
	if size < 6 {
		return 2
	}
	return 4
}

// millFeed is an end mill's feed a revolution: its teeth times the table's feed of one, at the middle of the range and at its lower end in tough metal.
func (c *Context) millFeed(size float64) float64 {
	row := "HSS end mill 8 to 12 mm, steel"
	switch {
	case size < 8:
		row = "HSS end mill 3 to 6 mm, steel"
	case c.Part.Material.Family == tables.FamilyAluminium || c.Part.Material.Family == tables.FamilyBrass:
		row = "HSS end mill 8 to 12 mm, brass or aluminium"
	}
	r, ok := tables.FindCutting("mill", "feed per tooth", row)
	if !ok {
		return leastFeed
	}
	tooth := r.Range.Middle()
	if speed.Tough(c.Part.Material.Family) {
		tooth = r.Range.Low
	}
	return math.Max(leastFeed, math.Round(1000*tooth*teethOf(size))/1000)
}

// sideWidth is the most an end mill takes beside it, as a part of its diameter, when an edge is milled (table of cutting: 0.1 to 0.25).
const sideWidth = 0.25

// milledForce is the cutting force of an end mill, N, on the high side: the teeth in the cut, each with the thickest chip that it takes there,
//
//	F = z_in * kc11 * a_p * h^(1-mc) * wear,  h = 2 f_z sqrt(a_e/d (1 - a_e/d)), f_z for a_e of half the diameter or more
//
// with kc11 and mc of the material (Kienzle), depth a_p, width a_e and diameter d in mm. The chip's thickness is plane geometry.
func (c *Context) milledForce(depth, width, size, feed float64) float64 {
	if depth <= 0 || width <= 0 || size <= 0 {
		return 0
	}
	engaged := math.Min(1, width/size)
	chip := feed / teethOf(size)
	if engaged < 0.5 {
		chip *= 2 * math.Sqrt(engaged*(1-engaged))
	}
	arc := math.Acos(1-2*engaged) / (2 * math.Pi) // of the circle, that cuts
	return math.Max(1, math.Ceil(arc*teethOf(size))) * c.force(depth, math.Max(chip, leastChip))
}

// leastChip keeps the force law to chips that are cut rather than rubbed, in mm. From memory of handbook practice.
const leastChip = 0.005
