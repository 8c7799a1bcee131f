package speed

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// Feed is a feed in mm a revolution.
type Feed struct {
	Range  tables.Range `json:"range_mm_per_rev"`
	Used   float64      `json:"feed_mm_per_rev"`
	Rule   string       `json:"rule,omitempty"` // empty where only the cutting table speaks
	Source string       `json:"source"`
}

// feedRows names the row of the cutting table for an operation's feed.
var feedRows = map[Operation][3]string{
	Turn: {"rough turn", "feed", "small lathe"}, Interrupted: {"rough turn", "feed", "small lathe"},
	Finish: {"finish turn", "feed", "small lathe"},
	Bore:   {"bore", "feed", "bar"}, BoreDeep: {"bore", "feed", "bar"},
	Face: {"face", "feed", "all metals"}, Part: {"part off", "feed", "mild steel"}, Groove: {"part off", "feed", "mild steel"},
	FlyCut: {"fly-cut", "feed", "single point"}, HoleSaw: {"hole saw", "feed", "teeth"},
}

// drillFeeds are the upper ends of the drill sizes of the cutting table, in its
// order of rows.
var drillFeeds = []units.Length{3.2, 6.4, 12.7, 25.4, units.MaxLength}

// FeedFor is the feed for an operation on a small lathe: the middle of the
// table's range, its lower end in tough metal. diameter matters for drilling and
// reaming only.
func FeedFor(op Operation, m tables.Material, diameter units.Length) (Feed, error) {
	row, ok := feedRow(op, diameter)
	if !ok {
		return Feed{}, fmt.Errorf("no feed is known for %s at %s", op, diameter)
	}
	f := Feed{Range: row.Range, Source: row.Source}
	if op == Ream { // two to three times the drill's feed (cutting table)
		f.Range = tables.Range{Low: 2 * row.Range.Low, High: 3 * row.Range.High}
	}
	f.Used = f.Range.Middle()
	if Tough(m.Family) {
		f.Used = f.Range.Low
	}
	f.Used = rounded(f.Used, 3)
	return f, nil
}

func feedRow(op Operation, diameter units.Length) (tables.CuttingRule, bool) {
	if op == Drill || op == Ream {
		for i, row := range tables.CuttingRules("drill", "feed") {
			if diameter > 0 && i < len(drillFeeds) && diameter <= drillFeeds[i] {
				return row, true
			}
		}
		return tables.CuttingRule{}, false
	}
	key, ok := feedRows[op]
	if !ok {
		return tables.CuttingRule{}, false
	}
	return tables.FindCutting(key[0], key[1], key[2])
}

// Tough reports whether a metal takes the lower end of a range of feeds.
func Tough(f tables.Family) bool {
	return f == tables.FamilyStainless || f == tables.FamilyToolSteel
}

// rzPerRa is the peak-to-valley height for an Ra of 1: turned surfaces lie
// between 4 and 5, and 4.5 gives its example of 0.15 mm for a
// nose of 0.4 and Ra 1.6.
const rzPerRa = 4.5

// FinishFeed is the coarsest feed that leaves a roughness: sqrt(8 r Rz), nose
// radius in mm, Ra in micrometres (round nose, sharp edge).
func FinishFeed(nose units.Length, raUm float64) (Feed, error) {
	if !(nose > 0) || !(raUm > 0) || math.IsInf(raUm, 0) {
		return Feed{}, fmt.Errorf("a finishing feed needs a nose radius and a roughness above 0")
	}
	feed := math.Sqrt(8 * float64(nose) * raUm * rzPerRa / 1000)
	return Feed{
		Range: tables.Range{High: feed}, Used: math.Floor(feed*100) / 100,
		Source: "h = f^2 / 8 r, printed by several tool makers; Rz 4.5 Ra",
	}, nil
}

// Ridge is the height of the ridges that a round nose leaves, f^2 / 8 r, in
// millimetres, for a feed well below the nose radius.
func Ridge(feedPerRev float64, nose units.Length) units.Length {
	return units.Length(feedPerRev * feedPerRev / (8 * float64(nose)))
}

// DeepHole is the part of speed and feed that a hole of that depth keeps, depth
// in drill diameters: less from 3 diameters on (cutting table).
func DeepHole(diameters float64) (speed, feed float64, source string) {
	speed, feed = 1, 1
	for _, step := range []string{"3", "4", "5", "6"} {
		rows := tables.CuttingRules("drill", "reduce at depth "+step+" x diameter")
		if len(rows) == 1 && diameters >= float64(step[0]-'0') {
			speed, feed, source = 1-rows[0].Range.Low/100, 1-rows[0].Range.High/100, rows[0].Source
		}
	}
	return speed, feed, source
}

// Minutes is the time of a cut: length / (feed x speed), mm, mm/rev, rev/min.
func Minutes(length units.Length, feedPerRev float64, rpm units.Speed) (units.Minutes, error) {
	if !(length >= 0) || !(feedPerRev > 0) || !(rpm > 0) {
		return 0, fmt.Errorf("a cutting time needs a length, a feed and a speed above 0")
	}
	return units.Minutes(float64(length) / (feedPerRev * float64(rpm))), nil
}

// PointLength is how much farther the point of a 118 degree drill goes than its
// full diameter: 0.3 D (trade rule C-30).
func PointLength(drill units.Length) units.Length { return 0.3 * drill }
