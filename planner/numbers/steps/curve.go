package steps

import (
	"fmt"
	"math"
)

// Curve is the surface wanted, drawn in the plane of the two slides: a chain of lines and arcs in order of rising across.
// Across runs along one slide; depth runs along the other and is positive into the metal. The metal lies on the deep side.
// The chain has one depth for each across: no piece may run straight in.
type Curve struct {
	Segments    []Segment
	Left, Right Beyond // what the work is past the ends of the chain
}

// Segment is a Line or an Arc.
type Segment interface {
	piece() (graph, error)
}

// Line is a straight piece; FromAcrossMM must be less than ToAcrossMM.
type Line struct {
	FromAcrossMM, FromDepthMM float64
	ToAcrossMM, ToDepthMM     float64
}

// Arc is a circular piece between two places across. Its ends lie on the circle, at most a quarter turn from its top or bottom.
type Arc struct {
	CentreAcrossMM, CentreDepthMM float64
	RadiusMM                      float64
	FromAcrossMM, ToAcrossMM      float64
	Form                          Form
}

// Form says on which side of an arc the metal lies.
type Form int

const (
	Round  Form = iota + 1 // the metal bulges: the centre is in the metal
	Hollow                 // the metal is hollowed: the centre is in the air
)

func (f Form) String() string {
	switch f {
	case Round:
		return "round"
	case Hollow:
		return "hollow"
	}
	return fmt.Sprintf("Form(%d)", int(f))
}

// Beyond says what the cutter finds past an end of the curve.
type Beyond int

const (
	Air   Beyond = iota + 1 // nothing: the cutter may hang over the end and go deeper there
	Level                   // a finished face at the depth of the curve's end: it must not be cut
	Wall                    // a finished shoulder straight up from the end: the cutter stays on this side of it
)

func (b Beyond) String() string {
	switch b {
	case Air:
		return "air"
	case Level:
		return "level"
	case Wall:
		return "wall"
	}
	return fmt.Sprintf("Beyond(%d)", int(b))
}

const (
	// joinToleranceMM is the step allowed between the end of one piece and the start of the next: room for tangent points
	// worked out in floating point, far below any dial.
	joinToleranceMM = 1e-6
	// largestMM bounds every coordinate, so that nothing overflows and rounding errors stay far below tieMM.
	largestMM = 1e4
	// mostSlope bounds the slope of a line: a steeper one is a wall, or a slip.
	mostSlope = 1000
	// mostSegments bounds the length of a chain.
	mostSegments = 2000
)

func (l Line) piece() (graph, error) {
	if !inReach(l.FromAcrossMM, l.FromDepthMM, l.ToAcrossMM, l.ToDepthMM) {
		return graph{}, fmt.Errorf("a line needs four plain numbers within %g mm of the origin", largestMM)
	}
	if l.ToAcrossMM <= l.FromAcrossMM {
		return graph{}, fmt.Errorf("a line from %g to %g across does not go forward: give the pieces in order of rising across, none straight in",
			l.FromAcrossMM, l.ToAcrossMM)
	}
	slope := (l.FromDepthMM - l.ToDepthMM) / (l.ToAcrossMM - l.FromAcrossMM)
	if math.Abs(slope) > mostSlope {
		return graph{}, fmt.Errorf("a line with a slope of %.0f goes all but straight in: the most is %d; end the curve there, with a wall beyond", slope, mostSlope)
	}
	return graph{lo: l.FromAcrossMM, hi: l.ToAcrossMM, kind: straight, x: l.FromAcrossMM, y: -l.FromDepthMM, slope: slope, endY: -l.ToDepthMM}, nil
}

func (a Arc) piece() (graph, error) {
	if !inReach(a.CentreAcrossMM, a.CentreDepthMM, a.RadiusMM, a.FromAcrossMM, a.ToAcrossMM) || a.RadiusMM <= 0 {
		return graph{}, fmt.Errorf("an arc needs a radius above 0 and plain numbers within %g mm of the origin", largestMM)
	}
	if a.ToAcrossMM <= a.FromAcrossMM {
		return graph{}, fmt.Errorf("an arc from %g to %g across does not go forward: give the pieces in order of rising across", a.FromAcrossMM, a.ToAcrossMM)
	}
	if math.Abs(a.FromAcrossMM-a.CentreAcrossMM) > a.RadiusMM || math.Abs(a.ToAcrossMM-a.CentreAcrossMM) > a.RadiusMM {
		return graph{}, fmt.Errorf("an arc of radius %g about %g across does not reach from %g to %g", a.RadiusMM, a.CentreAcrossMM, a.FromAcrossMM, a.ToAcrossMM)
	}
	g := graph{lo: a.FromAcrossMM, hi: a.ToAcrossMM, x: a.CentreAcrossMM, y: -a.CentreDepthMM, radius: a.RadiusMM}
	switch a.Form {
	case Round:
		g.kind = upper
	case Hollow:
		g.kind = lower
	default:
		return graph{}, fmt.Errorf("an arc must be round or hollow, not %v", a.Form)
	}
	return g, nil
}

