package replay

import (
	"os"
	"strconv"
	"strings"
	"testing"
)

// harmlessMilled are the changes of a field of a plan with work on a mill, beside the ones of every plan, that may pass.
var harmlessMilled = map[string]string{
	"parts.setups.operations.holes.x.label":                "words",
	"parts.setups.operations.holes.y.label":                "words",
	"parts.setups.operations.holes.x.makes":                "words",
	"parts.setups.operations.holes.y.makes":                "words",
	"parts.setups.operations.holes.x.counted":              "below nought no turns are counted",
	"parts.setups.operations.holes.y.counted":              "below nought no turns are counted",
	"parts.setups.operations.cuts.at.within_mm more":       "a mark less sure that the drawing still allows",
	"parts.setups.operations.cuts.to_measure.high_mm more": "where a stop may end higher, in the air",
	"parts.setups.operations.wanted_rpm less":              "of hand work",
	"parts.setups.operations.rpm more":                     "a faster step that the metal stands",
	"parts.setups.locate_mm more":                          "a worse place that the drawing still allows",
	"parts.setups.bed.height_mm":                           "parallels of another height, with as much clear",
	"parts.setups.bed.gap_mm":                              "clear depth that is there, or that no tool needs",
	"parts.setups.bed.under.x0":                            "strips elsewhere: no tool comes out there",
	"parts.setups.bed.under.x1":                            "strips elsewhere: no tool comes out there",
	"parts.setups.bed.under.y0":                            "strips elsewhere: no tool comes out there",
	"parts.setups.bed.under.y1":                            "strips elsewhere: no tool comes out there",
	"parts.setups.holding":                                 "at the bench no holding is owned",
	"parts.setups.holding_kind":                            "at the bench no holding is owned",
	"parts.setups.locates":                                 "at the bench nothing is located",
	"parts.setups.stick_out_mm":                            "at the bench nothing stands out",
	"parts.setups.grip.surface":                            "at the bench nothing is gripped",
	"parts.setups.grip.radius_mm":                          "at the bench nothing is gripped",
	"parts.setups.grip.from_z more":                        "at the bench nothing is gripped",
	"parts.setups.grip.to_z more":                          "at the bench nothing is gripped",
	"parts.setups.grip.inside":                             "at the bench nothing is gripped",
	"parts.setups.grip.jaws":                               "at the bench nothing is gripped",
	"parts.setups.grip.jaw_width_mm":                       "of a vice, which is wide",
	"parts.setups.grip.most_n":                             "0 is no limit, and a limit above the working force is kept",
}

func TestEveryFieldOfMilledPlansIsProvedOrHarmless(t *testing.T) {
	all := map[string]string{}
	for _, list := range []map[string]string{harmless, harmlessMilled} {
		for k, v := range list {
			all[k] = v
		}
	}
	plans := map[string]*bench{"ring": flangedBush(t), "screws": punched(t), "across": crossed(t)}
	if os.Getenv("CATCHPLATE_SLOW") != "" {
		plans["steps"], plans["swing"] = steppedSeat(t), swungSeat(t)
	}
	for name, good := range plans {
		t.Run(name, func(t *testing.T) { everyFieldOf(t, good, all, 1, offLathe(good)) })
	}
}

// offLathe reports whether a field is of a setup that is not the lathe's: the others have their own test.
func offLathe(b *bench) func(path string) bool {
	return func(path string) bool {
		parts := strings.Split(path, ".")
		if len(parts) < 4 || parts[2] != "setups" {
			return false
		}
		n, err := strconv.Atoi(parts[3])
		return err == nil && b.part.Setups[n].MachineKind != "lathe"
	}
}
