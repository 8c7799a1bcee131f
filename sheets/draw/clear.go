package draw

import (
	"math"
	"sort"
)

// field is what stands on a figure already and what small labels keep clear of.
type field struct {
	boxes   []Box
	circles []Circle
	lines   [][2]Point
}

func (f *field) box(b Box)               { f.boxes = append(f.boxes, b) }
func (f *field) line(a, b Point)         { f.lines = append(f.lines, [2]Point{a, b}) }
func (f *field) ring(p Point, r float64) { f.circles = append(f.circles, Circle{Centre: p, Radius: r}) }

// path adds a path's straight steps, and its arcs by their chords in short pieces.
func (f *field) path(p Path) {
	at := p.Start
	for _, s := range p.Steps {
		if s.Radius == 0 {
			f.line(at, s.To)
		} else {
			a0, turn := math.Atan2(at.Y-s.Centre.Y, at.X-s.Centre.X), math.Atan2(s.To.Y-s.Centre.Y, s.To.X-s.Centre.X)
			turn = math.Mod(turn-a0+3*math.Pi, 2*math.Pi) - math.Pi
			from := at
			for i := 1; i <= arcPieces; i++ {
				a := a0 + turn*float64(i)/arcPieces
				to := Point{s.Centre.X + s.Radius*math.Cos(a), s.Centre.Y + s.Radius*math.Sin(a)}
				f.line(from, to)
				from = to
			}
		}
		at = s.To
	}
}

// arcPieces is how many chords stand for a quarter of a circle, for which only nearness counts.
const arcPieces = 12

// around are the lines and circles that come within far of a place.
func (f *field) around(p Point, far float64) *field {
	out := &field{}
	for _, l := range f.lines {
		if distance(p, l[0], l[1]) < far {
			out.lines = append(out.lines, l)
		}
	}
	for _, c := range f.circles {
		if math.Abs(math.Hypot(c.Centre.X-p.X, c.Centre.Y-p.Y)-c.Radius) < far {
			out.circles = append(out.circles, c)
		}
	}
	return out
}

// hits counts what a box would lie on; a text counts more than a line.
func (f *field) hits(b Box) int {
	n := 0
	for _, o := range f.boxes {
		if b.Overlaps(o) {
			n += textPrice
		}
	}
	for _, c := range f.circles {
		nearX, nearY := max(b.Left-c.Centre.X, 0, c.Centre.X-b.Right), max(b.Top-c.Centre.Y, 0, c.Centre.Y-b.Bottom)
		farX, farY := max(c.Centre.X-b.Left, b.Right-c.Centre.X), max(c.Centre.Y-b.Top, b.Bottom-c.Centre.Y)
		if math.Hypot(nearX, nearY) < c.Radius && math.Hypot(farX, farY) > c.Radius {
			n++
		}
	}
	for _, l := range f.lines {
		if crosses(l[0], l[1], b) {
			n++
		}
	}
	return n
}

// overLine is how many steps farther out a label goes rather than lie on a line.
const overLine = 4

// textPrice makes one text under a label worse than this many lines under it.
const textPrice = 100

// crosses reports whether a straight line passes through a box: what is left of it after clipping at the four sides.
func crosses(a, b Point, box Box) bool {
	from, to := 0.0, 1.0
	for _, side := range [4][2]float64{{a.X - b.X, a.X - box.Left}, {b.X - a.X, box.Right - a.X}, {a.Y - b.Y, a.Y - box.Top}, {b.Y - a.Y, box.Bottom - a.Y}} {
		p, q := side[0], side[1]
		switch {
		case p == 0 && q < 0:
			return false
		case p < 0:
			from = max(from, q/p)
		case p > 0:
			to = min(to, q/p)
		}
	}
	return from < to
}

// labelWays are the directions in which a label near a place is tried, and labelSteps how much farther out after each round.
const (
	labelWays  = 16
	labelSteps = 6
	mostSteps  = 80 // where texts crowd, a label goes out this far to find room
	labelStep  = 1.8
	labelPad   = 0.4
)

// near writes a small label beside a place, r off it or a little farther, first in the direction of first, where it lies on the least of what is there.
func (c *Canvas) near(f *field, p Point, r float64, first Point, label Text) {
	start := math.Atan2(first.Y, first.X)
	w, h := Width(label.Text, label.Size, label.Bold), (ascent+descent)*label.Size
	var best Text
	least := -1
	texts := field{boxes: append(c.textBoxes(), f.boxes...)}
	about := f.around(p, r+labelSteps*labelStep+w+h)
	for out := 0; out < labelSteps || least >= overLine*textPrice && out < mostSteps; out++ {
		for i := range labelWays {
			side := float64((i+1)/2) * []float64{1, -1}[i%2]
			a := start + side*2*math.Pi/labelWays
			off := r + float64(out)*labelStep
			middle := Point{p.X + math.Cos(a)*(off+w/2), p.Y + math.Sin(a)*(off+h/2)}
			t := label
			t.Anchor, t.At = AtMiddle, Point{middle.X, middle.Y + h/2 - descent*label.Size}
			b := t.Box()
			b = Box{b.Left - labelPad, b.Top - labelPad, b.Right + labelPad, b.Bottom + labelPad}
			n := overLine*texts.hits(b) + out
			if out < labelSteps {
				n += overLine * about.hits(b)
			}
			if least < 0 || n < least {
				best, least = t, n
			}
		}
	}
	f.box(best.Box())
	c.Text(best)
}

// sideLabel is a label beside the views with the place that it belongs to.
type sideLabel struct {
	foot Point
	text string
}

// leftLabels writes labels below one another left of left, each with a line to its place; it gives their rooms.
func (c *Canvas) leftLabels(labels []sideLabel, left float64) []Box {
	return c.sideLabels(labels, left, -1)
}

// nearLabels writes labels left of left or right of right, whichever is nearer to the place of each.
func (c *Canvas) nearLabels(labels []sideLabel, left, right float64) []Box {
	var onLeft, onRight []sideLabel
	for _, l := range labels {
		if l.foot.X-left <= right-l.foot.X {
			onLeft = append(onLeft, l)
		} else {
			onRight = append(onRight, l)
		}
	}
	return append(c.sideLabels(onLeft, left, -1), c.sideLabels(onRight, right, 1)...)
}

func (c *Canvas) sideLabels(labels []sideLabel, edge, away float64) []Box {
	sort.SliceStable(labels, func(i, j int) bool { return labels[i].foot.Y < labels[j].foot.Y })
	anchor := AtEnd
	if away > 0 {
		anchor = AtStart
	}
	var boxes []Box
	row := math.Inf(-1)
	for _, l := range labels {
		row = max(l.foot.Y, row+lineStep)
		c.Poly(Thin, false, l.foot, Point{edge + away, l.foot.Y}, Point{edge + away*4, row})
		t := Text{At: Point{edge + away*5, row + noteSize/3}, Anchor: anchor, Size: textSize, Text: l.text}
		c.Text(t)
		boxes = append(boxes, t.Box())
	}
	return boxes
}

// textBoxes are the rooms of all texts written so far.
func (c *Canvas) textBoxes() []Box {
	var out []Box
	for _, s := range c.shapes {
		if t, ok := s.(Text); ok {
			out = append(out, t.Box())
		}
	}
	return out
}
