package partspec

import (
	"fmt"
	"math"
	"slices"

	"github.com/hashicorp/hcl/v2"
	"github.com/zclconf/go-cty/cty"

	"catchplate/partspec/units"
)

// place is two coordinates as they are written.
type place struct{ x, y units.Toleranced }

// convertPlaces reads [30, 70], a list of such pairs, or the name of a place.
func convertPlaces(f *field, v cty.Value) (value, *misuse) {
	if v.Type() == cty.String {
		return convertText(attr{f.name, kindWord, false}, v)
	}
	if !v.Type().IsTupleType() || v.LengthInt() == 0 {
		return value{}, wrongKind(f.attr)
	}
	list := v.AsValueSlice()
	if f.kind == kindPlace || slices.ContainsFunc(list, func(m cty.Value) bool { return !m.Type().IsTupleType() }) {
		p, wrong := convertPlace(f, v)
		return value{places: []place{p}}, wrong
	}
	if len(list) > maxHoles {
		return value{}, &misuse{"the list is too long", fmt.Sprintf("It has at most %d places.", maxHoles)}
	}
	var all value
	for i, m := range list {
		p, wrong := convertPlace(f, m)
		if wrong != nil {
			wrong.summary = fmt.Sprintf("place %d: %s", i+1, wrong.summary)
			return value{}, wrong
		}
		all.places = append(all.places, p)
	}
	return all, nil
}

func convertPlace(f *field, v cty.Value) (place, *misuse) {
	if !v.Type().IsTupleType() || v.LengthInt() != 2 {
		return place{}, &misuse{"a place has two coordinates", "Write " + example(f.attr) + "."}
	}
	x, wrongX := convertCoordinate(f, v.AsValueSlice()[0])
	y, wrongY := convertCoordinate(f, v.AsValueSlice()[1])
	if wrongX != nil {
		return place{}, wrongX
	}
	return place{x, y}, wrongY
}

// convertCoordinate reads a position that may carry limits, such as "30 ±0.05".
func convertCoordinate(f *field, v cty.Value) (units.Toleranced, *misuse) {
	if v.IsNull() || !v.IsKnown() || v.IsMarked() {
		return units.Toleranced{}, wrongKind(f.attr)
	}
	if v.Type() == cty.String {
		if t, err := units.ParsePlace(v.AsString(), f.owner.bare()); err == nil && t.Class == "" {
			return t, tooFar(t)
		}
	}
	got, wrong := convertLength(attr{f.name, kindPosition, false}, v, f.owner.bare(), origin{inches: f.owner.inches})
	return got.size, wrong
}

func tooFar(t units.Toleranced) *misuse {
	if t.Nominal.Value.Abs() > units.MaxLength {
		return &misuse{"it is too long", fmt.Sprintf("At most %s is believed.", units.MaxLength)}
	}
	return nil
}

// convertPair reads [20, 15], or 20 for both.
func convertPair(f *field, v cty.Value) (value, *misuse) {
	members := []cty.Value{v, v}
	if v.Type().IsTupleType() {
		members = v.AsValueSlice()
	}
	if len(members) != 2 {
		return value{}, wrongKind(f.attr)
	}
	var pair value
	for _, m := range members {
		if m.IsNull() || !m.IsKnown() || m.IsMarked() {
			return value{}, wrongKind(f.attr)
		}
		one, wrong := convertLength(attr{f.name, kindSize, false}, m, f.owner.bare(), origin{inches: f.owner.inches})
		if wrong != nil {
			return value{}, wrong
		}
		pair.list = append(pair.list, one)
	}
	return pair, nil
}

// patternName reads the name of a pattern of holes: part.PART.holes.LABEL. Its text is "PART.LABEL".
func (c *checker) patternName(f *field) (value, bool) {
	traversal, found := hcl.AbsTraversalForExpr(f.expr)
	const steps = 4
	if !found.HasErrors() && len(traversal) == steps {
		if names, ok := c.steps(traversal); ok && names[0] == "part" && names[2] == "holes" {
			return value{text: names[1] + "." + names[3]}, true
		}
	}
	c.report(fault(f.at, fmt.Sprintf("%s of %s names no pattern of holes", f.name, f.owner.title()),
		"Write the pattern of the other part: match = part.flange.holes.ring."))
	return value{}, false
}

// coordinate gives a position its limits: as written, or the general tolerance of its distance from the datum.
func (s *shaper) coordinate(e *entry, t units.Toleranced, datum units.Length, at Range) Size {
	return s.coordinateWithin(e, t, (t.Nominal.Value - datum).Abs(), at)
}

// coordinateWithin gives a position its limits: as written, or the general tolerance of a distance.
func (s *shaper) coordinateWithin(e *entry, t units.Toleranced, far units.Length, at Range) Size {
	size := Size{Dimension: t.Nominal, Range: at}
	if t.HasLimits {
		size.Low, size.High, size.Basis = t.Limits.Low, t.Limits.High, "as drawn"
		return size
	}
	off := s.general(e, "at", Size{Dimension: units.Dimension{Value: max(far, leastGeneral)}, Range: at}, useLength)
	return size.about(off.Width()/2, off.Basis)
}

// about gives a position limits that lie evenly about it.
func (s Size) about(either units.Length, basis string) Size {
	s.Low, s.High, s.Basis = s.Value-either, s.Value+either, basis
	return s
}

func (s *shaper) point(e *entry, p place, at Range) Point { return s.pointAbout(e, p, 0, at) }

// pointAbout is a place about which an arc of that radius is drawn; 0 for none. In a chain without datum edges nothing but the distance from the origin is drawn, and
// nothing but the arc tells where its own centre is: both coordinates have the general tolerance of the larger of the two.
func (s *shaper) pointAbout(e *entry, p place, radius units.Length, at Range) Point {
	if o := s.part.Outline; o != nil && o.Kind == "chain" && len(o.Datum) == 0 {
		far := max(units.Length(math.Hypot(float64(p.x.Nominal.Value), float64(p.y.Nominal.Value))), radius)
		return Point{s.coordinateWithin(e, p.x, far, at), s.coordinateWithin(e, p.y, far, at)}
	}
	x, y := s.datumLines()
	return Point{s.coordinate(e, p.x, x, at), s.coordinate(e, p.y, y, at)}
}

// datumLines are the X and the Y that coordinates are measured from: 0, unless the outline has other datum edges.
func (s *shaper) datumLines() (x, y units.Length) {
	if s.part.Outline == nil || len(s.part.Outline.Datum) != 2 {
		return 0, 0
	}
	across, _ := s.part.Outline.Edge(s.part.Outline.Datum[0])
	up, _ := s.part.Outline.Edge(s.part.Outline.Datum[1])
	return across.X0, up.Y0
}
