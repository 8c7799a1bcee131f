package sequence

import "slices"

// sharpened is a problem with the same orders as another, put more strictly: the answers of Allowed were asked beforehand
// where they hang on few operations, and what follows from them was written down. Alternatives that are never allowed are
// gone, masks name only operations that matter, and where every alternative of an operation needs another one done, or not
// done, there is an arc of precedence.
type sharpened struct {
	p        *Problem
	altOf    [][]int // alternative -> alternative of the original problem
	hopeless bool    // it was found that there is no order
}

// sharpen works until nothing more follows.
func sharpen(p *Problem) sharpened {
	q := *p
	s := sharpened{p: &q, altOf: make([][]int, len(p.Ops))}
	q.Ops = slices.Clone(p.Ops)
	q.Prec = slices.Clone(p.Prec)
	for i := range q.Ops {
		q.Ops[i].Alts = slices.Clone(p.Ops[i].Alts)
		for j := range q.Ops[i].Alts {
			s.altOf[i] = append(s.altOf[i], j)
		}
	}
	pred, succ := closure(len(q.Ops), q.Prec)
	q.Allowed = func(op, alt int, done Set) bool {
		original := s.altOf[op][alt]
		return p.Allowed(op, original, fill(done, pred, op)&p.Ops[op].Alts[original].Mask)
	}
	for again := true; again && !s.hopeless; {
		again = false
		for op := range q.Ops {
			arcs := s.learn(op, pred, succ)
			if len(q.Ops[op].Alts) == 0 {
				s.hopeless = true
				return s
			}
			if len(arcs) > 0 {
				again = true
				q.Prec = append(q.Prec, arcs...)
				pred, succ = closure(len(q.Ops), q.Prec)
			}
		}
		for op := range q.Ops {
			s.hopeless = s.hopeless || pred[op].Has(op)
		}
	}
	return s
}

// fill adds what must be done if done is, and if op can be done next.
func fill(done Set, pred []Set, op int) Set {
	all := done | pred[op]
	for s := done; s != 0; s = s.rest() {
		all |= pred[s.first()]
	}
	return all
}

// learn rewrites the alternatives of op and returns arcs that are new.
func (s *sharpened) learn(op int, pred, succ []Set) [][2]int {
	alts, origin := s.p.Ops[op].Alts, s.altOf[op]
	needs, bars := ^Set(0), ^Set(0)
	kept := 0
	for j, a := range alts {
		a.Mask &^= pred[op] | succ[op].With(op)
		var need, bar Set
		if alts[j].Mask != 0 && a.Mask.Len() <= maxHangs {
			c := tabulate(a.Mask.Ops(), pred, func(done Set) bool { return s.p.Allowed(op, j, done) })
			if c.yes == 0 {
				continue
			}
			need, bar = c.needs(), c.bars()
			a.Mask &^= c.idle()
			if c.always() {
				a.Mask = 0
			}
		}
		needs, bars = needs&need, bars&bar
		alts[kept], origin[kept] = a, origin[j]
		kept++
	}
	s.p.Ops[op].Alts, s.altOf[op] = alts[:kept], origin[:kept]
	if kept == 0 {
		return nil
	}
	var arcs [][2]int
	for _, x := range (needs &^ pred[op]).Ops() {
		arcs = append(arcs, [2]int{x, op})
	}
	for _, x := range (bars &^ succ[op]).Ops() {
		arcs = append(arcs, [2]int{op, x})
	}
	return arcs
}
