package rules

import "catchplate/planner/plan"

// LedgeFacts is how flat work would run on an angle plate that is bolted to a faceplate.
type LedgeFacts struct {
	Plate     float64 // diameter of the faceplate; 0 = none is owned
	Owned     int     // bolts with straps
	Raw       bool    // the edge that it would stand on is not finished
	Why       string  // no straps were placed
	Width     float64 // of the ledge
	Wide      float64 // that the straps take, along it
	Thick     float64 // of the work
	On        float64 // of that, on the ledge
	LegOff    float64 // from the axis to the middle of the leg that is bolted on
	Swing     float64 // over the bed, 0 = not given
	Reach     float64 // farthest corner of work, plate and straps from the axis
	NeedN     float64
	HaveN     float64
	Unbalance float64 // kg mm
	WeightKg  float64 // counterweight
	MostRPM   float64 // that the balance allows
	Slowest   float64 // of the lathe
}

// ledgeShare is the part of the work's thickness that stands on the ledge at least. Common practice, no source.
const ledgeShare = 2.0 / 3

// wanting says what is wrong with work on an angle plate; no objection when nothing is.
func (l LedgeFacts) wanting() Verdict {
	switch {
	case l.Plate == 0:
		return refuse("an angle plate is bolted to a faceplate, and none is owned")
	case l.Owned < 2:
		return refuse("%d bolt with its strap is owned, two hold the work", l.Owned)
	case l.Raw:
		return refuse("the edge that it would stand on is not finished")
	case l.Why != "":
		return refuse("%s", l.Why)
	case l.Wide > l.Width:
		return refuse("work and straps take %.0f of the ledge, it is %.0f wide", l.Wide, l.Width)
	case l.On < ledgeShare*l.Thick:
		return refuse("%.0f of its %.0f thickness would stand on the ledge, two thirds are the least", max(0, l.On), l.Thick)
	case l.LegOff > l.Plate/2:
		return refuse("the middle of the leg that is bolted on lies %.0f from the axis, beyond the faceplate's %.0f", l.LegOff, l.Plate/2)
	case l.Swing > 0 && 2*l.Reach > l.Swing:
		return refuse("with its angle plate it swings Ø%.0f, over the lathe's %.0f: it would foul the bed", 2*l.Reach, l.Swing)
	case l.NeedN > l.HaveN:
		return refuse("the cut asks %.0f N of two straps, they give %.0f", l.NeedN, l.HaveN)
	}
	return Verdict{}
}

var angleOnPlate = Holding{
	plan.Rule{ID: "B-10", Class: "holding", Title: "Angle plate on the faceplate",
		Text: "IF a bore must lie parallel to a finished straight edge that its place is measured from, at a height over it THEN the work may stand by that edge on an angle plate bolted to the faceplate: the ledge clocked along the spindle, two straps beside the bore on metal that is solid down to the ledge, a stop behind the work, a counterweight, and all of it inside the swing.",
		Why:  "base and axis stay tied",
		Sure: "published", Source: "US Navy Engineman 2 ch. 9; workshop pages (Hall, p. 285); the share on the ledge is common practice",
		Except: "a mill with a boring head is steadier, where one is owned"},
	func(c Case) Verdict {
		if l := c.Ledge; l != nil {
			return l.wanting()
		}
		return Verdict{}
	},
}
