package sheets

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
	"catchplate/sheets/draw"
)

// While a lathe mills, cards and tables give its dials by their names; noughts and cuts keep the letters, and the plan itself stays as it is.
func TestDialsOfAMillingLatheBearTheirNames(t *testing.T) {
	op := plan.Operation{Number: 10, Process: plan.MillSlot, Zeros: []plan.Zero{{Dial: "y", ReferenceMM: 3, How: "edge finder"}},
		Card:  []plan.Line{{Label: "begin at", Dial: "x", Total: 5}, {Label: "begin at", Dial: "y", Total: 6}, {Label: "finish", Dial: "z", Total: 7}},
		Holes: []plan.HoleLine{{Number: 1, X: plan.Line{Dial: "x"}, Y: plan.Line{Dial: "y"}}}, Steps: &plan.StepTable{AcrossDial: "x", DepthDial: "z"}}
	p := plan.Part{Name: "stop", Setups: []plan.Setup{{Number: 1, MachineKind: plan.OnSlide, Operations: []plan.Operation{op}}, {Number: 2, MachineKind: "mill", Operations: []plan.Operation{op}}}}
	out := worded(&p)
	require.Len(t, out.Setups, 2)
	on := out.Setups[0].Operations[0]
	assert.Equal(t, []string{"cross", "slide", "saddle"}, []string{on.Card[0].Dial, on.Card[1].Dial, on.Card[2].Dial})
	assert.Equal(t, []string{"cross", "slide"}, []string{on.Holes[0].X.Dial, on.Holes[0].Y.Dial})
	assert.Equal(t, []string{"cross", "saddle"}, []string{on.Steps.AcrossDial, on.Steps.DepthDial})
	assert.Equal(t, "y", on.Zeros[0].Dial)
	assert.Equal(t, op, out.Setups[1].Operations[0], "a mill's dials are x and y")
	assert.Equal(t, "x", p.Setups[0].Operations[0].Card[0].Dial, "the plan is not written to")

	s := &sheet{part: out}
	assert.Equal(t, "nought at Y 3 mm, count as the work goes down", s.reference(&out.Setups[0], on.Zeros[0]))
	assert.Equal(t, "nought at Y 3 mm, count away from you", s.reference(&out.Setups[1], op.Zeros[0]))
	assert.Equal(t, "quill", draw.DialName(&out.Setups[0], "quill"))
}
