package partspec

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec/units"
)

var holesShape = shapeOf{
	attrs: []attr{
		may("at", kindPlaces), may("circle", kindSize), may("count", kindCount), may("start", kindTurn), may("about", kindPlace),
		may("diameter", kindSize), may("clearance", kindWord), may("thread", kindWord), may("dowel", kindSize),
		may("full_thread", kindSize), may("class", kindWord), may("hand", kindWord),
		may("depth", kindSize), may("through", kindFlag), may("from", kindWord), may("position", kindLength), may("locate_by", kindWord),
		may("direction", kindWord), may("match", kindPattern), may("register", kindWord), may("note", kindText),
	},
	blocks: []string{"grid", "counterbore", "countersink"},
}

// holeShapes are the blocks inside a pattern of holes.
var holeShapes = map[string]shapeOf{
	"grid":        {attrs: []attr{need("at", kindPlace), need("columns", kindCount), need("rows", kindCount), need("pitch", kindPair)}},
	"counterbore": {attrs: []attr{need("diameter", kindSize), need("depth", kindSize)}},
	"countersink": {attrs: []attr{need("diameter", kindSize), may("angle", kindAngle)}},
}

// holes builds a pattern of like holes.
func (s *shaper) holes(e *entry) Feature {
	f := &Holes{FeatureHead: s.head(e), Locate: s.locateBy(e), Within: e.length("position") / 2, From: s.holesFrom(e)}
	f.Places, f.Circle = s.pattern(e)
	s.indexed(e, f)
	s.holeMake(e, f)
	s.holeDepth(e, f)
	f.Sink = s.sink(e, f)
	s.matched(e, f)
	s.holeDirection(e, f)
	if e.broken {
		return nil
	}
	return f
}

// child finds a block inside by its word; a second one is refused.
func (s *shaper) child(e *entry, word string) *entry {
	var found *entry
	for _, c := range e.children {
		switch {
		case c.word != word:
		case found == nil:
			found = c
		default:
			s.c.fail(e, c.head(), fmt.Sprintf("%s has a second %s", e.title(), word), "Leave one out, or make two features of it.")
		}
	}
	if found != nil && found.broken {
		e.broken = true
	}
	return found
}

// holesFrom reads the face that holes begin at: of a flat part its front, unless the file says back.
func (s *shaper) holesFrom(e *entry) End {
	words := map[string]End{"left": Left, "right": Right}
	say := `Write from = "left" or from = "right": the end face that they are drilled from.`
	if s.flat {
		words = map[string]End{"back": Left, "front": Right}
		say = `Write from = "front" (also when none is written) or from = "back": the face that it is cut from.`
	}
	if !e.has("from") {
		if e.word == "holes" && !s.flat && s.oneSided(e) {
			s.c.fail(e, e.head(), fmt.Sprintf("%s does not say which end it is drilled from", e.title()), "%s", say)
		}
		return Right
	}
	end, ok := words[e.text("from")]
	if !ok && e.known("from") {
		s.c.fail(e, e.at("from"), fmt.Sprintf("%s cannot begin from %q", e.title(), e.text("from")), "%s", say)
	}
	return end
}

// oneSided reports whether holes look different from either end: blind ones, and those with a widened mouth.
func (s *shaper) oneSided(e *entry) bool {
	sunk := slices.ContainsFunc(e.children, func(c *entry) bool { return c.word == "counterbore" || c.word == "countersink" })
	return sunk || e.has("depth") || e.has("full_thread") && !e.flag("through")
}

// locateBy reads how the places of holes are found.
func (s *shaper) locateBy(e *entry) LocateBy {
	known := []LocateBy{LocateDial, LocateScribe, LocatePunch, LocateHead}
	by := LocateBy(e.text("locate_by"))
	for _, k := range append(known, "") {
		if by == k {
			return by
		}
	}
	s.c.fail(e, e.at("locate_by"), fmt.Sprintf("Holes cannot be located by %q", string(by)), "%s", orList(string(by), words(known)))
	return ""
}

// oneRing is how much nearer to the axis than another a hole of a ring may lie: coordinates that are written to a hundredth.
const oneRing units.Length = 0.02

// indexed holds that what a dividing head is to turn to is a ring about the axis of a turned part.
func (s *shaper) indexed(e *entry, f *Holes) {
	if f.Locate != LocateHead || e.broken {
		return
	}
	if s.flat {
		s.c.fail(e, e.at("locate_by"), "A flat part is not turned on a dividing head", `Its chuck holds round work: write locate_by = "dial", or leave it out.`)
		return
	}
	near, far := f.Places[0].fromAxis(), f.Places[0].fromAxis()
	for _, p := range f.Places {
		near, far = min(near, p.fromAxis()), max(far, p.fromAxis())
	}
	if near <= oneRing || far-near > oneRing {
		s.c.fail(e, e.at("locate_by"), fmt.Sprintf("%s is no ring about the axis: its holes lie %s to %s from it", e.title(), near.Round(3), far.Round(3)),
			`A dividing head turns the work under a spindle that stands still: make a pattern of each ring, or write locate_by = "dial".`)
	}
}

// fromAxis is how far a place lies from the axis of X and Y.
func (p Point) fromAxis() units.Length {
	return units.Length(math.Hypot(float64(p.X.Value), float64(p.Y.Value)))
}

