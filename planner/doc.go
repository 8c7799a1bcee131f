// Package planner turns a checked job into a proved plan.
//
// In: a partspec.Job. Out: a plan.Plan: for each part its setups and operations in dial readings, with the reasons, or the refusals that say why there is none and
// what would help. Same job, same plan, to the byte.
//
// The passes, in the order in which they run (pipeline.go):
//
//	the parts, holes before shafts                partorder.go
//	what cannot be planned at all                 notplanned.go, lathe.go
//	how the stock may lie                         place.go
//	attempts: each way to lie and to make holes   attempts.go, flat.go
//	  ways of each task in each mount             choices.go
//	  tasks that a relation binds                 links.go
//	  the cheapest order                          order.go
//	  one grip for each stay                      stay.go, grip.go
//	  or why there is none                        unmade.go
//	the best attempt as setups and operations     write.go, flat.go, reasons.go, seatorder.go
//	the rules that it cites                       cited.go
//	the proof                                     planner/replay
//
// Beside them compare.go (other ways of holding) and explain.go (why this order) answer questions about a plan.
package planner
