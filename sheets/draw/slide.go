package draw

import (
	"catchplate/planner/plan"
)

// onSlide reports whether a lathe mills the work on a vertical slide.
func onSlide(s *plan.Setup) bool { return s.MachineKind == plan.OnSlide }

// onTable reports whether the work stands under a spindle, and dials move it.
func onTable(s *plan.Setup) bool {
	return s.MachineKind == "mill" || s.MachineKind == "drill" || onSlide(s)
}

// DialName is the name that a dial of a setup bears: those of a lathe that mills are read as x, y and z.
func DialName(s *plan.Setup, dial string) string {
	if !onSlide(s) {
		return dial
	}
	switch dial {
	case "x":
		return "cross"
	case "y":
		return "slide"
	case "z":
		return "saddle"
	}
	return dial
}

// countWords say which way the dials of a table count in a view from the spindle.
func countWords(s *plan.Setup, view string) string {
	if onSlide(s) {
		return "Seen from the spindle: the cross slide's dial counts to the right, the vertical slide's up the page" + view + "."
	}
	return "The x dial counts to the right, the y dial up the page" + view + "."
}

// Sizes of the small view of a lathe that mills, in millimetres on paper.
const (
	nearLong   = 74.0 // from the headstock's left side to the slide's back
	headWide   = 16.0
	noseLong   = 10.0
	noseHalf   = 4.5
	cutterLong = 12.0
	cutterHalf = 1.6
	partThick  = 4.0
	partHalf   = 7.0
	viceThick  = 8.0
	viceHalf   = 9.5
	slideThick = 6.0
	slideAbove = 15.0
	crossBelow = 13.0 // of the cross slide's top under the axis
	crossThick = 4.0
	bedBelow   = 7.0
	screwOver  = 5.0
	knobHalf   = 4.0
	nearOff    = 7.0
)

// slideSide draws below all views how the lathe stands while it mills, seen from its front: headstock, cutter in its collet, the work in the slide's vice, slide, cross slide.
func (c *Canvas) slideSide(s *plan.Setup) {
	if !onSlide(s) {
		return
	}
	box := c.Bounds()
	left, axis := (box.Left+box.Right)/2-nearLong/2, box.Bottom+nearOff+slideAbove+screwOver+knobHalf
	at := func(x, y float64) Point { return Point{left + x, axis + y} }
	back := nearLong // of the slide
	face := back - slideThick - viceThick - partThick
	c.Rect(Holder, at(-headWide, -slideAbove), at(headWide-6, crossBelow+crossThick+bedBelow))
	c.Rect(Holder, at(headWide-6, -noseHalf), at(headWide-6+noseLong, noseHalf))
	tip := headWide - 6 + noseLong + cutterLong
	c.Rect(Paper, at(tip-cutterLong, -cutterHalf), at(tip, cutterHalf))
	c.Rect(Outline, at(tip-cutterLong, -cutterHalf), at(tip, cutterHalf))
	c.Rect(Stays, at(face, -partHalf), at(face+partThick, partHalf))
	c.Rect(Outline, at(face, -partHalf), at(face+partThick, partHalf))
	c.Rect(Holder, at(face+partThick, -viceHalf), at(back-slideThick, viceHalf))
	for _, jaw := range []float64{-1, 1} {
		c.Rect(Holder, at(face+1, jaw*partHalf), at(face+partThick+1, jaw*viceHalf))
	}
	c.Rect(Holder, at(back-slideThick, -slideAbove), at(back, crossBelow))
	c.Line(Outline, at(back-slideThick/2, -slideAbove), at(back-slideThick/2, -slideAbove-screwOver))
	c.Line(Outline, at(back-slideThick/2-knobHalf, -slideAbove-screwOver), at(back-slideThick/2+knobHalf, -slideAbove-screwOver))
	c.Rect(Holder, at(face-4, crossBelow), at(back+8, crossBelow+crossThick))
	c.Rect(Holder, at(headWide-6, crossBelow+crossThick), at(back+16, crossBelow+crossThick+bedBelow))
	c.Line(Centre, at(-headWide-3, 0), at(back+4, 0))
	c.nearLabel(at(headWide-6+noseLong/2, -noseHalf), at(headWide+4, -slideAbove), "cutter in a collet", AtMiddle)
	c.nearLabel(at(back, -slideAbove+4), at(back+6, -slideAbove+2), "vertical slide", AtStart)
	c.nearLabel(at(back+4, crossBelow+crossThick/2), at(back+10, crossBelow-4), "cross slide", AtStart)
	c.Text(Text{At: at(-headWide+2, -slideAbove+5), Anchor: AtStart, Size: noteSize, Text: "headstock"})
}

// nearLabel writes a word beside the end of a leader.
func (c *Canvas) nearLabel(from, to Point, text string, anchor Anchor) {
	c.Line(Thin, from, to)
	p := Point{to.X + 1, to.Y + ascent*noteSize/2}
	if anchor == AtMiddle {
		p = Point{to.X, to.Y - 1}
	}
	c.Text(Text{At: p, Anchor: anchor, Size: noteSize, Text: text})
}
