package mechanics

import "math"

// Released is what is left of a bore (or outside) that was cut round in the grip, after the jaws let go.
type Released struct {
	ForceLeftN    float64    // on each jaw at the last cut, with the chuck's stiffness as given; constant if not given
	Error         Distortion // at that force
	ErrorSoftest  Distortion // force constant through the cut: spring, draw bar, air
	ErrorStiffest Distortion // jaws that do not follow at all
}

// Released tells what springs back when the wall was cut from rawWall to the wall of g while held: minus the elastic
// movement of the *final* wall under the force left at the last cut. The raw wall's figure is wrong by up to 95 %.
//
//	F1 = F0 (1/k0 + 1/Kc)/(1/k1 + 1/Kc),  1/k = movement of the wall at a jaw per newton
//
// chuckNPerUM is the stiffness Kc of jaw, scroll and body per jaw, N/um; 0 = not known, and then Error is the softest end.
// Published: 216 N/um (power chuck, steel top jaws) and 66 N/um (composite ones), Ito, Modular Design for Machine Tools;
// nothing is known for hand chucks of 80 to 125 mm, so print both ends. Error: 0.1 % of the elastic part while the error stays
// below 2 % of the wall, 5 % at a fifth of it; the force left is the weak figure.
func (g RingGrip) Released(rawWallMM, chuckNPerUM float64) (Released, error) {
	if err := firstFault(limit{"raw wall (mm)", rawWallMM, rawWallMM >= g.WallMM, "the finished wall or more"},
		notNegative("chuck stiffness (N/um)", chuckNPerUM)); err != nil {
		return Released{}, err
	}
	final, err := g.Distortion()
	if err != nil {
		return Released{}, err
	}
	rawGive, err := g.raw(rawWallMM).give()
	if err != nil {
		return Released{}, err
	}
	finalGive, err := g.give()
	if err != nil {
		return Released{}, err
	}
	stiffest := forceLeft(g.ForcePerJawN, rawGive, finalGive, 0)
	left := g.ForcePerJawN
	if chuckNPerUM > 0 {
		left = forceLeft(g.ForcePerJawN, rawGive, finalGive, 1/(chuckNPerUM*1000))
	}
	r := Released{ForceLeftN: left, ErrorSoftest: final}
	if r.Error, err = g.at(left); err != nil {
		return Released{}, err
	}
	r.ErrorStiffest, err = g.at(stiffest)
	return r, err
}

// forceLeft is the force that stays when a wall of give raw has become one of give final, mm/N, in jaws of the given give.
func forceLeft(force, raw, final, jaw float64) float64 {
	if final+jaw == 0 {
		return force
	}
	return force * (raw + jaw) / (final + jaw)
}

func (g RingGrip) at(force float64) (Distortion, error) {
	g.ForcePerJawN = force
	return g.Distortion()
}

// raw is the work before the cut: thicker on the side that is cut.
func (g RingGrip) raw(wall float64) RingGrip {
	if g.Inside {
		g.OutsideDiameterMM += 2 * (wall - g.WallMM)
	}
	g.WallMM = wall
	return g
}

// give is how far the gripped face moves at the middle of a jaw, in the middle of the grip, per newton of each jaw, mm/N.
func (g RingGrip) give() (float64, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	w := g.wall()
	p := g.pad(w)
	pressed := onOutside
	if g.Inside {
		pressed = onBore
	}
	amplitudes := scaled(p.amplitudes(fourierTerms), p.pressure(1))
	l := loads{outside: amplitudes}
	if g.Inside {
		l = loads{bore: amplitudes}
	}
	f := w.field(g.Jaws, fourierTerms, w.bore == 0, pressed)
	return math.Abs(f.movements(l, w.grip/2, pressed)[0]), nil
}
