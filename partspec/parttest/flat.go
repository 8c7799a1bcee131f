package parttest

import (
	"fmt"
	"math"

	"pgregory.net/rapid"
)

// FlatPart draws a valid flat part: a rectangle, a disc or a round-topped plate from plate or sheet, often with a bore and with patterns of holes, that
// partspec reads without an error or a question. FlatPart().Example(seed) gives the same part for the same seed, so that a test without rapid can use it too:
//
//	text := parttest.FlatPart().Example(7).HCL(false)
func FlatPart() *rapid.Generator[PartText] { return rapid.Custom(drawFlat) }

// flatBuilder keeps what is taken of the plate already.
type flatBuilder struct {
	*builder
	thick  float64
	inside func(x, y float64) float64 // distance to the outline, or less
	middle [2]float64                 // of a bore, and what patterns lie about
	named  string                     // how the middle is written where it has a name
	taken  []round
}

// round is a place that is taken: a hole with its mouth.
type round struct{ x, y, radius float64 }

func drawFlat(t *rapid.T) PartText {
	b := &flatBuilder{builder: &builder{t: t}}
	b.part.Material = rapid.SampledFrom([]string{"brass", "mild steel", "aluminium"}).Draw(t, "material")
	b.thick = b.half(2, 12, "thickness")
	b.part.Thickness = b.thick
	b.drawOutline()
	b.drawPlate()
	b.addFlatBore()
	b.addRing()
	b.addCorners()
	b.addRow()
	return b.part
}

func (b *flatBuilder) drawOutline() {
	switch rapid.IntRange(0, 2).Draw(b.t, "outline") {
	case 0:
		w, h := b.half(24, 120, "width"), b.half(24, 100, "height")
		values := []Value{length("width", w), length("height", h)}
		r := 0.0
		if b.often(40, "round corners") {
			r = b.half(2, 6, "corner")
			values = append(values, length("corner_radius", r))
		}
		b.middle = [2]float64{math.Round(w) / 2, math.Round(h) / 2}
		b.inside = func(x, y float64) float64 {
			sides := min(x, w-x, y, h-y)
			dx, dy := max(r-x, x-(w-r), 0), max(r-y, y-(h-r), 0)
			if dx > 0 && dy > 0 {
				return r - math.Hypot(dx, dy)
			}
			return sides
		}
		b.part.Outline = Block{Word: "outline", Name: "rectangle", Values: values}
	case 1:
		d := b.half(24, 120, "disc")
		b.inside = func(x, y float64) float64 { return d/2 - math.Hypot(x, y) }
		b.part.Outline = Block{Word: "outline", Name: "disc", Values: []Value{length("diameter", d)}}
	default:
		w, h := b.half(24, 80, "width"), b.half(16, 80, "height")
		r := w/2 + b.half(0, 5, "more radius")
		b.middle, b.named = [2]float64{w / 2, h}, `"top.centre"`
		b.inside = func(x, y float64) float64 {
			sides := min(x, w-x, y)
			if y > h {
				return min(sides, r-math.Hypot(x-w/2, y-h))
			}
			return sides
		}
		b.part.Outline = Block{Word: "outline", Name: "round_topped", Values: []Value{length("width", w), length("height", h), length("radius", r)}}
	}
}

func (b *flatBuilder) drawPlate() {
	plate := Block{Word: "stock", Name: "plate", Values: []Value{length("thickness", b.thick+b.half(1, 3, "on the faces"))}}
	switch rapid.IntRange(0, 2).Draw(b.t, "stock") {
	case 0:
		plate.Values = []Value{length("thickness", b.thick), {Name: "faces_as_supplied", Text: "true"}}
	case 1:
		plate = Block{Word: "stock", Name: "sheet", Values: []Value{length("thickness", b.thick)}}
	}
	b.part.Plate = plate
}

// clear is how large a circle about a place may be, wall left.
func (b *flatBuilder) clear(x, y float64) float64 {
	most := b.inside(x, y)
	for _, r := range b.taken {
		most = min(most, math.Hypot(x-r.x, y-r.y)-r.radius)
	}
	return most
}

// addFlatBore bores the middle, wall and a tenth of the diameter left to the edge.
func (b *flatBuilder) addFlatBore() {
	x, y := b.middle[0], b.middle[1]
	most := (b.clear(x, y) - wall) / 1.3
	if most < 3 || !b.often(70, "bore") {
		return
	}
	r := b.half(3, min(most, 30), "bore radius")
	limits := rapid.SampledFrom([]string{"", " H8", " H7", " ±0.1"}).Draw(b.t, "bore limits")
	at := Value{Name: "at", Places: [][2]float64{b.middle}}
	if b.named != "" {
		at = Value{Name: "at", Text: b.named}
	}
	b.add(Block{Word: "bore", Name: "main", Values: []Value{at, {Name: "diameter", Length: 2 * r, Limits: limits}}})
	b.taken = append(b.taken, round{x, y, r})
}

