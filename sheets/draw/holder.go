package draw

import (
	"strings"

	"catchplate/planner/plan"
)

// Sizes of the symbols for holdings, in millimetres on paper: they show how the work is held, not how large the chuck is.
const (
	bodyLong   = 14.0
	jawHigh    = 12.0
	insideJaw  = 7.0
	colletHigh = 8.0
	coneLong   = 10.0
	coneHalf   = 5.8 // coneLong * tan(30 degrees)
	coneInside = 2.5
	barrelLong = 8.0
)

// holderBehind draws what lies behind the work or around it: it is drawn first.
func (c *Canvas) holderBehind(sc *scene) {
	switch {
	case sc.setup.Grip.Kind == "jaws" && sc.setup.Grip.Inside:
		c.Rect(Holder, Point{sc.xHead - bodyLong - 2, -sc.reach - 3}, Point{sc.xHead - 2, sc.reach + 3})
	case sc.setup.Grip.Kind == "jaws":
		high := sc.gripR + jawHigh + 4
		c.Rect(Holder, Point{sc.gripHead - bodyLong, -high}, Point{sc.gripHead, high})
	}
}

// holderBefore draws what lies in front of the work or in its bore: it is drawn last.
func (c *Canvas) holderBefore(sc *scene) {
	for _, side := range []half{upper, lower} {
		switch sc.setup.Grip.Kind {
		case "jaws":
			c.jaw(sc, side)
		case "collet":
			c.collet(sc, side)
		}
	}
	switch sc.setup.Grip.Kind {
	case "mandrel", "split_mandrel", "glued_bore":
		c.mandrel(sc)
	case "glued_face":
		c.gluedFace(sc)
	case "centres":
		c.cone(sc.xHead, -1)
		c.cone(sc.xFree, 1)
	}
	if sc.setup.Tailstock && sc.setup.Grip.Kind != "centres" {
		c.cone(sc.xFree, 1)
	}
	if sc.setup.Grip.Packing != "" {
		c.film(sc)
	}
}

// sided turns a height above the axis to one side of it.
func sided(side half, x, y float64) Point { return Point{x, -y * float64(side)} }

func (c *Canvas) jaw(sc *scene, side half) {
	head, free, r := sc.gripHead, sc.gripFree, sc.gripOn(side)
	if sc.setup.Grip.Inside {
		c.Rect(Holder, sided(side, sc.xHead-2, r), sided(side, free, max(r-insideJaw, r/3)))
		return
	}
	step := head + (free-head)*0.55
	c.Poly(Holder, true, sided(side, head, r), sided(side, free, r), sided(side, free, r+jawHigh*0.6), sided(side, step, r+jawHigh*0.6),
		sided(side, step, r+jawHigh), sided(side, head, r+jawHigh))
}

func (c *Canvas) collet(sc *scene, side half) {
	head, free, r := sc.gripHead, sc.gripFree, sc.gripR
	c.Poly(Holder, true, sided(side, head, r), sided(side, free, r), sided(side, free, r+colletHigh), sided(side, free-3, r+colletHigh),
		sided(side, head, r+colletHigh*0.4))
	c.Poly(Holder, true, sided(side, head-4, r+colletHigh*0.4), sided(side, head, r+colletHigh*0.4), sided(side, free-3, r+colletHigh),
		sided(side, free-3, r+colletHigh+5), sided(side, head-4, r+colletHigh+5))
}

// mandrel fills the bore from the headstock; a film is drawn where it is glued.
func (c *Canvas) mandrel(sc *scene) {
	r := sc.gripR
	shoulder := min(max(r+4, 1.4*r), max(sc.reach, r+2))
	c.Rect(Holder, Point{sc.xHead - bodyLong, -shoulder}, Point{sc.xHead, shoulder})
	c.Rect(Holder, Point{sc.xHead, -r}, Point{sc.gripFree, r})
	if sc.setup.HoldingKind == "expanding_mandrel" {
		c.Line(Thin, Point{sc.xHead, 0}, Point{sc.gripFree, 0})
		c.Line(Thin, Point{sc.gripFree - 4, r}, Point{sc.gripFree, r / 2})
		c.Line(Thin, Point{sc.gripFree - 4, -r}, Point{sc.gripFree, -r / 2})
	}
	if sc.setup.HoldingKind == "plain_mandrel" {
		c.Rect(Holder, Point{sc.gripFree, -r}, Point{sc.gripFree + 5, r})
		c.cone(sc.xHead-bodyLong, -1)
		c.cone(sc.gripFree+5, 1)
	}
	if sc.setup.Grip.Kind == "split_mandrel" {
		c.Line(Thin, Point{sc.xHead, 0}, Point{sc.gripFree, 0})
		c.Poly(Holder, true, Point{sc.gripFree, -r / 2}, Point{sc.gripFree - r/2, -r / 4}, Point{sc.gripFree - r/2, r / 4}, Point{sc.gripFree, r / 2})
	}
	if rim := sc.setup.Grip.WasherMM; rim > 0 {
		c.Rect(Holder, Point{sc.xFree, -rim}, Point{sc.xFree + washerThick, rim})
		c.Rect(Holder, Point{sc.xFree + washerThick, -0.6 * r}, Point{sc.xFree + washerThick + 0.6*r, 0.6 * r})
	}
	if sc.setup.Grip.Kind == "glued_bore" {
		c.film(sc)
	}
}

