package planner

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/holding"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/sequence"
)

// lacking refuses the tasks that nothing owned can do: tasks of one feature, or of none that is drawn by name, that want the same are told together.
func lacking(part *partspec.Part, tasks []process.Task) []plan.Refusal {
	var out []plan.Refusal
	for _, t := range tasks {
		if len(t.Ways) > 0 {
			continue
		}
		if part.Feature(t.Feature) == nil {
			t.Feature = ""
		}
		why := unrepeated(t.Lacking)
		same := slices.IndexFunc(out, func(r plan.Refusal) bool { return r.Feature == t.Feature && slices.Equal(r.Reasons, why) })
		if same >= 0 {
			out[same].What += ", " + t.ID
			continue
		}
		out = append(out, plan.Refusal{Feature: t.Feature, What: t.ID, Reasons: why, Remedies: []string{"what is wanting, written into the workshop; or other limits, sizes or stock for the feature"}})
	}
	return out
}

// unheld lists the tasks that no mount serves at any moment.
func (o *ordering) unheld() []plan.Refusal {
	var out []plan.Refusal
	for i, t := range o.shop.Tasks {
		if len(o.alts[i]) == 0 {
			out = append(out, o.refusal(t, o.whyNever(i)))
		}
	}
	return out
}

// objection is why a mount does not serve a task.
type objection struct {
	mount, reason, rule string
	others              int // how much else stands against it
}

// whyNever tells why no mount ever serves a task.
func (o *ordering) whyNever(task int) []objection {
	var found []objection
	for _, w := range o.shop.Tasks[task].Ways {
		for _, m := range o.mounts {
			if !m.Suits(w) {
				continue
			}
			verdicts := o.ctx.Rules.Judge(o.shop.Facts(m, task, w, lightest()))
			for _, v := range verdicts {
				found = append(found, objection{m.ID, v.Reason, v.Rule, len(verdicts) - 1})
			}
		}
	}
	return found
}

// refusal words a task that nothing holds.
func (o *ordering) refusal(t process.Task, found []objection) plan.Refusal {
	groups := grouped(found)
	if nearest := len(groups) > 0 && remote(groups[0].objection) == 0; !nearest {
		if why := o.otherWays(t); len(why) > 0 {
			return plan.Refusal{Feature: t.Feature, What: t.ID, Reasons: why,
				Remedies: []string{"wider limits for its place or its size, or what is wanting, written into the workshop"}}
		}
	}
	r := plan.Refusal{Feature: t.Feature, What: t.ID, Remedies: remediesFor(groups)}
	if b, ok := o.ctx.Part.Feature(t.Feature).(*partspec.Bore); ok && b.At != nil && b.FlatBottom {
		if why := o.ctx.SunkLack(b); why != "" {
			r.Reasons = append(r.Reasons, why)
		}
	}
	if t.Process == plan.MillFace {
		r.Remedies = []string{"stock rolled to the part's own thickness, its faces left: faces_as_supplied = true", "thicker stock, of which more lies in the jaws"}
	}
	for _, g := range groups[:min(len(groups), mostReasons)] {
		r.Reasons = append(r.Reasons, g.String())
	}
	if more := len(groups) - mostReasons; more > 0 {
		r.Reasons = append(r.Reasons, fmt.Sprintf("and %d more, no nearer", more))
	}
	if len(groups) == 0 {
		r.Reasons, r.Remedies = []string{o.noStand()}, []string{"a machine with a table, and a chuck, vee blocks or clamps on it; or the feature drawn from another side"}
	}
	return r
}

// noStand says that nothing owned holds the work as a task wants it held.
func (o *ordering) noStand() string {
	if o.ctx.Slide != nil {
		return "the vice of a vertical slide holds flat work by two edges, and turned work lying across the bed: none with an end towards the spindle"
	}
	return "no holding owned stands the work as this wants it"
}

// otherWays tells why a bore of a flat part is made in none of the ways that hold it otherwise: what holds it by surfaces that are not there was never a way.
func (o *ordering) otherWays(t process.Task) []string {
	b, ok := o.ctx.Part.Feature(t.Feature).(*partspec.Bore)
	if !ok || !o.ctx.Part.Flat() || b.At == nil {
		return nil
	}
	_, lacking := o.ctx.FlatChains(b)
	return unrepeated(lacking)
}

// mostReasons bounds what a refusal tells of holdings that fail; mostRemedies what might help.
const (
	mostReasons  = 6
	mostRemedies = 3
)

// group is one objection to several mounts.
type group struct {
	objection
	also int
}

func (g group) String() string {
	also := ""
	if g.also > 0 {
		also = fmt.Sprintf(" and %d more like it", g.also)
	}
	if g.rule == "" {
		return fmt.Sprintf("%s%s: %s", g.mount, also, g.reason)
	}
	return fmt.Sprintf("%s%s: %s (%s)", g.mount, also, g.reason, g.rule)
}

