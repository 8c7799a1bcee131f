package partspec

import (
	"fmt"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

var threadShape = shapeOf{attrs: []attr{
	need("on", kindWord), need("size", kindWord), may("length", kindSize), may("class", kindWord), may("hand", kindWord),
	may("from", kindWord), may("note", kindText),
}}

// threadOn finds the thread that is cut on a feature, before the feature itself
// is built: its diameter may follow from the thread.
func (s *shaper) threadOn(name string) (tables.Thread, bool) {
	for _, e := range s.entries {
		if e.word == "thread" && e.text("on") == name && !e.broken {
			if t, err := tables.FindThread(e.text("size")); err == nil {
				return t, true
			}
			return tables.Thread{}, true // told by thread
		}
	}
	return tables.Thread{}, false
}

// strayThread reports whether a thread is on a feature that is not there: it may be the one that a feature without a diameter waits for, and is told of by itself.
func (s *shaper) strayThread() bool {
	for _, e := range s.entries {
		if e.word == "thread" && e.text("on") != "" && s.entryOf(e.text("on")) == nil {
			return true
		}
	}
	return false
}

// Limits of the blank of a thread, as parts of its pitch. ISO 965-1 gives 6g
// bolts and 6H nuts about 0.2 of the pitch in the usual sizes (from memory); the
// other series are made alike.
const (
	blankUnderPerPitch = 0.15
	coreOverPerPitch   = 0.2
	// coreOff is how far a drawn core may be from the thread's own, in pitches,
	// before it is taken for a mistake: shops drill large for easy tapping.
	coreOffPerPitch = 0.4
)

// threadBlank is the diameter of a spigot under a thread: as drawn when it
// agrees with the thread, else the thread's own.
func (s *shaper) threadBlank(e *entry, t tables.Thread) Size {
	drawn := s.size(e, "diameter", useShaft)
	if t.Major == 0 || e.broken {
		e.broken = e.broken || !e.has("diameter") // the thread was told already
		return drawn
	}
	if e.has("diameter") && (drawn.Value-t.Major).Abs() > blankAgrees {
		s.c.fail(e, drawn.Range, fmt.Sprintf("%s does not suit the thread on it", e.title()),
			"%s is %s over its crests: write that, or leave diameter out.%s",
			t.Designation, s.shown(t.Major), s.wrongUnit(drawn.Value, t.Major))
		return drawn
	}
	if e.has("diameter") && !drawn.general {
		return drawn
	}
	limits := units.Around(t.Major, -t.Pitch*blankUnderPerPitch, 0)
	return s.threadDiameter(e, drawn, t.Major).within(limits, "blank of "+t.Designation+", down to 0.15 of the pitch under")
}

// threadCore is the diameter of a bore under a thread.
func (s *shaper) threadCore(e *entry, t tables.Thread) Size {
	drawn := s.size(e, "diameter", useHole)
	if t.MinorInt == 0 || e.broken {
		e.broken = e.broken || !e.has("diameter") // the thread was told already
		return drawn
	}
	limits := units.Around(t.MinorInt, 0, t.Pitch*coreOverPerPitch)
	limits.High = max(limits.High, t.TapDrill.Round(positionDecimals))
	if e.has("diameter") && (drawn.Value-t.MinorInt).Abs() > t.Pitch*coreOffPerPitch {
		s.c.fail(e, drawn.Range, fmt.Sprintf("%s does not suit the thread in it", e.title()),
			"The core of %s is %s: write that, or leave diameter out.%s",
			t.Designation, limits, s.wrongUnit(drawn.Value, t.MinorInt))
		return drawn
	}
	if e.has("diameter") && !drawn.general {
		return drawn
	}
	return s.threadDiameter(e, drawn, t.MinorInt).within(limits, "core of "+t.Designation+", up to 0.2 of the pitch or the tapping drill over")
}

// threadDiameter keeps a drawn size, or makes one of the thread's own.
func (s *shaper) threadDiameter(e *entry, drawn Size, own units.Length) Size {
	if e.has("diameter") {
		return drawn
	}
	return Size{Dimension: units.Dimension{Value: own.Round(positionDecimals), InInches: s.part.Inches}, Range: e.head()}
}

// threadSize finds the thread that the drawing names.
func (s *shaper) threadSize(e *entry) (tables.Thread, bool) {
	if !e.known("size") {
		return tables.Thread{}, false
	}
	t, err := tables.FindThread(e.text("size"))
	if err != nil {
		s.c.fail(e, e.at("size"), fmt.Sprintf("No table has the thread %q", e.text("size")), "%s", sentence(err))
	}
	return t, err == nil
}

// thread builds a thread on a spigot or in a bore.
func (s *shaper) thread(e *entry) Feature {
	t, found := s.threadSize(e)
	if !found {
		return nil
	}
	on := s.target(e, e.text("on"), "on")
	if on == nil {
		return nil
	}
	f := &Thread{
		FeatureHead: s.head(e), On: on.Head().Name, Thread: t, Class: e.text("class"), LeftHand: s.leftHand(e),
		Length: s.size(e, "length", useLength),
	}
	var whole Span
	switch base := on.(type) {
	case *Spigot:
		whole, f.From = base.Span, s.threadEnd(e, base)
		if base.AsSupplied && (base.Diameter.Value-t.Major).Abs() > blankAgrees {
			s.c.fail(e, e.at("size"), fmt.Sprintf("%s does not suit the stock", e.title()),
				"%s is %s over its crests, the stock %s: turn the spigot to size.", t.Designation, s.shown(t.Major), s.shown(base.Diameter.Value))
		}
		if base.AsSupplied && s.part.Stock.Kind == Hexagon {
			s.c.fail(e, e.at("on"), "A thread cannot be cut on a hexagon's flats", "Name a spigot that is turned.")
		}
	case *Bore:
		whole, f.From, f.Inside = base.Span, s.fromEnd(e, base.From), true
		if !base.Through && f.From != base.From {
			s.c.fail(e, e.at("from"), fmt.Sprintf("%s is not open at the %s end", s.entryOf(f.On).title(), s.endWord(f.From)),
				"Leave from out.")
		}
		if base.AsSupplied && (base.Diameter.Value-t.MinorInt).Abs() > t.Pitch*coreOffPerPitch {
			s.c.fail(e, e.at("size"), fmt.Sprintf("%s does not suit the stock", e.title()),
				"The core of %s is %s, the stock's bore %s: bore it to size.", t.Designation, s.shown(t.MinorInt), s.shown(base.Diameter.Value))
		}
	default:
		s.c.fail(e, e.at("on"), fmt.Sprintf("A thread cannot be on %s", s.entryOf(f.On).title()),
			"%s", s.threadBearers())
	}
	s.oneThread(e)
	if e.broken {
		return nil
	}
	s.threadSpan(e, f, whole)
	return f
}

func (s *shaper) threadSpan(e *entry, f *Thread, whole Span) {
	if !e.has("length") {
		f.Length = s.derived(e, "length", whole.Length(), useLength)
	}
	if f.Length.Value > whole.Length()+sameLength {
		s.c.fail(e, e.at("length"), fmt.Sprintf("%s is longer than %s", e.title(), s.entryOf(f.On).title()),
			"The thread is %s long, the %s %s. Make it shorter, or leave length out for all of it.",
			s.shown(f.Length.Value), s.entryOf(f.On).word, s.shown(whole.Length()))
	}
	f.Span = whole
	if f.From == Left {
		f.Span.Right = (whole.Left + f.Length.Value).Round(positionDecimals)
	} else {
		f.Span.Left = (whole.Right - f.Length.Value).Round(positionDecimals)
	}
}

func (s *shaper) leftHand(e *entry) bool {
	switch hand := e.text("hand"); hand {
	case "", "right":
		return false
	case "left":
		return true
	default:
		s.c.fail(e, e.at("hand"), fmt.Sprintf("A thread's hand cannot be %q", hand),
			`Write hand = "left", or leave it out for a right-hand thread.`)
		return false
	}
}

// threadEnd is the free end of a spigot: the end of the part if it has one,
// else the end whose neighbour is smaller.
func (s *shaper) threadEnd(e *entry, on *Spigot) End {
	left, right := s.freedom(on.Span.Left, Left, on), s.freedom(on.Span.Right, Right, on)
	if e.has("from") {
		end := s.fromEnd(e, EndInvalid)
		if end == Left && left == 0 || end == Right && right == 0 {
			s.c.fail(e, e.at("from"), fmt.Sprintf("The %s end of %s is not free", end, s.entryOf(on.Name).title()),
				"What lies beside it is larger, so that no thread can be begun there.")
		}
		return end
	}
	switch {
	case left > right:
		return Left
	case right > left:
		return Right
	case !e.has("length"):
		return Right // all of it, so the end does not matter
	}
	s.c.fail(e, e.head(), fmt.Sprintf("%s could begin at either end of %s", e.title(), s.entryOf(on.Name).title()),
		`Write from = "left" or from = "right".`)
	return EndInvalid
}

// freedom is 2 at the end of the part, 1 beside a smaller neighbour, else 0.
func (s *shaper) freedom(z units.Length, side End, on *Spigot) int {
	beside := radiusBeside(s.outsidePieces(), z, side)
	switch {
	case beside == 0:
		return 2
	case beside < on.Diameter.Value/2-sameLength:
		return 1
	}
	return 0
}

// oneThread refuses a second thread on one feature.
func (s *shaper) oneThread(e *entry) {
	for _, other := range s.entries {
		if other == e {
			return
		}
		if other.word == "thread" && other.text("on") == e.text("on") && !other.broken {
			s.c.fail(e, e.head(), fmt.Sprintf("%s has two threads", s.entryOf(e.text("on")).title()),
				"The other is in line %d. Make two features of it, one for each thread.", other.head().Start.Line)
			return
		}
	}
}
