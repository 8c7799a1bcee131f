package mechanics

// heldOnPlug: even pressure under the jaws outside; inside, the gap to the plug may close but not more:
// u_bore - u_plug >= -clearance, pressures not negative. Frictionless. The plug gives as a solid disc of its metal.
// What it does: the inward movement stops at about the clearance, so the out of round tends to twice the clearance, and
// the closed plug carries most of the jaws' force. The bore cannot be cut where the plug sits.
func (g RingGrip) heldOnPlug(w wall) (d Distortion, ok bool) {
	f := w.field(g.Jaws, contactTerms, false, onOutside, onBore)
	c := f.contact()
	pad := g.pad(w)
	l := loads{outside: scaled(pad.amplitudes(contactTerms), pad.pressure(g.ForcePerJawN))}
	p := pluggedBore{c, influenceOf(g.Plug.giveWith(c)), c.closing(l), g.Plug.ClearanceMM}
	everywhere := make([]bool, contactCells)
	for i := range everywhere {
		everywhere[i] = true
	}
	press := make([]bool, contactCells)
	cells := make([]float64, contactCells)
	for range contactRounds {
		overlap := func(j int) float64 { return -(p.closing[j] + p.influence.on(j, cells) + p.clearance) }
		if ok = !c.revise(press, everywhere, cells, overlap); ok {
			break
		}
		cells = p.solve(press)
	}
	l.bore = c.amplitudes(cells)
	return f.heldBy(l, onBore), ok
}

type pluggedBore struct {
	*contact
	influence influence
	closing   []float64 // movement of the bore at the cells without the plug, mm
	clearance float64   // mm
}

// solve finds the pressures on the plug for one guess of the cells that press.
func (p pluggedBore) solve(press []bool) []float64 {
	list := chosen(press)
	n := len(list)
	if n == 0 {
		return make([]float64, contactCells)
	}
	m, right := newBandMatrix(n, n-1), make([]float64, n)
	for r, row := range list {
		for c, col := range list {
			m.add(r, c, p.influence.at(row, col))
		}
		right[r] = -p.clearance - p.closing[row]
	}
	m.solve(right)
	return placed(list, right)
}

// closing is the movement of the bore at the cells in the middle of the grip.
func (c *contact) closing(l loads) []float64 {
	list := make([]float64, contactCells)
	for k, u := range c.moves(onOutside, onBore) {
		for i := range list {
			list[i] += u * l.outside[k] * finely[k*(2*i+1)%len(finely)]
		}
	}
	return list
}

// giveWith is the give of bore and plug together for each harmonic of the pressure between them.
func (p Plug) giveWith(c *contact) []float64 {
	moves := c.moves(onBore, onBore)
	if p.ModulusMPa == 0 {
		return moves
	}
	disc := annulus{metal{p.ModulusMPa, p.Poisson}, 0, c.bore}
	for k, h := range c.harmonics {
		moves[k] -= disc.respond(h.m, onOutside).outsideMove
	}
	return moves
}
