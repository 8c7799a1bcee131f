package rules

import (
	"fmt"
	"math"

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
	NipN    float64 // the least that it presses with
	StandsN float64 // the force that does not bow the work; 0 = not asked
	SagMM   float64 // how far a drill presses it down between the parallels
}

// The least that a vice grips of work: a third of its height, and 3 mm; of what is too thin for that, half.
const (
	viceShare  = 1.0 / 3
	viceLeast  = 3.0
	thinInJaws = 1.0 / 2
	mostSag    = 0.1 // more springs back as the drill breaks through, and snatches
)

// leastInJaws is how much of a thickness has to lie in the jaws.
func leastInJaws(thick float64) float64 {
	return max(min(viceLeast, thinInJaws*thick), viceShare*thick)
}

// Wanting says what is wrong with a grip in the vice; empty when nothing is.
func (v ViceFacts) Wanting() string {
	switch {
	case v.Why != "":
		return v.Why
	case v.Across > v.Opening:
		return fmt.Sprintf("%.1f across is over the vice's opening of %.0f", v.Across, v.Opening)
	case v.Grip < leastInJaws(v.Thick)-placeNoise:
		return fmt.Sprintf("%.1f of %.1f would be in the jaws, at least %.1f", max(0, v.Grip), v.Thick, leastInJaws(v.Thick))
	case v.NeedN > v.HaveN:
		return fmt.Sprintf("the cut asks %.0f N of the jaws, a firm pull gives %.0f", v.NeedN, v.HaveN)
	case v.StandsN > 0 && max(v.NeedN, v.NipN) > v.StandsN:
		return fmt.Sprintf("the jaws would press with %.0f N, and more than %.0f would bow a plate %.1f thick and %.1f across", max(v.NeedN, v.NipN), v.StandsN, v.Thick, v.Across)
	case v.SagMM > mostSag:
		return fmt.Sprintf("the drill would press it down by %.2f between the parallels, %.1f is the most: it wants a board under all of it", v.SagMM, mostSag)
	}
	return ""
}

var clampsPlaced = Holding{
	plan.Rule{ID: "B-07", Class: "holding", Title: "Number and place of clamps",
		Text: "IF work is clamped to a faceplate or a table THEN at least three clamps, spread round the cut at about 120 degrees (four at the corners of a long plate, up to 150), each over solid supported metal and 3 mm clear of the cut; in all they hold 2.5 times the cut at a friction of 0.15.",
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
		Text: "IF work has two parallel straight edges within the vice's opening THEN its good edge goes to the fixed jaw, down on parallels clear of what comes through; a third of its height and at least 3 mm are in the jaws, of work under 6 thick half of it; the jaws press with no more than half of what would bow it, and a drill presses it down by no more than 0.1 between the parallels.",
		Why:  "only the fixed jaw is true", Sure: "published", Source: "squaring a block on the mill (the-vms.com); workshop pages (Hall, p. 208); the shares gripped are common practice; the bowing is Euler's load, the half of it and the 0.1 ours",
		Except: "thin walls between the jaws: fill the middle"},
	func(c Case) Verdict {
		if c.Vice != nil {
			if why := c.Vice.Wanting(); why != "" {
				return refuse("%s", why)
			}
			if c.Trust == "none" {
				return refuse("there is no trustworthy figure for what the jaws do to it")
			}
		}
		return Verdict{}
	},
}

// PlateFacts is how flat work would run on a faceplate.
type PlateFacts struct {
	Diameter  float64 // of the plate
	Swing     float64 // over the bed, 0 = not given
	Reach     float64 // farthest corner of the work from the axis
	OffCentre float64 // centre of mass from the axis
	Raw       bool    // the face that is seated is not finished
	Unbalance float64 // kg mm, with its clamps
	WeightKg  float64 // counterweight
	MostRPM   float64 // that the balance allows
	Slowest   float64 // of the lathe
}

// massOff is the part of a faceplate's diameter that the centre of mass may lie off the axis.
const massOff = 0.35

