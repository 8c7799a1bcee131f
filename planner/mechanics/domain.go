package mechanics

import (
	"fmt"
	"math"
)

// confidence judges the figures of a ring by the range in which they were checked. The first reason that rules the
// figure out wins; then the first that makes it rough.
func (g RingGrip) confidence(d Distortion) Confidence {
	if why := g.refusal(d); why != "" {
		return none(why)
	}
	if why := g.reservation(); why != "" {
		return rough(bandBound, why)
	}
	switch {
	case g.Rigid != nil:
		return good(bandWebAndContact, "stiff bored jaws of the stated mismatch; checked against finite elements")
	case g.Plug != nil:
		return good(bandPart, "plug of the stated clearance under the jaws; checked against finite elements")
	case g.WebMM > 0:
		return good(bandWebAndContact, "wall closed by a web; checked against finite elements (largest error within 11 %)")
	case g.GripLengthMM < g.LengthMM:
		return good(bandPart, "gripped over part of the length; checked against finite elements")
	}
	if float64(g.Jaws) > longWave*g.slenderness() {
		return good(bandShortWave, "gripped over the full length; checked against finite elements (middle of the grip within 1 %)")
	}
	return good(bandFull, "gripped over the full length; checked against finite elements (middle of the grip within 1 %)")
}

// refusal says why there is no trustworthy figure, or nothing.
func (g RingGrip) refusal(d Distortion) string {
	reserve := g.stressReserve()
	slender := g.slenderness()
	switch {
	case g.YieldShare(d.StressMostMPa) > 1:
		return fmt.Sprintf("the wall would yield: %.0f MPa (and %.0f %% more is possible) against %.0f",
			d.StressMostMPa, (reserve-1)*100, g.YieldMPa)
	case d.ErrorMostMM > largestError*g.OutsideDiameterMM:
		return fmt.Sprintf("the wall gives more than %.1f %% of the diameter, where a linear figure comes out low", largestError*100)
	case slender > thinnestRing:
		return fmt.Sprintf("the wall is thinner than 1/%.0f of the mean radius", thinnestRing)
	}
	return ""
}

// YieldShare is a predicted stress, with what it may be low by, as a part of what the metal bears: over 1 it yields. 0 where its yield is not known.
func (g RingGrip) YieldShare(stressMPa float64) float64 {
	if g.YieldMPa <= 0 {
		return 0
	}
	return stressMPa * g.stressReserve() / g.YieldMPa
}

// stressReserve is how much higher than predicted the stress may be.
func (g RingGrip) stressReserve() float64 {
	switch {
	case g.Rigid != nil || g.Plug != nil:
		return yieldReserveContact
	case g.WebMM > 0:
		return yieldReserveCup
	}
	return yieldReserve
}

// slenderness is the mean radius over the wall; 1/2 for a bar.
func (g RingGrip) slenderness() float64 {
	h := math.Min(g.WallMM, g.OutsideDiameterMM/2)
	return (g.OutsideDiameterMM - h) / 2 / h
}

// reservation says why the figure is only a bound or an estimate, or nothing.
func (g RingGrip) reservation() string {
	w := g.wall()
	share := g.pad(w).halfAngle * float64(g.Jaws) / math.Pi
	switch {
	case g.Departure != "":
		return "not a plain ring (" + g.Departure + "): the bound of its thinnest uniform wall"
	case w.bore == 0:
		return "a solid bar: an upper bound, the gripped slice alone"
	case g.slenderness() < thickestRing:
		return "a thick wall, outside the range checked: an estimate, small in any case"
	case g.LengthMM > w.length:
		return fmt.Sprintf("longer than %.0f walls: an upper bound, that of a shorter tube", longestRing)
	case g.Rigid == nil && share > widestEvenPad:
		return "wide jaws taken to press evenly, as only jaws bored to the very size of the work do: state their mismatch"
	case g.Rigid == nil && g.JawArcDeg == 0 && g.clipped(w):
		return "jaws wider than half their share of the round, taken to touch on half"
	case g.WebMM > 0 && (g.Inside || g.Rigid != nil || g.Plug != nil):
		return "a web with jaws in the bore, stiff jaws or a plug was not checked"
	case g.Jaws != 2 && g.Jaws != 3 && g.Jaws != 4 && g.Jaws != 6:
		return "2, 3, 4 and 6 jaws were checked, this number was not"
	}
	return ""
}

// clipped says that a straight jaw is wider than it is taken to touch.
func (g RingGrip) clipped(w wall) bool {
	p := g.pad(w)
	return g.JawWidthMM > 2*p.radius*math.Sin(widestStraightJaw*math.Pi/float64(g.Jaws))
}
