package replay

import (
	"math"

	"catchplate/partspec"
)

const (
	// headTilt is how far a mill's or drilling machine's spindle leans from square to its table, over 100 mm (table of accuracies, tram: from memory).
	headTilt = 0.02
	// rolledTruth is how far the two faces of a small piece of plate or sheet, as supplied, are from parallel. Common practice, no source.
	rolledTruth = 0.05
)

// seatTruth is how far out of true, over its own width, flat work stands that sits with a face on what carries it: parallels in a vice (table of accuracies: a
// milled job re-held, at best), a table or a faceplate wiped clean (the same table: a faceplate's face), the steps of jaws, a shoulder turned in place (faceTruth).
var seatTruth = map[partspec.HoldingKind]float64{
	partspec.Vice: 0.02, partspec.VerticalSlide: 0.02, partspec.TableClamps: 0.01, partspec.Faceplate: 0.01, partspec.ThreeJaw: 0.03, partspec.FourJaw: 0.03,
	partspec.SoftJaws: 0.01, partspec.StubMandrel: 0.01, partspec.GluedArbor: 0.01,
}

// checkSquare holds squareness of a face to a hole, and parallelism of the two faces, through the settings that made them.
func (f *flatWalk) checkSquare(r partspec.Relation) {
	err, known := f.facesApart()
	if r.Kind == partspec.Square {
		face, hole := r.Of, r.To
		if face.Face == partspec.EndInvalid {
			face, hole = hole, face
		}
		err, known = f.leansOn(face.Face, hole.Feature)
	}
	switch {
	case !known:
		f.failOp("relation", "%s of %s to %s cannot be held: nothing that made the later of them sat on the other, or on what it is true to", r.Kind, r.Of, r.To)
	case err > float64(r.Within)+figure:
		f.failOp("relation", "%s of %s to %s: %s to expect, %s drawn", r.Kind, r.Of, r.To, mm(err), mm(float64(r.Within)))
	}
}

// facesApart is how far the two faces may be from parallel: the later was cut with the earlier on its seat.
func (f *flatWalk) facesApart() (float64, bool) {
	later := max(f.faceMade(partspec.Left), f.faceMade(partspec.Right))
	if later < 0 {
		return rolledTruth, true
	}
	seat, ok := f.seatOf(later)
	return seat + spindleError, ok
}

// leansOn is how far a face may be from square to a hole: by what the hole was made true to, and how that lies to the face.
func (f *flatWalk) leansOn(face partspec.End, feature string) (float64, bool) {
	least, known := 0.0, false
	for _, t := range f.finalOf(feature) {
		s := t.key.setup
		lean := spindleError
		if setup := f.plan.Setups[s]; setup.MachineKind != string(partspec.Lathe) {
			lean += headTilt * f.across() / 100
		}
		off, ok := f.faceToSetting(face, s)
		if !ok {
			return 0, false
		}
		least, known = math.Max(least, off+lean), true
	}
	return least, known
}

// faceToSetting is how far a face may be out of true in a setting: it was cut in it, it sat on the seat, it is parallel to the one that did, or was cut on the
// same face, still uncut then, as the other.
func (f *flatWalk) faceToSetting(face partspec.End, s int) (float64, bool) {
	up := partspec.Right
	if f.plan.Setups[s].FreeEnd == partspec.Left.String() {
		up = partspec.Left
	}
	seat, seated := f.seatOf(s)
	mine, other := f.faceMade(face), f.faceMade(face.Other())
	least := math.Inf(1)
	if face == up && mine == s {
		least = 0
	}
	if face != up && mine < s && seated {
		least = math.Min(least, seat)
	}
	if apart, ok := f.facesApart(); ok && face == up && other < s && seated {
		least = math.Min(least, seat+apart)
	}
	if first, ok := f.seatOf(mine); ok && face == up && seated && (other <= min(mine, s) || other > max(mine, s)) {
		least = math.Min(least, first+seat)
	}
	return least, !math.IsInf(least, 1)
}

// faceMade is the setting that cut a face last; -1 where it is as supplied.
func (f *flatWalk) faceMade(e partspec.End) int {
	back, front, _ := f.work.faces()
	made := -1
	for _, t := range f.work.taken {
		if !t.centre && (e == partspec.Left && math.Abs(t.z1-back) <= same || e == partspec.Right && math.Abs(t.z0-front) <= same) {
			made = max(made, t.key.setup)
		}
	}
	return made
}

// seatOf is how true work sits in a setting; not known where its face is no seat, or there is no such setting.
func (f *flatWalk) seatOf(s int) (float64, bool) {
	if s < 0 || s >= len(f.plan.Setups) || f.plan.Setups[s].Grip.Kind == "ledge" {
		return 0, false
	}
	seat, ok := seatTruth[partspec.HoldingKind(f.plan.Setups[s].HoldingKind)]
	return seat, ok
}

// across is the widest that the outline is.
func (f *flatWalk) across() float64 {
	x0, y0, x1, y1 := f.drawn.outline.Bounds()
	return math.Hypot(x1-x0, y1-y0)
}
