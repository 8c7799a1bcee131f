package drawing

import (
	"catchplate/partspec"
	"catchplate/planner/plan"
)

// faceSeats are the seats across the faces of a flat part.
func faceSeats(p *partspec.Part) []plan.FlatSeat {
	var out []plan.FlatSeat
	for _, f := range p.Features {
		if s, ok := f.(*partspec.Seat); ok {
			out = append(out, plan.FlatSeat{Feature: s.Name, On: faceName(s.On), AlongY: s.AlongY(), MiddleMM: mm(s.Middle.Value), RadiusMM: mm(s.Radius.Value), AcrossMM: mm(s.Across), DepthMM: mm(s.Depth)})
		}
	}
	return out
}

func faceName(e partspec.End) string {
	if e == partspec.Left {
		return "back"
	}
	return "front"
}

// faceSeatDims say all of a seat across a face, and where its pipe lies.
func faceSeatDims(p *partspec.Part, s *partspec.Seat) []plan.Dim {
	x0, y0, x1, y1 := extentOf(p.Outline)
	zeroX, zeroY := origin(p)
	text, m := "seat R"+sizeText(p, s.Radius)+" in the "+faceName(s.On)+", "+figure(p, s.Depth)+" deep at the crown, pipe along ", mm(s.Middle.Value)
	if s.AlongY() {
		y := y0 + (y1-y0)*seatMark
		return []plan.Dim{placed(m, y, s.Name, text+"Y"), across(zeroX, y, m, y, s.Name, fromText(p, s.Middle, zeroX))}
	}
	x := x0 + (x1-x0)*seatMark
	return []plan.Dim{placed(x, m, s.Name, text+"X"), up(x, zeroY, x, m, s.Name, fromText(p, s.Middle, zeroY))}
}

// seatMark is where along its pipe a seat is pointed at, as a part of its length: away from the holes at its corners and its middle.
const seatMark = 0.3

// extentOf is the rectangle around the corners of an outline.
func extentOf(o *partspec.Outline) (x0, y0, x1, y1 float64) {
	e := o.Edges[0]
	x0, y0, x1, y1 = mm(e.X0), mm(e.Y0), mm(e.X0), mm(e.Y0)
	for _, e := range o.Edges {
		x0, y0, x1, y1 = min(x0, mm(e.X1)), min(y0, mm(e.Y1)), max(x1, mm(e.X1)), max(y1, mm(e.Y1))
	}
	return x0, y0, x1, y1
}
