package partspec

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// kind is what an attribute holds.
type kind int

const (
	kindInvalid  kind = iota
	kindSize          // a length that may carry limits: "20 +0.02 -0", "8 H7"
	kindLength        // a plain length, above 0
	kindPosition      // a plain length that may be 0 or negative
	kindAngle         // degrees
	kindNumber        // a figure of 0 or more that is no length
	kindCount         // a whole number of 1 or more
	kindText          // free words
	kindWord          // one of a few words, or a name
	kindFlag          // true or false
	kindLengths       // a list of plain lengths
	kindNumbers       // a list of figures
	kindTexts         // a list of words
	kindTurn          // degrees of a whole turn, either way
	kindPlace         // a place in the plane: two coordinates, each of which may carry limits, or a name
	kindPlaces        // a list of places, or one
	kindPair          // two lengths, along X and along Y, or one for both
	kindPattern       // the pattern of holes of another part, by its name
)

// attr is one attribute that a block may have.
type attr struct {
	name     string
	kind     kind
	required bool
}

func need(name string, k kind) attr { return attr{name, k, true} }
func may(name string, k kind) attr  { return attr{name, k, false} }

// shapeOf is what a block of some word may hold: attributes, and blocks inside.
type shapeOf struct {
	attrs  []attr
	blocks []string
}

// with returns the shape with more attributes.
func (s shapeOf) with(more ...attr) shapeOf {
	return shapeOf{append(slices.Clone(s.attrs), more...), s.blocks}
}

func (s shapeOf) attrNames() []string {
	var names []string
	for _, a := range s.attrs {
		names = append(names, a.name)
	}
	return names
}

// entry is one block of the files with the attributes it has.
type entry struct {
	word, name string // block type and label ("" where the word takes none)
	block      *hclsyntax.Block
	inside     string // what it stands in, for messages and names: "part.boss"
	inches     bool   // bare lengths are inches
	fields     []*field
	children   []*entry // blocks inside: segments of a profile, features of existing stock
	broken     bool     // a value failed: nothing that rests on it is judged
	lost       bool     // a block inside was refused: what needs all of them is not judged
}

// field is one attribute of an entry with its value once it is known.
type field struct {
	attr
	owner *entry
	expr  hclsyntax.Expression
	at    Range // of the expression
	state fieldState
	value value
}

type fieldState int

const (
	fieldFresh fieldState = iota
	fieldBusy             // being worked out: met again, it is part of a circle
	fieldKnown
	fieldFailed
)

// path is the name by which expressions call the field.
func (f *field) path() string { return f.owner.path() + "." + f.name }

func (e *entry) path() string {
	parts := []string{e.word}
	if e.inside != "" {
		parts = []string{e.inside, e.word}
	}
	if e.name != "" {
		parts = append(parts, e.name)
	}
	return strings.Join(parts, ".")
}

// title is how messages call the entry: `bore "main"`.
func (e *entry) title() string {
	if e.name == "" {
		return e.word
	}
	return fmt.Sprintf("%s %q", e.word, e.name)
}

// head is the place of the block's word and label.
func (e *entry) head() Range { return e.block.DefRange() }

// field finds an attribute that is written; nil when it is not.
func (e *entry) field(name string) *field {
	for _, f := range e.fields {
		if f.name == name {
			return f
		}
	}
	return nil
}

// has reports whether the attribute is written, be it good or bad.
func (e *entry) has(name string) bool { return e.field(name) != nil }

// at is the place of an attribute's value, or of the block's head without it.
func (e *entry) at(name string) Range {
	if f := e.field(name); f != nil {
		return f.at
	}
	return e.head()
}

