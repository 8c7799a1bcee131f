package solid

import "math"

// Place is where one body leaves another.
type Place struct {
	Z, R   float64 // in the body that leaves the other
	By     float64 // how far, in radius
	Inside bool    // at the inner side: a hole that is too small, as seen from the other
}

// Within reports whether a's metal lies inside b's, and where and by how much it leaves it most. It leaves b where it goes beyond by more than tolMM in
// radius over more than twice tolMM along the axis; a shoulder may thus stand off by that much, and noise is no fault.
func Within(a, b Body, tolMM float64) (ok bool, where Place) {
	eachStretch(stops(a.Outer, a.Inner, b.Outer, b.Inner), func(z0, z1 float64) {
		z0, z1 = z0+tolMM, z1-tolMM
		if z1 <= z0 {
			return
		}
		for _, f := range leaves(a, b, z0, z1) {
			if f.By > where.By {
				where = f
			}
		}
	})
	return where.By <= tolMM, where
}

// leaves gives how far a stands out of b at its outer and its inner side, over a stretch with one piece of each.
func leaves(a, b Body, z0, z1 float64) []Place {
	mid := (z0 + z1) / 2
	aOut, metal := a.Outer.pieceOver(mid)
	if !metal {
		return nil
	}
	aIn, _ := a.Inner.pieceOver(mid)
	bOut, there := b.Outer.pieceOver(mid)
	if !there {
		z, wall := greatestGap(aOut, aIn, z0, z1)
		return []Place{{Z: z, R: aOut.At(z), By: wall}}
	}
	bIn, _ := b.Inner.pieceOver(mid)
	zo, out := greatestGap(aOut, bOut, z0, z1)
	zi, in := greatestGap(bIn, aIn, z0, z1)
	return []Place{
		{Z: zo, R: aOut.At(zo), By: math.Max(0, out)},
		{Z: zi, R: aIn.At(zi), By: math.Max(0, in), Inside: true},
	}
}
