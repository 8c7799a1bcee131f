package draw

import (
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// bedWords say what carries the work and where a tool may come through.
func bedWords(s *plan.Setup) []string {
	var out []string
	b := s.Bed
	if b == nil {
		return nil
	}
	if b.Kind != "" && b.Kind != "jaws" && b.Kind != "plate" {
		text := b.Kind
		if b.HeightMM > 0 {
			text += " " + units.Decimal(b.HeightMM, 1) + " mm high"
		}
		out = append(out, text)
	}
	if b.GapMM > 0 && strings.Contains(b.Kind, "board") {
		out = append(out, "tools may run "+units.Decimal(b.GapMM, 1)+" mm into the board")
	} else if b.GapMM > 0 {
		out = append(out, units.Decimal(b.GapMM, 1)+" mm clear "+behind(s)+" the work, for tools that come through")
	} else if strings.Contains(b.Kind, "board") {
		out = append(out, "tools that come through end in the board")
	}
	return out
}

// behind is where the holder lies as seen from the work.
func behind(s *plan.Setup) string {
	if onLathe(s) {
		return "behind"
	}
	return "below"
}

func holderWords(s *plan.Setup) string {
	text := Plain(strings.TrimSpace(s.Holding))
	if s.Grip.Kind == "clamps" && s.Grip.Inside {
		text = "bush and screw through " + Plain(s.Grip.Surface) + ", on the " + text
	}
	if l := s.Ledge; l != nil {
		text += " on the " + Plain(l.Faceplate)
	}
	if s.Grip.Packing != "" {
		text += ", with " + s.Grip.Packing
	}
	return text
}

// latheWords say what holds the work, what balances it, and where the dials along the bed stand at nought.
func latheWords(s *plan.Setup) []string {
	words := append([]string{holderWords(s)}, bedWords(s)...)
	if b := s.Balance; b != nil && b.WeightKg > 0 {
		words = append(words, "counterweight "+units.Decimal(b.WeightKg, 2)+" kg, its middle "+units.Decimal(b.RadiusMM, 0)+" mm from the axis, at "+units.Decimal(b.AngleDeg, 0)+"° from the part's X")
	}
	for _, z := range zerosOf(s, "saddle", "tailstock") {
		words = append(words, z.dial+" 0 at "+units.Decimal(z.referenceMM, 2)+" mm from the back ("+z.numbers(s)+")")
	}
	return words
}

// heldWords stand below the views, over the whole width.
func (c *Canvas) heldWords(words []string) {
	box := c.Bounds()
	y := box.Bottom + 1.5
	line := ""
	write := func(text string) {
		for _, l := range Wrap(text, max(box.Width()-4, labelMost*2), noteSize, false) {
			y += LineStep * noteSize
			c.Text(Text{At: Point{box.Left, y}, Anchor: AtStart, Size: noteSize, Text: l})
		}
	}
	for _, w := range words {
		if line != "" {
			line += "; "
		}
		line += w
	}
	if line != "" {
		write(Title(line) + ".")
	}
}
