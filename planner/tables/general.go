package tables

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"catchplate/partspec/units"
)

// GeneralKind is what a general tolerance applies to.
type GeneralKind string

// The kinds of ISO 2768: the first three in part 1 (classes f m c v), the
// others in part 2 (classes H K L).
const (
	GeneralLength     GeneralKind = "length"
	GeneralEdge       GeneralKind = "edge" // chamfers and outside radii
	GeneralAngle      GeneralKind = "angle"
	GeneralFlatness   GeneralKind = "flatness" // and straightness
	GeneralSquareness GeneralKind = "squareness"
	GeneralSymmetry   GeneralKind = "symmetry"
	GeneralRunOut     GeneralKind = "run-out"
)

var generalKinds = []GeneralKind{
	GeneralLength, GeneralEdge, GeneralAngle, GeneralFlatness, GeneralSquareness, GeneralSymmetry, GeneralRunOut,
}

type generalTolerance struct {
	kind       GeneralKind
	class      string
	over, upTo units.Length
	deviation  float64
	unit       string // "mm", or "minute" of arc
	source     string
	fromMemory bool
}

func parseGeneralTolerance(r *record) generalTolerance {
	g := generalTolerance{
		kind: GeneralKind(r.need("kind")), class: r.need("class"), over: r.length("over_mm"), upTo: r.length("upto_mm"),
		deviation: r.number("deviation"), unit: r.need("unit"),
	}
	g.source, g.fromMemory = r.provenance("source")
	if !slices.Contains(generalKinds, g.kind) {
		r.fail("kind", "%q is not a kind", g.kind)
	}
	if (g.unit == "minute") != (g.kind == GeneralAngle) {
		r.fail("unit", "%q does not suit %s", g.unit, g.kind)
	}
	if g.deviation <= 0 || g.over >= g.upTo {
		r.fail("deviation", "is not above 0, or the range is empty")
	}
	return g
}

var generalTolerances = sync.OnceValue(func() []generalTolerance {
	return mustLoad("general_tolerances.csv", parseGeneralTolerance)
})

// ISO2768 returns the general tolerance for a size: plus and minus it for a
// length or an edge, the width of the zone for flatness, squareness, symmetry
// and run-out. size is the nominal length in millimetres (for part 2 the longer
// side, for squareness the shorter leg). The class may be one of a pair: "mK".
func ISO2768(class string, kind GeneralKind, size units.Length) (Deviations, error) {
	if kind == GeneralAngle {
		return Deviations{}, fmt.Errorf("an angle has its tolerance in degrees: use ISO2768Angle")
	}
	g, err := findGeneral(class, kind, size)
	if err != nil {
		return Deviations{}, err
	}
	d := Deviations{Lower: units.Length(-g.deviation), Upper: units.Length(g.deviation), Source: g.source, FromMemory: g.fromMemory}
	if kind != GeneralLength && kind != GeneralEdge {
		d.Lower = 0
	}
	return d, nil
}

// ISO2768Angle returns the tolerance, plus and minus, of an angle whose shorter
// leg has that length.
func ISO2768Angle(class string, shorterLeg units.Length) (tolerance units.Angle, source string, err error) {
	g, err := findGeneral(class, GeneralAngle, shorterLeg)
	if err != nil {
		return 0, "", err
	}
	return units.Angle(g.deviation / 60), g.source, nil
}

func findGeneral(class string, kind GeneralKind, size units.Length) (generalTolerance, error) {
	known, smallest := false, units.Length(0)
	for _, g := range generalTolerances() {
		if g.kind != kind || !strings.Contains(class, g.class) {
			continue
		}
		if !known {
			smallest = g.over
		}
		known = true
		isSmallest := size == g.over && g.over == smallest && size > 0 // 0.5 mm belongs to the first range
		if (g.over < size || isSmallest) && size <= g.upTo {
			return g, nil
		}
	}
	if !known {
		return generalTolerance{}, fmt.Errorf("no general class %q for %s: part 1 has f, m, c, v; part 2 has H, K, L", class, kind)
	}
	return generalTolerance{}, fmt.Errorf("ISO 2768 class %s gives no %s tolerance at %s: write one on the dimension", class, kind, size)
}
