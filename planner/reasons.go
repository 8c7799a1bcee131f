package planner

import (
	"fmt"

	"catchplate/partspec/units"
	"catchplate/planner/holding"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
	"catchplate/planner/sequence"
)

// reasonsFor says why a holding was chosen.
func (w *writer) reasonsFor(m holding.Mount, s plan.Setup) []plan.Reason {
	reasons := []plan.Reason{{Text: fmt.Sprintf("the quickest holding that passes every test for these operations: %s to set", units.Minutes(m.Minutes).String()), Rule: "B-01"}}
	if s.Grip.LimitMM > 0 {
		reasons = append(reasons, plan.Reason{Text: fmt.Sprintf("lobed error at the working grip %.3f mm (%s figure), %.3f may pass", s.Grip.ErrorMM, s.Grip.Trust, s.Grip.LimitMM), Rule: "B-23"})
	}
	if s.Grip.LeastN > 0 && s.Grip.Kind != "clamps" && s.Grip.Kind != "ledge" {
		reasons = append(reasons, plan.Reason{Text: fmt.Sprintf("the cuts ask %.0f N a jaw, safety 2.5", s.Grip.LeastN), Rule: "B-42"})
	}
	if w.truthLostIn(s) {
		reasons = append(reasons, plan.Reason{Text: "surfaces bound by a relation are finished in this one setting", Rule: "A-06"})
	}
	if m.Surface != "stock" && m.Machine == "" && m.RunOut > 0 {
		reasons = append(reasons, plan.Reason{Text: fmt.Sprintf("run-out to expect: %.3f mm full reading", m.RunOut), Rule: "B-02"})
	}
	return reasons
}

// truthLost reports whether operations that a relation ties were done together here.
func (w *writer) truthLost(steps []sequence.Step) bool {
	here := map[int]bool{}
	for _, s := range steps {
		here[s.Op] = true
	}
	for _, r := range w.ctx.Part.Relations {
		if here[w.maker(r.Of)] && here[w.maker(r.To)] {
			return true
		}
	}
	return false
}

func (w *writer) truthLostIn(s plan.Setup) bool {
	made := map[string]bool{}
	for _, o := range s.Operations {
		for _, t := range w.shop.Tasks {
			if t.ID == o.ID {
				for _, name := range t.Makes {
					made[name] = true
				}
			}
		}
	}
	for _, r := range w.ctx.Part.Relations {
		if made[r.Of.String()] && made[r.To.String()] {
			return true
		}
	}
	return false
}

// mostRejected bounds the holdings a sheet tells of for one setup.
const mostRejected = 6

// rejectedBefore notes the holdings that would have been quicker to set and why they were passed over: of several grips on one surface the one that comes
// nearest, under the lightest cuts.
func (w *writer) rejectedBefore(chosen holding.Mount, steps []sequence.Step, s *plan.Setup) {
	var order []string
	nearest := map[string]objected{}
	for k, m := range w.mounts {
		if m.Free != chosen.Free || m.Holding.Name == chosen.Holding.Name && m.Surface == chosen.Surface {
			continue
		}
		o, refused := w.firstObjection(k, steps)
		if !refused || o.verdicts[0].Rule == "B-45a" {
			continue
		}
		key := m.Holding.Name + m.Surface
		best, known := nearest[key]
		if !known {
			order = append(order, key)
		}
		if !known || len(o.verdicts) < len(best.verdicts) {
			nearest[key] = o
		}
	}
	for _, key := range order[:min(len(order), mostRejected)] {
		o := nearest[key]
		w.out.Rejected = append(w.out.Rejected, plan.Rejected{Holding: w.mounts[o.mount].ID, For: fmt.Sprintf("setup %d, %s", s.Number, o.task), Reason: o.verdicts[0].Reason, Rule: o.verdicts[0].Rule})
	}
}

// objected is what stands against a mount for a task.
type objected struct {
	mount    int
	task     string
	verdicts []rules.Verdict
}

func (w *writer) firstObjection(mount int, steps []sequence.Step) (objected, bool) {
	m := w.mounts[mount]
	for _, st := range steps {
		for _, way := range w.shop.Tasks[st.Op].Ways {
			if !m.Suits(way) {
				continue
			}
			v, _ := w.shop.Judge(m, st.Op, way, lightest(), w.shop.Facts(m, st.Op, way, lightest()), func(i int) bool { return w.done[i] })
			if len(v) > 0 {
				return objected{mount, w.shop.Tasks[st.Op].ID, v}, true
			}
		}
	}
	return objected{}, false
}

// wordOrder says what the order rests on and why neighbours stand as they do.
func (w *writer) wordOrder(steps []sequence.Step) {
	w.out.Order = w.summary()
	for i := 1; i < len(steps); i++ {
		a, b := steps[i-1].Op, steps[i].Op
		p := plan.Pair{Before: w.shop.Tasks[a].ID, After: w.shop.Tasks[b].ID, Text: "either would do; this way costs no more"}
		if arc, ok := w.arcBetween(a, b, w.mounts[w.choice(steps[i]).mount].Free); ok {
			p.Rule, p.Text = arc.Rule, w.title(arc.Rule)
		}
		w.out.Order.Pairs = append(w.out.Order.Pairs, p)
	}
}

func (w *writer) cautions() []plan.Caution {
	list := w.ctx.Rules.Warn(w.out.Setups)
	if c := w.ctx.Part.Material.Cautions; c != "" {
		list = append(list, plan.Caution{Text: w.ctx.Part.Material.Name + ": " + c})
	}
	return list
}