// pattern reads the places of the holes, told in one of three ways.
func (s *shaper) pattern(e *entry) ([]Point, *Circle) {
	grid := s.child(e, "grid")
	ways := 0
	for _, way := range []bool{e.has("at"), e.has("circle"), grid != nil} {
		if way {
			ways++
		}
	}
	if ways != 1 {
		s.c.fail(e, e.head(), fmt.Sprintf("%s does not say once where its holes are", e.title()),
			"Write one of: at = [[7, 7], [53, 7]]; circle = 46 with count = 6; or grid { at = [7, 7], columns = 3, rows = 2, pitch = [20, 15] } on lines of its own.")
		return nil, nil
	}
	if !e.has("circle") {
		for _, name := range []string{"count", "start", "about"} {
			if e.has(name) {
				s.c.fail(e, e.at(name), fmt.Sprintf("%s belongs to a circle", name), "Write circle = 46 beside it, or leave it out.")
			}
		}
	}
	switch {
	case grid != nil:
		return s.grid(e, grid), nil
	case e.has("circle"):
		return s.circle(e)
	}
	var places []Point
	if e.value("at").text != "" {
		if p, ok := s.place(e, "at"); ok {
			places = append(places, p)
		}
		return places, nil
	}
	for _, p := range e.value("at").places {
		places = append(places, s.point(e, p, e.at("at")))
	}
	return places, nil
}

// grid numbers its holes along each row, the first row first.
func (s *shaper) grid(e, grid *entry) []Point {
	columns, rows := int(grid.number("columns")), int(grid.number("rows"))
	if columns*rows > maxHoles || columns > maxHoles || rows > maxHoles {
		s.c.fail(e, grid.head(), "The grid has too many holes", "A pattern has at most %d.", maxHoles)
		return nil
	}
	first, ok := s.place(grid, "at")
	pitch := grid.value("pitch").list
	if !ok || len(pitch) != 2 {
		e.broken = true
		return nil
	}
	dx, dy := s.pitch(grid, pitch[0].size), s.pitch(grid, pitch[1].size)
	var places []Point
	for row := range rows {
		for column := range columns {
			places = append(places, Point{stepped(first.X, dx, column), stepped(first.Y, dy, row)})
		}
	}
	return places
}

// pitch gives the distance of two holes its limits.
func (s *shaper) pitch(grid *entry, t units.Toleranced) Size {
	size := Size{Dimension: t.Nominal, Range: grid.at("pitch")}
	if t.HasLimits {
		return size.within(t.Limits, "as drawn")
	}
	return s.general(grid, "pitch", size, useLength)
}

// stepped is a coordinate some pitches on. Each hole is measured from the datum, so that its limits are those of the first hole and of one pitch at most.
func stepped(first, pitch Size, steps int) Size {
	if steps == 0 {
		return first
	}
	next := first
	next.Dimension = units.Dimension{Value: (first.Value + units.Length(steps)*pitch.Value).Round(positionDecimals), InInches: first.InInches}
	return next.about(min(first.Width(), pitch.Width())/2, pitch.Basis)
}

// circle places count holes evenly on a pitch circle, hole 1 at start, the others anticlockwise as seen from the front or the right end.
func (s *shaper) circle(e *entry) ([]Point, *Circle) {
	c := &Circle{Diameter: s.size(e, "circle", useLength), Count: int(e.number("count")), Start: units.Angle(e.number("start"))}
	switch {
	case !e.has("count"):
		s.c.fail(e, e.at("circle"), fmt.Sprintf("%s lacks count", e.title()), "Write how many holes are on the circle: count = 6.")
	case c.Count > maxHoles:
		s.c.fail(e, e.at("count"), "The circle has too many holes", "A pattern has at most %d.", maxHoles)
	}
	c.Centre = s.circleCentre(e)
	if e.broken {
		return nil, nil
	}
	either := min(c.Diameter.Value-c.Diameter.Low, c.Diameter.High-c.Diameter.Value) / 2
	var places []Point
	for i := range c.Count {
		angle := c.Start.Radians() + 2*math.Pi*float64(i)/float64(c.Count)
		r := float64(c.Diameter.Value) / 2
		places = append(places, Point{s.around(c, c.Centre.X, r*math.Cos(angle), either), s.around(c, c.Centre.Y, r*math.Sin(angle), either)})
	}
	return places, c
}

// around is one coordinate of a hole on a circle.
func (s *shaper) around(c *Circle, centre Size, off float64, either units.Length) Size {
	d := units.Dimension{Value: (centre.Value + units.Length(off)).Round(positionDecimals), InInches: s.part.Inches}
	return Size{Dimension: d, Range: c.Diameter.Range}.about(either, "from the circle's centre: half of the circle's, "+c.Diameter.Basis)
}

// circleCentre is what the circle lies about: the axis of a turned part, the middle of a disc, within what the smallest general tolerance lets it lie beside them;
// else what the file says.
func (s *shaper) circleCentre(e *entry) Point {
	switch {
	case !s.flat && e.has("about"):
		s.c.fail(e, e.at("about"), "On a turned part the circle lies about the axis", "Leave about out.")
	case e.has("about"):
		p, ok := s.place(e, "about")
		if !ok {
			e.broken = true
		}
		return p
	case s.flat && s.part.Outline != nil && s.part.Outline.Kind != "disc":
		s.c.fail(e, e.at("circle"), fmt.Sprintf("The circle of %s has no centre", e.title()),
			`Write about = "main" (a bore), about = "top.centre" (the centre of an arc) or about = [30, 70].`)
	}
	return *s.middle(e, e.at("circle"))
}
