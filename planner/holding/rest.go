package holding

import "catchplate/partspec"

// How far out of true, as a full reading over its width, a finished face runs that sits hard on its seat: a shoulder or arbor turned, or jaws bored, in place
// and not moved (the spindle's 0.005, and as much for film or dust: common practice, no source); the steps of hard jaws (0.03 on the face of a test ring, a
// printed certificate).
const (
	truthInPlace = 0.01
	truthOnSteps = 0.03
)

// FaceTruth is what a plane face of a diameter runs out to the finished face that a mount sits on, and that one's name; no name where it sits on none.
func (s Shop) FaceTruth(m Mount, wide float64) (fullReading float64, face string) {
	truth, end := truthInPlace, m.Free.Other()
	rim := s.Rim(end)
	switch {
	case m.Step && m.Z1-m.Z0 > rim: // so long a grip goes by the jaws, not by their steps
		return 0, ""
	case m.Glue != NoGlue, m.Holding.Kind == partspec.StubMandrel && !m.Threaded, m.Step && m.Holding.Kind == partspec.SoftJaws:
	case m.Step:
		truth = truthOnSteps
	default:
		return 0, ""
	}
	if rim > 0 && wide > 2*rim {
		truth *= wide / (2 * rim)
	}
	return truth, "face." + end.String()
}
