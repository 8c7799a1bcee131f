package planner_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
	"catchplate/planner/rules"
)

const (
	slidePlate = "testdata/rules/slide-plate.hcl"
	slideShaft = "testdata/rules/slide-shaft.hcl"
)

// onSlide are the setups of a part that stand on a vertical slide.
func onSlide(p plan.Part) (list []plan.Setup) {
	for _, s := range p.Setups {
		if s.MachineKind == plan.OnSlide {
			list = append(list, s)
		}
	}
	return list
}

// withSlide is a job whose vertical slide is another one.
func withSlide(job *partspec.Job, change func(h *partspec.Holding)) *partspec.Job {
	return withShop(job, func(w *partspec.Workshop) {
		w.Holdings = slices.Clone(w.Holdings)
		for i := range w.Holdings {
			if w.Holdings[i].Kind == partspec.VerticalSlide {
				change(&w.Holdings[i])
			}
		}
	})
}

// In a shop with a lathe and its vertical slide alone a plate is milled, slotted and drilled, and a shaft gets its flat and its cross hole, in the lathe; without the
// slide the plate cannot be made at no less cost, and the shaft not at all (rule B-32).
func TestVerticalSlideMills(t *testing.T) {
	for file, done := range map[string][]string{slidePlate: {"edge.left/mill", "slot.guide/mill", "holes.screws/drill"}, slideShaft: {"flat.key/mill", "cross_hole.pin/drill"}} {
		job := load(t, file)
		part := answered(t, job).Parts[0]
		require.Empty(t, part.Refusals, file)
		require.NotNil(t, part.Proof)
		var ids []string
		for _, s := range onSlide(part) {
			assert.Equal(t, "vertical_slide", s.HoldingKind)
			assert.Equal(t, "lathe", s.Machine)
			assert.GreaterOrEqual(t, s.LocateMM, 0.03, "what the slide gives is told")
			for _, o := range s.Operations {
				ids = append(ids, o.ID)
				if strings.HasPrefix(o.Tool.ID, "end_mill") {
					assert.LessOrEqual(t, o.Tool.SizeMM, 10.0, o.ID)
					assert.LessOrEqual(t, o.DepthMM, o.Tool.SizeMM/4+1e-9, o.ID)
				}
			}
		}
		assert.Subset(t, ids, done)
		assert.True(t, slices.ContainsFunc(part.Cautions, func(c plan.Caution) bool { return c.Rule == "F-18" }), "the caution of milling in the lathe")

		without := answered(t, withoutHolding(job, "vertical_slide")).Parts[0]
		if len(without.Refusals) == 0 {
			assert.GreaterOrEqual(t, without.Order.CostMinutes, part.Order.CostMinutes)
		}
	}
	assert.NotEmpty(t, answered(t, withoutHolding(load(t, slideShaft), "vertical_slide")).Parts[0].Refusals, "nothing else cuts the flat")
}

// A seat is swung in the lathe's spindle while the work lies in the slide's vice; a fly-cutter as wide is more than the slide bears. What is swung to its radius needs no
// file, though the drawing would let one finish it; on a milling machine a fly-cutter swings it as well.
func TestSeatIsSwungOnASlide(t *testing.T) {
	both := load(t, slideShaft, "testdata/slide-post.hcl")
	with := func(tool partspec.Tool) *partspec.Job {
		return withShop(only(both, both.Part("post")), func(w *partspec.Workshop) { w.Tools = append(slices.Clone(w.Tools), tool) })
	}
	part := answered(t, with(partspec.Tool{Kind: partspec.BoringHead, Name: "boring head", LeastSwing: 10, MostSwing: 60, Reach: 50})).Parts[0]
	require.Empty(t, part.Refusals)
	last := onSlide(part)[0].Operations[0]
	assert.Equal(t, plan.BoreHead, last.Process)
	fly := partspec.Tool{Kind: partspec.FlyCutter, Name: "fly-cutter", LeastSwing: 20, MostSwing: 60}
	assert.Contains(t, fmt.Sprint(answered(t, with(fly)).Parts[0].Refusals), "a cutter of Ø40 on a vertical slide")

	alone := load(t, "testdata/slide-post.hcl")
	milled := answered(t, withShop(alone, func(w *partspec.Workshop) {
		w.Tools = append(slices.DeleteFunc(slices.Clone(w.Tools), func(t partspec.Tool) bool { return t.Kind == partspec.BoringHead || t.Kind == partspec.FlyCutter }), fly)
	})).Parts[0]
	require.Empty(t, milled.Refusals)
	assert.Contains(t, fmt.Sprint(milled.Setups), "fly_cutter")
}

