package steps

import (
	"fmt"
)

// Cutter is the form that is plunged. Its reference point is the middle of its width across, and its lowest point in depth.
// Above its nose it takes the full width of metal: a plunge clears everything straight above the nose.
type Cutter struct {
	Kind           CutterKind
	RadiusMM       float64 // round nose: of the nose; else 0
	WidthMM        float64 // square end: over all; else 0
	CornerRadiusMM float64 // square end: of both corners; may be 0

	// Lean of each flank outwards from straight in, as on a pointed turning tool; 0 for a cutter that is no wider above its nose.
	// What the flanks clear besides the nose is not counted on.
	LeftFlankDeg, RightFlankDeg float64
}

// CutterKind is the form of a cutter's end.
type CutterKind int

const (
	RoundNose CutterKind = iota + 1 // a round-nosed turning tool or a ball-nosed milling cutter
	SquareEnd                       // a parting or grooving tool, or an end mill, with sharp or rounded corners
)

func (k CutterKind) String() string {
	switch k {
	case RoundNose:
		return "round nose"
	case SquareEnd:
		return "square end"
	}
	return fmt.Sprintf("CutterKind(%d)", int(k))
}

// flatHalfMM and noseMM describe every cutter as a flat swept by a disc: a round nose has no flat.
func (c Cutter) flatHalfMM() float64 {
	if c.Kind == RoundNose {
		return 0
	}
	return c.WidthMM/2 - c.CornerRadiusMM
}

func (c Cutter) noseMM() float64 {
	if c.Kind == RoundNose {
		return c.RadiusMM
	}
	return c.CornerRadiusMM
}

func (c Cutter) halfWidthMM() float64 { return c.flatHalfMM() + c.noseMM() }

func (c Cutter) check() error {
	for _, lean := range []float64{c.LeftFlankDeg, c.RightFlankDeg} {
		if !(lean >= 0 && lean < 90) {
			return fmt.Errorf("a flank must lean 0 to less than 90 degrees from straight in, not %g", lean)
		}
	}
	switch c.Kind {
	case RoundNose:
		if !inReach(c.RadiusMM) || c.RadiusMM <= 0 || c.WidthMM != 0 || c.CornerRadiusMM != 0 {
			return fmt.Errorf("a round nose needs a radius above 0 and no other size")
		}
	case SquareEnd:
		if !inReach(c.WidthMM, c.CornerRadiusMM) || c.WidthMM <= 0 || c.CornerRadiusMM < 0 || c.RadiusMM != 0 {
			return fmt.Errorf("a square end needs a width above 0, a corner radius of 0 or more, and no other size")
		}
		if 2*c.CornerRadiusMM > c.WidthMM {
			return fmt.Errorf("a square end %g wide cannot have corners of radius %g: half the width at most", c.WidthMM, c.CornerRadiusMM)
		}
	default:
		return fmt.Errorf("the cutter must be a round nose or a square end, not %v", c.Kind)
	}
	return nil
}

// Axis is one slide with its dial.
type Axis struct {
	GraduationMM float64 // what the dial says one graduation is
	Reads        Reads
	OriginMM     float64 // where the cutter's reference point stands in the drawing when the dial reads 0
}

// Reads says what a dial shows when the slide moves.
type Reads int

const (
	ReadsTravel   Reads = iota + 1 // the true movement of the slide (a radius-reading cross slide, a saddle, a table)
	ReadsDiameter                  // twice the movement (a diameter-reading cross slide)
)

func (r Reads) String() string {
	switch r {
	case ReadsTravel:
		return "travel"
	case ReadsDiameter:
		return "diameter"
	}
	return fmt.Sprintf("Reads(%d)", int(r))
}

// TravelMM is the true movement of the slide for one graduation.
func (a Axis) TravelMM() float64 {
	if a.Reads == ReadsDiameter {
		return a.GraduationMM / 2
	}
	return a.GraduationMM
}

// finestGraduationMM bounds the number of places on a dial; no slide is finer.
const finestGraduationMM = 1e-4

func (a Axis) check(name string) error {
	if !inReach(a.GraduationMM, a.OriginMM) || a.GraduationMM < finestGraduationMM {
		return fmt.Errorf("the %s dial needs a graduation of %g mm or more and an origin within %g mm", name, finestGraduationMM, largestMM)
	}
	if a.Reads != ReadsTravel && a.Reads != ReadsDiameter {
		return fmt.Errorf("the %s dial must read travel or diameter, not %v", name, a.Reads)
	}
	return nil
}

// Request is one curve to be stepped. All numbers are taken as the decimals they print as: 0.02 is exactly 1/50.
type Request struct {
	Curve         Curve
	Cutter        Cutter
	Across, Depth Axis
	LeftoverMM    float64 // most metal left for the file, measured normal to the curve
	MostDepthMM   float64 // most depth per cut, for the roughing passes; 0: no roughing passes are worked out
	StockAboveMM  float64 // metal that stands above the highest point of the curve before roughing; may be 0
}

// leastLeftoverMM keeps the leftover far above tieMM, so that a tie never decides more than a tie.
const leastLeftoverMM = 1e-4

func (r Request) check() error {
	if err := r.Cutter.check(); err != nil {
		return err
	}
	if err := r.Across.check("across"); err != nil {
		return err
	}
	if err := r.Depth.check("depth"); err != nil {
		return err
	}
	if !inReach(r.LeftoverMM) || r.LeftoverMM < leastLeftoverMM {
		return fmt.Errorf("the leftover must be %g mm or more, not %g: a curve cut in steps always leaves crests", leastLeftoverMM, r.LeftoverMM)
	}
	if !inReach(r.MostDepthMM, r.StockAboveMM) || min(r.MostDepthMM, r.StockAboveMM) < 0 {
		return fmt.Errorf("the most depth per cut and the stock above the curve must be 0 or more")
	}
	return nil
}
