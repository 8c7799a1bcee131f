package replay

import (
	"math"

	"catchplate/partspec"
)

// faceTruth is how far out of true, as a full reading over its width, a finished face runs that sits hard on its seat: a shoulder or arbor turned, or jaws bored,
// in place and not moved (the spindle's 0.005, and as much for film or dust: common practice, no source); the steps of hard jaws (0.03 on the face of a
// test ring, a printed certificate: table of accuracies).
var faceTruth = map[partspec.HoldingKind]float64{
	partspec.StubMandrel: 0.01, partspec.GluedArbor: 0.01, partspec.SoftJaws: 0.01, partspec.ThreeJaw: 0.03, partspec.FourJaw: 0.03,
}

// rest is the finished face that a setup sits on.
type rest struct {
	made int     // setup in which it was cut; -1 for none
	wide float64 // its diameter
}

// noteRest keeps which finished face the setup at hand sits on, while the work still has it.
func (w *walk) noteRest() {
	s := rest{made: -1}
	if w.rested() {
		face := w.planeAt("seat", w.headZ(), -w.free(), false)
		s.made, _ = w.madeBy(face)
		z := face.z + w.free()*offSurface
		s.wide = 2 * w.body.Outer.Least(z-offSurface/2, z+offSurface/2)
	}
	w.rests = append(w.rests, s)
}

// rested reports whether the work's own end sits on a seat of the holding.
func (w *walk) rested() bool {
	switch w.setup.Grip.Kind {
	case "glued_face", "glued_bore":
		return true
	case "mandrel", "split_mandrel":
		return w.holding.Kind == partspec.StubMandrel
	case "jaws":
		lo, hi := w.grip()
		back := lo
		if w.free() < 0 {
			back = hi
		}
		// A grip longer than half the face's width goes by the jaws, not by their steps.
		return math.Abs(w.headZ()-back) <= same+w.slackPlace && hi-lo <= w.body.Outer.Greatest(lo, hi)
	}
	return false
}

// faceToFace is what two plane faces cut in setups a and b run out to one another when the later setup sits on a face of the earlier; not known otherwise.
func (w *walk) faceToFace(a, b int, of, to surface) (float64, bool) {
	later, earlier := max(a, b), min(a, b)
	if !of.plane || !to.plane || a == b || earlier < 0 || later >= len(w.rests) || w.rests[later].made != earlier {
		return 0, false
	}
	w.setup = w.plan.Setups[later]
	truth, sure := faceTruth[partspec.HoldingKind(w.setup.HoldingKind)]
	wide := math.Max(w.faceWidth(of), w.faceWidth(to))
	return truth*math.Max(1, wide/w.rests[later].wide) + spindleError, sure && w.rests[later].wide > 0
}

// faceWidth is the diameter of a plane face.
func (w *walk) faceWidth(s surface) float64 {
	z := s.z - 2*offSurface*s.look
	return 2 * w.body.Outer.Greatest(z-offSurface, z+offSurface)
}
