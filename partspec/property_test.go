package partspec_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"catchplate/partspec"
	"catchplate/partspec/parttest"
	"catchplate/partspec/units"
)

func parse(t *rapid.T, text string) *partspec.Job {
	job, _, found := partspec.Parse([]partspec.Source{{Name: "drawn.hcl", Text: []byte(text)}})
	for _, d := range found.Errs() {
		t.Logf("%v", d)
	}
	require.NotNil(t, job, text)
	return job
}

// Every drawn job is accepted, and what is promised of a Job holds.
func TestDrawnJobsAreValid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := parse(t, parttest.Job().Draw(t, "job"))
		require.NotNil(t, job.Workshop)
		for _, p := range job.Parts {
			checkPart(t, p)
		}
	})
}

// Every drawn flat part is accepted without a question, and what is promised of a Job holds.
func TestDrawnFlatPartsAreValid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := parttest.FlatPart().Draw(t, "part")
		for _, inches := range []bool{false, true} {
			job, _, found := partspec.Parse([]partspec.Source{{Name: "drawn.hcl", Text: []byte(text.HCL(inches))}})
			require.Empty(t, found, text.HCL(inches))
			checkFlat(t, job.Parts[0])
		}
	})
}

// Every drawn job of a flat part is accepted with its workshop.
func TestDrawnFlatJobsAreValid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := parse(t, parttest.FlatJob().Draw(t, "job"))
		require.NotEmpty(t, job.Workshop.Machines)
	})
}

// A what-if on the built-in workshop of one job leaves that of the next alone.
func TestBuiltInWorkshopsAreApart(t *testing.T) {
	const text = "part \"p\" {\n material = \"brass\"\n length = 5\n stock \"bar\" {\n diameter = 8\n }\n spigot \"s\" {\n diameter = 6\n }\n}\n"
	load := func() *partspec.Workshop {
		job, _, found := partspec.Parse([]partspec.Source{{Name: "p.hcl", Text: []byte(text)}})
		require.Empty(t, found)
		return job.Workshop
	}
	first := load()
	require.True(t, first.BuiltIn)
	first.Machines[0].Dials[0], first.Tools[1].Sizes[0], first.Holdings[2].Sizes[0] = partspec.Dial{}, 0, 0
	assert.Positive(t, load().Tools[1].Sizes[0])
	assert.Positive(t, load().Holdings[2].Sizes[0])
	first.Tools[0], first.Holdings[0], first.Machines[0], first.Name = partspec.Tool{}, partspec.Holding{}, partspec.Machine{}, ""
	second := load()
	assert.NotEmpty(t, second.Name)
	assert.NotEmpty(t, second.Tools[0].Kind)
	assert.NotEmpty(t, second.Holdings[0].Kind)
	assert.NotEmpty(t, second.Machines[0].Kind)
	assert.NotEmpty(t, second.Machines[0].Dials[0].Name)
}

// checkFlat asserts the promises of a flat part: its outline is closed, holes lie in metal, and their limits hold their places.
func checkFlat(t assert.TestingT, p *partspec.Part) {
	assert.True(t, p.Flat())
	checkSizes(t, p.Length, p.Stock.Thickness)
	edges := p.Outline.Edges
	for i, e := range edges {
		next := edges[(i+1)%len(edges)]
		assert.InDelta(t, float64(e.X1), float64(next.X0), micrometre)
		assert.InDelta(t, float64(e.Y1), float64(next.Y0), micrometre)
		assert.GreaterOrEqual(t, e.Off, units.Length(0))
		assert.GreaterOrEqual(t, e.On, units.Length(0))
		assert.NotEmpty(t, e.Basis)
	}
	for _, f := range p.Features {
		switch f := f.(type) {
		case *partspec.Bore:
			checkSizes(t, f.Diameter, f.Depth)
			checkSpan(t, p, f.Span)
			checkPlace(t, *f.At)
		case *partspec.Holes:
			checkSizes(t, f.Diameter, f.Depth)
			checkSpan(t, p, f.Span)
			assert.Equal(t, f.Through, f.Span.Length() == p.Length.Value)
			assert.NotEmpty(t, f.Places)
			for _, at := range f.Places {
				checkPlace(t, at)
			}
		}
	}
}

func checkPlace(t assert.TestingT, p partspec.Point) {
	for _, c := range []partspec.Size{p.X, p.Y} {
		assert.LessOrEqual(t, c.Low, c.Value)
		assert.GreaterOrEqual(t, c.High, c.Value)
		assert.NotEmpty(t, c.Basis)
	}
}

