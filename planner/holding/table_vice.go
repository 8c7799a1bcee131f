package holding

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/shape"
)

// viceGrip is how long a vice or a vee block holds along round work at least, in diameters and in mm. Common practice, no source.
const (
	viceLeast = 12.0
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
		base := Mount{Holding: h, Machine: on, Across: true, AcrossDeg: deg, Minutes: s.minutes(h), Locate: math.Hypot(s.edgeError(), s.edgeError()), RunOut: 2 * s.edgeError()}
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
				m.Z0, m.Z1 = s.clearOf(b, deg, free)
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

// clearOf is the stretch of a block that lies behind everything that is worked across in that direction, as seen from the free end.
func (s Shop) clearOf(b shape.Block, deg float64, free partspec.End) (z0, z1 float64) {
	z0, z1 = b.Z0, b.Z1
	for _, t := range s.Tasks {
		for _, w := range t.Ways {
			if !w.Across || math.Abs(w.AcrossDeg-deg) > 1e-6 || w.Span[1] <= b.Z0 || w.Span[0] >= b.Z1 {
				continue
			}
			if free == partspec.Right {
				z1 = min(z1, w.Span[0]-jawClearance)
			} else {
				z0 = max(z0, w.Span[1]+jawClearance)
			}
		}
	}
	return z0, z1
}

// lyingCapacity says why round work does not lie in a vice: it is wider than it opens.
func lyingCapacity(m Mount) string {
	if d := 2 * m.Radius; m.Holding.Opening > 0 && d > float64(m.Holding.Opening) {
		return "Ø" + mm(d) + " is over its opening of " + mm(float64(m.Holding.Opening))
	}
	return ""
}
