package steps_test

import (
	"fmt"

	"catchplate/planner/numbers/steps"
)

// The saddle of a stilling pipe: a hollow of radius 45 in a block 40 wide, milled with a ball-nosed cutter of radius 2.
func ExampleFewest() {
	dial := steps.Axis{GraduationMM: 0.02, Reads: steps.ReadsTravel} // zero on the centre line, at the bottom of the hollow
	table, err := steps.Fewest(steps.Request{
		Curve:      steps.ConcaveSeat(45, 40),
		Cutter:     steps.Cutter{Kind: steps.RoundNose, RadiusMM: 2},
		Across:     dial,
		Depth:      dial,
		LeftoverMM: 0.05,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d cuts, worst leftover %.4f, mirrored: %v\n", len(table.Cuts), table.WorstLeftoverMM, table.Mirrored)
	for _, c := range table.Cuts[24:28] {
		fmt.Printf("across %4d (%.2f)  depth %3d (%.2f)  crest after %.4f\n", c.AcrossGrads, c.AcrossMM, c.DepthGrads, c.DepthMM, c.CrestAfterMM)
	}
	fmt.Println(table.Why)
	// Output:
	// 49 cuts, worst leftover 0.0498, mirrored: true
	// across    0 (0.00)  depth   0 (0.00)  crest after 0.0451
	// across   38 (0.76)  depth  -1 (-0.02)  crest after 0.0481
	// across   74 (1.48)  depth  -2 (-0.04)  crest after 0.0480
	// across  113 (2.26)  depth  -3 (-0.06)  crest after 0.0498
	// No cut on these graduations serves two of 49 chosen points of the curve, so no table is shorter than 49. The best equal steps need 57.
}