// checkPart asserts the promises of the package comment.
func checkPart(t assert.TestingT, p *partspec.Part) {
	reached := units.Length(0)
	for _, f := range p.Features {
		switch f := f.(type) {
		case *partspec.Spigot:
			checkSizes(t, f.Diameter, f.Length)
			reached += f.Span.Length()
		case *partspec.Taper:
			checkSizes(t, f.Large, f.Small, f.Length)
			reached += f.Span.Length()
		case *partspec.Profile:
			assert.Less(t, f.Zone.Low, f.Zone.High)
			assert.Equal(t, f.Span, partspec.Span{Left: f.Segments[0].Z0, Right: f.Segments[len(f.Segments)-1].Z1})
			reached += f.Span.Length()
		case *partspec.Bore:
			checkSizes(t, f.Diameter, f.Depth)
			checkSpan(t, p, f.Span)
		case *partspec.Recess:
			checkSizes(t, f.Diameter, f.Width)
			checkSpan(t, p, f.Span)
		case *partspec.Groove:
			checkSizes(t, f.Bottom, f.Width)
			checkSpan(t, p, f.Span)
		case *partspec.Thread:
			checkSizes(t, f.Length)
			checkSpan(t, p, f.Span)
		case *partspec.Knurl:
			checkSpan(t, p, f.Span)
		case *partspec.Chamfer:
			checkSizes(t, f.Size)
			checkEdge(t, p, f.Edge)
		case *partspec.Fillet:
			checkSizes(t, f.Radius)
			checkEdge(t, p, f.Edge)
		default:
			checkBeside(t, p, f)
		}
	}
	assert.InDelta(t, float64(p.Length.Value), float64(reached), micrometre, "the outside covers the part")
}

// checkBeside asserts the promises of what lies beside or across the axis.
func checkBeside(t assert.TestingT, p *partspec.Part, f partspec.Feature) {
	switch f := f.(type) {
	case *partspec.Holes:
		checkSizes(t, f.Diameter, f.Depth)
		checkSpan(t, p, f.Span)
		assert.NotEmpty(t, f.Places)
		for _, at := range f.Places {
			checkPlace(t, at)
		}
	case *partspec.Seat:
		checkSizes(t, f.Radius)
		assert.Positive(t, f.Depth)
		assert.Less(t, f.Depth, p.Length.Value)
		assert.LessOrEqual(t, float64(f.Across), 2*float64(f.Radius.Value)+micrometre)
	case *partspec.CrossHole:
		checkSizes(t, f.Diameter)
		assert.LessOrEqual(t, f.Z.Low, f.Z.High)
		assert.NotNil(t, p.Feature(f.On))
	case *partspec.Flat:
		checkSizes(t, f.Distance)
		checkSpan(t, p, f.Span)
	case *partspec.Slot:
		checkSizes(t, f.Width, f.Depth)
		checkSpan(t, p, f.Span)
	}
}

func checkSizes(t assert.TestingT, sizes ...partspec.Size) {
	for _, s := range sizes {
		assert.Positive(t, s.Value)
		assert.Positive(t, s.Low)
		assert.LessOrEqual(t, s.Low, s.High)
		assert.NotEmpty(t, s.Basis)
		assert.NotEmpty(t, s.Range.Filename)
	}
}

func checkSpan(t assert.TestingT, p *partspec.Part, s partspec.Span) {
	assert.GreaterOrEqual(t, s.Left, units.Length(0))
	assert.Less(t, s.Left, s.Right)
	assert.LessOrEqual(t, s.Right, p.Length.Value)
}

func checkEdge(t assert.TestingT, p *partspec.Part, e partspec.Edge) {
	assert.NotNil(t, p.Feature(e.Feature))
	assert.NotEqual(t, partspec.EndInvalid, e.End)
	assert.NotEqual(t, partspec.EndInvalid, e.Axial)
	assert.Positive(t, e.R)
}

// The same part written in inches has the same sizes and places.
func TestInchesAndMillimetresAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := parttest.Part().Draw(t, "part")
		if rapid.Bool().Draw(t, "flat") {
			text = parttest.FlatPart().Draw(t, "flat part")
		}
		metric, inch := parse(t, text.HCL(false)).Parts[0], parse(t, text.HCL(true)).Parts[0]
		require.Len(t, inch.Features, len(metric.Features))
		for i, f := range metric.Features {
			assert.Equal(t, figures(f), figures(inch.Features[i]))
		}
	})
}

// figures are the sizes and places of a feature without the words of its file.
func figures(f partspec.Feature) []units.Length {
	var list []units.Length
	size := func(s ...partspec.Size) {
		for _, s := range s {
			list = append(list, s.Value.Round(6), s.Low.Round(6), s.High.Round(6)) // nanometres
		}
	}
	switch f := f.(type) {
	case *partspec.Spigot:
		size(f.Diameter, f.Length)
		list = append(list, f.Span.Left, f.Span.Right)
	case *partspec.Bore:
		size(f.Diameter, f.Depth)
		list = append(list, f.Span.Left, f.Span.Right)
	case *partspec.Taper:
		size(f.Large, f.Small, f.Length)
	case *partspec.Groove:
		size(f.Bottom, f.Width)
		list = append(list, f.Span.Left, f.Span.Right)
	case *partspec.Recess:
		size(f.Diameter, f.Width)
	case *partspec.Holes:
		size(f.Diameter, f.Depth)
		for _, p := range f.Places {
			size(p.X, p.Y)
		}
	case *partspec.Thread:
		size(f.Length)
	case *partspec.Chamfer:
		size(f.Size)
	case *partspec.Fillet:
		size(f.Radius)
	case *partspec.Profile:
		for _, g := range f.Segments {
			list = append(list, g.Z0.Round(6), g.R0.Round(6), g.Z1.Round(6), g.R1.Round(6), g.Radius.Round(6))
		}
	}
	return list
}
