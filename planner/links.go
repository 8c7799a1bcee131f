package planner

import (
	"fmt"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/holding"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/sequence"
	"catchplate/planner/shape"
)

// links ties tasks that one setting makes true to each other.
func (o *ordering) links(used []int) []sequence.Link {
	links := o.unedged(used)
	if o.ctx.Rules.Has("A-06") {
		links = append(links, o.related(used)...)
	}
	return links
}

// unedged ties the holes of a flat part whose coordinates begin at no edge: they begin where its first hole is made, and a sawn blank's sides do not tell that place
// again. A bore about the origin, wide enough to clock, does, once it is made; without one all are made in one setting.
func (o *ordering) unedged(used []int) []sequence.Link {
	if !o.ctx.Part.Flat() || len(o.ctx.Part.Outline.Datum) > 0 {
		return nil
	}
	var links []sequence.Link
	tie := func(a, b, clocked int) {
		links = append(links, sequence.Link{A: a, B: b, Cross: func(_, later, earlier int) bool {
			return earlier == clocked || o.mounts[used[later]].Machine != partspec.Mill
		}})
	}
	holes, middle := o.dialled(), o.shop.MiddleBore()
	for i, a := range holes {
		switch {
		case middle < 0:
			for _, b := range holes[:i] {
				tie(a, b, middle)
			}
		case o.shop.Tasks[a].Feature != o.shop.Tasks[middle].Feature:
			tie(a, middle, middle)
		}
	}
	return links
}

// dialled are the tasks that a mill's dials place.
func (o *ordering) dialled() []int {
	var list []int
	for i, t := range o.shop.Tasks {
		if len(t.Spots) > 0 && slices.ContainsFunc(t.Ways, func(w process.Way) bool { return w.Machine == partspec.Mill && !w.Marked }) {
			list = append(list, i)
		}
	}
	return list
}

// related ties the tasks whose surfaces a relation binds (rules ).
func (o *ordering) related(used []int) []sequence.Link {
	var links []sequence.Link
	for _, r := range o.ctx.Part.Relations {
		a, b := o.maker(r.Of), o.maker(r.To)
		if a < 0 || b < 0 || a == b {
			continue
		}
		within, wide := float64(r.Within), 0.0
		if r.Kind == partspec.Square || r.Kind == partspec.Parallel {
			wide = o.widest(a, b)
		}
		links = append(links, sequence.Link{A: a, B: b, Cross: func(first, later, earlier int) bool {
			m, before := o.mounts[used[later]], o.mounts[used[first]]
			if !o.ctx.Rules.Has("A-07") {
				return false
			}
			if r.Kind == partspec.Square && m.Flat {
				return o.squareAfter(m, before, earlier, within)
			}
			if truth, face := o.shop.FaceTruth(m, wide); face != "" && r.Kind == partspec.Parallel && o.shop.Tasks[earlier].MakesSurface(face) {
				return truth <= within/2 // it sits on the earlier face itself
			}
			if m.RunOut*m.Tilt(wide) > within/2 {
				return false
			}
			return m.Between && before.Between || o.shop.Tasks[earlier].MakesSurface(m.Surface)
		}})
	}
	for _, f := range o.ctx.Part.Features {
		g, ok := f.(*partspec.Groove)
		if !ok {
			continue
		}
		a, b := o.maker(partspec.Surface{Feature: g.Name}), o.maker(partspec.Surface{Feature: g.On})
		if a < 0 || b < 0 {
			continue
		}
		links = append(links, sequence.Link{A: a, B: b, Cross: func(_, later, earlier int) bool {
			return o.shop.Tasks[earlier].MakesSurface(o.mounts[used[later]].Surface)
		}})
	}
	return links
}

// squareAfter reports whether a hole that is made in a later holding than the face it is to be square to comes out so: the work sits on that face, or on the one that
// is parallel to it.
func (o *ordering) squareAfter(m, before holding.Mount, earlier int, within float64) bool {
	seat, face := o.shop.FaceTruth(m, 0)
	first, seated := o.shop.FaceTruth(before, 0)
	if face == "" || seated == "" || o.shop.Tasks[earlier].Process != plan.MillFace {
		return false
	}
	if !o.shop.Tasks[earlier].MakesSurface(face) {
		seat += first + o.shop.Lean("")
	}
	return seat+o.shop.Lean(m.Machine) <= within
}

// widest is the diameter of the wider of two tasks' plane faces, as far as the part goes.
func (o *ordering) widest(a, b int) float64 {
	wide := 0.0
	for _, i := range []int{a, b} {
		if t := o.shop.Tasks[i]; t.Process == plan.Face {
			wide = max(wide, 2*o.shop.Rim(t.End))
		}
	}
	return wide
}

// maker is the task that brings a surface to size, or -1.
func (o *ordering) maker(s partspec.Surface) int {
	for i, t := range o.shop.Tasks {
		if t.Stage == shape.Finishing && t.MakesSurface(s.String()) {
			return i
		}
	}
	return -1
}

// untrue refuses relations of faces that stay as supplied, and are not so true.
func (o *ordering) untrue() []plan.Refusal {
	if !o.ctx.Part.Flat() || !o.ctx.Part.Stock.FacesAsSupplied {
		return nil
	}
	var list []plan.Refusal
	for _, r := range o.ctx.Part.Relations {
		if r.Kind != partspec.Square && r.Kind != partspec.Parallel {
			continue
		}
		if off := o.shop.Supplied(r.Kind); off > float64(r.Within) {
			list = append(list, plan.Refusal{Feature: r.Of.Feature, What: fmt.Sprintf("%s of %s to %s", r.Kind, r.Of, r.To),
				Reasons:  []string{fmt.Sprintf("the faces stay as supplied: so they are true within %.2f, %.2f is drawn", off, float64(r.Within))},
				Remedies: []string{"thicker plate whose faces are milled (faces_as_supplied = false), or a wider relation"}})
		}
	}
	return list
}
