package planner

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/holding"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
)

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
