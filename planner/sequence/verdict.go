package sequence

// verdicts asks Problem.Allowed and remembers every answer under (choice, done & mask).
type verdicts struct {
	m     *model
	known map[verdictKey]bool
}

type verdictKey struct {
	op, choice uint8
	done       Set
}

func newVerdicts(m *model) verdicts {
	return verdicts{m: m, known: map[verdictKey]bool{}}
}

// recall returns the verdict on the choice'th choice of op once the operations in done are done, and whether it is known.
func (v *verdicts) recall(op, choice int, done Set) (allowed, known bool) {
	c := &v.m.choices[op][choice]
	if c.mask == 0 {
		return true, true
	}
	if c.when != nil {
		return c.when.holds(done), true
	}
	allowed, known = v.known[verdictKey{uint8(op), uint8(choice), done & c.mask}]
	return allowed, known
}

// allowed returns the verdict, and asks for it if need be.
func (v *verdicts) allowed(op, choice int, done Set) bool {
	ok, known := v.recall(op, choice, done)
	if !known {
		c := &v.m.choices[op][choice]
		ok = v.m.p.Allowed(v.m.opOf[op], c.alt, v.m.toProblem(done&c.mask))
		v.known[verdictKey{uint8(op), uint8(choice), done & c.mask}] = ok
	}
	return ok
}
