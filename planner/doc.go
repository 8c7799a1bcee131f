// Package planner turns a checked job into a proved plan.
//
// In: a partspec.Job. Out: a plan.Plan: for each part its setups and operations in dial readings, with the reasons, or the refusals that say why there is none and
// what would help. The passes are listed in pipeline.go in the order in which they run. Same job, same plan, to the byte.
package planner
