package main

import (
	"fmt"
	"io"

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
	return &cobra.Command{
		Use:     "explain [ID...]",
		GroupID: groupParts,
		Short:   "Tell a rule of the trade by the id that a plan or a sheet cites",
		Long:    "Tell what a rule says, why, how sure it is and where it comes from. Without an id, list them all.",
		Example: fmt.Sprintf("  catchplate explain %s\n  catchplate explain", rules.All().Heads()[0].ID),
		RunE: func(_ *cobra.Command, ids []string) error {
			if len(ids) == 0 {
				return c.show(ruleList{explainAnswer{explainSchema, rules.All().Heads()}})
			}
			a, err := explain(ids)
			if err != nil {
				return err
			}
			return c.show(a)
		},
	}
}

const explainSchema = "catchplate-explain-1"

func explain(ids []string) (explainAnswer, error) {
	a := explainAnswer{Schema: explainSchema}
	all := rules.All()
	for _, id := range ids {
		rule, ok := all.Head(id)
		if !ok {
			var known []string
			for _, r := range all.Heads() {
				known = append(known, r.ID)
			}
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
