package draw

import (
	"strconv"

	"catchplate/planner/plan"
)

// patternTag is the letter of a pattern where a part has several whose holes are numbered: A, B, ... in the order in which they are drawn.
func patternTag(holes []plan.FlatHole, feature string) string {
	var patterns []string
	at := -1
	for _, h := range holes {
		if h.Number == 0 || contains(patterns, h.Feature) {
			continue
		}
		if h.Feature == feature {
			at = len(patterns)
		}
		patterns = append(patterns, h.Feature)
	}
	if at < 0 || len(patterns) < 2 {
		return ""
	}
	const letters = 26
	tag := string(rune('A' + at%letters))
	if at >= letters {
		tag += strconv.Itoa(at/letters) + "-"
	}
	return tag
}

// HoleName is how a hole of a part is called on sheet, sketch and template: its number, after the letter of its pattern where there are several; a bore by
// its name.
func HoleName(p *plan.Part, feature string, number int) string {
	if alone(drawnHoles(p), feature) {
		return Plain(feature)
	}
	return patternTag(drawnHoles(p), feature) + strconv.Itoa(number)
}

// alone reports whether a feature is a bore by itself in the drawing, which has no number there.
func alone(drawn []plan.FlatHole, feature string) bool {
	for _, h := range drawn {
		if h.Feature == feature && h.Number == 0 {
			return true
		}
	}
	return false
}

// drawnHoles are a part's holes along Z as its drawing has them.
func drawnHoles(p *plan.Part) []plan.FlatHole {
	if p.Drawing.Flat != nil {
		return p.Drawing.Flat.Holes
	}
	return p.Drawing.Beside
}
