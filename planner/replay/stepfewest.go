package replay

import (
	"fmt"
	"math"

	"catchplate/planner/plan"
)

// That there is no shorter table is looked over without solving anything: the table names as many places of its curve as it has steps, and no cut on the graduations may
// bring two of them within what may be left. At each reading across, the shallowest cut that would is worked out, and must pass the curve at some point.

// stepFigure is a stepped curve and its cutter, in the frame of the two slides.
type stepFigure struct {
	t          *plan.StepTable
	flat, nose float64 // half the flat, and the radius of the nose beside it
}

const (
	// passesBy is how far over the curve a cutter must stay to be clear of it: a tenth of a micrometre, far below what any dial shows. A cut that only touches cannot be told from one that
	// is past by rounding alone; the planner tells them apart in rational numbers, here no shorter table may count on them,
	// nor on one that leaves all that may be left but for rounding.
	passesBy = 1e-4
	// besideBy is how far a sharp corner may stand beside a point for rounding alone, mm: it is then taken to be over it where that makes a cut pass the curve, and not
	// where that makes it serve a place.
	besideBy = 1e-9
	// mostMarks bounds the readings across that are looked at.
	mostMarks = 1_000_000
	// standsOver is higher than any crest, mm.
	standsOver = 60.0
)

// wrong reports whether the curve is no chain, or its ends are of no kind.
func (f stepFigure) wrong() bool {
	if len(f.t.Curve) == 0 || f.nose < 0 || f.flat < -same {
		return true
	}
	for _, end := range []string{f.t.Left, f.t.Right} {
		if end != "air" && end != "level" && end != "wall" {
			return true
		}
	}
	for i, p := range f.t.Curve {
		loose := math.Abs(pieceDepth(p, p.FromAcrossMM)-p.FromDepthMM) > same || math.Abs(pieceDepth(p, p.ToAcrossMM)-p.ToDepthMM) > same
		if i > 0 {
			before := f.t.Curve[i-1]
			loose = loose || math.Abs(before.ToAcrossMM-p.FromAcrossMM) > same || math.Abs(before.ToDepthMM-p.FromDepthMM) > same
		}
		if loose || p.FromAcrossMM >= p.ToAcrossMM {
			return true
		}
	}
	return false
}

// pieceDepth is the depth of a piece at a place across.
func pieceDepth(p plan.StepPiece, x float64) float64 {
	if p.RadiusMM == 0 {
		return p.FromDepthMM + (p.ToDepthMM-p.FromDepthMM)*(x-p.FromAcrossMM)/(p.ToAcrossMM-p.FromAcrossMM)
	}
	off := x - p.CentreAcrossMM
	half := math.Sqrt(math.Max(0, (p.RadiusMM-off)*(p.RadiusMM+off)))
	if p.Hollow {
		return p.CentreDepthMM + half
	}
	return p.CentreDepthMM - half
}

func (f stepFigure) ends() (first, last plan.StepPiece) {
	return f.t.Curve[0], f.t.Curve[len(f.t.Curve)-1]
}

// rises is how much shallower the cutter's edge is than its lowest point, so far from its middle; infinite beside it.
func (f stepFigure) rises(off float64) float64 {
	d := math.Abs(off) - f.flat
	switch {
	case d <= 0:
		return 0
	case d > f.nose:
		return math.Inf(1)
	}
	return f.nose - math.Sqrt((f.nose-d)*(f.nose+d))
}

// distance is how far a point over the curve is from the metal.
func (f stepFigure) distance(x, d float64) float64 {
	best := math.Inf(1)
	for _, p := range f.t.Curve {
		best = math.Min(best, pieceDistance(p, x, d))
	}
	first, last := f.ends()
	for _, end := range []struct {
		kind      string
		x, d, out float64
	}{{f.t.Left, first.FromAcrossMM, first.FromDepthMM, -1}, {f.t.Right, last.ToAcrossMM, last.ToDepthMM, 1}} {
		switch {
		case end.kind == "wall":
			best = math.Min(best, math.Abs(x-end.x))
		case end.kind == "level" && (x-end.x)*end.out > 0:
			best = math.Min(best, math.Abs(d-end.d))
		}
	}
	return best
}

func pieceDistance(p plan.StepPiece, x, d float64) float64 {
	best := math.Min(math.Hypot(x-p.FromAcrossMM, d-p.FromDepthMM), math.Hypot(x-p.ToAcrossMM, d-p.ToDepthMM))
	foot := footOf(p, x, d)
	if foot < p.FromAcrossMM || foot > p.ToAcrossMM {
		return best
	}
	return math.Min(best, math.Hypot(x-foot, d-pieceDepth(p, foot)))
}

// footOf is the place across of the point of a piece, or of what it is a piece of, that is square below or above a point.
func footOf(p plan.StepPiece, x, d float64) float64 {
	if p.RadiusMM == 0 {
		dx, dd := p.ToAcrossMM-p.FromAcrossMM, p.ToDepthMM-p.FromDepthMM
		return p.FromAcrossMM + dx*((x-p.FromAcrossMM)*dx+(d-p.FromDepthMM)*dd)/(dx*dx+dd*dd)
	}
	long := math.Hypot(x-p.CentreAcrossMM, d-p.CentreDepthMM)
	if long == 0 {
		return p.CentreAcrossMM
	}
	return p.CentreAcrossMM + (x-p.CentreAcrossMM)*p.RadiusMM/long
}

