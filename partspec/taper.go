package partspec

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

var taperShape = shapeOf{attrs: append([]attr{
	may("large", kindSize), may("small", kindSize), may("length", kindSize), may("large_at", kindWord), may("named", kindWord),
	may("ratio", kindWord), may("angle", kindAngle), may("per_side", kindAngle), may("per_foot", kindLength),
	may("inside", kindFlag), may("roughness", kindNumber), may("note", kindText),
}, placeOf...)}

// slopeWords are the ways to say how steep a taper is; one of them serves.
var slopeWords = []string{"named", "ratio", "angle", "per_side", "per_foot"}

// taper builds a cone. Of large end, small end, length and slope any three
// give the fourth; the last taper of a chain may take its length from the rest.
func (s *shaper) taper(e *entry) Feature {
	as := useShaft
	if e.flag("inside") {
		as = useHole
	}
	f := &Taper{
		FeatureHead: s.head(e), Inside: e.flag("inside"), Large: s.size(e, "large", as), Small: s.size(e, "small", as),
		Length: s.size(e, "length", useLength), Roughness: e.number("roughness"),
	}
	slope, sloped := s.slope(e, f)
	f.LargeAt = s.largeAt(e)
	if e.broken {
		return nil
	}
	if !f.Inside {
		return s.outsideTaper(e, f, slope, sloped)
	}
	if !s.solve(e, f, slope, sloped) {
		return nil
	}
	f.Span = fromMouth(s.fromEnd(e, Left), e.length("at"), e.length("at")+f.Length.Value, s.length())
	if f.Span.Left < 0 || f.Span.Right > s.length() {
		s.c.fail(e, e.head(), fmt.Sprintf("%s is deeper than the part", e.title()),
			"It ends %s from its mouth; the part is %s long.",
			s.shown(e.length("at")+f.Length.Value), s.shown(s.length()))
	}
	return f
}

func (s *shaper) outsideTaper(e *entry, f *Taper, slope float64, sloped bool) Feature {
	finish := func(units.Length) bool { return s.solve(e, f, slope, sloped) }
	// The rest of a chain can be the length when one diameter is open.
	waits := !e.has("length") && sloped && (f.Large.Value == 0) != (f.Small.Value == 0) ||
		!e.has("length") && !sloped && f.Large.Value > 0 && f.Small.Value > 0
	o := &outside{entry: e, length: &f.Length, span: &f.Span, piece: f.piece}
	if waits {
		o.settle = finish
	} else if !finish(0) {
		return nil
	}
	s.outer = append(s.outer, o)
	return f
}

// piece is the cone's radius along the axis.
func (f *Taper) piece() piece {
	left, right := f.Large.Value, f.Small.Value
	if f.LargeAt == Right {
		left, right = right, left
	}
	return cone(f.Name, f.Span, left, right)
}

func (f *Taper) hollow(e *entry, length units.Length) hollow {
	h := hollow{entry: e, from: Left, begin: f.Span.Left, deep: f.Span.Right, wide: f.Large.Value, narrow: f.Small.Value, keep: func(Span) {}}
	if e.text("from") == "right" {
		h.from, h.begin, h.deep = Right, length-f.Span.Right, length-f.Span.Left
	}
	return h
}

// largeAt is the end of the large diameter: written, or the mouth of an inside
// taper.
func (s *shaper) largeAt(e *entry) End {
	switch at := e.text("large_at"); at {
	case "left":
		return Left
	case "right":
		return Right
	case "":
		if e.flag("inside") {
			return s.fromEnd(e, Left)
		}
		s.c.fail(e, e.head(), fmt.Sprintf("%s lacks large_at", e.title()),
			`Write large_at = "left" or large_at = "right": the end with the large diameter.`)
	default:
		s.c.fail(e, e.at("large_at"), fmt.Sprintf("A taper cannot be large at %q", at),
			`Write large_at = "left" or large_at = "right".`)
	}
	return EndInvalid
}

// slope is the difference of the diameters for a length of 1.
func (s *shaper) slope(e *entry, f *Taper) (slope float64, given bool) {
	var ways []string
	for _, w := range slopeWords {
		if e.has(w) {
			ways = append(ways, w)
		}
	}
	if len(ways) == 0 {
		return 0, false
	}
	if len(ways) > 1 {
		s.c.fail(e, e.at(ways[1]), fmt.Sprintf("%s tells its slope twice", e.title()), "It has %s: leave all but one out.",
			listed(ways))
		return 0, false
	}
	if !e.known(ways[0]) {
		return 0, false
	}
	switch ways[0] {
	case "named":
		return s.namedSlope(e, f)
	case "ratio":
		return s.ratio(e)
	case "angle":
		return 2 * math.Tan(e.angle("angle").Radians()/2), s.steepEnough(e, "angle")
	case "per_side":
		return 2 * math.Tan(e.angle("per_side").Radians()), s.steepEnough(e, "per_side")
	}
	const footInches = 12
	return float64(e.length("per_foot") / (footInches * units.Inch)), true
}

