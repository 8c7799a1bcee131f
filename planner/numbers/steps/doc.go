// Package steps finds the shortest table of cuts for a curve on plain slides: so much across, so much in, then file the crests.
//
// In flows a Request: a curve (lines and arcs), a cutter, two dials and the leftover allowed for the file. Out flows a Table of
// dial readings. After Fewest returns without an error these hold, and Table.Check decides them again from the readings alone:
//
//   - Nothing past the curve: no point of the cutter passes the curve at any cut, not even by rounding.
//   - Leftover: over every point of the curve, square to it, no more metal is left than allowed.
//   - One way: within each Run both dials go one way, always deeper.
//   - Fewest: if ProvenFewest, no table on these graduations has fewer cuts.
//
// # Conventions
//
// Across and depth are places in the plane of the drawing, depth positive into the metal. A cut is a plunge: set across, feed to
// depth. It clears everything straight above the cutter's nose. Leaning flanks may clear more, which is not counted on, and never rub (flank.go). Readings are graduations from a dial's zero; at zero
// the cutter's reference point (middle of its width, lowest point) stands at the axis's OriginMM. A touch-off elsewhere is an
// OriginMM elsewhere. Every number given is taken as the decimal it prints as, so 0.02 is 1/50 and 25.4/1000 is 0.0254.
//
// # Never past the curve
//
// Every cutter here is a flat (for a round nose: a point) swept by a disc of the nose radius. It clears the curve when the flat
// stays on or above the curve grown by that radius: lines move out along their normals, arcs change radius, corners become
// half circles, and the highest of these counts (offset.go). Heights are computed with a bound on their rounding error; if
// a graduation falls within the bound, rational arithmetic decides, for every height is a + s*sqrt(p) + sqrt(q) (exact.go).
//
// # Fewest
//
// At one reading across only the deepest admissible cut matters: it clears all that a shallower one clears. So there is one
// candidate for each reading (depth.go). A candidate leaves no more than h where its edge lies under the curve grown by h. That is a
// set of stretches of the curve (cover.go); usually one. The least cover of a line by intervals is greedy: from the left, take
// the interval that covers on from the front and reaches farthest. Its proof is a list of witnesses: the start of the curve,
// then each time the first point past everything that the candidates over the last witness cover. No candidate covers two
// witnesses, so every table has at least as many cuts as there are witnesses, whether or not covers are single
// intervals. Where a cover has several stretches (a wide cutter over a hollow, two bumps) greedy may come out above the
// bound; then a search over the candidates at the leftmost uncovered point closes the gap, or ProvenFewest is false.
//
// Crossings are computed in floating point, so the proof takes a leftover of one millionth of a micrometre more than allowed, and
// the table one less: if both need the same number of cuts, rounding had no say. If they differ, the leftover allowed is met to
// the last decimal (a tie); the shorter table is returned and is within that millionth.
//
// # Leftover at the ends
//
// The leftover is measured along the curve's normals, from the normal at one end to the normal at the other. Where the normal at an
// open end leans over the curve (the edge of a seat), a sliver stands between it and the end face, leftover times the sine of
// the slope wide: an arris, which goes with the burr. A table that clears it too is preferred if it is no longer.
package steps