// grouped puts like objections together, those first that come nearest to a way. What is cut by the task itself, or is not there, was never a way to hold it.
func grouped(found []objection) []group {
	found = slices.Clone(found)
	slices.SortStableFunc(found, func(a, b objection) int {
		return cmp.Or(cmp.Compare(remote(a), remote(b)), cmp.Compare(a.others, b.others), cmp.Compare(a.mount, b.mount), cmp.Compare(a.reason, b.reason))
	})
	var out []group
	told := map[[2]string]bool{} // of a mount, one objection a rule: other ways and depths of pass only tell the same with other figures
	for _, x := range found {
		key := [2]string{x.mount, cmp.Or(x.rule, x.reason)}
		if told[key] {
			continue
		}
		told[key] = true
		same := slices.IndexFunc(out, func(g group) bool {
			return g.rule == x.rule && (g.reason == x.reason || x.rule != "" && byHolding(g.mount) == byHolding(x.mount))
		})
		if same < 0 {
			out = append(out, group{objection: x})
		} else {
			out[same].also++
		}
	}
	return out
}

// byHolding is the holding, and the support beside it, of a mount's name: how it lies only changes the figures of a rule.
func byHolding(mount string) string {
	name, _, _ := strings.Cut(mount, " on ")
	if strings.HasSuffix(mount, ", centred") {
		name += ", centred"
	}
	return name
}

// remote is 1 for what stands against a mount that was never a way.
func remote(x objection) int {
	if x.rule == "B-45" || x.rule == "B-45a" {
		return 1
	}
	return 0
}

// remedyOf is what helps against an objection, by its rule.
var remedyOf = map[string]string{
	"A-06":  "a wider relation, or a holding that leaves both surfaces open in one setting",
	"B-04":  "a chuck whose jaws reach it, or a faceplate",
	"B-06":  "a larger faceplate, or a mill that bores it",
	"B-07":  "stock with waste beside the part to clamp on",
	"B-05":  "a collet of that very size",
	"B-13":  "a thicker wall, or a stub mandrel, which clamps along the axis",
	"B-14":  "lighter cuts, or a wider bore to hold it by",
	"B-16":  "a larger face to glue, or lighter cuts",
	"B-23":  "bored soft jaws, a plug in the bore, or a holding that clamps along the axis: they squeeze less; or a thicker wall",
	"B-26":  "a holding that takes this size",
	"B-27":  "longer stock to grip, or a tailstock",
	"B-28":  "support at its free end, by a tailstock or between centres; or a shorter or a thicker part",
	"B-32":  "a smaller cutter, in a collet; a slide that goes as far; or a milling machine",
	"B-37":  "soft jaws or a collet, which do not mark finished work",
	"B-40":  "a collet or soft jaws beside the thread",
	"B-42":  "a chuck that grips harder, or a surface of larger diameter to grip",
	"B-44":  "a three-jaw chuck",
	"B-45":  "longer stock, so that it is held beyond what is cut",
	"B-45a": "longer stock, that can be held by its waste, or a holding for another surface of it",
	"C-24":  "wider limits for its place, as in at = \"20 ±0.3\", or a position where the feature takes one",
}

// remediesFor are what helps against the nearest objections.
func remediesFor(groups []group) []string {
	var out []string
	for _, g := range groups {
		if remote(g.objection) > remote(groups[0].objection) {
			break
		}
		if r := remedyOf[g.rule]; r != "" && len(out) < mostRemedies && !slices.Contains(out, r) {
			out = append(out, r)
		}
	}
	if out == nil {
		return []string{"a holding that leaves the surface open and does not crush or lose it", "stock that can be held by its waste", "a tailstock, or lighter cuts"}
	}
	return out
}

// blocked turns the furthest state of a search that failed into refusals: of the tasks that nothing holds there. What only waits for one of them is not told.
// A search that ran out of nodes proves nothing, and says so first.
func (o *ordering) blocked() []plan.Refusal {
	out := o.furthest()
	if !o.result.Proven && len(out) > 0 {
		given := fmt.Sprintf("no order was found before the search was given up, after %d states; there may yet be one", o.result.Stats.Stored)
		out[0].Reasons = append([]string{given}, out[0].Reasons...)
	}
	return out
}

// furthest tells of the furthest state what stands against each task that could be next.
func (o *ordering) furthest() []plan.Refusal {
	if len(o.result.Blocked.Fronts) == 0 {
		return []plan.Refusal{{What: "the order of work", Reasons: []string{"no order satisfies every rule and holding at once"}, Remedies: []string{"a holding more, or a wider relation"}}}
	}
	front := o.result.Blocked.Fronts[0]
	var out, waiting []plan.Refusal
	for _, w := range front.Waiting {
		if w.Missing != 0 {
			continue
		}
		found, waits := o.standing(w, front.Done)
		if len(found) > 0 {
			out = append(out, o.refusal(o.shop.Tasks[w.Op], found))
		} else {
			waiting = append(waiting, o.refusal(o.shop.Tasks[w.Op], waits))
		}
	}
	if out == nil {
		out = waiting
	}
	if done := o.names(front.Done); done != "" && len(out) > 0 {
		out[0].Reasons = append(out[0].Reasons, "done before, by the way that goes furthest: "+done)
	}
	return out
}

