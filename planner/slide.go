package planner

import (
	"catchplate/partspec"
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

// besideAxis reports whether a turned part has anything that is cut beside or across its axis.
func besideAxis(part *partspec.Part) bool {
	for _, f := range part.Features {
		switch f.(type) {
		case *partspec.Holes, *partspec.CrossHole, *partspec.Flat, *partspec.Slot, *partspec.Seat:
			return true
		}
	}
	return false
}
