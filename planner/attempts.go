package planner

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/holding"
	"catchplate/planner/parallel"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
)

// attempt is one way the stock may lie and the holes be made, with the order found for it.
type attempt struct {
	ctx   *process.Context
	shop  *holding.Shop
	order *ordering
	peers []*attempt // of the one that is chosen: all that were tried with it
}

// bestAttempt finds the cheapest order of a part over all attempts, or the refusals that say why there is none.
func bestAttempt(job *partspec.Job, part *partspec.Part, opt Options) (*attempt, []plan.Refusal) {
	var failed []*attempt
	memo := process.NewMemo()
	for _, filed := range []bool{false, true} { // the sides of flat parts, when nothing passes that mills them
		if filed && !part.Flat() {
			break
		}
		list, refused := tries(job, part, opt.rules(), memo, filed)
		if refused != nil {
			return nil, refused
		}
		orderAll(list, opt.nodes())
		var best *attempt
		for _, a := range list {
			if a.order.refusals != nil {
				failed = append(failed, a)
			} else if best == nil || a.order.cost < best.order.cost {
				best = a
			}
		}
		if best != nil {
			best.peers = list
			return best, nil
		}
	}
	return nil, refusals(failed)
}

// orderAll orders the work of every attempt: they share nothing that is written but the memo.
func orderAll(list []*attempt, nodes int) {
	parallel.Each(len(list), func(i int) {
		a := list[i]
		a.shop = holding.New(a.ctx)
		a.order = orderWork(a.ctx, a.shop, nodes)
	})
}

// tries lists the attempts at a part: every way that its stock may lie, and its holes be made.
func tries(job *partspec.Job, part *partspec.Part, set rules.Set, memo *process.Memo, filed bool) ([]*attempt, []plan.Refusal) {
	if part.Flat() {
		return flatTries(job, part, set, memo, filed)
	}
	lathe := owned(job.Workshop, partspec.Lathe)
	if wanting := latheWanting(lathe, part); wanting != nil {
		return nil, wanting
	}
	var list []*attempt
	for _, mill := range millings(job.Workshop, part) {
		for _, place := range placements(job.Workshop, part, set) {
			list = append(list, attempts(job, part, lathe, mill, place, set, memo)...)
		}
	}
	return list, nil
}

func machine(w *partspec.Workshop, kind partspec.MachineKind) (partspec.Machine, bool) {
	for _, m := range w.Machines {
		if m.Kind == kind {
			return m, true
		}
	}
	return partspec.Machine{}, false
}

// owned is the machine of a kind, or none.
func owned(w *partspec.Workshop, kind partspec.MachineKind) partspec.Machine {
	m, _ := machine(w, kind)
	return m
}

// mostAttempts bounds the combinations of chains that are ordered for one placement; beyond it the later holes keep their first chain.
const mostAttempts = 8

// attempts makes a context for every combination of chains of a part's holes.
func attempts(job *partspec.Job, part *partspec.Part, lathe partspec.Machine, mill milling, place shape.Placement, set rules.Set, memo *process.Memo) []*attempt {
	base := process.Context{Part: part, Shop: job.Workshop, Lathe: lathe, Mill: mill.machine, Slide: mill.slide, Drill: owned(job.Workshop, partspec.Drill), Bench: owned(job.Workshop, partspec.Bench), Place: place, Blocks: shape.Blocks(part), Holes: shape.Holes(part),
		Stock: place.Body(part.Stock), Length: float64(part.Length.Mid()), Rules: set, Split: roughApart(part, set), Memo: memo}
	combos := []map[string]process.Chain{{}}
	for _, h := range base.Holes {
		if h.AsSupplied {
			continue
		}
		chains, _ := base.Chains(h)
		if len(chains) == 0 {
			continue
		}
		combos = times(combos, h.Name, chains)
	}
	var out []*attempt
	for _, combo := range combos {
		for _, centred := range centreChoices(&base) {
			ctx := base
			ctx.Bored, ctx.Centred = combo, centred
			out = append(out, &attempt{ctx: &ctx})
		}
	}
	return out
}

// slender is the length, in least diameters, from which on centre holes in the ends are worth trying (rule B-28: 3 to 5 free, more with support).
const slender = 4

// centreChoices lists which solid ends get centre holes: none, and for slender parts either or both.
func centreChoices(c *process.Context) []map[partspec.End]bool {
	choices := []map[partspec.End]bool{nil}
	least := math.Inf(1)
	for _, b := range c.Blocks {
		least = math.Min(least, 2*b.Least)
	}
	owned := false
	for _, h := range c.Shop.Holdings {
		owned = owned || h.Kind == partspec.Tailstock || h.Kind == partspec.BetweenCentres
	}
	if !owned || len(c.Holes) > 0 || c.Length < slender*least {
		return choices
	}
	left, right := c.TakesCentre(partspec.Left), c.TakesCentre(partspec.Right)
	if right {
		choices = append(choices, map[partspec.End]bool{partspec.Right: true})
	}
	if left {
		choices = append(choices, map[partspec.End]bool{partspec.Left: true})
	}
	if left && right {
		choices = append(choices, map[partspec.End]bool{partspec.Left: true, partspec.Right: true})
	}
	return choices
}

// roughApart reports whether roughing and finishing are operations of their own (rule A-03).
func roughApart(part *partspec.Part, set rules.Set) bool {
	if !set.Has("A-03n") {
		return false
	}
	widest, bore := 0.0, 0.0
	fine := false
	for _, b := range shape.Blocks(part) {
		widest = math.Max(widest, b.Greatest)
		fine = fine || b.Cylinder() && !b.AsSupplied && b.Diameter.Width() < fineWidth
	}
	for _, h := range shape.Holes(part) {
		bore = math.Max(bore, h.Radius)
		fine = fine || !h.AsSupplied && h.Diameter.Width() < fineWidth
	}
	return fine || knurled(part) || bore > 0 && widest-bore < 2*widest/thinWall
}

// knurled reports whether a part has a knurl: it is pressed in between roughing and finishing (rule A-14).
func knurled(part *partspec.Part) bool {
	for _, f := range part.Features {
		if _, ok := f.(*partspec.Knurl); ok {
			return true
		}
	}
	return false
}

// fineWidth is the tolerance under which a surface is roughed apart; thinWall the part of the diameter under which a wall is thin (rule A-03).
const (
	fineWidth = 0.1
	thinWall  = 10
)
