package planner_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// shopPart is one of the parts that a shop makes every week, in the built-in workshop.
func shopPart(t testing.TB, name string) *partspec.Job {
	t.Helper()
	return load(t, filepath.Join("testdata", "shop", name+".hcl"))
}

// The mouths of bores of a plate are broken by a countersink that is large enough, else in the lathe; threads are tapped where the taps are owned, else cut from the
// lead screw, after their lead chamfer.
func TestMouthsOfFlatParts(t *testing.T) {
	gland := answered(t, shopPart(t, "gland-plate"))
	for feature, process := range map[string]plan.Process{"lead": plan.Chamfer, "back": plan.Chamfer, "mouth": plan.Countersink} {
		ops := featureOps(gland, feature)
		require.Len(t, ops, 1, feature)
		assert.Equal(t, process, ops[0].Process, feature)
	}
	ids := operationIDs(answered(t, shopPart(t, "screw-plate")))
	assert.Equal(t, []string{"bore.screw/bore", "chamfer.lead/chamfer", "thread.fine/thread"}, keep(ids, "bore.screw/bore", "chamfer.lead/chamfer", "thread.fine/thread"))
	stud := answered(t, shopPart(t, "stud-plate"))
	for _, feature := range []string{"lock", "stud"} {
		ops := featureOps(stud, feature)
		require.Len(t, ops, 1, feature)
		assert.Equal(t, plan.Tap, ops[0].Process, feature)
	}
}

// operationIDs lists all operations of the first part, in order.
func operationIDs(p *plan.Plan) []string {
	var list []string
	for _, s := range p.Parts[0].Setups {
		list = append(list, ids(s.Operations)...)
	}
	return list
}

// keep is what of a list is among some words, in the list's order.
func keep(list []string, words ...string) []string {
	var kept []string
	for _, l := range list {
		for _, w := range words {
			if l == w {
				kept = append(kept, l)
			}
		}
	}
	return kept
}

// What cuts a mouth or a thread otherwise than drawn is refused.
func TestMouthCorruptions(t *testing.T) {
	for _, c := range []struct {
		name, part, op string
		spoil          func(*plan.Setup, *plan.Operation)
		clause         string
	}{
		{"a countersink goes too deep", "gland-plate", "chamfer.mouth/chamfer", func(_ *plan.Setup, o *plan.Operation) { deeper(o, 12) }, "least metal"},
		{"a countersink stays too high", "gland-plate", "chamfer.mouth/chamfer", func(_ *plan.Setup, o *plan.Operation) { deeper(o, -12) }, "most metal"},
		{"the mouth of another hole", "gland-plate", "chamfer.mouth/chamfer", func(_ *plan.Setup, o *plan.Operation) { o.Cuts[0].At.XMM -= 28 }, "most metal"},
		{"the mouth at the wrong face", "gland-plate", "chamfer.mouth/chamfer", func(s *plan.Setup, _ *plan.Operation) { s.FreeEnd = "left" }, "most metal"},
		{"by a drill", "gland-plate", "chamfer.mouth/chamfer", func(_ *plan.Setup, o *plan.Operation) {
			o.Tool.ID, o.Tool.SizeMM, o.Cuts[0].ToolID, o.Cuts[0].ToolSizeMM = "drills", 10, "drills", 10
		}, "tool"},
		{"no mouth at all", "gland-plate", "chamfer.mouth/chamfer", func(_ *plan.Setup, o *plan.Operation) { o.Process, o.Cuts, o.Card = plan.Deburr, nil, nil }, "most metal"},
		{"a lathe's chamfer too deep", "gland-plate", "chamfer.lead/chamfer", func(_ *plan.Setup, o *plan.Operation) { last(o).To[0].Graduations += 30 }, "least metal"},
		{"a lathe's chamfer too shallow", "gland-plate", "chamfer.lead/chamfer", func(_ *plan.Setup, o *plan.Operation) { last(o).To[0].Graduations -= 30 }, "most metal"},
		{"about another place", "screw-plate", "thread.fine/thread", func(s *plan.Setup, _ *plan.Operation) { s.CentreX += 3 }, "thread"},
		{"a thread from the wrong face", "screw-plate", "thread.fine/thread", func(s *plan.Setup, _ *plan.Operation) { s.FreeEnd = "left" }, "reach"},
		{"a thread of no tool", "screw-plate", "thread.fine/thread", func(_ *plan.Setup, o *plan.Operation) { o.Tool.ID = "outside threading tool" }, "tool"},
		{"a thread that is never cut", "screw-plate", "thread.fine/thread", func(_ *plan.Setup, o *plan.Operation) { o.Process, o.Card = plan.Deburr, nil }, "finished part"},
		{"a thread before its bore", "screw-plate", "bore.screw/bore", func(s *plan.Setup, _ *plan.Operation) { s.Operations = s.Operations[:len(s.Operations)-1] }, "blank"},
		{"a thread in another feature's name", "screw-plate", "thread.fine/thread", func(_ *plan.Setup, o *plan.Operation) { o.Feature = "screw" }, "thread"},
		{"a tap that stops short", "stud-plate", "thread.stud/thread", func(_ *plan.Setup, o *plan.Operation) { shift(o, 4) }, "depth"},
		{"a tap into the floor", "stud-plate", "thread.stud/thread", func(_ *plan.Setup, o *plan.Operation) { shift(o, -6) }, "depth"},
		{"a tap in the wrong hole", "stud-plate", "thread.stud/thread", func(_ *plan.Setup, o *plan.Operation) { o.Cuts[0].At.XMM = 20 }, "tool"},
		{"a counterbore goes too deep", "clamp-plate", "counterbore.head/counterbore", func(_ *plan.Setup, o *plan.Operation) { deeper(o, 12) }, "least metal"},
		{"a counterbore stays too high", "clamp-plate", "counterbore.head/counterbore", func(_ *plan.Setup, o *plan.Operation) { deeper(o, -12) }, "most metal"},
		{"a counterbore of another size", "clamp-plate", "counterbore.head/counterbore", func(_ *plan.Setup, o *plan.Operation) {
			o.Tool.SizeMM = 18
			last(o).ToolSizeMM = 18
		}, "least metal"},
		{"a counterbore without its hole", "clamp-plate", "bore.screw/drill", func(s *plan.Setup, _ *plan.Operation) { s.Operations = s.Operations[1:] }, "located"},
		{"a counterbore beside its hole", "clamp-plate", "counterbore.head/counterbore", func(_ *plan.Setup, o *plan.Operation) { o.Cuts[0].At.XMM -= 20 }, "located"},
		{"a counterbore in the back", "clamp-plate", "counterbore.head/counterbore", func(s *plan.Setup, _ *plan.Operation) { s.FreeEnd = "left" }, "most metal"},
		{"a counterbore by a drill", "clamp-plate", "counterbore.head/counterbore", func(_ *plan.Setup, o *plan.Operation) { o.Tool.ID, last(o).ToolID = "drills", "drills" }, "tool"},
		{"drilled at marks that are on the other face", "dial-panel", "holes.dials/drill", func(s *plan.Setup, _ *plan.Operation) { s.FreeEnd = "left" }, "located"},
		{"a tap from the wrong face", "stud-plate", "thread.stud/thread", func(s *plan.Setup, _ *plan.Operation) { s.FreeEnd = "left" }, "depth"},
	} {
		t.Run(c.name, func(t *testing.T) {
			job := shopPart(t, c.part)
			text, err := json.Marshal(answered(t, job))
			require.NoError(t, err)
			var p plan.Plan
			require.NoError(t, json.Unmarshal(text, &p))
			s, o := operationOf(t, &p.Parts[0], c.op)
			c.spoil(s, o)
			_, failures := replay.Prove(job, &p)
			assert.Contains(t, clauses(failures), c.clause, "%v", failures)
		})
	}
}

