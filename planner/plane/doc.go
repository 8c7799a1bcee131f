// Package plane is the exact plane geometry of outlines.
//
// In flow: lines and circular arcs of the plane, in millimetres. Out flow: regions, whether and how far a point lies in them, their areas and
// centres of area, what they are when their edges are moved, and what figures and tools' paths have in common.
//
// What holds: a Region's rim is closed, anticlockwise and does not cross itself when it is given so; nothing here changes its arguments. Every area,
// distance and crossing is in closed form; nothing is sampled.
package plane
