package replay

import (
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/solid"
)

// turnOver turns the half plane over, so that what is done to an outside serves for an inside: metal then lies below the curve.
func turnOver(c solid.Curve) solid.Curve { return c.Flip() }

// edges breaks and fills the edges that the drawing says: with the least metal as much as they may be broken and as little as they may be
// filled, with the most the other way round.
func (d drawing) edges(c solid.Curve, m metal, inside bool) solid.Curve {
	if inside {
		c = turnOver(c)
	}
	fs := d.outer
	if inside {
		fs = d.inner
	}
	for _, f := range d.features {
		switch f := f.(type) {
		case *partspec.Chamfer:
			if f.Edge.Inside == inside {
				size := m.inside(f.Size)
				c = breakEdge(c, fs.at(float64(f.Edge.Z)), towards(f.Edge.Axial), size, size*math.Tan(f.Angle.Radians()))
			}
		case *partspec.Fillet:
			if f.Edge.Inside == inside {
				c = roundEdge(c, fs.at(float64(f.Edge.Z)), f, m)
			}
		}
	}
	if inside {
		c = turnOver(c)
	}
	return c
}

func towards(e partspec.End) float64 {
	if e == partspec.Left {
		return -1
	}
	return 1
}

// beside is the radius next to z on one side.
func beside(c solid.Curve, z, dir float64) float64 {
	left, right := c.At(z)
	if dir < 0 {
		return left
	}
	return right
}

// behind is the radius of the metal that begins at a face, on its side of it.
func (f face) behind(c solid.Curve, dir float64) float64 {
	if dir < 0 {
		return beside(c, f.lo, dir)
	}
	return beside(c, f.hi, dir)
}

// breakEdge cuts the edge at a face, whose metal lies in direction dir, off by a cone: long along the axis, deep across it, and where the surface rises on
// until it meets that.
func breakEdge(c solid.Curve, f face, dir, long, deep float64) solid.Curve {
	z, r := f.at, f.behind(c, dir)
	if math.IsNaN(r) {
		return c
	}
	reach := math.Max(long, math.Min(2*long, unbroken(c, z, dir)))
	return solid.Lower(c, solid.Line(z, r-deep, z+dir*reach, r-deep+deep*reach/long))
}

// unbroken is how far a curve goes on from z without a step.
func unbroken(c solid.Curve, z, dir float64) float64 {
	z0, z1, _ := c.Domain()
	end := z1
	if dir < 0 {
		end = z0
	}
	for _, s := range stepsOf(c) {
		if ahead := (s.z - z) * dir; ahead > same && ahead < (end-z)*dir {
			end = s.z
		}
	}
	return (end - z) * dir
}

func roundEdge(c solid.Curve, at face, f *partspec.Fillet, m metal) solid.Curve {
	dir := towards(f.Edge.Axial)
	z, r := at.at, at.behind(c, dir)
	if math.IsNaN(r) {
		return c
	}
	if f.Edge.Convex {
		rho := m.inside(f.Radius) // the larger it is, the less metal
		return solid.Lower(c, solid.Arc(z, r-rho, z+dir*rho, r, z+dir*rho, r-rho, true))
	}
	return solid.Upper(c, cornerArc(c, z, r, dir, m.outside(f.Radius)))
}

// cornerArc is the round that fills the corner at (z, r), whose floor lies in direction dir, no higher than the wall of the corner.
func cornerArc(c solid.Curve, z, r, dir, rho float64) solid.Curve {
	arc := solid.Arc(z, r+rho, z+dir*rho, r, z+dir*rho, r+rho, false)
	wall := beside(c, z, -dir)
	if math.IsNaN(wall) {
		return solid.Curve{}
	}
	return solid.Lower(arc, solid.Const(-solid.Far, solid.Far, wall))
}

// fillCorners fills every corner of an outside with the round that a tool's nose may leave.
func fillCorners(c solid.Curve, rho float64) solid.Curve {
	if rho <= 0 {
		return c
	}
	filled := c
	for _, s := range stepsOf(c) {
		dir, floor := -1.0, s.left // the floor lies on the lower side
		if s.right < s.left {
			dir, floor = 1, s.right
		}
		filled = solid.Upper(filled, cornerArc(c, s.z, floor, dir, rho))
	}
	return filled
}

// sameSlope is how far the slope of a chamfer's cone may differ from the drawn one and still be that chamfer, not a neighbour.
const sameSlope = 0.01

// legFigure is how far a chamfer's leg may lie beside its limits: it is measured with a rule or a glass, and no finer. Common practice, no source.
const legFigure = 0.02

// checkChamferLegs holds each chamfer of a cylinder to its own size on the finished work, along the axis from its face, but for what measured diameters may lie
// off. Least and most metal alone would let it take up what its cylinder's limits leave.
func (w *walk) checkChamferLegs(d drawing) {
	for _, f := range d.features {
		c, ok := f.(*partspec.Chamfer)
		if !ok {
			continue
		}
		curve, faces := w.body.Outer, d.outer
		if c.Edge.Inside {
			curve, faces = w.body.Inner, d.inner
		}
		slope := math.Tan(c.Angle.Radians())
		leg, top, ok := legAt(curve, faces.at(float64(c.Edge.Z)).at, towards(c.Edge.Axial), slope)
		if d.knurled(c.Edge.Feature) { // it raises the surface, and the cone goes on up to the drawn one
			leg += math.Max(0, float64(c.Edge.R)-top) / slope
		}
		off := w.slackRadius/slope + legFigure
		if ok && (leg < float64(c.Size.Low)-off || leg > float64(c.Size.High)+off) {
			w.fail(where{}, "finished part", "%s is %s along the axis; it is drawn %s to %s", c.ID(), mm(leg), mm(float64(c.Size.Low)), mm(float64(c.Size.High)))
		}
	}
}

// knurled reports whether a feature's surface is.
func (d drawing) knurled(name string) bool {
	return slices.ContainsFunc(d.features, func(f partspec.Feature) bool {
		k, ok := f.(*partspec.Knurl)
		return ok && k.On == name
	})
}

// legAt is how far along the axis a cone of a slope reaches from a face, in the direction of its metal, to a cylinder of radius top; not ok where none does.
func legAt(c solid.Curve, face, dir, slope float64) (leg, top float64, ok bool) {
	pieces := c.Pieces()
	for i, p := range pieces {
		begin, next := p.Z0, i+1
		if dir < 0 {
			begin, next = p.Z1, i-1
		}
		cone := !p.IsArc() && math.Abs(begin-face) <= same && math.Abs(slopeOf(p)-slope) <= sameSlope
		if cone && next >= 0 && next < len(pieces) && !pieces[next].IsArc() && slopeOf(pieces[next]) == 0 {
			return p.Z1 - p.Z0, pieces[next].R0, true
		}
	}
	return 0, 0, false
}
