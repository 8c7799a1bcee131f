package main

import (
	"fmt"
	"io"
	"text/tabwriter"

	"github.com/hashicorp/hcl/v2"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner"
	"catchplate/planner/plan"
)

// orderAnswer holds what fixes the order of the work, pair by pair of neighbours.
type orderAnswer struct {
	Schema string      `json:"schema"`
	Parts  []partOrder `json:"parts"` // those that have a plan
}

// partOrder is the order of one part.
type partOrder struct {
	Part  string     `json:"part"`
	Order plan.Order `json:"order"`
}

// explainOrder tells of the order of every part of a job, or of the one named.
func (c *cli) explainOrder(paths []string, only string) error {
	job, _, err := c.load(paths)
	if err != nil {
		return err
	}
	parts, err := madeParts(job, only)
	if err != nil {
		return err
	}
	a := orderAnswer{Schema: "catchplate-explain-order-1", Parts: []partOrder{}}
	var refused hcl.Diagnostics
	for _, part := range parts {
		order, reasons, err := planner.ExplainOrder(job, part, planner.Options{})
		if err != nil {
			return fault("%v", err)
		}
		for _, r := range reasons {
			refused = append(refused, refusal(part, r))
		}
		if len(reasons) == 0 {
			a.Parts = append(a.Parts, partOrder{part.Name, order})
		}
	}
	if err := c.show(a); err != nil {
		return err
	}
	return c.tellRefused(refused)
}

// madeParts lists the parts that are made here, or the one of that name.
func madeParts(job *partspec.Job, only string) ([]*partspec.Part, error) {
	var parts []*partspec.Part
	var names []string
	for _, part := range job.Parts {
		if part.Bought {
			continue
		}
		names = append(names, part.Name)
		if only == "" || part.Name == only {
			parts = append(parts, part)
		}
	}
	if only != "" && len(parts) == 0 {
		return nil, problem("no part that is made here has the name %q%s", only, didYouMean(only, names))
	}
	return parts, nil
}

func (a orderAnswer) text(w io.Writer) {
	for i, p := range a.Parts {
		if i > 0 {
			fmt.Fprintln(w)
		}
		fmt.Fprintln(w, p.Part)
		glanceOrder(w, p.Order)
		columns := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
		fmt.Fprintln(columns, "  first\tthen\tthe other way round\twhat fixes it")
		for _, pair := range p.Order.Pairs {
			fmt.Fprintf(columns, "  %s\t%s\t%s\t%s%s\n", pair.Before, pair.After, otherWay(pair), pair.Text, cited(pair.Rule))
		}
		columns.Flush()
	}
}

// otherWay says what the best order with two neighbours the other way round costs.
func otherWay(p plan.Pair) string {
	switch extra := p.ExtraMinutes; {
	case p.Opposite == plan.Forbidden:
		return "never"
	case p.Opposite == plan.Impossible:
		return "impossible"
	case p.Opposite == plan.AtLeast && extra <= 0:
		return "not known"
	case p.Opposite == plan.AtLeast:
		return fmt.Sprintf("at least %s min more", units.Decimal(extra, 1))
	case extra == 0:
		return "costs the same"
	case extra < 0:
		return fmt.Sprintf("%s min less", units.Decimal(-extra, 1))
	default:
		return fmt.Sprintf("%s min more", units.Decimal(extra, 1))
	}
}
