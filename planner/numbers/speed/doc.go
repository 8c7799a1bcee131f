// Package speed gives spindle speeds, feeds, depths of cut and cutting times
// for a small workshop.
//
// In flow: a material of the tables, a diameter, an operation, a tool, the
// machine's speeds and the caps that hold. Out flow: the wanted speed, the
// machine's step and what ruled it, feeds in mm a revolution, radial depths in
// mm, minutes, each with rule and source.
//
// What holds after: the chosen speed never lies above a cap, and never more than
// 5 % above the wanted one unless the machine's lowest speed does, which is then
// said; every cut of a plan of passes is above 0 and they add up to the whole.
package speed
