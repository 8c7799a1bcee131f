package partspec

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"catchplate/partspec/units"
)

// evaluate works out a field once. Fields that its expression names are worked
// out first; the call stack is the search path, so that a field met while it is
// busy closes a circle.
func (c *checker) evaluate(f *field, path []*field) {
	switch f.state {
	case fieldKnown, fieldFailed:
		return
	case fieldBusy:
		c.circle(path[slices.Index(path, f):])
		return
	}
	if len(path) > maxChain {
		f.state, f.owner.broken = fieldFailed, true
		c.report(fault(f.at, "Too many sizes rest on one another",
			"At most %d in a row are worked out: write a figure for this one.", maxChain))
		return
	}
	f.state = fieldBusy
	v, ok := c.work(f, append(path, f))
	if f.state == fieldFailed || !ok { // a circle may have failed it meanwhile
		f.state, f.owner.broken = fieldFailed, true
		return
	}
	f.state, f.value = fieldKnown, v
}

// work turns the expression of a field into its value.
func (c *checker) work(f *field, path []*field) (value, bool) {
	if f.kind == kindPattern {
		return c.patternName(f)
	}
	if problem := checkExpression(f.expr); problem != nil {
		c.report(problem)
		return value{}, false
	}
	names := newTree()
	for _, traversal := range f.expr.Variables() {
		if !c.bind(names, traversal, f, path) {
			return value{}, false
		}
	}
	v, problem := calculate(f.expr, &hcl.EvalContext{Variables: names.variables(f.owner.inches), Functions: functions})
	if problem != nil {
		c.report(problem)
		return value{}, false
	}
	result, err := convert(f, v, c.files)
	if err != nil {
		c.report(fault(f.at, fmt.Sprintf("%s of %s: %s", f.name, f.owner.title(), err.summary), "%s", err.detail))
		return value{}, false
	}
	return result, true
}

// calculate runs hcl's evaluation. It reports at most one problem, and turns a
// panic in the arithmetic library into one too.
func calculate(expr hclsyntax.Expression, context *hcl.EvalContext) (v cty.Value, problem *Diagnostic) {
	defer func() {
		if recover() != nil {
			problem = fault(expr.Range(), "Cannot work this out", "The figures of this expression have no result.")
		}
	}()
	v, found := expr.Value(context)
	if found.HasErrors() {
		at := expr.Range()
		if found[0].Subject != nil {
			at = *found[0].Subject
		}
		return v, fault(at, "Cannot work this out", "%s", plainer(found[0]))
	}
	return v, nil
}

// plainer says in plain words why hcl could not work an expression out.
func plainer(d *Diagnostic) string {
	switch d.Summary {
	case "Operation failed":
		return "Something is divided by 0: write another figure."
	case "Not enough function arguments", "Too many function arguments":
		return "Write the figures in the brackets of the function: max(3, 5), sqrt(2)."
	}
	return d.Detail + " Write a figure there."
}

// circle reports values that need one another: one message at the first of
// them, with a line for each step.
func (c *checker) circle(members []*field) {
	var steps []string
	for i, f := range members {
		f.state = fieldFailed
		f.owner.broken = true
		next := members[(i+1)%len(members)]
		const shownSteps = 8
		if i == shownSteps {
			steps = append(steps, "and so on")
		}
		if i >= shownSteps {
			continue
		}
		steps = append(steps, fmt.Sprintf("%s (%s:%d) needs %s", f.path(), f.at.Filename, f.at.Start.Line, next.path()))
	}
	if len(members) == 1 {
		c.report(fault(members[0].at, fmt.Sprintf("%s needs itself", members[0].path()), "Write a figure."))
		return
	}
	c.report(fault(members[0].at, "These sizes need one another",
		"%s. Write a figure for one of them.", strings.Join(steps, "; ")))
}

// evaluateParts works out every field of every part and fit, and of the strays.
func (c *checker) evaluateParts() {
	for _, p := range c.parts {
		for _, e := range p.all() {
			c.evaluateEntry(e)
		}
	}
	for _, e := range slices.Concat(c.fits, c.strays) {
		c.evaluateEntry(e)
	}
}

func (c *checker) evaluateEntry(e *entry) {
	for _, f := range e.fields {
		c.evaluate(f, nil)
	}
}

// bare is the length of a bare 1 in the entry.
func (e *entry) bare() units.Length {
	if e.inches {
		return units.Inch
	}
	return units.MM
}
