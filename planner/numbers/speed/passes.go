package speed

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// slender is the length over diameter above which roughing depths are halved
// (trade rule C-29).
const slender = 3.0

// Depth is a radial depth of cut with its rule.
type Depth struct {
	Depth  units.Length `json:"depth_mm"`
	Rule   string       `json:"rule,omitempty"`
	Source string       `json:"source"`
}

// RoughDepth is the bench-lathe default for a roughing cut in a metal, halved
// for work longer than three times its diameter.
func RoughDepth(m tables.Material, lengthOverDiameter float64) (Depth, error) {
	depth, source, ok := tables.RoughDepth(m.Family)
	if !ok {
		return Depth{}, fmt.Errorf("no depth of cut is known for %s", m.Name)
	}
	if lengthOverDiameter > slender {
		depth /= 2
	}
	return Depth{depth, "C-29", source}, nil
}

// The bounds of a finishing cut.
const (
	finishFloorHSS     units.Length = 0.05 // honed edge
	finishFloorCarbide units.Length = 0.1
	finishCeiling      units.Length = 0.4
	// finishUsual is the finishing cut that is planned where the bounds allow.
	finishUsual units.Length = 0.2
)

// FinishDepth is the radial depth of a finishing cut and the least that the
// edge will cut cleanly: 0.05 for honed HSS, a quarter of the nose radius and
// at least 0.1 for an insert; never over 0.4.
func FinishDepth(tool Tool, nose units.Length) (depth, floor Depth) {
	least := finishFloorHSS
	if tool == Carbide {
		least = max(finishFloorCarbide, nose/4)
	}
	source := "published floor and ceiling, usual depth ours"
	return Depth{min(finishCeiling, max(least, finishUsual)), "", source}, Depth{least, "", source}
}

// Passes is how a radial depth is divided: roughing cuts of equal depth, then
// two finishing cuts of equal depth, because equal cuts spring equally.
type Passes struct {
	Rough       int          `json:"rough_cuts"`
	RoughDepth  units.Length `json:"rough_depth_mm"`
	Finish      int          `json:"finish_cuts"`
	FinishDepth units.Length `json:"finish_depth_mm"`
	Rule        string       `json:"rule,omitempty"`
}

// Divide plans the cuts for a radial depth: fewest equal roughing cuts no deeper
// than rough, and two finishing cuts of the given depth. A depth below two
// finishing cuts is taken in finishing cuts only: two equal ones, or one where
// two would be below floor.
func Divide(total, rough, finish, floor units.Length) (Passes, error) {
	if !(total > 0) || !(rough > 0) || !(finish > 0) || !(floor > 0 && floor <= finish) || total > units.MaxLength {
		return Passes{}, fmt.Errorf("passes need depths above 0, and a floor no deeper than the finishing cut")
	}
	if total/rough > maxPasses {
		return Passes{}, fmt.Errorf("%s in cuts of %s is more than %d cuts: cut deeper, or saw first", total, rough, maxPasses)
	}
	p := Passes{Finish: 2, FinishDepth: finish}
	rest := (total - 2*finish).Round(nanometre)
	if rest <= 0 {
		if total < 2*floor {
			p.Finish = 1
		}
		p.FinishDepth = (total / units.Length(p.Finish)).Round(nanometre)
		return p, nil
	}
	p.Rough = int(math.Ceil(float64((rest / rough).Round(nanometre))))
	p.RoughDepth = (rest / units.Length(p.Rough)).Round(nanometre)
	return p, nil
}

const (
	// maxPasses bounds a plan of cuts: nobody takes more at one setting.
	maxPasses = 1000
	// nanometre is where sums are rounded before they are compared.
	nanometre = 6
)
