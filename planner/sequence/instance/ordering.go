package instance

import (
	"encoding/json"
	"fmt"

	"catchplate/planner/sequence"
)

// orderingFile is the JSON form "ordering-1". Keys that are not listed here (notes, sources) are passed over.
type orderingFile struct {
	Format        string       `json:"format"`
	Name          string       `json:"name"`
	N             int          `json:"n"`
	FirstFree     bool         `json:"first_free"`
	Machines      []namedCost  `json:"machines"`
	MachineChange int          `json:"machine_change"`
	Setups        []setupEntry `json:"setups"`
	Tools         []namedCost  `json:"tools"`
	Ops           []operation  `json:"ops"`
	Prec          [][]int      `json:"prec"`
}

type namedCost struct {
	Name string `json:"name"`
	Cost int    `json:"cost"`
}

type setupEntry struct {
	Name    string `json:"name"`
	Machine int    `json:"machine"`
	Cost    int    `json:"cost"`
}

type operation struct {
	Name string        `json:"name"`
	Alts []alternative `json:"alts"`
}

type alternative struct {
	Setup   int  `json:"setup"`
	Machine *int `json:"machine"`
	Tool    int  `json:"tool"`
	Own     int  `json:"own"`
}

func parseOrdering(data []byte) (Instance, error) {
	var f orderingFile
	if err := json.Unmarshal(data, &f); err != nil {
		return Instance{}, fmt.Errorf("not JSON of the form ordering-1: %w", err)
	}
	if f.Format != "ordering-1" {
		return Instance{}, fmt.Errorf(`the format is %q: "ordering-1" is wanted`, f.Format)
	}
	if f.N != len(f.Ops) {
		return Instance{}, fmt.Errorf("n is %d, but %d operations are listed", f.N, len(f.Ops))
	}
	p := &sequence.Problem{MachineChange: f.MachineChange, FirstFree: f.FirstFree}
	for _, m := range f.Machines {
		p.Machines = append(p.Machines, m.Name)
	}
	for _, s := range f.Setups {
		p.Setups = append(p.Setups, sequence.Setup{Name: s.Name, Machine: s.Machine, Cost: s.Cost})
	}
	for _, t := range f.Tools {
		p.Tools = append(p.Tools, sequence.Tool{Name: t.Name, Cost: t.Cost})
	}
	for i, o := range f.Ops {
		op, err := o.read(i, f.Setups)
		if err != nil {
			return Instance{}, err
		}
		p.Ops = append(p.Ops, op)
	}
	for i, arc := range f.Prec {
		if len(arc) != 2 {
			return Instance{}, fmt.Errorf("arc %d of prec has %d entries: a pair [before, after] is wanted", i, len(arc))
		}
		p.Prec = append(p.Prec, [2]int{arc[0], arc[1]})
	}
	return Instance{f.Name, p}, nil
}

func (o operation) read(i int, setups []setupEntry) (sequence.Op, error) {
	op := sequence.Op{Name: o.Name}
	for j, a := range o.Alts {
		if a.Machine != nil && a.Setup >= 0 && a.Setup < len(setups) && *a.Machine != setups[a.Setup].Machine {
			return op, fmt.Errorf("operation %d, alternative %d: setup %d is on machine %d, not on machine %d",
				i, j, a.Setup, setups[a.Setup].Machine, *a.Machine)
		}
		op.Alts = append(op.Alts, sequence.Alt{Setup: a.Setup, Tool: a.Tool, Own: a.Own})
	}
	return op, nil
}
