package parttest

import (
	"fmt"
	"slices"
	"strings"

	"pgregory.net/rapid"
)

// Job draws a valid job of one turned part: its HCL text, sometimes with a
// workshop of its own. Every figure is on a coarse grid, so that a failing case
// shrinks to one that can be read.
func Job() *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		text := Part().Draw(t, "part").HCL(rapid.Bool().Draw(t, "inches"))
		if rapid.Bool().Draw(t, "own workshop") {
			text += Workshop().Draw(t, "workshop")
		}
		return text
	})
}

// PartText is a part with its figures, which can be written in either unit.
type PartText struct {
	Material string
	Length   float64 // mm, as all figures; of a flat part 0
	Stock    float64 // diameter of the bar
	Blocks   []Block

	Thickness      float64 // of a flat part, else 0
	Outline, Plate Block   // of a flat part: its outline and its stock
}

// Block is one block with its attributes in order.
type Block struct {
	Word, Name string
	Values     []Value
	Inner      []Block
}

// Value is an attribute: a length in millimetres with limits behind it, or text.
type Value struct {
	Name   string
	Length float64
	Limits string // " ±0.05", " H8": written behind the length
	Text   string // HCL text of anything else
	Places [][2]float64
	Listed bool // Places are a list, even of one
}

// HCL writes the part. In inches every length is the same size, divided by 25.4.
func (p PartText) HCL(inches bool) string {
	var b strings.Builder
	fmt.Fprintf(&b, "part \"thing\" {\n  material = %q\n", p.Material)
	if inches {
		b.WriteString("  drawn_in = \"inch\"\n")
	}
	if p.Thickness > 0 {
		fmt.Fprintf(&b, "  thickness = %s\n\n", Value{Length: p.Thickness}.hcl(inches))
		p.Plate.write(&b, "  ", inches)
		p.Outline.write(&b, "  ", inches)
	} else {
		fmt.Fprintf(&b, "  length   = %s\n\n", Value{Length: p.Length}.hcl(inches))
		fmt.Fprintf(&b, "  stock \"bar\" {\n    diameter = %s\n  }\n", Value{Length: p.Stock}.hcl(inches))
	}
	for _, block := range p.Blocks {
		block.write(&b, "  ", inches)
	}
	b.WriteString("}\n")
	return b.String()
}

func (block Block) write(b *strings.Builder, indent string, inches bool) {
	label := ""
	if block.Name != "" {
		label = fmt.Sprintf(" %q", block.Name)
	}
	fmt.Fprintf(b, "%s%s%s {\n", indent, block.Word, label)
	for _, v := range block.Values {
		fmt.Fprintf(b, "%s  %s = %s\n", indent, v.Name, v.hcl(inches))
	}
	for _, inner := range block.Inner {
		inner.write(b, indent+"  ", inches)
	}
	fmt.Fprintf(b, "%s}\n", indent)
}

func (v Value) hcl(inches bool) string {
	switch {
	case v.Text != "":
		return v.Text
	case len(v.Places) > 0:
		return v.places(inches)
	case v.Limits != "" && strings.ContainsAny(v.Limits, "±+"):
		return fmt.Sprintf("\"%v mm%s mm\"", v.Length, v.Limits)
	case v.Limits != "":
		return fmt.Sprintf("\"%v mm%s\"", v.Length, v.Limits)
	case inches:
		return fmt.Sprintf("%v / 25.4", v.Length)
	}
	return fmt.Sprint(v.Length)
}

// places writes one place, or a list of them.
func (v Value) places(inches bool) string {
	var list []string
	for _, p := range v.Places {
		list = append(list, fmt.Sprintf("[%s, %s]", Value{Length: p[0]}.hcl(inches), Value{Length: p[1]}.hcl(inches)))
	}
	if len(list) == 1 && !v.Listed {
		return list[0]
	}
	return "[" + strings.Join(list, ", ") + "]"
}

func length(name string, mm float64) Value { return Value{Name: name, Length: mm} }

func text(name, value string) Value { return Value{Name: name, Text: fmt.Sprintf("%q", value)} }

// Part draws a valid turned part.
func Part() *rapid.Generator[PartText] { return rapid.Custom(drawPart) }

// stretch is a piece of the outside: where it lies, and the least and greatest
// radius of metal that is left to it.
type stretch struct {
	name          string
	left, right   float64
	least, most   float64 // diameters
	plain         bool    // a cylinder without a thread or a knurl
	leftD, rightD float64 // diameters at its ends
}

type builder struct {
	t       *rapid.T
	part    PartText
	outside []stretch
}

func drawPart(t *rapid.T) PartText {
	b := &builder{t: t}
	b.part.Material = rapid.SampledFrom([]string{"brass", "free-cutting steel", "mild steel", "aluminium", "bronze"}).Draw(t, "material")
	count := rapid.IntRange(1, 4).Draw(t, "outside features")
	for i := range count {
		b.addOutside(fmt.Sprintf("o%d", i+1))
	}
	most := 0.0
	for _, s := range b.outside {
		most = max(most, s.most)
	}
	b.part.Length = b.outside[len(b.outside)-1].right
	b.part.Stock = most + b.half(2, 8, "stock over")
	b.addGrooves()
	b.addBores()
	b.addEdges()
	b.addRelations()
	return b.part
}

