package planner

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
)

// flatTries makes an attempt for every machine that may mill and every combination of chains by which the bores and the outline of a flat part can be made. The sides are
// milled where that can be; asked for, they are filed.
func flatTries(job *partspec.Job, part *partspec.Part, set rules.Set, memo *process.Memo, filed bool) ([]*attempt, []plan.Refusal) {
	base := process.Context{Part: part, Shop: job.Workshop, Drill: owned(job.Workshop, partspec.Drill), Bench: owned(job.Workshop, partspec.Bench),
		Length: float64(part.Length.Mid()), Rules: set, Memo: memo}
	if lathe := owned(job.Workshop, partspec.Lathe); lathe.Kind != "" && dialsWanting(lathe) == nil {
		base.Lathe = lathe
	}
	var out []*attempt
	for _, mill := range millings(job.Workshop, part) {
		ctx, why := base, ""
		ctx.Mill, ctx.Slide = mill.machine, mill.slide
		if ctx.Flat, why = process.FlatBlank(part, ctx.Mill); why != "" {
			return nil, []plan.Refusal{{What: "the stock", Reasons: []string{why}, Remedies: []string{"take a larger piece, or draw it the other way round"}}}
		}
		out = append(out, flatChains(ctx, filed)...)
	}
	return out, nil
}

// flatChains makes an attempt for every combination of chains of a flat part.
func flatChains(base process.Context, filed bool) []*attempt {
	combos := []map[string]process.Chain{{}}
	for _, f := range base.Part.Features {
		if b, ok := f.(*partspec.Bore); ok && b.At != nil {
			chains, _ := base.FlatChains(b)
			combos = times(combos, b.Name, chains)
		}
	}
	combos = times(combos, process.Outlined, base.OutlineChains())
	if filed && (base.PlainSides() || base.Part.Outline.Kind == "rectangle") { // round corners are filed after them in any case
		combos = times(combos, process.Sides, []process.Chain{process.ChainFile})
	}
	var out []*attempt
	for _, combo := range combos {
		ctx := base
		ctx.Bored = combo
		out = append(out, &attempt{ctx: &ctx})
	}
	return out
}

// times combines every combination with every chain of a feature; beyond what is tried, with its first.
func times(combos []map[string]process.Chain, name string, chains []process.Chain) []map[string]process.Chain {
	if len(chains) == 0 {
		return combos
	}
	if len(combos)*len(chains) > mostAttempts {
		chains = chains[:1]
	}
	var next []map[string]process.Chain
	for _, combo := range combos {
		for _, chain := range chains {
			with := map[string]process.Chain{name: chain}
			for k, v := range combo {
				with[k] = v
			}
			next = append(next, with)
		}
	}
	return next
}
