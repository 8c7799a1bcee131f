package drawing

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"catchplate/partspec"
	"catchplate/partspec/parttest"
	"catchplate/planner/plan"
)

// part reads one part, as a file would give it.
func part(t *testing.T, body string) *partspec.Part {
	t.Helper()
	text := "part \"p\" {\n  material = \"brass-free-cutting\"\n" + body + "\n}\n"
	job, _, problems := partspec.Parse([]partspec.Source{{Name: "p.hcl", Text: []byte(text)}})
	require.False(t, problems.HasErrors(), "%v", problems)
	return job.Parts[0]
}

func dim(t *testing.T, d plan.Drawing, feature string, kind plan.DimKind) plan.Dim {
	t.Helper()
	for _, one := range d.Dims {
		if one.Feature == feature && one.Kind == kind {
			return one
		}
	}
	require.Fail(t, "no dimension", "%s of %s", kind, feature)
	return plan.Dim{}
}

const bar = "length = 40\nstock \"bar\" { diameter = 40 }\n"

func TestStepsOfTheOutside(t *testing.T) {
	d := Of(part(t, bar+`
		spigot "a" {
		  diameter = "20 h6"
		  length = 25
		}
		flange "b" {
		  diameter = 36
		  length = 15
		}`))
	assert.Equal(t, []plan.Segment{line(0, 10, 25, 10), line(25, 18, 40, 18)}, d.Section.Outer)
	assert.Equal(t, []plan.Segment{line(0, 0, 40, 0)}, d.Section.Inner)
	assert.Equal(t, "Ø20 h6 (19.987 to 20.000)", dim(t, d, "a", plan.DimDiameter).Text)
	assert.Equal(t, "Ø36 ±0.3", dim(t, d, "b", plan.DimDiameter).Text)
	assert.Equal(t, plan.Dim{Kind: plan.DimLength, Z0: 0, Z1: 25, Feature: "a", Text: "25 ±0.2"}, dim(t, d, "a", plan.DimLength))
	assert.Equal(t, "40 ±0.3", dim(t, d, "part", plan.DimLength).Text)
}

func TestChamferAndFillet(t *testing.T) {
	d := Of(part(t, bar+`
		spigot "a" {
		  diameter = 20
		  length = 25
		}
		flange "b" {
		  diameter = 36
		  length = 15
		}
		bore "hole" { diameter = 10 }
		chamfer "lead" {
		  edge = "a.left"
		  size = 2
		  angle = 30
		}
		fillet "root" {
		  edge = "a.right"
		  radius = 3
		}
		fillet "rim" {
		  edge = "b.right"
		  radius = 2
		}
		chamfer "mouth" {
		  edge = "hole.right"
		  size = 1
		}`))
	outer := d.Section.Outer
	require.Len(t, outer, 5)
	assert.InDelta(t, 10-2*math.Tan(math.Pi/6), outer[0].R0, tiny)
	assert.Equal(t, plan.Segment{Z0: 22, R0: 10, Z1: 25, R1: 13, RadiusMM: 3, CentreZ: 22, CentreR: 13}, outer[2], "a root's fillet is hollow: its centre lies outside")
	assert.Equal(t, plan.Segment{Z0: 38, R0: 18, Z1: 40, R1: 16, RadiusMM: 2, CentreZ: 38, CentreR: 16}, outer[4], "a rim's round bulges: its centre lies in the metal")
	last := d.Section.Inner[len(d.Section.Inner)-1]
	assert.InDelta(t, 6, last.R1, tiny, "a mouth is chamfered wider")
	assert.Equal(t, "chamfer 2 × 30°", dim(t, d, "lead", plan.DimLeader).Text)
	assert.Equal(t, "R3", dim(t, d, "root", plan.DimLeader).Text)
	assert.True(t, dim(t, d, "mouth", plan.DimLeader).Inside)
}

func TestGroovesNest(t *testing.T) {
	d := Of(part(t, bar+`
		spigot "rim" {
		  diameter = 36
		  length = 40
		}
		groove "deep" {
		  on = "rim"
		  at = 14
		  width = 4
		  depth = 8
		}
		groove "wide" {
		  on = "rim"
		  at = 10
		  width = 12
		  depth = 4
		}`))
	assert.Equal(t, []plan.Segment{line(0, 18, 10, 18), line(10, 14, 14, 14), line(14, 10, 18, 10), line(18, 14, 22, 14), line(22, 18, 40, 18)}, d.Section.Outer)
	assert.Equal(t, "groove to Ø20 ±0.4, 4 wide, 14 mm from the left end", dim(t, d, "deep", plan.DimDiameter).Text, "8 ±0.2 deep counts twice")
}

func TestBlindBoreKeepsItsDrillPoint(t *testing.T) {
	spigot := "spigot \"a\" {\n diameter = 30\n length = 40\n}\n"
	drilled := Of(part(t, bar+spigot+"bore \"b\" {\n diameter = 10\n depth = 12\n from = \"right\"\n}")).Section.Inner
	require.Len(t, drilled, 3)
	assert.InDelta(t, 28-5/math.Tan(59*math.Pi/180), drilled[1].Z0, tiny, "118 degrees")
	assert.Equal(t, 0.0, drilled[1].R0)
	assert.Equal(t, 5.0, drilled[1].R1)
}

