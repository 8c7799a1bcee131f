package partspec_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/parttest"
	"catchplate/partspec/units"
)

// micrometre is how far computed nominal sizes may be from the expected ones.
const micrometre = 0.001

// read parses one source that must be good.
func read(t *testing.T, text string) *partspec.Job {
	t.Helper()
	job, _, found := partspec.Parse([]partspec.Source{{Name: "test.hcl", Text: []byte(text)}})
	for _, d := range found {
		t.Error(parttest.Describe(d))
	}
	require.NotNil(t, job)
	return job
}

// brassPart wraps features into a part of 40 mm from 60 mm bar.
func brassPart(features string) string {
	return "part \"p\" {\n material = \"brass\"\n length = 40\n stock \"bar\" {\n diameter = 60\n}\n" + features + "\n}\n"
}

func feature[F partspec.Feature](t *testing.T, job *partspec.Job, part, name string) F {
	t.Helper()
	require.NotNil(t, job.Part(part))
	f, ok := job.Part(part).Feature(name).(F)
	require.True(t, ok, "%s.%s is a %T", part, name, job.Part(part).Feature(name))
	return f
}

func span(left, right units.Length) partspec.Span { return partspec.Span{Left: left, Right: right} }

func TestChain(t *testing.T) {
	job := read(t, brassPart(`
spigot "a" {
  diameter = 20
  length = "10 +0.1 -0"
}
spigot "end" {
  diameter = 18
  length = 5
  from = "right"
}
flange "b" {
  diameter = 30
  from = "a.right"
  length = 4
}
spigot "c" {
  diameter = 25
  from = "end.left"
  length = 15
}
spigot "rest" {
  diameter = 22
  from = "b.right"
  length = 6
}`))
	for name, want := range map[string]partspec.Span{"a": span(0, 10), "b": span(10, 14), "rest": span(14, 20), "c": span(20, 35), "end": span(35, 40)} {
		assert.Equal(t, want, feature[*partspec.Spigot](t, job, "p", name).Span, name)
	}
}

// The length that is left has the limits that all the others leave it.
func TestLeftOverLength(t *testing.T) {
	job := read(t, `part "p" {
  material = "brass"
  length = "40 ±0.1"
  stock "bar" {
    diameter = 60
  }
  spigot "a" {
    diameter = 20
    length = "15 +0.2 -0.05"
  }
  spigot "b" {
    diameter = 18
  }
}`)
	b := feature[*partspec.Spigot](t, job, "p", "b")
	assert.Equal(t, units.Length(25), b.Length.Value)
	assert.Equal(t, units.Length(24.7), b.Length.Low)
	assert.Equal(t, units.Length(25.15), b.Length.High)
	assert.Contains(t, b.Length.Basis, "other lengths leave")
}

func TestBoresNest(t *testing.T) {
	job := read(t, brassPart(`
spigot "body" {
  diameter = 50
}
bore "way" {
  diameter = 10
}
counterbore "left_seat" {
  diameter = 20
  depth = 8
}
bore "left_inner" {
  diameter = 15
  depth = 12
}
counterbore "right_seat" {
  diameter = 30
  depth = 6
  from = "right"
}`))
	for name, want := range map[string]partspec.Span{"way": span(12, 34), "left_seat": span(0, 8), "left_inner": span(8, 12), "right_seat": span(34, 40)} {
		assert.Equal(t, want, feature[*partspec.Bore](t, job, "p", name).Span, name)
	}
	assert.True(t, feature[*partspec.Bore](t, job, "p", "left_seat").FlatBottom)
	assert.False(t, feature[*partspec.Bore](t, job, "p", "left_inner").FlatBottom)
	assert.True(t, feature[*partspec.Bore](t, job, "p", "way").Through)
}

