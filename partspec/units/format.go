package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

const (
	// microDecimals is the number of decimals of a millimetre that are ever
	// shown: a micrometre is less than any small workshop can measure.
	microDecimals = 3
	// inchDecimals show a rounded inch figure to a thou, exactInchDecimals an
	// exact one to a tenth of a thou.
	inchDecimals      = 3
	exactInchDecimals = 4
	// exactWithin is how near a length must be to a fraction or a decimal of an
	// inch, in millimetres, to be called equal: above the noise of float64 sums
	// and far below a micrometre.
	exactWithin = 1e-7
	// bad stands for a figure that is not a number.
	bad = "?"
)

// String shows the length in millimetres with at most three decimals: "22.225 mm".
func (l Length) String() string { return l.Text(InMM) }

// Text shows the length in a unit, with the unit behind it: "22.225 mm",
// "7/8 in", "≈0.787 in".
func (l Length) Text(u Unit) string { return l.Figure(u) + " " + u.String() }

// Figure shows the length in a unit without naming the unit. Millimetres have
// at most three decimals; inches are a fraction of 64ths where that is exact,
// else decimals, with "≈" in front where they are rounded.
func (l Length) Figure(u Unit) string {
	if u == InInch {
		return inchFigure(l)
	}
	return Decimal(float64(l), microDecimals)
}

// Both shows the length in the given unit and the other one behind it:
// "7/8 in (22.225 mm)".
func (l Length) Both(first Unit) string {
	return l.Text(first) + " (" + l.Text(first.Other()) + ")"
}

// Text shows the dimension as it was drawn, with its unit, and in the other
// unit behind it: `1-1/2" (38.1 mm)`. Without written words it is as Both.
func (d Dimension) Text() string {
	if d.Written == "" {
		return d.Value.Both(d.Unit())
	}
	return d.Drawn() + " (" + d.Value.Text(d.otherUnit()) + ")"
}

// Drawn shows the dimension as it was drawn; a bare figure gets its unit.
func (d Dimension) Drawn() string {
	if d.Written == "" {
		return d.Value.Text(d.Unit())
	}
	if clean, err := normalise(d.Written); err == nil {
		if m, err := parseMeasure(clean); err == nil && m.unit == unitBare {
			return d.Written + " " + d.Unit().String()
		}
	}
	return d.Written
}

// otherUnit is the unit to show beside the written words: millimetres beside
// inches, gauges and drills, inches beside millimetres.
func (d Dimension) otherUnit() Unit { return d.Unit().Other() }

// Text shows the limits with the unit once: "21.98 to 22.00 mm".
func (l Limits) Text(u Unit) string { return l.Figures(u) + " " + u.String() }

// Figures shows the limits with equal decimals: "21.98 to 22.00". Millimetres
// have as many decimals as the finer limit needs, at most three; inches four.
func (l Limits) Figures(u Unit) string {
	if u == InInch {
		return fixed(l.Low.Inches(), exactInchDecimals) + " to " + fixed(l.High.Inches(), exactInchDecimals)
	}
	n := max(decimalsNeeded(float64(l.Low)), decimalsNeeded(float64(l.High)))
	return fixed(float64(l.Low), n) + " to " + fixed(float64(l.High), n)
}

// String shows the limits in millimetres: "21.98 to 22.00 mm".
func (l Limits) String() string { return l.Text(InMM) }

// String shows the angle in degrees with at most two decimals: "5.71°".
func (a Angle) String() string { return Decimal(float64(a), 2) + "°" }

// DegreesMinutes shows the angle in degrees and whole minutes: "5° 43'".
func (a Angle) DegreesMinutes() string {
	if !finite(float64(a)) {
		return bad
	}
	sign, total := "", math.Round(math.Abs(float64(a))*60)
	if a < 0 && total > 0 {
		sign = "-"
	}
	return fmt.Sprintf("%s%.0f° %02.0f'", sign, math.Floor(total/60), math.Mod(total, 60))
}

// String shows the force in newtons to two figures, all that grip and cutting
// forces deserve: "1200 N".
func (f Force) String() string { return significant(float64(f), 2) + " N" }

// String shows the speed: "640 rev/min". Below ten it has one decimal.
func (s Speed) String() string {
	decimals := 0
	if math.Abs(float64(s)) < 10 {
		decimals = 1
	}
	return Decimal(float64(s), decimals) + " rev/min"
}

// String shows the time in hours and minutes: "1 h 20 min". Less than a minute
// is "under 1 min".
func (m Minutes) String() string {
	if !finite(float64(m)) || m < 0 {
		return bad + " min"
	}
	if m > 0 && m < 1 {
		return "under 1 min"
	}
	total := math.Round(float64(m))
	hours, minutes := math.Floor(total/60), math.Mod(total, 60)
	switch {
	case hours == 0:
		return fmt.Sprintf("%.0f min", minutes)
	case minutes == 0:
		return fmt.Sprintf("%.0f h", hours)
	}
	return fmt.Sprintf("%.0f h %.0f min", hours, minutes)
}

// Decimal shows x with at most the given decimals and no trailing noughts.
func Decimal(x float64, decimals int) string {
	text := fixed(x, decimals)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// inchFigure prefers a fraction of 64ths, then exact decimals, then "≈".
func inchFigure(l Length) string {
	if !finite(float64(l)) {
		return bad
	}
	if text, ok := fractionFigure(l); ok {
		return text
	}
	inches := l.Inches()
	if exact := round(inches, exactInchDecimals); math.Abs(exact-inches)*float64(Inch) <= exactWithin {
		return Decimal(inches, exactInchDecimals)
	}
	if round(inches, inchDecimals) == 0 {
		return "≈" + significant(inches, 2)
	}
	return "≈" + Decimal(inches, inchDecimals)
}

func fractionFigure(l Length) (string, bool) {
	inches := math.Abs(l.Inches())
	parts := math.Round(inches * 64)
	if math.Abs(parts/64-inches)*float64(Inch) > exactWithin || parts > 1e6 {
		return "", false
	}
	sign := ""
	if l < 0 && parts > 0 {
		sign = "-"
	}
	whole, top, bottom := int(parts)/64, int(parts)%64, 64
	for top > 0 && top%2 == 0 {
		top, bottom = top/2, bottom/2
	}
	switch {
	case top == 0:
		return fmt.Sprintf("%s%d", sign, whole), true
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, top, bottom), true
	}
	return fmt.Sprintf("%s%d %d/%d", sign, whole, top, bottom), true
}

// decimalsNeeded is the least number of decimals, to three, that shows mm to
// the micrometre.
func decimalsNeeded(mm float64) int {
	text := Decimal(mm, microDecimals)
	_, decimals, _ := strings.Cut(text, ".")
	return len(decimals)
}

func fixed(x float64, decimals int) string {
	if !finite(x) {
		return bad
	}
	return strconv.FormatFloat(round(x, decimals), 'f', decimals, 64)
}

// significant shows x rounded to n figures, without an exponent.
func significant(x float64, n int) string {
	if !finite(x) {
		return bad
	}
	if x == 0 {
		return "0"
	}
	magnitude := int(math.Floor(math.Log10(math.Abs(x)))) + 1
	return Decimal(round(x, n-magnitude), max(0, n-magnitude))
}
