package main

import (
	"fmt"

	"github.com/hashicorp/hcl/v2"
	"github.com/spf13/cobra"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

func (c *cli) plan() *cobra.Command {
	var full bool
	cmd := &cobra.Command{
		Use:     "plan FILE...",
		GroupID: groupParts,
		Short:   "Show the order of the work at a glance: holdings, operations, minutes and why",
		Example: `  catchplate plan examples/tide-gauge
  catchplate plan workshop.hcl pulley.hcl --why`,
		Args: someFiles,
		RunE: func(_ *cobra.Command, paths []string) error {
			job, _, err := c.load(paths)
			if err != nil {
				return err
			}
			p, err := c.planJob(job)
			if err != nil {
				return err
			}
			if err := c.show(glance{p, full}); err != nil {
				return err
			}
			return c.tellRefusals(job, p)
		},
	}
	cmd.Flags().BoolVar(&full, "why", false, "say why for every operation, what was passed over, and the cautions")
	return cmd
}

// planJob plans and proves. What the input lacks stands in the plan as refusals; a plan that the replay refutes is a fault of the
// program, and is not shown.
func (c *cli) planJob(job *partspec.Job) (*plan.Plan, error) {
	if len(job.Parts) == 0 {
		return nil, problem("there is no part to plan here: name a file with a part block beside the workshop's")
	}
	p, failures := planner.Proved(job, planner.Options{})
	if len(failures) > 0 {
		return nil, c.refuted(failures)
	}
	return p, nil
}

func (c *cli) refuted(failures []replay.Failure) error {
	for _, f := range failures[:min(len(failures), mostShown)] {
		fmt.Fprintln(c.talk, f)
	}
	return fault("the replay refutes the plan, which is not shown: a fault of the program, please report it with the input")
}

// tellRefusals says on stderr why parts have no plan, each at the line of the feature it is about, and ends the command.
func (c *cli) tellRefusals(job *partspec.Job, p *plan.Plan) error {
	return c.tellRefused(refusals(job, p))
}

func (c *cli) tellRefused(refused hcl.Diagnostics) error {
	if len(refused) == 0 {
		return nil
	}
	report(refused, c.input).text(c.talk, c.paintFor(c.talk))
	return &failure{code: exitProblems}
}

func refusals(job *partspec.Job, p *plan.Plan) hcl.Diagnostics {
	var list hcl.Diagnostics
	for _, part := range p.Parts {
		for _, r := range part.Refusals {
			list = append(list, refusal(job.Part(part.Name), r))
		}
	}
	return list
}

func refusal(part *partspec.Part, r plan.Refusal) *hcl.Diagnostic {
	at := part.Range
	if f := part.Feature(r.Feature); f != nil {
		at = f.Head().Range
	}
	detail := ""
	for _, reason := range r.Reasons {
		detail += reason + "\n"
	}
	for _, remedy := range r.Remedies {
		detail += "would make it possible: " + remedy + "\n"
	}
	return &hcl.Diagnostic{Severity: hcl.DiagError, Summary: fmt.Sprintf("No way to make %s: %s", part.Name, r.What), Detail: detail, Subject: &at}
}
