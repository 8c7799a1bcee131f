package planner_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// curved is a part of mild steel with a curve on it, in the built-in workshop without the tools of some kinds.
func curved(t *testing.T, stock, features string, length float64, without ...partspec.ToolKind) *partspec.Job {
	t.Helper()
	job := parsed(t, fmt.Sprintf("part \"cap\" {\n material = \"mild steel\"\n length = %g\n stock %s\n%s\n}\n", length, stock, features))
	return withShop(job, func(w *partspec.Workshop) {
		w.Tools = slices.DeleteFunc(slices.Clone(w.Tools), func(tool partspec.Tool) bool { return slices.Contains(without, tool.Kind) })
	})
}

// stepsOf is the operation that steps a part's curve.
func stepsOf(t *testing.T, p *plan.Plan) plan.Operation {
	t.Helper()
	require.Empty(t, p.Parts[0].Refusals)
	for _, s := range p.Parts[0].Setups {
		for _, op := range s.Operations {
			if op.Process == plan.Steps {
				return op
			}
		}
	}
	require.Fail(t, "nothing is stepped")
	return plan.Operation{}
}

const (
	bar25 = "\"bar\" {\n diameter = 25\n }"
	body  = "spigot \"body\" {\n diameter = 24\n length = 20\n }\n"
)

// profileOf is a profile of arcs and lines, finished by file.
func profileOf(start float64, pieces ...string) string {
	return fmt.Sprintf("profile \"curve\" {\n finish_by = \"file\"\n zone = [-0.05, 0.1]\n start {\n diameter = %g\n }\n%s\n}\n", start, strings.Join(pieces, "\n"))
}

func arcTo(length, diameter, radius float64, bulge string) string {
	return fmt.Sprintf("arc {\n length = %g\n diameter = %g\n radius = %g\n bulge = %q\n }", length, diameter, radius, bulge)
}

// A curve that falls away towards the free end is stepped by a knife where no round-nosed or grooving tool is owned: layer under layer, each pass from off the end.
func TestKnifeStepsWhatFallsAway(t *testing.T) {
	for name, c := range map[string]struct {
		stock, features string
		length          float64
	}{
		"dome":          {bar25, body + profileOf(22, arcTo(10, 10, 12, "out")), 30},
		"cove":          {bar25, body + profileOf(22, arcTo(10, 12, 14, "in")), 30},
		"cone":          {bar25, body + profileOf(22, "line {\n length = 10\n diameter = 12\n }"), 30},
		"ogee":          {bar25, body + profileOf(22, arcTo(6, 17, 8.6, "out"), "arc {\n length = 6\n diameter = 12\n tangent = true\n }"), 32},
		"behind a nose": {bar25, body + profileOf(22, arcTo(8, 14, 12, "out")) + "spigot \"nose\" {\n diameter = 10\n }", 46},
		"rounded edge":  {bar25, "spigot \"body\" {\n diameter = 22\n }\nfillet \"edge\" {\n edge = \"body.right\"\n radius = 4\n }", 30},
	} {
		t.Run(name, func(t *testing.T) {
			op := stepsOf(t, answered(t, curved(t, c.stock, c.features, c.length, partspec.RoundNose, partspec.Grooving)))
			assert.True(t, strings.HasPrefix(op.Tool.ID, "turning/"), op.Tool.ID)
			require.True(t, op.Steps.Along && op.Steps.ProvenFewest)
			start := op.Cuts[0].From[1].Graduations
			assert.Negative(t, start, "each pass begins off the end")
			deep, far := int64(-1), op.Cuts[0].To[1].Graduations
			for _, cut := range op.Cuts {
				assert.Equal(t, start, cut.From[1].Graduations, cut.Name)
				assert.Greater(t, cut.To[0].Graduations, deep, "%s: the cross slide goes in only", cut.Name)
				assert.LessOrEqual(t, cut.To[1].Graduations, far, "%s: the saddle stops ever sooner", cut.Name)
				deep, far = cut.To[0].Graduations, cut.To[1].Graduations
			}
		})
	}
}

