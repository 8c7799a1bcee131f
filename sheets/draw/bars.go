package draw

import (
	"fmt"
	"strings"
)

// Bar is a figure as a share of what may pass: 1 is all of it.
type Bar struct {
	Label string
	Share float64
	Band  float64 // the true figure lies within so much of Share either way
	Text  string  // the figures themselves
}

// Sizes of the figure of bars, in millimetres on paper.
const (
	barStart  = 58.0 // where labels end
	barUnit   = 28.0 // long is what may pass
	barApart  = 9.0
	barTall   = 4.5
	mostShare = 2.0 // longer bars are broken off there
	bandTall  = 1.2
)

// Bars draws figures side by side against the line of what may pass. Each carries its band as a whisker; one too long for the page ends in an arrow.
func Bars(name, title string, bars []Bar) Page {
	c := NewCanvas()
	var told []string
	for i, b := range bars {
		y := float64(i) * barApart
		c.bar(y, b)
		told = append(told, fmt.Sprintf("%s: %s, %.0f %% of what may pass", b.Label, b.Text, b.Share*100))
	}
	bottom := float64(len(bars)) * barApart
	c.Line(Outline, Point{barStart, -barTall}, Point{barStart, bottom - barTall/2})
	c.Line(Centre, Point{barStart + barUnit, -barTall}, Point{barStart + barUnit, bottom - barTall/2})
	c.Text(Text{At: Point{barStart + barUnit, -barTall - 1.5}, Anchor: AtMiddle, Size: noteSize, Text: "what may pass"})
	return c.Page(name, title, strings.Join(told, "; ")+".")
}

func (c *Canvas) bar(y float64, b Bar) {
	c.Text(Text{At: Point{barStart - 2, y + barTall - 1}, Anchor: AtEnd, Size: noteSize, Text: b.Label})
	along := func(share float64) float64 { return barStart + barUnit*min(max(share, 0), mostShare) }
	middle := y + barTall/2
	c.Rect(Stays, Point{barStart, y}, Point{along(b.Share), y + barTall})
	c.Rect(Thin, Point{barStart, y}, Point{along(b.Share), y + barTall})
	low, high := along(b.Share*(1-b.Band)), along(b.Share*(1+b.Band))
	if low < high {
		c.Line(CutWay, Point{low, middle}, Point{high, middle})
		c.Line(CutWay, Point{low, middle - bandTall}, Point{low, middle + bandTall})
	}
	if b.Share*(1+b.Band) > mostShare {
		c.Arrow(Point{high + arrowLong, middle}, Point{high, middle})
	} else {
		c.Line(CutWay, Point{high, middle - bandTall}, Point{high, middle + bandTall})
	}
	c.Text(Text{At: Point{barStart + barUnit*mostShare + arrowLong + 2, y + barTall - 1}, Anchor: AtStart, Size: noteSize, Text: b.Text})
}
