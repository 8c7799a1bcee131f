package sequence

// DefaultBudget is the budget in nodes that Solve uses when it is given none.
const DefaultBudget = 20_000_000

// Solve finds the cheapest order of a problem, or the best one found within a budget of nodes (states kept; 0 means
// DefaultBudget) with the bound proven by then. The error is about a problem that is not well formed; that there is no
// order is not an error but said in Result.Blocked.
func Solve(p *Problem, budget int) (Result, error) {
	if err := p.Validate(); err != nil {
		return Result{}, err
	}
	if budget == 0 {
		budget = DefaultBudget
	}
	m := newModel(p)
	if p.Between != nil {
		return solvePlain(m), nil
	}
	s := newSearch(m, newProjections(m))
	finished := s.run(budget)
	return s.result(finished), nil
}

func (s *search) result(finished bool) Result {
	r := Result{Proven: finished, Stats: s.stats}
	r.Stats.Stored, r.Stats.Projected, r.Stats.Verdicts = s.store.n, s.bound.entries(), s.m.verdicts.asked
	if s.incumbent == nil {
		r.Blocked = &Blocked{}
		return r
	}
	r.Order, r.Cost, r.Bound = s.incumbent, int(s.m.base+s.best), int(s.m.base+s.lower())
	if finished {
		r.Bound = r.Cost
	}
	return r
}
