package replay

import (
	"fmt"
	"strings"
	"sync"

	"catchplate/planner/plan"
)

// Failure is one clause that does not hold.
type Failure struct {
	Part      string `json:"part"`
	Setup     int    `json:"setup"`     // number of the setup; 0 = the part as a whole
	Operation string `json:"operation"` // operation's id; empty = the setup, or the part
	Clause    string `json:"clause"`
	Reason    string `json:"reason"`
}

func (f Failure) String() string {
	place := []string{f.Part}
	if f.Setup > 0 {
		place = append(place, fmt.Sprintf("setup %d", f.Setup))
	}
	if f.Operation != "" {
		place = append(place, f.Operation)
	}
	return strings.Join(place, ", ") + ": " + f.Clause + ": " + f.Reason
}

// record collects what holds and what does not for one part.
type record struct {
	part     string
	failures []Failure
	clauses  []plan.Clause
	known    *known
}

// known is what one world has found that holds in every other, which may be followed at the same time: they need not work it out again.
type known struct {
	curves keys[string] // of seats on which nothing is left, by what was cut
	cuts   keys[cutKey] // that remove metal: in one world is enough
}

// keys is a set that several worlds read and add to at once.
type keys[K comparable] struct{ set sync.Map }

func (k *keys[K]) has(key K) bool {
	_, ok := k.set.Load(key)
	return ok
}

func (k *keys[K]) add(key K) { k.set.Store(key, true) }

// where is the place in the plan that a check looks at.
type where struct {
	setup int
	op    string
}

// fail adds a failure, once for each place and clause: the other ends of a range would only tell the same again.
func (r *record) fail(at where, clause, format string, a ...any) {
	r.add(Failure{r.part, at.setup, at.op, clause, fmt.Sprintf(format, a...)})
}

func (r *record) add(f Failure) {
	for _, old := range r.failures {
		if old.Setup == f.Setup && old.Operation == f.Operation && old.Clause == f.Clause {
			return
		}
	}
	r.failures = append(r.failures, f)
}

// hold adds a clause that was proved.
func (r *record) hold(name, format string, a ...any) {
	r.clauses = append(r.clauses, plan.Clause{Name: name, Text: fmt.Sprintf(format, a...)})
}

// mm shows a length.
func mm(x float64) string {
	s := strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.4f", x), "0"), ".")
	if s == "-0" || s == "" {
		return "0"
	}
	return s
}
