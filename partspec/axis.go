package partspec

import (
	"fmt"
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"catchplate/partspec/units"
)

// Axis is an axis of a turned part that lies beside its main one and parallel to it, and what is turned about it: eccentrics.
type Axis struct {
	Name     string
	Offset   Size      // from the main axis: the throw
	Features []Feature // spigots at the ends and a bore right through, in file order
	Note     string
	Range    Range
}

var axisShape = shapeOf{attrs: []attr{need("offset", kindSize), may("note", kindText)}}

// aboutAxis is the attribute that puts a feature on an offset axis.
var aboutAxis = may("axis", kindWord)

// leastWall is the metal wanted beside an eccentric. Common practice, no source.
const leastWall units.Length = 0.5

// gatherAxis enters an offset axis.
func (c *checker) gatherAxis(p *partEntry, b *hclsyntax.Block) {
	e := c.enter(b, p.path(), p.inches, axisShape, nameLabel)
	if p.axis != nil {
		c.strays = append(c.strays, e)
		c.report(fault(b.DefRange(), "A second offset axis", "The first is in line %d. A part has one; put further eccentrics about it, or make them on a part of their own.", p.axis.head().Start.Line))
		return
	}
	p.axis = e
}

// eccentrics builds what lies about a part's offset axis, once all that lies about its main one stands.
func (s *shaper) eccentrics(e *entry, about []*entry) []Axis {
	if e == nil {
		for _, f := range about {
			s.c.fail(f, f.at("axis"), fmt.Sprintf("There is no axis %q", f.text("axis")), "Write it into the part: axis \"%s\" { offset = 3 }.", f.text("axis"))
		}
		return nil
	}
	if s.flat {
		s.c.fail(e, e.head(), "A flat part has no axis", "A bore that is off its middle says at = [30, 20].")
		return nil
	}
	a := Axis{Name: e.name, Offset: s.size(e, "offset", useLength), Note: e.text("note"), Range: e.head()}
	for _, f := range about {
		s.aboutOne(e, f, &a)
	}
	switch {
	case len(about) == 0 && !e.broken:
		s.c.fail(e, e.head(), fmt.Sprintf("Nothing lies about the %s", e.title()), "Write axis = \"%s\" in a spigot, a flange or a bore, or leave the axis out.", e.name)
	case s.doubt || e.broken || slices.ContainsFunc(about, func(f *entry) bool { return f.broken }):
	case s.suitsAxis(e):
		s.checkThrow(e, a)
	}
	if e.broken || len(a.Features) < len(about) {
		return nil
	}
	return []Axis{a}
}

// aboutOne builds one feature about an offset axis.
func (s *shaper) aboutOne(axis, e *entry, a *Axis) {
	if e.broken || !e.known("axis") {
		return
	}
	if e.text("axis") != axis.name {
		s.c.fail(e, e.at("axis"), fmt.Sprintf("There is no axis %q", e.text("axis")), "%s", didYouMean(e.text("axis"), []string{axis.name}, ""))
		return
	}
	var f Feature
	switch e.word {
	case "spigot", "flange":
		f = s.eccentricSpigot(e)
	case "bore":
		f = s.eccentricBore(e)
	default:
		s.c.fail(e, e.head(), fmt.Sprintf("No %s lies about an offset axis", e.word), "About it a spigot stands at an end, or a bore goes right through.")
	}
	if f != nil && !e.broken {
		a.Features = append(a.Features, f)
	}
}

// eccentricSpigot is a cylinder about the offset axis at an end of the part.
func (s *shaper) eccentricSpigot(e *entry) Feature {
	s.notAbout(e, "at", "as_supplied", "measured")
	f := &Spigot{FeatureHead: s.head(e), Diameter: s.size(e, "diameter", useShaft), Length: s.size(e, "length", useLength), Roughness: e.number("roughness")}
	for _, name := range []string{"diameter", "length"} {
		if !e.has(name) {
			s.c.fail(e, e.head(), fmt.Sprintf("%s lacks %s", e.title(), name), "About an offset axis write its diameter, its length, and from = \"right\" or \"left\": the end that it stands at.")
			return nil
		}
	}
	from := s.fromEnd(e, Right)
	if e.broken || s.length() <= 0 {
		return nil
	}
	if f.Length.Value > s.length()-sameLength {
		s.c.fail(e, e.at("length"), fmt.Sprintf("%s is as long as the part", e.title()), "The part is %s long, and is held by what lies about its main axis: leave some of that.%s", s.shown(s.length()), s.wrongUnit(f.Length.Value, s.length()))
		return nil
	}
	f.Span = fromMouth(from, 0, f.Length.Value, s.length())
	return f
}

