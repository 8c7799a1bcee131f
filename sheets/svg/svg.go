package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strconv"

	"catchplate/sheets/draw"
)

// File writes a page as an SVG file that carries its own stylesheet.
func File(p draw.Page) []byte {
	var w writer
	w.text(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	w.page(p, true)
	return w.Bytes()
}

// Inline writes a page as an element for an HTML page that carries Style.
func Inline(p draw.Page) []byte {
	var w writer
	w.page(p, false)
	return w.Bytes()
}

type writer struct{ bytes.Buffer }

// num is a coordinate. It is the only place where coordinates become text: a hundredth of a millimetre is finer than any printer.
type num float64

func (n num) String() string {
	text := strconv.FormatFloat(float64(n), 'f', 2, 64)
	if text == "-0.00" {
		return "0.00"
	}
	return text
}

func (w *writer) text(s string) { w.WriteString(s) }

func (w *writer) printf(format string, args ...any) { fmt.Fprintf(w, format, args...) }

// escaped writes text that came from people. EscapeText never fails on a buffer, and puts a replacement for what XML forbids.
func (w *writer) escaped(s string) { _ = xml.EscapeText(w, []byte(s)) }

func (w *writer) page(p draw.Page, alone bool) {
	width, height := num(p.Width), num(p.Height)
	space := ""
	if alone {
		space = ` xmlns="http://www.w3.org/2000/svg"`
	}
	w.printf(`<svg%s class="sketch" width="%smm" height="%smm" viewBox="0 0 %s %s" role="img" aria-labelledby="%s-title %s-desc">`+"\n",
		space, width, height, width, height, id(p.Name), id(p.Name))
	w.printf(`<title id="%s-title">`, id(p.Name))
	w.escaped(p.Title)
	w.printf("</title>\n"+`<desc id="%s-desc">`, id(p.Name))
	w.escaped(p.Desc)
	w.text("</desc>\n")
	if alone {
		w.text("<style>\n" + Style + "</style>\n")
	}
	w.patterns(p)
	if alone {
		w.printf(`<path class="paper" d="M0 0H%sV%sH0Z"/>`+"\n", width, height)
	}
	for _, s := range p.Shapes {
		w.shape(p, s)
	}
	w.text("</svg>\n")
}

// id keeps what may stand in an id and a url(): letters, figures and hyphens.
func id(name string) string {
	out := []byte("fig-")
	for i := range len(name) {
		b := name[i]
		if b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' || b >= '0' && b <= '9' || b == '-' {
			out = append(out, b)
		} else {
			out = fmt.Appendf(out, "_%02x", b)
		}
	}
	return string(out)
}

func (w *writer) patterns(p draw.Page) {
	w.text("<defs>\n")
	for _, t := range patterns {
		w.printf(`<pattern id="%s-%s" patternUnits="userSpaceOnUse" width="%s" height="%s"%s>%s</pattern>`+"\n",
			id(p.Name), t.class, t.size, t.size, t.turn, t.tile)
	}
	w.text("</defs>\n")
}

// patterned reports whether a class is filled with a pattern; it then gets a white ground below.
func patterned(c draw.Class) bool {
	for _, t := range patterns {
		if t.class == c {
			return true
		}
	}
	return false
}

func (w *writer) shape(p draw.Page, s draw.Shape) {
	switch s := s.(type) {
	case draw.Path:
		d := data(s)
		if patterned(s.Class) {
			w.printf(`<path class="paper" d="%s"/>`+"\n", d)
			w.printf(`<path class="%s" style="fill:url(#%s-%s)" d="%s"/>`+"\n", s.Class, id(p.Name), s.Class, d)
			return
		}
		w.printf(`<path class="%s" d="%s"/>`+"\n", s.Class, d)
	case draw.Circle:
		circle := fmt.Sprintf(`cx="%s" cy="%s" r="%s"/>`+"\n", num(s.Centre.X), num(s.Centre.Y), num(s.Radius))
		if patterned(s.Class) {
			w.printf(`<circle class="paper" %s`, circle)
			w.printf(`<circle class="%s" style="fill:url(#%s-%s)" %s`, s.Class, id(p.Name), s.Class, circle)
			return
		}
		w.printf(`<circle class="%s" %s`, s.Class, circle)
	case draw.Text:
		weight := ""
		if s.Bold {
			weight = ` font-weight="bold"`
		}
		if s.Turned {
			weight += fmt.Sprintf(` transform="rotate(-90 %s %s)"`, num(s.At.X), num(s.At.Y))
		}
		w.printf(`<text x="%s" y="%s" font-size="%s" text-anchor="%s"%s>`, num(s.At.X), num(s.At.Y), num(s.Size), s.Anchor, weight)
		w.escaped(s.Text)
		w.text("</text>\n")
	}
}

// data is the outline of a path in SVG's own writing.
func data(p draw.Path) string {
	var b bytes.Buffer
	fmt.Fprintf(&b, "M%s %s", num(p.Start.X), num(p.Start.Y))
	for _, s := range p.Steps {
		if s.Radius == 0 {
			fmt.Fprintf(&b, "L%s %s", num(s.To.X), num(s.To.Y))
			continue
		}
		sweep := 0
		if s.Clockwise {
			sweep = 1
		}
		fmt.Fprintf(&b, "A%s %s 0 0 %d %s %s", num(s.Radius), num(s.Radius), sweep, num(s.To.X), num(s.To.Y))
	}
	if p.Closed {
		b.WriteString("Z")
	}
	return b.String()
}
