package holding

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/shape"
)

// viceGrip is how long a vice or a vee block holds along round work at least, in diameters and in mm. Common practice, no source.
const (
	viceLeast = 4.0
	viceLong  = 50.0
)

// lying lists round work lying along the table: in a vice with a vee against the moving jaw, or in vee blocks under a clamp; on its bar, or on finished cylinders.
func (s Shop) lying(h partspec.Holding, on partspec.MachineKind) []Mount {
	var mounts []Mount
	long := viceLong
	if h.JawLength > 0 {
		long = float64(h.JawLength)
	}
	for _, deg := range s.acrossDegrees() {
		base := Mount{Holding: h, Machine: on, Across: true, AcrossDeg: deg, Minutes: s.minutes(h), Locate: s.atDatum(), Along: s.edgeError(), RunOut: 2 * s.edgeError()}
		if s.Place.OnBar() {
			m := base
			m.Free, m.Surface, m.Radius = s.Place.Free, "stock", s.gripRadius()
			front := s.Place.BarSide(s.Length) - inward(m.Free)*BarClearance
			m.Z0, m.Z1 = span(front, front-inward(m.Free)*min(long, s.barLeft(front)))
			mounts = append(mounts, m)
		}
		for _, b := range s.Blocks {
			if !b.Cylinder() || b.Z1-b.Z0 < viceLeast {
				continue
			}
			for _, free := range []partspec.End{partspec.Left, partspec.Right} {
				m := base
				m.Free, m.Surface, m.Radius, m.Packed = free, b.Name, s.blockGrip(b), true
				m.Z0, m.Z1 = s.clearOf(m, b)
				if free == partspec.Right {
					m.Z1 = min(m.Z1, m.Z0+long)
				} else {
					m.Z0 = max(m.Z0, m.Z1-long)
				}
				if m.Z1-m.Z0 >= viceLeast {
					mounts = append(mounts, m)
				}
			}
		}
	}
	return mounts
}

// clearOf is the stretch of a block that lies behind everything that is worked across in a mount's direction and not between its jaws, as seen from the free end, and off the round in
// the corner of a shoulder.
func (s Shop) clearOf(m Mount, b shape.Block) (z0, z1 float64) {
	z0, z1 = b.Z0, b.Z1
	for _, other := range s.Blocks {
		if other.Greatest <= b.Greatest {
			continue
		}
		if math.Abs(other.Z1-b.Z0) < shoulderRoom {
			z0 = b.Z0 + shoulderRoom
		}
		if math.Abs(other.Z0-b.Z1) < shoulderRoom {
			z1 = b.Z1 - shoulderRoom
		}
	}
	for _, t := range s.Tasks {
		if s.betweenJaws(m, t) {
			continue
		}
		for _, w := range t.Ways {
			if !w.Across || !m.turnsTo(w.AcrossDeg) || w.Span[1] <= b.Z0 || w.Span[0] >= b.Z1 {
				continue
			}
			if m.Free == partspec.Right {
				z1 = min(z1, w.Span[0]-jawClearance)
			} else {
				z0 = max(z0, w.Span[1]+jawClearance)
			}
		}
	}
	return z0, z1
}

// shoulderRoom keeps lying work's grip off the round in the corner of a shoulder, and off where the shoulder may come to lie, in mm. Common practice, no source.
const shoulderRoom = 1.5

// lyingCapacity says why round work does not lie in a vice: it is wider than it opens.
func lyingCapacity(m Mount) string {
	if d := 2 * m.Radius; m.Holding.Opening > 0 && d > float64(m.Holding.Opening) {
		return "Ø" + mm(d) + " is over its opening of " + mm(float64(m.Holding.Opening))
	}
	return ""
}
