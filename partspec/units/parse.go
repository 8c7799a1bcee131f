package units

import (
	"errors"
	"fmt"
	"math/big"
	"strings"
)

// maxTextRunes and maxDigits bound what is read at all: no drawing writes a
// longer size, and a long number costs time for nothing.
const (
	maxTextRunes = 64
	maxDigits    = 12
)

var (
	thousand = big.NewRat(1000, 1)
	mmInThou = big.NewRat(254, 10_000)
	mmInInch = big.NewRat(254, 10)
	mmInMM   = big.NewRat(1, 1)
)

// writtenUnit is the unit that stands behind a figure in the text.
type writtenUnit int

const (
	unitBare writtenUnit = iota + 1
	unitMM
	unitInch
	unitThou
	unitGauge // wire gauge or drill: the figure is in thousandths already
)

// measure is a figure with the unit as written, before the bare unit is known.
type measure struct {
	figure *big.Rat
	unit   writtenUnit
}

// ParseLength reads a size as a drawing writes it: "12.5", "12.5 mm", "7/8 in",
// "1 1/2 in", `1-1/2"`, "3 thou", "16 swg", "#30 drill", "F drill". A figure
// without a unit is multiplied by bare (MM or Inch). A negative size is refused;
// ParsePosition takes one. Bad text gives an error that says what to write.
func ParseLength(text string, bare Length) (Length, error) {
	l, err := ParsePosition(text, bare)
	if err != nil {
		return 0, err
	}
	if l < 0 {
		return 0, fmt.Errorf("%q is negative: a size cannot be less than 0", text)
	}
	return l, nil
}

// ParsePosition reads a coordinate or an offset: as ParseLength, with a sign
// allowed in front.
func ParsePosition(text string, bare Length) (Length, error) {
	m, err := parseText(text)
	if err != nil {
		return 0, err
	}
	return m.length(bare)
}

// ParseDimension reads a size and keeps what was written and in which unit.
func ParseDimension(text string, bare Length) (Dimension, error) {
	l, err := ParseLength(text, bare)
	if err != nil {
		return Dimension{}, err
	}
	m, err := parseText(text)
	if err != nil {
		return Dimension{}, err
	}
	return Dimension{Value: l, Written: strings.TrimSpace(text), InInches: m.inInches(bare)}, nil
}

func parseText(text string) (measure, error) {
	clean, err := normalise(text)
	if err != nil {
		return measure{}, err
	}
	return parseMeasure(clean)
}

// normalise bounds the text and maps the signs that drawings and word
// processors use (½, ″, −) to plain ones.
func normalise(text string) (string, error) {
	if len([]rune(text)) > maxTextRunes {
		return "", fmt.Errorf("a size is at most %d characters long: write it like 12.5 mm or 1 7/8 in", maxTextRunes)
	}
	clean := strings.Join(strings.Fields(signs.Replace(text)), " ")
	if clean == "" {
		return "", errors.New("the size is empty: write it like 12.5 mm, 7/8 in or 16 swg")
	}
	return clean, nil
}

var signs = strings.NewReplacer(
	"−", "-", "–", "-", "″", `"`, "”", `"`, "''", `"`, "±", " ± ", "+/-", " ± ", "+-", " ± ",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⁄", "/",
)

// parseMeasure reads one figure with its unit from normalised text.
func parseMeasure(text string) (measure, error) {
	thou, isGauge, err := gaugeInThou(text)
	if err != nil {
		return measure{}, err
	}
	if isGauge {
		figure, err := decimalRat(thou)
		return measure{figure, unitGauge}, err
	}
	size, isDrill := strings.CutSuffix(text, " drill")
	figureText, unit, err := splitUnit(size)
	if err != nil {
		return measure{}, err
	}
	if isDrill && unit == unitBare && strings.Contains(figureText, "/") {
		unit = unitInch // a drill named by a fraction is an inch drill everywhere
	}
	figure, err := parseFigure(figureText)
	if err != nil {
		return measure{}, err
	}
	return measure{figure, unit}, nil
}