func TestProfile(t *testing.T) {
	p := part(t, "length = 40\nstock \"bar\" { diameter = 40 }\n"+`
		profile "knob" {
		  finish_by = "file"
		  zone = [-0.05, 0.1]
		  start { diameter = 12 }
		  arc {
		    length = 16
		    diameter = 12
		    radius = 10
		    bulge = "out"
		  }
		  line {
		    length = 24
		    diameter = 12
		  }
		}`)
	d := Of(p)
	require.Len(t, d.Section.Outer, 2)
	arc := d.Section.Outer[0]
	assert.Equal(t, 10.0, arc.RadiusMM)
	assert.InDelta(t, 8, arc.CentreZ, tiny)
	assert.InDelta(t, 0, arc.CentreR, tiny, "6 and 8 and 10 make the centre lie on the axis")
	assert.Equal(t, "R10", dim(t, d, "knob", plan.DimLeader).Text)
	assert.Contains(t, d.Notes[0], "-0.05 to 0.10 mm of metal on the curve, square to it, finished by file")
}

func TestInchPartShowsBothUnits(t *testing.T) {
	d := Of(part(t, "drawn_in = \"inch\"\nlength = \"1 in\"\nstock \"bar\" { diameter = 1.5 }\n"+
		"spigot \"a\" {\n diameter = \"7/8 in +0.002 -0\"\n length = 1\n}"))
	assert.Equal(t, "Ø7/8 in +0.002 -0 (22.225 to 22.276 mm)", dim(t, d, "a", plan.DimDiameter).Text)
	assert.Equal(t, "1 in (±0.2 mm)", dim(t, d, "a", plan.DimLength).Text)
}

func TestExpressionIsShownAsItsFigure(t *testing.T) {
	d := Of(part(t, bar+"spigot \"a\" {\n diameter = 2 * 9\n length = 40\n}"))
	assert.Equal(t, "Ø18 ±0.2", dim(t, d, "a", plan.DimDiameter).Text)
}

func TestHexagonIsDrawnAcrossCorners(t *testing.T) {
	d := Of(part(t, "length = 14\nstock \"hexagon\" { across_flats = 24 }\nspigot \"body\" { as_supplied = true }"))
	assert.True(t, d.Hexagon)
	assert.InDelta(t, 24/math.Sqrt(3), d.Section.Outer[0].R0, tiny)
	assert.Contains(t, dim(t, d, "body", plan.DimLeader).Text, "24 across flats")
}

func TestNotes(t *testing.T) {
	notes := strings.Join(Of(part(t, bar+`
		spigot "a" {
		  diameter = 30
		  length = 40
		  note = "seat of the float"
		  roughness = 1.6
		}
		bore "hole" {
		  diameter = 10
		  measured = 10.04
		}
		run_out {
		  of = "a"
		  to = "hole"
		  within = 0.05
		}`)).Notes, "\n")
	for _, want := range []string{"a about hole: run-out at most 0.05 mm", "ISO 2768-m", "seat of the float", "a: Ra 1.6 µm", "hole: made and measured, 10.04 mm"} {
		assert.Contains(t, notes, want)
	}
}

// tiny is the noise of float64 sums, far below a micrometre.
const tiny = 1e-9

// What holds for every part: the curves run from end to end without a step back, the outside lies outside, and every feature is drawn.
func TestAnyPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job, _, problems := partspec.Parse([]partspec.Source{{Name: "job.hcl", Text: []byte(parttest.Job().Draw(t, "job"))}})
		if problems.HasErrors() {
			t.Fatalf("the generator gave a bad job: %v", problems)
		}
		for _, p := range job.Parts {
			d := Of(p)
			runsThrough(t, d.Section.Outer, float64(p.Length.Value))
			runsThrough(t, d.Section.Inner, float64(p.Length.Value))
			wallEverywhere(t, d.Section)
			for _, f := range p.Features {
				drawnSomewhere(t, d, f.Head().Name)
			}
		}
	})
}

func runsThrough(t *rapid.T, segments []plan.Segment, length float64) {
	z := 0.0
	for _, s := range segments {
		if math.Abs(s.Z0-z) > tiny || s.Z1 < s.Z0 || s.R0 < 0 || s.R1 < 0 {
			t.Fatalf("segment %+v does not begin at %g", s, z)
		}
		z = s.Z1
	}
	if math.Abs(z-length) > tiny {
		t.Fatalf("the curve ends at %g, the part at %g", z, length)
	}
}

func wallEverywhere(t *rapid.T, s plan.Section) {
	for _, o := range s.Outer {
		z := (o.Z0 + o.Z1) / 2
		if in := curve(s.Inner).radius(z); in >= at(o, z) {
			t.Fatalf("at %g the inside %g is not inside the outside %g", z, in, at(o, z))
		}
	}
}

func drawnSomewhere(t *rapid.T, d plan.Drawing, feature string) {
	for _, dim := range d.Dims {
		if dim.Feature == feature && dim.Text != "" {
			return
		}
	}
	t.Fatalf("%s is not dimensioned", feature)
}
