package draw_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/planner/plan"
	"catchplate/sheets/draw"
	"catchplate/sheets/internal/fixture"
)

// Work on a tilting plate is drawn set over, with the angle and the packing that gives it; a plate that is shut has neither.
func TestSketchOfWorkSetOver(t *testing.T) {
	for rise, says := range map[float64][]string{0: {"10, 20"}, 0.9: {"packing 0.9", "0.52°", "10, 20"}, 33.7: {"packing 33.7", "19.69°", "10, 20"}, 86.6: {"packing 86.6", "60°", "10, 20"}} {
		t.Run(fmt.Sprint(rise), func(t *testing.T) {
			part := fixture.Saddle().Parts[0]
			s := part.Setups[0]
			s.Number, s.FreeEnd, s.Beside = 3, "left", part.Drawing.Beside
			s.Grip.FromZ, s.Grip.ToZ, s.Grip.RadiusMM = 12, 14, 17
			s.Operations = []plan.Operation{{Number: 10, Process: plan.Drill}, {Number: 20, Process: plan.Tap}}
			s.Tilt = &plan.Tilt{SineMM: 100, RiseMM: rise, AlongDeg: 90}
			page := draw.Setup("saddle-setup-3", &part, &s)
			checkPage(t, page)
			assert.LessOrEqual(t, page.Width, draw.PageWidth)
			assert.LessOrEqual(t, page.Height, 220.0)
			assert.Empty(t, struck(page))
			var all []string
			for _, x := range texts(page) {
				all = append(all, x.Text)
			}
			for _, want := range says {
				assert.Contains(t, all, want)
			}
			text := strings.Join(all, " ")
			assert.Equal(t, rise == 0, strings.Contains(text, "The plate is shut."))
			assert.Equal(t, rise > 0, strings.Contains(text, "packing"))
		})
	}
}
