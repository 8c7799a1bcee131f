package thread

import (
	"fmt"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// Engagement bounds in usual trade practice, in percent of a full thread: usual from
// 75, tough metal and deep or small holes 65, never under 50; above 85 a hand
// tap binds (our ceiling, common practice).
const (
	usualPercent = 75.0
	easyPercent  = 65.0
	floorPercent = 50.0
	mostPercent  = 85.0
)

// deepThread is the length over diameter above which a thread is deep, and
// smallThread the size below which a tap is easily broken.
const (
	deepThread               = 1.5
	smallThread units.Length = 3
)

// DrillChoice is the drill for a tapped hole.
type DrillChoice struct {
	Drill         tables.Drill `json:"drill"`
	Percent       float64      `json:"engagement_percent"`
	WantedPercent float64      `json:"wanted_percent"`
	Owned         bool         `json:"owned"` // false: no owned drill does; the drill is the one to buy
	Why           string       `json:"why"`
	Source        string       `json:"source"`
}

// TappingDrill chooses the drill for a thread of that length in a metal from the
// drills owned. The thread's own standard drill is taken where a usual
// engagement is wanted and it is owned; else the smallest drill that leaves no
// more than the wanted engagement and at least half a thread; else the largest
// that leaves a little more, up to 85 %. Where none of the owned ones does, it
// says so and names the stock drill.
func TappingDrill(t tables.Thread, owned []tables.Drill, m tables.Material, length units.Length) DrillChoice {
	c := DrillChoice{WantedPercent: usualPercent, Why: "usual engagement", Source: t.DrillSource}
	if why := easyWhy(t, m, length); why != "" {
		c.WantedPercent, c.Why = easyPercent, why
	}
	standard := tables.Drill{Name: t.TapDrillName, Diameter: t.TapDrill, Source: t.DrillSource}
	if c.WantedPercent == easyPercent {
		standard = tables.Drill{Name: t.Drill65.String(), Diameter: t.Drill65, Source: "stock metric drill nearest 65 %"}
	}
	if d, ok := pick(t, owned, c.WantedPercent, standard); ok {
		c.Drill, c.Owned = d, true
	} else {
		c.Drill = standard
		c.Why += fmt.Sprintf("; no drill owned leaves %.0f to %.0f %%", floorPercent, mostPercent)
	}
	c.Percent = t.Engagement(c.Drill.Diameter)
	return c
}

// easyWhy is why a thread wants a larger hole, or empty.
func easyWhy(t tables.Thread, m tables.Material, length units.Length) string {
	switch {
	case m.Family == tables.FamilyStainless || m.Family == tables.FamilyToolSteel:
		return "tough metal"
	case length > deepThread*t.Major:
		return "deeper than 1.5 diameters"
	case t.Major < smallThread:
		return "a tap under 3 mm breaks easily"
	}
	return ""
}

// sameSize is how near two drills are called the same, in mm: the rounding of a
// printed size.
const sameSize units.Length = 0.0006

func pick(t tables.Thread, owned []tables.Drill, percent float64, standard tables.Drill) (tables.Drill, bool) {
	var above, below tables.Drill
	for _, d := range owned {
		got := t.Engagement(d.Diameter)
		if (d.Diameter-standard.Diameter).Abs() <= sameSize && got >= floorPercent && got <= mostPercent {
			return d, true
		}
		switch {
		case got >= floorPercent && got <= percent && (above.Diameter == 0 || d.Diameter < above.Diameter):
			above = d
		case got > percent && got <= mostPercent && d.Diameter > below.Diameter:
			below = d
		}
	}
	if above.Diameter > 0 {
		return above, true
	}
	return below, below.Diameter > 0
}

// LeastLength is the length of thread that holds as much as the screw: 1
// diameter in steel, 1.5 in cast iron, brass and bronze, 2 in aluminium and
// softer.
func LeastLength(t tables.Thread, m tables.Material) units.Length {
	switch m.Family {
	case tables.FamilyFreeCuttingSteel, tables.FamilySteel, tables.FamilyToolSteel, tables.FamilyStainless:
		return t.Major
	case tables.FamilyCastIron, tables.FamilyBrass, tables.FamilyBronze, tables.FamilyCopper:
		return 1.5 * t.Major
	}
	return 2 * t.Major
}
