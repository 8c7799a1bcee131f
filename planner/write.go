package planner

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/holding"
	"catchplate/planner/numbers/speed"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/sequence"
	"catchplate/planner/solid"
)

// writer writes the order that was found out as setups and operations, keeping the work's true shape as it goes.
type writer struct {
	*ordering
	out    *plan.Part
	body   solid.Body
	beside []plan.FlatHole // holes beside the axis, as they now are
	done   map[int]bool
	number int
	flatWriter
}

// writeOut fills in the plan of a part from the best attempt.
func writeOut(out *plan.Part, a *attempt) {
	w := &writer{ordering: a.order, out: out, body: a.ctx.Stock, done: map[int]bool{}, flatWriter: flatWriter{flat: a.ctx.Flat}}
	w.stock()
	steps := a.order.result.Order
	stays := w.stays(steps)
	for i, stay := range stays {
		w.noteHeld(stays[i:])
		w.setup(stay, i == len(stays)-1)
	}
	w.wordOrder(steps)
	w.seatOrder(a)
	out.Cautions = w.cautions()
	out.Minutes = 0
	for _, s := range out.Setups {
		out.Minutes += s.Minutes
		for _, o := range s.Operations {
			out.Minutes += o.Minutes
		}
	}
	out.Minutes = math.Round(out.Minutes)
}

func (w *writer) choice(s sequence.Step) choice { return w.alts[s.Op][s.Alt] }

func (w *writer) stock() {
	if w.ctx.Part.Flat() {
		w.flatStock()
		return
	}
	st, p := w.ctx.Part.Stock, w.ctx.Place
	s := plan.Stock{Kind: st.Kind.String(), OutsideMM: float64(st.Outside.Value), InsideMM: float64(st.Inside.Value), LeftZ: tidy(p.LeftZ), RightZ: tidy(p.RightZ)}
	s.LengthMM = math.Ceil(p.RightZ - p.LeftZ)
	u := unitOf(w.ctx.Part)
	words := map[partspec.StockKind]string{partspec.Bar: "round bar Ø", partspec.Tube: "tube Ø", partspec.Hexagon: "hexagon bar, across flats ", partspec.Existing: "the existing piece, Ø"}[st.Kind]
	s.Text = words + st.Outside.Value.Text(u)
	if st.Kind == partspec.Tube {
		s.Text += ", bore " + st.Inside.Value.Text(u)
	}
	if p.OnBar() {
		s.Text += fmt.Sprintf(", at least %.0f mm long", s.LengthMM)
	} else {
		s.Text += fmt.Sprintf(", %s long", units.Length(p.RightZ-p.LeftZ).Round(2).Text(u))
	}
	w.out.Stock = s
}

func unitOf(p *partspec.Part) units.Unit {
	if p.Inches {
		return units.InInch
	}
	return units.InMM
}

// tidy takes the noise of sums out of a place: a nanometre is far below anything that is set.
func tidy(v float64) float64 { return math.Round(v*1e6) / 1e6 }

// setup writes one unbroken stay in a holding.
func (w *writer) setup(steps []sequence.Step, last bool) {
	m := w.mounts[w.choice(steps[0]).mount]
	machine := w.ctx.MachineFor(m.Machine)
	s := plan.Setup{Number: len(w.out.Setups) + 1, ID: m.ID, Machine: machine.Name, MachineKind: m.MachineKind(machine), Across: m.Across, AcrossDeg: m.AcrossDeg, CentreX: m.CentreX, CentreY: m.CentreY, LocateMM: m.Locate, Holding: m.Holding.Name, HoldingKind: string(m.HoldingKind()),
		FreeEnd: m.Free.String(), RunOutMM: m.RunOut, Locates: m.Surface, Tailstock: m.Centre, Minutes: m.Minutes}
	if w.ctx.Part.Flat() {
		w.flatSetup(m, steps, &s)
		w.stillHeld(&s)
	} else {
		w.turnedSetup(m, steps, &s)
	}
	if h := m.ToMake(w.ctx, s.Number, w.measuredBore(m)); h != nil && w.ctx.Rules.Has("A-47") {
		w.out.MakeFirst = append(w.out.MakeFirst, *h)
	}
	w.rejectedBefore(m, steps, &s)
	datum := w.datum(m, steps)
	for _, step := range steps {
		s.Operations = append(s.Operations, w.operation(step, m, &s, datum, w.cutsLengths(m.Free)))
	}
	nameEased(&s)
	if w.ctx.Part.Flat() {
		now := w.flatNow()
		s.FlatAfter = &now
	} else {
		s.After, s.Beside = w.section(), append([]plan.FlatHole(nil), w.beside...)
	}
	for _, o := range s.Operations {
		s.BeforeRelease = append(s.BeforeRelease, o.Checks...)
	}
	s.Why = append(s.Why, w.reasonsFor(m, s)...)
	s.SafeStop = !last
	if w.truthLost(steps) {
		s.NoWayBack = "what was finished true together in this setting cannot be picked up again once it is let go"
	}
	w.out.Setups = append(w.out.Setups, s)
}

// nameEased calls the operation before which a grip is eased by its number and its title, which it has now.
func nameEased(s *plan.Setup) {
	if s.Grip.Eased == nil {
		return
	}
	for _, o := range s.Operations {
		if o.ID != s.Grip.Eased.Before {
			continue
		}
		for i, how := range s.How {
			s.How[i] = strings.Replace(how, "Before "+o.ID+" ", fmt.Sprintf("Before operation %d (%s) ", o.Number, o.Title), 1)
		}
	}
}

