package holding

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// FlatTogether says why one setting cannot serve all of these tasks, each done in a way, at a moment; empty when it can.
func (s Shop) FlatTogether(m Mount, tasks []int, done func(int) bool) string {
	at := s.momentOf(m, tasks, done)
	switch m.Holding.Kind {
	case partspec.Vice:
		return s.grips(m, at).Wanting()
	case partspec.TableClamps:
		return s.clampsFor(m, at).Wanting()
	}
	return ""
}

// momentOf takes for each task its first way that a mount serves.
func (s Shop) momentOf(m Mount, tasks []int, done func(int) bool) moment {
	at := moment{flat: s.flatBody(done), done: done, light: 1}
	for _, k := range tasks {
		for _, w := range s.Tasks[k].Ways {
			if w.Machine == m.Machine && w.End == m.Free && w.Across == m.Across {
				at.tasks, at.ways = append(at.tasks, k), append(at.ways, w)
				break
			}
		}
	}
	return at
}

// FlatSetup fills in how a flat part is held in a setup, once its tasks are known. done tells what was done before it.
func (s Shop) FlatSetup(m Mount, tasks []int, done func(int) bool, setup *plan.Setup) {
	at := s.momentOf(m, tasks, done)
	setup.Grip = plan.Grip{Kind: "bench", Surface: m.Surface, FromZ: at.flat.Back, ToZ: at.flat.Front}
	setup.CentreX, setup.CentreY = m.CentreX, m.CentreY
	if m.Machine == partspec.Bench {
		setup.How = []string{"Hold it in the bench vice, soft jaws on finished edges and faces."}
		return
	}
	setup.LocateMM = m.Locate
	switch m.Holding.Kind {
	case partspec.Vice:
		s.viceSetup(m, at, setup)
	case partspec.TableClamps:
		s.tableSetup(m, at, setup)
	}
}

func (s Shop) viceSetup(m Mount, at moment, setup *plan.Setup) {
	p := s.grips(m, at)
	setup.Grip.Kind, setup.Grip.Jaws, setup.Grip.JawWidthMM = "vice", 2, p.jawWidth()
	setup.Grip.LeastN, setup.Grip.WorkingN = p.NeedN, math.Max(p.NeedN, viceLightN)
	setup.Presses = p.presses
	high := or(float64(m.Holding.JawHeight), usualJawHeight) - p.gripMM
	setup.Bed = &plan.Bed{Kind: "parallels", HeightMM: round1(high), GapMM: round1(high), Under: p.under}
}

func (p pinch) jawWidth() float64 {
	if len(p.presses) == 0 {
		return 0
	}
	return p.presses[0].WidthMM
}

func (s Shop) tableSetup(m Mount, at moment, setup *plan.Setup) {
	l := s.clampsFor(m, at)
	setup.Grip.Kind, setup.Grip.LeastN, setup.Grip.WorkingN = "clamps", l.NeedN, l.HaveN
	setup.Clamps = l.list
	board := s.backing(at)
	setup.Bed = &plan.Bed{Kind: "backing board", HeightMM: board, GapMM: board}
}

// backing is how thick a board must be for what comes through it: 0.3 of the widest drill and 3 (rule B-35).
func (s Shop) backing(at moment) float64 {
	widest := 0.0
	for i, k := range at.tasks {
		zones, _ := s.worked(s.Tasks[k], at.ways[i])
		for _, z := range zones {
			if z.through && !z.edge {
				widest = math.Max(widest, 2*z.Radius)
			}
		}
	}
	return math.Ceil(math.Max(leastBoard, backingShare*widest+backingMore))
}

const (
	leastBoard   = 6.0
	backingShare = 0.3
	backingMore  = 3.0
)

func round1(v float64) float64 { return math.Round(v*10) / 10 }
