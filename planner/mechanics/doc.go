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
//	most.go release.go    the most force a tolerance bears; what springs back after the cut
//	straps.go plate.go    a ring under straps on a face; a plate with a big bore near an edge
//	force.go tool.go      Kienzle's cutting force; drills and boring bars
//	grip.go clamp.go      the least grip and the least strap force that hold
//	chuck.go              hand-tightened chucks, and what speed takes from them
//	hold.go mandrel.go    what friction and wedges resist
//	bond.go fit.go        glue and solder; press fits
//	beam.go whirl.go      deflection and critical speed of stepped shafts
//	balance.go            faceplate balance
//
// and beneath them:
//
//	confidence.go         trust, band and input errors
//	pad.go field.go       pressure as harmonics; movement and out of round anywhere on the ring
//	stress.go             stress there
//	annulus.go            the exact plane annulus for one harmonic
//	shell.go web.go       its spread along the axis; a web that closes the end
//	contact.go            which cells of a face press: jaws.go for stiff bored jaws, plug.go for a plug
//	thinring.go           the closed thin-ring formula, for a quick look
//	frame.go              the plate's frame of beams
//	band.go hermite.go    the one equation solver and the one finite element
package mechanics
