package tables

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"catchplate/partspec/units"
)

// threadSpec is a designation taken apart.
type threadSpec struct {
	written string
	series  []Series // the series that the words allow; empty: not said
	size    string   // "6", "1/4", "1 1/4", "#10", or a BA number
	second  float64  // pitch in mm for metric, else threads an inch; 0: not said
}

// seriesWords maps the word in a designation to the series that it may mean.
var seriesWords = map[string][]Series{
	"m":  {SeriesMetricCoarse, SeriesMetricFine},
	"ba": {SeriesBA},
	"me": {SeriesME40, SeriesME32}, "mes": {SeriesME40, SeriesME32},
	"brass": {SeriesBrass}, "bsb": {SeriesBrass},
	"bsw": {SeriesBSW}, "whit": {SeriesBSW}, "whitworth": {SeriesBSW},
	"bsf": {SeriesBSF},
	"g":   {SeriesG}, "bsp": {SeriesG}, "bspp": {SeriesG},
	"unc": {SeriesUNC}, "unf": {SeriesUNF}, "un": {SeriesUNC, SeriesUNF}, "uns": {SeriesUNC, SeriesUNF}, "unef": {SeriesUN},
}

const (
	maxDesignation    = 40
	howToWriteThreads = "write it like M6, M8x1, BA 10, ME 1/4x40, BSW 1/4, UNC 10-24 or G 1/4"
)

