package holding

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
)

// flatFacts are what a case of a flat part has at every moment.
func (s Shop) flatFacts(m Mount, task int, way process.Way, light float64) rules.Case {
	t := s.Tasks[task]
	c := rules.Case{Holding: m.Holding, Surface: m.Surface, Op: t.Op, Flat: true, Diameter: 2 * m.Radius, Length: m.Z1 - m.Z0, Elsewhere: s.elsewhere(m, t)}
	if t.Process != plan.Drill && t.Process != plan.Ream && t.Process != plan.SawHole {
		c.PassDepth = math.Min(way.Rate.DepthMM*light, max(t.Depth, way.DeepMM))
	}
	c.PlaceOff, c.PlaceAllow = placeOff(m, t, way, s.middleOff(t)+s.carriedOff(m, t))
	if m.Holding.Kind == partspec.TableClamps || m.Holding.Kind == partspec.Faceplate || m.Holding.Kind == partspec.FourJaw {
		_, c.Cuts = s.worked(t, way)
	}
	if m.Machine != "" && m.Machine != partspec.Bench {
		c.Cuts = c.Cuts || !s.spares(m, t)
	}
	c.Slide = s.slideFacts(m, t, way, c.PassDepth)
	if m.Machine == "" {
		s.latheFacts(&c, m, t, way, light)
	}
	s.tooHeavy(&c, m, task, way, light)
	return c
}

// placeOff is how far what a task makes beside the axis may land from its place, and how far it may: of a ring each hole from the ring's middle, which the
// tool alone decides, or all of them together, which the finding of the work moves as well. No place, no figures.
func placeOff(m Mount, t process.Task, way process.Way, together float64) (off, allow float64) {
	if t.Place == 0 {
		return 0, 0
	}
	if !way.Marked {
		together += m.finding(t.Zone)
	}
	if own := way.Off + m.Turning; t.About > 0 && (way.Marked || own > t.Place) {
		return own, t.Place
	}
	return way.Off + together, t.Place + t.About
}

// finding is how far the work may lie from where the dials have it: radially for a zone, else along either axis.
func (m Mount) finding(zone bool) float64 {
	if zone || m.Along == 0 {
		return m.Locate
	}
	return m.Along
}

// facesJaws is the cosine of the angle, to the way the jaws press, within which an edge faces them: 45 degrees.
const facesJaws = math.Sqrt2 / 2

// tooHeavy puts a cut that clamps or a vice could not hold on the blank among the facts: no moment makes it lighter, but lighter passes do.
func (s Shop) tooHeavy(c *rules.Case, m Mount, task int, way process.Way, light float64) {
	at := moment{flat: s.flatBody(none), done: none, tasks: []int{task}, ways: []process.Way{way}, light: light}
	switch m.Holding.Kind {
	case partspec.Vice:
		if g := s.grips(m, at); g.Why == "" && g.NeedN > g.HaveN {
			c.Vice = &rules.ViceFacts{Grip: g.Thick, Thick: g.Thick, Opening: g.Opening, NeedN: g.NeedN, HaveN: g.HaveN}
		}
	case partspec.TableClamps, partspec.Faceplate:
		if l := s.clampsFor(m, at); l.Why == "" && l.NeedN > l.HaveN {
			c.Clamped = &rules.Clamped{Owned: l.Owned, Placed: l.Placed, NeedN: l.NeedN, HaveN: l.HaveN}
		}
	case partspec.AnglePlate:
		c.Ledge = s.ledgeTooHeavy(m, at)
	}
}

// middleOff is how far the bore that a disc's coordinates begin at may lie beside the place that its other holes are counted from: what its own drill wandered.
func (s Shop) middleOff(t process.Task) float64 {
	if len(s.Part.Outline.Datum) > 0 {
		return 0
	}
	off := 0.0
	for _, b := range s.bores() {
		if t.Feature == b.Name || math.Hypot(b.x, b.y) > sameSpot {
			continue
		}
		for _, o := range s.Tasks {
			for _, w := range o.Ways {
				if o.Feature == b.Name {
					off = math.Max(off, w.Off)
				}
			}
		}
	}
	return off
}

// carriedOff is how far the bore that a mount runs true about may lie from its own place, which an arc that is turned about it then has off as well.
func (s Shop) carriedOff(m Mount, t process.Task) float64 {
	if m.Machine != "" || m.By != ByBore || t.Flat == nil || len(t.Flat.Edges) == 0 || len(s.Part.Outline.Datum) == 0 {
		return 0
	}
	off := 0.0
	for _, o := range s.Tasks {
		for _, w := range o.Ways {
			found := s.atDatum()
			if mark := s.markFor(m); w.Machine == "" && mark >= 0 {
				found = s.markError(mark)
			}
			if o.Feature == m.About && len(o.Spots) > 0 {
				off = math.Max(off, w.Off+found)
			}
		}
	}
	return off
}

// elsewhere reports whether what a task cuts on a lathe does not lie about the place that a mount puts on the spindle's axis.
func (s Shop) elsewhere(m Mount, t process.Task) bool {
	if m.Machine != "" {
		return false
	}
	for _, p := range s.centresOf(t) {
		if math.Hypot(p.X-m.CentreX, p.Y-m.CentreY) > sameSpot {
			return true
		}
	}
	return false
}

// centresOf are the places that a task would turn about on a lathe.
func (s Shop) centresOf(t process.Task) []shape.Spot {
	list := append([]shape.Spot(nil), t.Spots...)
	if t.Flat != nil {
		for _, e := range t.Flat.Edges {
			if o := s.Flat.Drawn.Edges[e.Edge]; o.IsArc() {
				list = append(list, shape.Spot{X: o.CX, Y: o.CY, Radius: o.Radius})
			}
		}
	}
	return list
}

