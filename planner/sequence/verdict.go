package sequence

// verdicts asks Problem.Allowed and remembers every answer under (choice, done & mask).
type verdicts struct {
	m     *model
	known map[verdictKey]bool
	asked int
}

type verdictKey struct {
	op, choice uint8
	done       Set
}

func newVerdicts(m *model) verdicts {
	return verdicts{m: m, known: map[verdictKey]bool{}}
}

// allowed reports whether the choice'th choice of op may be taken once the operations in done are done.
func (v *verdicts) allowed(op, choice int, done Set) bool {
	c := &v.m.choices[op][choice]
	if c.mask == 0 {
		return true
	}
	key := verdictKey{uint8(op), uint8(choice), done & c.mask}
	ok, known := v.known[key]
	if !known {
		ok = v.m.p.Allowed(v.m.opOf[op], c.alt, v.m.toProblem(key.done))
		v.known[key] = ok
		v.asked++
	}
	return ok
}