// eccentricBore is a bore about the offset axis, right through.
func (s *shaper) eccentricBore(e *entry) Feature {
	s.notAbout(e, "at", "depth", "from", "flat", "as_supplied", "measured")
	if !e.has("diameter") {
		s.c.fail(e, e.head(), fmt.Sprintf("%s lacks diameter", e.title()), "Write %s.", example(attr{"diameter", kindSize, true}))
	}
	f := &Bore{FeatureHead: s.head(e), From: Right, Through: true, Diameter: s.size(e, "diameter", useHole), Depth: s.part.Length, Roughness: e.number("roughness")}
	f.Span = Span{0, s.length()}
	return f
}

// notAbout refuses attributes that mean nothing about an offset axis.
func (s *shaper) notAbout(e *entry, names ...string) {
	for _, name := range names {
		if e.has(name) {
			s.c.fail(e, e.at(name), fmt.Sprintf("%s about an offset axis has no %s", e.title(), name),
				"A spigot there stands at an end of the part, a bore goes right through: write their diameters, and the spigot's length and end (from).")
		}
	}
}

// suitsAxis refuses what no plan can make beside an eccentric.
func (s *shaper) suitsAxis(e *entry) bool {
	if s.part.Stock.Kind != Bar {
		s.c.fail(e, e.head(), "Eccentrics are cut from round bar", "A part with an offset axis is turned from stock \"bar\": write that, or leave the axis out and do that work from the drawing.")
		return false
	}
	for _, other := range s.entries {
		switch f := s.done[other.name].(type) {
		case *Spigot, *Chamfer, *Fillet, *Groove, *Profile:
			continue
		case *Taper:
			if !f.Inside {
				continue
			}
		case *Thread:
			if !f.Inside {
				continue
			}
		case nil:
			return false
		}
		s.c.fail(other, other.head(), fmt.Sprintf("%s and an offset axis in one part", other.title()),
			"Beside an offset axis no plan bores, drills, knurls or mills about the main one: make the bore the main axis and the outside the eccentric, or leave this out and do it from the drawing.")
		return false
	}
	return true
}

// checkThrow holds that the eccentrics lie inside the metal that the main axis leaves.
func (s *shaper) checkThrow(axis *entry, a Axis) {
	widest := units.Length(0)
	for _, p := range s.outsidePieces() {
		_, most := p.extremes()
		widest = max(widest, most)
	}
	if a.Offset.Value >= widest {
		s.c.fail(axis, axis.at("offset"), fmt.Sprintf("The %s lies outside the part", axis.title()), "It is %s from the main axis, the part has a radius of %s.%s",
			s.shown(a.Offset.Value), s.shown(widest), s.wrongUnit(a.Offset.Value, widest))
		return
	}
	for i, f := range a.Features {
		switch f := f.(type) {
		case *Spigot:
			s.checkStandsIn(a, f)
			for _, other := range a.Features[:i] {
				if o, ok := other.(*Spigot); ok {
					s.failAbout(f, "head", "%s is a second spigot about the offset axis, beside %s", "What lies about it is cut in one setting, for a second one would point another way: it is one spigot at one end, and a bore.", f.ID(), o.ID())
				}
			}
		case *Bore:
			for _, other := range a.Features[:i] {
				if o, ok := other.(*Bore); ok {
					s.failAbout(f, "head", "%s is a second bore about the offset axis, beside %s", "The larger one takes the smaller one away: leave one out.", f.ID(), o.ID())
				}
			}
			s.checkBoreWall(a, f)
		}
	}
	s.checkAboutEdges(a)
}

// failAbout reports an error of a feature about an offset axis.
func (s *shaper) failAbout(f Feature, attribute, summary, detail string, args ...any) {
	for _, e := range s.about {
		if e.name == f.Head().Name {
			s.c.fail(e, e.at(attribute), fmt.Sprintf(summary, args...), "%s", detail)
		}
	}
}

