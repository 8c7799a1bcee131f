package holding

import "catchplate/partspec"

// flatBench is work by hand on a flat part: sawing, filing, marking out, deburring. Nothing is judged; a bench is all it wants.
func (s Shop) flatBench() []Mount {
	if s.Bench.Kind == "" {
		return nil
	}
	var mounts []Mount
	for _, free := range faces() {
		mounts = append(mounts, Mount{Holding: partspec.Holding{Kind: BenchKind, Name: s.Bench.Name}, Machine: partspec.Bench, Free: free, Surface: partSurface, Z1: s.Length, Minutes: benchMinutes})
	}
	return mounts
}
