package rules

import (
	"catchplate/planner/plan"
	"catchplate/planner/tables"
)

// SlideFacts is what a cut asks of a vertical slide on the lathe's cross slide. Lengths in mm.
type SlideFacts struct {
	CutterMM float64 // diameter of a milling cutter; 0 for a drill and the like
	MostMM   float64 // the largest in this metal
	DepthMM  float64 // of one pass
	Collets  bool    // the workshop has collets for the cutter's shank
	Travel   string  // which slide would go past its travel; empty = none
}

// The largest milling cutters on a vertical slide, in steel and in soft metal, and how deep they go as a part of their diameter (rule B-32).
const (
	mostSlideSteel = 10.0
	mostSlideSoft  = 16.0
	slideDepth     = 0.25
)

// MostOnSlide is the largest milling cutter that a vertical slide bears in a metal of a family, mm.
func MostOnSlide(family string) float64 {
	switch tables.Family(family) {
	case tables.FamilyAluminium, tables.FamilyBrass:
		return mostSlideSoft
	}
	return mostSlideSteel
}

var verticalSlide = Holding{
	plan.Rule{ID: "B-32", Class: "holding", Title: "Vertical slide",
		Text: "IF work is milled in the lathe, on a vertical slide THEN the cutter is held in a collet, never in a drill chuck or a three-jaw; it is no larger than 10 in steel, 16 in brass or aluminium, cuts no deeper than a quarter of its diameter, and is fed against its teeth; every slide goes as far as the cut asks, and the work is taken to lie within 0.03.",
		Why:  "the slide is springy, its screws have play, and a hardened shank creeps out of jaws",
		Sure: "common practice", Source: "common practice, no source", Except: "drills go in the drill chuck"},
	func(c Case) Verdict {
		s := c.Slide
		switch {
		case s == nil:
		case s.Travel != "":
			return refuse("%s", s.Travel)
		case s.CutterMM == 0:
		case !s.Collets:
			return refuse("no collet is owned to hold the milling cutter in the lathe's spindle")
		case s.CutterMM > s.MostMM+placeNoise:
			return refuse("a cutter of Ø%.0f on a vertical slide, %.0f is the most in this metal", s.CutterMM, s.MostMM)
		case s.DepthMM > slideDepth*s.CutterMM+placeNoise:
			return refuse("a pass %.2f deep with a cutter of Ø%.1f on a vertical slide, %.2f is the most", s.DepthMM, s.CutterMM, slideDepth*s.CutterMM)
		}
		return Verdict{}
	},
}

var cautionSlide = caution("F-18", "Milling in the lathe", "IF work is milled on a vertical slide THEN print the caution of milling in the lathe.", "the cutter turns where hands are used to find the work, and a cutter in a drill chuck comes loose",
	"common practice", "common practice, no source",
	"Milling in the lathe: the cutter in a collet drawn up hard, never in a drill chuck; chuck guard down over it; long hair tied up and no sleeves near it, for it turns open in front of you; wind the work clear and stop before you measure or reach for the vice; feed against the teeth, with every other slide locked.",
	func(s plan.Setup, _ plan.Operation) bool { return s.MachineKind == plan.OnSlide })
