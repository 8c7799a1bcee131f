package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/numbers/thread"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/tables"
)

// spotted is a pattern of holes, ready to be drilled: what every one of its operations needs. It does not care whether the part is flat.
type spotted struct {
	*partspec.Holes
	by      partspec.LocateBy
	from    []partspec.End // faces it may be drilled from
	columns []column       // of metal, one a hole
	drill   partspec.Tool
	drillMM float64
	reamMM  float64   // 0 = not reamed
	saw     sawn      // where they are sawn round what is drilled
	depth   float64   // of the full diameter, from the face; blind holes only
	spots   mateSpots // of a pattern that is spotted through from its mate
	bored   bool      // true by a boring head before the reamer
	inHole  bool      // the tool is set to the hole that is there, whatever made it
}

// pattern makes the tasks of a pattern of holes: marked out where they are found by marks; spotted and drilled; reamed; the mouth widened; tapped.
func (c *Context) pattern(f *partspec.Holes) []Task {
	if f.SquareTo != "" {
		return c.leaning(f)
	}
	s, lacking := c.spotted(f)
	if len(lacking) > 0 {
		return []Task{{Op: shape.Op{ID: f.ID() + "/drill", Feature: f.Name, Process: plan.Drill}, Lacking: lacking}}
	}
	var tasks []Task
	switch {
	case s.Mate != nil:
		tasks = append(tasks, c.markHoles(s, s.spots.drill, c.writeSpots))
	case s.marked():
		tasks = append(tasks, c.markHoles(s, c.tools(partspec.Scriber)[0], c.writeMarks))
	}
	tasks = append(tasks, c.drillHoles(s))
	if s.saw.is() {
		tasks = append(tasks, c.sawHoles(s, true))
	}
	if s.Sink != nil {
		tasks = append(tasks, c.sinkHoles(s))
	}
	if s.reamMM > 0 {
		tasks = append(tasks, c.reamHoles(s))
	}
	if s.Thread != nil {
		tasks = append(tasks, c.tapHoles(s))
	}
	return tasks
}

// spotted looks a pattern through: where its metal is, how its places are found, and which tools make it.
func (c *Context) spotted(f *partspec.Holes) (s spotted, lacking []string) {
	s = spotted{Holes: f, from: []partspec.End{f.From}}
	if f.Through && f.Sink == nil && f.Mate == nil {
		s.from = []partspec.End{f.From, f.From.Other()}
	}
	r := math.Max(float64(f.Diameter.High), s.widest()) / 2
	for i, at := range f.Places {
		l, why := c.columnAt(float64(at.X.Value), float64(at.Y.Value), r, f.From)
		if why != "" {
			lacking = append(lacking, fmt.Sprintf("hole %d of %s: %s; a hole wants a plane face all round its mouth (rule A-31)", i+1, f.Name, why))
		}
		s.columns = append(s.columns, l)
	}
	var why string
	if f.Mate != nil {
		s.spots, why = c.spotThrough(f)
	} else {
		s.by, why = c.locate(f)
	}
	if why != "" {
		lacking = append(lacking, why)
	}
	if c.Rules.Has("A-02") && f.Mate == nil && len(c.tools(partspec.CentreDrill)) == 0 {
		lacking = append(lacking, fmt.Sprintf("drilling %s: no centre drill is owned to spot it with", f.Name))
	}
	return s, append(lacking, c.holeTools(&s)...)
}

// widest is the diameter of a hole at its mouth.
func (s spotted) widest() float64 {
	d := float64(s.Diameter.Value)
	if s.Sink != nil {
		d = math.Max(d, float64(s.Sink.Diameter.Value))
	}
	if s.Thread != nil {
		d = math.Max(d, float64(s.Thread.Thread.Major))
	}
	return d
}