var faceplateSeat = Holding{
	plan.Rule{ID: "B-06", Class: "holding", Title: "Faceplate",
		Text: "IF work has a finished flat to seat, does not overhang the plate, and its centre of mass lies within 0.35 of the plate's diameter of the axis THEN it may be clamped to the faceplate.",
		Why:  "squareness comes from the plate",
		Sure: "published", Source: "US Navy Engineman 2 ch. 9; J. Rose, Modern Machine-Shop Practice, p. 444; the 0.35 is common practice", Except: "work beyond that goes on the mill"},
	func(c Case) Verdict {
		p := c.Plate
		switch {
		case p == nil:
		case p.Raw:
			return refuse("the face that would be seated is not finished")
		case p.Reach > p.Diameter/2:
			return refuse("it reaches %.0f from the axis, the plate %.0f", p.Reach, p.Diameter/2)
		case p.Swing > 0 && 2*p.Reach > p.Swing:
			return refuse("it swings Ø%.0f, over the lathe's %.0f", 2*p.Reach, p.Swing)
		case p.OffCentre > massOff*p.Diameter:
			return refuse("its centre of mass lies %.0f off the axis, %.0f is the most", p.OffCentre, massOff*p.Diameter)
		}
		return Verdict{}
	},
}

var unbalanced = Holding{
	plan.Rule{ID: "B-09", Class: "holding", Title: "Balance and speed of unbalanced work",
		Text: "IF work, clamps and packing are off balance THEN fit a counterweight until the plate stops anywhere, and keep the speed so low that what is left shakes with no more than 30 N: U n^2/91 189, U in kg mm. A lathe that cannot go so slowly is refused.",
		Why:  "shaking spoils the bore, loosens clamps, walks the lathe",
		Sure: "published", Source: "counterweight: US Navy Engineman 2 ch. 9; workshop pages (Hall, p. 201, 280); the force is ours", Except: "none: turn by hand one full revolution first"},
	func(c Case) Verdict {
		const slow = "balanced by hand it may run at %.0f a minute, the lathe's slowest is %.0f"
		if p := c.Plate; p != nil && p.MostRPM < p.Slowest {
			return refuse(slow, p.MostRPM, p.Slowest)
		}
		if l := c.Ledge; l != nil && l.Why == "" && l.MostRPM < l.Slowest {
			return refuse(slow, l.MostRPM, l.Slowest)
		}
		return Verdict{}
	},
}

// JawFacts is how four jaws would hold flat work.
type JawFacts struct {
	Why      string
	Reach    float64 // of the jaw that stands farthest out
	Capacity float64 // how far out a jaw goes, 0 = not given

	Unbalance float64 // kg mm, with its jaws
	MostRPM   float64
}

var fourJawSides = Holding{
	plan.Rule{ID: "B-04", Class: "holding", Title: "Four-jaw independent",
		Text: "IF work is square, rectangular or offset THEN the four-jaw holds it by its sides, hard back on a backing piece, each jaw on a side that faces it and within its reach; clock it, and move a pair by half the difference.",
		Why:  "truth comes from the clock, not the chuck",
		Sure: "published", Source: "F. D. Jones (1914) p. 22; four-jaw indicating (the-vms.com)", Except: "thin rings and webs: four points lobe them as well"},
	func(c Case) Verdict {
		j := c.Jaws
		switch {
		case j == nil:
		case j.Why != "":
			return refuse("%s", j.Why)
		case j.Capacity > 0 && j.Reach > j.Capacity:
			return refuse("a jaw would stand %.0f from the axis, %.0f is as far as they go", j.Reach, j.Capacity)
		case c.Trust == "none":
			return refuse("there is no trustworthy figure for what the jaws do to it")
		}
		return Verdict{}
	},
}

// wasteText says how much metal would save a squeezed web.
func wasteText(c Case) string {
	if math.IsInf(c.WasteMM, 0) {
		return "no waste that could be left on"
	}
	return fmt.Sprintf("%.1f: %.1f of waste left on", c.WasteMM, c.WasteMM-c.WebMM)
}