// half draws a figure on a grid of half millimetres.
func (b *builder) half(from, to float64, label string) float64 {
	return float64(rapid.IntRange(int(from*2), int(to*2)).Draw(b.t, label)) / 2
}

func (b *builder) often(percent int, label string) bool {
	return rapid.IntRange(1, 100).Draw(b.t, label) <= percent
}

func (b *builder) add(block Block) { b.part.Blocks = append(b.part.Blocks, block) }

// addOutside adds one piece of the chain.
func (b *builder) addOutside(name string) {
	left := 0.0
	if n := len(b.outside); n > 0 {
		left = b.outside[n-1].right
	}
	long := b.half(5, 25, "length")
	switch kind := rapid.IntRange(0, 9).Draw(b.t, "kind"); kind {
	case 0:
		b.addTaper(name, left, long)
	case 1:
		b.addProfile(name, left, long)
	case 2:
		b.addThreaded(name, left, long)
	default:
		b.addSpigot(name, left, long)
	}
}

func (b *builder) addSpigot(name string, left, long float64) {
	d := b.half(8, 50, "diameter")
	limits := rapid.SampledFrom([]string{"", "", "", " ±0.05", " h8", " h9"}).Draw(b.t, "limits")
	b.add(Block{Word: rapid.SampledFrom([]string{"spigot", "flange"}).Draw(b.t, "word"), Name: name, Values: []Value{{Name: "diameter", Length: d, Limits: limits}, length("length", long)}})
	b.outside = append(b.outside, stretch{name, left, left + long, d, d, true, d, d})
	if b.often(8, "knurl") {
		b.add(Block{Word: "knurl", Name: name + "_knurl", Values: []Value{text("on", name), {Name: "pitch", Text: "1 * mm"}}})
		b.outside[len(b.outside)-1].plain = false
	}
}

func (b *builder) addTaper(name string, left, long float64) {
	small := b.half(8, 40, "small")
	large := small + b.half(1, 8, "rise")
	end := rapid.SampledFrom([]string{"left", "right"}).Draw(b.t, "large at")
	b.add(Block{Word: "taper", Name: name, Values: []Value{length("large", large), length("small", small), length("length", long), text("large_at", end)}})
	s := stretch{name, left, left + long, small, large, false, large, small}
	if end == "right" {
		s.leftD, s.rightD = small, large
	}
	b.outside = append(b.outside, s)
}

// addProfile adds a line and an arc whose radius is at least its chord, so that
// it cannot overhang: it turns by 60 degrees at most.
func (b *builder) addProfile(name string, left, long float64) {
	d := b.half(20, 40, "profile diameter")
	bulge := rapid.SampledFrom([]string{"in", "out"}).Draw(b.t, "bulge")
	radius := long + b.half(0, 30, "more radius")
	sag := long / 4 // with such a radius the rise is under a quarter of the chord
	b.add(Block{Word: "profile", Name: name, Inner: []Block{
		{Word: "start", Values: []Value{length("diameter", d)}},
		{Word: "line", Values: []Value{length("length", 4), length("diameter", d)}},
		{Word: "arc", Values: []Value{length("length", long), length("diameter", d), length("radius", radius), text("bulge", bulge)}},
	}})
	b.outside = append(b.outside, stretch{name, left, left + 4 + long, d - 2*sag, d + 2*sag, false, d, d})
}

func (b *builder) addThreaded(name string, left, long float64) {
	size := rapid.SampledFrom([]struct {
		name        string
		major, core float64
	}{{"M10", 10, 8}, {"M12", 12, 9.5}, {"M16x1.5", 16, 14}, {"M20x1.5", 20, 18}, {"BSW 1/2", 12.7, 9.5}}).Draw(b.t, "thread")
	b.add(Block{Word: "spigot", Name: name, Values: []Value{length("length", long)}})
	b.add(Block{Word: "thread", Name: name + "_thread", Values: []Value{text("on", name), text("size", size.name)}})
	b.outside = append(b.outside, stretch{name, left, left + long, size.core, size.major, false, size.major, size.major})
}

// addGrooves cuts square and vee grooves into cylinders that are long enough.
func (b *builder) addGrooves() {
	for i, s := range b.outside {
		if !s.plain || s.right-s.left < 8 || s.least < 14 || !b.often(25, "groove") {
			continue
		}
		width, depth := b.half(1, 3, "groove width"), b.half(0.5, 2, "groove depth")
		values := []Value{text("on", s.name), length("at", b.half(2, 3, "groove at")), length("width", width), length("depth", depth)}
		if b.often(30, "vee") {
			values = append(values[:2:2], length("depth", depth), Value{Name: "angle", Text: "60"}) // at most 2.4 wide
		}
		b.add(Block{Word: "groove", Name: s.name + "_groove", Values: values})
		b.outside[i].least -= 2 * depth
	}
}

