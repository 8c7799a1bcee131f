// Package sequence finds the cheapest order of operations, proves it, and says how far it is proven.
//
// In flows a [Problem]: operations with alternatives (a setup, a tool, an own cost), arcs of precedence, the costs of
// changing setup, tool and machine, and three things that make a plan of work harder than a tour: alternatives that are
// possible only in certain states of the work ([Problem].Allowed), pairs that must share one mounting ([Link]), and risk
// priced in the unit of cost. Out flows a [Result]: an order, its cost, a lower bound, and whether the two meet.
//
// What holds of every result:
//
//   - the order passes [Cost], which shares no code with the search, and [Cost] returns exactly Result.Cost;
//   - Bound <= Cost, and Proven says Bound == Cost;
//   - the answer depends on the problem and the budget in nodes only: not on time, not on the machine, not on the order
//     in which operations, alternatives, setups, tools or arcs are listed, as long as operations have names of their own;
//   - if there is no order, Result.Blocked says how far the work could go and what stopped it there.
package sequence
