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
// # Measured
//
// Median of five runs (three for g40-2, one for g60-2 and g60-3), one thread, on a shared machine with two cores that was not
// quiet: read the times as upper values. Nodes are states kept and entries of the projections. All are proven, and equal to the known
// optimum, but the last. BenchmarkSolve reruns it; testdata/work.golden holds the counts.
//
//	instance  operations  time         nodes    cost
//	g16-1             16  0.1 ms         163    2060
//	g16-2             16  0.3 ms         610    1345
//	g16-3             16  0.3 ms         824    1428
//	g24-1             24  0.6 ms       1,557    1821
//	g24-2             24  0.6 ms       1,673    2091
//	g24-3             24  2.8 ms       9,313    2221
//	g30-1             30  3.0 ms       5,969    2806
//	g30-2             30  7.8 ms      15,067    2670
//	g30-3             30  45 ms       55,034    2245
//	g40-1             40  32 ms       55,645    3797
//	g40-2             40  5.2 s    2,464,692    2913
//	g40-3             40  0.28 s     415,759    2610
//	g60-1             60  0.28 s     288,070    5608
//	g60-2             60  17 s    11,796,511    4470 (known before: between 4387 and 4526), 0.76 GB
//	g60-3             60  17 s    18,980,455    3836, bound 3643: gap 5.0 % (known before: between 3531 and 3859), 1.04 GB
//	case01            13  0.6 ms         851    833, as published
//	ESC25             27  4.3 ms       7,828    1681
//	ft53.4            54  2.8 s      816,808    14425
package sequence
