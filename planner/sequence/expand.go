package sequence

// moves calls yield for every step worth trying from s, which has absorbed what it can. In a class that is entered, an
// operation that will be absorbed there comes first for nothing (see absorb.go), so it stands for all steps into that class.
// What a verdict says is not asked here.
func (m *model) moves(s state, ready Set, yield func(op, choice int)) {
	entered := m.entered
	clear(entered)
	for c := range m.classes {
		if c == s.class {
			continue
		}
		for left := m.absorption.free[c] & ready; left != 0; left = left.rest() {
			op := left.first()
			if m.absorbsAnyway(op, c, s.done) {
				entered[c] = true
				yield(op, int(m.absorption.at[c][op]))
				break
			}
		}
	}
	for ; ready != 0; ready = ready.rest() {
		op := ready.first()
		for k := range m.choices[op] {
			c := &m.choices[op][k]
			if entered[c.class] || m.plain && c.class == s.class && c.excess == 0 && m.triangle {
				continue
			}
			yield(op, k)
		}
	}
}

// absorbsAnyway reports whether op is absorbed in class c whatever verdicts say and links remember.
func (m *model) absorbsAnyway(op, c int, done Set) bool {
	if m.plain {
		return true
	}
	k := m.absorption.at[c][op]
	return m.choices[op][k].mask == 0 && !m.links.tied.Has(op) && m.settled(op, done)
}
