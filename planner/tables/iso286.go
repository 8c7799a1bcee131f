package tables

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"catchplate/partspec/units"
)

// largestFitSize is where the tables of ISO 286 end here.
const largestFitSize units.Length = 250

// ISO286 returns the deviations of a class such as "H7" (a hole: capital
// letter) or "g6" (a shaft) for a size over 0 and up to 250 mm. A size on the
// edge of a range belongs to the lower one. Holes R to U are made from the
// shaft's letter by the standard's rule and say so.
func ISO286(class string, size units.Length) (Deviations, error) {
	letter, grade, err := splitClass(class)
	if err != nil {
		return Deviations{}, err
	}
	if !(size > 0 && size <= largestFitSize) {
		return Deviations{}, fmt.Errorf("ISO 286 classes are tabled for sizes over 0 up to %s, not %s", largestFitSize, size)
	}
	width, err := toleranceWidth(grade, size)
	if err != nil {
		return Deviations{}, fmt.Errorf("%s: %w", class, err)
	}
	row, ok := deviationRow(letter, grade, size)
	if !ok {
		return Deviations{}, fmt.Errorf("no class %s at %s: ISO 286 letters here are %s", class, size, strings.Join(letters(), " "))
	}
	return row.deviations(width), nil
}

// SplitFit parts "H7/g6" into hole and shaft, and checks that they are.
func SplitFit(fit string) (hole, shaft string, err error) {
	hole, shaft, ok := strings.Cut(strings.ReplaceAll(fit, " ", ""), "/")
	if !ok || !IsHole(hole) || !IsShaft(shaft) {
		return "", "", fmt.Errorf("%q is not a fit: write the hole's class first, like H7/g6", fit)
	}
	return hole, shaft, nil
}

// IsHole reports whether a class has a capital letter, which means a hole.
func IsHole(class string) bool {
	letter, _, err := splitClass(class)
	return err == nil && letter == strings.ToUpper(letter)
}

// IsShaft reports whether a class has a small letter, which means a shaft.
func IsShaft(class string) bool {
	letter, _, err := splitClass(class)
	return err == nil && letter == strings.ToLower(letter)
}

func splitClass(class string) (letter string, grade int, err error) {
	class = strings.TrimSpace(class)
	if err := units.CheckClass(class); err != nil {
		return "", 0, fmt.Errorf("%q: %w", class, err)
	}
	letter = strings.TrimRight(class, "0123456789")
	grade, err = strconv.Atoi(class[len(letter):])
	if err != nil || (letter != strings.ToUpper(letter) && letter != strings.ToLower(letter)) {
		return "", 0, fmt.Errorf("%q is not a class: write a hole like H7 or a shaft like g6", class)
	}
	return letter, grade, nil
}

func toleranceWidth(grade int, size units.Length) (fitRow, error) {
	for _, row := range fitRows() {
		if row.record == "tolerance_grade" && row.letter == "IT"+strconv.Itoa(grade) && row.covers(size, grade) {
			return row, nil
		}
	}
	return fitRow{}, fmt.Errorf("no tolerance grade %d: grades run from 4 to 16", grade)
}

func deviationRow(letter string, grade int, size units.Length) (fitRow, bool) {
	for _, row := range fitRows() {
		if row.record == "deviation" && row.letter == letter && row.covers(size, grade) {
			return row, true
		}
	}
	return mirroredRow(letter, grade, size)
}

// mirroredLetters are the holes that the table leaves to the rule.
var mirroredLetters = []string{"R", "S", "T", "U"}

// mirroredRow makes a hole's deviation from the shaft's of the same letter:
// ES = -ei + delta, with delta = IT(n) - IT(n-1) up to grade 7 and over 3 mm,
// else 0 (ISO 286-1).
func mirroredRow(letter string, grade int, size units.Length) (fitRow, bool) {
	if !slices.Contains(mirroredLetters, letter) {
		return fitRow{}, false
	}
	shaft, ok := deviationRow(strings.ToLower(letter), grade, size)
	if !ok {
		return fitRow{}, false
	}
	delta := 0.0
	if grade <= 7 && size > 3 {
		width, err := toleranceWidth(grade, size)
		finer, errFiner := toleranceWidth(grade-1, size)
		if err != nil || errFiner != nil {
			return fitRow{}, false
		}
		delta = width.micrometres - finer.micrometres
	}
	hole := shaft
	hole.letter, hole.feature, hole.bound = letter, "hole", "ES"
	hole.micrometres = -shaft.micrometres + delta
	hole.source = "computed by the ISO 286-1 rule ES = -ei + delta; " + shaft.source
	return hole, true
}

func (row fitRow) deviations(width fitRow) Deviations {
	d := Deviations{FromMemory: row.fromMemory || width.fromMemory, Source: row.source}
	if width.source != row.source {
		d.Source += "; width: " + width.source
	}
	value, it := micrometres(row.micrometres), micrometres(width.micrometres)
	switch row.bound {
	case "EI", "ei":
		d.Lower, d.Upper = value, value+it
	case "ES", "es":
		d.Lower, d.Upper = value-it, value
	default: // JS and js: half of the width on either side
		d.Lower, d.Upper = -it/2, it/2
	}
	d.Lower, d.Upper = d.Lower.Round(nanometre), d.Upper.Round(nanometre)
	return d
}

// letters lists the letters of the tables, holes then shafts, in their order.
func letters() []string {
	var found []string
	for _, row := range fitRows() {
		if row.record == "deviation" && !slices.Contains(found, row.letter) {
			found = append(found, row.letter)
		}
	}
	found = append(found, mirroredLetters...)
	slices.Sort(found)
	return found
}
