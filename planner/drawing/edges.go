package drawing

import (
	"math"

	"catchplate/partspec"
)

// worked puts the chamfers and fillets of one side, outside or inside, into a curve.
func (c curve) worked(p *partspec.Part, inside bool) curve {
	for _, f := range p.Features {
		switch f := f.(type) {
		case *partspec.Chamfer:
			if f.Edge.Inside == inside {
				c = c.chamfered(f)
			}
		case *partspec.Fillet:
			if f.Edge.Inside == inside {
				c = c.filleted(f)
			}
		}
	}
	return c
}

// reach is the stretch of the axis that an edge's chamfer or fillet takes.
func reach(e partspec.Edge, long float64) (from, to float64) {
	if e.Axial == partspec.Left {
		return mm(e.Z) - long, mm(e.Z)
	}
	return mm(e.Z), mm(e.Z) + long
}

// rise is the direction in which the curve leaves the edge's radius: metal is taken off an edge that stands out and left in a corner.
func rise(e partspec.Edge) float64 {
	if e.Convex != e.Inside {
		return -1
	}
	return 1
}

func (c curve) chamfered(f *partspec.Chamfer) curve {
	from, to := reach(f.Edge, mm(f.Size.Value))
	r := mm(f.Edge.R) + rise(f.Edge)*mm(f.Size.Value)*math.Tan(f.Angle.Radians())
	if f.Edge.Axial == partspec.Left {
		return c.replace(from, to, curve{line(from, c.near(from, f.Edge), to, r)})
	}
	return c.replace(from, to, curve{line(from, r, to, c.near(to, f.Edge))})
}

// near is the radius of the surface that an edge ends, away from the edge.
func (c curve) near(z float64, e partspec.Edge) float64 {
	for _, s := range c {
		if s.Z0 < s.Z1 && s.Z0 <= z && z <= s.Z1 && (e.Axial == partspec.Left && s.Z1 >= mm(e.Z) || e.Axial != partspec.Left && s.Z0 <= mm(e.Z)) {
			return at(s, z)
		}
	}
	return mm(e.R)
}

func (c curve) filleted(f *partspec.Fillet) curve {
	radius, sign := mm(f.Radius.Value), rise(f.Edge)
	from, to := reach(f.Edge, radius)
	r, face := mm(f.Edge.R), mm(f.Edge.R)+sign*radius
	arc := line(from, face, to, r)
	arc.CentreZ = to
	if f.Edge.Axial == partspec.Left {
		arc = line(from, r, to, face)
		arc.CentreZ = from
	}
	arc.RadiusMM, arc.CentreR = radius, face
	return c.replace(from, to, curve{arc})
}
