package rules

import (
	"fmt"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// Case is one operation in one holding at one moment of the work, as facts. Lengths in mm, forces in newtons a jaw.
type Case struct {
	Holding partspec.Holding
	Surface string // feature located on; "stock" for raw metal
	Op      shape.Op

	Flat      bool    // a flat part
	Elsewhere bool    // what is cut does not lie about the place that runs on the spindle's axis
	Gone      bool    // the surface to grip is not there yet, or no more
	Lost      string  // why it is gone, where that is known
	Cuts      bool    // the operation takes away metal that is gripped, or runs into the jaws
	Diameter  float64 // of the surface gripped
	Length    float64 // of the grip
	JawLength float64 // the longest grip the jaws give
	Largest   float64 // diameter of the work at its widest
	Finished  bool    // the surface gripped is at size
	Tight     float64 // its tolerance, 0 = open or raw
	Thread    bool    // it carries a thread
	Threaded  bool    // and the mandrel has one to match
	Split     bool    // a mandrel turned in place, slit and spread by a taper screw
	Hexagon   bool
	Packed    bool   // soft packing between hard jaws and work
	Capacity  string // why the size does not go in; empty = it does

	Tender    bool    // stiff enough only while metal is there that comes off: measured anew at each moment
	PassDepth float64 // of a turning, facing or boring cut
	Wall      float64 // least wall under the grip now
	StickOut  float64 // from the jaws to the cut
	Disc      bool    // stands out no more than its diameter
	Body      float64 // diameter of a plain bar as stiff as what stands out
	Centre    bool    // a centre supports the free end
	Through   bool    // the part passes through the chuck with its face hard on a jaw step
	Deflect   float64 // bending at the cut under its force
	Allow     float64 // what the tolerance lets bend; 0 = open

	Lying      bool    // round work lies along the table
	Pressed    bool    // upright on a table, and the tool only presses the work down
	PlaceOff   float64 // how far a hole may land from its place, radially
	PlaceAllow float64 // what its limits let pass; 0 = open

	CountOff   float64 // how far round the axis, at its rim, a dividing head's nearest count is off a place; and what may pass, 0 = it is turned by no head
	CountAllow float64
	Counted    int // holes of the circle, or notches of the plate, that it counts by

	LeastN  float64 // what must hold
	LightN  float64 // the lightest nip
	FirmN   float64 // the firmest
	LobeMM  float64 // lobed error at the working grip, peak to valley
	LimitMM float64 // what may pass; 0 = nothing depends on it
	Trust   string
	Round   float64 // finest roundness made earlier in the same stay, where that is known; 0 = none

	StressMPa  float64 // in the squeezed wall
	YieldShare float64 // that, with its error, as a part of what the metal bears

	TorqueNmm float64 // drive needed, for mandrels and glue
	DriveNmm  float64 // drive there is
	Plug      bool    // a plug stands under the jaws
	Hollow    bool    // work on the lathe from an end that a seat has hollowed out

	Clamped *Clamped   // of flat work under clamps
	Vice    *ViceFacts // of flat work in a vice
	Plate   *PlateFacts
	Jaws    *JawFacts
	Ledge   *LedgeFacts // of flat work on an angle plate
	Slide   *SlideFacts // of work on a vertical slide

	Interrupted bool // the cut meets gaps
	Offset      *OffsetFacts

	WebMM   float64 // of flat work: metal between the bore and the rim
	WasteMM float64 // web with which the jaws' squeeze would pass; 0 = it passes
}

func refuse(format string, a ...any) Verdict {
	return Verdict{Refused: true, format: format, args: a}
}

func jaws(k partspec.HoldingKind) bool {
	return k == partspec.ThreeJaw || k == partspec.FourJaw || k == partspec.SoftJaws
}

func hardJaws(k partspec.HoldingKind) bool { return k == partspec.ThreeJaw || k == partspec.FourJaw }

func mandrel(k partspec.HoldingKind) bool {
	return k == partspec.StubMandrel || k == partspec.PlainMandrel || k == partspec.ExpandingMandrel
}

// spreads reports whether the work is held by a mandrel that presses outward in its bore.
func (c Case) spreads() bool {
	return c.Holding.Kind == partspec.PlainMandrel || c.Holding.Kind == partspec.ExpandingMandrel || c.Split
}

func glued(k partspec.HoldingKind) bool { return k == partspec.GluedArbor }

// thinnest is the wall, as a part of the diameter, below which a mandrel swells the work.
const thinnest = 1.0 / 12

var gripExists = Holding{
	plan.Rule{ID: "B-45a", Class: "holding", Title: "Something to grip",
		Text: "IF a surface is not made yet, or has been cut away THEN nothing can be held by it; and what does not lie about the place that runs on the axis cannot be turned.",
		Why:  "a grip on air", Sure: "common practice", Source: "common practice, no source"},
	func(c Case) Verdict {
		if c.Elsewhere {
			return refuse("it does not run on the spindle's axis there")
		}
		if c.Gone {
			if c.Lost != "" {
				return refuse("%s: %s", c.Surface, c.Lost)
			}
			return refuse("%s: not there to be held at this moment", c.Surface)
		}
		return Verdict{}
	},
}

var gripNotCut = Holding{
	plan.Rule{ID: "B-45", Class: "holding", Title: "What must still be true after the cut",
		Text: "IF an operation removes metal that is gripped, or its tool comes within 2 mm of the jaws THEN that holding is refused for it.",
		Why:  "a grip on air, or a tool in the jaws", Sure: "common practice", Source: "common practice, no source", Except: "parting, where the piece is caught and not held"},
	func(c Case) Verdict {
		if c.Cuts {
			return refuse("the cut runs into the grip or within 2 mm of it")
		}
		return Verdict{}
	},
}

var capacity = Holding{
	plan.Rule{ID: "B-26", Class: "holding", Title: "Reach of the jaws",
		Text: "IF the work is outside the holding's capacity THEN it does not go in: jaws keep at least two thirds of their teeth in the scroll.",
		Why:  "broken scroll teeth, flying jaws, loss of grip",
		Sure: "published", Source: "lathe manuals quoting EN 1550; the share of teeth is common practice", Except: "the maker's own mark for the greatest opening"},
	func(c Case) Verdict {
		if c.Capacity != "" {
			return refuse("%s", c.Capacity)
		}
		return Verdict{}
	},
}

var boreFinished = Holding{
	plan.Rule{ID: "B-12", Class: "holding", Title: "Plain mandrel",
		Text: "IF a bore is finished, parallel and at least 0.7 of its diameter long THEN work is turned true to it on an oiled taper mandrel, or on an expanding one; a slack or short bore is refused.",
		Why:  "the whole outside and both faces stand open; friction drives",
		Sure: "published", Source: "US War Department TM 1-420 change 1; US Army course OD1645, p. 40", Except: "thin bushes swell; diameters over four times the bore slip without a driver"},
	func(c Case) Verdict {
		if (c.Holding.Kind == partspec.PlainMandrel || c.Holding.Kind == partspec.ExpandingMandrel) && c.Length < 0.7*c.Diameter {
			return refuse("bore %.1f long is under 0.7 of its diameter %.1f", c.Length, c.Diameter)
		}
		if c.Holding.Kind == partspec.PlainMandrel && greatest(c.Op) > 2*c.Diameter {
			return refuse("Ø%.1f is over four times the bore: a plain mandrel slips without a driver", 2*greatest(c.Op))
		}
		return Verdict{}
	},
}

var neverOnThread = Holding{
	plan.Rule{ID: "B-40", Class: "holding", Title: "Never on a thread",
		Text: "IF a finished thread is the grip THEN jaws are refused, those of a vice too; a threaded bush, or a threaded mandrel, holds it.",
		Why:  "crushed crests", Sure: "published", Source: "\"Geometer\", Setting-up for second operations", Except: "waste threads"},
	func(c Case) Verdict {
		if k := c.Holding.Kind; c.Thread && (jaws(k) || k == partspec.Collets || k == partspec.Vice || k == partspec.VeeBlock) {
			return refuse("the grip would be on a finished thread")
		}
		return Verdict{}
	},
}

// markTight is the tolerance under which a surface counts as finished to size, not to be marked by jaws. Common practice, no source.
const markTight = 0.2

var packFinished = Holding{
	plan.Rule{ID: "B-37", Class: "holding", Title: "No bare hard jaws on finished work",
		Text: "IF hard jaws grip a surface finished to a tolerance under 0.2 mm THEN they are refused; with soft packing they mark nothing but lose truth (0.1 mm full reading).",
		Why:  "bruises, and three lines of contact", Sure: "common practice", Source: "common practice, no source", Except: "collets and soft jaws"},
	func(c Case) Verdict {
		if c.Finished && c.Tight > 0 && c.Tight < markTight && hardJaws(c.Holding.Kind) && !c.Packed {
			return refuse("bare hard jaws on %s, finished within %.3f", c.Surface, c.Tight)
		}
		return Verdict{}
	},
}

var squareBar = Holding{
	plan.Rule{ID: "B-44", Class: "holding", Title: "The right number of jaws",
		Text: "IF the bar is hexagonal THEN three jaws hold it; a four-jaw, a round collet or bored soft jaws do not sit on it.",
		Why:  "the right number of faces meets the jaws", Sure: "published", Source: "articles on three- and four-jaw chucks (RISDpedia)"},
	func(c Case) Verdict {
		if c.Hexagon && c.Holding.Kind != partspec.ThreeJaw && (jaws(c.Holding.Kind) || c.Holding.Kind == partspec.Collets) {
			return refuse("a hexagon does not sit in it")
		}
		return Verdict{}
	},
}

// stepGrip is the least grip of a disc whose face is hard on the jaw steps, and the most it may be of the diameter.
const (
	stepDepth     = 0.5 // deepest pass on such a grip
	stepGrip      = 4.0
	stepGripShare = 1.0 / 20
)

var grippedLength = Holding{
	plan.Rule{ID: "B-27", Class: "holding", Title: "Least grip length",
		Text: "IF work is gripped without a tailstock THEN the grip is at least 10 mm and half the diameter long, or the jaws' whole length if they are shorter; a disc, standing out no more than its diameter with its face hard on the jaw steps, needs 4 mm and a twentieth of its diameter, and light cuts.",
		Why:  "short grips tip out",
		Sure: "published", Source: "collet-chuck manual p. 83 (at least D/2 and 10 mm); chuck alignment notes for the jaw-step figure",
		Except: "with a tailstock 5 mm is enough; upright on a table, where drills only press the work down; plate held by its edges, hard back on a backing piece"},
	func(c Case) Verdict {
		if c.Flat || c.Pressed || !jaws(c.Holding.Kind) && c.Holding.Kind != partspec.Collets {
			return Verdict{}
		}
		need := max(10, min(c.Diameter/2, c.JawLength))
		switch {
		case c.Centre:
			need = 5
		case c.Through && c.PassDepth <= stepDepth && c.Disc:
			need = max(stepGrip, c.Largest*stepGripShare)
		}
		if c.Length < need-lengthSlack {
			return refuse("grip %.1f long, at least %.1f wanted on Ø%.1f", c.Length, need, c.Diameter)
		}
		return Verdict{}
	},
}

// lengthSlack lets a grip count as long enough when it is short by less than anyone sets a bar in a chuck.
const lengthSlack = 0.05

var stickOut = Holding{
	plan.Rule{ID: "B-28", Class: "holding", Title: "Stick-out without support",
		Text: "IF the free length is over 3 diameters THEN only light cuts, or a tailstock; over 5 it must be supported. What bends under the cut may be a quarter of the tolerance.",
		Why:  "stiffness falls with the cube", Sure: "published", Source: "lathe owner's manual safety page (3 D), collet-chuck manual p. 83 (up to 5 D)", Except: "tubes: their own section counts"},
	func(c Case) Verdict {
		if why := c.TooSlender(); why != "" {
			return refuse("%s", why)
		}
		return Verdict{}
	},
}

// TooSlender says why a cut stands out too far; empty when it does not.
func (c Case) TooSlender() string {
	switch {
	case c.Body <= 0:
		return ""
	case c.Centre && c.StickOut > 10*c.Body:
		return fmt.Sprintf("%.0f between supports, as stiff as Ø%.1f: over 10 diameters needs a steady", c.StickOut, c.Body)
	case !c.Centre && c.StickOut > 5*c.Body:
		return fmt.Sprintf("stands out %.0f, as stiff as Ø%.1f: over 5 diameters needs a centre or a steady", c.StickOut, c.Body)
	case c.Allow > 0 && c.Deflect > c.Allow:
		return fmt.Sprintf("bends %.3f under the cut, a quarter of the tolerance is %.3f", c.Deflect, c.Allow)
	}
	return ""
}

var wallUnderGrip = Holding{
	plan.Rule{ID: "B-23", Class: "holding", Title: "When a wall is thin",
		Text: "IF a hollow part is squeezed THEN work out the lobed error that the grip leaves in what is made round in it, from the wall, the material, the jaws and the least force that holds; refuse it above a third of the roundness allowed, and refuse any grip under which the wall would yield.",
		Why:  "this is how a ring comes out three-cornered",
		Sure: "published", Source: "circular-ring table of Roark's Formulas for Stress and Strain (not opened); exact annulus and shell harmonics checked against finite elements; a hole in a plate between two jaws: Kirsch, in Timoshenko and Goodier, Theory of Elasticity (from memory); the third is ours",
		Except: "the gripped zone is waste and the finished ring stands clear of it"},
	func(c Case) Verdict {
		if c.LimitMM > 0 && c.LobeMM > c.LimitMM && c.WasteMM > 0 {
			return refuse("would leave a lobed error of %.3f (%s figure) at %.0f N a jaw with %.1f of metal beside the bore; %.3f may pass, as with %s", c.LobeMM, c.Trust, max(c.LeastN, c.LightN), c.WebMM, c.LimitMM, wasteText(c))
		}
		if c.LimitMM > 0 && c.LobeMM > c.LimitMM {
			return refuse("would leave a lobed error of %.3f (%s figure) at %.0f N a jaw; %.3f may pass", c.LobeMM, c.Trust, max(c.LeastN, c.LightN), c.LimitMM)
		}
		if c.YieldShare > 1 {
			return refuse("the wall would yield under %.0f N a jaw: %.0f MPa", max(c.LeastN, c.LightN), c.StressMPa)
		}
		return Verdict{}
	},
}

var wallOnMandrel = Holding{
	plan.Rule{ID: "B-13", Class: "holding", Title: "Mandrels swell thin walls",
		Text: "IF the wall is under a twelfth of the diameter THEN plain, expanding and split mandrels are refused: they swell the work.",
		Why:  "a taper or a wedge presses outward all round", Sure: "published", Source: "US Army course OD1645; A Text Book of Mechanical Engineering, expanding mandrel", Except: "a stub mandrel with an axial clamp"},
	func(c Case) Verdict {
		if c.spreads() && c.Wall < thinnest*(c.Diameter+2*c.Wall) {
			return refuse("wall %.2f is under a twelfth of Ø%.1f", c.Wall, c.Diameter+2*c.Wall)
		}
		return Verdict{}
	},
}

var gripHolds = Holding{
	plan.Rule{ID: "B-42", Class: "holding", Title: "Grip against cut",
		Text: "IF a cutting force acts on work held by friction THEN the grip must hold 2.5 times what the cut asks (4 times if interrupted), in turning, pulling and tipping.",
		Why:  "the plan must prove the grip",
		Sure: "published", Source: "method as in VDI 3106; friction 0.15 on finished and 0.25 on rough metal, and the factors, are ours",
		Except: "glue and mandrels have rules of their own"},
	func(c Case) Verdict {
		if c.FirmN > 0 && c.LeastN > c.FirmN {
			return refuse("the cut asks %.0f N a jaw, a firm pull gives %.0f", c.LeastN, c.FirmN)
		}
		return Verdict{}
	},
}

var gluedArborLight = Holding{
	plan.Rule{ID: "B-16", Class: "holding", Title: "Glued arbor: light cuts",
		Text: "IF work is glued to an arbor THEN cuts are at most 0.25 mm deep, nothing over 6 mm is drilled from solid, and the glue carries at most 1.5 MPa in shear.",
		Why:  "heat and peel let go before shear does",
		Sure: "published", Source: "Handbook of Adhesives and Sealants pp. 389-390 (13 MPa on steel after 10 minutes); the design shear is ours",
		Except: "interrupted cuts are never done so"},
	func(c Case) Verdict {
		if !glued(c.Holding.Kind) {
			return Verdict{}
		}
		if c.Op.Process == plan.Drill || c.Op.Process == plan.Knurl || c.Op.Process == plan.PartOff {
			return refuse("too heavy a cut for glue")
		}
		if c.Interrupted {
			return refuse("a cut that meets gaps knocks glue loose")
		}
		if c.PassDepth > glueDepth {
			return refuse("a pass of %.2f is too deep for glue, %.2f is the most", c.PassDepth, glueDepth)
		}
		if c.DriveNmm < c.TorqueNmm {
			return refuse("glue holds %.0f N mm, the cut asks %.0f", c.DriveNmm, c.TorqueNmm)
		}
		return Verdict{}
	},
}

// glueDepth is the deepest pass that glue is asked to bear.
const glueDepth = 0.25

var mandrelDrive = Holding{
	plan.Rule{ID: "B-14", Class: "holding", Title: "Mandrel turned in place",
		Text: "IF a short part needs its outside or second face true to its bore THEN a spigot turned in the chuck to the measured bore, not moved until the job is done, carries it; light cuts only, and no bore under 5 mm. A screw and washer in front press it on the shoulder and cover the free face; where that is cut, the spigot is slit and spread by a taper screw, in a bore of 8 mm or more over 2 mm or more.",
		Why:  "no run-out but the fit", Sure: "published", Source: "workshop pages on setting up (Hall, p. 259); \"Geometer\", Setting-up for second operations",
		Except: "heavy or interrupted cuts"},
	func(c Case) Verdict {
		if !mandrel(c.Holding.Kind) {
			return Verdict{}
		}
		if c.Diameter < 5 && !c.Threaded {
			return refuse("bore Ø%.1f is under 5", c.Diameter)
		}
		if c.Split && (c.Diameter < 8-1e-9 || c.Length < 2-1e-9) {
			return refuse("bore Ø%.1f, %.1f long: a mandrel is slit and spread in Ø8 and over 2 at the least", c.Diameter, c.Length)
		}
		if c.Op.Process == plan.Drill || c.Op.Process == plan.PartOff || c.Op.Process == plan.Knurl {
			return refuse("too heavy a cut for a mandrel")
		}
		if c.DriveNmm < c.TorqueNmm {
			return refuse("the mandrel drives %.0f N mm, the cut asks %.0f", c.DriveNmm, c.TorqueNmm)
		}
		return Verdict{}
	},
}

var colletSize = Holding{
	plan.Rule{ID: "B-05", Class: "holding", Title: "Collet",
		Text: "IF work is round and finished or bright, and within 0.3 mm under the collet's size THEN a collet holds it true; grip at least two thirds of the collet's bore.",
		Why:  "all-round grip, hardly marks, runs fast", Sure: "published", Source: "collet catalogue p. 1115 (DIN 6499); the 0.3 mm for truth is common practice", Except: "rough or black stock"},
	func(c Case) Verdict {
		if c.Holding.Kind != partspec.Collets {
			return Verdict{}
		}
		for _, s := range c.Holding.Sizes {
			under := float64(s) - c.Diameter
			if under >= -0.025 && under <= min(0.3, float64(c.Holding.SizeRange)) {
				return Verdict{}
			}
		}
		return refuse("no collet owned closes truly on Ø%.2f", c.Diameter)
	},
}
