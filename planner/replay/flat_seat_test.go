package replay_test

import (
	"os"
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

// saddleBlock is a block with a seat in its back, and its plan.
func saddleBlock(t *testing.T) (*partspec.Job, *plan.Plan) {
	t.Helper()
	const name = "../testdata/rules/saddle-block.hcl"
	text, err := os.ReadFile(name)
	require.NoError(t, err)
	job, _, diags := partspec.Parse([]partspec.Source{{Name: name, Text: text}})
	require.False(t, diags.HasErrors(), "%v", diags)
	p := planner.Plan(job, planner.Options{})
	require.Empty(t, p.Parts[0].Refusals)
	return job, p
}

// seatOp is the operation that steps the seat, and the setup it is in.
func seatOp(p *plan.Plan) (*plan.Setup, *plan.Operation) {
	for i := range p.Parts[0].Setups {
		s := &p.Parts[0].Setups[i]
		for k := range s.Operations {
			if s.Operations[k].Process == plan.SeatSteps {
				return s, &s.Operations[k]
			}
		}
	}
	return nil, nil
}

// shifted moves one dial of all passes that a name begins with, and the card with them.
func shifted(o *plan.Operation, name, dial string, by int64) {
	moved := map[int64]bool{}
	for c := range o.Cuts {
		if !strings.HasPrefix(o.Cuts[c].Name, name) {
			continue
		}
		for _, list := range [][]plan.Reading{o.Cuts[c].From, o.Cuts[c].To} {
			for i := range list {
				if list[i].Dial == dial {
					moved[list[i].Graduations] = true
					list[i].Graduations += by
				}
			}
		}
	}
	for i := range o.Card {
		if l := &o.Card[i]; l.Dial == dial && moved[l.Total] {
			l.Total += by
			if perTurn := map[string]int64{"x": 100, "y": 100, "quill": 50}[dial]; l.Counted {
				l.Turns, l.Marks = l.Total/perTurn, l.Total%perTurn
			} else {
				l.Marks = l.Total
			}
		}
	}
}

// Spoiled in any way that changes the seat, or how the work is held for it, its plan is refused for that reason.
func TestASeatInAFaceIsProved(t *testing.T) {
	job, p := saddleBlock(t)
	_, failures := replay.Prove(job, p)
	require.Empty(t, failures)
	for _, c := range []struct {
		name, clause string
		spoil        func(*plan.Plan, *plan.Setup, *plan.Operation)
	}{
		{"all steps a mark deeper", "least metal", func(_ *plan.Plan, _ *plan.Setup, o *plan.Operation) { shifted(o, "", "quill", 1) }},
		{"all steps too shallow", "most metal", func(_ *plan.Plan, _ *plan.Setup, o *plan.Operation) { shifted(o, "run", "quill", -3) }},
		{"the axis half a millimetre aside", "", func(_ *plan.Plan, _ *plan.Setup, o *plan.Operation) { shifted(o, "", "y", 25) }},
		{"passes that end in the work", "seat", func(_ *plan.Plan, _ *plan.Setup, o *plan.Operation) {
			for c := range o.Cuts {
				for i := range o.Cuts[c].To {
					if o.Cuts[c].To[i].Dial == "x" {
						o.Cuts[c].To[i].Graduations -= 1000
					}
				}
			}
		}},
		{"passes across the pipe", "pose", func(_ *plan.Plan, _ *plan.Setup, o *plan.Operation) {
			last := &o.Cuts[len(o.Cuts)-1]
			for i := range last.To {
				if last.To[i].Dial == "y" {
					last.To[i].Graduations += 200
				}
			}
		}},
		{"a step left out", "most metal", func(_ *plan.Plan, _ *plan.Setup, o *plan.Operation) {
			i := slices.IndexFunc(o.Cuts, func(c plan.Cut) bool { return strings.HasPrefix(c.Name, "run 1, step 10") })
			o.Cuts = slices.Delete(o.Cuts, i, i+1)
			o.Passes = len(o.Cuts)
		}},
		{"jaws above the crown", "clearance", func(_ *plan.Plan, s *plan.Setup, _ *plan.Operation) { s.Grip.FromZ = 1 }},
		{"another cutter", "tool", func(_ *plan.Plan, _ *plan.Setup, o *plan.Operation) {
			o.Tool.ID = strings.Replace(o.Tool.ID, "ball_nose", "centre_drill", 1)
		}},
		{"a lazier force", "force", func(_ *plan.Plan, _ *plan.Setup, o *plan.Operation) { o.ForceN = 10 }},
		{"no file", "finished part", func(p *plan.Plan, _ *plan.Setup, _ *plan.Operation) {
			for i := range p.Parts[0].Setups {
				s := &p.Parts[0].Setups[i]
				s.Operations = slices.DeleteFunc(s.Operations, func(o plan.Operation) bool { return o.Process == plan.FileSeat })
			}
		}},
		{"a file that is said to take more", "most metal", func(p *plan.Plan, _ *plan.Setup, _ *plan.Operation) {
			_, o := seatOp(p)
			o.Cuts = slices.DeleteFunc(o.Cuts, func(c plan.Cut) bool { return strings.HasPrefix(c.Name, "run 2") })
			o.Passes = len(o.Cuts)
		}},
		{"a hole after the seat", "order", func(p *plan.Plan, s *plan.Setup, _ *plan.Operation) {
			for i := range p.Parts[0].Setups {
				other := &p.Parts[0].Setups[i]
				k := slices.IndexFunc(other.Operations, func(o plan.Operation) bool { return o.ID == "holes.bolts/drill" })
				if k < 0 {
					continue
				}
				drill := other.Operations[k]
				drill.Number = 95
				other.Operations = slices.Delete(other.Operations, k, k+1)
				s.Operations = append(s.Operations, drill)
			}
		}},
		{"a machine after the seat", "grip", func(p *plan.Plan, s *plan.Setup, _ *plan.Operation) {
			last := &p.Parts[0].Setups[len(p.Parts[0].Setups)-1]
			ops := last.Operations
			number := last.Number
			*last = *s
			last.Operations, last.Number = ops, number
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			q := copied(t, p)
			s, o := seatOp(q)
			c.spoil(q, s, o)
			_, failures := replay.Prove(job, q)
			require.NotEmpty(t, failures)
			clauses := ""
			for _, f := range failures {
				clauses += f.Clause + ": " + f.Reason + "\n"
			}
			assert.Contains(t, clauses, c.clause)
		})
	}
}

// Nothing of the seat's operations can be left out.
func TestEveryOperationOfTheSaddleBlockIsNeeded(t *testing.T) {
	job, p := saddleBlock(t)
	for i, s := range p.Parts[0].Setups {
		for k, o := range s.Operations {
			if o.Process == plan.Deburr {
				continue
			}
			q := copied(t, p)
			ops := &q.Parts[0].Setups[i].Operations
			*ops = slices.Delete(*ops, k, k+1)
			_, failures := replay.Prove(job, q)
			assert.NotEmpty(t, failures, o.ID)
		}
	}
}
