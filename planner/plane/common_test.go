package plane

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
)

func area(pieces []Edge) float64 { return Region{pieces}.Area() }

func TestCommonOfPlainFigures(t *testing.T) {
	square := Rectangle(0, 0, 10, 10).Figure()
	for name, c := range map[string]struct {
		in, out []Set
		want    float64
	}{
		"one":                      {[]Set{square}, nil, 100},
		"overlap":                  {[]Set{square, Rectangle(6, 4, 20, 20).Figure()}, nil, 24},
		"apart":                    {[]Set{square, Rectangle(11, 0, 20, 20).Figure()}, nil, 0},
		"touching":                 {[]Set{square, Rectangle(10, 0, 20, 10).Figure()}, nil, 0},
		"without a corner":         {[]Set{square}, []Set{Rectangle(6, 4, 20, 20).Figure()}, 76},
		"without a disc":           {[]Set{square}, []Set{Round(5, 5, 2)}, 100 - 4*math.Pi},
		"without more than all":    {[]Set{square}, []Set{Round(5, 5, 8)}, 0},
		"covered by two halves":    {[]Set{square}, []Set{Rectangle(-1, -1, 5, 11).Figure(), Rectangle(5, -1, 11, 11).Figure()}, 0},
		"a strip between two":      {[]Set{square}, []Set{Rectangle(-1, -1, 5, 11).Figure(), Rectangle(5.001, -1, 11, 11).Figure()}, 0.01},
		"outside another":          {[]Set{square, Around(Rectangle(2, 2, 12, 12).Figure())}, nil, 36},
		"a slot through":           {[]Set{square}, []Set{Capsule{-5, 5, 15, 5, 1}}, 80},
		"a blind slot":             {[]Set{square}, []Set{Capsule{-5, 5, 5, 5, 1}}, 100 - 10 - math.Pi/2},
		"two like paths":           {[]Set{square}, []Set{Capsule{-5, 5, 5, 5, 1}, Capsule{0, 5, 15, 5, 1}}, 80},
		"a path along the edge":    {[]Set{square}, []Set{Capsule{-5, -1, 15, -1, 1}}, 100},
		"edges milled all round":   {[]Set{Rectangle(-1, -1, 11, 11).Figure(), Around(square)}, around10(3), 0},
		"edges milled too shortly": {[]Set{Rectangle(-1, -1, 11, 11).Figure(), Around(square)}, around10(-1), 4 * (3 - math.Pi/2)},
		"a half disc":              {[]Set{Round(0, 0, 2), Rectangle(0, -5, 5, 5).Figure()}, nil, 2 * math.Pi},
		"a lens":                   {[]Set{Round(0, 0, 1), Round(1, 0, 1)}, nil, 2*math.Pi/3 - math.Sqrt(3)/2},
	} {
		t.Run(name, func(t *testing.T) {
			got := Common(c.in, c.out)
			assert.InDelta(t, c.want, area(got), 1e-9)
			assert.Equal(t, c.want == 0, len(got) == 0, "%v", got)
		})
	}
}

// around10 are four paths of a cutter of radius 1 along the edges of a square of 10, running so far over its corners.
func around10(over float64) []Set {
	return []Set{
		Capsule{-over, -1, 10 + over, -1, 1}, Capsule{-over, 11, 10 + over, 11, 1},
		Capsule{-1, -over, -1, 10 + over, 1}, Capsule{11, -over, 11, 10 + over, 1},
	}
}

// What two sets share and what one has alone make up the one, wherever they lie.
func TestCommonAddsUp(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	whole := func(f func(float64) float64) Set {
		switch v := func() float64 { return f(r.Float64() * 10) }; r.Intn(3) {
		case 0:
			return Round(v(), v(), 1+v()/2)
		case 1:
			return Capsule{v(), v(), v(), v(), 1 + v()/4}
		default:
			x, y := v(), v()
			return Rectangle(x, y, x+1+v(), y+1+v()).Figure()
		}
	}
	for i := range 400 {
		f := func(x float64) float64 { return x }
		if i%2 == 0 {
			f = math.Round // edges that coincide
		}
		a, b, c := whole(f), whole(f), whole(f)
		want := area(Common([]Set{a}, []Set{c}))
		got := area(Common([]Set{a, b}, []Set{c})) + area(Common([]Set{a, Around(b)}, []Set{c}))
		assert.InDelta(t, want, got, 1e-3, "%v %v %v", a, b, c)
		assert.InDelta(t, area(Common([]Set{a, b}, nil)), area(Common([]Set{b, a}, nil)), 1e-9)
	}
}

// What runs where another has run already changes nothing, whichever comes first: the rim stays the same, piece by piece.
func TestCommonLeavesOutWhatIsTaken(t *testing.T) {
	plate := Rectangle(0, 0, 40, 30).Figure()
	pass := Capsule{X0: -8, Y0: 3, X1: 48, Y1: 3, Radius: 4}
	shorter, back, narrow := pass, Capsule{X0: 48, Y0: 3, X1: -8, Y1: 3, Radius: 4}, pass
	shorter.X1, narrow.Radius = 20, 3
	alone := Common([]Set{plate}, []Set{pass})
	assert.InDelta(t, 40*23, area(alone), 1e-9)
	for name, other := range map[string]Capsule{"the same": pass, "a shorter one": shorter, "the other way along": back, "a narrower one": narrow} {
		assert.Equal(t, alone, Common([]Set{plate}, []Set{pass, other}), name)
		assert.InDelta(t, 40*23, area(Common([]Set{plate}, []Set{other, pass})), 1e-9, name)
	}
	beside := pass
	beside.Y0, beside.Y1 = 4, 4
	assert.InDelta(t, 40*22, area(Common([]Set{plate}, []Set{pass, beside})), 1e-9, "beside it, it takes more")
	askew := pass
	askew.Y1 = 4
	assert.Less(t, area(Common([]Set{plate}, []Set{pass, askew})), 40*23.0, "askew, it takes more")
}
