package planner_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"catchplate/planner"
	"catchplate/planner/plan"
)

// summary is a plan in a few lines: what is held by what, and what is done with which tool at what speed.
func summary(p plan.Part) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n", p.Name, p.Stock.Text)
	for _, h := range p.MakeFirst {
		fmt.Fprintf(&b, "make first: %s, for setup %d\n", h.ID, h.ForSetup)
	}
	for _, s := range p.Setups {
		fmt.Fprintf(&b, "setup %d: %s\n", s.Number, s.ID)
		for _, o := range s.Operations {
			fmt.Fprintf(&b, "  %3d %-30s %-24s %4.0f rev/min, %d cuts\n", o.Number, o.ID, o.Tool.Text, o.RPM, len(o.Cuts))
		}
	}
	for _, r := range p.Refusals {
		fmt.Fprintf(&b, "refused: %s: %s\n", r.What, strings.Join(r.Reasons, "; "))
	}
	fmt.Fprintf(&b, "order costs %.1f min, proven %t\n", p.Order.CostMinutes, p.Order.Proven)
	return b.String()
}

// What is planned for each example stands in a file that can be read at a glance. It proves sameness; the replay and the practice lists prove
// that it is right.
func TestPlansOfTheExamples(t *testing.T) {
	jobs := exampleParts(t)
	for _, p := range load(t, "../examples/standards").Parts {
		jobs[p.Name] = only(load(t, "../examples/standards"), p)
	}
	for _, name := range slices.Sorted(maps.Keys(jobs)) {
		t.Run(name, func(t *testing.T) {
			golden(t, "summary/"+name+".txt", summary(answered(t, jobs[name]).Parts[0]))
		})
	}
}

// Every example part is planned and proved in well under the tenth of a second that the sheet may take.
func BenchmarkPlanAndProve(b *testing.B) {
	jobs := exampleParts(b)
	for _, name := range slices.Sorted(maps.Keys(jobs)) {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				planner.Proved(jobs[name], planner.Options{})
			}
		})
	}
}
