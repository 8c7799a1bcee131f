// Package replay proves a plan, or says which operation fails and why.
//
// In flow: a checked job and a plan for it. Out flow: for each part either a proof, a list of clauses with their figures, or failures that
// name setup, operation, clause and reason. It shares nothing with the planner but the drawing, the tables, the primitives of solid and the
// plain formulas of mechanics: the drawn solids are built here from the part, and the metal that each cut removes is rebuilt from the setup's
// pose, the tool as the workshop describes it, and the dial readings, never from names or from figures the plan derived.
//
// What a dial cannot promise (Cut.ToMeasure) is replayed at both ends of its range, one after the other and together, so that what is proved holds
// wherever within it the size ends.
//
// A part with no failure has a proof; a part with one has none. Failures come in the order of the plan, each once.
//
// Where to find what: prove.go the order of things; world.go which end of each range is replayed; walk.go the work as it is held and
// cut; zero.go, motion.go, tool.go readings and tool to removed metal; target.go and its neighbours the drawn solids; a file per check beyond that.
//
// What a mill or a drilling machine does: pose.go how the work stands under the spindle; mill.go readings, noughts and tool to a movement (pass); millcard.go the
// card and the table of holes. On turned work: beside.go the order of things; drilled.go and tapped.go holes as they are made, pattern.go and acrosshole.go holes
// as drawn; milling.go flats and slots; seat.go seats; besidehold.go, clamped.go and engage.go how it is held and pushed.
//
// Flat parts have a walk of their own: flat.go the order of things; flatwork.go what has been taken, as figures of the plane between two heights; flattake.go what
// each movement takes; flatdrawn.go and flatfinal.go what is drawn and the finished work against it; flathold.go, flatclear.go, flatpush.go and flatlathe.go how
// it is held, carried, pushed and turned.
package replay
