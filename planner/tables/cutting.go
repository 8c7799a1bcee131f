package tables

import (
	"strings"
	"sync"
)

// CuttingRule is a rule of thumb with its range. A bare end is zero. In the
// deep-hole rows ("reduce at depth …") Low is the cut of the speed and High that
// of the feed.
type CuttingRule struct {
	Operation, Parameter, AppliesTo string
	Range                           Range
	Unit                            string
	Rule                            string
	Source                          string
	FromMemory                      bool
}

func parseCuttingRule(r *record) CuttingRule {
	c := CuttingRule{
		Operation: r.need("operation"), Parameter: r.need("parameter"), AppliesTo: r.need("applies_to"),
		Range: Range{r.number("low"), r.number("high")}, Unit: r.text("unit"), Rule: r.text("rule"),
	}
	c.Source, c.FromMemory = r.provenance("source")
	return c
}

var cuttingRules = sync.OnceValue(func() []CuttingRule { return mustLoad("cutting.csv", parseCuttingRule) })

func (c *CuttingRule) of(operation, parameter string) bool {
	return (operation == "" || c.Operation == operation) && (parameter == "" || c.Parameter == parameter)
}

// CuttingRules lists the rules of an operation and a parameter ("drill",
// "feed"); an empty argument matches all.
func CuttingRules(operation, parameter string) []CuttingRule {
	var found []CuttingRule
	for _, c := range cuttingRules() {
		if c.of(operation, parameter) {
			found = append(found, c)
		}
	}
	return found
}

// FindCutting returns the first rule of an operation and a parameter whose
// range of use begins with or contains the given words.
func FindCutting(operation, parameter, appliesTo string) (CuttingRule, bool) {
	for _, c := range cuttingRules() {
		if c.of(operation, parameter) && strings.Contains(c.AppliesTo, appliesTo) {
			return c, true
		}
	}
	return CuttingRule{}, false
}
