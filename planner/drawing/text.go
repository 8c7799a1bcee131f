package drawing

import (
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
)

// sizeText shows a size as it was drawn, with its limits in brackets where the drawing gives them otherwise than in figures.
func sizeText(p *partspec.Part, s partspec.Size) string {
	text := drawn(p, s.Dimension)
	if s.Class != "" && !strings.Contains(text, s.Class) {
		text += " " + s.Class
	}
	return text + limitsText(s)
}

// drawn is a dimension in the words of the drawing. What was written as an expression is shown as the figure it stands for.
func drawn(p *partspec.Part, d units.Dimension) string {
	bare := units.MM
	if p.Inches {
		bare = units.Inch
	}
	if _, err := units.ParseToleranced(d.Written, bare); err != nil {
		d.Written = ""
	}
	if d.Written == "" && !d.InInches {
		return d.Value.Figure(units.InMM)
	}
	if text := d.Drawn(); d.InInches {
		return text
	}
	return d.Written
}

// limitsText shows limits: as ± where they lie evenly and no class made them, else as the two sizes. Inch drawings get the limits in the
// millimetres that gauges and dials of this plan use.
func limitsText(s partspec.Size) string {
	limits := units.Limits{Low: s.Low, High: s.High}
	switch {
	case s.Low == s.High || strings.Contains(s.Written, "..") && !s.InInches || strings.Contains(s.Written, "±") && !s.InInches:
		return ""
	case even(s) && s.InInches:
		return " (±" + (s.High - s.Value).Round(micro).String() + ")"
	case even(s):
		return " ±" + (s.High - s.Value).Round(micro).Figure(units.InMM)
	case s.InInches:
		return " (" + limits.Text(units.InMM) + ")"
	}
	return " (" + limits.Figures(units.InMM) + ")"
}

// even is true when limits lie evenly about the size as drawn, and no class made them.
func even(s partspec.Size) bool {
	return s.Class == "" && (s.High-s.Value).Round(micro) == (s.Value-s.Low).Round(micro)
}

// shortText shows a size that stands beside another one: even limits, which a note gives, are left out.
func shortText(p *partspec.Part, s partspec.Size) string {
	if even(s) {
		return drawn(p, s.Dimension)
	}
	return sizeText(p, s)
}

// micro rounds to a micrometre, which is as far as any text goes.
const micro = 3

// diameterText is a diameter with its sign.
func diameterText(p *partspec.Part, s partspec.Size) string { return "Ø" + sizeText(p, s) }

// place says in words where a feature begins.
func place(p *partspec.Part, s partspec.Span) string {
	unit := units.InMM
	if p.Inches {
		unit = units.InInch
	}
	if s.Left <= p.Length.Value-s.Right {
		return s.Left.Text(unit) + " from the left end"
	}
	return (p.Length.Value - s.Right).Text(unit) + " from the right end"
}