// ISO 2768-1 medium: 0.5 to 3 mm 0.1, 3 to 6 mm 0.1, 6 to 30 mm 0.2, 30 to 120 mm 0.3;
// ISO 286-2: 25 H7 is 25.000 to 25.021, 20 h6 is 19.987 to 20.000 (both from memory of the printed tables).
func TestLimits(t *testing.T) {
	job := read(t, brassPart(`
spigot "a" {
  diameter = "20 h6"
  length = 5
}
spigot "b" {
  diameter = "49.9..50.0"
  length = 30
}
spigot "c" {
  diameter = 35
}
bore "hole" {
  diameter = "14 H7"
  depth = "10 ±0.05"
}`))
	cases := []struct {
		size           partspec.Size
		low, high      units.Length
		class, because string
	}{
		{feature[*partspec.Spigot](t, job, "p", "a").Diameter, 19.987, 20, "h6", "h6 (ISO 286-1)"},
		{feature[*partspec.Spigot](t, job, "p", "a").Length, 4.9, 5.1, "", "general tolerance ISO 2768-m"},
		{feature[*partspec.Spigot](t, job, "p", "b").Diameter, 49.9, 50, "", "as drawn"},
		{feature[*partspec.Spigot](t, job, "p", "b").Length, 29.8, 30.2, "", "general tolerance ISO 2768-m"},
		{feature[*partspec.Spigot](t, job, "p", "c").Diameter, 34.7, 35.3, "", "general tolerance ISO 2768-m"},
		{feature[*partspec.Bore](t, job, "p", "hole").Diameter, 14, 14.018, "H7", "H7 (ISO 286-1)"},
		{feature[*partspec.Bore](t, job, "p", "hole").Depth, 9.95, 10.05, "", "as drawn"},
	}
	for _, c := range cases {
		assert.Equal(t, c.low, c.size.Low)
		assert.Equal(t, c.high, c.size.High)
		assert.Equal(t, c.class, c.size.Class)
		assert.Equal(t, c.because, c.size.Basis)
	}
}

// In a part drawn in inches bare figures and names are inches.
func TestInches(t *testing.T) {
	job := read(t, `
part "a" {
  material = "brass"
  drawn_in = "inch"
  length = 2
  stock "bar" {
    diameter = 1
  }
  spigot "one" {
    diameter = 7 / 8
    length = 25.4 * mm
  }
  spigot "two" {
    diameter = part.b.spigot.one.diameter + 0.1
  }
}
part "b" {
  material = "brass"
  length = 20
  stock "bar" {
    diameter = 30
  }
  spigot "one" {
    diameter = part.a.length / 4 + 2 * thou
  }
}`)
	one, two := feature[*partspec.Spigot](t, job, "a", "one"), feature[*partspec.Spigot](t, job, "a", "two")
	assert.Equal(t, units.Length(22.225), one.Diameter.Value)
	assert.True(t, one.Diameter.InInches)
	assert.Equal(t, units.Length(25.4), one.Length.Value)
	assert.False(t, one.Length.InInches)
	assert.InDelta(t, 12.7508+2.54, float64(two.Diameter.Value), micrometre)
	assert.Equal(t, units.Length(12.7508), feature[*partspec.Spigot](t, job, "b", "one").Diameter.Value)
	assert.Equal(t, "2", job.Part("a").Length.Written)
}

func TestExpressions(t *testing.T) {
	cases := map[string]units.Length{
		`7 / 8 * inch`:                 22.225,
		`"7/8 in"`:                     22.225,
		`1 / 3 * 3`:                    1,
		`max(3, 5, 4) + min(1, 2)`:     6,
		`abs(0 - 4) + sqrt(9)`:         7,
		`20 * sin(30 * deg)`:           10,
		`20 * cos(60) + 10 * tan(45)`:  20,
		`part.p.length > 30 ? 12 : 14`: 12,
		`(1 + 2) * 3 - -1`:             10,
		`10 * thou + 1 * mm`:           1.254,
		`0.1 + 0.2`:                    0.3,
	}
	for text, want := range cases {
		source := brassPart("spigot \"a\" {\n diameter = " + text + "\n}")
		job, _, found := partspec.Parse([]partspec.Source{{Name: "test.hcl", Text: []byte(source)}})
		require.NotNil(t, job, found)                                                                                     // small diameters may be asked about
		assert.InDelta(t, float64(want), float64(feature[*partspec.Spigot](t, job, "p", "a").Diameter.Value), 1e-9, text) // 1e-9: double rounding in trigonometry
	}
}

