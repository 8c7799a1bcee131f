package solid

// The tolerances of the geometry, each derived from the one before.
const (
	// Noise is how far a place computed in two ways may differ: sizes are rounded to a nanometre when a drawing is read, and a place
	// is the sum of a few of them.
	Noise = 1e-6

	// Snap is the width under which two places along the axis are one: two noisy places that should agree differ by less.
	Snap = 2 * Noise

	// Same is how much two shapes that should agree may differ, in either direction: a few snapped places one after the other.
	Same = 5 * Snap

	// Far is longer than any part: the reach of a tool edge that nothing limits.
	Far = 1e5
)
