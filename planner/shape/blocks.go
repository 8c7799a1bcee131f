package shape

import (
	"sort"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/solid"
)

// Block is a stretch of the outside between two faces: a spigot, a flange, a taper or a profile. Blocks cover the part from end to end.
type Block struct {
	Feature    partspec.Feature
	Name       string
	Z0, Z1     float64
	Curve      solid.Curve // finished radius, at the middle of the limits
	Least      float64     // of that radius
	Greatest   float64
	AsSupplied bool
	Diameter   partspec.Size // of a cylinder; the large end of a taper; zero for a profile
}

// Cylinder reports whether the block is a plain cylinder.
func (b Block) Cylinder() bool {
	_, ok := b.Feature.(*partspec.Spigot)
	return ok
}

// Blocks lists the outside of a part from left to right.
func Blocks(p *partspec.Part) []Block {
	var blocks []Block
	for _, f := range p.Features {
		if b, ok := blockOf(p, f); ok {
			blocks = append(blocks, b)
		}
	}
	sort.SliceStable(blocks, func(i, j int) bool { return blocks[i].Z0 < blocks[j].Z0 })
	return blocks
}

func blockOf(p *partspec.Part, f partspec.Feature) (Block, bool) {
	switch f := f.(type) {
	case *partspec.Spigot:
		r := float64(f.Diameter.Mid()) / 2
		if f.AsSupplied && p.Stock.Kind != partspec.Existing {
			r = float64(p.Stock.EnvelopeDiameter()) / 2
		}
		d := f.Diameter
		if k := knurlOn(p, f.Name); k != nil {
			d = blank(d, k)
			r = float64(d.Mid()) / 2
		}
		return newBlock(f, f.Span, solid.Const(z(f.Span.Left), z(f.Span.Right), r), f.AsSupplied, d), true
	case *partspec.Taper:
		if f.Inside {
			return Block{}, false
		}
		left, right := f.Small, f.Large
		if f.LargeAt == partspec.Left {
			left, right = f.Large, f.Small
		}
		c := solid.Line(z(f.Span.Left), float64(left.Mid())/2, z(f.Span.Right), float64(right.Mid())/2)
		return newBlock(f, f.Span, c, false, f.Large), true
	case *partspec.Profile:
		return newBlock(f, f.Span, ProfileCurve(f), false, partspec.Size{}), true
	}
	return Block{}, false
}

func newBlock(f partspec.Feature, s partspec.Span, c solid.Curve, asSupplied bool, d partspec.Size) Block {
	b := Block{Feature: f, Name: f.Head().Name, Z0: z(s.Left), Z1: z(s.Right), Curve: c, AsSupplied: asSupplied, Diameter: d}
	b.Least, b.Greatest = c.Least(b.Z0, b.Z1), c.Greatest(b.Z0, b.Z1)
	return b
}

// ProfileCurve is the drawn curve of a profile.
func ProfileCurve(f *partspec.Profile) solid.Curve {
	var c solid.Curve
	for _, s := range f.Segments {
		z0, r0, z1, r1 := float64(s.Z0), float64(s.R0), float64(s.Z1), float64(s.R1)
		if !s.Arc {
			c = c.Join(solid.Line(z0, r0, z1, r1))
			continue
		}
		c = c.Join(solid.Arc(z0, r0, z1, r1, float64(s.CentreZ), float64(s.CentreR), s.Convex))
	}
	return c
}

// Hole is a bore or an inside taper, from its mouth to its end.
type Hole struct {
	Feature    partspec.Feature
	Name       string
	From       partspec.End // the end it opens to; either end serves when Through
	Through    bool
	Flat       bool
	AsSupplied bool
	Depth      float64 // from the mouth's end face
	Z0, Z1     float64 // of its own wall, left to right
	Curve      solid.Curve
	Radius     float64 // least of its wall
	Diameter   partspec.Size
}

// Holes lists the coaxial holes: through holes first, then from deep to shallow, so that a hole comes before the larger ones in its mouth.
func Holes(p *partspec.Part) []Hole {
	length := float64(p.Length.Mid())
	var holes []Hole
	for _, f := range p.Features {
		switch f := f.(type) {
		case *partspec.Bore:
			h := Hole{Feature: f, Name: f.Name, From: f.From, Through: f.Through, Flat: f.FlatBottom, AsSupplied: f.AsSupplied,
				Depth: float64(f.Depth.Mid()), Radius: float64(f.Diameter.Mid()) / 2, Diameter: f.Diameter}
			if f.Through {
				h.Depth = length
			}
			h.Z0, h.Z1 = holeSpan(f.From, h.Depth, length)
			h.Curve = solid.Const(h.Z0, h.Z1, h.Radius)
			holes = append(holes, h)
		case *partspec.Taper:
			if f.Inside {
				holes = append(holes, taperHole(f, length))
			}
		}
	}
	sort.SliceStable(holes, func(i, j int) bool {
		a, b := holes[i], holes[j]
		if a.Through != b.Through {
			return a.Through
		}
		return a.Depth > b.Depth
	})
	return holes
}

func holeSpan(from partspec.End, depth, length float64) (z0, z1 float64) {
	if from == partspec.Right {
		return length - depth, length
	}
	return 0, depth
}

func taperHole(f *partspec.Taper, length float64) Hole {
	left, right := f.Small, f.Large
	if f.LargeAt == partspec.Left {
		left, right = f.Large, f.Small
	}
	h := Hole{Feature: f, Name: f.Name, From: f.LargeAt, Z0: z(f.Span.Left), Z1: z(f.Span.Right),
		Radius: float64(f.Small.Mid()) / 2, Diameter: f.Large}
	h.Curve = solid.Line(h.Z0, float64(left.Mid())/2, h.Z1, float64(right.Mid())/2)
	h.Depth = h.Z1
	if f.LargeAt == partspec.Right {
		h.Depth = length - h.Z0
	}
	return h
}

func z(l units.Length) float64 { return float64(l) }

// KnurlGrowth is how much a pressed knurl adds to the diameter, as a part of its pitch (rule C-32).
const KnurlGrowth = 0.4

func knurlOn(p *partspec.Part, name string) *partspec.Knurl {
	for _, f := range p.Features {
		if k, ok := f.(*partspec.Knurl); ok && k.On == name {
			return k
		}
	}
	return nil
}

// blank is the size a knurled spigot is turned to.
func blank(d partspec.Size, k *partspec.Knurl) partspec.Size {
	growth := k.Pitch * KnurlGrowth
	d.Low, d.High, d.Value = d.Low-growth, d.High-growth, d.Value-growth
	return d
}
