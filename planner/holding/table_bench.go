package holding

import "catchplate/partspec"

// benchMinutes is what putting the work in the bench vice takes. Ours, no source.
const benchMinutes = 1.0

// BenchKind is the kind of holding that work at the bench has: the bench vice with soft jaws, or the flat of the bench. No workshop lists it.
const BenchKind partspec.HoldingKind = "bench"

// atBench lists a turned part at the bench, either end up.
func (s Shop) atBench() []Mount {
	var mounts []Mount
	for _, free := range []partspec.End{partspec.Right, partspec.Left} {
		mounts = append(mounts, Mount{Machine: partspec.Bench, Holding: partspec.Holding{Kind: BenchKind, Name: s.Bench.Name}, Free: free, Surface: partSurface, Minutes: benchMinutes, Z1: s.Length, Radius: float64(s.Part.Stock.EnvelopeDiameter()) / 2})
	}
	return mounts
}

// partSurface stands for the part as a whole where no surface of it matters.
const partSurface = "part"