// checkStandsIn holds that a spigot about the offset axis lies inside the one cylinder that it is cut from, with limits that are the other way round in the worst case.
func (s *shaper) checkStandsIn(a Axis, f *Spigot) {
	host := s.hostOf(f.Span)
	if host == nil {
		s.failAbout(f, "length", "%s is cut from more than one feature", "An eccentric at an end is cut from the spigot or flange about the main axis at that end, which is as long as both together: give that one such a length.", f.ID())
		return
	}
	if most := a.Offset.High + f.Diameter.High/2; most > host.Diameter.Low/2 {
		s.failAbout(f, "diameter", "%s stands out of %s", fmt.Sprintf("It reaches %s from the main axis, and %s, from which it is cut, only %s. Make that one larger, or the throw or the eccentric smaller.%s",
			s.shown(most), host.ID(), s.shown(host.Diameter.Low/2), s.wrongUnit(most, host.Diameter.Low/2)), f.ID(), host.ID())
	}
}

// hostOf is the cylinder about the main axis that a stretch at an end is cut from, and which is longer than it; nil when there is none.
func (s *shaper) hostOf(stretch Span) *Spigot {
	for _, e := range s.entries {
		f, ok := s.done[e.name].(*Spigot)
		if ok && f.Span.Left <= stretch.Left+sameLength && f.Span.Right >= stretch.Right-sameLength && f.Span.Right-f.Span.Left > stretch.Right-stretch.Left+sameLength {
			return f
		}
	}
	return nil
}

// checkBoreWall holds that a bore about the offset axis leaves a wall everywhere.
func (s *shaper) checkBoreWall(a Axis, f *Bore) {
	reach := a.Offset.High + f.Diameter.High/2
	for _, p := range s.outsidePieces() {
		least, _ := p.extremes()
		if least-reach < leastWall {
			s.failAbout(f, "diameter", "%s breaks out of %s", fmt.Sprintf("It reaches %s from the main axis, the outside there is %s from it; at least %s of wall is wanted.%s", s.shown(reach), s.shown(least), s.shown(leastWall), s.wrongUnit(reach, least)), f.ID(), p.name)
			return
		}
	}
	for _, other := range a.Features {
		if o, ok := other.(*Spigot); ok && (o.Diameter.Low-f.Diameter.High)/2 < leastWall {
			s.failAbout(f, "diameter", "%s leaves no wall in %s", fmt.Sprintf("The bore is %s across, the spigot %s; at least %s of wall is wanted.", s.shown(f.Diameter.Value), s.shown(o.Diameter.Value), s.shown(leastWall)), f.ID(), o.ID())
			return
		}
	}
}

// checkAboutEdges refuses edges and grooves that an eccentric takes away.
func (s *shaper) checkAboutEdges(a Axis) {
	for _, e := range s.entries {
		var at Span
		switch f := s.done[e.name].(type) {
		case *Chamfer:
			at = Span{f.Edge.Z, f.Edge.Z}
		case *Fillet:
			at = Span{f.Edge.Z, f.Edge.Z}
		case *Groove:
			at = f.Span
		case *Thread:
			at = f.Span
		default:
			continue
		}
		for _, other := range a.Features {
			if o, ok := other.(*Spigot); ok && at.Left <= o.Span.Right+sameLength && at.Right >= o.Span.Left-sameLength {
				s.c.fail(e, e.head(), fmt.Sprintf("%s is taken away by %s", e.title(), o.ID()), "The eccentric is cut from that end of the part. Leave this out, or put it beyond the eccentric.")
			}
		}
	}
}

// anywhere finds a feature by name, about whichever axis it lies; nil when there is none.
func (p *Part) anywhere(name string) Feature {
	for _, a := range p.Axes {
		for _, f := range a.Features {
			if f.Head().Name == name {
				return f
			}
		}
	}
	return p.Feature(name)
}

// onMainAxis refuses an offset axis where there is none: in an existing piece.
func (s *shaper) onMainAxis(e *entry) {
	if e.has("axis") {
		s.c.fail(e, e.at("axis"), "An existing piece has one axis", "Leave axis out: what is eccentric on it is described by words in a note.")
	}
}
