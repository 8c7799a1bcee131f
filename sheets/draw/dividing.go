package draw

import "math"

// Sizes of a dividing head, in millimetres on paper: how the work is held, not how large the head is.
const (
	headLong  = 16.0 // along the axis, behind its chuck
	headHalf  = 13.0
	headBelow = 4.0 // from the chuck to the table
	crankOut  = 9.0
	crankWide = 2.0
	jawWide   = 5.0
	faceSides = 48
)

func (sc *acrossScene) divided() bool { return sc.s.Dividing != nil }

// headAlong are a dividing head, its chuck, its jaws and its crank beside the axis, the head reaching so far to the side that is lower on the page.
func (sc *acrossScene) headAlong(below float64) []outline {
	from, to, r := sc.grip()
	back, away := from, -1.0
	if sc.s.FreeEnd == "left" {
		back, away = to, 1
	}
	chuck, head := back+away*bodyLong*0.6, back+away*(bodyLong*0.6+headLong)
	parts := []outline{
		rect(chuck, -headHalf, head, below),
		rect(back, -r-jawHigh-2, chuck, r+jawHigh+2),
		rect(from, -r-jawHigh*0.6, to, -r),
		rect(from, r, to, r+jawHigh*0.6),
	}
	if sc.s.Dividing.Ratio > 1 {
		parts = append(parts, rect(head, -crankWide/2, head+away*crankWide, crankOut), rect(head+away*crankWide, crankOut-crankWide, head+away*crankOut, crankOut))
	}
	return parts
}

// underHead is the table under a dividing head and the work that stands out of it.
func (sc *acrossScene) underHead(floor float64) outline {
	left, right := sc.left-footLong/4, sc.right+footLong/4
	from, to, _ := sc.grip()
	long := bodyLong*0.6 + headLong + crankOut + 2
	if sc.s.FreeEnd == "left" {
		right = max(right, to+long)
	} else {
		left = min(left, from-long)
	}
	return rect(left, floor, right, floor+lyingTable)
}

// chuckFace is the chuck behind the work as its end shows it, and the jaws.
func (sc *acrossScene) chuckFace() []outline {
	_, _, r := sc.grip()
	var face outline
	for i := range faceSides {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / faceSides)
		face = append(face, Point{(r + jawHigh + 2) * cos, (r + jawHigh + 2) * sin})
	}
	parts := []outline{face}
	for i := range sc.s.Grip.Jaws {
		sin, cos := math.Sincos(2*math.Pi*float64(i)/float64(sc.s.Grip.Jaws) - math.Pi/2)
		at := func(along, side float64) Point { return Point{along*cos - side*sin, along*sin + side*cos} }
		parts = append(parts, outline{at(r, -jawWide/2), at(r+jawHigh, -jawWide/2), at(r+jawHigh, jawWide/2), at(r, jawWide/2)})
	}
	return parts
}

// headTall is the height of a dividing head that stands upright, on paper.
const headTall = 16.0

// headUnder is a dividing head that stands upright under its chuck, its crank to the side; it gives where the table lies.
func (c *Canvas) headUnder(held Box, top float64, crank bool) float64 {
	inset := (held.Right - held.Left) / 6
	left, right := held.Left+inset, held.Right-inset
	c.Rect(Holder, Point{left, top}, Point{right, top + headTall})
	if crank {
		middle := top + headTall/2
		c.Rect(Holder, Point{right, middle - crankWide/2}, Point{right + crankOut/2, middle + crankWide/2})
		c.Rect(Holder, Point{right + crankOut/2, middle - crankWide/2}, Point{right + crankOut/2 + crankWide, middle + headTall/2 - 1})
	}
	return top + headTall
}
