package sequence

import (
	"cmp"
	"slices"
)

// listing is a problem listed anew, everything by rank and name, so that nothing after it hangs on how the caller listed it. Its
// Allowed keeps the answers, so that the caller is never asked twice.
type listing struct {
	p       *Problem
	given   *Problem
	opOf    []int   // operation -> operation as given
	altOf   [][]int // operation, alternative -> alternative as given
	setupOf []int   // setup -> setup as given
	asked   int     // questions that went through to the caller
}

func list(given *Problem) *listing {
	q := *given
	l := &listing{p: &q, given: given}
	l.setupOf = sorted(len(given.Setups), func(a, b int) int {
		x, y := given.Setups[a], given.Setups[b]
		return cmp.Or(cmp.Compare(x.Name, y.Name), cmp.Compare(x.Cost, y.Cost))
	})
	q.Setups = pick(given.Setups, l.setupOf)
	toolOf := sorted(len(given.Tools), func(a, b int) int {
		x, y := given.Tools[a], given.Tools[b]
		return cmp.Or(cmp.Compare(x.Name, y.Name), cmp.Compare(x.Cost, y.Cost))
	})
	q.Tools = pick(given.Tools, toolOf)
	l.opOf = sorted(len(given.Ops), func(a, b int) int {
		x, y := given.Ops[a], given.Ops[b]
		return cmp.Or(cmp.Compare(x.Rank, y.Rank), cmp.Compare(x.Name, y.Name))
	})
	q.Ops = pick(given.Ops, l.opOf)
	at, setupAt, toolAt := inverse(l.opOf), inverse(l.setupOf), inverse(toolOf)
	for i := range q.Ops {
		l.listAlts(i, at, setupAt, toolAt)
	}
	q.Prec = make([][2]int, len(given.Prec))
	for i, arc := range given.Prec {
		q.Prec[i] = [2]int{at[arc[0]], at[arc[1]]}
	}
	slices.SortFunc(q.Prec, func(a, b [2]int) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	l.listLinks(at)
	l.listBetween()
	l.keepAnswers()
	return l
}

// sorted returns 0 … n-1 in the order of less; what compares equal keeps its place.
func sorted(n int, compare func(a, b int) int) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, compare)
	return order
}

func pick[T any](from []T, order []int) []T {
	picked := make([]T, len(order))
	for i, k := range order {
		picked[i] = from[k]
	}
	return picked
}

func inverse(order []int) []int {
	at := make([]int, len(order))
	for i, k := range order {
		at[k] = i
	}
	return at
}

// move renames the operations of a set.
func move(s Set, to []int) Set {
	var t Set
	for ; s != 0; s = s.rest() {
		t = t.With(to[s.first()])
	}
	return t
}

func (l *listing) listAlts(i int, at, setupAt, toolAt []int) {
	alts := slices.Clone(l.p.Ops[i].Alts)
	for j := range alts {
		a := &alts[j]
		a.Mask = move(a.Mask, at)
		if l.given.Between == nil {
			a.Setup, a.Tool = setupAt[a.Setup], toolAt[a.Tool]
		}
	}
	order := sorted(len(alts), func(a, b int) int {
		x, y := alts[a], alts[b]
		return cmp.Or(cmp.Compare(x.Setup, y.Setup), cmp.Compare(x.Tool, y.Tool),
			cmp.Compare(x.Own, y.Own), cmp.Compare(x.Risk, y.Risk), cmp.Compare(x.Mask, y.Mask))
	})
	l.p.Ops[i].Alts = pick(alts, order)
	l.altOf = append(l.altOf, order)
}

func (l *listing) listLinks(at []int) {
	l.p.Links = make([]Link, len(l.given.Links))
	for i, link := range l.given.Links {
		moved := Link{A: at[link.A], B: at[link.B]}
		if link.Cross != nil {
			moved.Cross = func(earlier, later, op int) bool {
				return link.Cross(l.setupOf[earlier], l.setupOf[later], l.opOf[op])
			}
		}
		l.p.Links[i] = moved
	}
	slices.SortStableFunc(l.p.Links, func(x, y Link) int {
		return cmp.Or(cmp.Compare(min(x.A, x.B), min(y.A, y.B)), cmp.Compare(max(x.A, x.B), max(y.A, y.B)))
	})
}

func (l *listing) listBetween() {
	if l.given.Between == nil {
		return
	}
	l.p.Between = pick(l.given.Between, l.opOf)
	for i, row := range l.p.Between {
		l.p.Between[i] = pick(row, l.opOf)
	}
}

// usualAnswers is how many answers a problem of a dozen operations asks for, so that the map of them need not be moved while it grows.
const usualAnswers = 1 << 10

func (l *listing) keepAnswers() {
	if l.given.Allowed == nil {
		return
	}
	type question struct {
		op, alt int
		done    Set
	}
	known := make(map[question]bool, usualAnswers)
	l.p.Allowed = func(op, alt int, done Set) bool {
		q := question{op, alt, done}
		answer, ok := known[q]
		if !ok {
			answer = l.given.Allowed(l.opOf[op], l.altOf[op][alt], move(done, l.opOf))
			known[q] = answer
			l.asked++
		}
		return answer
	}
}

// restore puts a result into the terms of the problem as given.
func (l *listing) restore(r *Result) {
	r.Stats.Verdicts = l.asked
	for i, s := range r.Order {
		r.Order[i] = Step{l.opOf[s.Op], l.altOf[s.Op][s.Alt]}
	}
	if r.Blocked == nil {
		return
	}
	r.Blocked.Never = move(SetOf(r.Blocked.Never...), l.opOf).Ops()
	for i := range r.Blocked.Fronts {
		f := &r.Blocked.Fronts[i]
		f.Done = move(f.Done, l.opOf)
		for k := range f.Waiting {
			l.restoreWaiting(&f.Waiting[k])
		}
		slices.SortFunc(f.Waiting, func(a, b Waiting) int { return cmp.Compare(a.Op, b.Op) })
	}
}

func (l *listing) restoreWaiting(w *Waiting) {
	for _, alts := range [][]int{w.Refused, w.Unlinked} {
		for i := range alts {
			alts[i] = l.altOf[w.Op][alts[i]]
		}
		slices.Sort(alts)
	}
	w.Missing = move(w.Missing, l.opOf)
	w.Op = l.opOf[w.Op]
}
