// Package rules holds the practice of the trade as data: each rule is a head that can be printed (what, why, how sure, from where)
// and one small function that fires it.
//
// In: operations and cases as plain facts. Out: arcs of order, verdicts on holdings, cautions, each with the rule's ID. Four classes, four
// ordered lists (all.go). No rule hides in the planner's own code: leaving a rule out of a Set changes plans, and a test shows that each does.
package rules

import (
	"fmt"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// Arc says that one operation comes before another. With an End it binds only when the later one is done with that end free.
type Arc struct {
	Before, After int // indices of operations
	End           partspec.End
	Rule          string
}

// Order is a rule of precedence.
type Order struct {
	plan.Rule
	Arcs func(w Work) []Arc
}

// Work is what a rule of order sees.
type Work struct {
	Part *partspec.Part
	Ops  []shape.Op
	Free partspec.End // the free end while the part hangs on its bar; EndInvalid for a blank
	// FromEnd reports whether an operation can be done with that end free, in the ordinary way.
	FromEnd func(op int, end partspec.End) bool
	Length  float64
}

// Number is a rule that gives figures; the packages that use the figures cite its ID and ask a Set whether it is in force.
type Number struct{ plan.Rule }

// Holding is a rule that allows or refuses a way of holding for an operation.
type Holding struct {
	plan.Rule
	Judge func(c Case) Verdict
}

// Verdict is a rule's answer about a case. The zero Verdict is "no objection".
type Verdict struct {
	Refused bool
	Reason  string // with the figures
	Rule    string

	format string // of the reason: most verdicts are asked for only to be counted
	args   []any
}

// Caution is a rule that prints a warning.
type Caution struct {
	plan.Rule
	Applies func(s plan.Setup, o plan.Operation) bool
	Print   string
}

// Set is the rules in force.
type Set struct {
	Orders   []Order
	Numbers  []Number
	Holdings []Holding
	Cautions []Caution
	known    map[string]bool // every ID; made by indexed
	out      map[string]bool // left out
}

// indexed is the set with its IDs noted.
func (s Set) indexed() Set {
	s.known = map[string]bool{}
	for _, h := range s.Heads() {
		s.known[h.ID] = true
	}
	return s
}

// Without is the set with one rule left out.
func (s Set) Without(id string) Set {
	out := map[string]bool{id: true}
	for k := range s.out {
		out[k] = true
	}
	s.out = out
	return s
}

// Has reports whether a rule is in force. An ID that no rule bears is a slip in the program and never in force.
func (s Set) Has(id string) bool {
	return s.known[id] && !s.out[id]
}

// Head finds a rule's head, in force or not.
func (s Set) Head(id string) (plan.Rule, bool) {
	for _, h := range s.Heads() {
		if h.ID == id {
			return h, true
		}
	}
	return plan.Rule{}, false
}

// Heads lists every rule's head in written order.
func (s Set) Heads() []plan.Rule {
	var heads []plan.Rule
	for _, r := range s.Orders {
		heads = append(heads, r.Rule)
	}
	for _, r := range s.Holdings {
		heads = append(heads, r.Rule)
	}
	for _, r := range s.Numbers {
		heads = append(heads, r.Rule)
	}
	for _, r := range s.Cautions {
		heads = append(heads, r.Rule)
	}
	return heads
}

// Arcs collects what the rules of order say about a piece of work.
func (s Set) Arcs(w Work) []Arc {
	var arcs []Arc
	for _, r := range s.Orders {
		if s.out[r.ID] {
			continue
		}
		for _, a := range r.Arcs(w) {
			if a.Before != a.After {
				a.Rule = r.ID
				arcs = append(arcs, a)
			}
		}
	}
	return arcs
}

// Judge asks every rule of holding about a case; the objections come in written order.
func (s Set) Judge(c Case) []Verdict {
	var refused []Verdict
	for _, r := range s.Holdings {
		if s.out[r.ID] {
			continue
		}
		if v := r.Judge(c); v.Refused {
			v.Rule, v.Reason = r.ID, fmt.Sprintf(v.format, v.args...)
			refused = append(refused, v)
		}
	}
	return refused
}

// Allows reports whether no rule of holding objects to a case.
func (s Set) Allows(c Case) bool {
	for _, r := range s.Holdings {
		if !s.out[r.ID] && r.Judge(c).Refused {
			return false
		}
	}
	return true
}

// Warn collects the cautions that a setup's operations call for, each once.
func (s Set) Warn(setups []plan.Setup) []plan.Caution {
	var cautions []plan.Caution
	for _, r := range s.Cautions {
		if !s.out[r.ID] && appliesAnywhere(r, setups) {
			cautions = append(cautions, plan.Caution{Text: r.Print, Rule: r.ID})
		}
	}
	return cautions
}

func appliesAnywhere(r Caution, setups []plan.Setup) bool {
	for _, s := range setups {
		for _, o := range s.Operations {
			if r.Applies(s, o) {
				return true
			}
		}
	}
	return false
}
