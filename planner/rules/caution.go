package rules

import (
	"strings"

	"catchplate/planner/plan"
)

// thinSheet is the thickness under which a flat part is drilled as sheet (rule F-11).
const thinSheet = 3.0

func caution(id, title, text, why, sure, source, print string, applies func(plan.Setup, plan.Operation) bool) Caution {
	return Caution{plan.Rule{ID: id, Class: "caution", Title: title, Text: text, Why: why, Sure: sure, Source: source}, applies, print}
}

func always(plan.Setup, plan.Operation) bool { return true }

func process(kinds ...plan.Process) func(plan.Setup, plan.Operation) bool {
	return func(_ plan.Setup, o plan.Operation) bool {
		for _, k := range kinds {
			if o.Process == k {
				return true
			}
		}
		return false
	}
}

var (
	cautionAlways = caution("F-01", "Always", "IF anything is machined THEN print the general cautions.", "entanglement and thrown parts are the usual causes of death and injury at lathes",
		"standard", "WorkSafe Victoria, Safe use of metal turning lathes; HSE engineering FAQs; PUWER 1998 (not opened)",
		"Eye protection. No loose sleeves, rings, ties or gloves at a turning spindle; long hair tied. Guards on. Know the stop. One person at the controls.", always)
	cautionKey = caution("F-02", "Chuck key", "IF a chuck is tightened THEN print the key caution.", "the key becomes a missile",
		"standard", "WorkSafe Victoria, Safe use of metal turning lathes",
		"Chuck key out before the hand leaves it. Turn the work once by hand, then start.", func(s plan.Setup, _ plan.Operation) bool { return s.Grip.Kind == "jaws" })
	cautionOffBalance = caution("F-03", "Faceplate and off-balance work", "IF work is clamped to a faceplate or runs off its centre THEN print the faceplate caution.", "parts leave tangentially",
		"published", "workshop pages on faceplate work (H. Hall)",
		"Faceplate and off-balance work: turn one full revolution by hand with the tool at both ends of its travel, and see every clamp, bolt end and packing clear; packing screwed fast; out of gear the plate must stop anywhere; stand out of its plane at starting; lowest speed first; tighten again after the first cut.",
		func(s plan.Setup, _ plan.Operation) bool { return s.HoldingKind == "faceplate" || s.Balance != nil })
	cautionParting = caution("F-05", "Parting", "IF a part is parted off THEN print the parting caution.", "blades shatter, work climbs",
		"published", "TM 1-420 p. 55; parting notes (lathe-mastery)",
		"Parting: face shield or guard; close to the jaws, never between centres; blade square and on centre; do not catch the piece by hand; stop if it squeals or chips pack.", process(plan.PartOff))
	cautionFiling = caution("F-06", "Filing in the lathe", "IF turned work is filed in the lathe THEN print the filing caution.", "an arm over the chuck",
		"published", "Modern Metalworking p. 454",
		"Filing in the lathe: handle on the file, left hand on the handle so that no arm crosses the chuck, carriage out of the way.", process(plan.FileProfile))
	cautionEmery = caution("F-07", "Emery cloth", "IF turned work is smoothed THEN print the abrasive-cloth caution.", "broken arms, amputations and deaths are on record",
		"standard", "HSE EIS2; MCA Safety Bulletin 21; SafeWork NSW",
		"Never hold abrasive cloth by hand on turning work: only on a backing board, or by hand on still work.", process(plan.FileProfile))
	cautionSlender = caution("F-10", "Long slender work", "IF the work stands out over 3 diameters THEN print the whip caution.", "whipping",
		"published", "lathe owner's manual safety page",
		"Slender work: support it, and start at low speed.", func(s plan.Setup, _ plan.Operation) bool { return s.Tailstock || s.StickOutMM > 6*s.Grip.RadiusMM })
	cautionSheet = caution("F-11", "Drilling sheet", "IF sheet under 3 mm is drilled THEN print the sheet caution.", "it climbs the drill and spins as a blade",
		"published", "Drilling sheet metal safely (Fine Homebuilding, 1989)",
		"Sheet: clamp it down on wood all round the hole or between boards, with a stop peg against the turn; step drill or blunted lips, low speed; never hold it by hand.",
		func(s plan.Setup, o plan.Operation) bool {
			return o.Process == plan.Drill && s.FlatBefore != nil && s.FlatBefore.FrontZ-s.FlatBefore.BackZ < thinSheet
		})
	cautionSwung = caution("F-16", "Fly-cutter and boring head", "IF a single edge is swung off the spindle's axis THEN print the swung-tool caution.", "one heavy off-centre edge",
		"common practice", "common practice, no source",
		"Fly-cutter and boring head: turn by hand first to see the tip go clear; the tool's screw tight; no more than 500 rev/min; guard, and stand out of its plane.",
		func(_ plan.Setup, o plan.Operation) bool {
			return strings.HasPrefix(o.Tool.ID, "fly_cutter/") || strings.HasPrefix(o.Tool.ID, "boring_head/")
		})
	cautionBreakThrough = caution("F-13", "Breaking through", "IF a drill comes through THEN print the break-through caution.", "it grabs",
		"published", "Metalworking: the basics, ch. 12 (autonopedia)",
		"Ease the feed when a drill is about to come through.", process(plan.Drill))
	cautionHoleSaw = caution("F-13s", "Hole saw", "IF a hole saw is used THEN print the hole-saw caution.", "a ring of teeth that jams turns the work, or the wrist that holds it",
		"common practice", "common practice, no source",
		"Hole saw: work clamped down, never held by hand, however thin. The disc in it is hot, and sharp all round: stop the spindle, push it out with a drift, not with fingers.", process(plan.SawHole))
	cautionSwarf = caution("F-14", "Swarf", "IF metal is turned THEN print the swarf caution.", "cuts",
		"published", "metal lathe rules (safetyontheset); WorkSafe Victoria",
		"Swarf: stop the spindle, use a hook or brush, never hands or an air gun.", always)
	cautionGlue = caution("F-22", "Cyanoacrylate", "IF a glued arbor is used THEN print the adhesive caution.", "irritant vapour, instant bonding, heat on cloth",
		"standard", "HSE RR646; WHO CICAD 36",
		"Cyanoacrylate: goggles, ventilation, small drops, no flame on wet glue; release by heat in moving air and step back from the vapour.", func(s plan.Setup, _ plan.Operation) bool { return s.HoldingKind == "glued_arbor" })
	cautionFluid = caution("F-29", "Cutting fluid", "IF cutting fluid is used THEN print the fluid caution.", "dermatitis, lung disease",
		"standard", "HSE engineering FAQs",
		"Cutting fluid: avoid mist, protect the skin, change it when foul.", process(plan.Ream, plan.Tap, plan.Die, plan.Thread, plan.PartOff))
	cautionBarBehind = caution("F-09", "Bar out of the back", "IF stock stands out behind the headstock THEN print the bar caution.", "it whips and strikes",
		"standard", "WorkSafe Victoria zone 1; the length is ours",
		"Bar standing out behind the headstock: no more than 150 mm unguarded, supported beyond, low speed.", func(s plan.Setup, _ plan.Operation) bool { return s.Grip.Surface == "stock" && s.Grip.Kind == "jaws" })
)
