// Package dividing counts a circle out on a dividing head: whole turns of its
// crank, and holes of a plate's circle beyond them.
//
// In flow: the head's ratio, its circles of holes, and an angle or a number of
// divisions. Out flow: counts of holes from one nought, with what each is off
// by in degrees.
//
// What holds after: a count of so many holes of a circle with p holes turns the
// work by 360 holes / (ratio p) degrees; every count is the nearest one to its
// place from the nought, so that errors never add up round the circle.
package dividing

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// The most that is believed of a head: turns of the crank for one of the work,
// holes on a circle, and divisions.
const (
	mostRatio     = 400
	mostHoles     = 500
	mostDivisions = 2000
)

// exactHoles is the part of a hole within which a count is exact: the noise of
// angles that were worked out as fractions of 360.
const exactHoles = 1e-6

// Head is a dividing head.
type Head struct {
	Ratio   int   // turns of the crank for one of the work; 1 = a direct plate on the spindle
	Circles []int // holes of each circle that is owned
}

// Check says what is wrong with a head.
func (h Head) Check() error {
	if h.Ratio < 1 || h.Ratio > mostRatio {
		return fmt.Errorf("a dividing head's crank makes 1 to %d turns for one of the work, not %d: 40, 60 and 90 are usual", mostRatio, h.Ratio)
	}
	if len(h.Circles) == 0 {
		return errors.New("a dividing head needs the circles of holes on its plates, like 15, 16, 17, 18, 19, 20")
	}
	for _, p := range h.Circles {
		if p < 2 || p > mostHoles {
			return fmt.Errorf("a circle of a dividing plate has 2 to %d holes, not %d", mostHoles, p)
		}
	}
	return nil
}

// Step is one division: whole turns, and holes of a circle beyond them.
type Step struct {
	Circle int `json:"circle"` // holes on it
	Turns  int `json:"turns"`
	Holes  int `json:"holes"`
}

// Exact lists, for every circle that divides the work exactly into n, the step
// from one division to the next: ratio/n turns. The circles come in ascending
// order; none means that no plate owned does it.
func (h Head) Exact(n int) ([]Step, error) {
	if err := h.divides(n); err != nil {
		return nil, err
	}
	steps := []Step{}
	for _, p := range h.ascending() {
		if all := h.Ratio * p; all%n == 0 {
			steps = append(steps, Step{Circle: p, Turns: all / n / p, Holes: all / n % p})
		}
	}
	return steps, nil
}

func (h Head) divides(n int) error {
	if n < 1 || n > mostDivisions {
		return fmt.Errorf("a circle is divided into 1 to %d, not %d", mostDivisions, n)
	}
	return h.Check()
}

func (h Head) ascending() []int {
	circles := slices.Clone(h.Circles)
	slices.Sort(circles)
	return slices.Compact(circles)
}

// Count is the number of holes of a circle nearest to an angle from the nought,
// 0 to 360, and by how many degrees it comes out too far; 0 where it is exact.
func (h Head) Count(circle int, deg float64) (holes int64, offDeg float64) {
	whole := float64(h.Ratio * circle)
	turn := math.Mod(deg, 360)
	if turn < 0 {
		turn += 360
	}
	want := turn / 360 * whole
	got := math.Round(want)
	if math.Abs(got-want) > exactHoles {
		offDeg = (got - want) * 360 / whole
	}
	return int64(got) % int64(whole), offDeg
}

// Best is the circle on which the worst of some angles comes out least off, and
// by how many degrees; of like ones the smallest.
func (h Head) Best(angles []float64) (circle int, worstDeg float64) {
	for _, p := range h.ascending() {
		worst := 0.0
		for _, a := range angles {
			_, off := h.Count(p, a)
			worst = math.Max(worst, math.Abs(off))
		}
		if circle == 0 || worst < worstDeg {
			circle, worstDeg = p, worst
		}
	}
	return circle, worstDeg
}

// Divisions are the angles of n places, evenly round from 0.
func Divisions(n int) []float64 {
	angles := make([]float64, n)
	for i := range angles {
		angles[i] = 360 * float64(i) / float64(n)
	}
	return angles
}
