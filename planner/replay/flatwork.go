package replay

import (
	"math"
	"sort"

	"catchplate/planner/plane"
	"catchplate/planner/solid"
)

// flatWork is flat work at some moment: the stock between two heights, less all that has been taken.
type flatWork struct {
	stock       plane.Set
	back, front float64
	taken       []taken
	ends        *[2]float64 // its faces, as long as nothing that moves them is taken
}

// taken is what one movement, or work by hand, took away: a figure of the plane from one height to another.
type taken struct {
	swath
	z0, z1 float64
	off    float64 // how far its place may lie from where it is given, radially
	less   float64 // how much less that is along either axis
	shared float64 // of it, what all that was made in its setting shares
	over   float64 // how much wider than told it may have come out, on radius
	key    cutKey
	centre bool    // a round hole or a mark of one, about one place
	mark   bool    // a centre drill's
	mouth  bool    // a cone that only widens the mouth of the hole that is there
	led    *cutKey // the hole that its tool followed
}

// swath is a figure of the plane that may differ from height to height, and may be grown.
type swath interface {
	// at is the figure at a height, grown by so much (less than 0: shrunk).
	at(z, by float64) plane.Set
}

// swept is the path of a tool that stands upright: its radius from the end of the cone on, less in the cone.
type swept struct {
	path plane.Capsule
	tip  float64 // height of the tool's point
	cone float64 // from the point to the full radius, with its sign: the direction to the spindle
	ball bool
	// datum is the outward direction of the datum edge that the path makes: whatever its error, that edge lies where coordinates begin.
	datum  *[2]float64
	beside float64 // how far the dials had it off that place
}

func (s swept) at(z, by float64) plane.Set {
	c := s.capsule(z).Grown(by)
	if n := s.datum; n != nil {
		c.X0, c.Y0, c.X1, c.Y1 = c.X0+by*n[0], c.Y0+by*n[1], c.X1+by*n[0], c.Y1+by*n[1]
	}
	return c
}

func (s swept) capsule(z float64) plane.Capsule {
	c := s.path
	if s.cone == 0 {
		return c
	}
	in := (z - s.tip) / s.cone
	switch {
	case in <= 0:
		c.Radius = 0
	case in < 1 && s.ball:
		c.Radius *= math.Sqrt(1 - (1-in)*(1-in))
	case in < 1:
		c.Radius *= in
	}
	return c
}

// turned is what a lathe takes about a place: inside a curve, or all outside one.
type turned struct {
	x, y    float64
	curve   solid.Curve
	outside bool
}

func (t turned) at(z, by float64) plane.Set {
	r := t.radius(z)
	if t.outside {
		return plane.Around(plane.Round(t.x, t.y, math.Max(0, r-by)))
	}
	return plane.Round(t.x, t.y, r+by)
}

// radius is the curve's at a height: 0 where a hole does not reach, without end where nothing is turned off.
func (t turned) radius(z float64) float64 {
	left, right := t.curve.At(z)
	switch {
	case !math.IsNaN(left):
		return left
	case !math.IsNaN(right):
		return right
	case t.outside:
		return solid.Far
	}
	return 0
}

// trimmed is what saw and file take outside an outline.
type trimmed struct {
	outline plane.Region
	moved   []float64 // each of its edges, outward
	sure    []float64 // within how much, either way
}

func (t trimmed) at(_, by float64) plane.Set {
	moved := make([]float64, len(t.moved))
	for i, m := range t.moved {
		moved[i] = m - by*t.sure[i]
	}
	r, err := t.outline.Moved(moved)
	if err != nil {
		return plane.Round(0, 0, 0)
	}
	return plane.Around(r.Figure())
}

// levels are the heights between which the work is the same all along, as far as cones allow, from the back up.
func (w flatWork) levels() []float64 {
	all := []float64{w.back, w.front}
	add := func(z float64) {
		if z > w.back+same && z < w.front-same {
			all = append(all, z)
		}
	}
	for _, t := range w.taken {
		add(t.z0)
		add(t.z1)
		switch f := t.swath.(type) {
		case swept:
			add(f.tip + f.cone)
		case turned:
			for _, p := range f.curve.Pieces() {
				add(p.Z0)
				add(p.Z1)
			}
		}
	}
	sort.Float64s(all)
	kept := all[:1]
	for _, z := range all[1:] {
		if z-kept[len(kept)-1] > same {
			kept = append(kept, z)
		}
	}
	return kept
}

