package rules

import "catchplate/planner/plan"

// OffsetFacts is how turned work runs in the four-jaw when it is set over for an axis beside its own.
type OffsetFacts struct {
	Throw   float64
	JawHalf float64 // half the width of a jaw
	MostRPM float64 // what its unbalance allows
	Slowest float64 // speed of the lathe
	Clock   bool    // a dial indicator is owned
	Needs   string  // why it does not show the throw; empty = it does
}

var setOver = Holding{
	plan.Rule{ID: "B-04e", Class: "holding", Title: "Set over in the four-jaw",
		Text: "IF round work is set over for an eccentric THEN the throw is clocked; it is no more than half the width of a jaw, for the pair across it presses that far beside the jaws' middle; and the lathe goes slowly enough for what is off balance.",
		Why:  "a jaw that holds by its corner lets go; a guessed throw is a wrong one",
		Sure: "common practice", Source: "clocking: common practice, no source; the half jaw is plane geometry, ours; the speed as in B-09", Except: "a fixture or an angle plate on the faceplate"},
	func(c Case) Verdict {
		o := c.Offset
		switch {
		case o == nil:
		case !o.Clock:
			return refuse("no dial indicator is owned to clock the throw with")
		case o.Needs != "":
			return refuse("%s", o.Needs)
		case o.Throw > o.JawHalf:
			return refuse("the throw of %.2f is over half the width of a jaw, %.2f: the pair across it would hold by its corners", o.Throw, o.JawHalf)
		case o.MostRPM < o.Slowest:
			return refuse("off balance it may run at %.0f a minute, the lathe's slowest is %.0f", o.MostRPM, o.Slowest)
		}
		return Verdict{}
	},
}

var (
	mainAxisFirst = number("A-06e", "Main axis first", "IF a part has an eccentric THEN all that lies about its main axis is finished first, and the work is gripped and clocked by it; all that lies about one offset axis is then cut in one setting.",
		"a round outside is what a throw can be clocked from", "common practice", "common practice, no source")
	clockSwing = number("E-08e", "Swing of an eccentric", "IF work is set over by a throw THEN a clock on its round outside swings by twice the throw in a turn; its limits are twice the throw's, each drawn in by what the clock can be wrong by.",
		"the reading shows the throw itself", "published", "F. D. Jones (1914) p. 22: the swing is twice the shift; plane geometry")
)
