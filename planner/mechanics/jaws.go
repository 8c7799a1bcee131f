package mechanics

import "math"

// heldByRigidJaws: bored jaws that do not yield. The outside may not pass the jaw's arc, whose radius is the work's plus
// the mismatch and which has moved in by d: u <= mismatch - d cos(angle); pressures are not negative and carry the jaw's
// force. Frictionless; the cells that press are found by guessing and correcting. ok is false if that did not settle.
func (g RingGrip) heldByRigidJaws(w wall) (d Distortion, ok bool) {
	f := w.field(g.Jaws, contactTerms, w.bore == 0, onOutside)
	c := f.contact()
	jaws := rigidJaws{c, influenceOf(c.moves(onOutside, onOutside)), g.Rigid.MismatchMM, g.ForcePerJawN / g.GripLengthMM}
	under := make([]bool, contactCells)
	half := g.pad(w).halfAngle
	for i, angle := range c.angles {
		under[i] = i == 0 || angle <= half
	}
	press := append([]bool(nil), under...)
	var cells []float64
	for range contactRounds {
		var moved float64
		cells, moved = jaws.solve(press)
		overlap := func(j int) float64 { return jaws.influence.on(j, cells) + moved*math.Cos(c.angles[j]) - jaws.mismatch }
		if ok = !c.revise(press, under, cells, overlap); ok {
			break
		}
	}
	return f.heldBy(loads{outside: c.amplitudes(cells)}, g.cutFace(w)), ok
}

type rigidJaws struct {
	*contact
	influence influence
	mismatch  float64 // mm
	force     float64 // on one jaw, N per mm of its length
}

// solve finds the pressures for one guess of the cells that press, and the jaws' movement d.
func (j rigidJaws) solve(press []bool) (cells []float64, moved float64) {
	list := chosen(press)
	n := len(list)
	m, right := newBandMatrix(n+1, n), make([]float64, n+1)
	for r, row := range list {
		for c, col := range list {
			m.add(r, c, j.influence.at(row, col))
		}
		m.add(r, n, math.Cos(j.angles[row]))
		m.add(n, r, j.contact.force[row])
		right[r] = j.mismatch
	}
	right[n] = j.force
	m.solve(right)
	return placed(list, right), right[n]
}

// heldBy reads errors and stress of a contact.
func (f *field) heldBy(l loads, seen face) Distortion {
	d := f.errors(l, seen)
	d.StressMostMPa = f.contactStress(l, seen)
	return d
}
