// Package tables holds the reference figures of the trade: materials, threads,
// drills, limits and fits, general tolerances, tapers, cutting rules and the
// accuracy of processes and holdings.
//
// In flow: the CSV files under data, embedded, each row with the source of its
// figures. Out flow: typed rows, looked up by key, and lists in a fixed order.
//
// What holds after: every row has a Source; FromMemory is set where that source
// was remembered and not read; lengths are millimetres; a row that was not in a
// table but made by its standard's formula says so. Check reads every file
// whole, and a test calls it, so that a bad row never reaches a user.
package tables