// What rises towards the free end, or lies behind something higher, is refused a knife by name.
func TestKnifeIsRefusedWhatRises(t *testing.T) {
	for why, features := range map[string]string{
		"it cuts only what falls away towards the right end":            body + profileOf(12, arcTo(20, 22, 24, "in")),
		"it is fed along from the right end, and rim stands in its way": body + profileOf(20, arcTo(8, 12, 12, "out")) + "flange \"rim\" {\n diameter = 24\n }",
	} {
		p := answered(t, curved(t, bar25, features, 40, partspec.RoundNose, partspec.Grooving))
		require.NotEmpty(t, p.Parts[0].Refusals, why)
		assert.Contains(t, fmt.Sprint(p.Parts[0].Refusals), why)
	}
}

// A dome that stands on a hexagon's face: the knife goes into the corner, to the millimetre that the saddle tells.
func TestKnifeStepsADomeOnAHexagon(t *testing.T) {
	hexagon := "\"hexagon\" {\n across_flats = 24\n }"
	features := "spigot \"body\" {\n as_supplied = true\n length = 15\n }\n" + profileOf(20, arcTo(8, 6, 10.5, "out"))
	op := stepsOf(t, answered(t, curved(t, hexagon, features, 23, partspec.RoundNose, partspec.Grooving)))
	assert.True(t, op.Steps.Along)
}

// Where two steps lie farther apart than a pass may be deep, passes lie between, and are none of the steps that are counted.
func TestKnifeTakesDeepStepsInPasses(t *testing.T) {
	op := stepsOf(t, answered(t, curved(t, bar25, "spigot \"body\" {\n diameter = 22\n }\nfillet \"edge\" {\n edge = \"body.right\"\n radius = 4\n }", 30, partspec.RoundNose, partspec.Grooving)))
	assert.Greater(t, len(op.Steps.Steps), op.Steps.Count())
	for _, s := range op.Steps.Steps {
		assert.Equal(t, s.Partial, strings.Contains(s.Label, "pass"), s.Label)
	}
	before := int64(0)
	for _, cut := range op.Cuts { // cross dial of the built-in lathe: 0.02 on diameter
		assert.LessOrEqual(t, float64(cut.To[0].Graduations-before)*0.01, op.DepthMM, cut.Name)
		before = cut.To[0].Graduations
	}
}

// A dome that leaves no room for a centre hole in its end gets none.
func TestSmallEndGetsNoCentre(t *testing.T) {
	p := answered(t, curved(t, bar25, body+profileOf(22, arcTo(11, 2, 11.5, "out")), 31, partspec.RoundNose, partspec.Grooving))
	for _, s := range p.Parts[0].Setups {
		assert.False(t, s.Tailstock)
	}
}

// Corruptions of a knife's passes, card and cuts alike, are refused.
func TestKnifeCorruptionsAreRefused(t *testing.T) {
	job := curved(t, bar25, body+profileOf(22, arcTo(10, 10, 12, "out")), 30, partspec.RoundNose, partspec.Grooving)
	for name, spoil := range map[string]func(op *plan.Operation){
		"a pass too long":  func(op *plan.Operation) { moved(op, len(op.Cuts)/2, "saddle", 3) },
		"a pass too deep":  func(op *plan.Operation) { moved(op, len(op.Cuts)/2, "cross", 25) },
		"a pass too short": func(op *plan.Operation) { moved(op, len(op.Cuts)/2, "saddle", -8) },
		"a blunter knife":  func(op *plan.Operation) { op.Tool.ID = "turning/left-hand knife tool" },
	} {
		p, _ := planner.Proved(job, planner.Options{})
		for i, s := range p.Parts[0].Setups {
			for k := range s.Operations {
				if op := &p.Parts[0].Setups[i].Operations[k]; op.Process == plan.Steps {
					spoil(op)
				}
			}
		}
		_, failures := replay.Prove(job, p)
		assert.NotEmpty(t, failures, name)
	}
}