// steepest is the largest angle to the axis that is still a taper, in degrees;
// beyond it a chamfer or a face is meant.
const steepest = 85

func (s *shaper) steepEnough(e *entry, name string) bool {
	half := e.angle(name)
	if name == "angle" {
		half /= 2
	}
	if half <= 0 || half > steepest {
		s.c.fail(e, e.at(name), fmt.Sprintf("%s of %s is no taper", name, e.title()),
			"Write the included angle as angle = 10, or the angle to the axis as per_side = 5.")
		return false
	}
	return true
}

func (s *shaper) namedSlope(e *entry, f *Taper) (float64, bool) {
	named, ok := tables.FindTaper(e.text("named"))
	if !ok {
		var known []string
		for _, t := range tables.Tapers() {
			known = append(known, t.Name)
		}
		s.c.fail(e, e.at("named"), fmt.Sprintf("No table has the taper %q", e.text("named")),
			"%sWrite a standard's name such as \"MT2\", or the slope as ratio = \"1:20\".",
			spaced(nearestHint(e.text("named"), known)))
		return 0, false
	}
	f.Named = named.Name
	if f.Large.Value == 0 && f.Small.Value == 0 {
		d := units.Dimension{Value: named.Gauge}
		f.Large = s.general(e, "large", Size{Dimension: d, Range: e.at("named")}, useShaft)
		f.Large.Basis = fmt.Sprintf("gauge diameter of %s, %s", named.Name, f.Large.Basis)
	}
	return 1 / named.Ratio, true
}

// ratio reads "1:20": a difference of 1 in diameter over a length of 20.
func (s *shaper) ratio(e *entry) (float64, bool) {
	one, length, ok := strings.Cut(strings.ReplaceAll(e.text("ratio"), " ", ""), ":")
	top, err1 := strconv.ParseFloat(one, 64)
	bottom, err2 := strconv.ParseFloat(length, 64)
	const flattest, steepestRatio = 1e-4, 20
	slope := top / bottom
	if !ok || err1 != nil || err2 != nil || top <= 0 || bottom <= 0 || !(slope >= flattest && slope <= steepestRatio) {
		s.c.fail(e, e.at("ratio"), fmt.Sprintf("%q is no ratio", e.text("ratio")),
			`Write the difference of the diameters and the length it takes: ratio = "1:20".`)
		return 0, false
	}
	return slope, true
}

// solve finds what is left open of large end, small end, length and slope.
func (s *shaper) solve(e *entry, f *Taper, slope float64, sloped bool) bool {
	open := 0
	for _, l := range []units.Length{f.Large.Value, f.Small.Value, f.Length.Value} {
		if l == 0 {
			open++
		}
	}
	switch {
	case sloped && open == 0:
		s.c.fail(e, e.head(), fmt.Sprintf("%s says one thing too much", e.title()),
			"Of large, small, length and the slope three are enough: leave one out.")
		return false
	case sloped && open > 1 || !sloped && open > 0:
		s.c.fail(e, e.head(), fmt.Sprintf("%s does not say enough", e.title()),
			`Write three of: large, small, length, and the slope as ratio = "1:20", angle, per_side, per_foot or named = "MT2".`)
		return false
	case !sloped:
		slope = float64((f.Large.Value - f.Small.Value) / f.Length.Value)
	case f.Large.Value == 0:
		f.Large = s.follows(e, f.Small, f.Length.Value*units.Length(slope))
	case f.Small.Value == 0:
		f.Small = s.follows(e, f.Large, -f.Length.Value*units.Length(slope))
	default:
		if l := (f.Large.Value - f.Small.Value) / units.Length(slope); l > sameLength {
			f.Length = s.derived(e, "length", l, useLength)
		}
	}
	if f.Small.Value < leastSize || f.Large.Value < f.Small.Value+sameLength {
		s.c.fail(e, e.head(), fmt.Sprintf("The small end of %s is not smaller, or nothing is left of it", e.title()),
			"It comes to %s at the small end and %s at the large one; change a diameter, the length or the slope.",
			s.shown(f.Small.Value), s.shown(f.Large.Value))
		return false
	}
	f.HalfAngle = units.Radians(math.Atan(slope / 2))
	return !e.broken
}

// follows is the other end of a taper, with the limits of the end it follows
// from.
func (s *shaper) follows(e *entry, from Size, by units.Length) Size {
	d := units.Dimension{Value: (from.Value + by).Round(positionDecimals), InInches: from.InInches}
	limits := units.Limits{Low: (from.Low + by).Round(positionDecimals), High: (from.High + by).Round(positionDecimals)}
	return Size{Dimension: d, Range: e.head()}.within(limits, "follows from the other end and the slope")
}
