package tables

import (
	"slices"
	"strings"
	"sync"

	"catchplate/partspec/units"
)

// NamedTaper is a standard taper. Lengths that it does not fix are zero.
type NamedTaper struct {
	Name       string
	AlsoCalled []string
	Ratio      float64      // length for a difference of 1 in diameter: 20.02 means 1:20.02
	Gauge      units.Length // diameter at the gauge line, the large end
	Small      units.Length
	Length     units.Length
	Note       string
	Source     string
	FromMemory bool
}

func parseTaper(r *record) NamedTaper {
	t := NamedTaper{
		Name: r.need("name"), Ratio: r.number("ratio"), Gauge: r.length("gauge_mm"),
		Small: r.length("small_mm"), Length: r.length("length_mm"), Note: r.text("note"),
	}
	t.Source, t.FromMemory = r.provenance("source")
	if also := r.text("also"); also != "" {
		t.AlsoCalled = strings.Split(also, ";")
	}
	if t.Ratio <= 0 {
		r.fail("ratio", "is not above 0")
	}
	return t
}

var tapers = sync.OnceValue(func() []NamedTaper { return mustLoad("tapers.csv", parseTaper) })

// Tapers lists the named tapers.
func Tapers() []NamedTaper { return slices.Clone(tapers()) }

// FindTaper returns the taper of that name: "MT2", "Morse 2", "2 MT".
func FindTaper(name string) (NamedTaper, bool) {
	want := squash(name)
	for _, t := range tapers() {
		if squash(t.Name) == want || slices.ContainsFunc(t.AlsoCalled, func(also string) bool { return squash(also) == want }) {
			return t, true
		}
	}
	return NamedTaper{}, false
}

// squash makes names equal that differ in spaces, points and capitals only.
func squash(name string) string {
	return strings.NewReplacer(" ", "", ".", "").Replace(strings.ToLower(name))
}
