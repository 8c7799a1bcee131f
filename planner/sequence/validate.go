package sequence

import (
	"errors"
	"fmt"
)

// MaxCost is the largest single cost a problem may hold: 64 operations with five such costs each stay below deadEnd.
const MaxCost = 1_000_000

// Validate says what is wrong with a problem, all faults at once, or returns nil. Solve and Cost call it.
func (p *Problem) Validate() error {
	if n := len(p.Ops); n == 0 || n > MaxOps {
		return fmt.Errorf("sequence: %d operations: between 1 and %d are wanted", n, MaxOps)
	}
	v := validator{p: p}
	v.resources()
	for i, op := range p.Ops {
		v.op(i, op)
	}
	v.relations()
	v.pairs()
	if p.Between != nil {
		v.between()
	}
	if len(v.errs) == 0 {
		v.circle()
	}
	return errors.Join(v.errs...)
}

type validator struct {
	p    *Problem
	errs []error
}

func (v *validator) fail(format string, args ...any) {
	v.errs = append(v.errs, fmt.Errorf("sequence: "+format, args...))
}

func (v *validator) cost(c int, format string, args ...any) {
	if c < 0 || c > MaxCost {
		v.fail("%s is %d: a cost lies between 0 and %d", fmt.Sprintf(format, args...), c, MaxCost)
	}
}

func (v *validator) index(i, n int, format string, args ...any) bool {
	if i >= 0 && i < n {
		return true
	}
	v.fail("%s is %d: it must be at least 0 and below %d", fmt.Sprintf(format, args...), i, n)
	return false
}

func (v *validator) resources() {
	v.cost(v.p.MachineChange, "machine change")
	for i, s := range v.p.Setups {
		v.index(s.Machine, len(v.p.Machines), "machine of setup %d (%s)", i, s.Name)
		v.cost(s.Cost, "cost of setup %d (%s)", i, s.Name)
	}
	for i, t := range v.p.Tools {
		v.cost(t.Cost, "cost of tool %d (%s)", i, t.Name)
	}
}

func (v *validator) op(i int, op Op) {
	if len(op.Alts) == 0 {
		v.fail("operation %d (%s) has no alternative: give it at least one", i, op.Name)
	}
	if len(op.Alts) > maxAlts {
		v.fail("operation %d (%s) has %d alternatives: at most %d are taken", i, op.Name, len(op.Alts), maxAlts)
	}
	for j, a := range op.Alts {
		v.cost(a.Own, "own cost of operation %d (%s), alternative %d", i, op.Name, j)
		v.cost(a.Risk, "risk of operation %d (%s), alternative %d", i, op.Name, j)
		if v.p.Between == nil {
			v.index(a.Setup, len(v.p.Setups), "setup of operation %d (%s), alternative %d", i, op.Name, j)
			v.index(a.Tool, len(v.p.Tools), "tool of operation %d (%s), alternative %d", i, op.Name, j)
		}
		if a.Mask&^fullSet(len(v.p.Ops)) != 0 {
			v.fail("mask of operation %d (%s), alternative %d, names operations that do not exist", i, op.Name, j)
		}
	}
}

// maxClasses is the most pairs of a setup and a tool in use: the costs of changing from each to each are a table of 64 MiB then.
const maxClasses = 4096

func (v *validator) pairs() {
	used := map[[2]int]bool{}
	for _, op := range v.p.Ops {
		for _, a := range op.Alts {
			used[[2]int{a.Setup, a.Tool}] = true
		}
	}
	if len(used) > maxClasses {
		v.fail("the alternatives name %d pairs of setup and tool: at most %d are taken", len(used), maxClasses)
	}
}

func (v *validator) relations() {
	n := len(v.p.Ops)
	for i, arc := range v.p.Prec {
		v.index(arc[0], n, "first operation of arc %d", i)
		v.index(arc[1], n, "second operation of arc %d", i)
	}
	for i, l := range v.p.Links {
		ok := v.index(l.A, n, "first operation of link %d", i)
		ok = v.index(l.B, n, "second operation of link %d", i) && ok
		if ok && l.A == l.B {
			v.fail("link %d ties operation %d to itself: two operations are wanted", i, l.A)
		}
	}
}

func (v *validator) between() {
	n := len(v.p.Ops)
	if len(v.p.Links) > 0 {
		v.fail("links need setups: they cannot be used with a matrix of costs")
	}
	if len(v.p.Between) != n {
		v.fail("the matrix of costs has %d rows: %d are wanted, one an operation", len(v.p.Between), n)
		return
	}
	for i, row := range v.p.Between {
		if len(v.p.Ops[i].Alts) > 1 {
			v.fail("operation %d has %d alternatives: with a matrix of costs each has one", i, len(v.p.Ops[i].Alts))
		}
		if len(row) != n {
			v.fail("row %d of the matrix of costs has %d entries: %d are wanted", i, len(row), n)
			continue
		}
		for j, c := range row {
			if i != j {
				v.cost(c, "cost from operation %d to operation %d", i, j)
			}
		}
	}
}

// circle reports the operations that precedence ties into a circle.
func (v *validator) circle() {
	n := len(v.p.Ops)
	var done Set
	pred := make([]Set, n)
	for _, arc := range v.p.Prec {
		pred[arc[1]] = pred[arc[1]].With(arc[0])
	}
	for grown := true; grown; {
		grown = false
		for i := range n {
			if !done.Has(i) && pred[i]&^done == 0 {
				done, grown = done.With(i), true
			}
		}
	}
	if left := fullSet(n) &^ done; left != 0 {
		v.fail("precedence goes in a circle: operations %v each wait for another of them", left.Ops())
	}
}