// flatMask is the tasks on which a verdict about a flat part depends: those that move its edges or faces, and those that open a hole wide enough to weaken it.
func (s Shop) flatMask(m Mount, task int) []int {
	if m.Machine == partspec.Bench {
		return nil
	}
	var mask []int
	for i, t := range s.Tasks {
		if i == task {
			continue
		}
		if m.By == ByMark && t.MakesSurface(centreMark(m.About)) || m.About != "" && t.MakesSurface(m.About) {
			mask = append(mask, i)
			continue
		}
		if t.Flat == nil {
			continue
		}
		if len(t.Flat.Edges) > 0 || t.Flat.Back != nil || t.Flat.Front != nil || len(t.Flat.Seats) > 0 || wide(t.Flat.Holes) || t.MakesSurface(m.Surface) {
			mask = append(mask, i)
		}
	}
	return mask
}

// flatMeasure fills in what the moment decides about a flat part.
func (s Shop) flatMeasure(m Mount, task int, way process.Way, light float64, facts rules.Case, done func(int) bool) Figures {
	f := Figures{Case: facts}
	if facts.Elsewhere || m.Machine == partspec.Bench {
		return f
	}
	at := moment{flat: s.flatBody(done), done: done, tasks: []int{task}, ways: []process.Way{way}, light: light}
	if len(at.flat.Seats) > 0 {
		f.Case.Gone, f.Case.Lost = true, "a seat has hollowed one of its faces; only the bench takes it now"
		return f
	}
	if m.Machine == "" && (s.lost(m, at) || m.Glue == GlueFace && s.seatRaw(m, at) || s.standsOut(s.Tasks[task], at)) {
		f.Case.Gone = true
		return f
	}
	if m.Machine == partspec.Mill && !way.Marked && s.nowhere(at) {
		f.Case.Gone = true
		return f
	}
	switch m.Holding.Kind {
	case partspec.Vice:
		s.viceFigures(&f, m, at)
	case partspec.TableClamps:
		l := s.clampsFor(m, at)
		f.Case.Clamped = &l.Clamped
	case partspec.Faceplate:
		p := s.plated(m, at)
		f.Case.Clamped, f.Case.Plate = &p.Clamped, &p.PlateFacts
	case partspec.AnglePlate:
		s.ledgeFigures(&f, m, at)
	case partspec.FourJaw:
		s.fourJawFigures(&f, m, at)
	case partspec.ThreeJaw, partspec.SoftJaws:
		s.discFigures(&f, m, at)
	case partspec.StubMandrel, partspec.PlainMandrel, partspec.ExpandingMandrel:
		f.Case.Wall = s.rim(at).Inside(m.CentreX, m.CentreY) - m.Radius
	}
	if f.Case.Capacity == "" && m.Machine == "" {
		f.Case.Capacity = s.swings(m, at)
	}
	return f
}

// nowhere reports whether nothing is there to set a table by: work without datum edges is found by the square edges of its blank, by a bore, or by its turned rim.
func (s Shop) nowhere(at moment) bool {
	if len(s.Part.Outline.Datum) > 0 {
		return false
	}
	turned := true
	for _, l := range at.flat.Left {
		if math.IsInf(l, 1) {
			return false
		}
		turned = turned && l <= sameSpot
	}
	for _, b := range s.bores() {
		if k := s.maker(b.Name); k >= 0 && at.done(k) && b.radius >= WideHole {
			return false
		}
	}
	return !turned || s.Part.Outline.Kind != "disc"
}

// fourJawFigures fills in what four jaws ask and do.
func (s Shop) fourJawFigures(f *Figures, m Mount, at moment) {
	g := s.jawed(m, at)
	c := &f.Case
	c.Jaws = &g.JawFacts
	c.FirmN, c.LightN = float64(m.Holding.GripFirm), float64(m.Holding.GripLight)
	if c.FirmN == 0 {
		c.FirmN, c.LightN = UsualFirm, UsualLight
	}
	c.LeastN = g.least
	f.pressed(g.squeeze)
}

// viceFigures fills in what a vice asks and does.
func (s Shop) viceFigures(f *Figures, m Mount, at moment) {
	g := s.grips(m, at)
	c := &f.Case
	c.Vice = &g.ViceFacts
	c.LeastN, c.LightN, c.FirmN = g.NeedN, viceLightN, g.HaveN
	if g.Why == "" {
		f.pressed(s.squeezed(at, pressing{jaws: 2, widthMM: g.jawWidth(), alongX: m.PressDeg == 0, alongY: m.PressDeg != 0}, math.Min(math.Max(g.NeedN, viceLightN), g.HaveN)))
	}
}

// pressed notes what a grip does to the bores that are finished in it; the forces are noted in the case already.
func (f *Figures) pressed(q squeeze) {
	c := &f.Case
	c.LobeMM, c.LimitMM, c.Trust, c.WebMM, c.WasteMM, c.Wall = q.lobe, q.limit, string(q.sure.Trust), q.web, q.waste, q.web
	f.LeastN, f.MostN, f.WorkingN = c.LeastN, q.most, math.Min(math.Max(c.LeastN, c.LightN), c.FirmN)
	f.LobeMM, f.LimitMM, f.Trust, f.StressMPa, f.Wall, f.Sure = q.lobe, q.limit, string(q.sure.Trust), q.stress, q.web, q.sure
}
