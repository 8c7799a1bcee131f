package partspec

import (
	"fmt"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// use is what a size is the size of; it decides which ISO classes suit it and
// which general tolerance it has.
type use int

const (
	useInvalid use = iota
	useHole
	useShaft
	useLength
	useEdge // chamfers and outside radii
)

// size reads a dimension and finds its limits: as written, from its ISO class,
// or the part's general tolerance.
func (s *shaper) size(e *entry, name string, as use) Size {
	f := e.field(name)
	if f == nil || f.state != fieldKnown {
		return Size{}
	}
	drawn := f.value.size
	result := Size{Dimension: drawn.Nominal, Range: f.at}
	switch {
	case drawn.HasLimits:
		return result.within(drawn.Limits, "as drawn")
	case drawn.Class != "":
		return s.classed(e, name, result, drawn.Class, as)
	}
	return s.general(e, name, result, as)
}

// within returns the size with its limits. A size that there is (a zone has no
// size of its own) never has a lower limit that leaves nothing of it.
func (s Size) within(limits units.Limits, basis string) Size {
	s.Low, s.High, s.Basis, s.general = limits.Low, limits.High, basis, false
	if s.Value > 0 {
		s.Low = max(s.Low, min(leastSize, s.Value))
	}
	return s
}

// exact is a size whose limits are not given and not needed.
func exact(d units.Dimension, at Range, basis string) Size {
	return Size{Dimension: d, Low: d.Value, High: d.Value, Basis: basis, Range: at}
}

func (s *shaper) classed(e *entry, name string, size Size, class string, as use) Size {
	switch {
	case as == useHole && !tables.IsHole(class):
		s.c.fail(e, size.Range, fmt.Sprintf("%s is the class of a shaft", class), "A hole's class has a capital letter, like H7.")
		return size
	case as == useShaft && !tables.IsShaft(class):
		s.c.fail(e, size.Range, fmt.Sprintf("%s is the class of a hole", class), "A shaft's class has a small letter, like h6.")
		return size
	}
	d, err := tables.ISO286(class, size.Value)
	if err != nil {
		s.c.fail(e, size.Range, fmt.Sprintf("%s of %s: no such class", name, e.title()), "%s", sentence(err))
		return size
	}
	size.Class = class
	return size.within(units.Around(size.Value, d.Lower, d.Upper), class+" (ISO 286-1)")
}

// derived is a size that nobody drew, with the general tolerance.
func (s *shaper) derived(e *entry, name string, l units.Length, as use) Size {
	d := units.Dimension{Value: l.Round(positionDecimals), InInches: s.part.Inches}
	return s.general(e, name, Size{Dimension: d, Range: e.head()}, as)
}

// leastGeneral is the smallest size that ISO 2768 has a tolerance for.
const leastGeneral units.Length = 0.5

func (s *shaper) general(e *entry, name string, size Size, as use) Size {
	kind := tables.GeneralLength
	if as == useEdge {
		kind = tables.GeneralEdge
	}
	basis := "general tolerance ISO 2768-" + s.part.General
	looked := size.Value
	if looked < leastGeneral {
		looked = leastGeneral
		basis += ", at most a quarter of the size (the standard has none under 0.5 mm)"
	}
	d, err := tables.ISO2768(s.part.General, kind, looked)
	if err != nil {
		s.c.fail(e, size.Range, fmt.Sprintf("%s of %s has no limits", name, e.title()), "%s", sentence(err))
		return size
	}
	if size.Value < leastGeneral {
		d.Upper = min(d.Upper, size.Value/4)
		d.Lower = -d.Upper
	}
	size = size.within(units.Around(size.Value, d.Lower, d.Upper), basis)
	size.general = true
	return size
}
