package tables

import (
	"cmp"
	"fmt"
	"slices"
	"sync"

	"catchplate/partspec/units"
)

// largestStockDrill is the largest drill of the metric table; above it the hole
// is bored.
const largestStockDrill units.Length = 50

// withDrills fills the drills that a row lacks: a tapping drill for the usual
// engagement of its series, one for 65 %, and clearance holes.
func withDrills(t Thread) Thread {
	if t.TapDrill == 0 {
		percent := usualEngagement(t.Series)
		t.TapDrill, t.TapDrillName = holeNear(t, percent)
		t.DrillSource = fmt.Sprintf("computed: stock metric drill nearest %g %% of a full thread", percent)
	}
	t.EngagementPercent = t.Engagement(t.TapDrill)
	if t.Drill65 == 0 {
		t.Drill65, _ = holeNear(t, 65)
	}
	return withClearance(t)
}

// usualEngagement is what the series' standard drills come to: 77 % is major
// minus pitch for 60 degree threads (ISO 2306), 75 % the customary inch drill,
// 80 % the drills of BS 1157 for Whitworth forms, 77 % its drills for BA.
func usualEngagement(s Series) float64 {
	switch formOf(s) {
	case FormWhitworth:
		return 80
	case FormBA:
		return 77
	}
	if s == SeriesUNC || s == SeriesUNF || s == SeriesUN {
		return 75
	}
	return 76.98 // (D - P): 1 / 1.299
}

// holeNear is the stock drill nearest that engagement, or the hole itself where
// it is bored, or where the nearest drill would spoil the thread.
func holeNear(t Thread, percent float64) (units.Length, string) {
	hole := t.HoleFor(percent)
	if hole > largestStockDrill {
		hole = hole.Round(1)
		return hole, "bore " + hole.String()
	}
	d := nearestStockDrill(hole)
	if got := t.Engagement(d.Diameter); got < 50 || got > 95 {
		hole = hole.Round(2)
		return hole, hole.String() + ", no stock drill"
	}
	return d.Diameter, d.Name
}

// withClearance fills missing clearance holes with the amounts of ISO 273 for
// the metric size at or below, up to the next stock drill. A published figure
// stands, and the three stay in order.
func withClearance(t Thread) Thread {
	if t.ClearClose > 0 && t.ClearMedium > 0 && t.ClearFree > 0 {
		return t
	}
	like := clearanceLike(t.Major)
	scale := min(1, t.Major/like.Major) // below M1 in proportion
	hole := func(amount units.Length) units.Length {
		if d, ok := nextStockDrill(t.Major + scale*amount); ok {
			return d.Diameter
		}
		return (t.Major + scale*amount).Round(1)
	}
	published := t.ClearSource
	if t.ClearMedium == 0 {
		t.ClearMedium = max(t.ClearClose, hole(like.ClearMedium-like.Major))
	}
	if t.ClearClose == 0 {
		t.ClearClose = min(t.ClearMedium, hole(like.ClearClose-like.Major))
	}
	if t.ClearFree == 0 {
		t.ClearFree = max(t.ClearMedium, hole(like.ClearFree-like.Major))
	}
	t.ClearSource = "computed: the amounts of ISO 273 for " + like.Designation + ", up to a stock drill"
	if published != "" {
		t.ClearSource = published + "; the others " + t.ClearSource
	}
	return t
}

// iso273 lists the metric sizes whose three clearance holes are published, by
// diameter.
var iso273 = sync.OnceValue(func() []Thread {
	rows := slices.DeleteFunc(slices.Clone(publishedThreads()), func(t Thread) bool {
		return t.Series != SeriesMetricCoarse || t.ClearClose == 0 || t.ClearMedium == 0 || t.ClearFree == 0
	})
	slices.SortFunc(rows, func(a, b Thread) int { return cmp.Compare(a.Major, b.Major) })
	return rows
})

// clearanceLike is the largest of those sizes not above major, or the smallest
// of all for a thread below it.
func clearanceLike(major units.Length) Thread {
	like := iso273()[0]
	for _, t := range iso273() {
		if t.Major <= major {
			like = t
		}
	}
	return like
}
