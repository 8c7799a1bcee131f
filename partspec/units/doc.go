// Package units holds the quantities of the trade, reads them as a drawing
// writes them, and is the one place where they become text for people.
//
// In flow: text from a drawing ("1 7/8 in", "16 swg", "20 +0.02 -0") and plain
// numbers. Out flow: Length, Angle, Force, Speed and Minutes, and their text.
//
// What holds after: every Length that a parser here returns is finite, in
// millimetres, the float64 nearest the exact value of what was written, and not
// beyond MaxLength. Text never shows more figures than the value carries to the
// micrometre, and marks a rounded inch figure with "≈".
package units