// locate is how the places of a pattern are found: as the file says, else by dials where the mill has them, else by marks (rule C-24).
func (c *Context) locate(f *partspec.Holes) (by partspec.LocateBy, why string) {
	dials, marks := c.coordinates(), len(c.tools(partspec.Scriber)) > 0 && c.Bench.Kind != "" && (c.Drill.Kind != "" || c.Mill.Kind != "")
	by = f.Locate
	switch {
	case by == partspec.LocateHead:
		return by, c.indexes(f, dials)
	case by == "" && dials:
		by = partspec.LocateDial
	case by == "" && marks:
		by = partspec.LocatePunch
	}
	switch {
	case by == "":
		why = fmt.Sprintf("%s: neither a mill with dials x, y and quill (or z), nor a bench, a scriber and a drilling machine are owned to find its places with", f.Name)
	case by == partspec.LocateDial && !dials:
		why = fmt.Sprintf("%s: locate_by = \"dial\" wants a mill with dials x, y and quill (or z)", f.Name)
	case by != partspec.LocateDial && !marks:
		why = fmt.Sprintf("%s: locate_by = %q wants a bench, a tool \"scriber\" and a drilling machine or a mill", f.Name, by)
	}
	return by, why
}

// marked reports whether the places are found by marks or spots on the work.
func (s spotted) marked() bool { return s.by != partspec.LocateDial && !s.indexed() }

// holeTools chooses the drill, the reamer and the depth.
func (c *Context) holeTools(s *spotted) (lacking []string) {
	switch {
	case s.Thread != nil:
		lacking = c.tappingDrill(s)
	default:
		lacking = c.plainDrill(s)
	}
	if s.Through {
		return lacking
	}
	s.depth = float64(s.Depth.Mid())
	for i, l := range s.columns {
		if floor := l.z1 - l.z0 - s.depth - pointLength(s.drillMM); floor < s.leastFloor() {
			lacking = append(lacking, fmt.Sprintf("hole %d of %s: drilled %.2f deep, %.2f of metal is left under the drill's point, %.2f is wanted: drill it through, or less deep (rule A-29)", i+1, s.Name, s.depth, floor, s.leastFloor()))
			break
		}
	}
	return lacking
}

// leastFloor is the metal wanted under the point of a blind hole: half the drill, at least 1 (rule A-29).
func (s spotted) leastFloor() float64 { return math.Max(s.drillMM/2, 1) }

func pointLength(d float64) float64 { return d / 2 / math.Tan(plan.DrillPointDeg/2*math.Pi/180) }

// plainDrill drills to size where a drill is trusted with the limits, or saws where they are wide enough for that; else drills for a reamer.
func (c *Context) plainDrill(s *spotted) []string {
	d := s.Diameter
	if s.Make != partspec.DowelHole && (float64(d.Width()) >= drillWidth(float64(d.Value)) || !c.Rules.Has("A-26n")) {
		tool, size, ok := c.sizedNear(partspec.Drills, float64(d.Low), float64(d.High), float64(d.Value)) // as the drawing and the rack have it
		if s.drill, s.drillMM = tool, size; ok {
			return nil
		}
		why := ""
		if s.Through && s.Sink == nil && s.Mate == nil {
			if s.saw, why = c.sawFor(s.Name, float64(d.Low), float64(d.High)); s.saw.is() {
				s.drill, s.drillMM = s.saw.drill, s.saw.pilotMM
				return nil
			}
		}
		if why != "" {
			return []string{why}
		}
		return []string{fmt.Sprintf("drilling %s: no drill owned between %.2f and %.2f", s.Name, float64(d.Low), float64(d.High))}
	}
	_, size, ok := c.sized(partspec.Reamers, float64(d.Low), float64(d.High))
	if !ok {
		return []string{fmt.Sprintf("%s: a drill is trusted with %.2f, the limits are %.3f apart, and no reamer is owned between %.3f and %.3f", s.Name, drillWidth(float64(d.Value)), float64(d.Width()), float64(d.Low), float64(d.High))}
	}
	s.reamMM = size
	for _, t := range c.tools(partspec.Drills) { // the largest that leaves enough
		for _, v := range t.Sizes {
			if m := float64(v); m <= size-reamLeave(size)/2+sizeNoise && m > s.drillMM {
				s.drill, s.drillMM = t, m
			}
		}
	}
	if size-s.drillMM > mostReam {
		return []string{fmt.Sprintf("reaming %s: no drill owned leaves %.2f for the reamer", s.Name, reamLeave(size))}
	}
	return nil
}

