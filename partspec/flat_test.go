package partspec

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"catchplate/partspec/units"
)

// readPart reads one part whose text holds nothing to complain about.
func readPart(t require.TestingT, text string) *Part {
	job, _, found := Parse([]Source{{"part.hcl", []byte(text)}})
	require.Empty(t, found, text)
	return job.Parts[0]
}

// saddle is the flange of a curved base: Ø60, 14 thick with a register 2 high, seat of radius 57 on the left, six holes on Ø46 from the right.
func saddle(start string, holes string) string {
	return `part "saddle" {
  material = "gunmetal"
  length   = 16
  stock "bar" { diameter = 65 }
  flange "base" {
    diameter = 60
    length   = 14
  }
  spigot "register" { diameter = 34 }
  bore "way" { diameter = "24 H9" }
  holes "ring" {
    circle = 46
    count  = 6
    start  = ` + start + `
    thread = "M4"
    from   = "right"
    ` + holes + `
  }
  seat "pipe" {
    on     = "left"
    radius = 57
  }
}
`
}

// The sagitta of 60 over radius 57, and the metal left at each hole, as a worked plan of a toolroom has them.
func TestSeatDepthAndMetalLeft(t *testing.T) {
	const worked = 0.05 // the plan gives tenths
	for _, c := range []struct {
		start string
		left  []float64
	}{{"90", []float64{10.3, 6.6, 6.6, 10.3, 6.6, 6.6}}, {"120", []float64{9.1, 5.5, 9.1, 9.1, 5.5, 9.1}}} {
		p := readPart(t, saddle(c.start, ""))
		seat, ring := p.Feature("pipe").(*Seat), p.Feature("ring").(*Holes)
		assert.InDelta(t, 8.53, float64(seat.Depth), 0.005)
		assert.InDelta(t, 57-math.Sqrt(57*57-30*30), float64(seat.Depth), 1e-6)
		assert.InDelta(t, 8.53-57, float64(seat.AxisZ), 0.005)
		assert.Equal(t, Span{0, 14}, ring.Span, "the holes enter at the shoulder")
		for i, want := range c.left {
			assert.InDelta(t, want, float64(seat.left(ring.Places[i], 0, ring.Span.Length())), worked, "hole %d at start %s", i+1, c.start)
		}
	}
}

// Round a hole the metal is thinnest on the side towards the crown: there a thread is shortest. For a hole 19.5 beside the pipe's axis, 2 in radius, it is
// 14 - (sqrt(57² - 17.5²) - sqrt(57² - 30²)) thick.
func TestMetalLeftAtTheShallowSide(t *testing.T) {
	seat := &Seat{Radius: Size{Dimension: units.Dimension{Value: 57}}, Depth: units.Length(57 - math.Sqrt(57*57-30*30))}
	at := Point{Y: Size{Dimension: units.Dimension{Value: -19.5}}}
	assert.InDelta(t, 14-(54.2471-48.4665), float64(seat.left(at, 2, 14)), 1e-4)
	assert.InDelta(t, 14-(57-48.4665), float64(seat.left(Point{}, 2, 14)), 1e-4, "no thinner than at the crown")
}

// Blind M4 with 6 of full thread cannot be had everywhere over that seat, whichever way the ring is turned.
func TestBlindThreadOverSeat(t *testing.T) {
	for _, start := range []string{"90", "120"} {
		job, _, found := Parse([]Source{{"part.hcl", []byte(saddle(start, "full_thread = 6"))}})
		assert.Nil(t, job)
		require.Len(t, found, 1)
		assert.Contains(t, found[0].Summary, "breaks out in seat")
	}
}

