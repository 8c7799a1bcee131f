// Package solid is the exact half-plane geometry of turned shapes.
//
// In flow: lines and circular arcs in the half plane (z along the axis, r the radius), all in millimetres. Out flow: bodies of
// revolution, what is left of them after a tool has passed, their volumes and walls, and whether one lies inside another.
//
// What holds: a Curve gives one radius for each z; its pieces are sorted, do not overlap, and are wider than Snap. A Body has metal exactly
// where its outer curve lies above its inner one, and both have the same pieces' ends. All values are new: nothing here changes its
// arguments. No function panics or fails on finite input; where there is no metal, the answer is an empty Curve or Body.
//
// Every crossing, extreme and volume is in closed form; nothing is sampled. What rounding there is, tolerance.go bounds.
package solid
