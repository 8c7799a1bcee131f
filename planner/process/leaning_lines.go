package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
)

// Lean is how work is set over.
type Lean struct {
	Deg      float64      // about the table's x
	AlongDeg float64      // direction of the part that then lies along it, from +X
	From     partspec.End // that looks at the spindle
	ReachMM  float64      // from where the work is found to the farthest that a hole goes
	AxisMM   float64      // of the pipe, along the part's axis, counted towards the spindle
}

// lined is the holes of a pattern that lean alike.
type lined struct {
	spotted
	lean    Lean
	numbers []int // as the drawing counts them
	seat    saddle
}

// lines parts a pattern by tilt and by the side that it leans to, in the order of its first holes.
func (c *Context) lines(s spotted) []lined {
	seat := c.saddleOf(c.Part.Feature(s.SquareTo).(*partspec.Seat))
	var list []lined
	for i, at := range s.Places {
		lean := Lean{AlongDeg: float64(seat.Angle), From: seat.On}
		_, v := lean.Level(float64(at.X.Value), float64(at.Y.Value))
		if v > sizeNoise { // the side that is raised is the other one
			lean.AlongDeg, v = math.Mod(lean.AlongDeg+180, 360), -v
		}
		lean.Deg = math.Round(math.Asin(math.Max(0, -v)/seat.radius)*1e6*180/math.Pi) / 1e6
		lean.ReachMM = c.endRadius(seat.On) + seat.depth + s.thick()
		lean.AxisMM = lean.High(seat.axisZ)
		k := 0
		for k < len(list) && list[k].lean != lean {
			k++
		}
		if k == len(list) {
			like := *s.Holes
			like.Places, like.Circle = nil, nil
			l := lined{spotted: s, lean: lean, seat: seat}
			l.Holes, l.columns = &like, nil
			list = append(list, l)
		}
		l := &list[k]
		l.Places, l.columns, l.numbers = append(l.Places, at), append(l.columns, s.columns[i]), append(l.numbers, i+1)
	}
	return list
}

// Level is a place of the end as it lies on the plate while that is shut: along x, and square to it.
func (l Lean) Level(x, y float64) (u, v float64) {
	sin, cos := math.Sincos(l.AlongDeg * math.Pi / 180)
	u, v = x*cos+y*sin, y*cos-x*sin
	if l.From == partspec.Left {
		v = -v
	}
	return u, v
}

// High is a place along the part's axis, counted towards the spindle.
func (l Lean) High(z float64) float64 { return -into(l.From) * z }

// axis is where the pipe's axis runs, over the table and above it, when the work is set over by so many degrees.
func (l lined) axis(deg float64) (y, z float64) {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return -l.lean.AxisMM * sin, l.lean.AxisMM * cos
}

// place is where a hole comes out of the hollow then.
func (l lined) place(i int, deg float64) (x, y float64) {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	u, v := l.lean.Level(float64(l.Places[i].X.Value), float64(l.Places[i].Y.Value))
	w := l.lean.AxisMM - math.Sqrt(l.seat.radius*l.seat.radius-v*v)
	return tidyMM(u), tidyMM(v*cos - w*sin)
}

// through is how far below the lowest line of the hollow a hole of a radius is wholly out on the other side, and the place along the part's axis that a tool's end
// then reaches which goes so much further.
func (l lined) through(radius, further, deg float64) (deep, z float64) {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	y, axis := l.axis(deg)
	top, low := axis-l.seat.radius, math.Inf(1)
	for _, col := range l.columns {
		low = math.Min(low, (l.lean.High(col.entry(l.lean.From.Other()))+(y-radius)*sin)/cos)
	}
	tip := low - further
	return top - low, -into(l.lean.From) * (-y*sin + tip*cos - radius*sin)
}

// inWords names the holes of a line.
func (l lined) inWords() string {
	text := "hole"
	if len(l.numbers) > 1 {
		text = "holes"
	}
	for i, n := range l.numbers {
		switch {
		case i == 0:
			text += fmt.Sprintf(" %d", n)
		case i == len(l.numbers)-1:
			text += fmt.Sprintf(" and %d", n)
		default:
			text += fmt.Sprintf(", %d", n)
		}
	}
	return text
}