// standing is what stands against a task at a moment, and what of it only waits for others.
func (o *ordering) standing(w sequence.Waiting, done sequence.Set) (found, waits []objection) {
	for _, alt := range w.Refused {
		c := o.alts[w.Op][alt]
		id := o.mounts[c.mount].ID
		if i := o.waits(w.Op, c, done.Has); i >= 0 {
			waits = append(waits, objection{mount: id, reason: o.shop.Tasks[o.arcs[i].Before].ID + " must come first", rule: o.arcs[i].Rule})
			continue
		}
		verdicts := o.objections(w.Op, c, done.Has)
		for _, v := range verdicts {
			found = append(found, objection{id, v.Reason, v.Rule, len(verdicts) - 1})
		}
	}
	for _, alt := range w.Unlinked {
		found = append(found, objection{mount: o.mounts[o.alts[w.Op][alt].mount].ID, reason: o.bound(w.Op, o.mounts[o.alts[w.Op][alt].mount]), rule: "A-06"})
	}
	if !slices.ContainsFunc(found, func(x objection) bool { return remote(x) == 0 }) { // then the holdings that never serve tell as much
		never := o.whyNever(w.Op)
		if len(found) == 0 && len(waits) > 0 {
			return nil, append(waits, never...)
		}
		found = append(found, never...)
	}
	return found, waits
}

// bound says what binds a task to the setting of another, and how true it would be to that in a mount that sits on it.
func (o *ordering) bound(task int, m holding.Mount) string {
	for _, r := range o.ctx.Part.Relations {
		for _, pair := range [][2]partspec.Surface{{r.Of, r.To}, {r.To, r.Of}} {
			if o.maker(pair[0]) == task {
				if truth, face := o.shop.FaceTruth(m, o.widest(task, max(0, o.maker(pair[1])))); r.Kind == partspec.Parallel && face == pair[1].String() {
					return fmt.Sprintf("%s is made in another setting; sitting on it, this face comes out within %.3f parallel to it, and half of the %.3f asked may go on that", pair[1], truth, float64(r.Within))
				}
				return fmt.Sprintf("%s is made in another setting, and how true the two are to each other would be lost", pair[1])
			}
		}
	}
	return "what it belongs to is made in another setting"
}

// names lists tasks.
func (o *ordering) names(tasks sequence.Set) string {
	var ids []string
	for _, i := range tasks.Ops() {
		ids = append(ids, o.shop.Tasks[i].ID)
	}
	return strings.Join(ids, ", ")
}

func unrepeated(list []string) []string {
	var out []string
	for _, s := range list {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

// reached is how many operations the work got through before nothing could follow.
func (o *ordering) reached() int {
	if o.result.Blocked == nil || len(o.result.Blocked.Fronts) == 0 {
		return 0
	}
	return o.result.Blocked.Fronts[0].Done.Len()
}

// unequipped is 1 for an attempt that nothing mills in.
func unequipped(a *attempt) int {
	if a.ctx.Mill.Kind == "" {
		return 1
	}
	return 0
}

// refusals picks the failed attempt that got furthest; of like ones the one that fails at the fewest tasks, and then the one with the most ways to hold the work, whose
// reasons tell the most.
func refusals(failed []*attempt) []plan.Refusal {
	if len(failed) == 0 {
		return nil
	}
	best := slices.MinFunc(failed, func(a, b *attempt) int {
		return cmp.Or(cmp.Compare(b.order.reached(), a.order.reached()), cmp.Compare(unequipped(a), unequipped(b)), cmp.Compare(len(a.order.refusals), len(b.order.refusals)), cmp.Compare(len(b.order.mounts), len(a.order.mounts)))
	})
	return best.order.refusals
}

// circle tells of rules that ask of a few tasks that each comes before another of them; nil where none do. What binds only at one end of the part is left to the search.
func (o *ordering) circle() []plan.Refusal {
	arcs := slices.DeleteFunc(slices.Clone(o.arcs), func(a rules.Arc) bool { return a.End != partspec.EndInvalid })
	for n := len(arcs) + 1; len(arcs) < n; { // what nothing must precede, or follow, is in no circle
		n = len(arcs)
		arcs = slices.DeleteFunc(arcs, func(a rules.Arc) bool {
			return !slices.ContainsFunc(arcs, func(b rules.Arc) bool { return b.After == a.Before }) || !slices.ContainsFunc(arcs, func(b rules.Arc) bool { return b.Before == a.After })
		})
	}
	if len(arcs) == 0 {
		return nil
	}
	var reasons []string
	for _, a := range arcs {
		reasons = append(reasons, fmt.Sprintf("%s must come before %s (%s)", o.shop.Tasks[a.Before].ID, o.shop.Tasks[a.After].ID, a.Rule))
	}
	return []plan.Refusal{{What: "the order of work, which goes in a circle", Reasons: unrepeated(reasons), Remedies: []string{"one of these features drawn otherwise"}}}
}
