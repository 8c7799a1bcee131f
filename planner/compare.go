package planner

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/holding"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
)

// Compare judges every holding of the workshop for each finishing operation of a part; a feature narrows it to the operations on that feature. It reads
// what the rules and the mechanics say and decides nothing: the plan stays as it is. What cannot apply to any holding is an error.
func Compare(job *partspec.Job, part *partspec.Part, feature string, what plan.WhatIf, opt Options) ([]plan.Surface, error) {
	best, _ := bestAttempt(job, part, opt)
	planned := best != nil
	if !planned {
		var err error
		if best, err = anyAttempt(job, part, opt.rules()); err != nil {
			return nil, err
		}
	}
	return comparer{attempt: best, planned: planned, what: what}.surfaces(feature)
}

// anyAttempt is the first way to lay the stock and make the holes of a part that has no plan.
func anyAttempt(job *partspec.Job, part *partspec.Part, set rules.Set) (*attempt, error) {
	list, refused := tries(job, part, set, process.NewMemo(), false)
	if len(list) > 0 {
		first := list[0]
		first.shop = holding.New(first.ctx)
		first.peers = list
		return first, nil
	}
	for _, r := range refused {
		return nil, fmt.Errorf("%s: %s; %s", part.Name, r.Reasons[0], r.Remedies[0])
	}
	return nil, fmt.Errorf("the stock of %s cannot be laid", part.Name)
}

// comparer compares the holdings of one attempt at a part.
type comparer struct {
	*attempt
	planned bool
	what    plan.WhatIf
}

// surfaces compares the holdings for each finishing operation, in the plan's order where there is one.
func (c comparer) surfaces(feature string) ([]plan.Surface, error) {
	tasks, err := c.tasks(feature)
	if err != nil {
		return nil, err
	}
	mounts, rivals := c.shop.Mounts(), c.rivals()
	var out []plan.Surface
	for _, i := range tasks {
		t := c.shop.Tasks[i]
		list := c.judged(i, mounts)
		for _, r := range rivals {
			list = append(list, r.milling(t.ID)...)
		}
		out = append(out, plan.Surface{Part: c.ctx.Part.Name, Feature: t.Feature, Operation: t.ID, Planned: c.planned, Options: c.options(list)})
	}
	return out, nil
}

// tasks lists the finishing operations, or those of a feature.
func (c comparer) tasks(feature string) ([]int, error) {
	var list []int
	var names []string
	for i, t := range c.shop.Tasks {
		if t.Stage != shape.Finishing || t.Process == plan.SawOff || !onMachine(t) {
			continue
		}
		if !slices.Contains(names, t.Feature) {
			names = append(names, t.Feature)
		}
		if feature == "" || t.Feature == feature {
			list = append(list, i)
		}
	}
	if len(list) == 0 {
		return nil, &NoSurfaceError{Part: c.ctx.Part.Name, Feature: feature, Names: names}
	}
	if c.planned {
		slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(c.place(a), c.place(b)) })
	}
	return list, nil
}

// NoSurfaceError says that a part has no finishing operation on a feature, and on which it has.
type NoSurfaceError struct {
	Part, Feature string
	Names         []string
}

func (e *NoSurfaceError) Error() string {
	return fmt.Sprintf("%s has no finishing operation on %q", e.Part, e.Feature)
}

// place is where a task stands in the plan.
func (c comparer) place(task int) int {
	for k, s := range c.order.result.Order {
		if s.Op == task {
			return k
		}
	}
	return len(c.order.result.Order)
}

// judged judges mounts for a task: one option for each holding and surface that it holds by.
func (c comparer) judged(task int, mounts []holding.Mount) []found {
	best := map[string]found{}
	var keys []string
	for _, m := range mounts {
		f, ok := c.best(task, m)
		if !ok {
			continue
		}
		key := fmt.Sprintf("%s\x00%s\x00%t", m.Holding.Name, m.Surface, m.Plug)
		old, seen := best[key]
		if !seen {
			keys = append(keys, key)
		}
		if !seen || f.instead(old) < 0 {
			best[key] = f
		}
	}
	var list []found
	for _, k := range keys {
		f := best[k]
		if c.ctx.Part.Flat() {
			c.flat(&f)
		} else {
			c.ring(&f)
		}
		f.word()
		list = append(list, f)
	}
	return list
}

