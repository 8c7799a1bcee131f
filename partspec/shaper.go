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
	c       *checker
	part    *Part  // its length, general class and stock are known already
	owner   *entry // the part or the stock
	entries []*entry
	done    map[string]Feature
	rims    map[string]rim // edges of the chamfers and fillets
	outer   []*outside     // pieces of the outside, from left to right once placed
	doubt   bool           // a feature failed, so what needs all of them is not judged
}

// stage is when a feature is built.
type stage int

const (
	stageInvalid stage = iota
	stageOutside
	stageInside
	stageCut    // grooves and recesses: in what stands
	stageThread // threads and knurls: on what stands
	stageEdge   // chamfers and fillets: where pieces meet
)

// featureKind is a word that makes a feature.
type featureKind struct {
	word  string
	stage stage // of a taper: stageInside when it says so
	shape shapeOf
	build func(*shaper, *entry) Feature // nil after an error
}

// featureKinds lists every kind, in the order the language document tells them.
// It is a function because the builders name it in turn.
func featureKinds() []featureKind {
	return []featureKind{
		{"spigot", stageOutside, spigotShape, (*shaper).spigot},
		{"flange", stageOutside, spigotShape, (*shaper).spigot},
		{"taper", stageOutside, taperShape, (*shaper).taper},
		{"profile", stageOutside, profileShape, (*shaper).profile},
		{"bore", stageInside, boreShape, (*shaper).bore},
		{"counterbore", stageInside, boreShape, (*shaper).bore},
		{"groove", stageCut, grooveShape, (*shaper).groove},
		{"recess", stageCut, recessShape, (*shaper).recess},
		{"thread", stageThread, threadShape, (*shaper).thread},
		{"knurl", stageThread, knurlShape, (*shaper).knurl},
		{"chamfer", stageEdge, chamferShape, (*shaper).chamfer},
		{"fillet", stageEdge, filletShape, (*shaper).fillet},
	}
}

// featureWords are the words of featureKinds.
func featureWords() []string {
	return []string{"spigot", "flange", "taper", "profile", "bore", "counterbore", "groove", "recess", "thread", "knurl", "chamfer", "fillet"}
}

func findFeatureKind(word string) featureKind {
	kinds := featureKinds()
	return kinds[slices.IndexFunc(kinds, func(k featureKind) bool { return k.word == word })]
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
	s.doubt = s.owner.lost || s.part.Length.Value <= 0
	for _, now := range []stage{stageOutside, stageInside, stageCut, stageThread, stageEdge} {
		for _, e := range s.entries {
			if stageOf(e) == now {
				s.buildOne(e)
			}
		}
		switch now {
		case stageOutside:
			s.placeOutside()
		case stageInside:
			s.nestBores()
		case stageCut:
			s.checkGrooves()
			s.checkWalls()
		case stageEdge:
			s.checkEdges()
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
	if !e.broken && s.part.Length.Value > 0 {
		f = findFeatureKind(e.word).build(s, e)
	}
	if f == nil || e.broken {
		s.doubt, e.broken = true, true
		return
	}
	s.done[e.name] = f
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
	var known []string
	for _, other := range s.entries {
		known = append(known, other.name)
	}
	detail := didYouMean(name, known)
	if i >= 0 {
		detail = fmt.Sprintf("A %s cannot stand on a %s.", e.word, s.entries[i].word)
	}
	s.c.fail(e, e.at(attribute), fmt.Sprintf("There is no feature %q that %s can name", name, attribute), "%s", detail)
	return nil
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
