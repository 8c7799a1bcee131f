package replay_test

import (
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// sawnFlange is the plan of a plate whose bore a hole saw opens, and whose other large hole it finishes.
func sawnFlange(t testing.TB) (*partspec.Job, *plan.Plan) {
	t.Helper()
	text, err := os.ReadFile("../testdata/rules/sawn-flange.hcl")
	require.NoError(t, err)
	job, _, diags := partspec.Parse([]partspec.Source{{Name: "sawn-flange.hcl", Text: text}})
	require.False(t, diags.HasErrors(), "%v", diags)
	p := planner.Plan(job, planner.Options{})
	require.Empty(t, p.Parts[0].Refusals)
	return job, p
}

// opOf finds an operation of the only part, and the setup that it belongs to.
func opOf(t testing.TB, p *plan.Plan, id string) (*plan.Setup, *plan.Operation) {
	t.Helper()
	for i := range p.Parts[0].Setups {
		s := &p.Parts[0].Setups[i]
		if k := slices.IndexFunc(s.Operations, func(o plan.Operation) bool { return o.ID == id }); k >= 0 {
			return s, &s.Operations[k]
		}
	}
	require.Fail(t, "no operation "+id)
	return nil, nil
}

// movedBy moves a dial in every cut of an operation.
func movedBy(o *plan.Operation, dial string, by int64) {
	for c := range o.Cuts {
		for _, list := range [][]plan.Reading{o.Cuts[c].From, o.Cuts[c].To} {
			for i := range list {
				if list[i].Dial == dial {
					list[i].Graduations += by
				}
			}
		}
	}
}

func sizedTo(o *plan.Operation, mm float64) {
	o.Tool.SizeMM = mm
	for c := range o.Cuts {
		o.Cuts[c].ToolSizeMM = mm
	}
}

// TestHoleSawsAreProved: what makes a sawn hole wrong, or the sawing of it dangerous, is refused by the clause that tells of it.
func TestHoleSawsAreProved(t *testing.T) {
	job, good := sawnFlange(t)
	_, failures := replay.Prove(job, good)
	require.Empty(t, failures)
	job.Workshop = withSaw(job.Workshop, 59)
	for _, c := range []struct {
		name, clause string
		spoil        func(p *plan.Plan)
	}{
		{"no hole for the pilot", "start", func(p *plan.Plan) {
			s, o := opOf(t, p, "holes.wire/drill")
			s.Operations = slices.DeleteFunc(s.Operations, func(q plan.Operation) bool { return q.ID == o.ID })
		}},
		{"a pilot that rattles in its hole", "start", func(p *plan.Plan) {
			_, o := opOf(t, p, "holes.wire/drill")
			o.Tool.SizeMM, o.Cuts[1].ToolSizeMM = 7, 7
		}},
		{"not through", "cuts", func(p *plan.Plan) { _, o := opOf(t, p, "holes.wire/saw"); movedBy(o, "quill", -40) }},
		{"deeper than its cup", "reach", func(p *plan.Plan) { _, o := opOf(t, p, "holes.wire/saw"); movedBy(o, "quill", 460) }},
		{"too fast for a ring of teeth", "speed", func(p *plan.Plan) {
			_, o := opOf(t, p, "holes.wire/saw")
			o.RPM, o.WantedRPM = 600, 600
		}},
		{"too wide a saw for its limits", "least metal", func(p *plan.Plan) { _, o := opOf(t, p, "holes.wire/saw"); sizedTo(o, 40) }},
		{"too small a saw for its limits", "most metal", func(p *plan.Plan) { _, o := opOf(t, p, "holes.wire/saw"); sizedTo(o, 25) }},
		{"so wide a saw that the bore may not clean up", "place", func(p *plan.Plan) { _, o := opOf(t, p, "bore.pipe/saw"); sizedTo(o, 59) }},
		{"another tool", "tool", func(p *plan.Plan) {
			_, o := opOf(t, p, "holes.wire/saw")
			o.Tool.ID = "end_mill/end_mill"
		}},
		{"force belied", "force", func(p *plan.Plan) { _, o := opOf(t, p, "bore.pipe/saw"); o.ForceN = 100 }},
		{"held by hand", "grip force", func(p *plan.Plan) {
			s, _ := opOf(t, p, "bore.pipe/saw")
			for i := range s.Clamps {
				s.Clamps[i].ForceN = 100
			}
		}},
		{"too thin a board", "bed", func(p *plan.Plan) {
			s, _ := opOf(t, p, "bore.pipe/saw")
			s.Bed.HeightMM, s.Bed.GapMM = 18, 18
		}},
		{"no board", "bed", func(p *plan.Plan) { s, _ := opOf(t, p, "bore.pipe/saw"); s.Bed = &plan.Bed{Kind: "plate"} }},
		{"over the edge", "way in", func(p *plan.Plan) {
			for _, id := range []string{"holes.wire/drill", "holes.wire/saw"} {
				_, o := opOf(t, p, id)
				movedBy(o, "x", 1200)
			}
		}},
		{"beside its pilot's hole", "start", func(p *plan.Plan) { _, o := opOf(t, p, "holes.wire/saw"); movedBy(o, "y", 1500) }},
		{"the bore before the saw", "", func(p *plan.Plan) {
			s, _ := opOf(t, p, "bore.pipe/saw")
			i := slices.IndexFunc(s.Operations, func(o plan.Operation) bool { return o.ID == "bore.pipe/saw" })
			k := slices.IndexFunc(s.Operations, func(o plan.Operation) bool { return o.ID == "bore.pipe/bore" })
			s.Operations[i], s.Operations[k] = s.Operations[k], s.Operations[i]
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			q := copied(t, good)
			c.spoil(q)
			_, failures := replay.Prove(job, q)
			require.NotEmpty(t, failures)
			var clauses []string
			for _, f := range failures {
				clauses = append(clauses, f.Clause)
			}
			if c.clause != "" {
				assert.Contains(t, clauses, c.clause, "%v", failures)
			}
		})
	}
}

// withSaw is a workshop with one more size of hole saw.
func withSaw(shop *partspec.Workshop, mm units.Length) *partspec.Workshop {
	more := *shop
	more.Tools = slices.Clone(shop.Tools)
	for i := range more.Tools {
		if more.Tools[i].Kind == partspec.HoleSaw {
			more.Tools[i].Sizes = append(slices.Clone(more.Tools[i].Sizes), mm)
		}
	}
	return &more
}

// TestSlowestSpeedIsNoExcuse: other tools may run at the slowest speed that a machine has; a hole saw's teeth burn at it where it is too fast.
func TestSlowestSpeedIsNoExcuse(t *testing.T) {
	job, p := sawnFlange(t)
	mill := slices.IndexFunc(job.Workshop.Machines, func(m partspec.Machine) bool { return m.Kind == partspec.Mill })
	job.Workshop.Machines[mill].Speeds = []units.Speed{350, 600, 1000, 1600}
	for _, s := range p.Parts[0].Setups {
		for i := range s.Operations {
			if o := &s.Operations[i]; o.RPM > 0 && o.RPM < 350 {
				o.RPM, o.WantedRPM = 350, 350
			}
		}
	}
	_, failures := replay.Prove(job, p)
	require.NotEmpty(t, failures)
	for _, f := range failures {
		if f.Clause == "speed" {
			assert.Contains(t, f.Operation, "/saw", "%v", f)
			return
		}
	}
	assert.Fail(t, "nothing is said of the speed", "%v", failures)
}