// A slide is not asked for what it does not bear: with shorter ways, without collets, or with only large cutters the part is refused with the figures.
func TestVerticalSlideIsRefused(t *testing.T) {
	why := func(job *partspec.Job) string {
		part := answered(t, job).Parts[0]
		require.NotEmpty(t, part.Refusals)
		return fmt.Sprint(part.Refusals)
	}
	shaft := load(t, slideShaft)
	assert.Contains(t, why(withSlide(shaft, func(h *partspec.Holding) { h.Dial.Travel = 20 })), "the vertical slide would go 3")
	assert.Contains(t, why(withoutHolding(shaft, "collets")), "no collet is owned")
	large := withShop(shaft, func(w *partspec.Workshop) {
		w.Tools = slices.Clone(w.Tools)
		for i := range w.Tools {
			if w.Tools[i].Kind == partspec.EndMill {
				w.Tools[i].Sizes = []units.Length{12}
			}
		}
	})
	assert.Contains(t, why(large), "a cutter of Ø12 on a vertical slide, 10 is the most")
	assert.Contains(t, why(withSlide(shaft, func(h *partspec.Holding) { h.Opening = 10 })), "over its opening of 10")
	without := withShop(shaft, func(w *partspec.Workshop) {
		w.Machines = slices.Clone(w.Machines)
		w.Machines[0].Dials = slices.DeleteFunc(slices.Clone(w.Machines[0].Dials), func(d partspec.Dial) bool { return d.Name == "saddle" })
	})
	assert.Contains(t, why(without), "saddle")
	ring := load(t, slideShaft, "testdata/slide-ring.hcl")
	assert.Contains(t, why(only(ring, ring.Part("flange"))), "none with an end towards the spindle")
}

// The same part with a cross slide that reads diameters and one that reads radius has the same ways: only the counts differ.
func TestVerticalSlideReadsBothWays(t *testing.T) {
	job := load(t, slideShaft)
	radius := withShop(job, func(w *partspec.Workshop) {
		w.Machines = slices.Clone(w.Machines)
		m := &w.Machines[0]
		m.Dials = slices.Clone(m.Dials)
		for i := range m.Dials {
			if m.Dials[i].Name == "cross" {
				m.Dials[i].Reads = partspec.ReadsRadius
				m.Dials[i].Graduation.Value, m.Dials[i].PerTurn.Value = 0.01, 1
			}
		}
	})
	a, b := answered(t, job).Parts[0], answered(t, radius).Parts[0]
	require.Empty(t, a.Refusals)
	require.Empty(t, b.Refusals)
	require.Len(t, onSlide(b), len(onSlide(a)))
	for i, s := range onSlide(a) {
		other := onSlide(b)[i]
		for k, o := range s.Operations {
			assert.Equal(t, o.Cuts, other.Operations[k].Cuts, "0.02 of diameter is 0.01 of the slide")
		}
	}
}

