package partspec

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// Mating is the pattern of another part that holes are spotted through, and what holds the two parts true to each other meanwhile: a fit, or their datum edges.
type Mating struct {
	Diameter Size         // of the other part's holes
	Spread   units.Length // how far those may lie from their places, radially
	Fit      string       // name of the fit that registers the two; empty where edges do
	Register string       // feature of this part that belongs to it
	Flush    *Flush       // how the edges lie on each other; nil where a fit registers the two
	Slack    units.Length // how far the two parts may lie off each other, radially: of a fit half of the largest hole less the smallest shaft, of edges at the farthest hole
	Room     units.Length // how far a hole may lie from the other part's, radially, and its screw still passes: half of what the smallest holes are wider
}

// resolveMatch keeps what a pattern is spotted through; an error where nothing can be spotted, or nothing brings the two parts true to each other.
func (c *checker) resolveMatch(job *Job, e *entry, part string, f, mate *Holes) {
	if c.unmatchable(e, f, mate) {
		return
	}
	if slices.ContainsFunc(job.Part(part).Relations, func(r Relation) bool { return r.Of.Feature == f.Name || r.To.Feature == f.Name }) {
		c.fail(e, e.at("match"), fmt.Sprintf("%s has both a match and a relation", e.title()), "Holes that are spotted through are true to those of %s alone: leave one of the two out.", f.Match)
		return
	}
	m := &Mating{Diameter: mate.Diameter, Spread: mate.spread(), Room: f.screwRoom(mate)}
	register := c.byFit
	if e.has("register") {
		register = c.byEdges
	}
	if !register(job, e, part, f, mate, m) {
		return
	}
	if m.Room <= m.Shift() {
		c.fail(e, e.at("match"), fmt.Sprintf("The screw of %s finds no room in its match", e.title()),
			"It has %s to each side, and %s alone lets the parts shift by %s: write %s.", m.Room.Round(3), m.By(), m.Shift().Round(3), m.Closer(f.Match))
		return
	}
	f.Mate = m
}

// Shift is how much of the screws' room goes by what holds the two parts: a fit shifts one way when they are spotted and the other way when they are screwed together;
// edges are off when they are spotted, and nothing but the screws holds them afterwards, so that they can be brought quite flush.
func (m *Mating) Shift() units.Length {
	if m.Flush != nil {
		return m.Slack
	}
	return 2 * m.Slack
}

// By names what holds the two parts true to each other.
func (m *Mating) By() string {
	if m.Flush != nil {
		return "flush edges"
	}
	return "fit " + m.Fit
}

// Closer is what to write where the parts shift too far for the screws.
func (m *Mating) Closer(mate FeatureRef) string {
	if m.Flush != nil {
		return "wider holes in " + mate.String()
	}
	return fmt.Sprintf("a closer fit than %s, or wider holes in %s", m.Fit, mate)
}

// byFit registers two parts by a fit of theirs.
func (c *checker) byFit(job *Job, e *entry, part string, f, mate *Holes, m *Mating) bool {
	fit, here, ok := registerOf(job, part, f, mate)
	if !ok && slices.ContainsFunc(c.fits, func(fit *entry) bool { return fit.broken }) {
		return false // told there
	}
	if !ok {
		c.fail(e, e.at("match"), fmt.Sprintf("Nothing holds %s true to %s while it is spotted through", e.title(), f.Match),
			"Write a fit of a bore and a spigot of the two parts that both patterns lie alike about, on the faces that come together, like fit \"register\" { hole = \"flange.way\" shaft = \"cover.spigot\" class = \"H7/g6\" }; or of two flat parts register = \"edges\".")
		return false
	}
	m.Fit, m.Register, m.Slack = fit.Name, here, fit.slack(job)
	return true
}

// byEdges registers two flat parts by their datum edges.
func (c *checker) byEdges(job *Job, e *entry, part string, f, mate *Holes, m *Mating) bool {
	why := ""
	if m.Flush, m.Slack, why = flushOf(job.Part(part), job.Part(f.Match.Part), f, mate); why != "" {
		c.fail(e, e.at("register"), fmt.Sprintf("Flush edges do not hold %s true to %s", e.title(), f.Match),
			"As they are drawn, %s: write datum edges of both outlines from which the holes lie equally far, or a fit of a bore and a spigot.", why)
	}
	return why == ""
}

// unmatchable tells why nothing can be spotted through these holes, or into those.
func (c *checker) unmatchable(e *entry, f, mate *Holes) bool {
	at := e.at("match")
	switch {
	case mate.Match != (FeatureRef{}):
		c.fail(e, at, fmt.Sprintf("%s is spotted through %s, which is spotted through %s itself", e.title(), f.Match, mate.Match), "Name the pattern that has places of its own: match = part.%s.holes.%s.", mate.Match.Part, mate.Match.Feature)
	case f.Within > 0:
		c.fail(e, at, fmt.Sprintf("%s has both a match and a position", e.title()), "Holes that are spotted through lie where those of %s do: leave one of the two out.", f.Match)
	case f.Locate != "":
		c.fail(e, at, fmt.Sprintf("%s has both a match and a locate_by", e.title()), "Holes that are spotted through are found by those of %s: leave one of the two out.", f.Match)
	case mate.Thread != nil:
		c.fail(e, at, fmt.Sprintf("%s is spotted through tapped holes", e.title()), "A drill spoils their threads: drill the clearance holes first, and name them as the match of %s.", f.Match)
	case !mate.Through:
		c.fail(e, at, fmt.Sprintf("%s is spotted through blind holes", e.title()), "Let %s go through: leave out its depth.", f.Match)
	case f.Thread == nil && f.Screw == "":
		c.fail(e, at, fmt.Sprintf("%s is spotted through, and nothing says for which screw", e.title()), "Write thread = \"M4\" or clearance = \"M4\" instead; holes for dowels are drilled by places of their own.")
	default:
		return false
	}
	return true
}