// Named tapers and slopes; MT2 from memory of ISO 296: 17.780 at the gauge line, 1 in 20.020.
func TestTapers(t *testing.T) {
	cases := []struct {
		text                      string
		large, small, length, deg float64
	}{
		{`large = 20, small = 18, length = 40`, 20, 18, 40, math.Atan(1.0/40) * 180 / math.Pi},
		{`large = 20, ratio = "1:20", length = 40`, 20, 18, 40, math.Atan(1.0/40) * 180 / math.Pi},
		{`small = 18, ratio = "1:20", length = 40`, 20, 18, 40, math.Atan(1.0/40) * 180 / math.Pi},
		{`large = 20, small = 18, ratio = "1:20"`, 20, 18, 40, math.Atan(1.0/40) * 180 / math.Pi},
		{`large = 20, ratio = "1:20"`, 20, 18, 40, math.Atan(1.0/40) * 180 / math.Pi}, // the length is what is left
		{`large = 50, angle = 60, length = 40`, 50, 50 - 80*math.Tan(math.Pi/6), 40, 30},
		{`large = 50, per_side = 10, length = 40`, 50, 50 - 80*math.Tan(math.Pi/18), 40, 10},
		{`large = 20, per_foot = "1/2 in", length = 40`, 20, 20 - 40.0/24, 40, math.Atan(1.0/48) * 180 / math.Pi},
		{`named = "MT2"`, 17.780, 17.780 - 40/20.020, 40, math.Atan(0.5/20.020) * 180 / math.Pi},
		{`named = "Morse 2", large = 18`, 18, 18 - 40/20.020, 40, math.Atan(0.5/20.020) * 180 / math.Pi},
	}
	for _, c := range cases {
		for _, end := range []string{"left", "right"} {
			job := read(t, brassPart(fmt.Sprintf("taper \"t\" {\n large_at = %q\n %s\n}", end, lines(c.text))))
			f := feature[*partspec.Taper](t, job, "p", "t")
			assert.InDelta(t, c.large, float64(f.Large.Value), micrometre, c.text)
			assert.InDelta(t, c.small, float64(f.Small.Value), micrometre, c.text)
			assert.InDelta(t, c.length, float64(f.Length.Value), micrometre, c.text)
			assert.InDelta(t, c.deg, float64(f.HalfAngle), 1e-6, c.text) // degrees
			assert.Equal(t, end, f.LargeAt.String())
			assert.Equal(t, span(0, 40), f.Span)
			assert.LessOrEqual(t, f.Small.Low, f.Small.High)
		}
	}
}

// lines turns "a = 1, b = 2" into attributes on lines of their own.
func lines(text string) string {
	out := []byte(text)
	for i := range out[:len(out)-1] {
		if out[i] == ',' && out[i+1] == ' ' {
			out[i] = '\n'
		}
	}
	return string(out)
}

func TestInsideTaper(t *testing.T) {
	job := read(t, brassPart(`
spigot "body" {
  diameter = 50
}
bore "way" {
  diameter = 10
}
taper "socket" {
  inside = true
  named = "MT2"
  length = 30
  from = "right"
  at = 4
}
counterbore "relief" {
  diameter = 20
  depth = 4
  from = "right"
}`))
	socket := feature[*partspec.Taper](t, job, "p", "socket")
	assert.Equal(t, span(6, 36), socket.Span)
	assert.Equal(t, partspec.Right, socket.LargeAt)
	assert.Equal(t, span(0, 6), feature[*partspec.Bore](t, job, "p", "way").Span)
	assert.Equal(t, span(36, 40), feature[*partspec.Bore](t, job, "p", "relief").Span)
}

