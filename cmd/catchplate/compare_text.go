package main

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/sheets/draw"
	"catchplate/sheets/svg"
)

// comparison prints a plan.Comparison.
type comparison struct{ plan.Comparison }

// compareHead names the columns of a table.
var compareHead = []string{"", "holding", "grips", "wall", "N a jaw, least..most", "at", "lobed error", "of limit", "stress", "run-out", "out", "rpm max", "min", "make first", "verdict"}

func (a comparison) text(w io.Writer) {
	fmt.Fprint(w, a.preface())
	for _, s := range a.Surfaces {
		fmt.Fprintf(w, "\n%s\n", title(s))
		columns := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
		fmt.Fprintf(columns, "  %s\n", strings.Join(compareHead, "\t"))
		tried, out := seated(s.Options)
		for i, o := range tried {
			fmt.Fprintf(columns, "  %s\n", strings.Join(cells(i, o), "\t"))
		}
		columns.Flush()
		fmt.Fprintln(w)
		for i, o := range tried {
			number := fmt.Sprintf("%2d", i+1)
			for _, line := range wrapped(o.Verdict, verdictWidth) {
				fmt.Fprintf(w, "  %2s %s\n", number, line)
				number = ""
			}
		}
		for _, line := range out {
			sign := "-"
			for _, part := range wrapped(line, verdictWidth) {
				fmt.Fprintf(w, "  %2s %s\n", sign, part)
				sign = ""
			}
		}
	}
}

// seated parts the options that take the work somewhere from the holdings that do not; of these there is a line for each
// reason, with the names of all that share it.
func seated(options []plan.Option) (tried []plan.Option, out []string) {
	names := map[string][]string{}
	var reasons []string
	for _, o := range options {
		if o.Surface != "" {
			tried = append(tried, o)
			continue
		}
		if names[o.Verdict] == nil {
			reasons = append(reasons, o.Verdict)
		}
		names[o.Verdict] = append(names[o.Verdict], o.Title)
	}
	for _, reason := range reasons {
		out = append(out, strings.Join(names[reason], ", ")+": "+strings.TrimPrefix(reason, "refused: "))
	}
	return tried, out
}

const verdictWidth = 110

// preface says what the figures mean, and what was asked to be otherwise.
func (a comparison) preface() string {
	text := `Lobed error: peak to valley in radius at the force "at", with its band; a third of the roundness at stake may pass. Three lobes do not show
on a two-point gauge: check with a V-block or a three-point bore gauge. Forces of a hand-tightened chuck are good to a factor of two.
* judged with everything finished but this; else as the work stands in the plan when the operation comes.  > the plan's own holding.
`
	if a.WhatIf != nil {
		text += "What if: " + ifs(*a.WhatIf) + ". It comes into the lines marked ~ and changes the sum of the grip there, not the part, the cuts or the plan.\n"
	}
	return text
}

func ifs(w plan.WhatIf) string {
	var list []string
	if w.WallMM > 0 {
		list = append(list, "the wall is "+inMM(w.WallMM))
	}
	if w.ForceN > 0 {
		list = append(list, fmt.Sprintf("each jaw presses with %.0f N", w.ForceN))
	}
	if w.Jaws > 0 {
		list = append(list, fmt.Sprintf("the chucks have %d jaws", w.Jaws))
	}
	if w.GripLengthMM > 0 {
		list = append(list, "the grip is "+inMM(w.GripLengthMM)+" long")
	}
	return strings.Join(list, ", ")
}

func title(s plan.Surface) string {
	text := fmt.Sprintf("%s: %s", s.Part, s.Operation)
	if !s.Planned {
		text += " (the part has no plan)"
	}
	return text
}

// cells are one line of a table.
func cells(i int, o plan.Option) []string {
	list := []string{fmt.Sprintf("%d%s", i+1, marks(o)), o.Title}
	verdict := "passes"
	if !o.Passes {
		verdict = "refused" + cited(o.Rule)
	}
	list = append(list, seat(o), figure(o.WallMM, "%.2f"))
	list = append(list, gripCells(o)...)
	return append(list, fmt.Sprintf("%.3f", o.RunOutMM), figure(o.StickOutMM, "%.0f"), figure(o.MostRPM, "%.0f"), fmt.Sprintf("%.0f", o.Minutes), orDash(o.ToMake), verdict)
}