// A shop that has a milling machine as well takes it, unless the slide costs less.
func TestMillBeforeSlide(t *testing.T) {
	both := func(vice float64) *partspec.Job {
		job := load(t, slidePlate)
		mill := load(t, examples).Workshop
		return withShop(job, func(w *partspec.Workshop) {
			w.Machines, w.Holdings = slices.Clone(w.Machines), slices.Clone(w.Holdings)
			for _, m := range mill.Machines {
				if m.Kind == partspec.Mill {
					w.Machines = append(w.Machines, m)
				}
			}
			w.Holdings = append(w.Holdings, partspec.Holding{Kind: partspec.Vice, Name: "vice", Opening: 80, SetupMinutes: units.Minutes(vice)})
		})
	}
	usual := answered(t, both(3)).Parts[0]
	require.Empty(t, usual.Refusals)
	assert.Empty(t, onSlide(usual))
	slow := answered(t, both(60)).Parts[0]
	require.Empty(t, slow.Refusals)
	assert.NotEmpty(t, onSlide(slow), "a vice that takes an hour to set is dearer")
}

// The comparison shows the slide with its figures.
func TestVerticalSlideIsCompared(t *testing.T) {
	job := load(t, slidePlate)
	surfaces, err := planner.Compare(job, job.Part("stop_plate"), "guide", plan.WhatIf{}, planner.Options{})
	require.NoError(t, err)
	passed := 0
	for _, o := range surfaces[len(surfaces)-1].Options {
		if o.Kind == "vertical_slide" && o.Passes {
			passed++
			assert.Positive(t, o.LeastN)
			assert.Greater(t, o.WorkingN, o.LeastN)
			assert.Equal(t, 15.0, o.Minutes)
		}
	}
	assert.Positive(t, passed)

	both := load(t, "testdata/rules/crossed.hcl")
	both = withShop(both, func(w *partspec.Workshop) {
		w.Holdings = append(slices.Clone(w.Holdings), job.Workshop.Holdings[slices.IndexFunc(job.Workshop.Holdings, func(h partspec.Holding) bool { return h.Kind == partspec.VerticalSlide })])
	})
	surfaces, err = planner.Compare(both, both.Parts[0], "key_flat", plan.WhatIf{}, planner.Options{})
	require.NoError(t, err)
	kinds := map[string]bool{}
	for _, o := range surfaces[0].Options {
		if o.Passes {
			kinds[o.Kind] = true
		}
		assert.False(t, o.Chosen && o.Kind == "vertical_slide", "the mill's vice is quicker to set")
	}
	assert.Contains(t, kinds, "vice")
	assert.Contains(t, kinds, "vertical_slide", "beside a milling machine it is shown with its figures too")
}

// Without rule B-32 the planner cuts deeper than the slide bears, and the replay refuses that.
func TestReplayKnowsWhatASlideBears(t *testing.T) {
	set := rules.All().Without("B-32")
	_, failures := planner.Proved(load(t, slidePlate), planner.Options{Rules: &set})
	assert.Contains(t, fmt.Sprint(failures), "rule B-32")
}

