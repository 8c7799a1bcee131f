package holding

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/process"
)

// boltMinutes is what bolting work through its bore takes beside the plate's own time, with the bush to turn first; leastBolted the smallest bore a bush and an
// M6 screw go through, headRoom what its sunk head needs of the bore's length. Ours, no source.
const (
	boltMinutes = 20.0
	leastBolted = 9.0
	headRoom    = 5.0
)

// throughBore lists work drawn down by a screw through its bore, a close bush locating it: upright on the table (clamps), or against an angle plate with its axis along
// the table. The end that lies against the plate must be a plane face.
func (s Shop) throughBore(h partspec.Holding) []Mount {
	var mounts []Mount
	for _, hole := range s.Holes {
		if _, plain := hole.Feature.(*partspec.Bore); !plain || !hole.Through || 2*hole.Radius < leastBolted {
			continue
		}
		for _, free := range []partspec.End{partspec.Left, partspec.Right} {
			base := Mount{Holding: h, Machine: partspec.Mill, Free: free, Surface: hole.Name, Inside: true, Z1: s.Length, Radius: hole.Radius, Helper: "bush", Stop: true,
				Minutes: s.minutes(h) + boltMinutes, Locate: s.centreError(), RunOut: 2 * s.centreError()}
			if h.Kind == partspec.TableClamps {
				mounts = append(mounts, base)
				continue
			}
			for _, deg := range s.acrossDegrees() {
				m := base
				m.Across, m.AcrossDeg, m.Locate, m.Along = true, deg, s.atDatum(), s.edgeError()
				mounts = append(mounts, m)
			}
		}
	}
	return mounts
}

// acrossDegrees lists the directions in which some task wants up to be, the part's axis lying along the table.
func (s Shop) acrossDegrees() []float64 {
	var list []float64
	for _, t := range s.Tasks {
		for _, w := range t.Ways {
			known := !w.Across
			for _, d := range list {
				known = known || math.Abs(d-w.AcrossDeg) < 1e-6
			}
			if !known {
				list = append(list, w.AcrossDeg)
			}
		}
	}
	return list
}

// BoltPull is what a screw through the bore presses with, N: as much as a clamp of the table, or M6 at 6 N m (rule B-08).
func BoltPull(h partspec.Holding) float64 {
	if h.ClampForce > 0 {
		return float64(h.ClampForce)
	}
	return screwPullN
}

// boltHolds is what the cut asks of that pull: its side force by friction, blows reckoned in (rule B-42: 4 times where the cut is interrupted). A drill that comes
// down only turns the work about itself, and tips it where it presses outside the face that the work stands on.
func (s Shop) boltHolds(m Mount, t process.Task, way process.Way, light float64) float64 {
	side, tip := way.Force(light), 0.0
	if pressesDown(t) && !m.Across {
		side *= math.Min(1, way.ForceAt/m.Radius)
		foot := s.Rim(m.Free.Other())
		for _, spot := range t.Spots {
			tip = math.Max(tip, way.ThrustN*(math.Hypot(spot.X, spot.Y)-foot)/foot)
		}
	}
	return math.Ceil(boltedSafety * math.Max(side/frictionFinished, tip))
}

// boltedSafety: an end stop takes the blows of an interrupted cut, so that the common factor serves.
const boltedSafety = safety

// web is the length of bore that a seat on the free end leaves for the bush and the screw's head.
func (s Shop) web(m Mount) float64 {
	left := s.Length
	for _, f := range s.Part.Features {
		if seat, ok := f.(*partspec.Seat); ok && seat.On == m.Free {
			left -= float64(seat.Depth)
		}
	}
	return left
}

// boltCapacity says why a bush and a sunk screw do not go into a bore.
func (s Shop) boltCapacity(m Mount) string {
	if web := s.web(m); web < headRoom {
		return fmt.Sprintf("%s of bore is left under the crown, a bush with a sunk screw wants %s", mm(web), mm(headRoom))
	}
	return ""
}