// R = c²/8s + s/2, and its uncertainty is the sum of what either error makes of it: tried by adding the errors.
func TestSeatRadiusFromChordAndRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := float64(rapid.IntRange(60, 90).Draw(t, "chord"))
		h := c * float64(rapid.IntRange(10, 30).Draw(t, "rise percent")) / 100
		dc, dh := 0.05, 0.02
		p := readPart(t, fmt.Sprintf(`part "p" {
  material = "brass"
  length   = 60
  stock "bar" { diameter = 30 }
  spigot "body" { diameter = 25 }
  seat "s" {
    on    = "left"
    chord = "%v ±%v"
    rise  = "%v ±%v"
  }
}`, c, dc, h, dh))
		s := p.Feature("s").(*Seat)
		radius := func(c, h float64) float64 { return c*c/8/h + h/2 }
		assert.InDelta(t, radius(c, h), float64(s.Radius.Value), 1e-5)
		worst := max(math.Abs(radius(c+dc, h-dh)-radius(c, h)), math.Abs(radius(c-dc, h+dh)-radius(c, h)))
		assert.InEpsilon(t, worst, float64(s.RadiusBy), 0.02, "to first order")
		assert.InDelta(t, float64(s.Radius.Value-s.RadiusBy), float64(s.Radius.Low), 1e-9)
	})
}

// Without limits the finest instrument that takes them says how sure chord and rise are: here a caliper and a depth micrometer of the built-in workshop.
func TestSeatRadiusFromInstruments(t *testing.T) {
	p := readPart(t, `part "p" {
  material = "brass"
  length   = 60
  stock "bar" { diameter = 30 }
  spigot "body" { diameter = 25 }
  seat "s" {
    on    = "left"
    chord = 120
    rise  = 20
  }
}`)
	s := p.Feature("s").(*Seat)
	// R = 100; dR/ds = 1/2 - 120²/(8·20²) = -4, dR/dc = 120/(4·20) = 1.5.
	assert.Equal(t, units.Length(100), s.Radius.Value)
	assert.InDelta(t, 4*0.005+1.5*0.03, float64(s.RadiusBy), 1e-9)
}

// A seat follows the pipe that it names, as made when that was measured.
func TestSeatFollowsItsPipe(t *testing.T) {
	for measured, want := range map[string]units.Length{"": 57, "measured = 114.3": 57.15} {
		p := readPart(t, `part "saddle" {
  material = "gunmetal"
  length   = 16
  stock "bar" { diameter = 65 }
  flange "base" { diameter = 60 }
  seat "pipe" {
    on     = "left"
    radius = part.pipe.spigot.outside.diameter / 2
  }
}
part "pipe" {
  material = "mild steel"
  length   = 300
  bought   = true
  spigot "outside" {
    diameter = 114
    `+measured+`
  }
}`)
		assert.Equal(t, want, p.Feature("pipe").(*Seat).Radius.Value)
	}
}

// ISO 273 gives 3.2, 3.4 and 3.6 for M3, 4.3, 4.5 and 4.8 for M4, 6.4, 6.6 and 7 for M6, 10.5, 11 and 12 for M10 (close, medium, free), with the limits H12,
// H13 and H14 (table as printed in handbooks; limits by ISO 286-1: H12 of 3 to 6 mm 0.12, H13 of 6 to 10 mm 0.22, H14 of 10 to 18 mm 0.43).
func TestClearanceHoles(t *testing.T) {
	for screw, want := range map[string][2]float64{
		"M3 close": {3.2, 3.32}, "M3": {3.4, 3.58}, "M3 free": {3.6, 3.9}, "M4 close": {4.3, 4.42}, "M4 medium": {4.5, 4.68}, "M4 free": {4.8, 5.1},
		"M6 close": {6.4, 6.55}, "M6": {6.6, 6.82}, "M6 free": {7, 7.36}, "M10 close": {10.5, 10.68}, "M10": {11, 11.27}, "M10 free": {12, 12.43},
	} {
		p := readPart(t, `part "p" {
  material  = "brass"
  thickness = 6
  stock "sheet" { thickness = 6 }
  outline "disc" { diameter = 100 }
  holes "h" {
    circle    = 50
    count     = 3
    clearance = "`+screw+`"
  }
}`)
		h := p.Feature("h").(*Holes)
		assert.InDelta(t, want[0], float64(h.Diameter.Low), 1e-9, screw)
		assert.InDelta(t, want[1], float64(h.Diameter.High), 1e-9, screw)
		assert.Equal(t, ClearanceHole, h.Make)
	}
}

