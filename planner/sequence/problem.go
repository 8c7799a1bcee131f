package sequence

// Problem is what is to be ordered. Costs are whole numbers in one unit of the caller's choice (tenths of a minute, say).
//
// With x_1 … x_n the chosen alternatives in order, the cost of an order is
//
//	sum of own + risk of every x_k
//	+ setup cost + tool cost of x_1                      (nothing if FirstFree)
//	+ for every step from x to y:
//	    MachineChange        if the machine changes
//	  + setup cost of y      if the setup changes
//	  + tool cost of y       if the machine or the tool changes
//
// so a tool stays mounted over a change of setup on the same machine, and nothing is remembered of a machine, setup or
// tool once it is left. A setup that is left and taken again is a new mounting and is paid for again.
type Problem struct {
	Ops           []Op
	Setups        []Setup
	Tools         []Tool
	Machines      []string
	MachineChange int
	FirstFree     bool // the first operation pays neither setup nor tool

	// Prec lists arcs {a, b}: operation a before operation b. It need not be transitively closed.
	Prec [][2]int

	// Allowed reports whether operation op can be done by its alternative alt once the operations in done are done.
	// It is asked only for alternatives with a Mask, sees only done & Mask, and must always answer the same: each
	// answer is kept. Nil allows everything.
	Allowed func(op, alt int, done Set) bool

	// Links are the pairs of operations that must share one mounting, or be done in an allowed pair of setups.
	Links []Link

	// Between, if not nil, replaces setups, tools and machines: Between[i][j] is the cost of doing operation j
	// directly after operation i (the diagonal is not read). Each operation then has one alternative, whose Setup and Tool are 0,
	// the first operation pays nothing but its own cost, and there are no Links.
	Between [][]int
}

// Op is one operation. At least one alternative is needed.
type Op struct {
	Name string // decides ties, so that the answer does not hang on how the input is listed
	Rank int    // decides ties before the name does; neighbours in one setup with one tool come by rank where they can
	Alts []Alt
}

// Alt is one way to do an operation.
type Alt struct {
	Setup, Tool int // indices into Problem.Setups and Problem.Tools
	Own         int // cost of the operation itself
	Risk        int // priced risk of this alternative, added to Own: it must not depend on the order

	// Mask is the set of operations on which the verdict of Problem.Allowed for this alternative depends. An alternative
	// with an empty mask is allowed in every state. The operation's own bit has no effect.
	Mask Set
}

// Setup is a way to hold the work on one machine.
type Setup struct {
	Name    string
	Machine int // index into Problem.Machines
	Cost    int // cost of mounting the work so
}

// Tool is a tool; it can be used on any machine.
type Tool struct {
	Name string
	Cost int // cost of mounting the tool
}

// Link ties two operations. Done in the same mounting (one unbroken stay in a setup) they always satisfy it. Otherwise
// Cross decides from the setup of the one done earlier, the setup of the one done later, and which was the earlier.
// Cross must always answer the same. A nil Cross demands the same mounting: a group that must share a mounting is a chain of such links.
type Link struct {
	A, B  int
	Cross func(setupOfEarlier, setupOfLater, earlierOp int) bool
}
