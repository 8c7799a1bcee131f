package partspec

import (
	"fmt"
	"slices"
	"strings"
)

// relationWords are the blocks that bind two surfaces.
var relationWords = []string{"concentric", "run_out", "square", "parallel", "position"}

var relationShape = shapeOf{attrs: []attr{need("of", kindWord), need("to", kindWord), need("within", kindLength), may("note", kindText)}}

// relations resolves the bindings of a part.
func (s *shaper) relations(entries []*entry) []Relation {
	var list []Relation
	for _, e := range entries {
		if e.broken || s.length() <= 0 {
			s.ownRelation(e)
			continue
		}
		r := Relation{Of: s.surface(e, "of"), To: s.surface(e, "to"), Within: e.length("within"), Range: e.head()}
		r.Kind = RelationKind(slices.Index(relationWords, e.word) + 1)
		if !e.broken {
			s.checkRelation(e, r)
		}
		if !e.broken {
			list = append(list, r)
		}
	}
	return list
}

// surfaceName reads "main", "rim.left" or "face.right"; of a flat part "main", "face.back" or "face.front".
func (s *shaper) surfaceName(e *entry, attribute string) (Surface, bool) {
	text := e.text(attribute)
	name, side, hasSide := strings.Cut(text, ".")
	surface := Surface{Feature: name}
	switch {
	case !e.known(attribute):
		return surface, false
	case s.flat && text == "face.back":
		surface.Face = Left
	case s.flat && text == "face.front":
		surface.Face = Right
	case s.flat && (hasSide || name == "face"):
		s.c.fail(e, e.at(attribute), fmt.Sprintf("%q names no surface", text), `Write a bore or holes ("main"), or a face ("face.back", "face.front").`)
		return surface, false
	case hasSide && side == "left":
		surface.Face = Left
	case hasSide && side == "right":
		surface.Face = Right
	case hasSide || name == "face":
		s.c.fail(e, e.at(attribute), fmt.Sprintf("%q names no surface", text),
			`Write a feature ("main"), one of its shoulders ("rim.left"), or an end face ("face.left", "face.right").`)
		return surface, false
	}
	return surface, true
}

// surface finds what an attribute of a binding names.
func (s *shaper) surface(e *entry, attribute string) Surface {
	surface, ok := s.surfaceName(e, attribute)
	name := surface.Feature
	if !ok || name == "face" {
		return surface
	}
	switch f := s.target(e, name, attribute).(type) {
	case nil:
	case *Chamfer, *Fillet, *Knurl, *Flat, *Slot, *Seat, *SideSeat:
		s.c.fail(e, e.at(attribute), fmt.Sprintf("%s cannot be bound", s.entryOf(name).title()), "Name the feature that it is on.")
	case *Spigot, *Taper, *Profile, *Bore:
		if surface.Face != EndInvalid {
			s.checkShoulder(e, attribute, surface)
		}
	default:
		if surface.Face != EndInvalid {
			s.c.fail(e, e.at(attribute), fmt.Sprintf("%s has no shoulder of its own", s.entryOf(f.Head().Name).title()),
				"Name the feature that it is on.")
		}
	}
	return surface
}

// checkShoulder: a shoulder is where the diameter changes, or an end face.
func (s *shaper) checkShoulder(e *entry, attribute string, surface Surface) {
	pieces := s.outsidePieces()
	if _, inside := s.done[surface.Feature].(*Bore); inside {
		pieces = s.insidePieces()
	}
	i := slices.IndexFunc(pieces, func(p piece) bool { return p.name == surface.Feature })
	if i < 0 {
		return
	}
	own := pieces[i].at(surface.Face)
	if (radiusBeside(pieces, pieces[i].span.At(surface.Face), surface.Face) - own).Abs() <= sameLength {
		s.c.fail(e, e.at(attribute), fmt.Sprintf("%s has no shoulder there", s.entryOf(surface.Feature).title()),
			"What lies beside it has the same diameter.")
	}
}

// someFace is the name of a face, for a message.
func (s *shaper) someFace() string {
	if s.flat {
		return "face.front"
	}
	return "face.right"
}

// checkRelation: an axis can be concentric with an axis, a face square to an
// axis, a face parallel to a face.
func (s *shaper) checkRelation(e *entry, r Relation) {
	faces := 0
	for _, surface := range []Surface{r.Of, r.To} {
		if surface.Face != EndInvalid {
			faces++
		}
	}
	if s.isPattern(r.To) {
		s.c.fail(e, e.at("to"), fmt.Sprintf("%s has no one axis", s.entryOf(r.To.Feature).title()), "Name a bore or an outside feature as to.")
		return
	}
	if s.flat && r.Kind == RunOut {
		s.c.fail(e, e.head(), "A flat part has no run-out", "Bind two bores by concentric, and holes by position.")
		return
	}
	switch {
	case r.Of == r.To:
		s.c.fail(e, e.at("to"), fmt.Sprintf("%s is bound to itself", r.Of), "Name two surfaces.")
	case r.Kind != Position && s.isPattern(r.Of):
		s.c.fail(e, e.at("of"), fmt.Sprintf("%s has no one axis", s.entryOf(r.Of.Feature).title()), "The place of holes is bound by position { ... }.")
	case r.Kind == Concentric && faces > 0:
		s.c.fail(e, e.head(), "Only round surfaces are concentric", "Name two features, like of = \"rim\" and to = \"main\".")
	case r.Kind == RunOut && r.To.Face != EndInvalid:
		s.c.fail(e, e.at("to"), "Run-out is about an axis", "Write a round feature as to, like to = \"main\".")
	case r.Kind == Position:
		s.checkPosition(e, r, faces)
	case r.Kind == Square && faces != 1:
		s.c.fail(e, e.head(), "A face is square to an axis",
			"Name one face and one round feature, like of = %q and to = \"main\".", s.someFace())
	case r.Kind == Parallel && faces != 2:
		s.c.fail(e, e.head(), "Only faces are parallel", "Name two faces, like of = %q and to = %q.", map[bool]string{true: "face.back", false: "face.left"}[s.flat], s.someFace())
	}
}

// checkPosition: the place of holes, or of a bore beside the axis, is bound to an axis.
func (s *shaper) checkPosition(e *entry, r Relation, faces int) {
	switch f := s.done[r.Of.Feature].(type) {
	case *Holes, *CrossHole:
	case *Bore:
		if f.At == nil {
			s.c.fail(e, e.at("of"), fmt.Sprintf("%s lies on the axis", s.entryOf(f.Name).title()), "Bind it by concentric; position is for holes beside the axis.")
			return
		}
	default:
		s.c.fail(e, e.at("of"), "Only holes have a position", "Name holes, a cross hole, or a bore of a flat part as of.")
		return
	}
	if faces > 0 {
		s.c.fail(e, e.head(), "A position is about an axis", "Name a bore or an outside feature as to, like to = \"main\".")
	}
}

// isPattern reports whether a surface is a pattern of holes, or a hole across the axis.
func (s *shaper) isPattern(surface Surface) bool {
	switch s.done[surface.Feature].(type) {
	case *Holes, *CrossHole:
		return true
	}
	return false
}
