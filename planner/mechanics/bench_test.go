package mechanics

import "testing"

// One evaluation of a holding is to stay under 2 ms: a compare asks for dozens.
func BenchmarkDistortion(b *testing.B) {
	tube := bezel()
	tube.LengthMM, tube.GripLengthMM = 45, 15
	cup := bezel()
	cup.WebMM = 4
	pie := bezel()
	pie.JawArcDeg, pie.Rigid = 100, &RigidJaws{0.02}
	plug := bezel()
	plug.Plug = &Plug{0.01, 70000, 0.33}
	for _, c := range []struct {
		name string
		grip RingGrip
	}{{"full", bezel()}, {"part", tube}, {"web", cup}, {"rigid", pie}, {"plug", plug}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := c.grip.Distortion(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("plate", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := coverPlate().Distortion(); err != nil {
				b.Fatal(err)
			}
		}
	})
}
