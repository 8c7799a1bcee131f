package units

import (
	"errors"
	"fmt"
	"strings"
)

// Toleranced is a size with its tolerance as the drawing writes it. At most one
// of HasLimits and Class is set; with neither, the general tolerance applies.
type Toleranced struct {
	Nominal   Dimension // the middle of the limits where only limits are written
	HasLimits bool
	Limits    Limits // only with HasLimits
	Class     string // an ISO 286 class such as "H7", to be resolved elsewhere
}

// ParseToleranced reads "20 +0.02 -0", "20 +0.02/-0.01", "20 ±0.05",
// "19.98..20.00", "25 H7" or a plain size. A figure without a unit takes the
// unit written behind another figure of the same text, else bare.
func ParseToleranced(text string, bare Length) (Toleranced, error) {
	t, err := ParsePlace(text, bare)
	if err != nil {
		return Toleranced{}, err
	}
	if t.Nominal.Value < 0 || (t.HasLimits && t.Limits.Low < 0) {
		return Toleranced{}, fmt.Errorf("%q is negative: a size cannot be less than 0", text)
	}
	return t, nil
}

// ParsePlace reads a place along an axis as ParseToleranced reads a size; it may lie on either side of nought.
func ParsePlace(text string, bare Length) (Toleranced, error) {
	clean, err := normalise(text)
	if err != nil {
		return Toleranced{}, err
	}
	t, err := parseToleranced(clean, bare)
	if err != nil {
		return Toleranced{}, err
	}
	t.Nominal.Written = strings.TrimSpace(text)
	return t, nil
}

func parseToleranced(text string, bare Length) (Toleranced, error) {
	if low, high, ok := strings.Cut(text, ".."); ok {
		return parseLimits(strings.TrimSpace(low), strings.TrimSpace(high), bare)
	}
	if nominal, either, ok := strings.Cut(text, "±"); ok {
		either = strings.TrimSpace(either)
		return parseDeviations(strings.TrimSpace(nominal), "+"+either, "-"+either, bare)
	}
	if nominal, class, ok := cutClass(text); ok {
		return parseClass(nominal, class, bare)
	}
	if nominal, first, second, ok := cutDeviations(text); ok {
		return parseDeviations(nominal, first, second, bare)
	}
	d, err := ParseDimension(text, bare)
	return Toleranced{Nominal: d}, err
}

func parseLimits(low, high string, bare Length) (Toleranced, error) {
	ms, unit, err := parseTogether(bare, low, high)
	if err != nil {
		return Toleranced{}, err
	}
	limits := Limits{ms[0], ms[1]}
	if limits.Low > limits.High {
		return Toleranced{}, fmt.Errorf("the limits %s..%s are the wrong way round: write the lower one first", low, high)
	}
	nominal := Dimension{Value: limits.Middle(), InInches: unit == InInch}
	return Toleranced{Nominal: nominal, HasLimits: true, Limits: limits}, nil
}

func parseDeviations(nominal, first, second string, bare Length) (Toleranced, error) {
	ms, unit, err := parseTogether(bare, nominal, first, second)
	if err != nil {
		return Toleranced{}, err
	}
	lower, upper := min(ms[1], ms[2]), max(ms[1], ms[2])
	return Toleranced{
		Nominal:   Dimension{Value: ms[0], InInches: unit == InInch},
		HasLimits: true,
		Limits:    Around(ms[0], lower, upper),
	}, nil
}

func parseClass(nominal, class string, bare Length) (Toleranced, error) {
	d, err := ParseDimension(nominal, bare)
	return Toleranced{Nominal: d, Class: class}, err
}

// parseTogether reads figures that belong to one size. The first unit written
// among them, millimetres or inches, serves those that have none.
func parseTogether(bare Length, texts ...string) ([]Length, Unit, error) {
	measures := make([]measure, len(texts))
	for i, text := range texts {
		m, err := parseMeasure(text)
		if err != nil {
			return nil, 0, err
		}
		measures[i] = m
	}
	for _, m := range measures {
		if m.unit == unitMM || m.unit == unitInch {
			bare, _ = measure{mmInMM, m.unit}.length(bare)
			break
		}
	}
	lengths := make([]Length, len(texts))
	for i, m := range measures {
		l, err := m.length(bare)
		if err != nil {
			return nil, 0, err
		}
		lengths[i] = l
	}
	unit := InMM
	if measures[0].inInches(bare) {
		unit = InInch
	}
	return lengths, unit, nil
}

// cutClass parts "25 H7" into the size and the class: one or two letters and
// one or two digits at the end, behind a space.
func cutClass(text string) (nominal, class string, ok bool) {
	i := strings.LastIndexByte(text, ' ')
	if i < 0 || CheckClass(text[i+1:]) != nil {
		return "", "", false
	}
	return text[:i], text[i+1:], true
}

// CheckClass says whether text has the form of an ISO 286 class ("H7", "js6").
// It does not say that such a class exists.
func CheckClass(text string) error {
	letters := strings.TrimRight(text, "0123456789")
	digits := len(text) - len(letters)
	form := len(letters) >= 1 && len(letters) <= 2 && digits >= 1 && digits <= 2
	if !form || strings.Trim(letters, latin) != "" {
		return errors.New("a class is a letter and a grade, like H7 or g6")
	}
	return nil
}

const latin = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"

// cutDeviations parts "20 +0.02 -0" and "20 +0.02/-0.01" into three figures.
// A minus sign counts only behind a space, because "1-1/2" is a mixed number.
func cutDeviations(text string) (nominal, first, second string, ok bool) {
	start := nextSign(text, 1)
	if start < 0 {
		return "", "", "", false
	}
	next := nextSign(text, start+1)
	if next < 0 {
		return "", "", "", false
	}
	trim := func(s string) string { return strings.TrimRight(s, " /,") }
	return trim(text[:start]), trim(text[start:next]), trim(text[next:]), true
}

func nextSign(text string, from int) int {
	for i := from; i < len(text); i++ {
		before := text[i-1]
		if text[i] == '+' || (text[i] == '-' && (before == ' ' || before == '/')) {
			return i
		}
	}
	return -1
}
