// Package sequence finds the cheapest order of operations, proves it, and says how far it is proven.
//
// In flows a [Problem]: operations with alternatives (a setup, a tool, an own cost), arcs of precedence, the costs of
// changing setup, tool and machine, and three things that make a plan of work harder than a tour: alternatives that are
// possible only in certain states of the work ([Problem].Allowed), pairs that must share one mounting ([Link]), and risk
// priced in the unit of cost. Out flows a [Result]: an order, its cost, a lower bound, and whether the two meet.
// [Neighbours] then tells what fixes each step of the order and what its opposite would cost.
//
// What holds of every result:
//
//   - the order passes [Cost], which shares no code with the search, and [Cost] returns exactly Result.Cost;
//   - Bound <= Cost, and Proven says Bound == Cost;
//   - the answer depends on the problem and the budget in nodes only: not on time, not on the machine, not on the order
//     in which operations, alternatives, setups, tools or arcs are listed, as long as each has a name of its own;
//   - if there is no order, Result.Blocked says how far the work could go and what stopped it there.
//
// # Method
//
// A state is what is done, the class (setup and tool) of the last operation, and what links must remember. The search is A*
// over states: Hart, Nilsson, Raphael, IEEE Trans. Systems Science and Cybernetics 4(2), 1968.
//
//	listing.go    the problem listed anew by rank and name, answers of Allowed kept
//	model.go      classes, choices, costs of changing, closed precedence
//	condition.go  the table of all answers on one alternative; sharpen.go: what follows from such tables
//	link.go       what a state remembers for links
//	absorb.go     what may be done at once (dominance), with the argument; expand.go: the steps worth trying from a state
//	bound.go      the bound: two projections (project.go), each solved exactly, whose answers add up
//	matrix.go     the bound of a problem with a matrix: prices of an assignment (assign.go)
//	search.go     A*; beam.go: the incumbent; table.go, queue.go: where states are kept; solve.go: how these take turns
//	blocked.go    why there is no order; opposite.go: what the opposite order of two neighbours costs
//
// A step whose verdict is not known waits in the queue, and Allowed is asked only when its turn comes. A problem that is not
// solved within a few thousand nodes is sharpened: then all answers are asked for that hang on at most six operations.
//
// Absorption is the reason why a plan with few conditions is much easier than one with many: an operation is done at once only if no
// verdict on another can turn from yes to no by it. Masks should name no operation that does not matter.
//
// # Work
//
// testdata/work.golden holds how much work each instance of testdata takes, so that a change that makes the search do more shows in
// review; DEVELOPERS.md has the table of times, and BenchmarkSolve reruns it. A budget counts work that takes about a microsecond as a
// node: a state kept, an entry of a table, two successors made, or 32 ways on tried to fill a table. So it bounds time and room
// whatever the shape of the problem.
package sequence
