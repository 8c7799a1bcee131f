package planner

import (
	"slices"

	"catchplate/partspec"
	"catchplate/planner/holding"
	"catchplate/planner/process"
)

// milling is what mills a part: a milling machine (none: Kind ""), or the lathe with a vertical slide on its cross slide.
type milling struct {
	machine partspec.Machine
	slide   *partspec.Holding
}

// millings lists what may mill a part, each for attempts of its own: the milling machine first, so that of two ways that cost the same it is taken.
func millings(w *partspec.Workshop, part *partspec.Part) []milling {
	list := []milling{{machine: owned(w, partspec.Mill)}}
	if !part.Flat() && !besideAxis(part) {
		return list
	}
	lathe := owned(w, partspec.Lathe)
	for i := range w.Holdings {
		if h := &w.Holdings[i]; h.Kind == partspec.VerticalSlide {
			if m, ok := process.SlideMill(lathe, *h); ok {
				list = append(list, milling{m, h})
			}
		}
	}
	return list
}

// rivals compare the holdings of what else mills the part: each machine that may mill has attempts of its own.
func (c comparer) rivals() []comparer {
	var list []comparer
	known := []*partspec.Holding{c.ctx.Slide}
	for _, p := range c.peers {
		if slices.Contains(known, p.ctx.Slide) {
			continue
		}
		known = append(known, p.ctx.Slide)
		if p.shop == nil {
			p.shop = holding.New(p.ctx)
		}
		list = append(list, comparer{attempt: p, what: c.what})
	}
	return list
}

// milling judges the holdings under a milling cutter for a task, by its name.
func (c comparer) milling(task string) []found {
	i := slices.IndexFunc(c.shop.Tasks, func(t process.Task) bool { return t.ID == task })
	if i < 0 {
		return nil
	}
	return c.judged(i, slices.DeleteFunc(c.shop.Mounts(), func(m holding.Mount) bool { return m.Machine != partspec.Mill }))
}

// besideAxis reports whether a turned part has anything that is cut beside or across its axis.
func besideAxis(part *partspec.Part) bool {
	for _, f := range part.Features {
		switch f.(type) {
		case *partspec.Holes, *partspec.CrossHole, *partspec.Flat, *partspec.Slot, *partspec.Seat, *partspec.SideSeat:
			return true
		}
	}
	return false
}
