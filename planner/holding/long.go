package holding

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/process"
)

// tooLong says why work is too long for the lathe in a holding: behind the jaws, or between them and the tailstock's centre.
func (s Shop) tooLong(m Mount) string {
	between := float64(s.Lathe.BetweenCentres)
	if m.Between {
		if between > 0 && s.Length > between {
			return mm(s.Length) + " long is over the " + mm(between) + " between the lathe's centres"
		}
		return ""
	}
	back := m.Z0
	if m.Free == partspec.Left {
		back = m.Z1
	}
	if out := math.Abs(s.rawFree(m.Free) - back); m.Centre && between > 0 && out > between {
		return fmt.Sprintf("%.0f long from the jaws to the centre is over the %s between the lathe's centres", out, mm(between))
	}
	if m.Surface != "stock" || !s.Place.OnBar() || m.Free != s.Place.Free || s.throughSpindle(s.wideStock()) {
		return ""
	}
	if behind := s.barLeft(back); behind > jawLength(m.Holding)+chuckHollow {
		return fmt.Sprintf("the bar goes %.0f back behind the jaws, and not through the spindle's bore of %s: a shorter piece, or smaller stock", behind, mm(float64(s.Lathe.SpindleBore)))
	}
	return ""
}

func (s Shop) wideStock() float64 { return float64(s.Part.Stock.EnvelopeDiameter()) / 2 }

// runs is how far a cut begins before the work and goes on past the stretch that it is for, both together, mm. Ours, no source.
const runs = 3.0

// outOfTravel says that a saddle does not go as far along the work as a cut does.
func (s Shop) outOfTravel(m Mount, way process.Way) string {
	d, ok := s.Lathe.Dial("saddle")
	if !ok || d.Travel == 0 {
		return ""
	}
	from := s.rawFree(m.Free)
	far := math.Max(math.Abs(from-way.Span[0]), math.Abs(from-way.Span[1])) + runs
	if far <= float64(d.Travel) {
		return ""
	}
	return fmt.Sprintf("the saddle would go %.0f, its travel is %s", math.Ceil(far), mm(float64(d.Travel)))
}
