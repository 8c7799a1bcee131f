package tables

import (
	"cmp"
	"slices"
	"strings"
	"sync"

	"catchplate/partspec/units"
)

// DrillKind is a standard set of twist drills.
type DrillKind string

// The standard sets.
const (
	DrillMetric   DrillKind = "metric"
	DrillNumber   DrillKind = "number"
	DrillLetter   DrillKind = "letter"
	DrillFraction DrillKind = "fractional"
)

// Drill is a twist drill of a standard set.
type Drill struct {
	Name       string // "6.8 mm", "#30", "F", "27/64 in"
	Kind       DrillKind
	Diameter   units.Length
	Preferred  bool // a shelf size
	Standard   string
	Source     string
	FromMemory bool
}

func parseDrill(r *record) Drill {
	d := Drill{
		Name: r.need("name"), Kind: DrillKind(r.need("kind")), Standard: r.text("standard"),
		Diameter: r.length("diameter_mm"), Preferred: r.text("preferred") == "yes",
	}
	d.Source, d.FromMemory = r.provenance("source")
	if !slices.Contains([]DrillKind{DrillMetric, DrillNumber, DrillLetter, DrillFraction}, d.Kind) {
		r.fail("kind", "%q is not a set", d.Kind)
	}
	if d.Diameter <= 0 {
		r.fail("diameter_mm", "is not above 0")
	}
	return d
}

var drills = sync.OnceValue(func() []Drill {
	rows := mustLoad("drills.csv", parseDrill)
	slices.SortStableFunc(rows, func(a, b Drill) int { return cmp.Compare(a.Diameter, b.Diameter) })
	return rows
})

// Drills lists every drill of the given sets, or of all, by diameter.
func Drills(kinds ...DrillKind) []Drill {
	if len(kinds) == 0 {
		return slices.Clone(drills())
	}
	return slices.DeleteFunc(slices.Clone(drills()), func(d Drill) bool { return !slices.Contains(kinds, d.Kind) })
}

// FindDrill returns the drill of that name: "6.8 mm", "6.8", "#30", "no. 30",
// "F", "letter F", "27/64 in" or "27/64", with or without "drill" behind it.
func FindDrill(name string) (Drill, bool) {
	clean := strings.ToLower(strings.Join(strings.Fields(name), " "))
	clean = strings.TrimSuffix(clean, " drill")
	for _, prefix := range []string{"letter ", "number ", "no. ", "no.", "no "} {
		if rest, found := strings.CutPrefix(clean, prefix); found {
			clean = rest
			if prefix != "letter " {
				clean = "#" + rest
			}
			break
		}
	}
	for _, d := range drills() {
		key := strings.ToLower(d.Name)
		if clean == key || clean == strings.TrimSuffix(key, " mm") || clean == strings.TrimSuffix(key, " in") {
			return d, true
		}
	}
	return Drill{}, false
}

// nearestStockDrill is the metric drill nearest to size; of two equally near
// the larger, which is easier on the tap.
func nearestStockDrill(size units.Length) Drill {
	metric := Drills(DrillMetric)
	best := metric[0]
	for _, d := range metric[1:] {
		if (d.Diameter - size).Abs().Round(nanometre) <= (best.Diameter - size).Abs().Round(nanometre) {
			best = d
		}
	}
	return best
}

// nextStockDrill is the smallest metric drill not below size.
func nextStockDrill(size units.Length) (Drill, bool) {
	for _, d := range Drills(DrillMetric) {
		if d.Diameter.Round(nanometre) >= size.Round(nanometre) {
			return d, true
		}
	}
	return Drill{}, false
}

// nanometre is the number of decimals to which sizes are compared, so that the
// noise of float64 sums decides nothing.
const nanometre = 6
