package replay

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/parallel"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// Prove replays a plan. It returns a proof for each part whose plan holds, by name, and every failure of the others. A part that the plan
// refuses is no failure and has no proof; a part of the job that the plan leaves out is a failure.
func Prove(job *partspec.Job, p *plan.Plan) (proofs map[string]plan.Proof, failures []Failure) {
	records, found := make([]*record, len(p.Parts)), make([]plan.Proof, len(p.Parts))
	parallel.Each(len(p.Parts), func(i int) {
		records[i] = &record{part: p.Parts[i].Name, known: &known{}}
		found[i] = proveOne(records[i], job, p.Parts[:i], p.Parts[i])
	})
	proofs, failures = map[string]plan.Proof{}, checkPlan(job, p)
	seen := map[string]bool{}
	for i, r := range records {
		seen[r.part] = true
		failures = append(failures, r.failures...)
		if len(r.failures) == 0 && len(p.Parts[i].Refusals) == 0 {
			proofs[r.part] = found[i]
		}
	}
	for _, part := range job.Parts {
		if !part.Bought && !seen[part.Name] {
			failures = append(failures, Failure{Part: part.Name, Clause: "part", Reason: "the plan leaves it out"})
		}
	}
	return proofs, failures
}

// proveOne proves one part of a plan, which comes after others.
func proveOne(r *record, job *partspec.Job, before []plan.Part, p plan.Part) plan.Proof {
	part := job.Part(p.Name)
	switch {
	case part == nil:
		r.fail(where{}, "part", "the job has no part of this name")
	case slices.ContainsFunc(before, func(b plan.Part) bool { return b.Name == p.Name }):
		r.fail(where{}, "part", "it is planned twice")
	case len(p.Refusals) > 0:
		if len(p.Setups) > 0 {
			r.fail(where{}, "part", "it is refused and planned at once")
		}
	default:
		return provePart(r, job, part, p)
	}
	return plan.Proof{}
}

// mostMeasured bounds the worlds, two for each place, so that no plan keeps the proof for ever. Real parts have a handful.
const mostMeasured = 40

// provePart proves a part.
func provePart(r *record, job *partspec.Job, part *partspec.Part, p plan.Part) plan.Proof {
	if len(part.Axes) > 0 {
		return proveAxes(r, job, part, p)
	}
	if _, over := byAxis(p); len(over.Setups) > 0 {
		r.fail(where{setup: over.Setups[0].Number}, "set over", "it is set over for an offset axis, and the part has none")
		return plan.Proof{}
	}
	return proveTurned(r, job, part, p, 1)
}

// proveTurned replays a part, or what is turned about one of its axes, in every world; its setups are numbered from first on.
func proveTurned(r *record, job *partspec.Job, part *partspec.Part, p plan.Part, first int) plan.Proof {
	if len(p.Setups) == 0 {
		r.fail(where{}, "part", "nothing is done to it, and no reason is given")
		return plan.Proof{}
	}
	checkNumbers(r, part, p, first)
	checkHead(r, part, p)
	checkMates(r, part, p)
	checkSizes(r, job, part, p)
	if n := len(measuredCuts(p)); n > mostMeasured {
		r.fail(where{}, "measure", "%d places along the axis are reached by measuring; more than %d are not replayed", n, mostMeasured)
		return plan.Proof{}
	}
	if part.Flat() {
		return proveFlat(r, job, part, p)
	}
	runs := inEvery(worlds(p), func(world world) *walk {
		w := &walk{record: &record{part: r.part, known: r.known}, job: job, part: part, plan: p, world: world, removing: map[cutKey]bool{}, filed: map[string]bool{}, holes: map[holeKey]*drilled{}, punched: map[markKey]bool{}, filedAfter: map[string]int{}, seatSet: map[string]float64{}}
		w.run()
		w.checkTarget()
		w.checkDone()
		w.checkRunOuts()
		if len(w.failures) == 0 { // else there may be no such surfaces
			w.checkRelations()
			w.checkFinishBend()
		}
		return w
	})
	r.gather(runs)
	if len(r.failures) == 0 {
		first := runs[0]
		first.record = r
		tellClauses(first, len(runs))
	}
	checkRemoving(r, p, removed(runs))
	return plan.Proof{Clauses: r.clauses, Cuts: runs[0].motion}
}

// inEvery follows a plan in every world, in several at once: they share nothing that is written but what is known of curves.
func inEvery(all []world, follow func(world) *walk) []*walk {
	runs := make([]*walk, len(all))
	parallel.Each(len(all), func(i int) { runs[i] = follow(all[i]) })
	return runs
}

// gather takes the failures of every world up, in the worlds' order.
func (r *record) gather(runs []*walk) {
	for _, w := range runs {
		for _, f := range w.failures {
			r.add(f)
		}
	}
}

// removed is which cuts have removed metal in some world.
func removed(runs []*walk) map[cutKey]bool {
	any := map[cutKey]bool{}
	for _, w := range runs {
		for key, did := range w.removing {
			any[key] = any[key] || did
		}
	}
	return any
}

// checkRemoving holds that every cut removes metal in at least one world: where measuring finds nothing left, there is nothing to remove.
func checkRemoving(r *record, p plan.Part, removing map[cutKey]bool) {
	for i, s := range p.Setups {
		for k, op := range s.Operations {
			for c, cut := range op.Cuts {
				if op.Process != plan.SawOff && !removing[cutKey{i, k, c}] {
					r.fail(where{s.Number, op.ID}, "removes metal", "cut %q removes nothing", cut.Name)
				}
			}
		}
	}
}

