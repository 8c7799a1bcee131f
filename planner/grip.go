package planner

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/holding"
	"catchplate/planner/plan"
	"catchplate/planner/sequence"
	"catchplate/planner/shape"
)

// demand is what one operation asks of the grip: no less than least; and a working force spends as much of the roundness as lobePerN says.
type demand struct {
	op       string
	step     sequence.Step
	least    float64
	most     float64 // that roundness and yield stand; 0 = anything
	lobePerN float64
	f        holding.Figures
}

// gripOf finds the forces of a setup's grip: one for all its operations where one will do, else a firm one for the heavy cuts, eased before the rest.
func (w *writer) gripOf(m holding.Mount, steps []sequence.Step) plan.Grip {
	g := plan.Grip{Kind: m.GripKind(), Surface: m.Surface, Inside: m.Inside, FromZ: tidy(m.Z0), ToZ: tidy(m.Z1), RadiusMM: tidy(m.Radius), Jaws: m.Jaws(), JawWidthMM: float64(m.Holding.JawWidth), WasherMM: tidy(m.Washer)}
	lo, hi := between(m)
	if m.Inside {
		g.RadiusMM = tidy(w.body.Inner.Least(lo, hi))
	} else if m.Surface != "stock" && m.Glue == holding.NoGlue && w.ctx.Part.Stock.Kind != partspec.Hexagon && w.ctx.Part.Seen == nil {
		g.RadiusMM = tidy(w.body.Outer.Greatest(lo, hi))
	}
	if math.IsInf(g.RadiusMM, 0) || math.IsNaN(g.RadiusMM) {
		g.RadiusMM = tidy(m.Radius)
	}
	if m.Bushed() {
		g.Packing = "a split bush threaded for the work"
	} else if m.Packed {
		g.Packing = "soft packing: copper or aluminium 0.3 to 0.5 thick under each jaw"
	}
	if g.Kind == "clamps" { // a screw through the bore
		g.LeastN, _ = window(w.demands(m, steps, w.done))
		g.WorkingN, g.Feel = holding.BoltPull(m.Holding), "a firm pull on the screw"
		return g
	}
	if m.Jaws() == 0 {
		return g
	}
	list := w.demands(m, steps, w.done)
	split := easeAt(list)
	before, after := list[:split], list[split:]
	g.LeastN, g.MostN = window(after)
	g.WorkingN = math.Max(g.LeastN, list[0].f.Case.LightN)
	for _, d := range after {
		if limit := d.f.LimitMM; limit > 0 && (g.LimitMM == 0 || limit < g.LimitMM) {
			g.LimitMM = limit
		}
		if lobe := d.lobePerN * g.WorkingN; d.f.LimitMM > 0 && lobe >= g.ErrorMM {
			g.ErrorMM, g.Trust, g.StressMPa = lobe, d.f.Trust, math.Round(d.f.StressMPa*g.WorkingN/d.f.WorkingN)
		}
	}
	if firm := list[0].f.Case.FirmN; g.MostN > firm {
		g.MostN = 0 // more than the chuck can give: no limit
	}
	g.ErrorMM, g.LimitMM = math.Ceil(g.ErrorMM*1e4)/1e4, math.Round(g.LimitMM*1e4)/1e4
	g.Feel = holding.JawFeel(g.WorkingN, m.Holding)
	if len(before) > 0 {
		firm, _ := window(before)
		g.Eased = &plan.Ease{Before: after[0].op, WorkingN: g.WorkingN, Feel: g.Feel}
		g.WorkingN = math.Max(firm, g.WorkingN)
		g.Feel = holding.JawFeel(g.WorkingN, m.Holding)
	}
	return g
}

// shoulderNear is how near to the ends of a grip a shoulder may stand by the dial's rounding: it is not what is gripped. Ours, no source.
const shoulderNear = 0.5

// between is where a mount's surface surely lies: its grip without the ends, where the work's shoulders are as the dials left them.
func between(m holding.Mount) (lo, hi float64) {
	off := math.Min(shoulderNear, (m.Z1-m.Z0)/4)
	return m.Z0 + off, m.Z1 - off
}

// easeAt is the first demand from which on one grip serves all that follow: 0 where no easing is needed.
func easeAt(list []demand) int {
	split := 0
	for split < len(list)-1 && !fits(list[split:]) {
		split++
	}
	return split
}

// demands lists what every step of a setup asks, at its own moment; done is what was done before.
func (o *ordering) demands(m holding.Mount, steps []sequence.Step, before map[int]bool) []demand {
	done := map[int]bool{}
	for k := range before {
		done[k] = true
	}
	var list []demand
	round := 0.0 // finest roundness made in this stay so far
	for _, s := range steps {
		c := o.alts[s.Op][s.Alt]
		facts := *c.facts
		facts.Round = round
		_, f := o.shop.Judge(m, s.Op, *c.way, c.light, facts, func(i int) bool { return done[i] })
		d := demand{op: o.shop.Tasks[s.Op].ID, step: s, least: f.LeastN, f: f}
		if f.LimitMM > 0 && f.LobeMM > 0 {
			d.lobePerN = f.LobeMM / f.WorkingN
			d.most = math.Floor(f.LimitMM / d.lobePerN)
		}
		if f.Case.Vice != nil || f.Case.Jaws != nil {
			d.most = f.MostN
		}
		if f.YieldShare > 0 {
			d.bound(math.Floor(f.WorkingN / f.YieldShare))
		}
		list = append(list, d)
		done[s.Op] = true
		if t := o.shop.Tasks[s.Op]; t.Stage == shape.Finishing && t.Round > 0 && (round == 0 || t.Round < round) {
			round = t.Round
		}
	}
	return list
}

// bound lowers the most that a demand stands.
func (d *demand) bound(most float64) {
	if d.most == 0 || most < d.most {
		d.most = most
	}
}

// window is the least that holds for all demands and the most that none of them is spoiled by (0: no limit).
func window(list []demand) (least, most float64) {
	for _, d := range list {
		least = math.Max(least, d.least)
		if d.most > 0 && (most == 0 || d.most < most) {
			most = d.most
		}
	}
	return least, most
}

// fits reports whether one grip serves all demands.
func fits(list []demand) bool {
	least, most := window(list)
	least = math.Max(least, list[0].f.Case.LightN)
	return most == 0 || least <= most
}
