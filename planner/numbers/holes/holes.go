// Package holes places holes on a circle and gives the checks that catch a
// wrong count before metal is lost, with the plain geometry of chords.
//
// In flow: pitch circle, count and start angle; or chord and rise of an arc.
// Out flow: coordinates from the centre, chords over any number of gaps, pin
// checks, all in millimetres.
//
// What holds after: hole 1 lies at the start angle, the others follow
// anticlockwise, x to the right and y up; every hole lies on the circle and
// every pair of neighbours is one chord apart, to the rounding of a nanometre.
package holes

import (
	"errors"
	"fmt"
	"math"

	"catchplate/partspec/units"
)

// DefaultStart puts hole 1 at the top.
const DefaultStart units.Angle = 90

// maxCount is more holes than a dividing head finds on a circle.
const maxCount = 360

// places is where coordinates are rounded, to take out the noise of float64.
const places = 6

// Hole is the place of one hole from the centre of the circle.
type Hole struct {
	X units.Length `json:"x_mm"`
	Y units.Length `json:"y_mm"`
}

// Pattern is a ring of holes.
type Pattern struct {
	Circle units.Length `json:"circle_mm"` // pitch circle diameter
	Count  int          `json:"count"`
	Start  units.Angle  `json:"start_deg"`
	Holes  []Hole       `json:"holes"`
	Chord  units.Length `json:"chord_mm"` // between neighbours; 0 for one hole
	Source string       `json:"source"`
}

// Circle places count holes on a pitch circle, hole 1 at the start angle from
// the x axis, the others anticlockwise.
func Circle(diameter units.Length, count int, start units.Angle) (Pattern, error) {
	if !(diameter > 0 && diameter <= units.MaxLength) {
		return Pattern{}, errors.New("a pitch circle needs a diameter above 0")
	}
	if count < 1 || count > maxCount {
		return Pattern{}, fmt.Errorf("a circle takes 1 to %d holes, not %d", maxCount, count)
	}
	if !(math.Abs(float64(start)) <= 360) {
		return Pattern{}, errors.New("a start angle lies between -360 and 360 degrees")
	}
	p := Pattern{Circle: diameter, Count: count, Start: start, Source: "chord = circle x sin(180/n), plane geometry"}
	for i := range count {
		angle := start + units.Angle(360*float64(i)/float64(count))
		p.Holes = append(p.Holes, Hole{
			X: (diameter / 2 * units.Length(math.Cos(angle.Radians()))).Round(places),
			Y: (diameter / 2 * units.Length(math.Sin(angle.Radians()))).Round(places),
		})
	}
	p.Chord = p.Across(1)
	return p, nil
}

// Across is the distance between two holes that lie k gaps apart:
// circle x sin(180 k / n).
func (p Pattern) Across(k int) units.Length {
	angle := units.Angle(180 * float64(k) / float64(p.Count))
	return (p.Circle * units.Length(math.Sin(angle.Radians()))).Abs().Round(places)
}

// From gives the places as measured from a datum that lies at that place from
// the centre: the two tangents, say, from (-circle/2, circle/2).
func (p Pattern) From(datum Hole) []Hole {
	moved := make([]Hole, len(p.Holes))
	for i, h := range p.Holes {
		moved[i] = Hole{X: (h.X - datum.X).Round(places), Y: (h.Y - datum.Y).Round(places)}
	}
	return moved
}

// PinCheck is what a caliper reads on pins pushed into two holes.
type PinCheck struct {
	Gaps   int          `json:"gaps"` // between the two holes
	Chord  units.Length `json:"chord_mm"`
	Over   units.Length `json:"over_pins_mm"`
	Inside units.Length `json:"inside_pins_mm"`
}

// Checks are the readings over neighbours, and over the two holes farthest
// apart where that is another pair.
func (p Pattern) Checks(pin units.Length) []PinCheck {
	var checks []PinCheck
	for _, gaps := range []int{1, p.Count / 2} {
		if p.Count < 2 || (gaps == 1 && len(checks) == 1) {
			continue
		}
		chord := p.Across(gaps)
		checks = append(checks, PinCheck{Gaps: gaps, Chord: chord, Over: (chord + pin).Round(places), Inside: (chord - pin).Round(places)})
	}
	return checks
}