// checkNumbers holds that setups are numbered from 1, and that operations have ids of their own and rising numbers.
func checkNumbers(r *record, part *partspec.Part, p plan.Part, first int) {
	ids, last := map[string]bool{}, 0
	for i, s := range p.Setups {
		if s.Number != i+first {
			r.fail(where{setup: s.Number}, "order", "setup %d stands in place %d", s.Number, i+first)
		}
		for _, op := range s.Operations {
			at := where{s.Number, op.ID}
			if op.ID == "" || ids[op.ID] {
				r.fail(at, "order", "every operation needs an id of its own; %q is used twice or empty", op.ID)
			}
			if op.Number <= last {
				r.fail(at, "order", "operation %d comes after %d", op.Number, last)
			}
			ids[op.ID], last = true, op.Number
			checkWords(r, at, part, op)
		}
	}
}

// checkDone holds that every thread and knurl has been made, and every profile filed that is to be: the metal itself does not show them.
func (w *walk) checkDone() {
	for _, f := range w.part.Features {
		name := f.Head().Name
		switch f := f.(type) {
		case *partspec.Thread, *partspec.Knurl:
			if !w.marked(name) {
				w.fail(where{}, "finished part", "%s is never made", f.Head().ID())
			}
		case *partspec.Fillet:
			if w.stepped(name) && !w.filed[name] {
				w.fail(where{}, "finished part", "%s is stepped and never filed", f.ID())
			}
		case *partspec.Profile:
			if f.FinishFile && !w.filed[name] {
				w.fail(where{}, "finished part", "%s is never filed", f.ID())
			}
		case *partspec.Bore:
			if f.At != nil {
				w.fail(where{}, "finished part", "%s lies beside the axis of a turned part: nothing proves it", f.ID())
			}
		case *partspec.Spigot, *partspec.Recess, *partspec.Taper, *partspec.Groove, *partspec.Chamfer, *partspec.Holes, *partspec.CrossHole, *partspec.Seat, *partspec.SideSeat, *partspec.Flat, *partspec.Slot:
			// held by the metal itself, see checkTarget
		default:
			w.fail(where{}, "finished part", "%s: nothing proves a %s", f.Head().ID(), f.Head().Word)
		}
	}
}

// stepped reports whether a feature is made by steps.
func (w *walk) stepped(name string) bool {
	for _, s := range w.plan.Setups {
		for _, op := range s.Operations {
			if op.Feature == name && op.Process == plan.Steps {
				return true
			}
		}
	}
	return false
}

func (w *walk) marked(name string) bool {
	for _, m := range w.marks {
		if m.feature == name {
			return true
		}
	}
	return false
}

// keptSpots are the centre holes that may stay in the ends of work that a centre supports.
func (w *walk) keptSpots() []solid.Curve {
	for _, s := range w.plan.Setups {
		if s.Tailstock || s.Grip.Kind == "centres" {
			return w.spots
		}
	}
	return nil
}

// tellClauses writes down what has been proved.
func tellClauses(w *walk, worlds int) {
	r := w.record
	r.hold("finished part", "lies between the least and the most metal of the drawing, at %s of what is reached by measuring", counted(worlds, "corner", ""))
	r.hold("cuts", "%s rebuilt from pose, tool and dial readings; each begins in the clear, removes metal and is no deeper than it says", counted(w.motion, "movement", ""))
	r.hold("grips", "in %s what is gripped is there, is not cut and stays %s mm clear of every tool", counted(len(w.plan.Setups), "setup", ""), mm(clearance))
	r.hold("dials", "every nought has a surface to touch; cards, turns and graduations add up; no dial turns round under cut")
	r.hold("speeds", "every speed is a step of its machine and below its caps")
	if n := len(w.part.Relations); n > 0 {
		r.hold("relations", "%s through the chain of setups", counted(n, "drawn relation", "hold"))
	}
	tellAside(w)
	if n := len(w.marks); n > 0 {
		r.hold("threads", "%s on blanks of the right size, with room to run out, and never gripped bare", counted(n, "thread or knurl", ""))
	}
}

// counted is a number of things with what they do, one or many: "1 drawn relation holds", "3 drawn relations hold".
func counted(n int, thing, verb string) string {
	if n == 1 && verb != "" {
		verb += "s"
	}
	if n != 1 {
		thing = strings.ReplaceAll(thing, " or ", "s or ") + "s"
	}
	return strings.TrimSpace(number(n) + " " + thing + " " + verb)
}

// tellAside writes down what has been proved of what lies beside and across the axis.
func tellAside(w *walk) {
	tapped, off := 0, 0.0
	for _, h := range w.holes {
		off = math.Max(off, math.Hypot(h.x-h.x0(), h.y-h.y0())+h.off)
		if h.tapped != nil {
			tapped++
		}
	}
	if n := len(w.holes); n > 0 {
		w.record.hold("holes", "%s beside or across the axis, to size, as deep and as wide at the mouth as drawn, %d of them tapped; none may lie more than %s mm from its place", counted(n, "hole", ""), tapped, mm(math.Ceil(off*1000)/1000))
	}
	cut := map[string]bool{}
	for _, a := range w.milled {
		cut[a.feature] = true
	}
	if n := len(cut); n > 0 {
		w.record.hold("milled", "%s cut all over to the drawn surface, by %s that go nowhere past it", counted(n, "feature", ""), counted(len(w.milled), "cut", ""))
	}
}

func number(n int) string { return strconv.Itoa(n) }

func lengthOf(mm float64) units.Length { return units.Length(mm) }