// turnedSetup fills in what a setup of a turned part has of its own.
func (w *writer) turnedSetup(m holding.Mount, steps []sequence.Step, s *plan.Setup) {
	s.Title, s.Before = m.Title(), w.section()
	s.Grip = w.gripOf(m, steps)
	s.StickOutMM = tidy(w.stickOut(m))
	s.Bed, s.Dividing, s.AskewDeg, s.Tilt = m.Bed(w.body.Outer.Greatest(w.body.Ends())), m.Head, m.AskewDeg, m.Tilted
	s.How = m.How(w.ctx, s.Grip)
	if flat := w.shop.FlatBetweenJaws(m, func(i int) bool { return w.done[i] }); flat != "" {
		s.How = append(s.How, "Turn the work so that "+flat+" lies in the middle between two jaws.")
	}
	w.shop.SetOver(m, s)
}

// cutsLengths reports whether shoulders, grooves or depths are cut with an end free, in this setting or another, and not only its face and edges.
func (w *writer) cutsLengths(free partspec.End) bool {
	for _, s := range w.result.Order {
		if w.mounts[w.choice(s).mount].Free != free {
			continue
		}
		switch w.shop.Tasks[s.Op].Process {
		case plan.TurnFinish, plan.Groove, plan.BoreOut, plan.TaperTurn, plan.Recess:
			return true
		}
	}
	return false
}

// operation writes one step and takes its metal off.
func (w *writer) operation(step sequence.Step, m holding.Mount, s *plan.Setup, datum float64, more bool) plan.Operation {
	c := w.choice(step)
	table := m.Table(w.ctx)
	if w.ctx.Part.Flat() {
		table = w.table
	}
	job := process.Job{Setup: s, Table: table, Flat: w.flat, Free: m.Free, DatumZ: datum, Before: w.body, Light: c.light, Caps: caps(m, *s), Glued: m.Glue != holding.NoGlue, Seated: w.shop.SeatedEnd(m.Free, func(i int) bool { return w.done[i] }), More: more}
	op, done := c.way.Write(job)
	w.number += 10
	op.Number = w.number
	op.Minutes = round1(float64(c.own()) / tenths)
	if c.light < 1 && op.DepthMM > 0 {
		op.Notes = append(op.Notes, fmt.Sprintf("Light cuts: no more than %s mm deep, so that a lighter grip will hold.", units.Decimal(op.DepthMM, 2)))
		op.Why = append(op.Why, plan.Reason{Text: "lighter cuts let the grip be lighter", Rule: "B-24"})
	}
	if w.ctx.Part.Flat() {
		w.flatOperation(done, step.Op)
	} else {
		w.body = done.Apply(w.body)
	}
	w.beside = besides(w.beside, done.Beside)
	w.done[step.Op] = true
	return op
}

// besides puts holes as they now are in the place of what was known of them.
func besides(known, now []plan.FlatHole) []plan.FlatHole {
	for _, h := range now {
		at := slices.IndexFunc(known, func(k plan.FlatHole) bool { return k.Feature == h.Feature && k.Number == h.Number })
		if at < 0 {
			known = append(known, h)
			continue
		}
		if h.Thread == "" {
			h.Thread = known[at].Thread
		}
		h.SinkMM = math.Max(h.SinkMM, known[at].SinkMM)
		known[at] = h
	}
	return known
}

func round1(v float64) float64 { return math.Round(v*10) / 10 }

// caps are the speed caps of a holding.
func caps(m holding.Mount, s plan.Setup) []speed.Cap {
	var list []speed.Cap
	if s.Balance != nil && s.Balance.MostRPM > 0 {
		list = append(list, speed.Cap{What: "the work's balance", RPM: units.Speed(s.Balance.MostRPM), Rule: "B-09", Source: "the shaking force allowed"})
	}
	if m.Holding.MostSpeed > 0 {
		list = append(list, speed.Cap{What: "the mark on the " + m.Holding.Name, RPM: m.Holding.MostSpeed, Rule: "B-29", Source: "workshop file"})
	}
	return list
}

// datum is the face that the saddle's nought is set on.
func (w *writer) datum(m holding.Mount, steps []sequence.Step) float64 {
	if w.ctx.Part.Flat() {
		return 0 // every operation finds its face as it is
	}
	face := "face." + m.Free.String()
	faced := false
	for i, t := range w.shop.Tasks {
		faced = faced || t.ID == face && w.done[i]
	}
	for _, s := range steps {
		faced = faced || w.shop.Tasks[s.Op].ID == face
	}
	z0, z1 := w.body.Ends()
	if m.Free == partspec.Right {
		if faced {
			return w.ctx.Length
		}
		return z1
	}
	if faced {
		return 0
	}
	return z0
}

func (w *writer) stickOut(m holding.Mount) float64 {
	z0, z1 := w.body.Ends()
	if m.Free == partspec.Right {
		return z1 - m.Z1
	}
	return m.Z0 - z0
}

func (w *writer) measuredBore(m holding.Mount) *units.Length {
	if b, ok := w.ctx.Part.Feature(m.Surface).(*partspec.Bore); ok {
		return b.Measured
	}
	return nil
}

// Section turns a body into the curves of a sketch.
func Section(b solid.Body) plan.Section {
	return plan.Section{Outer: segments(b.Outer), Inner: segments(b.Inner)}
}

func segments(c solid.Curve) []plan.Segment {
	var out []plan.Segment
	for _, p := range c.Pieces() {
		s := plan.Segment{Z0: tidy(p.Z0), R0: tidy(p.R0), Z1: tidy(p.Z1), R1: tidy(p.R1)}
		if p.IsArc() {
			s.RadiusMM, s.CentreZ, s.CentreR = tidy(p.Radius), tidy(p.CentreZ), tidy(p.CentreR)
		}
		out = append(out, s)
	}
	return out
}
