package mechanics_test

import (
	"fmt"

	"catchplate/planner/mechanics"
)

// A thin steel ring in three narrow jaws: what 1000 N a jaw does to it, and how much its bore can bear.
func ExampleRingGrip() {
	ring := mechanics.RingGrip{OutsideDiameterMM: 60, WallMM: 3, LengthMM: 24, GripLengthMM: 24, Jaws: 3, JawWidthMM: 8,
		ForcePerJawN: 1000, ModulusMPa: 210000, Poisson: 0.3, YieldMPa: 250}
	d, err := ring.Distortion()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("out of round %.3f mm, stress %.0f MPa: %s, within %.0f %%\n", d.ErrorMostMM, d.StressMostMPa, d.Trust, d.BandPercent)
	most, err := ring.MostForcePerJaw(0.02)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("0.02 mm is used up at %.0f N a jaw (%s)\n", most.PerJawN, most.RuledBy)
	// Output:
	// out of round 0.062 mm, stress 137 MPa: good, within 5 %
	// 0.02 mm is used up at 321 N a jaw (tolerance)
}
