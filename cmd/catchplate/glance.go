package main

import (
	"fmt"
	"io"
	"text/tabwriter"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// glance is a plan as a page of text: enough to see the order and why, not enough to work from. Its JSON is the whole plan.
type glance struct {
	*plan.Plan
	full bool // every reason, what was passed over, and the cautions
}

func (g glance) text(w io.Writer) {
	if g.BuiltInWorkshop {
		fmt.Fprintln(w, "No file gives a workshop: the built-in one serves (a small lathe with ordinary kit).")
	}
	for i, part := range g.Parts {
		if i > 0 {
			fmt.Fprintln(w)
		}
		glancePart(w, part)
		if g.full {
			tellWhy(w, part)
		}
	}
}

func glancePart(w io.Writer, p plan.Part) {
	if len(p.Refusals) > 0 {
		fmt.Fprintf(w, "%s: no plan\n", p.Name)
		return
	}
	fmt.Fprintf(w, "%s: %s, %d off, about %s each\n", p.Name, p.MaterialName, max(p.Quantity, 1), units.Minutes(p.Minutes))
	fmt.Fprintf(w, "  stock: %s\n", p.Stock.Text)
	for _, h := range p.MakeFirst {
		fmt.Fprintf(w, "  make first: %s, for holding %d\n", h.Title, h.ForSetup)
	}
	for _, s := range p.Setups {
		glanceSetup(w, s)
	}
	glanceOrder(w, p.Order)
	if p.Proof != nil {
		fmt.Fprintf(w, "  proved: %d movements replayed from setup, tool and dial readings\n", p.Proof.Cuts)
	}
}

// tellWhy gives the reasons that the glance leaves out.
func tellWhy(w io.Writer, p plan.Part) {
	for _, pair := range p.Order.Pairs {
		fmt.Fprintf(w, "  %s before %s: %s%s\n", pair.Before, pair.After, pair.Text, cited(pair.Rule))
	}
	for _, s := range p.Setups {
		for _, o := range s.Operations {
			for _, r := range o.Why {
				fmt.Fprintf(w, "  %d: %s%s\n", o.Number, r.Text, cited(r.Rule))
			}
		}
	}
	for _, r := range p.Rejected {
		fmt.Fprintf(w, "  passed over: %s, for %s: %s%s\n", r.Holding, r.For, r.Reason, cited(r.Rule))
	}
	for _, caution := range p.Cautions {
		fmt.Fprintf(w, "  caution: %s%s\n", caution.Text, cited(caution.Rule))
	}
}

func glanceSetup(w io.Writer, s plan.Setup) {
	fmt.Fprintf(w, "  holding %d: %s (%s)\n", s.Number, s.Title, units.Minutes(s.Minutes))
	columns := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	for _, o := range s.Operations {
		fmt.Fprintf(columns, "    %d\t%s\t%s\t%s\t%s\n", o.Number, o.Title, o.Tool.Text, speedText(o.RPM), units.Minutes(o.Minutes))
	}
	columns.Flush()
	for _, r := range s.Why {
		fmt.Fprintf(w, "    why: %s%s\n", r.Text, cited(r.Rule))
	}
	if s.NoWayBack != "" {
		fmt.Fprintf(w, "    no way back after this: %s\n", s.NoWayBack)
	}
}

func speedText(rpm float64) string {
	if rpm == 0 {
		return "by hand"
	}
	return units.Speed(rpm).String()
}

func glanceOrder(w io.Writer, o plan.Order) {
	fmt.Fprintf(w, "  order: %s, reckoned with settings, tool changes and risk; ", units.Minutes(o.CostMinutes))
	if o.Proven {
		fmt.Fprintln(w, "no other order is cheaper (proven)")
	} else {
		fmt.Fprintf(w, "no order can be cheaper than %s\n", units.Minutes(o.BoundMinutes))
	}
}
