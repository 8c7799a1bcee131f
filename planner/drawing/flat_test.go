package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

const coverBody = `thickness = 4
  stock "plate" { thickness = 6 }
  outline "round_topped" {
    width  = 60
    height = 70
    radius = 30
  }
  bore "main" {
    at       = "top.centre"
    diameter = "40 H8"
  }
  holes "fixing" {
    at        = [[8, 8], [52, 8], ["8 ±0.05", 36], [52, 36]]
    clearance = "M4"
    countersink { diameter = 8 }
  }
  holes "ring" {
    circle   = 50
    count    = 6
    start    = 90
    about    = "main"
    thread   = "M2"
    position = 0.2
  }`

func textsOf(d plan.Drawing, feature string, kind plan.DimKind) []string {
	var out []string
	for _, one := range d.Dims {
		if one.Feature == feature && one.Kind == kind {
			out = append(out, one.Text)
		}
	}
	return out
}

func TestFlatPartIsDrawnFromItsDatum(t *testing.T) {
	d := Of(part(t, coverBody))
	require.NotNil(t, d.Flat)
	assert.Empty(t, d.Section.Outer, "a flat part is no turned section")
	assert.Equal(t, []string{"left", "bottom"}, d.Datum)
	require.Len(t, d.Flat.Outline, 4)
	assert.Equal(t, plan.OutlineSegment{Name: "top", X0: 60, Y0: 70, X1: 0, Y1: 70, RadiusMM: 30, CentreX: 30, CentreY: 70}, d.Flat.Outline[2])
	assert.Equal(t, []string{"60 ±0.3"}, textsOf(d, "right", plan.DimAcross))
	assert.Equal(t, []string{"70 ±0.3"}, textsOf(d, "top", plan.DimUp))
	assert.Equal(t, []string{"R30 ±0.2"}, textsOf(d, "top", plan.DimPlace))
	assert.Equal(t, []string{"Ø40 H8 (40.000 to 40.039) through"}, textsOf(d, "main", plan.DimPlace))
	assert.Equal(t, []string{"30 ±0.2"}, textsOf(d, "main", plan.DimAcross))
	assert.Empty(t, textsOf(d, "main", plan.DimUp), "the height says it already")
}

func TestPatternsAreDrawn(t *testing.T) {
	d := Of(part(t, coverBody))
	require.Len(t, d.Flat.Holes, 11)
	assert.Equal(t, plan.FlatHole{Number: 3, Feature: "fixing", XMM: 8, YMM: 36, DiameterMM: 4.5, FromZ: 4, ToZ: 0, SinkMM: 8}, d.Flat.Holes[3])
	assert.Equal(t, []plan.Ring{{Feature: "ring", XMM: 30, YMM: 70, DiameterMM: 50, StartDeg: 90, Count: 6}}, d.Rings)
	assert.Equal(t, []string{"4 × Ø4.5 (4.50 to 4.68) for M4 through, countersink Ø8 × 90°"}, textsOf(d, "fixing", plan.DimPlace))
	assert.Equal(t, []string{"6 × M2 through, on Ø50, 1 at 90°"}, textsOf(d, "ring", plan.DimPlace))
	assert.Equal(t, []string{"8 ±0.2", "52 ±0.3", "8 ±0.05 for hole 3"}, textsOf(d, "fixing", plan.DimAcross), "no limits of a hole are lost")
	assert.Contains(t, d.Notes, "ring: each hole's axis in a zone of Ø0.2 about its place.")
}

func TestDistancesRunFromTheDatumEdge(t *testing.T) {
	d := Of(part(t, `thickness = 6
  stock "sheet" { thickness = 6 }
  outline "rectangle" {
    width         = 40
    height        = 20
    corner_radius = 5
    datum         = ["right", "bottom"]
  }
  holes "feet" {
    at       = [[30, 10]]
    diameter = 5
    depth    = 2
    from     = "back"
  }`))
	assert.Equal(t, []string{"10 ±0.2"}, textsOf(d, "feet", plan.DimAcross))
	assert.Equal(t, []string{"Ø5 ±0.1 × 2 deep, from the back"}, textsOf(d, "feet", plan.DimPlace))
	assert.Equal(t, []string{"4 × R5 ±0.5"}, textsOf(d, "top_right", plan.DimPlace))
	assert.Equal(t, 0.0, d.Flat.Holes[0].FromZ)
	assert.Equal(t, []string{"6, as supplied"}, textsOf(d, "part", plan.DimLength))
}

func TestDiscIsMeasuredFromItsMiddle(t *testing.T) {
	d := Of(part(t, "thickness = 2\nstock \"sheet\" { thickness = 2 }\noutline \"disc\" { diameter = 80 }\nbore \"eye\" {\n at = [0, 0]\n diameter = \"8 H7\"\n}"))
	assert.Equal(t, []string{"Ø80 ±0.3"}, textsOf(d, "rim", plan.DimPlace))
	assert.Empty(t, textsOf(d, "eye", plan.DimAcross))
	assert.Empty(t, d.Datum)
}

func TestManyPlacesBecomeAList(t *testing.T) {
	d := Of(part(t, "thickness = 3\nstock \"sheet\" { thickness = 3 }\noutline \"rectangle\" {\n width = 90\n height = 30\n}\n"+
		"holes \"row\" {\n at = [[10, 5], [20, 6], [30, 7], [40, 8], [50, 9]]\n diameter = 3\n}"))
	assert.Empty(t, textsOf(d, "row", plan.DimAcross))
	assert.Contains(t, d.Notes[0], "row, hole at X, Y: 1 at 10, 5; 2 at 20, 6;")
}

func TestWhatCrossesTheAxis(t *testing.T) {
	p := part(t, bar+"spigot \"a\" {\n diameter = 30\n length = 40\n}")
	p.Features = append(p.Features, &partspec.Seat{FeatureHead: partspec.FeatureHead{Word: "seat", Name: "pipe"}, On: partspec.Left, Radius: partspec.Size{Low: 57, High: 57},
		Across: 30, Depth: 2.009, AxisZ: -54.991, Angle: 90})
	d := Of(p)
	require.Len(t, d.Crossed, 1)
	assert.Equal(t, plan.CrossedSeat, d.Crossed[0].Kind)
	assert.Equal(t, "left", d.Crossed[0].On)
	assert.Equal(t, 2.009, d.Crossed[0].Z1)
	assert.Contains(t, textsOf(d, "pipe", plan.DimLeader)[0], "2.009 deep at the crown, pipe along 90°")
}

func TestChainIsMeasuredAtCornersAndCentres(t *testing.T) {
	d := Of(part(t, `thickness = 6
  stock "plate" { thickness = 8 }
  outline "chain" {
    arc "boss" {
      centre = [0, 0]
      radius = 12
    }
    line "lower" {}
    arc "eye" {
      centre = [50, 10]
      radius = 6
    }
    line "upper" {}
  }`))
	assert.Equal(t, []string{"R12 ±0.2"}, textsOf(d, "boss", plan.DimPlace))
	assert.Equal(t, []string{"R6 ±0.1"}, textsOf(d, "eye", plan.DimPlace))
	assert.Equal(t, []string{"50"}, textsOf(d, "eye", plan.DimAcross))
	assert.Equal(t, []string{"10"}, textsOf(d, "eye", plan.DimUp))
	assert.Empty(t, textsOf(d, "lower", plan.DimAcross), "no one can measure to where a line touches an arc")
}
