// Package mechanics holds the plain formulas behind a holding: what a cut pushes with, what a grip resists, what grip and
// cut do to the work, and how surely that is known.
//
// In: dimensions (mm), forces (N), elastic figures (MPa), angles in degrees. Out: forces, errors, stresses, speeds, each
// with a Confidence that tells the trust (good, rough, none), the band in per cent and the reason in words. Nothing here
// decides: whether a figure is good enough is the caller's business, and so are friction, safety factors and tables.
//
// After every call: inputs that cannot be give an *InputError that names the argument and what would do; inputs outside
// the checked range give a bound or an estimate marked rough, or a figure marked none, never a bare number; the same input
// gives the same bits; nothing is kept between calls.
//
// Where to find what:
//
//	ring.go domain.go     a ring, tube, cup or bar in jaws: RingGrip.Distortion and the range in which it holds
//	pad.go field.go       pressure as harmonics; movement, out of round and stress anywhere on the ring
//	annulus.go            the exact plane annulus for one harmonic
//	shell.go web.go       its spread along the axis; a web that closes the end
//	contact.go            stiff bored jaws with a mismatch, a plug with clearance
//	force.go grip.go      Kienzle's cutting force; the least grip that holds
//	mandrel.go bond.go    friction drives, wedges, glue and solder
//	beam.go               deflection of stepped shafts, bars and tools
//	band.go hermite.go    the one equation solver and the one finite element
//	confidence.go         trust, band and input errors
package mechanics
