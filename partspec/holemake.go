package partspec

import (
	"fmt"
	"math"
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// holeMake reads what the holes are: plain, for a screw to pass, tapped, or reamed for dowels.
func (s *shaper) holeMake(e *entry, f *Holes) {
	said := 0
	for _, name := range []string{"diameter", "clearance", "thread", "dowel"} {
		if e.has(name) {
			said++
		}
	}
	if said != 1 {
		s.c.fail(e, e.head(), fmt.Sprintf("%s does not say once what its holes are", e.title()),
			`Write one of: diameter = 4.5; clearance = "M4" for a screw to pass; thread = "M4"; dowel = "4 H7".`)
		return
	}
	if !e.has("thread") {
		for _, name := range []string{"full_thread", "class", "hand"} {
			if e.has(name) {
				s.c.fail(e, e.at(name), fmt.Sprintf("%s belongs to a thread", name), `Write thread = "M4" beside it, or leave it out.`)
			}
		}
	}
	switch {
	case e.has("thread"):
		s.tapped(e, f)
	case e.has("clearance"):
		s.clearanceHole(e, f)
	case e.has("dowel"):
		f.Make, f.Diameter = DowelHole, s.size(e, "dowel", useHole)
		if f.Diameter.general {
			s.c.fail(e, e.at("dowel"), "A dowel hole needs its class", `Write it like dowel = "4 H7", or with limits.`)
		}
	default:
		f.Make, f.Diameter = PlainHole, s.size(e, "diameter", useHole)
	}
}

// screwFits are the series of ISO 273, closest first.
var screwFits = []string{"close", "medium", "free"}

// clearanceHole finds the hole that a screw passes: clearance = "M4", or with its series: "M4 close".
func (s *shaper) clearanceHole(e *entry, f *Holes) {
	f.Make = ClearanceHole
	text, series := e.text("clearance"), "medium"
	for _, fit := range screwFits {
		if screw, ok := strings.CutSuffix(text, " "+fit); ok {
			text, series = screw, fit
		}
	}
	if !e.known("clearance") {
		return
	}
	t, err := tables.FindThread(text)
	if err != nil {
		s.c.fail(e, e.at("clearance"), fmt.Sprintf("No table has the screw %q", text), "%s Behind it may stand close, medium (also when none is written) or free.", sentence(err))
		return
	}
	d := map[string]units.Length{"close": t.ClearClose, "medium": t.ClearMedium, "free": t.ClearFree}[series]
	if d == 0 {
		s.c.fail(e, e.at("clearance"), fmt.Sprintf("No table has a %s clearance hole for %s", series, t.Designation),
			"Write the hole's diameter: diameter = %s or more.", s.shown(t.Major))
		return
	}
	f.Screw = t.Designation
	f.Diameter = s.derived(e, "clearance", d, useHole)
	f.Diameter.Range = e.at("clearance")
	class := map[string]string{"close": "H12", "medium": "H13", "free": "H14"}[series] // ISO 273 gives these for its three series
	if dev, err := tables.ISO286(class, d); err == nil {
		f.Diameter = f.Diameter.within(units.Around(d, dev.Lower, dev.Upper), fmt.Sprintf("%s, %s series (ISO 273), hole for %s", class, series, t.Designation))
	}
}

// tapped reads the thread of tapped holes. Their diameter is the thread's core.
func (s *shaper) tapped(e *entry, f *Holes) {
	f.Make = TappedHole
	if !e.known("thread") {
		return
	}
	t, err := tables.FindThread(e.text("thread"))
	if err != nil {
		s.c.fail(e, e.at("thread"), fmt.Sprintf("No table has the thread %q", e.text("thread")), "%s", sentence(err))
		return
	}
	if t.MinorInt == 0 {
		s.c.fail(e, e.at("thread"), fmt.Sprintf("The table does not know the core of %s", t.Designation), "Drill a plain hole and write the thread in a note.")
		return
	}
	high := max(t.MinorInt+coreOverPerPitch*t.Pitch, t.TapDrill)
	core := Size{Dimension: units.Dimension{Value: t.MinorInt.Round(positionDecimals), InInches: s.part.Inches}, Range: e.at("thread")}
	f.Diameter = core.within(units.Limits{Low: t.MinorInt.Round(positionDecimals), High: high.Round(positionDecimals)}, "core of "+t.Designation+", up to 0.2 of the pitch or the tapping drill over")
	f.Thread = &Thread{
		FeatureHead: f.FeatureHead, On: f.Name, Inside: true, Thread: t, Class: e.text("class"), From: f.From, LeftHand: s.leftHand(e),
		Length: s.size(e, "full_thread", useLength),
	}
}

// tapLeadPitches is how much deeper than the full thread a blind hole is drilled, in pitches: two for the lead of a bottoming tap and one for chips (rule A-29).
const tapLeadPitches = 3

// deeper is the share of the full thread's depth that a blind hole is drilled deeper by (rule A-29).
func deeper(t tables.Thread) units.Length {
	const fine, coarse units.Length = 6, 12
	switch {
	case t.Major < fine:
		return 0.25
	case t.Major <= coarse:
		return 0.20
	}
	return 0.15
}

// holeDepth: through, unless a depth or a full thread is written that ends in the metal.
func (s *shaper) holeDepth(e *entry, f *Holes) {
	blind := e.has("depth") || e.has("full_thread") && !e.flag("through")
	switch {
	case e.has("depth") && e.flag("through"):
		s.c.fail(e, e.at("depth"), fmt.Sprintf("%s is both through and blind", e.title()), "Leave out depth or through.")
	case e.has("through") && !e.flag("through") && !blind:
		s.c.fail(e, e.at("through"), fmt.Sprintf("%s lacks depth", e.title()), "Write depth = 5, counted from the face that it begins at.")
	case e.has("depth"):
		f.Depth = s.size(e, "depth", useLength)
		if f.Thread != nil && !e.has("full_thread") {
			s.c.fail(e, e.at("depth"), fmt.Sprintf("%s does not say how deep its thread is full", e.title()),
				"Write full_thread = 6; depth is that of the drilled hole and may then be left out.")
		}
	case blind && f.Thread != nil:
		full := f.Thread.Length.Value
		t := f.Thread.Thread
		f.Depth = s.derived(e, "depth", max(full+tapLeadPitches*t.Pitch, full*(1+deeper(t))), useLength)
		f.Depth.Low = max(f.Depth.Low, full+t.Pitch)
	default:
		f.Through, f.Depth = true, s.part.Length
	}
	if f.Thread != nil && f.Through && !e.has("full_thread") {
		f.Thread.Length = s.part.Length
	}
}

// sink reads the widened mouth of the holes.
func (s *shaper) sink(e *entry, f *Holes) *Sink {
	bore, cone := s.child(e, "counterbore"), s.child(e, "countersink")
	if bore != nil && cone != nil {
		s.c.fail(e, cone.head(), fmt.Sprintf("%s is counterbored and countersunk", e.title()), "Leave one out.")
		return nil
	}
	in := bore
	if in == nil {
		in = cone
	}
	if in == nil || in.broken {
		return nil
	}
	sink := &Sink{Diameter: s.size(in, "diameter", useHole), Depth: s.size(in, "depth", useLength)}
	if cone != nil {
		sink.Angle = commonSink
		if cone.has("angle") {
			sink.Angle = cone.angle("angle")
		}
		if sink.Angle < 60 || sink.Angle > 150 {
			s.c.fail(e, cone.at("angle"), "There is no such countersink", "Write its included angle: 82, 90 (also when none is written), 100 or 120.")
		}
	}
	if in.broken {
		e.broken = true
	}
	if f.Diameter.Value > 0 && sink.Diameter.Value <= f.Diameter.Value+sameLength {
		s.c.fail(e, in.at("diameter"), fmt.Sprintf("The %s of %s is no wider than its hole", in.word, e.title()),
			"It is %s across, the hole %s: write a larger diameter.", s.shown(sink.Diameter.Value), s.shown(f.Diameter.Value))
	}
	return sink
}

// matched keeps the pattern of another part that this one is drilled through from. Whether the two agree is seen when all parts are built.
func (s *shaper) matched(e *entry, f *Holes) {
	if part, name, ok := strings.Cut(e.text("match"), "."); ok {
		f.Match = FeatureRef{part, name}
	}
	switch by := e.text("register"); {
	case by == "":
	case by != "edges":
		s.c.fail(e, e.at("register"), fmt.Sprintf("Two parts are not held true to each other by %q", by),
			`Write register = "edges" for datum edges that are laid flush, or a fit of a bore and a spigot of the two; dowels, bolts and what is found by eye are not planned.`)
	case !e.has("match"):
		s.c.fail(e, e.at("register"), fmt.Sprintf("%s has a register and no match", e.title()), "Write match = part.OTHER.holes.NAME as well: what they are spotted through from.")
	}
}

// sinkDepth is how deep the widened mouth goes: of a countersink half of what it widens by, divided by the tangent of half its angle.
func (f *Holes) sinkDepth() units.Length {
	if f.Sink.Angle == 0 {
		return f.Sink.Depth.Value
	}
	return (f.Sink.Diameter.Value - f.Diameter.Value) / 2 / units.Length(math.Tan(f.Sink.Angle.Radians()/2))
}
