package partspec

import (
	"fmt"
	"slices"

	"catchplate/partspec/units"
)

// shaper builds the features of one part, or of existing stock, from the
// outside in: first what makes the outside, then what makes the hollow, then
// what is cut in those, then the edges between them.
type shaper struct {
	c        *checker
	part     *Part  // its length, general class and stock are known already
	owner    *entry // the part or the stock
	entries  []*entry
	about    []*entry // what lies about an offset axis
	done     map[string]Feature
	existing *shaper        // of the existing piece that the part is made from
	rims     map[string]rim // edges of the chamfers and fillets
	outer    []*outside     // pieces of the outside, from left to right once placed
	flat     bool           // a flat part: there is no axis, and its outside is its outline
	cuts     []layer        // of a turned part, once all along its axis stands
	bodyless bool           // a feature along the axis failed: what lies beside or across it is not judged
	doubt    bool           // a feature failed, so what needs all of them is not judged
}

// stage is when a feature is built.
type stage int

const (
	stageInvalid stage = iota
	stageOutside
	stageInside
	stageCut    // grooves and recesses: in what stands
	stageThread // threads and knurls: on what stands
	stageBeside // what lies beside or across the axis
	stageEdge   // chamfers and fillets: where pieces meet
)

// featureKind is a word that makes a feature.
type featureKind struct {
	word  string
	stage stage // of an inside taper: stageInside
	on    belongs
	shape shapeOf
}

// belongs says on which parts a feature can be cut.
type belongs int

const (
	onTurned belongs = iota + 1
	onBoth           // on turned and on flat parts
)

// featureKinds lists every kind, in the order the language document tells them.
var featureKinds = []featureKind{
	{"spigot", stageOutside, onTurned, spigotShape},
	{"flange", stageOutside, onTurned, spigotShape},
	{"taper", stageOutside, onTurned, taperShape},
	{"profile", stageOutside, onTurned, profileShape},
	{"bore", stageInside, onBoth, boreShape},
	{"counterbore", stageInside, onBoth, boreShape},
	{"groove", stageCut, onTurned, grooveShape},
	{"recess", stageCut, onTurned, recessShape},
	{"thread", stageThread, onBoth, threadShape},
	{"knurl", stageThread, onTurned, knurlShape},
	{"holes", stageBeside, onBoth, holesShape},
	{"slot", stageBeside, onBoth, slotShape},
	{"seat", stageBeside, onBoth, seatShape},
	{"cross_hole", stageBeside, onTurned, crossHoleShape},
	{"flat", stageBeside, onTurned, flatShape},
	{"chamfer", stageEdge, onBoth, chamferShape},
	{"fillet", stageEdge, onTurned, filletShape},
}

// feature builds the feature of an entry; nil after an error.
func (s *shaper) feature(e *entry) Feature {
	switch e.word {
	case "spigot", "flange":
		return s.spigot(e)
	case "taper":
		return s.taper(e)
	case "profile":
		return s.profile(e)
	case "bore", "counterbore":
		return s.bore(e)
	case "groove":
		return s.groove(e)
	case "recess":
		return s.recess(e)
	case "thread":
		return s.thread(e)
	case "knurl":
		return s.knurl(e)
	case "chamfer":
		return s.chamfer(e)
	case "fillet":
		return s.fillet(e)
	case "holes":
		return s.holes(e)
	case "slot":
		return s.slot(e)
	case "seat":
		return s.seat(e)
	case "cross_hole":
		return s.crossHole(e)
	case "flat":
		return s.planeFlat(e)
	}
	panic("partspec: no builder for the feature " + e.word)
}

// FeatureWords lists the words of features in the order of the language document.
func FeatureWords() []string {
	var words []string
	for _, k := range featureKinds {
		words = append(words, k.word)
	}
	return words
}

// axialWords are the features along the axis of a turned part, which a piece of existing stock may have.
func axialWords() []string {
	var words []string
	for _, k := range featureKinds {
		if k.stage != stageBeside {
			words = append(words, k.word)
		}
	}
	return words
}

func findFeatureKind(word string) featureKind {
	return featureKinds[slices.IndexFunc(featureKinds, func(k featureKind) bool { return k.word == word })]
}

func stageOf(e *entry) stage {
	if e.word == "taper" && e.flag("inside") {
		return stageInside
	}
	return findFeatureKind(e.word).stage
}

