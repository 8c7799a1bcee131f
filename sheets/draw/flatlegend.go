package draw

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// flatLegend explains the fillings and how the sketch lies.
func (c *Canvas) flatLegend(sc *flatScene, unmarked []string) {
	box := c.Bounds()
	middle := (box.Left + box.Right) / 2
	x, y := max(box.Left, middle-PageWidth/2+pageEdge), box.Bottom+4
	start := x
	swatch := func(class Class, text string) {
		c.Rect(class, Point{x, y}, Point{x + 7, y + 4})
		c.Rect(Thin, Point{x, y}, Point{x + 7, y + 4})
		c.Text(Text{At: Point{x + 8.5, y + 3.2}, Anchor: AtStart, Size: noteSize, Text: text})
		x += 8.5 + Width(text, noteSize, false) + 5
	}
	swatch(Off, "comes off in this holding")
	if !sc.atBench() {
		swatch(Stays, "cut open, stays")
	}
	lines := []string{"Not to scale. " + sc.lies()}
	if slices.ContainsFunc(sc.s.Operations, throughMate) {
		lines = append(lines, "Thin rings are the holes of the mate, which lies on this face.")
		if len(sc.flushEdges()) > 0 {
			lines = append(lines, "Both parts are pressed against the straight bars.")
		}
	}
	if sc.acrossPipe() {
		lines = append(lines, "The lower view is cut open across the pipe that the seat is for.")
	}
	if onTable(sc.s) {
		if len(zerosOf(sc.s, "x", "y")) > 0 {
			lines = append(lines, countWords(sc.s, ""))
		}
		if sc.fed {
			lines = append(lines, "Heavy arrows are the cutter's way over the work.")
		}
	}
	if len(unmarked) > 0 {
		lines = append(lines, "Without a mark: "+strings.Join(unmarked, ", ")+".")
	}
	footnotes(c, start, y+5, lines)
}

// lies says from where the work is seen.
func (sc *flatScene) lies() string {
	face, other := "front", "back"
	if sc.turned() {
		face, other = "right end", "left end"
	}
	if sc.v.mirror {
		face = other
	}
	where := "up"
	if onSlide(sc.s) {
		where = "towards the spindle"
	}
	if onLathe(sc.s) {
		where = "towards the tailstock"
	}
	text := "The " + face + " looks " + where + "."
	if sc.atBench() {
		text = "Seen from the " + face + "."
	}
	if sc.v.mirror && !sc.turned() {
		text += " The part has been turned over: its left edge lies on the right."
	}
	if deg := sc.s.AskewDeg; deg != 0 {
		way := "anticlockwise"
		if deg > 0 {
			way = "clockwise"
		}
		where := " On the table"
		if sc.s.Dividing != nil {
			where = " At the dividing head's nought"
		}
		text += where + " it lies turned by " + units.Decimal(math.Abs(deg), 2) + "° " + way + "."
	}
	return text
}

func flatSceneText(s *plan.Setup) string {
	text := Plain(fmt.Sprintf("The work held by %s.", s.Holding))
	for i, cl := range s.Clamps {
		text += fmt.Sprintf(" Clamp %d presses at X %s, Y %s.", i+1, units.Decimal(cl.XMM, 1), units.Decimal(cl.YMM, 1))
	}
	for _, op := range s.Operations {
		text += fmt.Sprintf(" Operation %d: %s.", op.Number, Plain(op.Title))
	}
	return text
}
