package planner

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/parallel"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/sequence"
)

// A seat can be cut while the work is still a plain cylinder, or once its outside has been shaped. Both orders are reckoned, and the sheet says what the other
// would have cost: twoOrders finds the pair of tasks, and what the best order with the two the other way round comes to.

// seatPair is the task that cuts a seat and the last that shapes the outside to more than a cylinder; ok is false where there are none.
func (o *ordering) seatPair() (seat, shaped int, ok bool) {
	seat, shaped = -1, -1
	for i, t := range o.shop.Tasks {
		if process.CutsSeat(o.ctx.Part, t) {
			seat = i
		}
		switch o.ctx.Part.Feature(t.Feature).(type) {
		case *partspec.Taper, *partspec.Profile:
			if !t.Inside && t.Process != plan.TurnRough {
				shaped = i
			}
		}
	}
	if shaped < 0 { // stepped down to a second cylinder is a shape too
		for i, t := range o.shop.Tasks {
			if t.Process == plan.TurnFinish && len(o.ctx.Blocks) > 1 && t.Feature != o.widestBlock() {
				shaped = i
			}
		}
	}
	return seat, shaped, seat >= 0 && shaped >= 0
}

// widestBlock is the outside feature of the largest radius: the cylinder that the blank is.
func (o *ordering) widestBlock() string {
	name, most := "", 0.0
	for _, b := range o.ctx.Blocks {
		if b.Greatest > most {
			name, most = b.Name, b.Greatest
		}
	}
	return name
}

// twoOrders is the sentence about the other order of seat and shape: its best cost over all ways the stock may lie, or that there is none.
func twoOrders(best *attempt, all []*attempt) (task string, why plan.Reason, ok bool) {
	seat, shaped, ok := best.order.seatPair()
	if !ok || !best.ctx.Rules.Has("A-37") {
		return "", plan.Reason{}, false
	}
	seatLast := false
	for _, step := range best.order.result.Order {
		if step.Op == seat {
			break
		}
		seatLast = seatLast || step.Op == shaped
	}
	costs := make([]int, len(all))
	parallel.Each(len(all), func(i int) {
		costs[i] = math.MaxInt
		if o := all[i].order; o.refusals == nil {
			if cost, ok := o.turnedRound(seatLast); ok {
				costs[i] = cost
			}
		}
	})
	least := slices.Min(costs)
	chosen, other := "shaped first, then seated", "seated while it is still a plain cylinder, then shaped"
	if !seatLast {
		chosen, other = other, chosen
	}
	text := fmt.Sprintf("two orders were reckoned: %s, %s", chosen, minutesText(best.order.cost))
	if least == math.MaxInt {
		text += fmt.Sprintf("; %s leaves nothing to hold it by at some step", other)
	} else {
		text += fmt.Sprintf("; %s, %s at the least", other, minutesText(least))
	}
	return best.shop.Tasks[seat].ID, plan.Reason{Text: text, Rule: "A-37"}, true
}

func minutesText(cost int) string { return units.Minutes(float64(cost) / tenths).String() }

// turnedRound is the cost of the best order with seat and shape the other way round: seatFirst says which way.
func (o *ordering) turnedRound(seatFirst bool) (int, bool) {
	seat, shaped, ok := o.seatPair()
	if !ok {
		return 0, false
	}
	p := o.problem()
	arc := [2]int{shaped, seat}
	if seatFirst {
		arc = [2]int{seat, shaped}
	}
	p.Prec = unique(append(p.Prec, arc))
	result, err := sequence.Solve(p, turnedRoundBudget)
	if err != nil || result.Blocked != nil || len(result.Order) == 0 {
		return 0, false
	}
	return result.Cost, true
}

// turnedRoundBudget bounds the search for the other order, in states.
const turnedRoundBudget = 50_000

// seatOrder puts the sentence about both orders on the seat's operation.
func (w *writer) seatOrder(a *attempt) {
	task, why, ok := twoOrders(a, a.peers)
	if !ok {
		return
	}
	for i := range w.out.Setups {
		for k := range w.out.Setups[i].Operations {
			if op := &w.out.Setups[i].Operations[k]; op.ID == task {
				op.Why = append(op.Why, why)
			}
		}
	}
}
