package process

import (
	"fmt"

	"catchplate/partspec"
	"catchplate/planner/numbers/steps"
)

// Memo keeps step tables, which take long to work out, for all contexts of a part that differ only in how its holes are made.
type Memo struct{ tables map[string]kept }

type kept struct {
	table steps.Table
	err   error
}

// NewMemo is an empty Memo.
func NewMemo() *Memo { return &Memo{tables: map[string]kept{}} }

// fewest is steps.Fewest for a feature and a cutter, worked out once.
func (m *Memo) fewest(feature string, kind partspec.ToolKind, d float64, r steps.Request) (steps.Table, error) {
	if m == nil {
		return steps.Fewest(r)
	}
	key := fmt.Sprintf("%s %s %g", feature, kind, d)
	if k, ok := m.tables[key]; ok {
		return k.table, k.err
	}
	table, err := steps.Fewest(r)
	m.tables[key] = kept{table, err}
	return table, err
}
