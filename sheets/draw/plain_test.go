package draw_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/sheets/draw"
)

func TestPlain(t *testing.T) {
	for name, want := range map[string]string{
		"three_jaw on stock, left end free": "three-jaw chuck on stock, left end free", "my four_jaw": "my four-jaw chuck", "stub_mandrel": "stub mandrel",
		"bore_gauge": "bore gauge", "_a_b_": "_a b_", "a _ b": "a _ b", "": "", "Ø_x": "Ø_x", "end_wall, diameter": "end wall, diameter",
	} {
		assert.Equal(t, want, draw.Plain(name))
	}
}

func TestTitle(t *testing.T) {
	for name, want := range map[string]string{"gland_nut": "Gland nut", "Ø8_pin": "Ø8 pin", "": "", "M6 screw": "M6 screw"} {
		assert.Equal(t, want, draw.Title(name))
	}
}
