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
	return solvePlain(newModel(p)), nil
}