// moved shifts a reading of one cut, and the line of the card with it.
func moved(op *plan.Operation, n int, dial string, by int64) {
	cut := &op.Cuts[n]
	for _, readings := range [][]plan.Reading{cut.From, cut.To} {
		for i := range readings {
			if readings[i].Dial == dial && (dial == "cross" || readings[i].Graduations > 0) {
				readings[i].Graduations += by
			}
		}
	}
	for i := range op.Card {
		if l := &op.Card[i]; l.Label == cut.Name && l.Dial == dial {
			l.Total, l.Marks = l.Total+by, l.Marks+by
		}
	}
}

// The step table that the sheet prints is held to its cuts, its tool, its curve and its proof, be the curve of one piece or a chain.
func TestStepTableLiesAreRefused(t *testing.T) {
	for curve, job := range map[string]*partspec.Job{
		"one arc": curved(t, bar25, body+profileOf(22, arcTo(10, 10, 12, "out")), 30),
		"a chain": load(t, "testdata/shop/finial.hcl"),
	} {
		t.Run(curve, func(t *testing.T) { stepTableLies(t, job) })
	}
}

func stepTableLies(t *testing.T, job *partspec.Job) {
	for name, spoil := range map[string]func(s *plan.StepTable){
		"a crest made less":           func(s *plan.StepTable) { s.Steps[2].CrestMM /= 2 },
		"the worst crest made less":   func(s *plan.StepTable) { s.WorstMM /= 2 },
		"more left than allowed":      func(s *plan.StepTable) { s.LeftoverMM /= 2 },
		"a step elsewhere":            func(s *plan.StepTable) { s.Steps[1].AcrossMM += 0.1 },
		"a step deeper":               func(s *plan.StepTable) { s.Steps[1].DepthMM += 0.01 },
		"a step that is no cut":       func(s *plan.StepTable) { s.Steps[1].Label = "run 9, step 9" },
		"a step left out":             func(s *plan.StepTable) { s.Steps = s.Steps[:len(s.Steps)-1] },
		"another cutter":              func(s *plan.StepTable) { s.Cutter.NoseMM += 0.1 },
		"another curve":               func(s *plan.StepTable) { s.Curve[len(s.Curve)-1].RadiusMM++ },
		"a curve with a gap":          func(s *plan.StepTable) { s.Curve[0].FromDepthMM += 0.1 },
		"a dial that is not there":    func(s *plan.StepTable) { s.AcrossDial = "boring" },
		"a witness too few":           func(s *plan.StepTable) { s.WitnessAcrossMM = s.WitnessAcrossMM[1:] },
		"witnesses that crowd":        func(s *plan.StepTable) { s.WitnessAcrossMM[3] = (s.WitnessAcrossMM[2] + s.WitnessAcrossMM[3]) / 2 },
		"a witness beside the curve":  func(s *plan.StepTable) { s.WitnessAcrossMM[0] = s.Curve[0].FromAcrossMM - 1 },
		"an end of no kind":           func(s *plan.StepTable) { s.Left = "water" },
		"a plunge that is fed along":  func(s *plan.StepTable) { s.Along = !s.Along },
		"a partial pass that is none": func(s *plan.StepTable) { s.Steps[3].Partial = !s.Steps[3].Partial; s.Steps[2].Partial = true },
	} {
		p, failures := planner.Proved(job, planner.Options{})
		require.Empty(t, failures)
		for i, s := range p.Parts[0].Setups {
			for k := range s.Operations {
				if op := &p.Parts[0].Setups[i].Operations[k]; op.Process == plan.Steps {
					require.True(t, op.Steps.ProvenFewest)
					spoil(op.Steps)
				}
			}
		}
		_, failures = replay.Prove(job, p)
		assert.NotEmpty(t, failures, name)
	}
}
