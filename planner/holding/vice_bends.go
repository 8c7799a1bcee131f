package holding

import (
	"math"
	"slices"

	"catchplate/planner/mechanics"
	"catchplate/planner/process"
)

// thinnest is how thin work may be that is nominally so thick: faces which are cut may lie at their lower limit.
func (s Shop) thinnest(thick float64) float64 {
	if slices.ContainsFunc(s.Tasks, func(t process.Task) bool { return t.Flat != nil && (t.Flat.Back != nil || t.Flat.Front != nil) }) {
		return thick - float64(s.Part.Length.Mid()-s.Part.Length.Low)
	}
	return thick
}

// bowShare is the part of the force which would bow a plate that jaws may press with. Ours, no source.
const bowShare = 0.5

// unbowed is the force that jaws may press a plate of the part's metal with.
func (s Shop) unbowed(thick, across, wide float64) float64 {
	metal := s.Part.Material
	plate := mechanics.PlateBetweenJaws{ThicknessMM: thick, AcrossMM: across, WidthMM: wide, ModulusMPa: metal.ModulusGPa.Low * 1000, Poisson: metal.Poisson}
	return math.Floor(bowShare * plate.BowsAtN())
}

// sag is how far the heaviest drill of a moment presses work down between its parallels, mm.
func (s Shop) sag(at moment, thick, span, wide float64) float64 {
	most := 0.0
	for _, w := range at.ways {
		most = math.Max(most, w.ThrustN)
	}
	return mechanics.PlateOnParallels{ThicknessMM: thick, SpanMM: span, WidthMM: wide, ModulusMPa: s.Part.Material.ModulusGPa.Low * 1000}.SagMM(most)
}
