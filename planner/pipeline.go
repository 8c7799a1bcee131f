package planner

import (
	"slices"

	"catchplate/partspec"
	"catchplate/planner/drawing"
	"catchplate/planner/parallel"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
	"catchplate/planner/rules"
)

// Options bends the planner for tests and questions; the zero value is the ordinary way.
type Options struct {
	Rules *rules.Set // nil: all of them
	Nodes int        // what the ordering of one attempt may spend before it gives the best order found with its bound; 0: usualNodes
}

// rules are the rules in force.
func (o Options) rules() rules.Set {
	if o.Rules != nil {
		return *o.Rules
	}
	return rules.All()
}

// usualNodes bounds the search for an order in nodes, not in time, so that the answer is the same on every machine.
const usualNodes = 1_000_000

func (o Options) nodes() int {
	if o.Nodes > 0 {
		return o.Nodes
	}
	return usualNodes
}

// Plan plans every part of a job. A part that cannot be made has Refusals instead of Setups. The plan is not proved yet: Proved does that too.
func Plan(job *partspec.Job, opt Options) *plan.Plan {
	set := opt.rules()
	made := slices.DeleteFunc(inOrder(job, set), func(part *partspec.Part) bool { return part.Bought })
	p := &plan.Plan{Schema: plan.Schema, Workshop: job.Workshop.Name, BuiltInWorkshop: job.Workshop.BuiltIn, Parts: make([]plan.Part, len(made))}
	parallel.Each(len(made), func(i int) { p.Parts[i] = planPart(job, made[i], opt) })
	p.Rules = cited(p, set)
	return p
}

// Proved plans a job and replays the plan. The failures are the replay's objections to our own plan: with any, the plan must not be shown as good.
func Proved(job *partspec.Job, opt Options) (*plan.Plan, []replay.Failure) {
	p := Plan(job, opt)
	proofs, failures := replay.Prove(job, p)
	for i := range p.Parts {
		if proof, ok := proofs[p.Parts[i].Name]; ok {
			p.Parts[i].Proof = &proof
		}
	}
	return p, failures
}

// planPart runs the passes for one part: place the stock, choose chains, make tasks, find mounts, order, write out.
func planPart(job *partspec.Job, part *partspec.Part, opt Options) plan.Part {
	out := plan.Part{Name: part.Name, Note: part.Note, Material: part.Material.ID, MaterialName: part.Material.Name, Quantity: part.Quantity, DrawnInInch: part.Inches,
		LengthMM: float64(part.Length.Value), Drawing: drawing.Of(part)}
	if refused := notPlanned(part); refused != nil {
		out.Refusals = refused
		return out
	}
	best, refused := bestAttempt(job, part, opt)
	if best == nil {
		out.Refusals = refused
		return out
	}
	writeOut(&out, best)
	out.Mates = matesOf(part)
	planEccentrics(&out, job, part, opt)
	return out
}

// matesOf are the patterns of other parts that must be there before a part is spotted through from them.
func matesOf(part *partspec.Part) []plan.Mate {
	var mates []plan.Mate
	for _, f := range part.Features {
		if h, ok := f.(*partspec.Holes); ok && h.Mate != nil {
			m := plan.Mate{Part: h.Match.Part, Feature: h.Match.Feature, For: h.Name, Rule: "A-33"}
			if lies := h.Mate.Flush; lies != nil {
				m.Flush, m.Over = []plan.FlushEdge{{Edge: lies.Here[0], On: lies.There[0]}, {Edge: lies.Here[1], On: lies.There[1]}}, lies.Over
			}
			mates = append(mates, m)
		}
	}
	return mates
}