// options are what was judged for a task, sorted, and the holdings that find nothing to hold for it.
func (c comparer) options(list []found) []plan.Option {
	slices.SortStableFunc(list, found.against)
	out := make([]plan.Option, len(list))
	for i, f := range list {
		out[i] = f.Option
	}
	return append(out, c.idle(out)...)
}

// idle lists the holdings that find nothing to hold for an operation.
func (c comparer) idle(used []plan.Option) []plan.Option {
	var out []plan.Option
	for _, h := range c.ctx.Shop.Holdings {
		shown := func(o plan.Option) bool {
			return o.Holding == h.Name || h.Kind == partspec.Plug && o.ToMake == string(partspec.Plug)
		}
		if h.Kind == partspec.Tailstock || slices.ContainsFunc(used, shown) {
			continue
		}
		verdict := "refused: no surface of its size on this part leaves the operation open"
		if h.Kind == partspec.VerticalSlide {
			verdict = "refused: it holds flat or lying work against a cutter in the lathe's spindle, for what is milled or drilled beside the axis, and wants dials on cross slide and saddle"
		}
		out = append(out, plan.Option{Holding: h.Name, Kind: string(h.Kind), Title: h.Name, Changed: []string{}, Verdict: verdict})
	}
	return out
}

// best is the best way to do a task in a mount: the deepest pass that is allowed, at the plan's moment where the grip is there, else with all finished.
func (c comparer) best(task int, m holding.Mount) (found, bool) {
	m, changed := c.changed(m)
	out, any := found{}, false
	for _, way := range quickestFirst(c.shop.Tasks[task].Ways) {
		if !m.Suits(way) {
			continue
		}
		for _, light := range lights {
			f := c.judge(task, m, way, light)
			f.Changed = append(f.Changed, changed...)
			if !any || f.against(out) < 0 {
				out, any = f, true
			}
			if f.Passes || way.ForceN == 0 {
				break
			}
		}
	}
	return out, any
}

// judge asks the rules about a mount at the moment that suits it.
func (c comparer) judge(task int, m holding.Mount, way process.Way, light float64) found {
	facts := c.shop.Facts(m, task, way, light)
	moment, done := plan.MomentFinished, func(i int) bool { return i != task }
	if c.planned {
		before := map[int]bool{}
		for _, s := range c.order.result.Order[:c.place(task)] {
			before[s.Op] = true
		}
		then := func(i int) bool { return before[i] }
		if _, f := c.shop.Judge(m, task, way, light, facts, then); !f.Case.Gone {
			moment, done = plan.MomentPlan, then
		}
	}
	objections, figures := c.shop.Judge(m, task, way, light, facts, done)
	f := found{mount: m, figures: figures, done: done, objections: objections, Option: plan.Option{Moment: moment, PassShare: light, Changed: []string{}}}
	c.thinned(&f)
	f.Passes = len(f.objections) == 0
	c.describe(&f, task)
	return f
}

// describe fills in what is known of an option without its ring.
func (c comparer) describe(f *found, task int) {
	m, k := f.mount, f.figures.Case
	f.Holding, f.Kind, f.Title, f.Surface, f.FreeEnd = m.Holding.Name, string(m.HoldingKind()), m.Title(), m.Surface, m.Free.String()
	f.GripMM, f.DiameterMM = tidy(m.Z1-m.Z0), tidy(2*m.Radius)
	if !math.IsInf(k.Wall, 0) && f.mount.Radius > k.Wall {
		f.WallMM = tidy(k.Wall)
	}
	f.RunOutMM, f.StickOutMM, f.MostRPM, f.Minutes, f.ToMake = m.RunOut, tidy(k.StickOut), float64(m.Holding.MostSpeed), m.Minutes, m.Helper
	if m.Jaws() > 0 {
		f.LeastN, f.WorkingN = k.LeastN, f.figures.WorkingN
	}
	if c.planned {
		s := c.order.result.Order[c.place(task)]
		f.Chosen = c.order.mounts[c.order.alts[s.Op][s.Alt].mount].ID == m.ID
	}
}