// gripCells are the window, the working force, the error, its share of the limit and the stress.
func gripCells(o plan.Option) []string {
	window, at := "-", "-"
	if o.WorkingN > 0 {
		window, at = fmt.Sprintf("%.0f..", o.LeastN), fmt.Sprintf("%.0f", o.WorkingN)
		if o.MostN > 0 {
			window += fmt.Sprintf("%.0f", o.MostN)
		}
	}
	switch o.Trust {
	case "":
		return []string{window, at, "-", "-", "-"}
	case "none":
		return []string{window, at, "no figure", "-", "-"}
	}
	return []string{window, at, fmt.Sprintf("%.4f ±%.0f %% %s", o.ErrorMM, o.BandPercent, o.Trust), fmt.Sprintf("%.0f %% of %.4f", o.SharePercent, o.LimitMM), fmt.Sprintf("%.0f of %.0f MPa", o.StressMPa, o.YieldMPa)}
}

// marks are the signs behind a line's number, told in the preface.
func marks(o plan.Option) string {
	text := ""
	if o.Chosen {
		text += ">"
	}
	if o.Moment == plan.MomentFinished {
		text += "*"
	}
	if len(o.Changed) > 0 {
		text += "~"
	}
	return text
}

func figure(v float64, format string) string {
	if v == 0 {
		return "-"
	}
	return fmt.Sprintf(format, v)
}

func orDash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

// files are the comparison as Markdown, with a bar figure for each surface on which a grip tells.
func (a comparison) files() []outFile {
	var page bytes.Buffer
	var figures []outFile
	fmt.Fprintf(&page, "# Holdings compared\n\n%s", strings.NewReplacer("\n", "\n\n", "*", "\\*", "~", "\\~", ">", "\\>").Replace(a.preface()))
	for i, s := range a.Surfaces {
		fmt.Fprintf(&page, "## %s\n\n", title(s))
		if bars := barsOf(s); len(bars) > 0 {
			name := fmt.Sprintf("compare-%d", i+1)
			figures = append(figures, outFile{name + ".svg", svg.File(draw.Bars(name, title(s), bars))})
			fmt.Fprintf(&page, "![Lobed error of each holding against what may pass](%s.svg)\n\n", name)
		}
		fmt.Fprintf(&page, "| %s | why |\n|%s\n", strings.Join(compareHead, " | "), strings.Repeat(" --- |", len(compareHead)+1))
		tried, out := seated(s.Options)
		for k, o := range tried {
			fmt.Fprintf(&page, "| %s | %s |\n", strings.Join(inTable(cells(k, o)), " | "), inTable([]string{o.Verdict})[0])
		}
		fmt.Fprintln(&page)
		for _, line := range out {
			fmt.Fprintf(&page, "- %s\n", inTable([]string{line})[0])
		}
		fmt.Fprintln(&page)
	}
	return append([]outFile{{"compare.md", page.Bytes()}}, figures...)
}

// inTable keeps signs in a cell from being read as Markdown.
func inTable(list []string) []string {
	signs := strings.NewReplacer("|", "\\|", "*", "\\*", "~", "\\~", ">", "\\>", "_", "\\_", "[", "\\[", "<", "\\<")
	out := make([]string, len(list))
	for i, s := range list {
		out[i] = signs.Replace(s)
	}
	return out
}

func barsOf(s plan.Surface) []draw.Bar {
	var bars []draw.Bar
	for i, o := range s.Options {
		if o.LimitMM > 0 && o.Trust != "none" {
			bars = append(bars, draw.Bar{Label: fmt.Sprintf("%d %s on %s", i+1, o.Holding, o.Surface), Share: o.SharePercent / 100, Band: o.BandPercent / 100, Text: fmt.Sprintf("%.4f of %.4f mm", o.ErrorMM, o.LimitMM)})
		}
	}
	return bars
}

// seat is the diameter that a holding takes and over what length; clamps and a vice take none, only so much of the thickness.
func seat(o plan.Option) string {
	if o.DiameterMM == 0 {
		return units.Decimal(o.GripMM, 1)
	}
	return fmt.Sprintf("Ø%s x %s", units.Decimal(o.DiameterMM, 2), units.Decimal(o.GripMM, 1))
}
