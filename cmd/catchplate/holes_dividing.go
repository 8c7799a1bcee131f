package main

import (
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"catchplate/partspec/units"
	"catchplate/planner/numbers/dividing"
	"catchplate/planner/numbers/holes"
)

// dividingAnswer is a ring of holes counted out on a dividing head.
type dividingAnswer struct {
	Ratio  int             `json:"ratio"`           // turns of the crank for one of the work
	Exact  []dividing.Step `json:"exact"`           // from hole to hole, on every circle that divides exactly
	Circle int             `json:"circle"`          // holes on the circle that the counts are for: the best one, of like ones the smallest
	OffDeg float64         `json:"off_deg"`         // how far the worst hole comes out off its angle
	OffMM  units.Length    `json:"off_mm"`          // and off its place on the pitch circle
	Counts []headCount     `json:"counts"`          // of each hole from hole 1, never from hole to hole
	Source string          `json:"dividing_source"` // what the counts rest on
}

// headCount is a hole's count from hole 1 on a dividing head.
type headCount struct {
	Turns int64 `json:"turns"`
	Holes int64 `json:"holes"`
}

// divided counts a ring of holes out on a dividing head.
func divided(p holes.Pattern, head dividing.Head) (*dividingAnswer, error) {
	exact, err := head.Exact(p.Count)
	if err != nil {
		return nil, err
	}
	angles := dividing.Divisions(p.Count)
	circle, worst := head.Best(angles)
	a := &dividingAnswer{Ratio: head.Ratio, Exact: exact, Circle: circle, OffDeg: math.Round(worst*1e6) / 1e6, Source: "turns = ratio / divisions, plane geometry"}
	a.OffMM = (p.Circle / 2 * units.Length(units.Angle(worst).Radians())).Round(4)
	for _, deg := range angles {
		count, _ := head.Count(circle, deg)
		a.Counts = append(a.Counts, headCount{Turns: count / int64(circle), Holes: count % int64(circle)})
	}
	return a, nil
}

func (a *dividingAnswer) text(w io.Writer, divisions int) {
	fmt.Fprintf(w, "Dividing head, %d turns for one of the work\n", a.Ratio)
	if len(a.Exact) == 0 {
		fmt.Fprintf(w, "No circle divides by %d exactly; nearest on the circle of %d holes: the worst hole is off by %s°, %s on the pitch circle\n", divisions, a.Circle, units.Decimal(a.OffDeg, 4), a.OffMM)
	} else {
		var ways []string
		for _, s := range a.Exact {
			ways = append(ways, fmt.Sprintf("%d turns + %d/%d", s.Turns, s.Holes, s.Circle))
		}
		fmt.Fprintf(w, "From hole to hole: %s\n", strings.Join(ways, ", or "))
	}
	fmt.Fprintf(w, "Counted from hole 1 on the circle of %d holes:\n", a.Circle)
	columns := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(columns, "hole\tturns\tholes\t")
	for i, c := range a.Counts {
		fmt.Fprintf(columns, "%d\t%d\t%d\t\n", i+1, c.Turns, c.Holes)
	}
	columns.Flush()
}