// registerOf finds the fit that holds the two parts together as they are drawn, and the feature of this part in it.
func registerOf(job *Job, part string, f, mate *Holes) (fit Fit, here string, ok bool) {
	for _, fit := range job.Fits {
		own, other := fit.Hole, fit.Shaft
		if own.Part != part {
			own, other = other, own
		}
		if own.Part != part || other.Part != f.Match.Part {
			continue
		}
		if registers(f, job.Part(own.Part).Feature(own.Feature), mate, job.Part(other.Part).Feature(other.Feature)) {
			return fit, own.Feature, true
		}
	}
	return Fit{}, "", false
}

// registers reports whether two features that fit hold two patterns hole over hole: both lie alike about the fit's axis with the faces together that the features
// stand out of, or open at. Faces of the same name make the one pattern the mirror image of the other.
func registers(f *Holes, here Feature, mate *Holes, there Feature) bool {
	a, okA := axisAt(here)
	b, okB := axisAt(there)
	if !okA || !okB {
		return false
	}
	if face := contactAt(here, f); face != EndInvalid && face != f.From {
		return false
	}
	switch contactAt(there, mate) {
	case EndInvalid:
		return turnsOnto(a, f.Places, b, mate.Places, 1) || turnsOnto(a, f.Places, b, mate.Places, -1)
	case f.From:
		return turnsOnto(a, f.Places, b, mate.Places, -1)
	default:
		return turnsOnto(a, f.Places, b, mate.Places, 1)
	}
}

// contactAt is the face of a part that lies on the other one when a feature goes into its fit; EndInvalid where either may.
func contactAt(register Feature, holes *Holes) End {
	switch r := register.(type) {
	case *Bore:
		if !r.Through {
			return r.From
		}
	case *Spigot:
		right, left := r.Span.Right > holes.Span.Right+sameLength, r.Span.Left < holes.Span.Left-sameLength
		switch {
		case right && !left:
			return Right
		case left && !right:
			return Left
		}
	}
	return EndInvalid
}

// turnsOnto reports whether one pattern lies on the other once it is turned about its axis; with hand -1 once it is turned over as well.
func turnsOnto(a Point, from []Point, b Point, to []Point, hand float64) bool {
	x, y := offAxis(a, farthestFrom(a, from))
	for _, first := range to {
		u, v := offAxis(b, first)
		if math.Abs(math.Hypot(u, v)-math.Hypot(x, y)) > samePlaces {
			continue
		}
		turn := math.Atan2(v, u) - hand*math.Atan2(y, x)
		if !slices.ContainsFunc(from, func(p Point) bool { return !laidOn(a, p, b, to, turn, hand) }) {
			return true
		}
	}
	return false
}

// laidOn reports whether a hole lies on one of the others, turned by so many radians.
func laidOn(a, p, b Point, to []Point, turn, hand float64) bool {
	x, y := offAxis(a, p)
	r, at := math.Hypot(x, y), hand*math.Atan2(y, x)+turn
	return slices.ContainsFunc(to, func(q Point) bool {
		u, v := offAxis(b, q)
		return math.Hypot(r*math.Cos(at)-u, r*math.Sin(at)-v) <= samePlaces
	})
}

// farthestFrom is the place of a pattern that tells its turn about an axis most surely.
func farthestFrom(axis Point, places []Point) Point {
	return slices.MaxFunc(places, func(p, q Point) int { return cmp.Compare(apart(axis, p), apart(axis, q)) })
}

// samePlaces is how far two holes that are drawn alike may lie apart by rounding, in mm: each by what counts as the same length.
const samePlaces = 2 * float64(sameLength)

func offAxis(axis, p Point) (x, y float64) {
	return float64(p.X.Value - axis.X.Value), float64(p.Y.Value - axis.Y.Value)
}

// axisAt is where the axis of a bore or a spigot stands; not ok for anything else.
func axisAt(f Feature) (Point, bool) {
	switch f := f.(type) {
	case *Bore:
		if f.At != nil {
			return *f.At, true
		}
		return Point{}, true
	case *Spigot:
		return Point{}, true
	}
	return Point{}, false
}

// slack is how far the axes of a fit's two sides may lie apart.
func (f Fit) slack(job *Job) units.Length {
	hole, _ := job.Part(f.Hole.Part).Feature(f.Hole.Feature).(*Bore)
	shaft, _ := job.Part(f.Shaft.Part).Feature(f.Shaft.Feature).(*Spigot)
	return max(0, hole.Diameter.High-shaft.Diameter.Low) / 2
}

// spread is how far the holes of a pattern may lie from their places, radially.
func (f *Holes) spread() units.Length {
	if f.Within > 0 {
		return f.Within
	}
	most := 0.0
	for _, at := range f.Places {
		most = math.Max(most, math.Hypot(float64(at.X.Width()), float64(at.Y.Width()))/2)
	}
	return units.Length(most)
}

// screwRoom is how far the holes of two patterns may lie apart, radially, so that the screw of this one passes both.
func (f *Holes) screwRoom(mate *Holes) units.Length {
	if f.Thread != nil {
		return (mate.Diameter.Low - f.Thread.Thread.Major) / 2
	}
	screw, err := tables.FindThread(f.Screw)
	if err != nil {
		return 0
	}
	return (mate.Diameter.Low - screw.Major + f.Diameter.Low - screw.Major) / 2
}
