package drawing

import (
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// ofFlat makes the drawing of a flat part.
func ofFlat(p *partspec.Part) plan.Drawing {
	d := plan.Drawing{
		Flat:  &plan.Flat{Outline: segments(p.Outline), FrontZ: mm(p.Length.Value), Holes: holesOf(p), Slots: slotsOf(p), Seats: faceSeats(p)},
		Datum: p.Outline.Datum,
		Rings: rings(p),
		Notes: notes(p),
	}
	d.Dims = outlineDims(p)
	for _, f := range p.Features {
		for _, dim := range dims(p, f) {
			d.Dims = addOnce(d.Dims, dim)
		}
	}
	thick := sizeText(p, p.Length)
	if p.Stock.FacesAsSupplied {
		thick = drawn(p, p.Length.Dimension) + ", as supplied"
	}
	d.Dims = append(d.Dims, length(0, mm(p.Length.Value), "part", thick))
	return d
}

// addOnce leaves out a dimension that says again what another one says of the same stretch; one that says it with limits takes the other's place.
func addOnce(all []plan.Dim, d plan.Dim) []plan.Dim {
	for i, o := range all {
		across := d.Kind == plan.DimAcross && o.X0 == d.X0 && o.X1 == d.X1
		up := d.Kind == plan.DimUp && o.Y0 == d.Y0 && o.Y1 == d.Y1
		if o.Kind != d.Kind || !across && !up {
			continue
		}
		if o.Text == d.Text || strings.HasPrefix(o.Text, d.Text+" ") {
			return all
		}
		if strings.HasPrefix(d.Text, o.Text+" ") {
			all[i] = d
			return all
		}
	}
	return append(all, d)
}

// segments is an outline as a plan tells it.
func segments(o *partspec.Outline) []plan.OutlineSegment {
	var out []plan.OutlineSegment
	for _, e := range o.Edges {
		s := plan.OutlineSegment{Name: e.Name, X0: mm(e.X0), Y0: mm(e.Y0), X1: mm(e.X1), Y1: mm(e.Y1)}
		if e.Arc {
			s.RadiusMM, s.CentreX, s.CentreY, s.Hollow = mm(e.Radius), mm(e.CX), mm(e.CY), e.Hollow
		}
		out = append(out, s)
	}
	return out
}

func across(x0, y0, x1, y1 float64, feature, text string) plan.Dim {
	return plan.Dim{Kind: plan.DimAcross, X0: x0, Y0: y0, X1: x1, Y1: y1, Feature: feature, Text: text}
}

func up(x0, y0, x1, y1 float64, feature, text string) plan.Dim {
	return plan.Dim{Kind: plan.DimUp, X0: x0, Y0: y0, X1: x1, Y1: y1, Feature: feature, Text: text}
}

func placed(x, y float64, feature, text string) plan.Dim {
	return plan.Dim{Kind: plan.DimPlace, X0: x, Y0: y, X1: x, Y1: y, Feature: feature, Text: text}
}

func pointedAt(at partspec.Point, feature, text string) plan.Dim {
	return placed(mm(at.X.Value), mm(at.Y.Value), feature, text)
}

// outlineDims are the sizes of the outline.
func outlineDims(p *partspec.Part) []plan.Dim {
	o := p.Outline
	w, h := mm(o.Width.Value), mm(o.Height.Value)
	switch o.Kind {
	case "disc":
		r := w / 2
		return []plan.Dim{placed(-r*math.Sqrt2/2, r*math.Sqrt2/2, "rim", diameterText(p, o.Width))}
	case "rectangle":
		out := []plan.Dim{across(0, 0, w, 0, "right", sizeText(p, o.Width)), up(0, 0, 0, h, "top", sizeText(p, o.Height))}
		if c := mm(o.Radius.Value); c > 0 {
			near := c * (1 - math.Sqrt2/2)
			out = append(out, placed(w-near, h-near, "top_right", "4 × R"+sizeText(p, o.Radius)))
		}
		return out
	case "round_topped":
		return roundToppedDims(p)
	}
	return chainDims(p)
}

func roundToppedDims(p *partspec.Part) []plan.Dim {
	o := p.Outline
	w, h, r := mm(o.Width.Value), mm(o.Height.Value), mm(o.Radius.Value)
	x := 0.0
	if 2*r > w {
		x = w / 2
	}
	return []plan.Dim{across(0, 0, w, 0, "right", sizeText(p, o.Width)), up(0, 0, x, h, "top", sizeText(p, o.Height)),
		placed(w/2-r*math.Sqrt2/2, h+r*math.Sqrt2/2, "top", "R"+sizeText(p, o.Radius))}
}

// mostCorners is how many corners of a chain are dimensioned each way in the picture; more become a list among the notes.
const mostCorners = 5

// chainDims are the corners of a chain, from its datum edges, and the radii of its arcs.
func chainDims(p *partspec.Part) []plan.Dim {
	var out []plan.Dim
	for _, e := range p.Outline.Edges {
		if e.Arc {
			x, y := middle(e)
			out = append(out, placed(x, y, e.Name, "R"+edgeText(p, e.Radius, e)))
		}
	}
	xs, ys := corners(p.Outline)
	x0, y0 := origin(p)
	for _, at := range few(xs, mostCorners) {
		out = append(out, across(x0, mm(at.y), mm(at.x), mm(at.y), at.edge.Name, at.text(p, (at.x-units.Length(x0)).Abs())))
	}
	for _, at := range few(ys, mostCorners) {
		out = append(out, up(mm(at.x), y0, mm(at.x), mm(at.y), at.edge.Name, at.text(p, (at.y-units.Length(y0)).Abs())))
	}
	return out
}

// corner is a place where an edge of a chain ends, or the centre of an arc.
type corner struct {
	x, y   units.Length
	edge   partspec.OutlineEdge
	centre bool
}

// text is a distance to the corner: a centre has no limits of its own.
func (c corner) text(p *partspec.Part, far units.Length) string {
	if c.centre {
		return figure(p, far)
	}
	return edgeText(p, far, c.edge)
}

// corners are those of a chain, and the centres of its arcs, that have an X, or a Y, of their own away from the datum. Where one edge runs into the next
// without a corner there is nothing to measure.
func corners(o *partspec.Outline) (xs, ys []corner) {
	seenX, seenY := map[units.Length]bool{}, map[units.Length]bool{}
	for _, name := range o.Datum {
		if e, ok := o.Edge(name); ok && e.X0 == e.X1 {
			seenX[e.X0.Round(micro)] = true
		} else if ok {
			seenY[e.Y0.Round(micro)] = true
		}
	}
	if len(o.Datum) == 0 {
		seenX[0], seenY[0] = true, true
	}
	add := func(c corner) {
		if x := c.x.Round(micro); !seenX[x] {
			seenX[x] = true
			xs = append(xs, c)
		}
		if y := c.y.Round(micro); !seenY[y] {
			seenY[y] = true
			ys = append(ys, c)
		}
	}
	for i, e := range o.Edges {
		if !smooth(e, o.Edges[(i+1)%len(o.Edges)]) {
			add(corner{x: e.X1, y: e.Y1, edge: e})
		}
	}
	for _, e := range o.Edges {
		if e.Arc {
			add(corner{x: e.CX, y: e.CY, edge: e, centre: true})
		}
	}
	return xs, ys
}

// smooth reports whether an edge runs into the next without a corner: their directions there differ by less than a degree.
func smooth(a, b partspec.OutlineEdge) bool {
	turn := math.Abs(heading(a, a.X1, a.Y1) - heading(b, b.X0, b.Y0))
	return min(turn, 2*math.Pi-turn) < math.Pi/180
}

// heading is the direction of an edge at a place of it.
func heading(e partspec.OutlineEdge, x, y units.Length) float64 {
	if !e.Arc {
		return math.Atan2(mm(e.Y1-e.Y0), mm(e.X1-e.X0))
	}
	dx, dy := -mm(y-e.CY), mm(x-e.CX)
	if e.Hollow {
		dx, dy = -dx, -dy
	}
	return math.Atan2(dy, dx)
}

// few are all of a short list, and none of a long one.
func few(list []corner, most int) []corner {
	if len(list) > most {
		return nil
	}
	return list
}

// edgeText is a distance with the limits of the edge that it ends at.
func edgeText(p *partspec.Part, l units.Length, e partspec.OutlineEdge) string {
	return sizeText(p, partspec.Size{Dimension: units.Dimension{Value: l, InInches: p.Inches}, Low: l - e.Off, High: l + e.On})
}

// middle is the place half way along an arc.
func middle(e partspec.OutlineEdge) (x, y float64) {
	from := math.Atan2(mm(e.Y0-e.CY), mm(e.X0-e.CX))
	turn := math.Atan2(mm(e.Y1-e.CY), mm(e.X1-e.CX)) - from
	if e.Hollow {
		turn = -turn
	}
	for turn <= 0 {
		turn += 2 * math.Pi
	}
	if e.Hollow {
		turn = -turn
	}
	return mm(e.CX) + mm(e.Radius)*math.Cos(from+turn/2), mm(e.CY) + mm(e.Radius)*math.Sin(from+turn/2)
}

// origin is where the drawing measures from: the datum edges, or the middle of a disc and the axis of a turned part.
func origin(p *partspec.Part) (x, y float64) {
	if p.Outline == nil {
		return 0, 0
	}
	for _, name := range p.Outline.Datum {
		if e, ok := p.Outline.Edge(name); ok && e.X0 == e.X1 {
			x = mm(e.X0)
		} else if ok {
			y = mm(e.Y0)
		}
	}
	return x, y
}

// from are the two dimensions that lead from the datum to a place; none where the place is the origin itself.
func from(p *partspec.Part, at partspec.Point, feature string) []plan.Dim {
	var out []plan.Dim
	x0, y0 := origin(p)
	x, y := mm(at.X.Value), mm(at.Y.Value)
	if x != x0 {
		out = append(out, across(x0, y0, x, y, feature, fromText(p, at.X, x0)))
	}
	if y != y0 {
		out = append(out, up(x0, y0, x, y, feature, fromText(p, at.Y, y0)))
	}
	return out
}

// fromText is a coordinate as it was written; where the drawing measures from the other side, it is the distance from there, with the same limits.
func fromText(p *partspec.Part, s partspec.Size, zero float64) string {
	if zero == 0 && s.Value >= 0 {
		return sizeText(p, s)
	}
	far := (s.Value - units.Length(zero)).Abs()
	low, high := s.Value-s.Low, s.High-s.Value
	if mm(s.Value) < zero {
		low, high = high, low
	}
	return sizeText(p, partspec.Size{Dimension: units.Dimension{Value: far, InInches: s.InInches}, Low: far - low, High: far + high})
}
