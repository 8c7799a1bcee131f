package holding

import (
	"math"

	"catchplate/partspec"
)

// How far out of true, as a full reading over its width, a finished face runs that sits hard on its seat: a shoulder or arbor turned, or jaws bored, in place
// and not moved (the spindle's 0.005, and as much for film or dust: common practice, no source); the steps of hard jaws (0.03 on the face of a test ring, a
// printed certificate).
const (
	truthInPlace = 0.01
	truthOnSteps = 0.03

	truthOnParallels = 0.02
	spindleTruth     = 0.005 // between surfaces cut in one setting: common practice, no source
	headTilt         = 0.02
	rolledTruth      = 0.05 // between the two faces of a small piece of plate or sheet, as supplied: common practice, no source
)

// FaceTruth is what a plane face of a diameter runs out to the finished face that a mount sits on, and that one's name; no name where it sits on none.
func (s Shop) FaceTruth(m Mount, wide float64) (fullReading float64, face string) {
	if m.Flat {
		return s.flatSeat(m)
	}
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

// flatSeat is how true flat work sits on the face that is held, over its own width: on parallels in a vice or before the backing of a chuck less so than on a table, a
// faceplate or what was turned in place (table of accuracies: a job re-held in the vice, a faceplate's face); on an angle plate no face is a seat.
func (s Shop) flatSeat(m Mount) (fullReading float64, face string) {
	face = "face." + m.Free.Other().String()
	switch m.Holding.Kind {
	case partspec.Vice, partspec.VerticalSlide:
		return truthOnParallels, face
	case partspec.ThreeJaw, partspec.FourJaw:
		return truthOnSteps, face
	case partspec.TableClamps, partspec.Faceplate, partspec.SoftJaws, partspec.StubMandrel, partspec.GluedArbor:
		return truthInPlace, face
	}
	return 0, ""
}

// Lean is how far a spindle may lean over the width of flat work: a mill's or drilling machine's head (table of accuracies, tram: 0.02 over 100, from memory), and
// what any spindle runs out.
func (s Shop) Lean(on partspec.MachineKind) float64 {
	if on == "" {
		return spindleTruth
	}
	x0, y0, x1, y1 := s.Flat.Drawn.Bounds()
	return spindleTruth + headTilt*math.Hypot(x1-x0, y1-y0)/100
}

// Supplied is how true to each other, or to a hole, the faces of plate and sheet are that stay as supplied.
func (s Shop) Supplied(k partspec.RelationKind) float64 {
	if k == partspec.Parallel {
		return rolledTruth
	}
	return rolledTruth + truthOnParallels + s.Lean(partspec.Mill)
}