// kindOfHole is one way to make holes: their values, their blocks, and the radius that each needs for itself.
type kindOfHole struct {
	values []Value
	inner  []Block
	room   float64
}

// holeKind draws what holes are. Their room is the distance from an edge that nothing is asked about.
func (b *flatBuilder) holeKind(name string) kindOfHole {
	switch rapid.IntRange(0, 4).Draw(b.t, name+" kind") {
	case 0:
		return kindOfHole{values: []Value{text("clearance", "M3")}, room: 3.4}
	case 1:
		return kindOfHole{values: []Value{text("thread", "M3")}, room: 3}
	case 2:
		if b.thick >= 5 {
			sink := Block{Word: "counterbore", Values: []Value{length("diameter", 6), length("depth", 2)}}
			return kindOfHole{values: []Value{text("clearance", "M3 close")}, inner: []Block{sink}, room: 3.5}
		}
		return kindOfHole{values: []Value{length("diameter", 2)}, room: 2}
	case 3:
		if b.thick >= 6 {
			return kindOfHole{values: []Value{length("diameter", 3), length("depth", 3)}, room: 3}
		}
	}
	return kindOfHole{values: []Value{{Name: "dowel", Length: 3, Limits: " H7"}}, room: 3}
}

// addPattern adds holes at places that are all free; without places for them nothing is added.
func (b *flatBuilder) addPattern(name string, how []Value, inner []Block, places [][2]float64, k kindOfHole) bool {
	for i, p := range places {
		if b.clear(p[0], p[1]) < k.room+0.5 { // and a little, so that rounding asks nothing
			return false
		}
		for _, q := range places[:i] {
			if math.Hypot(p[0]-q[0], p[1]-q[1]) < 2*k.room+0.5 {
				return false
			}
		}
	}
	for _, p := range places {
		b.taken = append(b.taken, round{p[0], p[1], k.room + 0.5})
	}
	b.add(Block{Word: "holes", Name: name, Values: append(how, k.values...), Inner: append(inner, k.inner...)})
	return true
}

// addRing adds a circle of holes about the middle.
func (b *flatBuilder) addRing() {
	if !b.often(60, "ring") {
		return
	}
	k := b.holeKind("ring")
	x, y := b.middle[0], b.middle[1]
	least := k.room + 2
	if len(b.taken) > 0 {
		least = b.taken[0].radius + k.room + 1
	}
	most := b.inside(x, y) - k.room - 1
	if least > most {
		return
	}
	r, count := b.half(least, most, "ring radius"), rapid.IntRange(2, 8).Draw(b.t, "count")
	start := float64(rapid.IntRange(0, 11).Draw(b.t, "start") * 15)
	var places [][2]float64
	for i := range count {
		a := (start + 360*float64(i)/float64(count)) * math.Pi / 180
		places = append(places, [2]float64{x + r*math.Cos(a), y + r*math.Sin(a)})
	}
	about := Value{Name: "about", Places: [][2]float64{b.middle}}
	if b.named != "" {
		about = Value{Name: "about", Text: b.named}
	}
	b.addPattern("ring", []Value{length("circle", 2*r), {Name: "count", Text: fmt.Sprint(count)}, {Name: "start", Text: fmt.Sprint(start)}, about}, nil, places, k)
}

// addCorners adds a grid of four holes about the middle.
func (b *flatBuilder) addCorners() {
	if !b.often(40, "corners") {
		return
	}
	k := b.holeKind("corners")
	dx, dy := b.half(8, 50, "grid across"), b.half(8, 40, "grid up")
	x, y := math.Round(b.middle[0]-dx/2), math.Round(b.middle[1]-dy/2)
	places := [][2]float64{{x, y}, {x + dx, y}, {x, y + dy}, {x + dx, y + dy}}
	grid := Block{Word: "grid", Values: []Value{
		{Name: "at", Places: places[:1]}, {Name: "columns", Text: "2"}, {Name: "rows", Text: "2"}, {Name: "pitch", Places: [][2]float64{{dx, dy}}},
	}}
	b.addPattern("corners", nil, []Block{grid}, places, k)
}

// addRow adds up to three single holes, listed.
func (b *flatBuilder) addRow() {
	if !b.often(40, "row") {
		return
	}
	k := b.holeKind("row")
	var places [][2]float64
	for i := range rapid.IntRange(1, 3).Draw(b.t, "in the row") {
		places = append(places, [2]float64{b.middle[0] + b.half(-30, 30, "x"), b.middle[1] - 5*float64(i) + b.half(-30, 30, "y")})
	}
	values := []Value{{Name: "at", Places: places, Listed: true}}
	if b.often(30, "position") {
		values = append(values, Value{Name: "position", Length: 0.2})
	}
	b.addPattern("row", values, nil, places, k)
}
