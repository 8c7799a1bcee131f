// Package dial turns sizes into what a hand does at a dial: whole graduations,
// turns and graduations, and where to set the ring to zero again.
//
// In flow: a dial (graduation, turn, what it reads), the size at touch-off, the
// sizes wanted and their limits. Out flow: settings in whole graduations counted
// from the zero, the size that each makes, the metal that it leaves, and whether
// the limits are met; or a verdict that this dial cannot promise them.
//
// What holds after: every setting is an integer of graduations, and
// turns x graduations a turn + rest is its total; a setting is reckoned from the
// absolute place, never by adding up rounded steps; rounding leaves metal on
// unless the limits ask for the next graduation; nothing is called inside
// limits that is not.
//
// A reading is what the dial's own figures count: on a dial that reads the
// diameter, graduation and turn are given on diameter.
package dial