// Holes of a circle lie on it, evenly, the first where start says.
func TestCircleOfHoles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		count, start := rapid.IntRange(1, 12).Draw(t, "count"), rapid.IntRange(-360, 360).Draw(t, "start")
		p := readPart(t, fmt.Sprintf(`part "p" {
  material  = "brass"
  thickness = 6
  stock "sheet" { thickness = 6 }
  outline "rectangle" {
    width  = 100
    height = 90
  }
  holes "h" {
    circle   = 60
    count    = %d
    start    = %d
    about    = [50, 45]
    diameter = 3
  }
}`, count, start))
		h := p.Feature("h").(*Holes)
		require.Len(t, h.Places, count)
		for i, at := range h.Places {
			angle := (float64(start) + 360*float64(i)/float64(count)) * math.Pi / 180
			assert.InDelta(t, 50+30*math.Cos(angle), float64(at.X.Value), 1e-5)
			assert.InDelta(t, 45+30*math.Sin(angle), float64(at.Y.Value), 1e-5)
		}
	})
}

// Lines between two arcs touch both, wherever these lie: the outline is smooth at every corner.
func TestTangentsAreSmooth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, y := rapid.IntRange(40, 90).Draw(t, "x"), rapid.IntRange(-60, 60).Draw(t, "y")
		a, b := rapid.IntRange(3, 20).Draw(t, "a"), rapid.IntRange(3, 20).Draw(t, "b")
		p := readPart(t, fmt.Sprintf(`part "p" {
  material  = "brass"
  thickness = 6
  stock "sheet" { thickness = 6 }
  outline "chain" {
    arc "a" {
      centre = [0, 0]
      radius = %d
    }
    line "ab" {}
    arc "b" {
      centre = [%d, %d]
      radius = %d
    }
    line "ba" {}
  }
}`, a, x, y, b))
		edges := p.Outline.Edges
		for i, e := range edges {
			next := edges[(i+1)%len(edges)]
			ux, uy := e.figure().Outward(1)
			vx, vy := next.figure().Outward(0)
			assert.InDelta(t, 1, ux*vx+uy*vy, 1e-9, "%s runs smoothly into %s", e.Name, next.Name)
		}
		// The area of a belt around two discs: two segments of the belt's angle and the trapezium between the centres.
		d := math.Hypot(float64(x), float64(y))
		lean := math.Asin(float64(a-b) / d)
		want := float64(a*a)*(math.Pi/2+lean) + float64(b*b)*(math.Pi/2-lean) + float64(a+b)*d*math.Cos(lean)
		assert.InEpsilon(t, want, p.Outline.region().Area(), 1e-6)
	})
}

// A chain told in another way is the same figure: a round-topped plate.
func TestChainsAgree(t *testing.T) {
	area := map[string]float64{}
	for name, arc := range map[string]string{
		"radius": "radius = 30", "centre": "centre = [30, 50]", "through": "through = [30, 80]", "tangent": "tangent = true",
	} {
		p := readPart(t, `part "p" {
  material  = "brass"
  thickness = 6
  stock "sheet" { thickness = 6 }
  outline "chain" {
    start { at = [0, 0] }
    line "bottom" { to = [60, 0] }
    line "right" { to = [60, 50] }
    arc "top" {
      to = [0, 50]
      `+arc+`
    }
    line "left" {}
  }
}`)
		top, _ := p.Outline.Edge("top")
		assert.Equal(t, []units.Length{30, 50, 30}, []units.Length{top.CX, top.CY, top.Radius}, name)
		assert.Equal(t, []string{"left", "bottom"}, p.Outline.Datum)
		area[name] = p.Outline.region().Area()
		assert.InDelta(t, 60*50+math.Pi*450, area[name], 1e-6, name)
	}
}

// A rounded corner takes its area off: r²(1 - π/4) at a right angle.
func TestRoundedCorners(t *testing.T) {
	p := readPart(t, `part "p" {
  material  = "brass"
  thickness = 6
  stock "sheet" { thickness = 6 }
  outline "chain" {
    start { at = [0, 0] }
    line "bottom" { to = [40, 0] }
    arc "r1" { radius = 6 }
    line "right" { to = [40, 30] }
    line "top" { to = [0, 30] }
    line "left" {}
    arc "r2" { radius = 4 }
  }
}`)
	assert.InDelta(t, 40*30-(36+16)*(1-math.Pi/4), p.Outline.region().Area(), 1e-6)
	rect := readPart(t, `part "p" {
  material  = "brass"
  thickness = 6
  stock "sheet" { thickness = 6 }
  outline "rectangle" {
    width         = 40
    height        = 30
    corner_radius = 6
  }
}`)
	assert.InDelta(t, 40*30-36*(4-math.Pi), rect.Outline.region().Area(), 1e-6)
}