// enter makes an entry of a block, and reports attributes and blocks that its
// word does not know, labels that are missing, and attributes that are.
func (c *checker) enter(block *hclsyntax.Block, inside string, inches bool, shape shapeOf, label labelRule) *entry {
	e := &entry{word: block.Type, block: block, inside: inside, inches: inches}
	c.checkLabels(e, label)
	for _, a := range sortedAttributes(block.Body) {
		i := slices.IndexFunc(shape.attrs, func(known attr) bool { return known.name == a.Name })
		if i < 0 {
			c.unknownAttribute(e, a, shape)
			continue
		}
		e.fields = append(e.fields, &field{attr: shape.attrs[i], owner: e, expr: a.Expr, at: a.Expr.Range()})
	}
	for _, a := range shape.attrs {
		if a.required && !e.has(a.name) {
			c.fail(e, e.head(), fmt.Sprintf("%s lacks %s", e.title(), a.name), "Write %s.", example(a))
		}
	}
	for _, b := range block.Body.Blocks {
		if !slices.Contains(shape.blocks, b.Type) {
			c.unknownBlock(b, e.title(), shape.blocks)
			e.broken, e.lost = true, true
		}
	}
	return e
}

// labelRule says whether a block carries a label, and what it is called.
type labelRule string

const (
	noLabel   labelRule = ""
	nameLabel labelRule = "name"
	kindLabel labelRule = "kind"
)

func (c *checker) checkLabels(e *entry, rule labelRule) {
	labels := e.block.Labels
	switch {
	case rule == noLabel && len(labels) > 0:
		c.fail(e, e.block.LabelRanges[0], fmt.Sprintf("%s takes no %s", e.word, "name"), "Write %s { ... }.", e.word)
	case rule != noLabel && len(labels) == 0:
		c.fail(e, e.head(), fmt.Sprintf("%s lacks a %s", e.word, rule), "Write %s \"%s\" { ... }.", e.word, rule)
	case rule != noLabel && len(labels) > 1:
		c.fail(e, e.block.LabelRanges[1], fmt.Sprintf("%s takes one %s", e.word, rule), "Write %s %q { ... }.", e.word, labels[0])
	case rule != noLabel:
		e.name = labels[0]
	}
	if rule == nameLabel && e.name != "" && !isName(e.name) {
		c.fail(e, e.block.LabelRanges[0], fmt.Sprintf("%q is not a name", e.name),
			"A name is a letter, then letters, figures and _, at most %d: write it like front_edge.", maxNameBytes)
	}
}

const maxNameBytes = 40

// isName reports whether a label can be used in expressions and operation ids.
func isName(text string) bool {
	for i, r := range text {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
		if !letter && (i == 0 || r != '_' && (r < '0' || r > '9')) {
			return false
		}
	}
	return text != "" && len(text) <= maxNameBytes
}

func sortedAttributes(body *hclsyntax.Body) []*hclsyntax.Attribute {
	var list []*hclsyntax.Attribute
	for _, a := range body.Attributes {
		list = append(list, a)
	}
	slices.SortFunc(list, func(a, b *hclsyntax.Attribute) int {
		return cmp.Compare(a.NameRange.Start.Byte, b.NameRange.Start.Byte)
	})
	return list
}

func (c *checker) unknownAttribute(e *entry, a *hclsyntax.Attribute, shape shapeOf) {
	e.broken = true
	c.report(fault(a.NameRange, fmt.Sprintf("%s has no %s", e.title(), a.Name), "%s",
		hint(a.Name, shape.attrNames(), shape.blocks)))
}

func (c *checker) unknownBlock(b *hclsyntax.Block, in string, known []string) {
	if slices.Contains(laterWords, b.Type) {
		c.report(fault(b.TypeRange, fmt.Sprintf("%s is not known to this version", b.Type),
			"It plans turned parts, with eccentrics about one more axis, and flat parts with what is drilled, bored and milled in them. Leave the block out, and do that work from the drawing."))
		return
	}
	summary := fmt.Sprintf("There is no block %s", b.Type)
	if in != "" {
		summary = fmt.Sprintf("%s takes no block %s", in, b.Type)
	}
	c.report(fault(b.TypeRange, summary, "%s", hint(b.Type, known, nil)))
}

func hint(word string, known, blocks []string) string {
	if here := alsoCalled[word]; slices.Contains(known, here) || slices.Contains(blocks, here) {
		return fmt.Sprintf("Here it is called %s.", here)
	}
	if slices.Contains(blocks, word) {
		return fmt.Sprintf("It is a block: write %s { ... } without \"=\".", word)
	}
	return didYouMean(word, known, "Take it out.")
}
