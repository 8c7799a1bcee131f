package holding

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/process"
	"catchplate/planner/shape"
	"catchplate/planner/tables"
)

// A centre is a place of a flat part that something is turned about.
type centre struct {
	name string
	x, y float64
}

// centres lists the places that tasks turn about on the lathe, in the order of the tasks.
func (s Shop) centres() []centre {
	var list []centre
	for _, t := range s.Tasks {
		if !onLathe(t) {
			continue
		}
		spots := s.centresOf(t)
		if !oneSpot(spots) {
			continue
		}
		c := centre{t.Feature, spots[0].X, spots[0].Y}
		if c.known(list) < 0 {
			list = append(list, c)
		}
	}
	for i, c := range list { // a place with a bore is named after it
		for _, b := range s.bores() {
			if math.Hypot(b.x-c.x, b.y-c.y) <= sameSpot {
				list[i].name = b.Name
			}
		}
	}
	return list
}

// oneSpot reports whether all of some spots lie about one place.
func oneSpot(spots []shape.Spot) bool {
	for _, p := range spots {
		if math.Hypot(p.X-spots[0].X, p.Y-spots[0].Y) > sameSpot {
			return false
		}
	}
	return len(spots) > 0
}

func onLathe(t process.Task) bool {
	for _, w := range t.Ways {
		if w.Machine == "" {
			return true
		}
	}
	return false
}

func (c centre) known(list []centre) int {
	for i, o := range list {
		if math.Hypot(o.x-c.x, o.y-c.y) <= sameSpot {
			return i
		}
	}
	return -1
}

// A flatBore is a through bore of a flat part.
type flatBore struct {
	*partspec.Bore
	x, y, radius float64
}

func (s Shop) bores() []flatBore {
	var list []flatBore
	for _, f := range s.Part.Features {
		if b, ok := f.(*partspec.Bore); ok && b.At != nil {
			list = append(list, flatBore{b, float64(b.At.X.Mid()), float64(b.At.Y.Mid()), float64(b.Diameter.Mid()) / 2})
		}
	}
	return list
}

// found lists a lathe mount once for each way that its place can be found, with the error and the time that each takes.
func (s Shop) found(m Mount) []Mount {
	var list []Mount
	add := func(by Finding, off, minutes float64) {
		m := m
		m.By, m.Locate, m.Minutes = by, off, m.Minutes+minutes
		list = append(list, m)
	}
	if mark := s.markFor(m); mark >= 0 {
		add(ByMark, s.markError(mark), markMinutes)
	}
	if s.maker(m.About) >= 0 {
		add(ByBore, s.centreError(), boreMinutes)
	}
	if len(s.Part.Outline.Datum) == 0 {
		return list // a disc has none
	}
	add(ByEdges, math.Sqrt2*float64(tables.PlaceError(tables.ByTool)), edgesMinutes)
	return list
}

// Minutes to bring a place to run true: with a centre finder in the mark, with the indicator in the bore, by setting edges off the spindle's axis. Ours, no source.
const (
	markMinutes  = 4.0
	boreMinutes  = 4.0
	edgesMinutes = 12.0
)

// markFor is the task that marks the place that a mount turns about, or -1.
func (s Shop) markFor(m Mount) int { return s.maker(centreMark(m.About)) }

// centreMark names the mark by which a bore's centre is found on the lathe.
func centreMark(feature string) string { return feature + ".centre" }

// markError is how far a place that is set by its mark may lie off: what the mark lies off, and what setting it leaves.
func (s Shop) markError(mark int) float64 {
	t := s.Tasks[mark]
	if t.Process == plan.MarkOut {
		for _, tool := range s.Shop.Tools {
			if tool.Kind == partspec.Scriber && tool.Accuracy > 0 {
				return float64(tool.Accuracy) + s.centreError()
			}
		}
		return float64(tables.PlaceError(tables.ByPunch)) + s.centreError()
	}
	off := 0.0
	for _, w := range t.Ways {
		off = math.Max(off, w.Off)
	}
	return off + s.atDatum() + s.centreError()
}

// maker is the task that brings a surface to size, or -1.
func (s Shop) maker(surface string) int {
	for i, t := range s.Tasks {
		if surface != "" && t.MakesSurface(surface) {
			return i
		}
	}
	return -1
}

// lost reports whether the place of a lathe mount cannot be found as it says at a moment: the mark is not there, the bore is not made, the edges that
// places are measured from are not at size.
func (s Shop) lost(m Mount, at moment) bool {
	switch m.By {
	case ByMark:
		return !at.done(s.markFor(m))
	case ByBore:
		return !at.done(s.maker(m.About))
	case ByEdges:
		return !s.datumReady(at)
	}
	return false
}

// datumReady reports whether the datum edges are at their places.
func (s Shop) datumReady(at moment) bool {
	for _, name := range s.Part.Outline.Datum {
		for i, e := range s.Part.Outline.Edges {
			if e.Name == name && at.flat.Left[i] > sameSpot {
				return false
			}
		}
	}
	return true
}

// seatRaw reports whether the face that is held is not yet at size.
func (s Shop) seatRaw(m Mount, at moment) bool {
	if m.Free == partspec.Right {
		return at.flat.Back < -sameSpot
	}
	return at.flat.Front > s.Length+sameSpot
}

// standsOut reports whether a tool that turns an arc would meet metal elsewhere on the rim: what lies beyond the arc's radius and is not taken by the same cut.
func (s Shop) standsOut(t process.Task, at moment) bool {
	if t.Flat == nil || len(t.Flat.Edges) == 0 {
		return false
	}
	cut := map[int]bool{}
	for _, e := range t.Flat.Edges {
		cut[e.Edge] = true
	}
	first := t.Flat.Edges[0]
	arc := s.Flat.Drawn.Edges[first.Edge]
	for i, e := range s.Flat.Drawn.Edges {
		if !cut[i] && reaches(e, arc.CX, arc.CY)+at.flat.Left[i] > arc.Radius+first.Left+sameSpot {
			return true
		}
	}
	return false
}

// reaches is how far an edge gets from a place.
func reaches(e plane.Edge, x, y float64) float64 {
	far := math.Max(math.Hypot(e.X0-x, e.Y0-y), math.Hypot(e.X1-x, e.Y1-y))
	if e.IsArc() {
		far = math.Max(far, math.Hypot(e.CX-x, e.CY-y)+e.Radius)
	}
	return far
}

// swing is how far the rim gets from a place.
func swing(rim plane.Region, x, y float64) float64 {
	far := 0.0
	for _, e := range rim.Edges {
		far = math.Max(far, reaches(e, x, y))
	}
	return far
}

// interrupted reports whether a cut meets gaps: it is the first to turn an edge that was sawn.
func (s Shop) interrupted(t process.Task) bool {
	if t.Flat == nil || len(t.Flat.Edges) == 0 {
		return false
	}
	for _, o := range s.Tasks {
		if o.Process == plan.TurnRough && o.Feature == t.Feature {
			return t.ID == o.ID
		}
	}
	return true
}

// interruptedSafety goes in place of the usual factor where a cut meets gaps (rule B-42).
const interruptedSafety = 4.0