// splitUnit parts "7/8 in" into the figure and the unit.
func splitUnit(text string) (figure string, unit writtenUnit, err error) {
	end := strings.LastIndexAny(text, "0123456789.") + 1
	figure, name := text[:end], strings.ToLower(strings.TrimSpace(text[end:]))
	switch name {
	case "":
		return figure, unitBare, nil
	case "mm":
		return figure, unitMM, nil
	case "in", "in.", "inch", "inches", `"`:
		return figure, unitInch, nil
	case "thou":
		return figure, unitThou, nil
	}
	return "", 0, fmt.Errorf("%q is not a size: write mm, in, thou, swg or drill behind a figure, like 12.5 mm, 7/8 in or #30 drill", text)
}

// parseFigure reads "12.5", "7/8", "1 7/8" or "1-7/8", with a sign in front.
func parseFigure(text string) (*big.Rat, error) {
	body, negative := strings.CutPrefix(strings.TrimSpace(text), "-")
	if !negative {
		body, _ = strings.CutPrefix(body, "+")
	}
	body = strings.TrimSpace(body)
	whole, fraction := "0", body
	if i := strings.LastIndexAny(body, " -"); i >= 0 {
		whole, fraction = strings.TrimRight(body[:i], " "), body[i+1:]
		if !strings.Contains(fraction, "/") || strings.Contains(whole, ".") {
			return nil, badFigure(text)
		}
	}
	sum, err := fractionRat(fraction)
	if err != nil {
		return nil, badFigure(text)
	}
	first, err := decimalRat(whole)
	if err != nil {
		return nil, badFigure(text)
	}
	sum.Add(sum, first)
	if negative {
		sum.Neg(sum)
	}
	return sum, nil
}

func badFigure(text string) error {
	advice := "write it like 12.5, 7/8 or 1 7/8"
	switch {
	case strings.ContainsAny(text, "eE"):
		advice = "write powers of ten out, like 0.002"
	case strings.Contains(text, ","):
		advice = "use a point for decimals, like 12.5"
	}
	return fmt.Errorf("cannot read the figure %q: %s", strings.TrimSpace(text), advice)
}

// fractionRat reads "7/8" or a plain decimal.
func fractionRat(text string) (*big.Rat, error) {
	top, bottom, isFraction := strings.Cut(text, "/")
	if !isFraction {
		return decimalRat(text)
	}
	if strings.ContainsAny(text, ".") {
		return nil, badFigure(text)
	}
	numerator, err := decimalRat(top)
	if err != nil {
		return nil, err
	}
	denominator, err := decimalRat(bottom)
	if err != nil || denominator.Sign() == 0 {
		return nil, badFigure(text)
	}
	return numerator.Quo(numerator, denominator), nil
}

// decimalRat reads digits with at most one point, exactly. It takes no sign, no
// exponent and no other writing of a number.
func decimalRat(text string) (*big.Rat, error) {
	digits := 0
	for _, r := range text {
		if r >= '0' && r <= '9' {
			digits++
		} else if r != '.' {
			return nil, badFigure(text)
		}
	}
	if digits == 0 || digits > maxDigits || strings.Count(text, ".") > 1 || strings.HasSuffix(text, ".") {
		return nil, badFigure(text)
	}
	figure, ok := new(big.Rat).SetString(text)
	if !ok {
		return nil, badFigure(text)
	}
	return figure, nil
}

// length turns the measure into millimetres, rounded once. bare is the length
// of one unit where none is written.
func (m measure) length(bare Length) (Length, error) {
	factor := m.factor(bare)
	if factor == nil {
		return 0, fmt.Errorf("a bare figure needs a unit that is a length, not %g mm", float64(bare))
	}
	mm, _ := new(big.Rat).Mul(m.figure, factor).Float64()
	if l := Length(mm); finite(mm) && l.Abs() <= MaxLength {
		return l, nil
	}
	return 0, fmt.Errorf("%s mm is too long: at most %.0f mm is believed", m.figure.FloatString(0), float64(MaxLength))
}

func (m measure) factor(bare Length) *big.Rat {
	switch m.unit {
	case unitMM:
		return mmInMM
	case unitInch:
		return mmInInch
	case unitThou, unitGauge:
		return mmInThou
	}
	switch bare {
	case MM:
		return mmInMM
	case Inch:
		return mmInInch
	case Thou:
		return mmInThou
	}
	if !finite(float64(bare)) || bare <= 0 {
		return nil
	}
	return new(big.Rat).SetFloat64(float64(bare))
}

func (m measure) inInches(bare Length) bool {
	switch m.unit {
	case unitBare:
		return bare == Inch || bare == Thou
	case unitMM:
		return false
	}
	return true
}
