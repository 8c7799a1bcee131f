package partspec

import "catchplate/partspec/units"

// Bounds on what is read. Each is far above any honest file and far below what
// makes the parser or the evaluation slow; hcl's own parser has none of them.
const (
	maxFileBytes    = 256 << 10
	maxFiles        = 200
	maxJobBytes     = 2 << 20 // all files of a run together
	maxTokens       = 60_000  // in one file
	maxDepth        = 32      // brackets, braces and quotes inside one another
	maxOperators    = 64      // operators and steps of names in one expression
	maxNumberRunes  = 24
	maxExponent     = 2      // digits
	maxNumber       = 1e6    // no figure of a small workshop is larger
	maxTextBytes    = 10_000 // value of one attribute
	maxListItems    = 1_000  // value of one attribute
	maxReported     = 200    // diagnostics kept; cmd shows fewer
	maxGuardReports = 20     // refusals of the guard in one file
	maxQuantity     = 10_000
	maxWordBytes    = 100 // names, materials, designations
	maxParts        = 500
	maxFits         = 500
	maxFeatures     = 300   // in one part
	maxChain        = 1_000 // values that rest on one another
	maxHoles        = 200   // in one pattern
	maxEdges        = 200   // of an outline
	maxOpenings     = 1_000 // holes and bores of one part together
)

// Tolerances of the checks, all in millimetres.
const (
	// sameLength is how far two nominal lengths may differ and still be the same
	// one: a micrometre, less than any small workshop measures, more than the
	// rounding of inch fractions written with four decimals.
	sameLength units.Length = 0.001
	// leastSize is the smallest diameter, length or width that is believed.
	leastSize units.Length = 0.01
	// blankAgrees is how far the diameter drawn under a thread may be from the
	// thread's own major diameter before it is taken for a mistake.
	blankAgrees units.Length = 0.1
)
