package replay

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// The bush's body, bore and rim are cut in one setting, its left face in another, located on the body in packed jaws: 0.1 run-out, which over a
// grip of 14 tilts a face of Ø28 by twice that.
func TestRelationsThroughTheSetups(t *testing.T) {
	good := bush(t)
	for _, k := range []struct {
		relation, of, to, within string
		ok                       bool
	}{
		{"run_out", "body", "main", "0.01", true},
		{"run_out", "body", "main", "0.004", false},
		{"concentric", "rim", "body", "0.01", true},
		{"square", "face.right", "main", "0.01", true},
		{"square", "face.left", "main", "0.3", true},
		{"square", "face.left", "main", "0.15", false},
		{"parallel", "face.left", "face.right", "0.3", true},
		{"parallel", "face.left", "face.right", "0.05", false},
		{"square", "rim.right", "body", "0.01", true},
	} {
		hcl := strings.Replace(bushHCL, "  run_out {\n    of     = \"body\"\n    to     = \"main\"\n    within = 0.02\n  }",
			"  "+k.relation+" {\n    of     = \""+k.of+"\"\n    to     = \""+k.to+"\"\n    within = "+k.within+"\n  }", 1)
		job, _, diags := partspec.Parse([]partspec.Source{{Name: "t.hcl", Text: []byte(hcl)}})
		require.False(t, diags.HasErrors(), "%v", diags)
		_, failures := Prove(job, good.plan())
		if k.ok {
			assert.Empty(t, failures, "%v", k)
			continue
		}
		require.NotEmpty(t, failures, "%v", k)
		assert.Equal(t, "relation", failures[0].Clause, "%v", failures)
	}
}

// A ring from tube: outside and bore from the bar, then the second face on a stub mandrel in the bore.
const ringHCL = `
part "ring" {
  material = "brass-free-cutting"
  length   = 15
  stock "tube" {
    outside = 40
    inside  = 20
  }
  spigot "outside" { diameter = "38 +0 -0.1" }
  bore "way" { diameter = "25 +0.1 -0" }
  run_out {
    of     = "outside"
    to     = "way"
    within = 0.05
  }
}
`

func ring(t *testing.T) *bench {
	t.Helper()
	b := newBench(t, ringHCL, -26, 16)
	b.hold("right", -23, -5, 20, 21, 1500, "stock", "")
	b.do("face.right", "face.right", plan.Face, knife, 0, 450, 0.1, 1)
	b.zero("cross", 40, false)
	b.zero("saddle", 15, false)
	b.cut("cut", b.at(20, 15), b.at(9.8, 15), nil)
	b.do("way/bore", "way", plan.BoreOut, "boring/12 mm boring bar", 0, 450, 0.05, 0.9)
	b.zero("cross", 20, true)
	b.zero("saddle", 15, false)
	for k, r := range []float64{10.8, 11.6, 12.2} {
		b.turn("rough "+number(k+1), r, 16, -2.6, nil)
	}
	b.turn("finish", 12.5, 16, -2.6, &plan.Measured{What: "diameter", LowMM: 25, HighMM: 25.1})
	b.do("outside/turn", "outside", plan.TurnFinish, knife, 0, 450, 0.1, 1)
	b.zero("cross", 40, false)
	b.zero("saddle", 15, false)
	b.turn("cut", 18.98, 16, -2.6, nil)
	b.do("part/part_off", "part", plan.PartOff, parting, 0, 200, 0.03, 0)
	b.zero("cross", 37.96, false)
	b.zero("saddle", 15, false)
	b.cut("part off", b.at(19.98, -2.5), b.at(12.28, -2.5), nil)

	b.hold("left", 1, 14, 12.525, 0, 0, "way", "")
	s := b.setup
	s.Holding, s.HoldingKind, s.RunOutMM = "stub_mandrel", "stub_mandrel", 0.015
	s.Grip = plan.Grip{Kind: "split_mandrel", Surface: "way", Inside: true, FromZ: 1, ToZ: 14, RadiusMM: 12.525}
	b.do("face.left", "face.left", plan.Face, knife, 0, 450, 0.1, 0.7)
	b.zero("cross", 37.96, false)
	b.zero("saddle", -0.5, false)
	b.cut("to length", b.at(18.98, 0), b.at(12.18, 0), &plan.Measured{What: "position", LowMM: -0.1, HighMM: 0.1})
	return b
}

func TestRingIsProved(t *testing.T) {
	assert.Equal(t, 8, proves(t, ring(t)).Cuts)
}

