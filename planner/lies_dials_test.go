package planner_test

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// endMoved is whether a cut then goes on past its end, or stops short of it.
func endMoved(cut plan.Cut, end plan.Reading, by int64) string {
	for _, from := range cut.From {
		if from.Dial == end.Dial && (end.Graduations > from.Graduations) == (by > 0) {
			return "end moved on"
		}
	}
	return "end moved back"
}

// move turns a reading of a cut further, at its end and where it stands still at its beginning too, and tells the card.
func move(o *plan.Operation, c int, rd plan.Reading, by int64) {
	cut := &o.Cuts[c]
	cut.From, cut.To = slices.Clone(cut.From), slices.Clone(cut.To)
	for _, list := range [][]plan.Reading{cut.From, cut.To} {
		for i := range list {
			if list[i] == rd {
				list[i].Graduations += by
			}
		}
	}
	for i := range o.Card {
		if l := &o.Card[i]; l.Dial == rd.Dial && l.Total == rd.Graduations {
			l.Total += by
		}
	}
	for i := range o.Holes {
		for _, l := range []*plan.Line{&o.Holes[i].X, &o.Holes[i].Y} {
			if l.Dial == rd.Dial && l.Total == rd.Graduations {
				l.Total += by
			}
		}
	}
}

// moves reports whether the last cut of a feature in a setting is set by a dial.
func moves(s plan.Setup, feature, dial string) bool {
	set := false
	for _, o := range s.Operations {
		if n := len(o.Cuts); o.Feature == feature && n > 0 {
			last := o.Cuts[n-1]
			set = slices.ContainsFunc(last.To, func(r plan.Reading) bool { return r.Dial == dial && slices.Contains(last.From, r) })
		}
	}
	return set
}

func moveAll(o *plan.Operation, dial string, by int64) {
	for c := range o.Cuts {
		for _, list := range [][]plan.Reading{o.Cuts[c].From, o.Cuts[c].To} {
			for i := range list {
				if list[i].Dial == dial {
					list[i].Graduations += by
				}
			}
		}
	}
	for i := range o.Card {
		if o.Card[i].Dial == dial {
			o.Card[i].Total += by
		}
	}
	for i := range o.Holes {
		for _, l := range []*plan.Line{&o.Holes[i].X, &o.Holes[i].Y} {
			if l.Dial == dial {
				l.Total += by
			}
		}
	}
}

// graduations is how many graduations of a dial are nearest to a travel; 0 where there is no such dial.
func graduations(shop *partspec.Workshop, machine, dial string, mm float64) int64 {
	for _, m := range shop.Machines {
		if d, ok := m.Dial(dial); ok && m.Name == machine {
			g := float64(d.Graduation.Value)
			if d.Reads == partspec.ReadsDiameter {
				g /= 2
			}
			return int64(math.Round(mm / g))
		}
	}
	return 0
}

// reprint writes everything that is derived from an operation's readings anew, and says of depth and force what no check can hold against it.
func reprint(shop *partspec.Workshop, s plan.Setup, o *plan.Operation) {
	if o.DepthMM > 0 {
		o.DepthMM += 2 * slices.Max(shifts)
	}
	if o.ForceN > 0 {
		o.ForceN *= 4
	}
	for i := range o.Card {
		reprintLine(shop, s.Machine, o.Zeros, &o.Card[i])
	}
	for i := range o.Holes {
		h := &o.Holes[i]
		reprintLine(shop, s.Machine, o.Zeros, &h.X)
		reprintLine(shop, s.Machine, o.Zeros, &h.Y)
		for _, z := range o.Zeros {
			if z.Dial == "x" && h.X.Dial == "x" {
				way := 1.0
				if s.FreeEnd == "left" && !s.Across {
					way = -1
				}
				h.XMM = z.ReferenceMM + way*float64(h.X.Total)*step(shop, s.Machine, "x")
			}
			if z.Dial == "y" && h.Y.Dial == "y" {
				h.YMM = z.ReferenceMM + float64(h.Y.Total)*step(shop, s.Machine, "y")
			}
		}
	}
	o.Chords = nil
}

// step is what a graduation of a dial moves, in mm.
func step(shop *partspec.Workshop, machine, dial string) float64 {
	for _, m := range shop.Machines {
		if d, ok := m.Dial(dial); ok && m.Name == machine {
			if d.Reads == partspec.ReadsDiameter {
				return float64(d.Graduation.Value) / 2
			}
			return float64(d.Graduation.Value)
		}
	}
	return 0
}

// slideDials gives a lathe with a vertical slide the letters too that its dials are read by while it mills.
func slideDials(shop *partspec.Workshop) *partspec.Workshop {
	out := *shop
	out.Machines = slices.Clone(shop.Machines)
	for _, h := range shop.Holdings {
		for i := range out.Machines {
			m := &out.Machines[i]
			if h.Kind != partspec.VerticalSlide || m.Kind != partspec.Lathe {
				continue
			}
			up := h.Dial
			up.Name = "y"
			m.Dials = append(slices.Clone(m.Dials), up)
			for was, name := range map[string]string{"cross": "x", "saddle": "z"} {
				if d, ok := m.Dial(was); ok {
					d.Name = name
					m.Dials = append(m.Dials, d)
				}
			}
		}
	}
	return &out
}

func reprintLine(shop *partspec.Workshop, machine string, zeros []plan.Zero, l *plan.Line) {
	for _, m := range shop.Machines {
		d, ok := m.Dial(l.Dial)
		if !ok || m.Name != machine {
			continue
		}
		g := float64(d.Graduation.Value)
		l.Reading = fmt.Sprintf("%g mm", math.Round(float64(l.Total)*g*1e6)/1e6)
		l.Counted, l.Turns, l.Marks, l.Makes = l.Total >= 0 && d.PerTurn.Value > 0, 0, l.Total, ""
		if l.Counted {
			turn := int64(math.Round(float64(d.PerTurn.Value) / g))
			l.Turns, l.Marks = l.Total/turn, l.Total%turn
		}
	}
}
