package planner

import (
	"math"
	"sort"

	"catchplate/partspec"
	"catchplate/planner/holding"
	"catchplate/planner/process"
	"catchplate/planner/rules"
)

// choice is one way of a task in one mount.
type choice struct {
	way   *process.Way
	mount int
	light float64 // part of the ordinary depth of a pass
	facts *rules.Case
}

// choices lists, for every task, its ways in every mount that could ever serve.
func (o *ordering) choices() {
	o.alts = make([][]choice, len(o.shop.Tasks))
	for i, t := range o.shop.Tasks {
		ways, served := o.ways(t), map[partspec.End]int{}
		for n := range ways {
			w := &ways[n]
			if !o.ctx.Part.Flat() && served[w.End] == mostWays {
				continue // on flat work the cutter that is quickest need not be so where light cuts are wanted: all are tried
			}
			before := len(o.alts[i])
			for k, m := range o.mounts {
				if m.Suits(*w) {
					o.alts[i] = append(o.alts[i], o.grades(i, w, k)...)
				}
			}
			if len(o.alts[i]) > before {
				served[w.End]++
			}
		}
	}
}

// lights are the depths of a pass, as parts of the ordinary one, that are tried where a holding or a wall wants light cuts.
var lights = []float64{1, 0.5, 0.25, 0.1}

func lightest() float64 { return lights[len(lights)-1] }

// ways are those of a task, the quickest first; of flat work as they stand.
func (o *ordering) ways(t process.Task) []process.Way {
	if o.ctx.Part.Flat() {
		return t.Ways
	}
	return quickestFirst(t.Ways)
}

// mostWays bounds the tools that are tried for a task from one end, of those that some mount lets work: the quickest ones, which the dearer can beat only by a tool change.
const mostWays = 3

// quickestFirst sorts ways by their minutes; ordinary ways come before others.
func quickestFirst(ways []process.Way) []process.Way {
	sorted := append([]process.Way(nil), ways...)
	sort.SliceStable(sorted, func(i, j int) bool {
		if sorted[i].Ordinary != sorted[j].Ordinary {
			return sorted[i].Ordinary
		}
		return sorted[i].Minutes < sorted[j].Minutes
	})
	return sorted
}

// grades gives the depths of pass to try for a way in a mount. Objections that no moment of the work can lift drop the pair.
func (o *ordering) grades(task int, w *process.Way, mount int) []choice {
	m := o.mounts[mount]
	if !o.ctx.Rules.Allows(o.shop.Facts(m, task, *w, lightest())) {
		return nil // what the lightest cuts cannot do none can
	}
	var out []choice
	for _, light := range lights {
		if o.ctx.Part.Seen != nil && w.DeepMM > rubs && w.PassMM(light) < rubs {
			continue
		}
		facts := o.shop.Facts(m, task, *w, light)
		if !o.ctx.Rules.Allows(facts) {
			continue
		}
		kept := facts // those of the refused, which are most, need no place of their own
		out = append(out, choice{way: w, mount: mount, light: light, facts: &kept})
		if m.Inside || m.Glue != holding.NoGlue || !o.light && !m.Swings() || w.ForceN == 0 || w.SureN >= w.ForceN {
			break
		}
	}
	return out
}

// rubs is the pass, in mm, under which an edge that meets metal in part of every turn rubs more than it cuts. Common practice, no source.
const rubs = 0.2

// thin reports whether any wall of the part is thin enough to ask for lighter cuts (rule B-24).
func (o *ordering) thin() bool { return o.ctx.Split && o.shop.Hollow() && o.ctx.Rules.Has("B-24") }

// own is a choice's cost in tenths of a minute: lighter passes are more passes.
func (c choice) own() int {
	return max(1, int(math.Round(c.way.Minutes*(1+lightShare*(1/c.light-1))*tenths)))
}

// lightShare is the part of an operation's time that grows with the number of passes.
const lightShare = 0.7
