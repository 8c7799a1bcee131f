package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"catchplate/partspec/units"
	"catchplate/planner/numbers/fit"
)

// fitAnswer is the limits of a hole, a shaft or a pair of them.
type fitAnswer struct {
	Schema string `json:"schema"`
	fit.Fit
}

func (c *cli) fit() *cobra.Command {
	return &cobra.Command{
		Use:     "fit SIZE CLASS",
		GroupID: groupBench,
		Short:   "Limits of a hole and a shaft for an ISO 286 class, a pair of classes or a purpose",
		Example: `  catchplate fit 25 H7/g6
  catchplate fit 25 H7
  catchplate fit "7/8 in" sliding`,
		Args: cobra.MinimumNArgs(2),
		RunE: func(_ *cobra.Command, args []string) error {
			size, err := units.ParseLength(args[0], units.MM)
			if err != nil {
				return wrongUse("%v", err)
			}
			f, err := fit.Resolve(size, strings.Join(args[1:], " "))
			if err != nil {
				return problem("%v", err)
			}
			return c.show(fitAnswer{"catchplate-fit-1", f})
		},
	}
}

func (a fitAnswer) text(w io.Writer) {
	fmt.Fprintf(w, "%s", both(float64(a.Nominal)))
	if a.Purpose != "" {
		fmt.Fprintf(w, ", %s", a.Purpose)
	}
	fmt.Fprintln(w)
	var list []row
	if a.Hole != nil {
		list = append(list, row{"hole " + a.Hole.Class, limitsText(a.Hole.Limits)})
	}
	if a.Shaft != nil {
		list = append(list, row{"shaft " + a.Shaft.Class, limitsText(a.Shaft.Limits)})
	}
	if a.LeastClearance != nil && a.MostClearance != nil {
		list = append(list, row{"between them", playText(units.Limits{Low: *a.LeastClearance, High: *a.MostClearance})})
	}
	rows(w, append(list, row{"note", a.Note}, row{"source", a.Source})...)
}

func limitsText(l units.Limits) string {
	return l.Text(units.InMM) + " (" + l.Text(units.InInch) + ")"
}

// playText says what a range of clearances means; interference is a clearance below nought.
func playText(l units.Limits) string {
	tight := units.Limits{Low: -l.High, High: -l.Low}
	switch fit.KindOf(l) {
	case fit.Clearance:
		return l.Text(units.InMM) + " of clearance"
	case fit.Interference:
		return tight.Text(units.InMM) + " of interference"
	}
	return "from " + tight.High.String() + " of interference to " + l.High.String() + " of clearance"
}
