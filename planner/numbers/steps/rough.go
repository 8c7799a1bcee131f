package steps

import (
	"fmt"
	"math"
)

// Rough is the straight roughing before the finishing cuts, after which no finishing plunge is deeper than the most depth per
// cut, measured along the depth slide.
type Rough struct {
	Passes  []RoughPass // from the top down, each layer from left to right
	LeaveMM float64     // metal left in depth for the finishing cuts, at least
	LayerMM float64     // depth of a layer, at most
}

// RoughPass is one straight traverse at a set depth.
type RoughPass struct {
	DepthGrads, FromGrads, ToGrads int64
	DepthMM, FromMM, ToMM          float64
}

const (
	// roughLeaveMM: rough to half a millimetre from the curve (rule A-39 gives 0.5 to 1), or half the most depth if that is less.
	roughLeaveMM = 0.5
	// mostRoughPasses keeps a mistyped depth from printing a book.
	mostRoughPasses = 5000
)

// rough lays layers from the stock's face down. At each layer the cutter traverses where the finishing table could go deeper by the
// metal to leave.
func (j *job) rough() (Rough, error) {
	most := j.request.MostDepthMM
	if most == 0 {
		return Rough{}, nil
	}
	travel := j.request.Depth.TravelMM()
	leave := int64(math.Ceil(min(roughLeaveMM, most/2)/travel - tieMM))
	layer := int64(math.Floor(most/travel+tieMM)) - leave
	if layer < 1 {
		return Rough{}, fmt.Errorf("the most depth per cut, %g mm, must be two graduations of the depth dial (%g mm) or more", most, 2*travel)
	}
	r := Rough{LeaveMM: float64(leave) * travel, LayerMM: float64(layer) * travel}
	face := int64(math.Floor((-j.feeler.surface.top() - j.request.StockAboveMM - j.request.Depth.OriginMM) / travel))
	deepest := j.places[0].depth
	for _, p := range j.places {
		deepest = max(deepest, p.depth)
	}
	for depth := face + layer; depth <= deepest-leave; depth += layer {
		r.Passes = append(r.Passes, j.roughLayer(depth, leave)...)
		if len(r.Passes) > mostRoughPasses {
			return Rough{}, fmt.Errorf("roughing in layers of %g mm takes more than %d passes: saw or drill most of the metal away first, or allow more depth per cut",
				r.LayerMM, mostRoughPasses)
		}
	}
	return r, nil
}

// roughLayer returns the traverses at one depth: the runs of neighbouring places that go deeper by leave or more.
func (j *job) roughLayer(depth, leave int64) []RoughPass {
	var passes []RoughPass
	for n := 0; n < len(j.places); n++ {
		first := n
		for n < len(j.places) && j.places[n].depth-leave >= depth {
			n++
		}
		if n > first {
			from, to := j.places[first], j.places[n-1]
			passes = append(passes, RoughPass{DepthGrads: depth, FromGrads: from.across, ToGrads: to.across,
				DepthMM: j.feeler.depth.mm(depth), FromMM: j.feeler.across.mm(from.across), ToMM: j.feeler.across.mm(to.across)})
		}
	}
	return passes
}

// top is the highest point of the curve.
func (s surface) top() float64 {
	top := math.Inf(-1)
	for _, p := range s.peaks() {
		top = max(top, p.y)
	}
	return top
}
