package holding

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/planner/process"
	"catchplate/planner/shape"
)

// All that is cut across a grip is lost to it, places that lie apart summed and none counted twice.
func TestWhatIsCutAcrossIsLostToTheGrip(t *testing.T) {
	slot := func(z0, z1 float64) process.Task { return process.Task{Op: shape.Op{Cross: true, Z0: z0, Z1: z1}} }
	m := Mount{Holding: partspec.Holding{Kind: partspec.ThreeJaw}, Z0: 10, Z1: 30, Radius: 12}
	for _, c := range []struct {
		name  string
		tasks []process.Task
		want  float64
	}{
		{"nothing", nil, 0},
		{"one", []process.Task{slot(12, 15)}, 3},
		{"two apart, the later first", []process.Task{slot(20, 26), slot(12, 15)}, 9},
		{"two that overlap", []process.Task{slot(12, 20), slot(15, 22)}, 10},
		{"one within another", []process.Task{slot(12, 22), slot(15, 18)}, 10},
		{"both ends of the grip", []process.Task{slot(0, 11), slot(29, 40)}, 2},
		{"beside it", []process.Task{slot(0, 10), slot(30, 40)}, 0},
	} {
		s := Shop{Tasks: c.tasks, of: make([]partspec.Feature, len(c.tasks))}
		assert.InDelta(t, c.want, s.seatLoss(m, func(int) bool { return true }), 1e-9, c.name)
		assert.Zero(t, s.seatLoss(m, func(int) bool { return false }), c.name)
	}
}
