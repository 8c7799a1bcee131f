// Command ordering solves ordering problems from files and prints one line of JSON for each, so that anyone can rerun the
// comparison of planner/sequence with its instances.
//
//	ordering [-budget NODES] FILE…
//
// A FILE is JSON of the form ordering-1 or a sequential ordering problem of TSPLIB. The exit code is 1 if a file could not be read or has
// no order, 2 for wrong use.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"

	"catchplate/planner/sequence"
	"catchplate/planner/sequence/instance"
)

// answer is one line of output. Order lists operations as the file numbers them, Alternatives the choice for each.
type answer struct {
	Name         string `json:"name"`
	Cost         int    `json:"cost"`
	Bound        int    `json:"bound"`
	Proven       bool   `json:"proven"`
	Order        []int  `json:"order"`
	Alternatives []int  `json:"alternatives"`
	Nodes        int    `json:"nodes"`
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("ordering", flag.ContinueOnError)
	flags.SetOutput(stderr)
	budget := flags.Int("budget", 0, "`nodes` to spend on a file before the best order found is given with its proven bound (0: the package's own)")
	flags.Usage = func() {
		fmt.Fprintln(stderr, "usage: ordering [-budget NODES] FILE…")
		flags.PrintDefaults()
	}
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if flags.NArg() == 0 || *budget < 0 {
		flags.Usage()
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
	a := answer{Name: inst.Name, Cost: res.Cost, Bound: res.Bound, Proven: res.Proven, Nodes: res.Stats.Stored}
	for _, st := range res.Order {
		a.Order = append(a.Order, st.Op)
		a.Alternatives = append(a.Alternatives, st.Alt)
	}
	return a, nil
}
