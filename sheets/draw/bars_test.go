package draw_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/sheets/draw"
)

func barsShown() []draw.Bar {
	return []draw.Bar{
		{Label: "1 three_jaw on stock", Share: 0.43, Band: 0.1, Text: "0.0071 of 0.0167 mm"},
		{Label: "2 four_jaw on a spigot with a long name", Share: 1.4, Band: 0.5, Text: "0.0234 of 0.0167 mm"},
		{Label: "3 soft_jaws on outside", Share: 6.8, Band: 0.1, Text: "0.1128 of 0.0167 mm"},
		{Label: "4 collets on stock", Share: 0, Band: 0, Text: "0.0000 of 0.0167 mm"},
	}
}

// Whatever the shares, nothing leaves the page, no text lies on another, and the figures are told in words too.
func TestBars(t *testing.T) {
	page := draw.Bars("b", "bezel", barsShown())
	var texts []draw.Text
	for _, s := range page.Shapes {
		if text, ok := s.(draw.Text); ok {
			for _, other := range texts {
				assert.False(t, text.Box().Overlaps(other.Box()), "%q lies on %q", text.Text, other.Text)
			}
			texts = append(texts, text)
			assert.True(t, text.Box().Inside(draw.Box{Right: page.Width, Bottom: page.Height}), "%q leaves the page", text.Text)
		}
	}
	assert.Len(t, texts, 2*len(barsShown())+1)
	assert.Contains(t, page.Desc, "3 soft_jaws on outside: 0.1128 of 0.0167 mm, 680 % of what may pass")
}
