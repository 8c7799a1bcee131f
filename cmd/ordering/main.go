// Command ordering solves ordering problems from files and prints one line of JSON for each, so that anyone can rerun the
// comparison of planner/sequence with its instances.
//
//	ordering [-budget NODES] FILE…
//
// A FILE is JSON of the form ordering-1 or a sequential ordering problem of TSPLIB. Results go to stdout, talk to stderr. The exit code is 0 if
// every file was solved, whether the order is proven or not, 1 if one was not, 2 for wrong use.
package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"catchplate/planner/sequence"
	"catchplate/planner/sequence/instance"
)

// answer is one line of output.
type answer struct {
	Name         string `json:"name"`
	Cost         int    `json:"cost"`
	Bound        int    `json:"bound"`        // no order costs less
	Proven       bool   `json:"proven"`       // the order is the cheapest: bound = cost
	Order        []int  `json:"order"`        // operations as the file lists them, from 0
	Alternatives []int  `json:"alternatives"` // for each place of the order, the alternative chosen, from 0
	Nodes        int    `json:"nodes"`        // states kept and entries of the tables behind the bound
}

const usage = `usage: ordering [-budget NODES] FILE…

Find the cheapest order of the operations in each FILE and print one line of JSON for it:

  name          of the problem
  cost, bound   of the order, and what no order costs less than
  proven        the order is the cheapest: bound = cost
  order         operations as the file lists them, from 0
  alternatives  the alternative chosen at each place of the order, from 0
  nodes         states kept and entries of the tables behind the bound

A FILE is JSON of the form ordering-1 (planner/sequence/testdata/README.md) or a sequential ordering problem of TSPLIB (*.sop), of at
most %d operations, costs from 0 to %d and %d MiB. The answer hangs on the file and the budget alone, not on the machine or on time.
The exit code is 0 if every file was solved, proven or not, 1 if one could not be, 2 for wrong use.

  ordering planner/sequence/testdata/gen/*.json
  ordering -budget 100000 planner/sequence/testdata/sop/ft53.4.sop

`

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("ordering", flag.ContinueOnError)
	flags.SetOutput(stderr)
	budget := flags.Int("budget", sequence.DefaultBudget, "`nodes` to spend on a file before the best order found is given with the bound proven by then")
	help := func(w io.Writer) {
		fmt.Fprintf(w, usage, sequence.MaxOps, sequence.MaxCost, instance.MaxBytes>>20)
		flags.SetOutput(w)
		flags.PrintDefaults()
	}
	flags.Usage = func() {} // Parse would show it on stderr, asked for or not
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		help(stdout)
		return 0
	case err == nil && *budget < 1:
		fmt.Fprintf(stderr, "a budget of %d nodes: at least 1 is wanted\n", *budget)
		fallthrough
	case err != nil || flags.NArg() == 0:
		help(stderr)
		return 2
	}
	code := 0
	out := json.NewEncoder(stdout)
	for _, path := range flags.Args() {
		a, err := solve(path, *budget)
		if err != nil {
			fmt.Fprintln(stderr, "ordering:", err)
			code = 1
			continue
		}
		if err := out.Encode(a); err != nil {
			fmt.Fprintln(stderr, "ordering:", err)
			return 1
		}
	}
	return code
}

func solve(path string, budget int) (answer, error) {
	inst, err := instance.Load(path)
	if err != nil {
		return answer{}, err
	}
	res, err := sequence.Solve(inst.Problem, budget)
	if err != nil {
		return answer{}, fmt.Errorf("%s: %w", path, err)
	}
	if res.Blocked != nil {
		return answer{}, fmt.Errorf("%s: no order was found", path)
	}
	a := answer{Name: inst.Name, Cost: res.Cost, Bound: res.Bound, Proven: res.Proven, Nodes: res.Stats.Stored + res.Stats.Projected}
	for _, st := range res.Order {
		a.Order = append(a.Order, st.Op)
		a.Alternatives = append(a.Alternatives, st.Alt)
	}
	return a, nil
}
