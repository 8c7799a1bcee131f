package sequence

import "math/bits"

// MaxOps is the most operations a problem may have: a Set is one machine word.
const MaxOps = 64

// Set is a set of operations: bit i stands for operation i of the problem.
type Set uint64

// SetOf returns the set of the given operations.
func SetOf(ops ...int) Set {
	var s Set
	for _, op := range ops {
		s |= 1 << op
	}
	return s
}

// Has reports whether the set holds operation op.
func (s Set) Has(op int) bool { return s>>op&1 != 0 }

// With returns the set with operation op added.
func (s Set) With(op int) Set { return s | 1<<op }

// Len returns the number of operations in the set.
func (s Set) Len() int { return bits.OnesCount64(uint64(s)) }

// Ops lists the operations of the set in rising order.
func (s Set) Ops() []int {
	ops := make([]int, 0, s.Len())
	for ; s != 0; s = s.rest() {
		ops = append(ops, s.first())
	}
	return ops
}

// first returns the lowest operation of a set that is not empty, rest the set without it:
//
//	for ; s != 0; s = s.rest() { op := s.first() … }
func (s Set) first() int { return bits.TrailingZeros64(uint64(s)) }
func (s Set) rest() Set  { return s & (s - 1) }

// fullSet returns the set of operations 0 … n-1.
func fullSet(n int) Set {
	if n == MaxOps {
		return ^Set(0)
	}
	return 1<<n - 1
}
