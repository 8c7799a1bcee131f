package sequence

// DefaultBudget is the budget in nodes that Solve uses when it is given none: some 20 to 30 seconds and 1 GiB where it is spent to the end.
const DefaultBudget = 30_000_000

// Solve finds the cheapest order of a problem, or the best one found within a budget of nodes (0 means DefaultBudget) with
// the bound proven by then. Nodes are the states kept, the entries of the tables behind the bound, and a share of what is tried for them. The error is about a
// problem that is not well formed; that there is no order is not an error but said in Result.Blocked.
func Solve(p *Problem, budget int) (Result, error) {
	if err := p.Validate(); err != nil {
		return Result{}, err
	}
	if budget <= 0 {
		budget = DefaultBudget
	}
	l := list(p)
	r := solve(l.p, budget)
	l.restore(&r)
	return r, nil
}

// solve works on a problem as listing puts it.
func solve(q *Problem, budget int) Result {
	m := newModel(q, nil)
	s := newSearch(m, newEstimator(m, budget), budget)
	if s.run(firstTry) {
		return s.conclude(m, true)
	}
	if m.conditional {
		if s.incumbent == nil {
			if r := newRoam(m, firstRoam); r.blocked() {
				return Result{Proven: true, Stats: s.stats, Blocked: r.explain()}
			}
		}
		sharp := sharpen(q)
		if sharp.hopeless {
			return Result{Proven: true, Blocked: newRoam(m, mostRoamed).explain()}
		}
		sharper := newModel(sharp.p, sharp.altOf)
		s = newSearch(sharper, newEstimator(sharper, budget), budget)
	}
	return s.conclude(m, s.alternate(budget))
}

// conclude makes the result of a search, over or not. The model is that of the problem as it was listed, not sharpened.
func (s *search) conclude(m *model, finished bool) Result {
	r := s.result()
	if s.incumbent != nil {
		m.tidy(r.Order)
		return r
	}
	if roam := newRoam(m, mostRoamed); roam.blocked() {
		r.Blocked, r.Proven = roam.explain(), true
	} else {
		r.Blocked, r.Proven = s.blockedByLinks(), finished
	}
	return r
}

func newEstimator(m *model, budget int) estimator {
	if m.p.Between != nil {
		return newMatrixBound(m)
	}
	return newProjections(m, budget)
}

// firstTry is how many states and entries are tried before a problem with verdicts is sharpened, which asks for many of them.
const firstTry = 5_000

// firstRoam is how many sets of operations are looked at, before that, to see whether there is an order at all.
const firstRoam = 2_000

// rounds is the plan of a search: exact search up to a number of states and entries kept, then a beam for an incumbent that cuts its queue. Small problems are
// over before the first beam.
var rounds = []struct{ kept, width int }{
	{10_000, 30},
	{500_000, 200},
}

// lastWidth is the width of the beam that uses the last part of a budget for a better order, once the proof is given up.
const lastWidth = 1000

// alternate runs search and beams until the incumbent is proven (true) or the budget is spent (false).
func (s *search) alternate(budget int) bool {
	for _, r := range rounds {
		if s.run(r.kept) {
			return true
		}
		if r.kept < budget {
			s.beam(min(r.width, s.m.affordable(budget/beamShare)))
		}
	}
	s.budget = budget - budget/beamShare
	if s.run(budget) {
		return true
	}
	s.beam(min(lastWidth, s.m.affordable(budget/beamShare)))
	if s.incumbent == nil {
		s.beam(lastWidth) // verdicts or links led a narrow beam into dead ends: an order is worth more than the budget
	}
	return s.run(0)
}

// beamShare is the part of a budget that one beam may take: a fifth.
const beamShare = 5

// affordable returns how wide a beam may be that is to spend no more than the given nodes. Of the alternatives of all operations one in eight is
// taken to be a next step of a state, the others being done or waiting: our estimate, on the high side where precedence is tight.
func (m *model) affordable(nodes int) int {
	choices := 0
	for _, c := range m.choices {
		choices += len(c)
	}
	return max(1, nodes*madePerNode*8/(m.n*choices))
}

func (s *search) result() Result {
	r := Result{Stats: s.stats}
	r.Stats.Stored, r.Stats.Projected = s.store.n+s.beamed, s.bound.entries()
	if s.incumbent != nil {
		r.Order, r.Cost, r.Bound = s.incumbent, int(s.m.base+s.best), int(s.m.base+s.lower())
		r.Proven = r.Bound == r.Cost
	}
	return r
}
