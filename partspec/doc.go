// Package partspec reads the part language: HCL files flow in, a checked Job
// and every diagnostic of the run flow out.
//
// The way through: a guard refuses files that could hurt the parser (guard.go),
// hcl parses them (load.go), each block is matched against the list of what its
// word may say (schema.go), every expression is evaluated in dependency order
// (eval.go, value.go), parts are built from the outside in (part.go, then a
// file for each kind of feature), edges, relations and fits last. Flat parts have
// an outline (outline.go, outlinechain.go) instead of a chain of outside features.
//
// What holds after: with errors there is no Job. In a Job every name is known,
// every dimension is finite and has limits that are the right way round, every
// feature has its place in the part, the outside of a turned part covers its
// whole length, the outline of a flat one is closed and does not cross itself,
// holes lie in metal, no wall is gone, and the stock has metal for it. Diagnostics are sorted by file
// and place, and a value that failed never causes a second message. Input of any
// kind is bounded in time and memory. The language itself is told in language.md.
package partspec
