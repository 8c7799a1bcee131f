package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"catchplate/planner/plan"
	"catchplate/planner/rules"
)

// explainAnswer holds the rules that were asked for.
type explainAnswer struct {
	Schema string      `json:"schema"`
	Rules  []plan.Rule `json:"rules"`
}

func (c *cli) explain() *cobra.Command {
	var order bool
	var at string
	cmd := &cobra.Command{
		Use:     "explain [ID...]",
		GroupID: groupParts,
		Short:   "Tell a rule of the trade by the id that a sheet cites or, with --order FILE..., what fixes the order of the work",
		Long: `Tell what a rule says, why, how sure it is and where it comes from. Without an id, list them all.

With --order, tell of each operation and the next what fixes that they stand so, and what the cheapest order with the two the other way
round costs. "N min more" and "costs the same" are exact; "at least" is as much as is proven, and "not known" that nothing is; "never" means that
a rule forbids it, "impossible" that rules and holdings together leave no such order, and the rule named is the one that keeps just these two from
changing places. The stock lies, and holes are made, as in the plan. A part of thirty operations can take half a minute.`,
		Example: fmt.Sprintf("  catchplate explain %s\n  catchplate explain\n  catchplate explain --order examples/tide-gauge --at float_pulley", rules.All().Heads()[0].ID),
		RunE: func(cmd *cobra.Command, args []string) error {
			switch {
			case order:
				if err := someFiles(cmd, args); err != nil {
					return err
				}
				return c.explainOrder(args, at)
			case at != "":
				return wrongUse("--at names a part for --order: catchplate explain --order FILE... --at %s", at)
			case len(args) == 0:
				return c.show(ruleList{explainAnswer{explainSchema, rules.All().Heads()}})
			}
			a, err := explain(args)
			if err != nil {
				return err
			}
			return c.show(a)
		},
	}
	cmd.Flags().BoolVar(&order, "order", false, "explain the order of the work of parts, whose files are given")
	cmd.Flags().StringVar(&at, "at", "", "with --order: this part alone")
	return cmd
}

const explainSchema = "catchplate-explain-1"

func explain(ids []string) (explainAnswer, error) {
	a := explainAnswer{Schema: explainSchema}
	all := rules.All()
	for _, id := range ids {
		rule, ok := all.Head(id)
		var known []string
		for _, r := range all.Heads() {
			if known = append(known, r.ID); !ok && strings.EqualFold(r.ID, id) {
				rule, ok = r, true // b-27 for B-27
			}
		}
		if !ok {
			return a, problem("no rule has the id %q%s; catchplate explain lists them all", id, didYouMean(id, known))
		}
		a.Rules = append(a.Rules, rule)
	}
	return a, nil
}

func (a explainAnswer) text(w io.Writer) {
	for i, r := range a.Rules {
		if i > 0 {
			fmt.Fprintln(w)
		}
		fmt.Fprintf(w, "%s  %s\n", r.ID, r.Title)
		rows(w,
			row{"rule", r.Text},
			row{"why", r.Why},
			row{"except", r.Except},
			row{"how sure", r.Sure},
			row{"source", r.Source},
			row{"class", r.Class},
		)
	}
}

// ruleList is the same, printed a line a rule.
type ruleList struct{ explainAnswer }

func (l ruleList) text(w io.Writer) {
	list := make([]row, len(l.Rules))
	for i, r := range l.Rules {
		list[i] = row{r.ID, r.Title}
	}
	rows(w, list...)
}