func last(o *plan.Operation) *plan.Cut { return &o.Cuts[len(o.Cuts)-1] }

// deeper lets every cut go so many graduations deeper, or what it is measured by a tenth of a millimetre for each two.
func deeper(o *plan.Operation, graduations int64) {
	for i := range o.Cuts {
		if o.Cuts[i].ToMeasure != nil {
			o.Cuts[i].ToMeasure.LowMM -= float64(graduations) / 20
			o.Cuts[i].ToMeasure.HighMM -= float64(graduations) / 20
			continue
		}
		for k := range o.Cuts[i].To {
			o.Cuts[i].To[k].Graduations += graduations
		}
	}
}

// shift moves where cuts end by measuring.
func shift(o *plan.Operation, mm float64) {
	for i := range o.Cuts {
		if q := o.Cuts[i].ToMeasure; q != nil {
			q.LowMM, q.HighMM = q.LowMM+mm, q.HighMM+mm
		}
	}
}

// A counterbore round a bore is cut under the spindle that drilled it. Where no tool of its size is owned the sheet says which would do and which size is; and work that
// would foul the lathe's bed is not put there, whatever carries it.
func TestCounterboreOfAPlate(t *testing.T) {
	job := shopPart(t, "clamp-plate")
	good := answered(t, job)
	assert.Equal(t, []string{"bore.screw/drill", "counterbore.head/counterbore"}, keep(operationIDs(good), "bore.screw/drill", "counterbore.head/counterbore"))

	bare := withShop(job, func(w *partspec.Workshop) {
		w.Tools = slices.DeleteFunc(slices.Clone(w.Tools), func(t partspec.Tool) bool { return t.Kind == partspec.Counterbores })
	})
	refused := answered(t, bare).Parts[0]
	require.NotEmpty(t, refused.Refusals)
	text := fmt.Sprint(refused.Refusals)
	assert.Contains(t, text, `tool "counterbores" { sizes = [15] } would do, or diameter = 16`)
	assert.Contains(t, text, "over the lathe's 180")

	for _, o := range []struct{ drawn, made string }{{"diameter = 15", "diameter = 9.5"}} {
		text, err := os.ReadFile("testdata/shop/clamp-plate.hcl")
		require.NoError(t, err)
		other, _, found := partspec.Parse([]partspec.Source{{Name: "p.hcl", Text: []byte(strings.Replace(string(text), o.drawn, o.made, 1))}})
		require.False(t, found.HasErrors(), "%v", found)
		assert.Contains(t, fmt.Sprint(answered(t, other).Parts[0].Refusals), "or diameter = 10 where")
	}
}

// Thin plate whose faces no holding leaves free is refused with the word that leaves them as they are.
func TestThinFacesAreLeftAsSupplied(t *testing.T) {
	hcl := "part \"p\" {\n material = \"brass\"\n thickness = 3.5\n stock \"plate\" {\n thickness = 4\n }\n outline \"rectangle\" {\n width = 50\n height = 40\n }\n}\n"
	job, _, found := partspec.Parse([]partspec.Source{{Name: "p.hcl", Text: []byte(hcl)}})
	require.False(t, found.HasErrors(), "%v", found)
	refused := answered(t, job).Parts[0]
	require.NotEmpty(t, refused.Refusals)
	assert.Contains(t, refused.Refusals[0].Remedies[0], "faces_as_supplied = true")
}