// washerThick is how thick the washer in front of a mandrel is drawn, in mm.
const washerThick = 2

func (c *Canvas) gluedFace(sc *scene) {
	r := sc.gripR
	c.Rect(Holder, Point{sc.xHead - 7, -r}, Point{sc.xHead, r})
	c.Rect(Holder, Point{sc.xHead - 7 - bodyLong, -r * 0.6}, Point{sc.xHead - 7, r * 0.6})
	c.Line(Glue, Point{sc.xHead, -r}, Point{sc.xHead, r})
}

// film is adhesive in a bore or soft packing on the outside.
func (c *Canvas) film(sc *scene) {
	for _, side := range []half{upper, lower} {
		c.Line(Glue, sided(side, sc.gripHead, sc.gripOn(side)), sided(side, sc.gripFree, sc.gripOn(side)))
	}
}

// cone is a lathe centre with its point in an end of the work; away is the direction of its barrel.
func (c *Canvas) cone(x, away float64) {
	point, base := x-away*coneInside, x+away*(coneLong-coneInside)
	c.Poly(Holder, true, Point{point, 0}, Point{base, -coneHalf}, Point{base + away*barrelLong, -coneHalf},
		Point{base + away*barrelLong, coneHalf}, Point{base, coneHalf})
	c.Line(Thin, Point{base, -coneHalf}, Point{base, coneHalf})
}

// gripWords say what is gripped.
func gripWords(s *plan.Setup) string {
	what := surfaceWords(s.Grip.Surface)
	switch {
	case s.Grip.Kind == "centres":
		return "between centres"
	case s.Grip.Inside || s.Grip.Kind == "glued_bore":
		return "in " + what
	}
	return "on " + what
}

func surfaceWords(surface string) string {
	switch surface {
	case "stock":
		return "the stock"
	case "face.left":
		return "the left end face"
	case "face.right":
		return "the right end face"
	}
	return surface
}

// lowerMarks are the labels below: what holds the work, and where saddle and tailstock read nought.
func (sc *scene) lowerMarks() []mark {
	text := Plain(strings.TrimSpace(sc.setup.Holding + " " + gripWords(sc.setup)))
	if sc.setup.Grip.Packing != "" {
		text += ", with " + sc.setup.Grip.Packing
	}
	x, y := sc.holderFoot()
	marks := []mark{{x: x, start: y, lines: Wrap(text, labelMost, textSize, false)}}
	if sc.setup.Tailstock {
		x := sc.xFree + coneLong
		marks = append(marks, mark{x: x, start: coneHalf, lines: []string{"tailstock centre"}})
	}
	return append(marks, sc.zeroMarks()...)
}

// zeroMarks are the places where saddle and tailstock read nought, one label for each place.
func (sc *scene) zeroMarks() []mark {
	var marks []mark
	at := map[float64]int{}
	for _, z := range zerosOf(sc.setup, "saddle", "tailstock") {
		text := z.dial + " 0 (" + z.numbers(sc.setup) + ")"
		lines := Wrap(text, labelMost, textSize, false)
		if i, ok := at[z.referenceMM]; ok {
			marks[i].lines = append(marks[i].lines, lines...)
			continue
		}
		at[z.referenceMM] = len(marks)
		foot := Point{sc.v.x(z.referenceMM), radiusAt(sc.before.Outer, z.referenceMM)*sc.v.scale + 0.3}
		marks = append(marks, mark{x: foot.X, start: foot.Y + arrowLong, foot: &foot, arrow: true, lines: lines})
	}
	return marks
}

// holderFoot is the place at the lower edge of the holding's symbol where its label begins.
func (sc *scene) holderFoot() (x, y float64) {
	switch sc.setup.Grip.Kind {
	case "jaws":
		if sc.setup.Grip.Inside {
			return sc.xHead - bodyLong/2 - 2, sc.reach + 3
		}
		return sc.gripHead + min(3, (sc.gripFree-sc.gripHead)*0.3), sc.gripR + jawHigh
	case "collet":
		return sc.gripHead, sc.gripR + colletHigh + 5
	case "glued_face":
		return sc.xHead - 3, sc.gripR
	case "centres":
		return sc.xHead - coneLong, coneHalf
	}
	return sc.xHead - bodyLong/2, min(max(sc.gripR+4, 1.4*sc.gripR), max(sc.reach, sc.gripR+2))
}
