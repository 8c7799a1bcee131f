// Package shape knows the metal: what the finished part is made of, what each operation takes away, and so what is left at any
// moment of the work.
//
// In: a checked part. Out: its outside blocks and its holes along the axis, the stock as it lies around the part, operations as plain facts
// (Op), and the in-process shape after any set of operations. The shape after a set of operations does not hang on their order: turning lowers the
// outside, boring raises the inside, facing shortens, and these commute. Positions and radii are millimetres in the part's own frame.
package shape
