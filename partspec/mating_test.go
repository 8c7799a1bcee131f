package partspec

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec/units"
)

func placesAt(xy ...float64) []Point {
	var list []Point
	for i := 0; i < len(xy); i += 2 {
		var p Point
		p.X.Value, p.Y.Value = units.Length(xy[i]), units.Length(xy[i+1])
		list = append(list, p)
	}
	return list
}

// Two patterns lie on one another by a turn, or only when one part is turned over: the faces that come together decide.
func TestPatternsThatMeet(t *testing.T) {
	hook := placesAt(20, 0, 0, 12, -15, 3)
	turned := placesAt(0, 20, -12, 0, -3, -15)
	mirrored := placesAt(20, 0, 0, -12, -15, -3)
	through, shaft := &Bore{Through: true}, &Spigot{Span: Span{Left: 10, Right: 14}}
	plate := Span{Left: 0, Right: 10}
	for name, c := range map[string]struct {
		there []Point
		own   Feature
		other Feature
		from  End
		meet  bool
	}{
		"a turn, through bores":                    {turned, through, through, Right, true},
		"turned over, through bores":               {mirrored, through, through, Right, true},
		"other distances":                          {placesAt(20, 0, 0, 13, -15, 3), through, through, Right, false},
		"right face on right face, mirrored":       {mirrored, through, shaft, Right, true},
		"right face on right face, not mirrored":   {turned, through, shaft, Right, false},
		"right face on left face, not mirrored":    {turned, through, shaft, Left, true},
		"right face on left face, mirrored":        {mirrored, through, shaft, Left, false},
		"its own spigot stands on the other face":  {turned, shaft, through, Left, false},
		"its own spigot stands on the same face":   {turned, shaft, through, Right, true},
		"its own bore opens on the other face":     {turned, &Bore{From: Left}, through, Right, false},
		"the register is a cross hole, not a bore": {turned, &CrossHole{}, through, Right, false},
	} {
		t.Run(name, func(t *testing.T) {
			f, mate := &Holes{Places: hook, From: c.from, Span: plate}, &Holes{Places: c.there, Span: plate}
			assert.Equal(t, c.meet, registers(f, c.own, mate, c.other))
		})
	}
}
