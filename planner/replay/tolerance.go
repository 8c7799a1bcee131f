package replay

import "catchplate/planner/solid"

const (
	// same is how far two places may differ that should agree.
	same = solid.Same

	// figure is how far a figure printed in the plan may differ from the true one: the plan keeps sizes to a thousandth of a millimetre.
	figure = 0.0006

	// offSurface is how far from a surface a point is taken that should lie beside it: beyond all noise, less than any cut.
	offSurface = 10 * solid.Same

	// clearance is what jaws, mandrels and tools must keep from each other (rule B-45, common practice, no source).
	clearance = 2.0
)
