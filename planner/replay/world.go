package replay

import "catchplate/planner/plan"

// cutKey names a cut by its place in the plan.
type cutKey struct{ setup, op, cut int }

// world chooses for each measured cut the end of its range that is replayed.
type world struct {
	high    bool            // all others
	flipped map[cutKey]bool // those at the other end
}

// value is where a measured cut ends in this world.
func (w world) value(key cutKey, m plan.Measured) float64 {
	if w.high != w.flipped[key] {
		return m.HighMM
	}
	return m.LowMM
}

// worlds are all at their low end, all at their high end, and each alone at the other end in both. Every place is a sum of such sizes, each
// taken once with a plus, with a minus or not at all, so that every length (a difference of two places) has its extremes among these.
func worlds(p plan.Part) []world {
	all := []world{{}, {high: true}}
	keys := measuredCuts(p)
	if len(keys) == 0 {
		return all[:1]
	}
	if len(keys) == 1 {
		return all
	}
	for _, k := range keys {
		for _, high := range []bool{false, true} {
			all = append(all, world{high, map[cutKey]bool{k: true}})
		}
	}
	return all
}

// measuredCuts lists the cuts that measuring ends. A diameter does not move any other place, nor does the depth of a drill beside the axis: only their
// two ends matter, which all low and all high already have; so only places that the lathe cuts along the axis are listed, unless there is none.
func measuredCuts(p plan.Part) []cutKey {
	var places, diameters []cutKey
	for s, setup := range p.Setups {
		for o, op := range setup.Operations {
			for c, cut := range op.Cuts {
				switch {
				case cut.ToMeasure == nil:
				case cut.ToMeasure.What == "diameter", cut.At != nil:
					diameters = append(diameters, cutKey{s, o, c})
				default:
					places = append(places, cutKey{s, o, c})
				}
			}
		}
	}
	if len(places) == 0 && len(diameters) > 0 {
		return diameters[:1]
	}
	return places
}
