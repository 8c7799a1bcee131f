package partspec

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/zclconf/go-cty/cty"
)

// bind looks one name of an expression up, works it out, and puts it where the
// evaluation will look for it.
func (c *checker) bind(names *tree, traversal hcl.Traversal, f *field, path []*field) bool {
	steps, ok := c.steps(traversal)
	if !ok {
		return false
	}
	if _, constant := constants(false)[steps[0]]; constant && len(steps) == 1 {
		return true
	}
	target, ok := c.lookup(steps, traversal)
	if !ok {
		return false
	}
	c.evaluate(target, path)
	if target.state != fieldKnown {
		return false // told already
	}
	v, ok := target.forReference(f.owner.inches)
	if !ok {
		c.report(fault(traversal.SourceRange(), fmt.Sprintf("%s is not a figure", strings.Join(steps, ".")),
			"An expression can name sizes, angles and figures."))
		return false
	}
	names.put(steps, v)
	return true
}

// steps are the words of a name; an index is refused.
func (c *checker) steps(traversal hcl.Traversal) ([]string, bool) {
	steps := []string{traversal.RootName()}
	for _, step := range traversal[1:] {
		name, ok := step.(hcl.TraverseAttr)
		if !ok {
			c.report(fault(traversal.SourceRange(), "A name takes no index",
				"Write names with points: part.tube.spigot.lower.diameter."))
			return nil, false
		}
		steps = append(steps, name.Name)
	}
	return steps, true
}

// lookup finds the field that a name means: part.NAME.ATTRIBUTE, the same of its
// outline or stock, or part.NAME.WORD.LABEL.ATTRIBUTE. A feature that has been made and measured
// answers with its as-made diameter.
func (c *checker) lookup(steps []string, traversal hcl.Traversal) (*field, bool) {
	at := traversal.SourceRange()
	const partSteps, blockSteps, featureSteps = 3, 4, 5
	if steps[0] != "part" || len(steps) < partSteps || len(steps) > featureSteps {
		known := append(constantNames(), "part")
		c.report(fault(at, fmt.Sprintf("Unknown name %s", strings.Join(steps, ".")),
			"%sNames are mm, inch, thou, deg, part.NAME.length, part.NAME.outline.width, part.NAME.stock.diameter and part.NAME.WORD.LABEL.ATTRIBUTE, as in part.tube.spigot.lower.diameter.",
			spaced(nearestHint(steps[0], known))))
		return nil, false
	}
	i := slices.IndexFunc(c.parts, func(p *partEntry) bool { return p.name == steps[1] })
	if i < 0 {
		if !c.unread {
			c.report(fault(at, fmt.Sprintf("There is no part %q", steps[1]), "%s", didYouMean(steps[1], c.partNames(), noParts)))
		}
		return nil, false
	}
	e := c.parts[i].entry
	switch len(steps) {
	case blockSteps:
		if e = c.lookupBlock(c.parts[i], steps, at); e == nil {
			return nil, false
		}
	case featureSteps:
		if e = c.lookupFeature(c.parts[i], steps, at); e == nil {
			return nil, false
		}
	}
	name := steps[len(steps)-1]
	if made := e.field("measured"); made != nil && name == "diameter" {
		return made, true
	}
	if target := e.field(name); target != nil {
		return target, true
	}
	c.report(fault(at, fmt.Sprintf("%s does not say its %s", e.path(), name),
		"%sOnly what is written can be named: write %s there.", spaced(nearestHint(name, e.fieldNames())), name))
	return nil, false
}

// lookupBlock finds the outline or the stock of a part.
func (c *checker) lookupBlock(p *partEntry, steps []string, at Range) *entry {
	block := map[string]*entry{"outline": p.outline, "stock": p.stock}[steps[2]]
	if block == nil {
		c.report(fault(at, fmt.Sprintf("part %q has no block %s", p.name, steps[2]), "With one word behind the part stand outline and stock; a feature has its name as well, as in part.tube.spigot.lower.diameter."))
	}
	return block
}

func (c *checker) lookupFeature(p *partEntry, steps []string, at Range) *entry {
	word, label := steps[2], steps[3]
	var labels []string
	for _, e := range p.features {
		if e.name == label && e.word == word {
			return e
		}
		labels = append(labels, e.word+"."+e.name)
	}
	c.report(fault(at, fmt.Sprintf("part %q has no %s %q", p.name, word, label), "%s", didYouMean(word+"."+label, labels, noFeatures)))
	return nil
}

// forReference is the value as an expression of another field sees it: lengths
// in the unit of that field's part.
func (f *field) forReference(inches bool) (cty.Value, bool) {
	switch f.kind {
	case kindSize, kindLength, kindPosition:
		mm := decimal(float64(f.value.size.Nominal.Value))
		if inches {
			return mm.Divide(mmInInch), true
		}
		return mm, true
	case kindAngle, kindNumber, kindCount, kindTurn:
		return decimal(f.value.number), true
	}
	return cty.NilVal, false
}

func (e *entry) fieldNames() []string {
	var names []string
	for _, f := range e.fields {
		names = append(names, f.name)
	}
	return names
}

func (c *checker) partNames() []string {
	var names []string
	for _, p := range c.parts {
		names = append(names, p.name)
	}
	return names
}

// tree gathers the values an expression names as nested objects.
type tree struct {
	value    cty.Value
	branches map[string]*tree
}

func newTree() *tree { return &tree{value: cty.NilVal, branches: map[string]*tree{}} }

func (t *tree) put(steps []string, v cty.Value) {
	for _, step := range steps {
		if t.branches[step] == nil {
			t.branches[step] = newTree()
		}
		t = t.branches[step]
	}
	t.value = v
}

func (t *tree) object() cty.Value {
	if t.value != cty.NilVal {
		return t.value
	}
	attributes := map[string]cty.Value{}
	for name, branch := range t.branches {
		attributes[name] = branch.object()
	}
	return cty.ObjectVal(attributes)
}

func (t *tree) variables(inches bool) map[string]cty.Value {
	all := constants(inches)
	for name, branch := range t.branches {
		all[name] = branch.object()
	}
	return all
}
