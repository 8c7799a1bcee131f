package sequence

// Step is one place of an order: an operation and the index of the alternative chosen for it.
type Step struct{ Op, Alt int }

// Result is the answer to a Problem.
type Result struct {
	Order  []Step // empty if no order was found
	Cost   int    // cost of Order; meaningless without one
	Bound  int    // no order costs less
	Proven bool   // Order is the cheapest (Bound == Cost); or, if Blocked is set, it is proven that there is no order
	Stats  Stats

	// Blocked is set if and only if there is no Order: how far the work could go and what stopped it.
	Blocked *Blocked
}

// Stats counts the work done. The counts are the same on every machine.
type Stats struct {
	Expanded  int // states whose successors were made
	Generated int // successors made, by the search and by beams
	Stored    int // states kept
	Projected int // entries of the projections behind the bound
	Verdicts  int // calls of Problem.Allowed
}

// Blocked tells why there is no order.
type Blocked struct {
	Never  []int   // operations that were never done in any state reached
	Fronts []Front // the furthest states reached (most operations done), a few of them
}

// Front is a state from which the work could not go on.
type Front struct {
	Done    Set
	Waiting []Waiting // every operation not done, in rising order
}

// Waiting says why an operation could not be done in a Front. If it misses nothing and has an alternative that is in neither list,
// it could be done, but the work could not be finished after it.
type Waiting struct {
	Op       int
	Missing  Set   // operations that precedence wants before it and that are not done
	Refused  []int // alternatives that Problem.Allowed refuses in this state
	Unlinked []int // alternatives that a Link forbids in this state
}