// wall is the least metal left between hollow and outside, and between two
// steps, on the radius.
const wall = 1.5

// room is the largest hollow that fits between two positions.
func (b *builder) room(left, right float64) float64 {
	least := 1000.0
	for _, s := range b.outside {
		if s.left < right && s.right > left {
			least = min(least, s.least)
		}
	}
	return least - 2*wall
}

func (b *builder) addBores() {
	whole := b.part.Length
	if !b.often(70, "hollow") {
		return
	}
	way := 0.0
	if most := b.room(0, whole); most >= 4 {
		way = b.half(3, min(most, 25), "bore")
		limits := rapid.SampledFrom([]string{"", "", " H7", " H8", " ±0.05"}).Draw(b.t, "bore limits")
		b.add(Block{Word: "bore", Name: "way", Values: []Value{{Name: "diameter", Length: way, Limits: limits}}})
	}
	for _, end := range []string{"left", "right"} {
		if !b.often(40, "seat at "+end) {
			continue
		}
		deep := b.half(2, max(2, whole/3), "seat depth")
		most := b.room(0, deep+wall)
		if end == "right" {
			most = b.room(whole-deep-wall, whole)
		}
		if least := max(way+2*wall, 5); most >= least {
			d := b.half(least, most, "seat")
			b.add(Block{Word: "counterbore", Name: end + "_seat", Values: []Value{length("diameter", d), length("depth", deep), text("from", end)}})
			if deep > 6 && most-d >= 1 && b.often(30, "recess") {
				b.add(Block{Word: "recess", Name: end + "_recess", Values: []Value{text("on", end+"_seat"), length("diameter", d+1), length("width", 2), length("at", deep-2)}})
			}
		}
	}
}

// addEdges breaks the outer edges of the part's ends, but not those from which a taper rises on at more than half the slope of a chamfer.
func (b *builder) addEdges() {
	first, last := b.outside[0], b.outside[len(b.outside)-1]
	if b.often(60, "left edge") && first.rightD-first.leftD < first.right-first.left {
		b.add(Block{Word: "chamfer", Name: "left_edge", Values: []Value{text("edge", first.name+".left"), length("size", 0.5)}})
	}
	if b.often(60, "right edge") && last.leftD-last.rightD < last.right-last.left {
		b.add(Block{Word: "chamfer", Name: "right_edge", Values: []Value{text("edge", last.name+".right"), length("size", 0.5)}})
	}
	for i := range len(b.outside) - 1 {
		a, c := b.outside[i], b.outside[i+1]
		if a.plain && c.leftD > a.rightD+2 && a.right-a.left > 8 && b.often(30, "fillet") {
			b.add(Block{Word: "fillet", Name: a.name + "_fillet", Values: []Value{text("edge", a.name+".right"), length("radius", 0.5)}})
		}
	}
}

func (b *builder) addRelations() {
	var round []string
	for _, block := range b.part.Blocks {
		if block.Word == "spigot" || block.Word == "flange" || block.Word == "bore" || block.Word == "counterbore" {
			round = append(round, block.Name)
		}
	}
	if len(round) < 2 || !b.often(40, "relation") {
		return
	}
	within := Value{Name: "within", Text: rapid.SampledFrom([]string{"0.02 * mm", "0.05 * mm", "0.1 * mm"}).Draw(b.t, "within")}
	word := rapid.SampledFrom([]string{"concentric", "run_out"}).Draw(b.t, "relation word")
	b.add(Block{Word: word, Values: []Value{text("of", round[0]), text("to", round[len(round)-1]), within}})
	if b.often(50, "square face") {
		b.add(Block{Word: "square", Values: []Value{text("of", "face.right"), text("to", round[0]), {Name: "within", Text: "0.02 * mm"}}})
	}
}

// Scaled is the part with every length as many times as long, but for limits and threads: it then lies between the marks of dials.
func (p PartText) Scaled(by float64) PartText {
	p.Length, p.Thickness = p.Length*by, p.Thickness*by
	p.Blocks = scaled(p.Blocks, by)
	p.Plate, p.Outline = scaled([]Block{p.Plate}, by)[0], scaled([]Block{p.Outline}, by)[0]
	return p
}

func scaled(blocks []Block, by float64) []Block {
	blocks = slices.Clone(blocks)
	for i, b := range blocks {
		values := slices.Clone(b.Values)
		for k, v := range values {
			values[k].Length = v.Length * by
			values[k].Places = slices.Clone(v.Places)
			for n, at := range v.Places {
				values[k].Places[n] = [2]float64{at[0] * by, at[1] * by}
			}
		}
		blocks[i].Values, blocks[i].Inner = values, scaled(b.Inner, by)
	}
	return blocks
}
