package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// proveAnswer is what the replay of a saved plan came to.
type proveAnswer struct {
	Schema   string           `json:"schema"`
	Proved   bool             `json:"proved"`
	Parts    []partProof      `json:"parts"` // those that are proved
	Failures []replay.Failure `json:"failures"`
}

// partProof is the proof of one part.
type partProof struct {
	Part  string     `json:"part"`
	Proof plan.Proof `json:"proof"`
}

func (c *cli) prove() *cobra.Command {
	return &cobra.Command{
		Use:     "prove PLAN.json FILE...",
		GroupID: groupParts,
		Short:   "Replay a saved plan against its part files, and say which operation fails",
		Example: `  catchplate plan pulley.hcl --json > pulley.json
  catchplate prove pulley.json pulley.hcl`,
		Args: cobra.MinimumNArgs(2),
		RunE: func(_ *cobra.Command, args []string) error {
			saved, err := readPlan(args[0])
			if err != nil {
				return err
			}
			job, _, err := c.load(args[1:])
			if err != nil {
				return err
			}
			a := proveAnswer{Schema: "catchplate-prove-1", Parts: []partProof{}, Failures: []replay.Failure{}}
			proofs, failures := replay.Prove(job, saved)
			for _, p := range saved.Parts {
				if proof, ok := proofs[p.Name]; ok {
					a.Parts = append(a.Parts, partProof{p.Name, proof})
				}
			}
			a.Failures = append(a.Failures, failures...)
			a.Proved = len(a.Failures) == 0
			if err := c.show(a); err != nil || a.Proved {
				return err
			}
			return &failure{code: exitProblems}
		},
	}
}

// mostPlanBytes bounds a saved plan: a hundred times the largest of the examples.
const mostPlanBytes = 64 << 20

func readPlan(name string) (*plan.Plan, error) {
	file, err := os.Open(name)
	if err != nil {
		return nil, problem("cannot read the plan: %v", err)
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, mostPlanBytes+1))
	if err != nil || len(text) > mostPlanBytes {
		return nil, problem("cannot read the plan %s: it must be a file of at most %d MiB", name, mostPlanBytes>>20)
	}
	saved := new(plan.Plan)
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(saved); err != nil {
		return nil, problem("%s is not a plan: %v; make one with catchplate plan FILE... --json", name, err)
	}
	if saved.Schema != plan.Schema {
		return nil, problem("%s has the schema %q, not %q: make it anew with catchplate plan FILE... --json", name, saved.Schema, plan.Schema)
	}
	return saved, nil
}

func (a proveAnswer) text(w io.Writer) {
	for _, p := range a.Parts {
		fmt.Fprintf(w, "%s: proved, %d movements replayed\n", p.Part, p.Proof.Cuts)
		for _, clause := range p.Proof.Clauses {
			fmt.Fprintf(w, "  %s: %s\n", clause.Name, clause.Text)
		}
	}
	for _, f := range a.Failures {
		fmt.Fprintf(w, "%s\n", f)
	}
}