// Where the datum is the right edge, its limits pass to the left one, and coordinates have the tolerance of their distance from it.
func TestDatum(t *testing.T) {
	p := readPart(t, `part "p" {
  material  = "brass"
  thickness = 6
  stock "sheet" { thickness = 6 }
  outline "rectangle" {
    width  = 100
    height = "40 ±0.05"
    datum  = ["top", "right"]
  }
  holes "h" {
    at       = [[95, 20]]
    diameter = 3
  }
}`)
	assert.Equal(t, []string{"right", "top"}, p.Outline.Datum)
	left, _ := p.Outline.Edge("left")
	right, _ := p.Outline.Edge("right")
	bottom, _ := p.Outline.Edge("bottom")
	assert.InDelta(t, 0.3, float64(left.On), 1e-9)
	assert.Zero(t, right.On)
	assert.InDelta(t, 0.05, float64(bottom.Off), 1e-9)
	x := p.Feature("h").(*Holes).Places[0].X
	assert.InDelta(t, 0.1, float64(x.High-x.Value), 1e-9, "5 mm from the datum: ISO 2768-m gives 0.1")
}

// In a chain without datum edges both coordinates have the general tolerance of the distance from the origin, or of the arc that is drawn about the place.
func TestPlacesOfAChain(t *testing.T) {
	p := readPart(t, `part "p" {
  material  = "brass"
  thickness = 6
  stock "plate" { thickness = 8 }
  outline "chain" {
    arc "boss" {
      centre = [0, 0]
      radius = 12
    }
    line "lower" {}
    arc "eye" {
      centre = [50, 0]
      radius = 8
    }
    line "upper" {}
  }
  bore "pivot" {
    at       = "boss.centre"
    diameter = 10
  }
  bore "pin" {
    at       = "eye.centre"
    diameter = 5
  }
  holes "between" {
    at       = [[20, "3 ±0.05"]]
    diameter = 3
  }
}`)
	either := func(s Size) float64 { return float64(s.High - s.Value) }
	pivot, pin, between := p.Feature("pivot").(*Bore).At, p.Feature("pin").(*Bore).At, p.Feature("between").(*Holes).Places[0]
	assert.InDelta(t, 0.2, either(pivot.X), 1e-9, "R12: ISO 2768-m gives 0.2")
	assert.InDelta(t, 0.2, either(pivot.Y), 1e-9)
	assert.InDelta(t, 0.3, either(pin.X), 1e-9, "50 from the origin: ISO 2768-m gives 0.3")
	assert.InDelta(t, 0.3, either(pin.Y), 1e-9)
	assert.InDelta(t, 0.2, either(between.X), 1e-9)
	assert.InDelta(t, 0.05, either(between.Y), 1e-9, "its own limits stand")
}

// A fit sets the limits of plain holes, as of a bore.
func TestFitOfHoles(t *testing.T) {
	p := readPart(t, `part "base" {
  material  = "mild steel"
  thickness = 8
  stock "sheet" { thickness = 8 }
  outline "disc" { diameter = 60 }
  holes "pins" {
    circle   = 40
    count    = 2
    diameter = 4
  }
}
part "pin" {
  material = "mild steel"
  length   = 16
  stock "bar" { diameter = 6 }
  spigot "body" { diameter = 4 }
}
fit "pinned" {
  hole  = "base.pins"
  shaft = "pin.body"
  class = "H7/m6"
}`)
	d := p.Feature("pins").(*Holes).Diameter
	assert.InDeltaSlice(t, []float64{4, 4.012}, []float64{float64(d.Low), float64(d.High)}, 1e-9, "H7 of 4 mm (ISO 286-1)")
	assert.Equal(t, "H7", d.Class)
}
