package drawing

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
)

// sideSeatDims say all of a seat across the side: where its pipe crosses, from the face that it is measured from, and how it lies.
func sideSeatDims(p *partspec.Part, f *partspec.SideSeat) []plan.Dim {
	from, z := mm(f.ZFrom), mm(f.AxisZ)
	place := length(min(from, z), max(from, z), f.Name, figure(p, (f.AxisZ-f.ZFrom).Abs()))
	text := "seat R" + sizeText(p, f.Radius) + " across the side, " + sizeText(p, f.Sunk) + " deep, at " + f.Angle.String()
	return []plan.Dim{place, leader(z, outside(p).radius(z)-mm(f.Depth), false, f.Name, text)}
}
