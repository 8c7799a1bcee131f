package sequence

import (
	"errors"
	"fmt"
)

// Cost checks an order against the problem and returns what it costs. It reads the problem as it is written and shares
// nothing with the search, so that each result can be checked by it.
func Cost(p *Problem, order []Step) (int, error) {
	if err := p.Validate(); err != nil {
		return 0, err
	}
	if len(order) != len(p.Ops) {
		return 0, fmt.Errorf("sequence: the order has %d places for %d operations", len(order), len(p.Ops))
	}
	var done Set
	total, mounting := 0, 0
	mountings := make([]int, len(p.Ops))
	alts := make([]Alt, len(p.Ops))
	for k, st := range order {
		if err := checkStep(p, st, done); err != nil {
			return 0, fmt.Errorf("sequence: place %d of the order: %w", k, err)
		}
		alt := p.Ops[st.Op].Alts[st.Alt]
		total += alt.Own + alt.Risk
		if k == 0 {
			total += firstCost(p, alt)
		} else {
			last := order[k-1]
			total += stepCost(p, last, st)
			if p.Ops[last.Op].Alts[last.Alt].Setup != alt.Setup {
				mounting++
			}
		}
		mountings[st.Op], alts[st.Op] = mounting, alt
		done = done.With(st.Op)
	}
	for i, l := range p.Links {
		a, b := l.A, l.B
		if mountings[a] == mountings[b] {
			continue
		}
		if mountings[a] > mountings[b] {
			a, b = b, a
		}
		if l.Cross == nil || !l.Cross(alts[a].Setup, alts[b].Setup, a) {
			return 0, fmt.Errorf("sequence: link %d: operations %d and %d are not done in one mounting", i, a, b)
		}
	}
	return total, nil
}

func checkStep(p *Problem, st Step, done Set) error {
	if st.Op < 0 || st.Op >= len(p.Ops) || st.Alt < 0 || st.Alt >= len(p.Ops[st.Op].Alts) {
		return fmt.Errorf("operation %d, alternative %d does not exist", st.Op, st.Alt)
	}
	if done.Has(st.Op) {
		return fmt.Errorf("operation %d is done twice", st.Op)
	}
	for _, arc := range p.Prec {
		if arc[1] == st.Op && !done.Has(arc[0]) {
			return fmt.Errorf("operation %d comes before operation %d", st.Op, arc[0])
		}
	}
	mask := p.Ops[st.Op].Alts[st.Alt].Mask
	if mask != 0 && p.Allowed != nil && !p.Allowed(st.Op, st.Alt, done&mask) {
		return errors.New("the alternative is not allowed in this state")
	}
	return nil
}

func firstCost(p *Problem, alt Alt) int {
	if p.FirstFree || p.Between != nil {
		return 0
	}
	return p.Setups[alt.Setup].Cost + p.Tools[alt.Tool].Cost
}

func stepCost(p *Problem, from, to Step) int {
	if p.Between != nil {
		return p.Between[from.Op][to.Op]
	}
	x, y := p.Ops[from.Op].Alts[from.Alt], p.Ops[to.Op].Alts[to.Alt]
	otherMachine := p.Setups[x.Setup].Machine != p.Setups[y.Setup].Machine
	cost := 0
	if otherMachine {
		cost += p.MachineChange
	}
	if x.Setup != y.Setup {
		cost += p.Setups[y.Setup].Cost
	}
	if otherMachine || x.Tool != y.Tool {
		cost += p.Tools[y.Tool].Cost
	}
	return cost
}