// tappingDrill chooses the drill for a thread, and holds that taps are owned and that a blind hole is deep enough for them (rule A-29).
func (c *Context) tappingDrill(s *spotted) (lacking []string) {
	t := s.Thread
	var owned []tables.Drill
	for _, tool := range c.tools(partspec.Drills) {
		for _, v := range tool.Sizes {
			if v >= s.Diameter.Low-sizeNoise && v <= s.Diameter.High+sizeNoise {
				owned = append(owned, tables.Drill{Name: v.String(), Diameter: v})
			}
		}
	}
	choice := thread.TappingDrill(t.Thread, owned, c.Part.Material, t.Length.Value)
	if !choice.Owned {
		lacking = append(lacking, fmt.Sprintf("%s: no drill owned between %.2f and %.2f, the core of %s; %s is the one to buy", s.Name, float64(s.Diameter.Low), float64(s.Diameter.High), t.Thread.Designation, choice.Drill.Diameter))
	} else {
		s.drill, s.drillMM, _ = c.sized(partspec.Drills, float64(choice.Drill.Diameter), float64(choice.Drill.Diameter))
	}
	if _, ok := c.taps(t.Thread); !ok || t.LeftHand {
		lacking = append(lacking, fmt.Sprintf("%s: no taps for %s are owned (tool \"taps\" { threads = [...] })", s.Name, t.Thread.Designation))
	}
	if s.Through {
		return lacking
	}
	if !c.Rules.Has("A-29") {
		return lacking
	}
	need, err := thread.BlindDepth(t.Thread, choice.Drill.Diameter, t.Length.Value, thread.LeadPlug, true)
	if err == nil && float64(s.Depth.Mid()) < float64(need.Depth)-sizeNoise {
		lacking = append(lacking, fmt.Sprintf("%s: %s drilled deep is too little for %s of full thread: a plug tap needs %s (rule A-29); drill it deeper, through, or tap less deep", s.Name, s.Depth.Mid().Text(c.unit()), t.Length.Value.Text(c.unit()), need.Depth.Text(c.unit())))
	}
	return lacking
}

func (c *Context) taps(t tables.Thread) (partspec.Tool, bool) {
	for _, tool := range c.tools(partspec.Taps) {
		if slices.Contains(tool.Threads, t.Designation) {
			return tool, true
		}
	}
	return partspec.Tool{}, false
}

// task begins a task of a pattern: circles of that diameter, that deep from the face it is drilled from.
func (c *Context) holesTask(s spotted, verb string, kind plan.Process, diameter, depth float64) Task {
	t := Task{Op: shape.Op{ID: s.ID() + "/" + verb, Feature: s.Name, Process: kind, Stage: shape.Roughing, Place: c.placeWithin(s.Holes), Zone: s.Within > 0 || s.Mate != nil, About: ringOff(s.Holes)}}
	t.Z0, t.Z1 = math.Inf(1), math.Inf(-1)
	cut := &shape.FlatCut{}
	for i, at := range s.Places {
		x, y := float64(at.X.Value), float64(at.Y.Value)
		t.Spots = append(t.Spots, shape.Spot{X: x, Y: y, Radius: diameter / 2})
		z0, z1 := s.columns[i].z0, s.columns[i].z1
		if depth > 0 {
			z0, z1 = ordered(s.columns[i].entry(s.From), s.columns[i].entry(s.From)+into(s.From)*depth)
		}
		t.Z0, t.Z1 = math.Min(t.Z0, z0), math.Max(t.Z1, z1)
		cut.Holes = append(cut.Holes, shape.Round{X: x, Y: y, Radius: diameter / 2, Z0: z0, Z1: z1})
	}
	if c.Part.Flat() && kind != plan.MarkOut && kind != plan.Tap {
		t.Flat = cut
	}
	if !s.Through {
		t.End = s.From
	}
	return t
}