// A ball of radius 10 on a stem: centre and ends by plain geometry.
func TestProfile(t *testing.T) {
	job := read(t, brassPart(`
profile "knob" {
  finish_by = "file"
  zone = [-0.05, 0.1]
  start {
    diameter = 12
  }
  arc {
    length = 16
    diameter = 12
    radius = 10
    bulge = "out"
  }
  line {
    length = 4
    diameter = 12
  }
  arc {
    length = 8
    diameter = 20
    tangent = true
  }
  arc {
    length = 12
    diameter = 20
    through {
      at = 6
      diameter = 16
    }
  }
}`))
	f := feature[*partspec.Profile](t, job, "p", "knob")
	require.Len(t, f.Segments, 4)
	ball, tangent, hollow := f.Segments[0], f.Segments[2], f.Segments[3]
	assert.Equal(t, span(0, 40), f.Span)
	assert.True(t, ball.Arc && ball.Convex)
	assert.InDelta(t, 8, float64(ball.CentreZ), micrometre)
	assert.InDelta(t, 0, float64(ball.CentreR), micrometre) // 10^2 = 8^2 + 6^2
	assert.False(t, tangent.Convex)
	assert.InDelta(t, 20, float64(tangent.CentreZ), micrometre) // straight above the end of the line
	assert.InDelta(t, (64.0+16)/8, float64(tangent.Radius), micrometre)
	assert.False(t, hollow.Convex)
	assert.InDelta(t, (36.0+4)/4, float64(hollow.Radius), micrometre) // chord 12, rise 2
	assert.InDelta(t, 34, float64(hollow.CentreZ), micrometre)
	assert.Equal(t, units.Length(-0.05), f.Zone.Low)
	assert.Equal(t, units.Length(0.1), f.Zone.High)
	assert.True(t, f.FinishFile)
	for _, g := range f.Segments { // every arc passes through its ends
		if g.Arc {
			for _, end := range [][2]units.Length{{g.Z0, g.R0}, {g.Z1, g.R1}} {
				assert.InDelta(t, float64(g.Radius), math.Hypot(float64(end[0]-g.CentreZ), float64(end[1]-g.CentreR)), micrometre)
			}
		}
	}
}

func TestGrooves(t *testing.T) {
	job := read(t, brassPart(`
spigot "hub" {
  diameter = 20
  length = 10
}
flange "rim" {
  diameter = 50
}
groove "square" {
  on = "rim"
  at = 3
  width = 8
  depth = 4
}
groove "inner" {
  on = "rim"
  at = 5
  width = 4
  diameter = 36
}
groove "vee" {
  on = "rim"
  from = "right"
  at = 2
  depth = 5
  angle = 60
  bottom_width = 1
}
groove "from_hub" {
  on = "rim"
  from = "rim.left"
  at = 14
  width = 2
  depth = 1
}`))
	square := feature[*partspec.Groove](t, job, "p", "square")
	assert.Equal(t, span(13, 21), square.Span)
	assert.Equal(t, units.Length(42), square.Bottom.Value)
	assert.Equal(t, units.Length(8), square.BottomWidth)
	assert.Equal(t, span(15, 19), feature[*partspec.Groove](t, job, "p", "inner").Span)
	vee := feature[*partspec.Groove](t, job, "p", "vee")
	assert.InDelta(t, 1+2*5*math.Tan(math.Pi/6), float64(vee.Width.Value), micrometre)
	assert.InDelta(t, 38, float64(vee.Span.Right), micrometre)
	assert.Equal(t, units.Length(1), vee.BottomWidth)
	assert.Equal(t, span(24, 26), feature[*partspec.Groove](t, job, "p", "from_hub").Span)
}