// crest is what two neighbouring steps leave where their edges meet.
func (f stepFigure) crest(a, b plan.Step) float64 {
	reach := f.flat + f.nose
	lo, hi := b.AcrossMM-reach, a.AcrossMM+reach
	if math.Abs(a.DepthMM-b.DepthMM) <= same || lo >= hi { // two flats side by side cross nowhere, or all along
		lo = (a.AcrossMM + b.AcrossMM) / 2
		hi = lo
	}
	edge := func(s plan.Step, x float64) float64 { return s.DepthMM - f.rises(x-s.AcrossMM) }
	for range 60 {
		if mid := (lo + hi) / 2; edge(a, mid) > edge(b, mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	first, last := f.ends()
	x := math.Min(math.Max((lo+hi)/2, first.FromAcrossMM), last.ToAcrossMM)
	left := math.Inf(1)
	for _, s := range []plan.Step{a, b} {
		if d := edge(s, x); !math.IsInf(d, -1) {
			left = math.Min(left, d)
		}
	}
	return f.distance(x, left)
}

// within is the shallowest depth over a place of the curve at which no more stands there than may be left.
func (f stepFigure) within(x float64) float64 {
	deep := math.Inf(1)
	for _, p := range f.t.Curve {
		if x >= p.FromAcrossMM && x <= p.ToAcrossMM {
			deep = math.Min(deep, pieceDepth(p, x))
		}
	}
	high := deep - standsOver
	for range 60 {
		if mid := (high + deep) / 2; f.distance(x, mid) <= f.t.LeftoverMM {
			deep = mid
		} else {
			high = mid
		}
	}
	return deep
}

// refuted says why a table may not be the shortest; empty where the witnesses hold.
func (f stepFigure) refuted(g grid) string {
	if len(f.t.WitnessAcrossMM) < f.t.Count() {
		return "it names fewer places of the curve than it has steps"
	}
	first, last := f.ends()
	needs := make([]float64, len(f.t.WitnessAcrossMM))
	for i, x := range f.t.WitnessAcrossMM {
		if x < first.FromAcrossMM || x > last.ToAcrossMM || i > 0 && x <= f.t.WitnessAcrossMM[i-1] {
			return "the places that it names are not on the curve, one after the other"
		}
		needs[i] = f.within(x)
	}
	reach := f.flat + f.nose
	from := math.Floor((first.FromAcrossMM - reach - g.across) / g.acrossGrad)
	to := math.Ceil((last.ToAcrossMM + reach - g.across) / g.acrossGrad)
	if to-from > mostMarks {
		return "its dial across has too many graduations to look at"
	}
	for n := from; n <= to; n++ {
		x := g.across + n*g.acrossGrad
		if d, both := f.serves(g, x, needs); both && !f.passes(x, d) {
			return fmt.Sprintf("a cut at %s across, %s deep, serves two of the places that it names", mm(x), mm(d))
		}
	}
	return ""
}

// serves is the shallowest depth on the graduations at which a cut serves two witnesses at once.
func (f stepFigure) serves(g grid, x float64, needs []float64) (depth float64, both bool) {
	one, two := math.Inf(1), math.Inf(1)
	for i, at := range f.t.WitnessAcrossMM {
		need := needs[i] + f.rises(math.Abs(at-x)+besideBy)
		if need < one {
			one, two = need, one
		} else if need < two {
			two = need
		}
	}
	if math.IsInf(two, 1) {
		return 0, false
	}
	return g.depth + math.Ceil((two-g.depth+passesBy)/g.depthGrad)*g.depthGrad, true
}

// passes reports whether a cutter so placed is past the curve, or what stands beside it, at some point.
func (f stepFigure) passes(x, depth float64) bool {
	reach := f.flat + f.nose
	first, last := f.ends()
	if f.t.Left == "wall" && x-reach < first.FromAcrossMM-passesBy || f.t.Right == "wall" && x+reach > last.ToAcrossMM+passesBy {
		return true
	}
	past := func(at, metal float64) bool {
		return depth-f.rises(math.Max(0, math.Abs(at-x)-besideBy)) > metal-passesBy
	}
	if f.t.Left == "level" && past(math.Min(x, first.FromAcrossMM), first.FromDepthMM) || f.t.Right == "level" && past(math.Max(x, last.ToAcrossMM), last.ToDepthMM) {
		return true
	}
	for _, p := range f.t.Curve {
		places := []float64{p.FromAcrossMM, p.ToAcrossMM, x - f.flat, x + f.flat, x - reach, x + reach, p.CentreAcrossMM}
		for _, nose := range []float64{x - f.flat, x + f.flat} {
			places = append(places, footOf(p, nose, depth-f.nose))
		}
		for _, at := range places {
			if at >= p.FromAcrossMM && at <= p.ToAcrossMM && past(at, pieceDepth(p, at)) {
				return true
			}
		}
	}
	return false
}
