package replay

import "testing"

// harmlessFlat are the changes of a field of a flat part's plan, beside the ones of every plan, that may pass.
var harmlessFlat = map[string]string{
	"parts.stock.left_z":                        "the stock's place is told by its outline and faces",
	"parts.stock.right_z":                       "the stock's place is told by its outline and faces",
	"parts.stock.length_mm":                     "words, of plate",
	"parts.setups.holding":                      "at the bench no holding is owned",
	"parts.setups.holding_kind":                 "at the bench no holding is owned",
	"parts.setups.stick_out_mm":                 "flat work does not stand out",
	"parts.setups.locate_mm more":               "a worse place that the drawing still allows",
	"parts.setups.grip.radius_mm":               "of jaws on a round rim, and of mandrels",
	"parts.setups.grip.inside":                  "of mandrels",
	"parts.setups.grip.from_z":                  "of clamps: the whole thickness",
	"parts.setups.grip.to_z more":               "jaws a little higher that still stay clear",
	"parts.setups.grip.most_n":                  "0 is no limit, and a limit above the working force is kept",
	"parts.setups.grip.jaws":                    "of jaws and of a vice",
	"parts.setups.grip.jaw_width_mm":            "of jaws and of a vice",
	"parts.setups.presses.x_mm":                 "a jaw slid along its edge",
	"parts.setups.bed.height_mm":                "packing of another height, with as much clear",
	"parts.setups.bed.gap_mm less":              "less clear depth that still does",
	"parts.setups.bed.under":                    "strips elsewhere under metal",
	"parts.setups.bed.under.x0":                 "strips elsewhere under metal",
	"parts.setups.bed.under.x1":                 "strips elsewhere under metal",
	"parts.setups.bed.under.y0":                 "strips elsewhere under metal",
	"parts.setups.bed.under.y1":                 "strips elsewhere under metal",
	"parts.setups.clamps.angle_deg":             "a strap a little turned that still clears",
	"parts.setups.clamps.stud_mm":               "a longer or shorter strap that still clears",
	"parts.setups.clamps.toe_mm":                "another toe on solid metal",
	"parts.setups.clamps.force_n less":          "a clamp less tight where the others do",
	"parts.setups.balance.angle_deg":            "a counterweight a little elsewhere, within what balancing leaves",
	"parts.setups.balance.radius_mm":            "a counterweight a little elsewhere, within what balancing leaves",
	"parts.setups.balance.left_over_kg_mm more": "reckoned worse than it is, at speeds that stand it",
	"parts.setups.balance.mass_kg more":         "clamps and packing are guesses",
	"parts.setups.balance.unbalance_kg_mm more": "clamps and packing are guesses",
	"parts.setups.balance.most_rpm less":        "a lower cap that no speed reaches",
	"parts.setups.balance.shaking_n less":       "less than the lathe stands",
	"parts.setups.operations.passes":            "of hand work",
	"parts.setups.operations.cuts.tool_size_mm": "of a pilot drill",
	"parts.setups.operations.rpm more":          "a faster step that the metal stands",
	"parts.setups.operations.wanted_rpm less":   "of hand work",
}

func TestEveryFieldOfFlatPlansIsProvedOrHarmless(t *testing.T) {
	all := map[string]string{}
	for _, list := range []map[string]string{harmless, harmlessFlat} {
		for k, v := range list {
			all[k] = v
		}
	}
	everyField(t, faced(t).bench, all, 2)
}