// Every named corruption of a plan on the slide is refused, and by the clause that is about it: the replay reckons dials, ways and limits anew.
func TestReplayRefusesWhatASlideCannot(t *testing.T) {
	ops := func(p *plan.Plan, id string) (list []*plan.Operation) {
		for i := range p.Parts[0].Setups {
			for k := range p.Parts[0].Setups[i].Operations {
				if o := &p.Parts[0].Setups[i].Operations[k]; o.ID == id {
					list = append(list, o)
				}
			}
		}
		require.NotEmpty(t, list, id)
		return list
	}
	first := func(p *plan.Plan) *plan.Setup {
		for i := range p.Parts[0].Setups {
			if p.Parts[0].Setups[i].MachineKind == plan.OnSlide {
				return &p.Parts[0].Setups[i]
			}
		}
		return nil
	}
	shop := func(change func(w *partspec.Workshop)) func(*partspec.Job) *partspec.Job {
		return func(job *partspec.Job) *partspec.Job {
			return withShop(job, func(w *partspec.Workshop) {
				w.Machines, w.Holdings = slices.Clone(w.Machines), slices.Clone(w.Holdings)
				w.Machines[0].Dials = slices.Clone(w.Machines[0].Dials)
				change(w)
			})
		}
	}
	slide := func(w *partspec.Workshop) *partspec.Holding {
		return &w.Holdings[slices.IndexFunc(w.Holdings, func(h partspec.Holding) bool { return h.Kind == partspec.VerticalSlide })]
	}
	lathe := func(w *partspec.Workshop, dial string) *partspec.Dial {
		return &w.Machines[0].Dials[slices.IndexFunc(w.Machines[0].Dials, func(d partspec.Dial) bool { return d.Name == dial })]
	}
	for name, c := range map[string]struct {
		clause string
		job    func(*partspec.Job) *partspec.Job
		tell   func(*plan.Plan)
	}{
		"a milling machine that is not there": {clause: "machine", tell: func(p *plan.Plan) { first(p).MachineKind = "mill" }},
		"turned instead":                      {clause: "holding", tell: func(p *plan.Plan) { first(p).MachineKind = "lathe" }},
		"a lathe of another name":             {clause: "machine", tell: func(p *plan.Plan) { first(p).Machine = "bench" }},
		"a slide of another name":             {clause: "holding", tell: func(p *plan.Plan) { first(p).Holding = "vice" }},
		"a chuck as slide":                    {clause: "holding", tell: func(p *plan.Plan) { first(p).Holding, first(p).HoldingKind = "three_jaw", "three_jaw" }},
		"clamped to it":                       {clause: "grip", tell: func(p *plan.Plan) { first(p).Grip.Kind = "clamps" }},
		"a sure place":                        {clause: "located", tell: func(p *plan.Plan) { first(p).LocateMM -= 0.02 }},
		"a large cutter":                      {clause: "slide", tell: func(p *plan.Plan) { ops(p, "edge.left/mill")[0].Tool.SizeMM = 12 }},
		"a deep pass": {clause: "slide", tell: func(p *plan.Plan) {
			o := ops(p, "slot.guide/mill")[0]
			o.Cuts, o.DepthMM = o.Cuts[2:], 3
		}},
		"no collets":                      {clause: "slide", job: func(job *partspec.Job) *partspec.Job { return withoutHolding(job, "collets") }},
		"a short slide":                   {clause: "travel", job: shop(func(w *partspec.Workshop) { slide(w).Dial.Travel = 25 })},
		"a short cross slide":             {clause: "travel", job: shop(func(w *partspec.Workshop) { lathe(w, "cross").Travel = 30 })},
		"a cross slide that reads radius": {clause: "card", job: shop(func(w *partspec.Workshop) { lathe(w, "cross").Reads = partspec.ReadsRadius })},
		"another screw in the slide":      {clause: "card", job: shop(func(w *partspec.Workshop) { slide(w).Dial.Graduation.Value = 0.025 })},
		"a slide without a saddle's dial": {clause: "machine", job: shop(func(w *partspec.Workshop) { lathe(w, "saddle").Name = "top" })},
		"a slide that gives more":         {clause: "located", job: shop(func(w *partspec.Workshop) { slide(w).RunOut = 0.1 })},
		"a vice that opens less":          {clause: "capacity", job: shop(func(w *partspec.Workshop) { slide(w).Opening = 30 })},
		"a finer speed":                   {clause: "speed", tell: func(p *plan.Plan) { ops(p, "slot.guide/mill")[0].RPM = 1600 }},
	} {
		t.Run(name, func(t *testing.T) {
			job := load(t, slidePlate)
			p := answered(t, job)
			if c.tell != nil {
				c.tell(p)
			}
			if c.job != nil {
				job = c.job(job)
			}
			_, failures := replay.Prove(job, p)
			assert.True(t, slices.ContainsFunc(failures, func(f replay.Failure) bool { return f.Clause == c.clause }), "%v", failures)
		})
	}
}