// gone are the figures taken at a height. Of holes about one place only the widest counts.
func (w flatWork) gone(z float64) []plane.Set {
	var sets []plane.Set
	widest := map[[2]float64]float64{}
	for _, t := range w.taken {
		if t.z0 >= z || z >= t.z1 {
			continue
		}
		if !t.centre {
			sets = append(sets, t.at(z, 0))
			continue
		}
		if x, y, r := t.centred(z); r > widest[[2]float64{x, y}] {
			widest[[2]float64{x, y}] = r
		}
	}
	for _, t := range w.taken {
		x, y, r := t.centred(z)
		at := [2]float64{x, y}
		if t.centre && t.z0 < z && z < t.z1 && r > 0 && r == widest[at] {
			sets = append(sets, plane.Round(x, y, r))
			delete(widest, at)
		}
	}
	return sets
}

// rim is the work's outline at a height, holes too, with the metal on the left.
func (w flatWork) rim(z float64) []plane.Edge {
	if z <= w.back || z >= w.front {
		return nil
	}
	return plane.Common([]plane.Set{w.stock}, w.gone(z))
}

// outer is the outline at a height without its holes.
func (w flatWork) outer(z float64) []plane.Edge {
	var sets []plane.Set
	for _, t := range w.taken {
		if !t.centre && t.z0 < z && z < t.z1 {
			sets = append(sets, t.at(z, 0))
		}
	}
	return plane.Common([]plane.Set{w.stock}, sets)
}

// solidAt reports whether there is metal all over a figure at a height.
func (w flatWork) solidAt(s plane.Set, z float64) bool {
	if z <= w.back || z >= w.front || plane.Meet(s, plane.Around(w.stock)) {
		return false
	}
	for _, g := range w.gone(z) {
		if plane.Meet(s, g) {
			return false
		}
	}
	return true
}

// faces are the heights at which metal ends, and whether there is any.
func (w *flatWork) faces() (back, front float64, ok bool) {
	if w.ends == nil {
		w.ends = &[2]float64{math.NaN(), math.NaN()}
		levels := w.levels()
		n := len(levels)
		for i := 1; i < n && math.IsNaN(w.ends[0]); i++ {
			if w.metalAt((levels[i-1] + levels[i]) / 2) {
				w.ends[0] = levels[i-1]
			}
		}
		for i := n - 1; i > 0 && math.IsNaN(w.ends[1]); i-- {
			if w.metalAt((levels[i-1] + levels[i]) / 2) {
				w.ends[1] = levels[i]
			}
		}
	}
	return w.ends[0], w.ends[1], !math.IsNaN(w.ends[0])
}

// metalAt reports whether there is any metal at a height. Holes alone never take all of it.
func (w *flatWork) metalAt(z float64) bool { return len(w.outer(z)) > 0 }

// meets reports whether a figure takes metal anywhere in its heights.
func (w flatWork) meets(t taken) bool {
	levels := w.levels()
	for i := 1; i < len(levels); i++ {
		lo, hi := math.Max(levels[i-1], t.z0), math.Min(levels[i], t.z1)
		if hi-lo <= same {
			continue
		}
		for _, z := range []float64{(lo + hi) / 2, hi - (hi-lo)/nearEnd, lo + (hi-lo)/nearEnd} { // a cone or a ball may touch metal at one end of the heights only
			if len(plane.Common([]plane.Set{w.stock, t.at(z, 0)}, w.gone(z))) > 0 {
				return true
			}
		}
	}
	return false
}

// nearEnd is how small a part of the heights between two levels is looked at close to each of them.
const nearEnd = 1000

// centred is the place and the radius at a height of a round that was taken.
func (t taken) centred(z float64) (x, y, r float64) {
	switch f := t.swath.(type) {
	case swept:
		return f.path.X0, f.path.Y0, f.capsule(z).Radius
	case turned:
		return f.x, f.y, f.radius(z)
	}
	return math.NaN(), math.NaN(), 0
}

// leader is the cut that put a hole where it is: its own, or that of the hole that its tool followed.
func (t taken) leader() cutKey {
	if t.led != nil {
		return *t.led
	}
	return t.key
}
