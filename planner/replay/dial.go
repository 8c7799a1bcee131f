package replay

import (
	"math"
	"sort"
	"strconv"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// checkDials holds what must be true of an operation's readings whatever the metal: within the dial's travel, approached from one side, and the
// card says what the cuts say.
func (w *walk) checkDials(op plan.Operation) {
	w.checkTravel(op)
	w.checkOneWay(op)
	if len(op.Cuts) > 0 && op.Process != plan.SawOff {
		w.checkPasses(op)
		w.checkCard(op)
	}
}

// checkTravel holds that the readings of a dial lie within its slide's travel.
func (w *walk) checkTravel(op plan.Operation) {
	for _, name := range []string{"cross", "saddle", "tailstock", "top", dialX, dialY, dialQuill, dialZ} {
		d, ok := w.machine.Dial(name)
		if !ok || d.Travel == 0 {
			continue
		}
		low, high := int64(0), int64(0)
		for _, cut := range op.Cuts {
			for _, rd := range readingsOf(cut) {
				if rd.Dial == name {
					low, high = min(low, rd.Graduations), max(high, rd.Graduations)
				}
			}
		}
		if span := float64(high-low) * graduationOf(d); span > float64(d.Travel)+same {
			w.failOp("travel", "the %s slide would move %s; its travel is %s", name, mm(span), mm(float64(d.Travel)))
		}
	}
}

// checkOneWay holds that a dial moves under cut in one direction only, and that in a table of steps the dial that is set for each step goes one way
// throughout, so that backlash never enters (rule C-08). A dial indicator has none.
func (w *walk) checkOneWay(op plan.Operation) {
	moves, sets, last := map[string]int64{}, map[string]int64{}, map[string]int64{}
	run := ""
	for _, cut := range op.Cuts {
		counts := countsOf(cut)
		if r := runOf(cut); stepped(op.Process) && r != run { // the card takes up the backlash anew
			sets, last, run = map[string]int64{}, map[string]int64{}, r
		}
		for _, name := range dialsOf(counts) {
			if d, ok := w.machine.Dial(name); !ok || d.Reads == partspec.ReadsIndicator {
				continue
			}
			c := counts[name]
			turned := reverses(moves, name, c[1]-c[0])
			if before, ok := last[name]; ok && stepped(op.Process) && c[0] == c[1] {
				turned = reverses(sets, name, c[0]-before) || turned
			}
			if turned {
				w.failOp("one way", "the %s dial goes both ways: at %q it turns round", name, cut.Name)
				return
			}
			last[name] = c[1]
		}
	}
}

// stepped reports whether a process cuts a curve in steps.
func stepped(p plan.Process) bool { return p == plan.Steps || p == plan.SeatSteps }

// runOf is the run of a step table that a cut belongs to: "run 2" of "run 2, step 5"; empty where the table is one run.
func runOf(cut plan.Cut) string {
	run, _, found := strings.Cut(cut.Name, ",")
	if !found {
		return ""
	}
	return run
}

// reverses keeps the direction of a dial, and reports whether a movement goes against it.
func reverses(way map[string]int64, dial string, by int64) bool {
	if by == 0 {
		return false
	}
	against := by < 0 && way[dial] > 0 || by > 0 && way[dial] < 0
	way[dial] = by
	return against
}

func dialsOf(counts map[string][2]int64) []string {
	var names []string
	for name := range counts {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}

// checkPasses holds that the number of passes is the number of cuts.
func (w *walk) checkPasses(op plan.Operation) {
	if op.Passes != len(op.Cuts) {
		w.failOp("passes", "it says %d passes and has %d cuts", op.Passes, len(op.Cuts))
	}
}

// checkCard holds that every line of the card is a reading of the cuts, with turns, graduations and figure adding up to it.
func (w *walk) checkCard(op plan.Operation) {
	set, measured := map[plan.Reading]bool{}, map[plan.Reading]bool{}
	for _, cut := range op.Cuts {
		if dial, ok := measuredDial(cut); ok {
			measured[plan.Reading{Dial: dial, Graduations: countsOf(cut)[dial][1]}] = true
		}
		for _, rd := range readingsOf(cut) {
			set[rd] = true
		}
	}
	for _, l := range op.Card {
		if l.Dial == "" {
			continue
		}
		if l.Total != 0 && !set[plan.Reading{Dial: l.Dial, Graduations: l.Total}] {
			w.failOp("card", "line %q sets the %s dial to %d, where no cut goes", l.Label, l.Dial, l.Total)
		}
		w.checkLine(l)
		w.checkMakes(l)
		if measured[plan.Reading{Dial: l.Dial, Graduations: l.Total}] && !l.ByMeasure {
			w.failOp("card", "line %q promises a size by the dial that only measuring gives", l.Label)
		}
	}
}

// measuredDial is the dial whose place a cut takes from measuring.
func measuredDial(cut plan.Cut) (string, bool) {
	if cut.ToMeasure == nil {
		return "", false
	}
	if cut.ToMeasure.What == "diameter" {
		return "cross", true
	}
	for _, dial := range []string{"tailstock", dialQuill, dialZ} {
		if _, ok := countsOf(cut)[dial]; ok {
			return dial, true
		}
	}
	return "saddle", true
}

// checkMakes holds the diameter that a line of the cross dial promises against its count. Where the size is measured, the line is only a guide.
func (w *walk) checkMakes(l plan.Line) {
	z, ok := w.zeros[l.Dial]
	if l.Dial != "cross" || l.ByMeasure || !ok || !strings.HasPrefix(l.Makes, "Ø") {
		return
	}
	travel := 2 * float64(l.Total) * z.graduation
	if z.Outward {
		travel = -travel
	}
	want := z.ReferenceMM - travel
	got, digit, ok := readFigure(strings.TrimPrefix(l.Makes, "Ø"))
	if !ok || math.Abs(got-want) > digit/2+figure {
		w.failOp("card", "line %q promises %q; %d graduations from Ø%s make Ø%s", l.Label, l.Makes, l.Total, mm(z.ReferenceMM), mm(want))
	}
}

// checkShown holds that what decides a cut's size is on the card: what stands still in it, and where it ends, unless it runs out into the air there.
func (w *walk) checkShown(op plan.Operation, m motion) {
	for _, name := range dialsOf(m.counts) {
		c := m.counts[name]
		if c[1] == 0 || c[0] != c[1] && w.runsOut(m) || onCard(op, name, c[1]) {
			continue
		}
		w.failOp("card", "cut %q takes the %s dial to %d; no line of the card says so", m.name, name, c[1])
	}
}

func onCard(op plan.Operation, dial string, total int64) bool {
	for _, l := range op.Card {
		if l.Dial == dial && l.Total == total {
			return true
		}
	}
	return false
}

// runsOut reports whether the tool could go on at the end of a motion without cutting more.
func (w *walk) runsOut(m motion) bool {
	long := math.Hypot(m.to.Z-m.from.Z, m.to.R-m.from.R)
	if long <= same {
		return false
	}
	on := m
	on.from = m.to
	on.to = solid.Point{Z: m.to.Z + (m.to.Z-m.from.Z)/long, R: m.to.R + (m.to.R-m.from.R)/long}
	w.sweep(&on)
	return !solid.Lost(w.body, on.apply(w.body), offSurface).Any()
}

// checkLine holds that a line's turns, graduations and figure are its total.
func (w *walk) checkLine(l plan.Line) {
	if l.Dial == plan.HeadDial {
		w.checkHeadLine(l)
		return
	}
	d, ok := w.machine.Dial(l.Dial)
	if !ok {
		w.failOp("card", "line %q reads a %s dial that %s has not", l.Label, l.Dial, w.machine.Name)
		return
	}
	sum := l.Marks
	if l.Counted {
		turn := int64(math.Round(float64(d.PerTurn.Value) / float64(d.Graduation.Value)))
		sum += l.Turns * turn
	} else if l.Turns != 0 || d.PerTurn.Value > 0 && l.Total >= 0 {
		w.failOp("card", "line %q must count turns where the dial has them, and none where it has not", l.Label)
	}
	if sum != l.Total {
		w.failOp("card", "line %q: its turns and graduations make %d, its total is %d", l.Label, sum, l.Total)
	}
	if l.Reads != string(d.Reads) {
		w.failOp("card", "line %q says that the %s dial reads %s; it reads %s", l.Label, l.Dial, l.Reads, d.Reads)
	}
	w.checkReading(l, d)
}

// checkReading holds the dial's own figure against the total.
func (w *walk) checkReading(l plan.Line, d partspec.Dial) {
	want := float64(l.Total) * float64(d.Graduation.Value)
	got, digit, ok := readFigure(l.Reading)
	if !ok {
		w.failOp("card", "line %q reads %q: expected a figure with its unit", l.Label, l.Reading)
		return
	}
	if math.Abs(got-want) > digit/2+figure {
		w.failOp("card", "line %q reads %q; %d graduations of %s are %s", l.Label, l.Reading, l.Total, mm(float64(d.Graduation.Value)), mm(want))
	}
}

// readFigure reads "3.46 mm" or "0.125 in", fractions too, and tells how much its last digit is worth, in mm.
func readFigure(text string) (value, digit float64, ok bool) {
	text = strings.TrimPrefix(strings.TrimSpace(text), "≈")
	number, unit, _ := strings.Cut(text, " ")
	scale := 1.0
	unit, _, _ = strings.Cut(unit, " (") // "7/8 in (22.225 mm)"
	switch unit {
	case "mm":
	case "in":
		scale = inch
	default:
		return 0, 0, false
	}
	whole, rest := 0.0, number
	sign := 1.0
	if strings.HasPrefix(rest, "-") {
		sign, rest = -1, rest[1:]
	}
	if a, b, mixed := strings.Cut(rest, "-"); mixed {
		n, err := strconv.ParseFloat(a, 64)
		if err != nil {
			return 0, 0, false
		}
		whole, rest = n, b
	}
	if a, b, fraction := strings.Cut(rest, "/"); fraction {
		n, err1 := strconv.ParseFloat(a, 64)
		m, err2 := strconv.ParseFloat(b, 64)
		if err1 != nil || err2 != nil || m == 0 {
			return 0, 0, false
		}
		return sign * (whole + n/m) * scale, 0, true
	}
	n, err := strconv.ParseFloat(rest, 64)
	if err != nil {
		return 0, 0, false
	}
	decimals := 0
	if i := strings.IndexByte(rest, '.'); i >= 0 {
		decimals = len(rest) - i - 1
	}
	return sign * (whole + n) * scale, scale * math.Pow10(-decimals), true
}

// inch in millimetres, exactly.
const inch = 25.4