// Lies about plans on a slide are found out like those about all others.
func TestLiesAboutASlideAreFoundOut(t *testing.T) {
	for i, file := range []string{slidePlate, slideShaft} {
		tellAll(t, load(t, file), 7*i)
	}
}

// slidePlateSizes and slideShaftSizes are words of the files and others in their place.
func slidePlateSizes(between func(low, high int) int) []string {
	w, h, deep := between(20, 70), between(20, 60), between(3, 14)
	x := between(8, w-8)
	return []string{"thickness = 8", fmt.Sprintf("thickness = %d", deep), "thickness         = 8", fmt.Sprintf("thickness = %d", deep), "width             = 44", fmt.Sprintf("width = %d", w+between(2, 6)),
		"length            = 34", fmt.Sprintf("length = %d", h+between(2, 6)), "width  = 40", fmt.Sprintf("width = %d", w), "height = 30", fmt.Sprintf("height = %d", h), `"6 ±0.1"`, fmt.Sprintf(`"%d ±0.1"`, 2*between(2, 7)),
		"[[16, 8], [24, 8]]", fmt.Sprintf("[[%d, %d], [%d, %d]]", x, between(8, h-8), x, between(8, h-8)), "depth = 3", []string{"depth = 2", "through = true", "depth = 1.5"}[between(0, 2)],
		`["8 ±0.2", "22 ±0.2"]`, fmt.Sprintf(`["%d ±0.2", "%d ±0.2"]`, between(5, w-5), between(5, h-5))}
}

func slideShaftSizes(between func(low, high int) int) []string {
	d := between(8, 24)
	return []string{`"12 ±0.1"`, fmt.Sprintf(`"%d ±0.1"`, d), "diameter = 20", fmt.Sprintf("diameter = %d", d+between(2, 10)), "diameter = 18", fmt.Sprintf("diameter = %d", d+1),
		`"5 ±0.1"`, fmt.Sprintf(`"%d.%d ±0.1"`, d/2-between(1, 2), between(0, 9)), "length   = 12", fmt.Sprintf("length = %d", between(6, 22)), "at       = 8", fmt.Sprintf("at = %d", between(6, 20)),
		"diameter = 3\n", fmt.Sprintf("diameter = %d\n", between(2, 6))}
}

// Plates and shafts of many sizes, on slides of many ways and dials, are proved or refused with reasons.
func TestSlidesOfManySizes(t *testing.T) {
	metals := []string{"mild steel", "brass", "aluminium"}
	for _, c := range []struct {
		file  string
		sizes func(func(low, high int) int) []string
	}{{slidePlate, slidePlateSizes}, {slideShaft, slideShaftSizes}} {
		text, err := os.ReadFile(c.file)
		require.NoError(t, err)
		r := rand.New(rand.NewPCG(32, 5))
		between := func(low, high int) int { return low + r.IntN(max(1, high-low+1)) }
		milled := 0
		for range 60 {
			metal := metals[between(0, 2)]
			pairs := append(c.sizes(between), "travel     = 90", fmt.Sprintf("travel = %d", between(40, 100)), "opening    = 50", fmt.Sprintf("opening = %d", between(30, 70)), "mild steel", metal)
			if between(0, 2) == 0 {
				pairs = append(pairs, "graduation = 0.02\n      per_turn   = 2\n      reads      = \"diameter\"", "graduation = 0.001 * 25.4\n      per_turn   = 0.1 * 25.4\n      reads      = \"radius\"")
			}
			with := strings.NewReplacer(pairs...).Replace(string(text))
			job, _, diags := partspec.Parse([]partspec.Source{{Name: c.file, Text: []byte(with)}})
			if diags.HasErrors() {
				continue
			}
			part := answered(t, job).Parts[0]
			if t.Failed() {
				t.Log(with[strings.Index(with, "  holding \"vertical_slide"):])
				return
			}
			if len(onSlide(part)) > 0 {
				milled++
			}
		}
		assert.Greater(t, milled, 10, c.file)
	}
}
