package rules

import (
	"fmt"

	"catchplate/planner/plan"
)

// Clamped is how clamps would hold flat work for an operation.
type Clamped struct {
	Owned     int
	Placed    int     // 0: no places were found
	SpreadDeg float64 // widest angle between neighbours
	NeedN     float64 // total that the cut asks
	HaveN     float64 // total that they press with
	Why       string  // no places were found
}

// Wanting says what is wrong with clamps; empty when nothing is.
func (c Clamped) Wanting() string {
	switch {
	case c.Owned < leastClamps:
		return fmt.Sprintf("%d clamps are owned, at least %d hold a plate", c.Owned, leastClamps)
	case c.Why != "":
		return c.Why
	case c.NeedN > c.HaveN:
		return fmt.Sprintf("the cut asks %.0f N of clamping, %d clamps give %.0f", c.NeedN, c.Placed, c.HaveN)
	}
	return ""
}

const leastClamps = 3

// ViceFacts is how a vice would hold flat work for an operation.
type ViceFacts struct {
	Why     string // the jaws find nothing to hold
	Across  float64
	Opening float64
	Grip    float64 // of the thickness in the jaws
	Thick   float64
	NeedN   float64
	HaveN   float64
}

// The least that a vice grips of work: a third of its height, and 3 mm.
const (
	viceShare = 1.0 / 3
	viceLeast = 3.0
)

// Wanting says what is wrong with a grip in the vice; empty when nothing is.
func (v ViceFacts) Wanting() string {
	switch {
	case v.Why != "":
		return v.Why
	case v.Across > v.Opening:
		return fmt.Sprintf("%.1f across is over the vice's opening of %.0f", v.Across, v.Opening)
	case v.Grip < max(viceLeast, viceShare*v.Thick):
		return fmt.Sprintf("%.1f of %.1f would be in the jaws, at least %.1f", v.Grip, v.Thick, max(viceLeast, viceShare*v.Thick))
	case v.NeedN > v.HaveN:
		return fmt.Sprintf("the cut asks %.0f N of the jaws, a firm pull gives %.0f", v.NeedN, v.HaveN)
	}
	return ""
}

var clampsPlaced = Holding{
	plan.Rule{ID: "B-07", Class: "holding", Title: "Number and place of clamps",
		Text: "IF work is clamped to a faceplate or a table THEN at least three clamps, spread round the cut at about 120 degrees, each over solid supported metal and 3 mm clear of the cut; in all they hold 2.5 times the cut at a friction of 0.15.",
		Why:  "uneven clamps tip or bend the work; three supports do not rock",
		Sure: "published", Source: "J. Rose, Modern Machine-Shop Practice, p. 444 (equal force); workshop pages (Hall, p. 280: three fixings); the factors are ours",
		Except: "two on small, stiff work with a stop"},
	func(c Case) Verdict {
		if c.Clamped != nil {
			if why := c.Clamped.Wanting(); why != "" {
				return refuse("%s", why)
			}
		}
		return Verdict{}
	},
}

var viceOnParallels = Holding{
	plan.Rule{ID: "B-33", Class: "holding", Title: "Vice with parallels",
		Text: "IF work has two parallel straight edges within the vice's opening THEN its good edge goes to the fixed jaw, down on parallels clear of what comes through; a third of its height and at least 3 mm are in the jaws.",
		Why:  "only the fixed jaw is true", Sure: "published", Source: "squaring a block on the mill (the-vms.com); workshop pages (Hall, p. 208); the share gripped is common practice",
		Except: "thin walls between the jaws: fill the middle"},
	func(c Case) Verdict {
		if c.Vice != nil {
			if why := c.Vice.Wanting(); why != "" {
				return refuse("%s", why)
			}
		}
		return Verdict{}
	},
}