// M6: major 6, pitch 1, minor of the nut 4.917 (ISO 724).
func TestThreads(t *testing.T) {
	job := read(t, brassPart(`
spigot "head" {
  diameter = 20
  length = 10
}
spigot "stem" {
  length = 30
}
bore "hole" {
  depth = 12
  flat = true
}
thread "outer" {
  on = "stem"
  size = "M10"
  length = 12
  class = "6g"
}
thread "inner" {
  on = "hole"
  size = "M6"
  length = 9
  hand = "left"
}`))
	outer, inner := feature[*partspec.Thread](t, job, "p", "outer"), feature[*partspec.Thread](t, job, "p", "inner")
	assert.Equal(t, partspec.Right, outer.From)
	assert.Equal(t, span(28, 40), outer.Span)
	assert.Equal(t, "6g", outer.Class)
	assert.False(t, outer.Inside)
	assert.Equal(t, span(0, 9), inner.Span)
	assert.True(t, inner.Inside && inner.LeftHand)
	stem, hole := feature[*partspec.Spigot](t, job, "p", "stem").Diameter, feature[*partspec.Bore](t, job, "p", "hole").Diameter
	assert.Equal(t, []units.Length{10, 9.775, 10}, []units.Length{stem.Value, stem.Low, stem.High})
	assert.InDelta(t, 4.917, float64(hole.Value), micrometre)
	assert.LessOrEqual(t, hole.Low, inner.Thread.TapDrill)
	assert.GreaterOrEqual(t, hole.High, inner.Thread.TapDrill)
}

func TestEdges(t *testing.T) {
	job := read(t, brassPart(`
spigot "stem" {
  diameter = 20
  length = 15
}
flange "rim" {
  diameter = 50
}
bore "way" {
  diameter = 10
}
counterbore "seat" {
  diameter = 16
  depth = 5
  from = "right"
}
chamfer "a" {
  edge = "stem.left"
  size = 1
}
fillet "b" {
  edge = "stem.right"
  radius = 2
}
chamfer "c" {
  edge = "rim.left"
  size = 1
  angle = 30
}
chamfer "d" {
  edge = "way.left"
  size = 1
}
chamfer "e" {
  edge = "way.right"
  size = 1
}
fillet "f" {
  edge = "seat.left"
  radius = 0.5
}`))
	edge := func(f partspec.Feature) partspec.Edge {
		switch f := f.(type) {
		case *partspec.Chamfer:
			return f.Edge
		case *partspec.Fillet:
			return f.Edge
		}
		return partspec.Edge{}
	}
	want := map[string]partspec.Edge{
		"a": {Feature: "stem", End: partspec.Left, Z: 0, R: 10, Convex: true, Axial: partspec.Right},
		"b": {Feature: "stem", End: partspec.Right, Z: 15, R: 10, Axial: partspec.Left},
		"c": {Feature: "rim", End: partspec.Left, Z: 15, R: 25, Convex: true, Axial: partspec.Right},
		"d": {Feature: "way", End: partspec.Left, Z: 0, R: 5, Inside: true, Convex: true, Axial: partspec.Right},
		"e": {Feature: "way", End: partspec.Right, Z: 35, R: 5, Inside: true, Convex: true, Axial: partspec.Left},
		"f": {Feature: "seat", End: partspec.Left, Z: 35, R: 8, Inside: true, Axial: partspec.Right},
	}
	for name, e := range want {
		assert.Equal(t, e, edge(job.Part("p").Feature(name)), name)
	}
}

// A part as a drawing of rework has it, and one that is bought.
func TestExistingAndBought(t *testing.T) {
	job := read(t, `
part "bush" {
  material = "bronze"
  length = 30
  stock "existing" {
    length = 34
    at = 2
    spigot "old" {
      diameter = 40
    }
    bore "worn" {
      diameter = 20.3
    }
  }
  spigot "outside" {
    diameter = 40
    as_supplied = true
  }
  bore "hole" {
    diameter = "22 H7"
  }
}
part "bearing" {
  material = "mild steel"
  length = 7
  bought = true
  quantity = 2
  spigot "outside" {
    diameter = "22 -0 -0.009"
    measured = 21.995
  }
}`)
	bush := job.Part("bush")
	assert.Equal(t, partspec.Existing, bush.Stock.Kind)
	assert.Equal(t, units.Length(-2), bush.Stock.At)
	assert.Equal(t, units.Length(40), bush.Stock.Outside.Value)
	assert.Equal(t, units.Length(20.3), bush.Stock.Inside.Value)
	assert.Len(t, bush.Stock.Features, 2)
	bearing := job.Part("bearing")
	assert.True(t, bearing.Bought)
	assert.Equal(t, 2, bearing.Quantity)
	assert.Equal(t, units.Length(21.995), *feature[*partspec.Spigot](t, job, "bearing", "outside").Measured)
	assert.Equal(t, units.Length(22), feature[*partspec.Spigot](t, job, "bearing", "outside").Diameter.Value)
	assert.True(t, job.Workshop.BuiltIn)
}

