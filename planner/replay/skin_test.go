package replay

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
)

// The bush's first cut along its outside takes all there is, in one: good for black bar. Cut in two it is good for bright bar only.
func TestFirstCutUnderTheSkin(t *testing.T) {
	twice := func(b *bench) {
		o := op(t, &plan.Plan{Parts: []plan.Part{*b.part}}, "flange.rim/turn")
		b.setup, b.op, o.Cuts, o.Card = &b.part.Setups[0], o, nil, nil
		b.zeros = map[string]plan.Zero{"cross": o.Zeros[0], "saddle": o.Zeros[1]}
		b.turn("light", 14.8, 21, -2.5, nil)
		b.turn("cut", 14, 21, -2.5, nil)
	}
	tests := map[string]struct {
		rough  bool
		change func(b *bench)
		fails  bool
	}{
		"all at one go":          {rough: true},
		"in two":                 {rough: true, change: twice, fails: true},
		"in two, of bright bar":  {change: twice},
		"too fast":               {rough: true, change: faster, fails: true},
		"as fast, of bright bar": {change: faster},
	}
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			b := bush(t)
			require.Equal(t, "brass-free-cutting", b.job.Parts[0].Material.ID)
			b.job.Parts[0].Stock.Rough = tt.rough
			if tt.change != nil {
				tt.change(b)
			}
			_, failures := Prove(b.job, b.plan())
			if !tt.fails {
				assert.Empty(t, failures)
				return
			}
			require.NotEmpty(t, failures)
			assert.Equal(t, "skin", failures[0].Clause)
			assert.Equal(t, "flange.rim/turn", failures[0].Operation)
		})
	}
}

// faster runs the first cut along the outside at a speed that is good for bright metal.
func faster(b *bench) {
	const rpm = 1200
	m := &b.job.Workshop.Machines[0]
	m.Speeds = append(slices.Clone(m.Speeds), rpm)
	for i := range b.part.Setups[0].Operations {
		if o := &b.part.Setups[0].Operations[i]; o.ID == "flange.rim/turn" {
			o.RPM, o.WantedRPM = rpm, rpm
		}
	}
}