func inReach(numbers ...float64) bool {
	for _, v := range numbers {
		if math.IsNaN(v) || math.Abs(v) > largestMM {
			return false
		}
	}
	return true
}

// surface is a checked curve as heights (height = -depth), with the level faces beyond it added to its pieces.
type surface struct {
	pieces      []graph // in order of across
	lo, hi      float64 // ends of the curve proper
	first, last graph   // its end pieces
	left, right Beyond
}

func newSurface(c Curve, cutterWidthMM float64) (surface, error) {
	if len(c.Segments) == 0 {
		return surface{}, fmt.Errorf("the curve has no pieces: give at least one line or arc")
	}
	if len(c.Segments) > mostSegments {
		return surface{}, fmt.Errorf("the curve has %d pieces; the most is %d", len(c.Segments), mostSegments)
	}
	s := surface{left: c.Left, right: c.Right}
	for n, seg := range c.Segments {
		if seg == nil {
			return surface{}, fmt.Errorf("piece %d of the curve is missing", n+1)
		}
		g, err := seg.piece()
		if err != nil {
			return surface{}, fmt.Errorf("piece %d of the curve: %w", n+1, err)
		}
		if n > 0 {
			if err := joins(s.pieces[n-1], g); err != nil {
				return surface{}, fmt.Errorf("pieces %d and %d of the curve: %w", n, n+1, err)
			}
		}
		s.pieces = append(s.pieces, g)
	}
	s.first, s.last = s.pieces[0], s.pieces[len(s.pieces)-1]
	s.lo, s.hi = s.first.lo, s.last.hi
	return s.withFaces(cutterWidthMM)
}

func joins(before, after graph) error {
	dx, dy := after.lo-before.hi, after.at(after.lo)-before.at(before.hi)
	if math.Abs(dx) > 0 {
		return fmt.Errorf("the first ends at %g across and the next starts at %g: make them the same number", before.hi, after.lo)
	}
	if math.Abs(dy) > joinToleranceMM {
		return fmt.Errorf("the first ends at depth %.6f and the next starts at %.6f: a chain must join within %g mm",
			-before.at(before.hi), -after.at(after.lo), joinToleranceMM)
	}
	return nil
}

// withFaces adds the level faces, long enough that no cutter that touches the curve reaches past them.
func (s surface) withFaces(cutterWidthMM float64) (surface, error) {
	for _, b := range []Beyond{s.left, s.right} {
		if b < Air || b > Wall {
			return s, fmt.Errorf("the curve must say what lies beyond each end: air, level or wall, not %v", b)
		}
	}
	reach := 2*cutterWidthMM + 1
	if s.left == Level {
		y := level(s.first, s.lo)
		s.pieces = append([]graph{{lo: s.lo - reach, hi: s.lo, kind: straight, x: s.lo - reach, y: y, endY: y}}, s.pieces...)
	}
	if s.right == Level {
		y := level(s.last, s.hi)
		s.pieces = append(s.pieces, graph{lo: s.hi, hi: s.hi + reach, kind: straight, x: s.hi, y: y, endY: y})
	}
	return s, nil
}

// level is the height of a face beside the end of a piece, as a decimal of no more places than matter: the noise of working it out would keep a cut off the face that it
// just touches.
func level(end graph, x float64) float64 { return math.Round(end.at(x)*placesPerMM) / placesPerMM }

// placesPerMM is how finely a height that is worked out is told: by what counts as one place, tieMM.
const placesPerMM = 1e9

// own returns the pieces of the curve proper, without the faces.
func (s surface) own() []graph {
	own := s.pieces
	if s.left == Level {
		own = own[1:]
	}
	if s.right == Level {
		own = own[:len(own)-1]
	}
	return own
}

// corner is an end of a piece, with the rounding error of its height.
type corner struct {
	point
	doubt float64
}

// corners returns the ends of all pieces.
func (s surface) corners() []corner {
	scale := s.scale()
	var out []corner
	for _, g := range s.pieces {
		for _, x := range []float64{g.lo, g.hi} {
			h := g.heightSpan(x, scale)
			c := corner{point{x, g.at(x)}, h.hi - h.lo}
			if n := len(out); n == 0 || out[n-1] != c {
				out = append(out, c)
			}
		}
	}
	return out
}

// scale is no less than any length in the surface.
func (s surface) scale() float64 {
	scale := 0.0
	for _, g := range s.pieces {
		top := max(math.Abs(g.at(g.lo)), math.Abs(g.at(g.hi)))
		scale = max(scale, math.Abs(g.lo)+math.Abs(g.hi)+math.Abs(g.x)+math.Abs(g.y)+g.radius+top)
	}
	return scale
}
