package partspec

import (
	"cmp"
	_ "embed"
	"fmt"
	"slices"
	"sync"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"catchplate/partspec/units"
)

//go:embed builtin/small-workshop.hcl
var builtinWorkshop []byte

const builtinName = "built-in workshop"

var workshopShape = shapeOf{
	attrs:  []attr{may("note", kindText), may("drawn_in", kindWord)},
	blocks: []string{"machine", "holding", "tool", "measuring"},
}

// workshop builds the one workshop of the job, or the built-in one. It is never
// nil; after an error it may lack what was wrong.
func (c *checker) workshop() *Workshop {
	if len(c.workshops) == 0 {
		return c.builtin()
	}
	for _, extra := range c.workshops[1:] {
		c.report(fault(extra.DefRange(), "A second workshop", "A job is made in one workshop; the first is at %s:%d. Leave one of them out.",
			c.workshops[0].DefRange().Filename, c.workshops[0].DefRange().Start.Line))
	}
	return c.buildWorkshop(c.workshops[0])
}

// builtin is the built-in workshop. Each job has one of its own, so that a what-if on it reaches no other.
func (c *checker) builtin() *Workshop {
	read := readBuiltin()
	c.report(read.found...)
	return read.shop.copied()
}

// copied is a workshop that shares no list with the original.
func (w Workshop) copied() *Workshop {
	w.Machines, w.Holdings = slices.Clone(w.Machines), slices.Clone(w.Holdings)
	w.Tools, w.Instruments = slices.Clone(w.Tools), slices.Clone(w.Instruments)
	for i, m := range w.Machines {
		w.Machines[i].Speeds, w.Machines[i].ChangeWheels, w.Machines[i].Dials = slices.Clone(m.Speeds), slices.Clone(m.ChangeWheels), slices.Clone(m.Dials)
	}
	for i, h := range w.Holdings {
		w.Holdings[i].Sizes, w.Holdings[i].Plates, w.Holdings[i].Direct = slices.Clone(h.Sizes), slices.Clone(h.Plates), slices.Clone(h.Direct)
	}
	for i, t := range w.Tools {
		w.Tools[i].Sizes, w.Tools[i].Threads, w.Tools[i].Pitches = slices.Clone(t.Sizes), slices.Clone(t.Threads), slices.Clone(t.Pitches)
	}
	return &w
}

// builtinRead is what reading the built-in workshop gave.
type builtinRead struct {
	shop  *Workshop
	found Diagnostics
}

// readBuiltin reads the built-in workshop once, with the same code as any other.
var readBuiltin = sync.OnceValue(func() builtinRead {
	source := Source{builtinName, builtinWorkshop}
	own := newChecker(&Sources{sources: []Source{source}})
	body, found := parseSource(source)
	own.report(found...)
	if body == nil || len(body.Blocks) != 1 {
		return builtinRead{&Workshop{BuiltIn: true}, own.found}
	}
	w := own.buildWorkshop(body.Blocks[0])
	w.BuiltIn = true
	return builtinRead{w, own.found}
})

func (c *checker) buildWorkshop(block *hclsyntax.Block) *Workshop {
	inches := c.drawnIn(block)
	e := c.enter(block, "", inches, workshopShape, nameLabel)
	c.evaluateEntry(e)
	w := &Workshop{Name: e.name, Range: e.head()}
	for _, b := range block.Body.Blocks {
		switch b.Type {
		case "machine":
			w.Machines = appendKnown(w.Machines, c.machine, b, inches)
		case "holding":
			w.Holdings = appendKnown(w.Holdings, c.holding, b, inches)
		case "tool":
			w.Tools = appendKnown(w.Tools, c.tool, b, inches)
		case "measuring":
			w.Instruments = appendKnown(w.Instruments, c.instrument, b, inches)
		}
	}
	c.oneName(block, "machine", "holding", "tool", "measuring")
	return w
}

// appendKnown reads a block and keeps what came out whole.
func appendKnown[T any](list []T, read func(*hclsyntax.Block, bool) (T, bool), b *hclsyntax.Block, inches bool) []T {
	if item, ok := read(b, inches); ok {
		list = append(list, item)
	}
	return list
}