func TestRingCorruptionsAreRefused(t *testing.T) {
	good := ring(t)
	for _, c := range []corruption{
		{"mandrel in the way of the tool", held(2, func(s *plan.Setup) { s.Grip.FromZ = -0.5 }), ""},
		{"mandrel of another bore", held(2, func(s *plan.Setup) { s.Grip.RadiusMM = 12 }), "grip"},
		{"mandrel larger than owned", held(2, func(s *plan.Setup) { s.Holding, s.HoldingKind = "plain_mandrel", "stub_mandrel" }), "holding"},
		{"a bar too thick for the bore", change("way/bore", func(o *plan.Operation) { o.Tool.ID = "boring/16 mm boring bar" }), "reach"},
		{"bore turned inward", change("way/bore", func(o *plan.Operation) { o.Zeros[0].Outward = false }), ""},
		{"bored too wide", change("way/bore", func(o *plan.Operation) { o.Cuts[3].ToMeasure.HighMM = 25.12 }), "least metal"},
		{"faced too far down, into the mandrel", func(t *testing.T, p *plan.Plan) {
			o := op(t, p, "face.left")
			o.Cuts[0].ToMeasure.HighMM, o.Cuts[0].ToMeasure.LowMM = 1.5, 1.3
		}, ""},
		{"a screw and washer where the face is cut", held(2, func(s *plan.Setup) { s.Grip.Kind, s.Grip.WasherMM = "mandrel", 14.525 }), "clearance"},
		{"a washer that finds no face", held(2, func(s *plan.Setup) { s.Grip.Kind, s.Grip.WasherMM = "mandrel", 12 }), "grip"},
		{"a washer that is not there", held(2, func(s *plan.Setup) { s.Grip.WasherMM = 14.5 }), "grip"},
		{"spread over nothing", held(2, func(s *plan.Setup) { s.Grip.FromZ, s.Grip.ToZ = 12.5, 14 }), "grip"},
		{"a cut that the mandrel does not drive", change("face.left", func(o *plan.Operation) { o.FeedMM = 3 }), "grip force"},
		{"run-out belied", held(2, func(s *plan.Setup) { s.RunOutMM = 0 }), "run-out"},
	} {
		t.Run(c.name, func(t *testing.T) { refuse(t, good, c) })
	}
}

// What the workshop does not own or cannot reach refuses a plan that another workshop's owner could follow.
func TestPoorerWorkshopsRefuse(t *testing.T) {
	for name, k := range map[string]struct {
		spoil  func(*partspec.Workshop)
		clause string
	}{
		"bar too short":       {func(w *partspec.Workshop) { toolNamed(w, "12 mm boring bar").Reach = 15 }, "reach"},
		"bar too thin":        {func(w *partspec.Workshop) { toolNamed(w, "12 mm boring bar").BarDiameter = 4 }, "reach"},
		"blade too short":     {func(w *partspec.Workshop) { toolNamed(w, "parting").Reach = 5 }, "reach"},
		"nose too round":      {func(w *partspec.Workshop) { toolNamed(w, "right-hand knife tool").NoseRadius = 1 }, ""},
		"blade too wide":      {func(w *partspec.Workshop) { toolNamed(w, "parting").Width = 3 }, ""},
		"no bore gauge":       {func(w *partspec.Workshop) { w.Instruments = w.Instruments[:1] }, "measure"},
		"weak motor":          {func(w *partspec.Workshop) { w.Machines[0].PowerKW = 0.1 }, "power"},
		"coarser dial":        {func(w *partspec.Workshop) { w.Machines[0].Dials[0].Graduation.Value = 0.05 }, ""},
		"dial reads radius":   {func(w *partspec.Workshop) { w.Machines[0].Dials[0].Reads = partspec.ReadsRadius }, ""},
		"short cross slide":   {func(w *partspec.Workshop) { w.Machines[0].Dials[0].Travel = 5 }, "travel"},
		"small chuck":         {func(w *partspec.Workshop) { w.Holdings[0].Largest = 30 }, "capacity"},
		"weak chuck":          {func(w *partspec.Workshop) { w.Holdings[0].GripFirm = 1000 }, "grip force"},
		"slow chuck":          {func(w *partspec.Workshop) { w.Holdings[0].MostSpeed = 300 }, "speed"},
		"worn chuck, mandrel": {func(w *partspec.Workshop) { holdingNamed(w, "stub_mandrel").RunOut = 0.2 }, "run-out"},
		"small swing":         {func(w *partspec.Workshop) { w.Machines[0].Swing = 30 }, "machine"},
	} {
		t.Run(name, func(t *testing.T) {
			b := ring(t)
			k.spoil(b.job.Workshop)
			_, failures := Prove(b.job, b.plan())
			require.NotEmpty(t, failures)
			if k.clause == "" {
				return
			}
			var clauses []string
			for _, f := range failures {
				clauses = append(clauses, f.Clause)
			}
			assert.Contains(t, clauses, k.clause, "%v", failures)
		})
	}
}

func toolNamed(w *partspec.Workshop, name string) *partspec.Tool {
	for i := range w.Tools {
		if w.Tools[i].Name == name {
			return &w.Tools[i]
		}
	}
	return nil
}

func holdingNamed(w *partspec.Workshop, name string) *partspec.Holding {
	for i := range w.Holdings {
		if w.Holdings[i].Name == name {
			return &w.Holdings[i]
		}
	}
	return nil
}
