package sequence

// tidy puts operations that follow each other in one setup with one tool into the order in which they are listed, as far as
// precedence and verdicts let neighbours be swapped. That changes no cost, no mounting, and no set of operations done at the end of the stay.
func (m *model) tidy(order []Step) {
	if m.p.Between != nil {
		return
	}
	for again := true; again; {
		again = false
		var done Set
		for k := 0; k+1 < len(order); k++ {
			if x, y := order[k], order[k+1]; y.Op < x.Op && m.swappable(x, y, done) {
				order[k], order[k+1] = y, x
				again = true
			}
			done = done.With(order[k].Op)
		}
	}
}

// swappable reports whether y, which follows x in the same class, can as well come before it.
func (m *model) swappable(x, y Step, done Set) bool {
	a, b := m.p.Ops[x.Op].Alts[x.Alt], m.p.Ops[y.Op].Alts[y.Alt]
	return a.Setup == b.Setup && a.Tool == b.Tool &&
		!m.before(x.Op).Has(y.Op) && !m.before(y.Op).Has(x.Op) &&
		m.permits(y, done) && m.permits(x, done.With(y.Op))
}

// before returns the operations that precedence wants before op, in the problem's terms.
func (m *model) before(op int) Set { return m.toProblem(m.pred[inverse(m.opOf)[op]]) }

// permits asks Problem.Allowed for a step.
func (m *model) permits(s Step, done Set) bool {
	mask := m.p.Ops[s.Op].Alts[s.Alt].Mask
	return mask == 0 || m.p.Allowed == nil || m.p.Allowed(s.Op, s.Alt, done&mask)
}