// oneName reports things of one list that cannot be told apart. A thing without
// a name is called by its kind.
func (c *checker) oneName(block *hclsyntax.Block, words ...string) {
	type key struct{ word, name string }
	first := map[key]*hclsyntax.Block{}
	for _, b := range block.Body.Blocks {
		if !slices.Contains(words, b.Type) || len(b.Labels) != 1 {
			continue
		}
		name, known := literalText(b, "name")
		if !known {
			continue
		}
		k := key{b.Type, cmp.Or(name, b.Labels[0])}
		if b.Type == "tool" {
			k.name = b.Labels[0] + "/" + k.name // taps and dies may both be called "metric"
		}
		other, taken := first[k]
		if !taken {
			first[k] = b
			continue
		}
		c.report(fault(b.DefRange(), fmt.Sprintf("Two of %s %q cannot be told apart", b.Type, cmp.Or(name, b.Labels[0])),
			"The other is in line %d. Give one a name of its own: name = \"...\".", other.DefRange().Start.Line))
	}
}

// literalText is the text of an attribute before anything is evaluated, empty
// when it is not written; not known when it is no plain text.
func literalText(b *hclsyntax.Block, name string) (string, bool) {
	a := b.Body.Attributes[name]
	if a == nil {
		return "", true
	}
	template, ok := a.Expr.(*hclsyntax.TemplateExpr)
	if !ok || !template.IsStringLiteral() {
		return "", false
	}
	v, found := template.Value(nil)
	return v.AsString(), !found.HasErrors()
}

// drawnIn reads drawn_in, which decides the unit of every bare figure in the
// block and is therefore read before all others.
func (c *checker) drawnIn(b *hclsyntax.Block) bool {
	unit, known := literalText(b, "drawn_in")
	if !known || unit != "" && unit != "mm" && unit != "inch" {
		c.report(fault(b.Body.Attributes["drawn_in"].Expr.Range(), "drawn_in names no unit",
			`Write drawn_in = "mm" or drawn_in = "inch".`))
	}
	return unit == "inch"
}

// thing reads what machines, holdings, tools and instruments have in common: a
// kind as the label, and a name, which is the kind when none is written.
func (c *checker) thing(b *hclsyntax.Block, inches bool, shapes map[string]shapeOf, kinds []string) (*entry, string) {
	if len(b.Labels) == 0 {
		e := &entry{word: b.Type, block: b}
		c.checkLabels(e, kindLabel)
		return e, ""
	}
	shape, known := shapes[b.Labels[0]]
	if !known {
		e := &entry{word: b.Type, block: b, broken: true}
		c.report(fault(b.LabelRanges[0], fmt.Sprintf("There is no %s %q", b.Type, b.Labels[0]), "%s", orList(b.Labels[0], kinds)))
		return e, ""
	}
	e := c.enter(b, "", inches, shape.with(may("name", kindText), may("note", kindText)), kindLabel)
	c.evaluateEntry(e)
	if name := e.text("name"); name != "" {
		return e, name
	}
	return e, e.name
}

// orList names the nearest word, and all of them.
func orList(word string, known []string) string {
	return spaced(nearestHint(word, known)) + "Known are " + listed(known) + "."
}

// pair reads a list of two lengths, the lower one first; 0, 0 when not written.
func (c *checker) pair(e *entry, name string) (low, high units.Length) {
	list := e.lengths(name)
	if len(list) == 0 {
		return 0, 0
	}
	if len(list) != 2 || list[0] < 0 || list[0] >= list[1] {
		c.fail(e, e.at(name), fmt.Sprintf("%s is not a range", name), "Write the lower and the upper end, like %s = [2, 80].", name)
		return 0, 0
	}
	return list[0], list[1]
}

// ascending reads a list of lengths above 0 and sorts it.
func (c *checker) ascending(e *entry, name string) []units.Length {
	list := e.lengths(name)
	slices.Sort(list)
	if len(list) > 0 && list[0] <= 0 {
		c.fail(e, e.at(name), fmt.Sprintf("%s holds a size that is not above 0", name), "Write sizes above 0.")
	}
	return slices.Compact(list)
}
