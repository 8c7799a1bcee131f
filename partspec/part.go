package partspec

import (
	"fmt"
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

var partShape = shapeOf{
	attrs: []attr{
		need("material", kindWord), may("length", kindSize), may("thickness", kindSize), may("drawn_in", kindWord), may("general", kindWord),
		may("quantity", kindCount), may("bought", kindFlag), may("roundness", kindLength), may("roughness", kindNumber),
		may("inner_corner", kindLength), may("note", kindText),
	},
	blocks: slices.Concat([]string{"stock", "outline"}, []string{"axis"}, FeatureWords(), relationWords),
}

// defaultInnerCorner is the largest radius left in a corner that is drawn sharp
// when the part does not say: a common nose radius.
const defaultInnerCorner units.Length = 0.4

// partEntry is a part as the files have it.
type partEntry struct {
	*entry
	stock     *entry
	outline   *entry // of a flat part
	axis      *entry // beside the main one
	features  []*entry
	relations []*entry
}

// all lists every entry of the part that has values.
func (p *partEntry) all() []*entry {
	list := []*entry{p.entry}
	if p.stock != nil {
		list = append(list, p.stock.withChildren()...)
	}
	if p.outline != nil {
		list = append(list, p.outline.withChildren()...)
	}
	if p.axis != nil {
		list = append(list, p.axis)
	}
	for _, e := range slices.Concat(p.features, p.relations) {
		list = append(list, e.withChildren()...)
	}
	return list
}

// withChildren lists an entry and all that stands inside it.
func (e *entry) withChildren() []*entry {
	list := []*entry{e}
	for _, child := range e.children {
		list = append(list, child.withChildren()...)
	}
	return list
}

func (c *checker) gatherPart(block *hclsyntax.Block) {
	inches := c.drawnIn(block)
	p := &partEntry{entry: c.enter(block, "", inches, partShape, nameLabel)}
	for _, b := range block.Body.Blocks {
		switch {
		case b.Type == "stock":
			c.gatherStock(p, b)
		case b.Type == "outline":
			c.gatherOutline(p, b)
		case b.Type == "axis":
			c.gatherAxis(p, b)
		case slices.Contains(relationWords, b.Type):
			p.relations = append(p.relations, c.enter(b, p.path(), inches, relationShape, noLabel))
		case slices.Contains(FeatureWords(), b.Type):
			p.features = c.gatherFeature(p.features, b, p.entry)
		}
	}
	if i := slices.IndexFunc(c.parts, func(other *partEntry) bool { return other.name == p.name }); i >= 0 && p.name != "" {
		first := c.parts[i].head()
		c.strays = append(c.strays, p.all()...)
		c.report(fault(p.head(), fmt.Sprintf("A second part %q", p.name), "The first is at %s:%d. Give this one another name.",
			first.Filename, first.Start.Line))
		return
	}
	if len(c.parts) == maxParts {
		c.report(fault(p.head(), "There are too many parts", "A job has at most %d; make several jobs of it.", maxParts))
		return
	}
	c.parts = append(c.parts, p)
}

// gatherFeature enters a feature and the blocks inside it. Names are unique
// within a part, whatever the word, because relations use the name alone.
func (c *checker) gatherFeature(list []*entry, b *hclsyntax.Block, in *entry) []*entry {
	kind := findFeatureKind(b.Type)
	if len(list) == maxFeatures {
		in.lost = true
		c.report(fault(b.DefRange(), "There are too many features", "A part has at most %d.", maxFeatures))
		return list
	}
	e := c.enter(b, in.path(), in.inches, kind.shape, nameLabel)
	for _, inner := range b.Body.Blocks {
		if !slices.Contains(kind.shape.blocks, inner.Type) {
			continue // told already
		}
		if shape, ok := holeShapes[inner.Type]; ok {
			e.children = append(e.children, c.enter(inner, e.path(), e.inches, shape, noLabel))
		} else if shape, ok := segmentShapes[inner.Type]; ok {
			e.children = append(e.children, c.gatherSegment(inner, e, shape))
		}
	}
	if e.name == "face" {
		c.fail(e, b.LabelRanges[0], "No feature can be called face",
			"The name stands for the end faces of the part, as in face.left.")
		in.lost = true
		c.strays = append(c.strays, e.withChildren()...)
		return list
	}
	if i := slices.IndexFunc(list, func(other *entry) bool { return other.name == e.name }); i >= 0 && e.name != "" {
		in.lost = true
		c.strays = append(c.strays, e.withChildren()...)
		c.report(fault(e.head(), fmt.Sprintf("A second feature %q", e.name),
			"The first is the %s in line %d. Names are unique within a part: give this one another.",
			list[i].word, list[i].head().Start.Line))
		return list
	}
	return append(list, e)
}

// buildPart makes the checked part. After an error it may lack features.
func (c *checker) buildPart(p *partEntry) *Part {
	part := &Part{
		Name: p.name, General: c.generalClass(p.entry), Quantity: max(1, int(p.number("quantity"))), Bought: p.flag("bought"),
		Inches: p.inches, Roundness: p.length("roundness"), Roughness: p.number("roughness"),
		InnerCorner: defaultInnerCorner, Note: p.text("note"), Range: p.head(),
	}
	if p.has("inner_corner") {
		part.InnerCorner = p.length("inner_corner")
	}
	if part.Quantity > maxQuantity {
		c.fail(p.entry, p.at("quantity"), "The quantity is too large", "At most %d are believed.", maxQuantity)
	}
	part.Material = c.material(p.entry)
	s := &shaper{c: c, part: part, owner: p.entry}
	for _, e := range p.features {
		if e.has("axis") {
			s.about = append(s.about, e)
		} else {
			s.entries = append(s.entries, e)
		}
	}
	s.buildFrame(p)
	if _, said := p.block.Body.Attributes["stock"]; p.stock == nil && !part.Bought && !said {
		c.fail(p.entry, p.head(), p.title()+" has no stock", "Write what it is cut from: %s.", exampleStock(p))
	}
	part.Stock = c.buildStock(p, s)
	part.Features = s.build()
	s.castAround(&part.Stock)
	if part.Length.Value > 0 {
		s.checkStock()
	}
	part.Axes = s.eccentrics(p.axis, s.about)
	part.Relations = s.relations(p.relations)
	return part
}

func (c *checker) material(e *entry) tables.Material {
	name := e.text("material")
	if name == "" {
		return tables.Material{}
	}
	m, ok := tables.FindMaterial(name)
	if !ok {
		c.fail(e, e.at("material"), fmt.Sprintf("No table has the material %q", name), "%s", materialHint(name))
		return m
	}
	if m.Family == tables.FamilyOther {
		c.report(question(e.at("material"), fmt.Sprintf("Is it really %s?", m.Name), "%s", m.Cautions))
	}
	return m
}

func materialHint(name string) string {
	known := tables.MaterialNames()
	for _, m := range tables.Materials() {
		known = append(known, m.ID)
	}
	if near := nearestHint(name, known); near != "" {
		return near
	}
	return "Write a common name such as brass, bronze, mild steel, stainless or aluminium, or a standard's designation such as CZ121 or 303S31."
}

// generalClass reads the class of ISO 2768-1.
func (c *checker) generalClass(e *entry) string {
	class := e.text("general")
	switch class {
	case "f", "m", "c", "v":
		return class
	case "":
		return "m"
	}
	c.fail(e, e.at("general"), fmt.Sprintf("There is no general class %q", class),
		`Write "f" (fine), "m" (medium; also when none is written), "c" (coarse) or "v" (very coarse) of ISO 2768-1.`)
	return "m"
}
