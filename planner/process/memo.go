package process

import (
	"sync"

	"catchplate/planner/mechanics"
	"catchplate/planner/numbers/steps"
)

// Memo keeps what takes long to work out for all contexts of a part that differ only in how its holes are made: step tables, and what jaws do to rings.
// Contexts may ask at once.
type Memo struct {
	mu     sync.Mutex
	tables map[string]*kept
	rings  sync.Map // mechanics.RingGrip -> mechanics.Distortion
}

// kept is one table, worked out by whoever asks first.
type kept struct {
	once  sync.Once
	table steps.Table
	err   error
}

// NewMemo is an empty Memo.
func NewMemo() *Memo { return &Memo{tables: map[string]*kept{}} }

// fewest is steps.Fewest, worked out once for a key, which tells all that the request hangs on.
func (m *Memo) fewest(key string, r steps.Request) (steps.Table, error) {
	if m == nil {
		return steps.Fewest(r)
	}
	k := m.of(key)
	k.once.Do(func() { k.table, k.err = steps.Fewest(r) })
	return k.table, k.err
}

// of is the place of a table.
func (m *Memo) of(key string) *kept {
	m.mu.Lock()
	defer m.mu.Unlock()
	k, ok := m.tables[key]
	if !ok {
		k = &kept{}
		m.tables[key] = k
	}
	return k
}

// Ring is the distortion of a ring in jaws. A plug's is not kept: it hangs on what the plug is made of, which is behind a pointer.
func (m *Memo) Ring(ring mechanics.RingGrip) (mechanics.Distortion, error) {
	if m == nil || ring.Plug != nil {
		return ring.Distortion()
	}
	if d, ok := m.rings.Load(ring); ok {
		return d.(mechanics.Distortion), nil
	}
	d, err := ring.Distortion()
	if err == nil {
		m.rings.Store(ring, d)
	}
	return d, err
}
