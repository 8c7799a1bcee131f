package planner

import (
	"fmt"
	"math"
	"runtime"
	"sort"
	"sync"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/drawing"
	"catchplate/planner/holding"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/replay"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
)

// Options bends the planner for tests and questions; the zero value is the ordinary way.
type Options struct {
	Rules *rules.Set // nil: all of them
}

// rules are the rules in force.
func (o Options) rules() rules.Set {
	if o.Rules != nil {
		return *o.Rules
	}
	return rules.All()
}

// Plan plans every part of a job. A part that cannot be made has Refusals instead of Setups. The plan is not proved yet: Proved does that too.
func Plan(job *partspec.Job, opt Options) *plan.Plan {
	set := opt.rules()
	p := &plan.Plan{Schema: plan.Schema, Workshop: job.Workshop.Name, BuiltInWorkshop: job.Workshop.BuiltIn, Parts: []plan.Part{}}
	for _, part := range inOrder(job, set) {
		if !part.Bought {
			p.Parts = append(p.Parts, planPart(job, part, set))
		}
	}
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

// inOrder lists the parts so that the one with the hole of a fit comes before the one with the shaft (rule A-10), else as in the files.
func inOrder(job *partspec.Job, set rules.Set) []*partspec.Part {
	parts := append([]*partspec.Part(nil), job.Parts...)
	if !set.Has("A-10") {
		return parts
	}
	after := map[string]map[string]bool{}
	for _, f := range job.Fits {
		if f.Hole.Part != f.Shaft.Part {
			if after[f.Shaft.Part] == nil {
				after[f.Shaft.Part] = map[string]bool{}
			}
			after[f.Shaft.Part][f.Hole.Part] = true
		}
	}
	var out []*partspec.Part
	placed := map[string]bool{}
	for len(out) < len(parts) {
		before := len(out)
		for _, p := range parts {
			if !placed[p.Name] && ready(after[p.Name], placed) {
				out, placed[p.Name] = append(out, p), true
			}
		}
		if len(out) == before { // fits in a ring: the files' order decides
			for _, p := range parts {
				if !placed[p.Name] {
					out, placed[p.Name] = append(out, p), true
					break
				}
			}
		}
	}
	return out
}

func ready(needs, placed map[string]bool) bool {
	for n := range needs {
		if !placed[n] {
			return false
		}
	}
	return true
}

// attempt is one way the stock may lie and the holes be made, with the order found for it.
type attempt struct {
	ctx   *process.Context
	shop  *holding.Shop
	order *ordering
	peers []*attempt // of the one that is chosen: all that were tried with it
}

// planPart runs the passes for one part: place the stock, choose chains, make tasks, find mounts, order, write out.
func planPart(job *partspec.Job, part *partspec.Part, set rules.Set) plan.Part {
	out := plan.Part{Name: part.Name, Note: part.Note, Material: part.Material.ID, MaterialName: part.Material.Name, Quantity: part.Quantity, DrawnInInch: part.Inches,
		LengthMM: float64(part.Length.Value), Drawing: drawing.Of(part)}
	if refused := notPlanned(part); refused != nil {
		out.Refusals = refused
		return out
	}
	best, refused := bestAttempt(job, part, set)
	if best == nil {
		out.Refusals = refused
		return out
	}
	writeOut(&out, best)
	return out
}

// bestAttempt finds the cheapest order of a part over all attempts, or the refusals that say why there is none.
func bestAttempt(job *partspec.Job, part *partspec.Part, set rules.Set) (*attempt, []plan.Refusal) {
	var failed []*attempt
	memo := process.NewMemo()
	for _, desperate := range []bool{false, true} {
		list, refused := tries(job, part, set, memo, desperate)
		if refused != nil {
			return nil, refused
		}
		orderAll(list, desperate)
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

// orderAll orders the work of every attempt, as many at once as there are processors: they share nothing that is written.
func orderAll(list []*attempt, desperate bool) {
	var wait sync.WaitGroup
	room := make(chan struct{}, runtime.GOMAXPROCS(0))
	for _, a := range list {
		wait.Add(1)
		room <- struct{}{}
		go func() {
			defer func() { <-room; wait.Done() }()
			a.order = orderWork(a.ctx, a.shop, desperate)
		}()
	}
	wait.Wait()
}

// tries lists the attempts at a part: every way that its stock may lie, and its holes be made.
func tries(job *partspec.Job, part *partspec.Part, set rules.Set, memo *process.Memo, desperate bool) ([]*attempt, []plan.Refusal) {
	if part.Flat() {
		return flatTries(job, part, set, desperate)
	}
	lathe, ok := machine(job.Workshop, partspec.Lathe)
	if !ok {
		return nil, []plan.Refusal{{What: "turning", Reasons: []string{"the workshop has no lathe"}, Remedies: []string{"add machine \"lathe\" to the workshop"}}}
	}
	if wanting := dialsWanting(lathe); wanting != nil {
		return nil, wanting
	}
	var list []*attempt
	for _, place := range placements(job.Workshop, part, set) {
		list = append(list, attempts(job, part, lathe, place, set, memo)...)
	}
	return list, nil
}

// coarsestSaddle is the coarsest graduation of a saddle by which shoulders are set: roughing leaves 0.2 on them (rule A-05), and a coarser one leaves more or none.
const coarsestSaddle = 0.25

// dialsWanting refuses a lathe on which no place can be set.
func dialsWanting(lathe partspec.Machine) []plan.Refusal {
	var out []plan.Refusal
	for _, name := range []string{"cross", "saddle"} {
		if _, ok := lathe.Dial(name); !ok {
			out = append(out, plan.Refusal{What: "setting the " + name, Reasons: []string{fmt.Sprintf("the %s has no %s dial", lathe.Name, name)},
				Remedies: []string{fmt.Sprintf("add dial %q { graduation, per_turn, reads } to it; an indicator or a scale is one too", name)}})
		}
	}
	if d, ok := lathe.Dial("saddle"); ok && float64(d.Graduation.Value) > coarsestSaddle {
		out = append(out, plan.Refusal{What: "setting the saddle", Reasons: []string{fmt.Sprintf("the saddle's graduation of %s is coarser than the %g that shoulders are set to", d.Graduation.Value.Text(units.InMM), coarsestSaddle)},
			Remedies: []string{"put an indicator or a scale against the saddle, and give its graduation: dial \"saddle\" { graduation = 0.1  reads = \"indicator\" }"}})
	}
	return out
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

// faceAllowance is what is faced off a sawn end (rule A-01).
const faceAllowance = 1.0

// placements lists how the stock may lie: hanging on its bar with either end free, or as a blank when it is too short to be held beyond the part.
func placements(w *partspec.Workshop, part *partspec.Part, set rules.Set) []shape.Placement {
	if part.Stock.Kind == partspec.Existing {
		return []shape.Placement{shape.Existing(part.Stock)}
	}
	blocks, length := shape.Blocks(part), float64(part.Length.Mid())
	have := float64(part.Stock.Length.Value)
	var out []shape.Placement
	for _, free := range []partspec.End{partspec.Right, partspec.Left} {
		p := shape.Placement{Free: free}
		p.PartWidth, p.Spare, p.ByHand = process.Separation(w, part, separationRadius(part, blocks, free), throughRadius(part))
		tail := holding.BarGrip(w)
		if set.Has("C-35") {
			tail += holding.BarClearance
		}
		need := faceAllowance + length + p.Spare + p.PartWidth + tail
		if have > 0 && have < need {
			continue
		}
		total := need
		if have > 0 {
			total = have
		}
		p.LeftZ, p.RightZ = length+faceAllowance-total, length+faceAllowance
		if free == partspec.Left {
			p.LeftZ, p.RightZ = -faceAllowance, total-faceAllowance
		}
		out = append(out, p)
	}
	if len(out) == 0 {
		spare := math.Max(0, have-length) / 2
		out = append(out, shape.Placement{LeftZ: -spare, RightZ: length + spare})
	}
	return out
}

// separationRadius is the radius that a parting tool meets at the held end: that block's, when nothing larger stands between it and the free end.
func separationRadius(part *partspec.Part, blocks []shape.Block, free partspec.End) float64 {
	held := blocks[0]
	if free == partspec.Left {
		held = blocks[len(blocks)-1]
	}
	for _, b := range blocks {
		if b.Greatest > held.Greatest {
			return float64(part.Stock.EnvelopeDiameter()) / 2
		}
	}
	return held.Greatest
}

func throughRadius(part *partspec.Part) float64 {
	r := float64(part.Stock.Inside.Value) / 2
	for _, h := range shape.Holes(part) {
		if h.Through {
			r = math.Max(r, h.Radius)
		}
	}
	return r
}

// mostAttempts bounds the combinations of chains that are ordered for one placement; beyond it the later holes keep their first chain.
const mostAttempts = 8

// attempts makes a context for every combination of chains of a part's holes.
func attempts(job *partspec.Job, part *partspec.Part, lathe partspec.Machine, place shape.Placement, set rules.Set, memo *process.Memo) []*attempt {
	base := process.Context{Part: part, Shop: job.Workshop, Lathe: lathe, Mill: owned(job.Workshop, partspec.Mill), Drill: owned(job.Workshop, partspec.Drill), Bench: owned(job.Workshop, partspec.Bench), Place: place, Blocks: shape.Blocks(part), Holes: shape.Holes(part),
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
			out = append(out, &attempt{ctx: &ctx, shop: holding.New(&ctx)})
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
	return append(choices, map[partspec.End]bool{partspec.Right: true}, map[partspec.End]bool{partspec.Left: true}, map[partspec.End]bool{partspec.Left: true, partspec.Right: true})
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

// cited lists the heads of all rules that a plan names.
func cited(p *plan.Plan, set rules.Set) []plan.Rule {
	named := map[string]bool{}
	add := func(id string) {
		if id != "" {
			named[id] = true
		}
	}
	for _, part := range p.Parts {
		for _, s := range part.Setups {
			for _, r := range s.Why {
				add(r.Rule)
			}
			for _, o := range s.Operations {
				for _, r := range o.Why {
					add(r.Rule)
				}
			}
		}
		for _, c := range part.Cautions {
			add(c.Rule)
		}
		for _, r := range part.Rejected {
			add(r.Rule)
		}
		for _, pair := range part.Order.Pairs {
			add(pair.Rule)
		}
		for _, h := range part.MakeFirst {
			for _, id := range h.Rules {
				add(id)
			}
		}
	}
	heads := []plan.Rule{}
	for _, h := range set.Heads() {
		if named[h.ID] {
			heads = append(heads, h)
		}
	}
	sort.SliceStable(heads, func(i, j int) bool { return heads[i].ID < heads[j].ID })
	return heads
}
