package holding

import (
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/process"
	"catchplate/planner/shape"
)

// A zone is where a tool works, seen along the spindle: the way of a disc, or everything beyond a radius where the work turns.
type zone struct {
	plane.Capsule
	below   float64 // its radius as jaws count it, whose top is below the face: a cone is narrower there; 0 = as the capsule has it
	beyond  bool    // outside the radius about the place, not inside it
	through bool    // the tool comes out at the held face
	edge    bool    // it works along an edge of the outline
}

// away is how far a place lies outside a zone.
func (z zone) away(x, y float64) float64 {
	d := z.Off(x, y) - z.Radius
	if z.beyond {
		return -d
	}
	return d
}

// besideJaws is how far from its way a tool keeps jaws from coming nearer than toolRoom.
func (z zone) besideJaws() float64 {
	if z.below > 0 {
		return z.below + toolRoom
	}
	return z.Radius + toolRoom
}

// coneBelow is the radius of a cone as jaws count it, which stand below its mouth: with the room square to its flank.
func coneBelow(mouth, includedDeg float64) float64 {
	return mouth + toolRoom*(1/math.Cos(includedDeg/2*math.Pi/180)-1)
}

// worked lists where a task's tool works. all: on a whole face.
func (s Shop) worked(t process.Task, way process.Way) (zones []zone, all bool) {
	if f := t.Flat; f != nil && (f.Back != nil || f.Front != nil) && len(t.Spots) == 0 {
		return nil, true
	}
	if t.Flat != nil && len(t.Flat.Seats) > 0 {
		return nil, true
	}
	through := s.opens(t)
	if t.Flat != nil && len(t.Flat.Slots) > 0 {
		for _, g := range t.Flat.Slots {
			zones = append(zones, zone{Capsule: g.Capsule, through: through})
		}
		return zones, false
	}
	for _, p := range t.Spots {
		z := zone{Capsule: plane.Round(p.X, p.Y, p.Radius), through: through}
		if t.By(way) == plan.Countersink { // the cone's own body stands wider over the work than the mouth it cuts
			z.Radius = math.Max(p.Radius, way.SizeMM/2)
			z.below = math.Min(z.Radius, coneBelow(p.Radius, float64(way.Tool.Angle)))
		}
		zones = append(zones, z)
	}
	if t.Flat != nil {
		for _, e := range t.Flat.Edges {
			zones = append(zones, s.along(e, way)...)
		}
	}
	return zones, false
}

// opens reports whether a task goes through the work.
func (s Shop) opens(t process.Task) bool {
	return t.Z0 <= sameSpot && t.Z1 >= s.Length-sameSpot
}

// along is where a tool works on an edge: on a mill the way of the cutter outside the edge, with a run in and out; on a lathe all beyond the arc's radius.
func (s Shop) along(cut shape.EdgeCut, way process.Way) []zone {
	e := s.Flat.Drawn.Edges[cut.Edge]
	if way.Machine == "" {
		if !e.IsArc() {
			return nil
		}
		return []zone{{Capsule: plane.Round(e.CX, e.CY, e.Radius+cut.Left), beyond: true, edge: true, through: true}}
	}
	if e.IsArc() {
		return []zone{{Capsule: plane.Round(e.CX, e.CY, e.Radius+cut.Left+way.SizeMM), edge: true, through: true}}
	}
	r := way.SizeMM / 2
	if way.AskewDeg != 0 {
		return []zone{{Capsule: process.AskewPath(e, cut.Left, r, way.Run), edge: true, through: true}}
	}
	ox, oy := e.Outward(0)
	off := cut.Left + r
	x0, y0, x1, y1 := s.rawRim().Bounds() // a cutter runs past the whole of the work
	run := way.SizeMM + runOver
	path := plane.Capsule{X0: e.X0 + off*ox, Y0: e.Y0 + off*oy, X1: e.X1 + off*ox, Y1: e.Y1 + off*oy, Radius: r}
	switch {
	case math.Abs(oy) < sameSpot:
		path.Y0, path.Y1 = y0-run, y1+run
	case math.Abs(ox) < sameSpot:
		path.X0, path.X1 = x0-run, x1+run
	}
	return []zone{{Capsule: path, edge: true, through: true}}
}

// runOver is how far a cutter runs clear of the ends of the work. Common practice, no source.
const runOver = 2.0

// finishedHoles are the holes that the part ends up with: no clamp, jaw or parallel counts on metal there.
func (s Shop) finishedHoles() []zone {
	var list []zone
	for _, t := range s.Tasks {
		if t.Process == plan.Chamfer { // its cone is no part of the shape
			for _, p := range t.Spots {
				list = append(list, zone{Capsule: plane.Round(p.X, p.Y, p.Radius)})
			}
		}
		if t.Flat == nil {
			continue
		}
		for _, h := range t.Flat.Holes {
			list = append(list, zone{Capsule: plane.Round(h.X, h.Y, h.Radius)})
		}
		for _, g := range t.Flat.Slots {
			list = append(list, zone{Capsule: g.Capsule})
		}
	}
	return list
}

// heldClear lists where tools may work while a mount holds, whatever of it is done then: in the holes, and on the edges that the mount spares. What holds is put
// clear of all of it, so that any of these tasks may share one setting.
func (s Shop) heldClear(m Mount) []zone {
	if z, ok := s.clear[m.ID]; ok {
		return z
	}
	zones := s.clearZones(m)
	s.clear[m.ID] = zones
	return zones
}

// clearZones is heldClear before it is kept.
func (s Shop) clearZones(m Mount) []zone {
	zones := []zone{}
	for _, t := range s.Tasks {
		if !s.spares(m, t) {
			continue
		}
		for _, w := range t.Ways {
			if w.Machine != m.Machine || w.End != m.Free || s.elsewhere(m, t) {
				continue
			}
			z, _ := s.worked(t, w)
			zones = append(zones, z...)
		}
	}
	return zones
}

// spares reports whether a mount leaves free what a task cuts, as far as the outline goes; nothing but its edges where it is for them alone.
func (s Shop) spares(m Mount, t process.Task) bool {
	if m.EdgesOnly {
		if t.Flat == nil || len(t.Flat.Edges)+len(t.Flat.Seats) == 0 { // nothing of a seat comes through where the parallels lie
			return false
		}
	}
	if t.Flat == nil {
		return true
	}
	for _, e := range t.Flat.Edges {
		if !slices.Contains(m.Spared, e.Edge) {
			return false
		}
	}
	return true
}

// milledEdges are the edges that a machine may cut and that face a direction.
func (s Shop) milledEdges(on partspec.MachineKind, faces func(ox, oy float64) bool) []int {
	var list []int
	for _, t := range s.Tasks {
		if t.Flat == nil || !slices.ContainsFunc(t.Ways, func(w process.Way) bool { return w.Machine == on && w.AskewDeg == 0 }) {
			continue
		}
		for _, e := range t.Flat.Edges {
			if ox, oy := s.Flat.Drawn.Edges[e.Edge].Outward(0.5); faces(ox, oy) && !slices.Contains(list, e.Edge) {
				list = append(list, e.Edge)
			}
		}
	}
	return list
}

// clearOf is the least distance of a place from zones; infinite where there are none.
func clearOf(zones []zone, x, y float64) float64 {
	least := math.Inf(1)
	for _, z := range zones {
		least = math.Min(least, z.away(x, y))
	}
	return least
}