// build makes all features and returns them in file order.
func (s *shaper) build() []Feature {
	s.done, s.rims = map[string]Feature{}, map[string]rim{}
	s.doubt = s.doubt || s.owner.lost || s.part.Length.Value <= 0
	for _, now := range []stage{stageOutside, stageInside, stageCut, stageThread, stageBeside, stageEdge} {
		for _, e := range s.entries {
			if stageOf(e) == now {
				s.buildOne(e)
			}
		}
		switch now {
		case stageOutside:
			if !s.flat {
				s.placeOutside()
			}
		case stageInside:
			s.nestBores()
		case stageCut:
			s.checkGrooves()
		case stageThread:
			s.checkWalls()
			s.bodyless = s.doubt
			if !s.flat && !s.bodyless {
				s.cuts = s.layers()
			}
		case stageBeside:
			s.checkHoles()
		case stageEdge:
			s.checkEdges()
			s.checkHeads()
			s.checkSideSeats()
		}
	}
	var features []Feature
	for _, e := range s.entries {
		if f := s.done[e.name]; f != nil {
			features = append(features, f)
		}
	}
	return features
}

func (s *shaper) buildOne(e *entry) {
	var f Feature
	if !e.broken && s.part.Length.Value > 0 && s.belongsHere(e) {
		f = s.feature(e)
	}
	if f == nil || e.broken {
		s.own(e)
		s.doubt, e.broken = true, true
		return
	}
	s.done[e.name] = f
}

// belongsHere refuses features of turned parts on flat ones.
func (s *shaper) belongsHere(e *entry) bool {
	if !s.flat || findFeatureKind(e.word).on == onBoth {
		return true
	}
	if instead := flatInstead[e.word]; instead != "" {
		s.c.fail(e, e.head(), fmt.Sprintf("A flat part has no %s", e.word), "%s", instead)
		return false
	}
	s.c.fail(e, e.head(), fmt.Sprintf("A flat part has no %s", e.word),
		"It is cut to its outline; in it stand %s. For a turned part leave thickness and outline out and write its length.", listed(flatWords()))
	return false
}

// flatInstead says how some words of turned parts are written on flat ones.
var flatInstead = map[string]string{
	"fillet":     "Round corners are part of its outline: an arc, or corner_radius of a rectangle.",
	"flat":       "A straight side is an edge of its outline.",
	"cross_hole": "Holes go into its front or its back: write holes.",
	"groove":     "A straight groove is a slot.",
}

// flatWords are the features that a flat part may have.
func flatWords() []string {
	var words []string
	for _, k := range featureKinds {
		if k.on == onBoth {
			words = append(words, k.word)
		}
	}
	return words
}

// drop takes a feature out that turned out wrong after it was built.
func (s *shaper) drop(e *entry) {
	delete(s.done, e.name)
	s.doubt, e.broken = true, true
}

func (s *shaper) head(e *entry) FeatureHead {
	return FeatureHead{Word: e.word, Name: e.name, Note: e.value("note").text, Range: e.head()}
}

// target finds the feature that an attribute names. A name that is not there is
// told; one that failed is not told again.
func (s *shaper) target(e *entry, name, attribute string) Feature {
	if f := s.done[name]; f != nil {
		return f
	}
	e.broken = true
	i := slices.IndexFunc(s.entries, func(other *entry) bool { return other.name == name })
	if i >= 0 && s.entries[i].broken || e.value(attribute).text == "" {
		return nil
	}
	if s.isThere(e, name, attribute) {
		s.c.fail(e, e.at(attribute), fmt.Sprintf("A %s cannot stand on a %s", e.word, s.entries[i].word),
			"Name the feature that %s is on.", s.entries[i].title())
	}
	return nil
}

// isThere tells of a name that no feature of the part has.
func (s *shaper) isThere(e *entry, name, attribute string) bool {
	if s.entryOf(name) != nil {
		return true
	}
	for _, other := range s.about {
		if other.name == name {
			s.c.fail(e, e.at(attribute), fmt.Sprintf("%s lies about an offset axis", other.title()), "No %s can stand on it or bind it: its own limits and those of the axis' offset say how true it is. Leave this out.", e.word)
			return false
		}
	}
	s.c.fail(e, e.at(attribute), fmt.Sprintf("There is no feature %q", name), "%s", didYouMean(name, s.names(), noFeatures))
	return false
}

// entryOf is the entry that a feature was made from.
func (s *shaper) entryOf(name string) *entry {
	for _, e := range s.entries {
		if e.name == name {
			return e
		}
	}
	return nil
}

func (s *shaper) length() units.Length { return s.part.Length.Value }

// shown is a length for a message, in the unit of the drawing.
func (s *shaper) shown(l units.Length) string {
	if s.part.Inches {
		return l.Both(units.InInch)
	}
	return l.Text(units.InMM)
}
