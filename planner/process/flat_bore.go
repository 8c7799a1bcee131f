package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
	"catchplate/planner/tables"
)

// The chains that only flat parts have.
const (
	ChainSpot Chain = "spot" // spotted, drilled and reamed like the holes of a pattern
	ChainHead Chain = "head" // bored by a boring head
	ChainSaw  Chain = "saw"  // the same, opened by a hole saw rather than by drills
	ChainTrue Chain = "true" // bored true by a boring head, and reamed
	ChainSink Chain = "sink" // a flat floor round a hole that is there: counterbored
	ChainTurn Chain = "turn" // an outline turned
	ChainFile Chain = "file" // an outline filed
)

// FlatChains lists how a bore of a flat part can be made here, and why the other ways fall out.
func (c *Context) FlatChains(f *partspec.Bore) (chains []Chain, lacking []string) {
	s, why := c.spotLack(f)
	switch {
	case why == "" && !s.saw.is():
		return []Chain{ChainSpot}, nil
	case why == "":
		chains = append(chains, ChainSpot)
	default:
		lacking = append(lacking, why)
	}
	if f.FlatBottom {
		if why = c.SunkLack(f); why == "" {
			chains = append(chains, ChainSink)
		} else {
			lacking = append(lacking, why)
		}
	}
	bored, lack := c.headChains(f)
	chains, lacking = append(chains, bored...), append(lacking, lack...)
	if c.Lathe.Kind == "" {
		return chains, append(lacking, fmt.Sprintf("boring %s on a lathe: none is owned", f.Name))
	}
	sub := c.centred(float64(f.At.X.Value), float64(f.At.Y.Value))
	for _, h := range sub.Holes {
		if h.Name == f.Name {
			list, lack := sub.Chains(h)
			chains, lacking = append(chains, list[:min(1, len(list))]...), append(lacking, lack...)
		}
	}
	return chains, lacking
}

// asHoles is a bore as a pattern of one hole.
func asHoles(f *partspec.Bore) *partspec.Holes {
	return &partspec.Holes{FeatureHead: f.FeatureHead, Make: partspec.PlainHole, Places: []partspec.Point{*f.At}, Diameter: f.Diameter, From: f.From, Through: f.Through, Depth: f.Depth}
}

// spotLack says why a bore is not drilled, drilled and reamed, or sawn, like a hole of a pattern.
func (c *Context) spotLack(f *partspec.Bore) (s spotted, why string) {
	if f.FlatBottom {
		return s, fmt.Sprintf("drilling %s: a drill leaves no flat floor", f.Name)
	}
	s, lacking := c.spotted(asHoles(f))
	if len(lacking) > 0 {
		return s, lacking[0]
	}
	off := float64(tables.PlaceError(tables.ByDrill)) + s.saw.shake()
	if s.marked() {
		off += c.markError()
	} else {
		off += c.graduationOff() + dialDoubt
	}
	if within := c.placeWithin(s.Holes); within > 0 && within < off {
		return s, fmt.Sprintf("drilling %s: it may lie %.3f off its place, a drill lands within %.3f", f.Name, within, off)
	}
	if to, within := c.bound(f.Name); to != "" && within < 2*c.drilledOff(s) {
		return s, fmt.Sprintf("drilling %s: it may lie %.3f off its place from %s, two drilled holes lie within %.3f of where they should from each other", f.Name, within, to, 2*c.drilledOff(s))
	}
	return s, ""
}

// bound is the closest position that a relation binds a feature by, to what and how far off it may lie radially; no name when none does.
func (c *Context) bound(name string) (to string, within float64) {
	for _, r := range c.Part.Relations {
		other := r.To.Feature
		switch {
		case r.Kind != partspec.Position && r.Kind != partspec.Concentric:
			continue
		case r.To.Feature == name:
			other = r.Of.Feature
		case r.Of.Feature != name:
			continue
		}
		if half := float64(r.Within) / 2; to == "" || half < within {
			to, within = other, half
		}
	}
	return to, within
}

// drilledOff is how far a drilled hole may lie off its place, radially, beside what all that is made in its setting has off alike.
func (c *Context) drilledOff(s spotted) float64 {
	off := float64(tables.PlaceError(tables.ByDrill)) + s.saw.shake()
	if s.marked() {
		return off + c.markError()
	}
	return off + math.Sqrt2*c.placesOff(s)
}

// flatBore makes the tasks of a bore of a flat part by the chain chosen for it.
func (c *Context) flatBore(f *partspec.Bore) []Task {
	if f.AsSupplied {
		return nil
	}
	chain, ok := c.Bored[f.Name]
	switch {
	case !ok:
		_, lacking := c.FlatChains(f)
		return []Task{{Op: shape.Op{ID: f.ID() + "/bore", Feature: f.Name, Process: plan.BoreHead}, Lacking: lacking}}
	case chain == ChainSpot:
		return c.askRound(f, c.pattern(asHoles(f)))
	case chain == ChainHead, chain == ChainSaw, chain == ChainTrue:
		return c.headHole(f, chain)
	case chain == ChainSink:
		return []Task{c.sunkBore(f)}
	}
	return c.latheHole(f)
}

// askRound asks of the drill, saw or reamer that brings a bore to its size that it be round enough.
func (c *Context) askRound(f *partspec.Bore, tasks []Task) []Task {
	for i, t := range tasks {
		if t.Stage == shape.Finishing && (t.Process == plan.Drill || t.Process == plan.SawHole || t.Process == plan.Ream) {
			tasks[i].Round = c.roundness(f.Diameter)
		}
	}
	return tasks
}

func (s spotted) place(i int) [2]float64 {
	return [2]float64{tidyMM(float64(s.Places[i].X.Value)), tidyMM(float64(s.Places[i].Y.Value))}
}

// setQuill sets the depth dial's nought anew.
func (p *page) setQuill(z float64, how string) {
	for i := range p.op.Zeros {
		if p.op.Zeros[i].Dial == p.quill() {
			p.op.Zeros[i].ReferenceMM, p.op.Zeros[i].How = z, how
		}
	}
}

// centreMark marks the place of a bore that is made on the lathe, where there are no datum edges to set it running by.
func (c *Context) centreMark(f *partspec.Bore) []Task {
	if len(c.Part.Outline.Datum) > 0 || len(c.tools(partspec.Scriber)) == 0 || c.Bench.Kind == "" {
		return nil
	}
	s := spotted{Holes: asHoles(f), by: partspec.LocatePunch, from: []partspec.End{f.From}, columns: []column{{0, c.Length}}, drillMM: 1}
	return []Task{c.markHoles(s, c.tools(partspec.Scriber)[0], c.writeMarks)}
}

// nearBore reports whether an edge ends up so near to a large bore that the metal between must stay thick until the bore is made.
func (c *Context) nearBore(edge int) bool {
	for _, f := range c.Part.Features {
		b, ok := f.(*partspec.Bore)
		if !ok || b.At == nil {
			continue
		}
		_, _, off := c.Flat.Drawn.Edges[edge].Nearest(float64(b.At.X.Value), float64(b.At.Y.Value))
		if d := float64(b.Diameter.Mid()); rules.ThinWeb(off-d/2, d) && !c.datumEdge(edge) && c.Rules.Has("A-34") {
			return true
		}
	}
	return false
}
