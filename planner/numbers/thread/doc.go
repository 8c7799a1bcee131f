// Package thread gives what a thread needs in the shop: its sizes, the drill to
// tap it, how deep to drill, how to feed a screwcutting tool, and the wheels
// that cut its pitch.
//
// In flow: a thread of the tables, the drills, metals and wheels at hand. Out
// flow: sizes in mm, engagement in percent, in-feeds, a wheel train with its
// pitch error, each with rule and source.
//
// What holds after: a chosen drill leaves between half and 90 % of a full
// thread, or the choice says that none does; in-feeds never decrease and end at
// the full depth; a wheel train has the least pitch error of all trains that the
// wheels can make, and of those the fewest wheels.
package thread