var (
	threadsPerInch = regexp.MustCompile(`(\d+)\s*tpi\b`)
	seriesWord     = regexp.MustCompile(`[a-wyz]+`) // x stands between size and pitch
	sizeAndPitch   = regexp.MustCompile(`^(#?(?:\d{1,3}[ -]\d{1,2}/\d{1,2}|\d{1,2}/\d{1,2}|\d{0,3}\.\d{1,4}|\d{1,3}))(?:(?: ?[x-] ?| )(\d{1,2}(?:\.\d{1,4})?|\.\d{1,4}))?$`)
	threadSigns    = strings.NewReplacer("×", "x", "″", "", `"`, "", "⁄", "/", "½", " 1/2", "¼", " 1/4", "¾", " 3/4",
		"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "no.", "#", "thread", "")
)

// parseDesignation takes a designation apart without looking it up.
func parseDesignation(designation string) (threadSpec, error) {
	spec := threadSpec{written: strings.TrimSpace(designation)}
	if len(designation) > maxDesignation {
		return spec, fmt.Errorf("a thread's name is at most %d characters long: %s", maxDesignation, howToWriteThreads)
	}
	text := threadSigns.Replace(strings.ToLower(designation))
	if tpi := threadsPerInch.FindStringSubmatch(text); tpi != nil {
		spec.second, _ = strconv.ParseFloat(tpi[1], 64)
		text = strings.Replace(text, tpi[0], "", 1)
	}
	for _, word := range seriesWord.FindAllString(text, -1) {
		if word != "in" {
			series, known := seriesWords[word]
			if !known || spec.series != nil {
				return spec, fmt.Errorf("cannot read the thread %q: %s", designation, howToWriteThreads)
			}
			spec.series = series
		}
		text = strings.Replace(text, word, " ", 1)
	}
	return spec.withSize(text)
}

func (s threadSpec) withSize(text string) (threadSpec, error) {
	text = strings.Trim(strings.Join(strings.Fields(text), " "), " -x")
	text = strings.ReplaceAll(text, "# ", "#")
	parts := sizeAndPitch.FindStringSubmatch(text)
	if parts == nil || (parts[2] != "" && s.second != 0) {
		return s, fmt.Errorf("cannot read the thread %q: %s", s.written, howToWriteThreads)
	}
	s.size = parts[1]
	if s.is(SeriesBA) {
		s.size = strings.TrimPrefix(s.size, "#")
	}
	if strings.Contains(s.size, "/") {
		s.size = strings.Replace(s.size, "-", " ", 1)
	}
	if parts[2] != "" {
		s.second, _ = strconv.ParseFloat(parts[2], 64)
	}
	if s.is(SeriesUNC, SeriesUNF, SeriesUN) && s.size == "1" && s.second == 0 {
		return s, fmt.Errorf("%q may be number 1 or 1 inch: write #1-64 UNC, #1-72 UNF, 1-8 UNC or 1-12 UNF", s.written)
	}
	return s, nil
}

// is reports whether the words allow one of the series.
func (s threadSpec) is(series ...Series) bool {
	return slices.ContainsFunc(series, func(one Series) bool { return slices.Contains(s.series, one) })
}

// match returns the standard threads that the designation may mean.
func (s threadSpec) match(all []Thread) []Thread {
	major, err := units.ParseLength(s.size, units.MM)
	if err != nil {
		major = 0 // no metric size: no thread has it
	}
	var found []Thread
	for _, t := range all {
		if len(s.series) > 0 && !s.is(t.Series) || !s.sizeIs(t, major) {
			continue
		}
		switch {
		case s.second != 0 && !s.pitchIs(t):
		case s.second == 0 && len(s.series) == 0: // a bare "1/4" names no thread
		case s.second == 0 && t.Series == SeriesMetricFine: // a bare M8 is coarse
		case len(s.series) == 0 && t.TPI == 0: // "8x1" is not said to be metric
		default:
			found = append(found, t)
		}
	}
	return found
}

// sizeIs reports whether a thread has the size written, which as a metric one is major.
func (s threadSpec) sizeIs(t Thread, major units.Length) bool {
	if t.Series == SeriesMetricCoarse || t.Series == SeriesMetricFine {
		return major == t.Major
	}
	return s.size == t.size || "#"+s.size == t.size
}

// pitchIs allows for the rounding of a written pitch.
func (s threadSpec) pitchIs(t Thread) bool {
	if t.TPI > 0 {
		return s.second == t.TPI
	}
	return units.Length(s.second).Round(3) == t.Pitch.Round(3)
}

// compute makes a thread that no table lists from the formulas of its series.
func (s threadSpec) compute() (Thread, error) {
	t, err := s.computed()
	if err != nil {
		return Thread{}, err
	}
	if err := t.validate(); err != nil {
		return Thread{}, fmt.Errorf("no such thread as %s: %w", s.written, err)
	}
	t.Standard = standardOf(t.Series)
	t.Designation = designationOf(t.Series, s.size, t.Pitch, t.TPI)
	t.Source = "computed from the formulas of " + t.Standard + "; not a listed size here"
	return withDrills(t), nil
}

func (s *threadSpec) computed() (Thread, error) {
	switch {
	case s.is(SeriesMetricCoarse):
		if s.second == 0 {
			return Thread{}, fmt.Errorf("no coarse pitch is known for M%s: write the pitch, like M%sx1", s.size, s.size)
		}
		major, err := units.ParseLength(s.size, units.MM)
		if strings.Contains(s.size, "/") {
			return Thread{}, fmt.Errorf("%s is not metric: a metric size is in decimals, like M8x1", s.written)
		}
		s.size = units.Decimal(float64(major), 4)
		return threadOf(SeriesMetricFine, s.size, major, units.Length(s.second), 0), err
	case s.is(SeriesBA):
		number, err := strconv.Atoi(s.size)
		if err != nil || number > lastBA || s.second != 0 {
			return Thread{}, fmt.Errorf("no such thread as %s: BA sizes run from 0BA to %dBA", s.written, lastBA)
		}
		s.size = strconv.Itoa(number)
		major, pitch := baSize(number)
		return threadOf(SeriesBA, s.size, major, pitch, 0), nil
	case s.is(SeriesG):
		return Thread{}, fmt.Errorf("no such thread as %s: G sizes run from G1/16 to G2", s.written)
	case len(s.series) == 0:
		return Thread{}, fmt.Errorf("%q does not say which series: %s", s.written, howToWriteThreads)
	}
	return s.computedInch()
}

func (s *threadSpec) computedInch() (Thread, error) {
	if s.is(SeriesBrass) && s.second == 0 {
		s.second = 26
	}
	if s.second == 0 {
		return Thread{}, fmt.Errorf("%s is not a listed size: write the threads an inch, like %s-32", s.written, s.size)
	}
	series := s.special()
	if series == SeriesUN && s.second >= leastNumberTPI && !strings.ContainsAny(s.size, "#/.") {
		s.size = "#" + s.size
	}
	t := threadOf(series, s.size, 0, 0, s.second)
	if _, ok := inchMajor(series, s.size); !ok {
		return Thread{}, errors.New("cannot read the size of the thread " + s.written + ": " + howToWriteThreads)
	}
	return t, nil
}

// leastNumberTPI tells "10-30" (number 10) from "1-20" (one inch): the UN number
// sizes have 24 threads an inch and more, whole inches have fewer.
const leastNumberTPI = 24

// special is the series of an inch thread outside the tables.
func (s threadSpec) special() Series {
	switch {
	case s.is(SeriesUNC, SeriesUNF, SeriesUN):
		return SeriesUN
	case s.is(SeriesME40) && s.second == 40:
		return SeriesME40
	case s.is(SeriesME32) && s.second == 32:
		return SeriesME32
	case s.is(SeriesBrass) && s.second == 26:
		return SeriesBrass
	}
	return SeriesWhitworth
}

// designationOf writes a designation as the sheets print it.
func designationOf(s Series, size string, pitch units.Length, tpi float64) string {
	inch := strconv.FormatFloat(tpi, 'g', -1, 64)
	switch s {
	case SeriesMetricCoarse:
		return "M" + size
	case SeriesMetricFine:
		return "M" + size + "x" + units.Decimal(float64(pitch), 4)
	case SeriesBA:
		return size + "BA"
	case SeriesME40, SeriesME32:
		return size + "x" + inch + " ME"
	case SeriesBrass:
		return size + "x" + inch + " Brass"
	case SeriesBSW, SeriesBSF:
		return size + " " + string(s)
	case SeriesG:
		return "G" + size
	case SeriesUNC, SeriesUNF:
		return size + "-" + inch + " " + string(s)
	case SeriesUN:
		return size + "-" + inch + " UN"
	}
	return size + "x" + inch + " Whit"
}
