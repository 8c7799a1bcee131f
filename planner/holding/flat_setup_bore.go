package holding

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

func (s Shop) discSetup(m Mount, at moment, g plan.Grip, setup *plan.Setup) {
	setup.RunOutMM, setup.Grip = m.RunOut, g
	gap := math.Max(breakThrough, s.gapBehind(m, at))
	setup.Bed = &plan.Bed{Kind: "jaws", HeightMM: gap, GapMM: gap}
	setup.Balance = s.turning(m, at)
	setup.How = append([]string{fmt.Sprintf("Jaws on the rim, Ø%s, its face pressed hard back on the jaw steps.", mm(2*m.Radius))}, howGripped(setup.Grip)...)
}

// boreSetup is work on a mandrel or glued to an arbor.
func (s Shop) boreSetup(m Mount, at moment, setup *plan.Setup) {
	setup.Grip.Kind, setup.Grip.Inside, setup.Grip.RadiusMM, setup.RunOutMM = m.GripKind(), m.Inside, tidyMM(s.made(m, at)), m.RunOut
	gap := math.Max(behindShoulder, s.gapBehind(m, at))
	setup.Bed = &plan.Bed{Kind: "plate", HeightMM: gap, GapMM: gap}
	setup.Balance = s.turning(m, at)
	if m.Holding.Kind == partspec.StubMandrel {
		setup.Grip.WorkingN, setup.Grip.DriveMM = math.Floor(screwPull(s.made(m, at))), tidyMM(s.faceRadius(m, s.made(m, at)))
	}
	switch {
	case m.Glue == GlueFace:
		setup.How = []string{fmt.Sprintf("Arbor faced in the chuck to Ø%s, shallow grooves, a relief Ø%s in its middle.", mm(2*m.Radius), mm(2*s.relief(m))), "Degrease both, cyanoacrylate, press on with the tailstock, leave it to cure."}
		setup.How = append(setup.How, s.howFound(m)...)
		setup.How = append(setup.How, "Release by heat (120 to 150 degrees) and a sideways slide.")
	case m.Glue == GlueBore:
		setup.How = []string{fmt.Sprintf("Turn a spigot to slide in %s, with a shoulder; degrease, cyanoacrylate, push home, leave it to cure.", m.Surface), "Release by heat (120 to 150 degrees)."}
	case m.Holding.Kind == partspec.StubMandrel:
		setup.How = []string{
			fmt.Sprintf("Mandrel turned in place to the measured bore, nominally Ø%s, 0.005 to 0.015 small, its spigot shorter than the work is thick.", mm(2*m.Radius)),
			fmt.Sprintf("Shoulder and washer Ø%s, faced flat, so that the sheet is backed on both sides to 2 from its finished rim; tighten the screw well.", mm(2*math.Max(m.Radius+1, s.backed(m)))),
			"Do not take the mandrel out of the chuck until the job is done.",
		}
	case m.Holding.Kind == partspec.PlainMandrel:
		setup.How = []string{fmt.Sprintf("Oil the Ø%s mandrel and press the work on, large end towards the headstock.", mm(2*m.Radius))}
	default:
		setup.How = []string{fmt.Sprintf("Expand in %s only until it drives.", m.Surface)}
	}
}

// behindShoulder is how far a mandrel's shoulder or an arbor's face stands out from what carries it: tools run past the work there. Common practice, no source.
const behindShoulder = 8.0

// made is the radius of the bore that a mandrel or arbor stands in, as it is; of a face glued to an arbor, the arbor's.
func (s Shop) made(m Mount, at moment) float64 {
	r := m.Radius
	if !m.Inside {
		return r
	}
	for _, h := range widest(at.flat.Holes) {
		if math.Hypot(h.X-m.CentreX, h.Y-m.CentreY) <= sameSpot {
			r = h.Radius
		}
	}
	return r
}

// relief is the radius kept free of glue in the middle of an arbor: of the bore that is made on it, and its tool.
func (s Shop) relief(m Mount) float64 {
	for _, b := range s.bores() {
		if math.Hypot(b.x-m.CentreX, b.y-m.CentreY) <= sameSpot {
			return b.radius + toolRoom
		}
	}
	return 0
}