func ordered(a, b float64) (low, high float64) { return math.Min(a, b), math.Max(a, b) }

// ringOff is how far the middle of a ring may lie off: its holes keep their limits from it.
func ringOff(f *partspec.Holes) float64 {
	if f.Circle == nil || f.Within > 0 || f.Mate != nil {
		return 0
	}
	return math.Min(float64(f.Circle.Centre.X.Width()), float64(f.Circle.Centre.Y.Width())) / 2
}

// placeWithin is how far the holes of a pattern may lie from their places: radially as written, else along either axis by the limits of the places. 0 = anywhere: a hole
// that a round part's rim is turned about is where the part's middle is.
func (c *Context) placeWithin(f *partspec.Holes) float64 {
	if f.Mate != nil {
		return float64(f.Mate.Room) // from the hole of the mate
	}
	if len(f.Places) == 1 && c.turnedAbout(f.Places[0]) {
		return 0
	}
	if f.Within > 0 {
		return float64(f.Within)
	}
	within := math.Inf(1)
	for _, at := range f.Places {
		within = math.Min(within, math.Min(float64(at.X.Width()), float64(at.Y.Width()))/2)
	}
	if math.IsInf(within, 1) {
		return 0
	}
	return within
}

// holeWays lists where the spindle can be brought to a pattern's places: over the table by dials, or at marks under either spindle. follows is set for tools that
// follow the hole that is there already.
func (c *Context) holeWays(s spotted, follows bool) []Way {
	var ways []Way
	off := c.markError()
	if s.Mate != nil {
		off = s.spots.apart
	}
	for _, e := range s.from {
		switch {
		case s.indexed(): // what the nearest holes are off is the holding's to say
			ways = append(ways, Way{Machine: partspec.Mill, Indexed: true, End: e, Off: wander(follows)})
			continue
		case !s.marked():
			ways = append(ways, Way{Machine: partspec.Mill, End: e, Off: c.placesOff(s) + wander(follows)})
			continue
		case e != s.From && !follows:
			continue // the marks are on the other face
		}
		for _, m := range []partspec.Machine{c.Drill, c.Mill} {
			if m.Kind != "" {
				ways = append(ways, Way{Machine: m.Kind, End: e, Marked: true, Off: off + wander(follows)})
			}
		}
	}
	return ways
}

// placesOff is how far the places of a pattern lie from the graduations of the table's dials at most: radially where they have a zone, else along either axis.
func (c *Context) placesOff(s spotted) float64 {
	x, _ := c.Mill.Dial("x")
	y, _ := c.Mill.Dial("y")
	off := 0.0
	for _, at := range s.Places {
		dx, dy := offGraduation(float64(at.X.Value), x), offGraduation(float64(at.Y.Value), y)
		if s.Within > 0 {
			off = math.Max(off, math.Hypot(dx, dy))
		} else {
			off = math.Max(off, math.Max(dx, dy))
		}
	}
	return off
}

func wander(follows bool) float64 {
	if follows {
		return 0
	}
	return float64(tables.PlaceError(tables.ByDrill))
}

// markError is how far a punch mark may lie from its place, radially.
func (c *Context) markError() float64 {
	for _, t := range c.tools(partspec.Scriber) {
		if t.Accuracy > 0 {
			return float64(t.Accuracy)
		}
	}
	return float64(tables.PlaceError(tables.ByPunch))
}