// 18 H8/f7 (ISO 286-2): hole 18.000 to 18.027, shaft 17.966 to 17.984, so
// 0.016 to 0.061 of clearance.
func TestFits(t *testing.T) {
	pair := func(hole, shaft string) *partspec.Job {
		return read(t, `
part "boss" {
  material = "brass"
  length = 20
  stock "bar" {
    diameter = 32
  }
  spigot "outside" {
    diameter = 30
  }
  bore "seat" {
`+hole+`
  }
}
part "tube" {
  material = "brass"
  length = 20
  stock "bar" {
    diameter = 32
  }
  spigot "lower" {
`+shaft+`
  }
}
fit "f" {
  hole  = "boss.seat"
  shaft = "tube.lower"
  class = "H8/f7"
}`)
	}
	limits := func(job *partspec.Job) []units.Length {
		hole, shaft := feature[*partspec.Bore](t, job, "boss", "seat").Diameter, feature[*partspec.Spigot](t, job, "tube", "lower").Diameter
		return []units.Length{hole.Low, hole.High, shaft.Low, shaft.High}
	}
	assert.Equal(t, []units.Length{18, 18.027, 17.966, 17.984}, limits(pair("diameter = 18", "diameter = 18")))
	assert.Equal(t, []units.Length{18, 18.027, 17.966, 17.984}, limits(pair(`diameter = "18 H8"`, "diameter = part.boss.bore.seat.diameter")))
	made := pair("diameter = 18\nmeasured = 18.04", "diameter = part.boss.bore.seat.diameter")
	assert.Equal(t, []units.Length{17.979, 18.024}, limits(made)[2:])
	assert.Equal(t, units.Length(18.04), feature[*partspec.Spigot](t, made, "tube", "lower").Diameter.Value)
	assert.Contains(t, feature[*partspec.Spigot](t, made, "tube", "lower").Diameter.Basis, "to suit boss.seat, measured 18.04 mm")
	assert.Equal(t, []units.Length{17.986, 18.031}, limits(pair("diameter = 18", "diameter = 18\nmeasured = 17.97"))[:2])
	require.Len(t, made.Fits, 1)
	assert.Equal(t, partspec.FeatureRef{Part: "boss", Feature: "seat"}, made.Fits[0].Hole)
}

func TestRelations(t *testing.T) {
	job := read(t, brassPart(`
spigot "stem" {
  diameter = 20
  length = 15
}
flange "rim" {
  diameter = 50
}
bore "way" {
  diameter = 10
}
run_out {
  of = "rim.left"
  to = "way"
  within = 0.02
}
square {
  of = "face.right"
  to = "way"
  within = 0.01
}
parallel {
  of = "face.left"
  to = "rim.left"
  within = 0.05
}
concentric {
  of = "stem"
  to = "way"
  within = 0.03
}`))
	relations := job.Part("p").Relations
	require.Len(t, relations, 4)
	assert.Equal(t, partspec.RunOut, relations[0].Kind)
	assert.Equal(t, "rim.left", relations[0].Of.String())
	assert.Equal(t, partspec.Square, relations[1].Kind)
	assert.Equal(t, partspec.Parallel, relations[2].Kind)
	assert.Equal(t, partspec.Concentric, relations[3].Kind)
	assert.Equal(t, units.Length(0.03), relations[3].Within)
}
