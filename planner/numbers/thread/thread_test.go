package thread

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

func find(t require.TestingT, designation string) tables.Thread {
	thread, err := tables.FindThread(designation)
	require.NoError(t, err)
	return thread
}

func metal(t require.TestingT, name string) tables.Material {
	m, ok := tables.FindMaterial(name)
	require.True(t, ok, name)
	return m
}

// The keys that the command promises, with printed figures: BS 93 for 10BA,
// ISO 724, ISO 2306 and ISO 273 for M6, ASME B1.1 for #10-24.
func TestSummaryJSON(t *testing.T) {
	for designation, want := range map[string][]float64{
		"BA 10":     {1.7, 0.35, 1.28, 1.4, 71.4, 1.778},
		"M6":        {6, 1, 4.7731, 5, 77, 6.4},
		"UNC 10-24": {4.826, 1.058333, 3.5276, 3.7973, 74.8, 5.232},
	} {
		raw, err := json.Marshal(Summarise(find(t, designation)))
		require.NoError(t, err)
		var got struct {
			Major     float64 `json:"major_mm"`
			Pitch     float64 `json:"pitch_mm"`
			Core      float64 `json:"core_mm"`
			Drill     float64 `json:"tapping_drill_mm"`
			Percent   float64 `json:"engagement_percent"`
			Clearance struct {
				Close float64 `json:"close"`
			} `json:"clearance_mm"`
		}
		require.NoError(t, json.Unmarshal(raw, &got))
		assert.Equal(t, want, []float64{got.Major, got.Pitch, got.Core, got.Drill, got.Percent, got.Clearance.Close}, designation)
	}
}

// Three-wire measurements: 7/16-14 printed 0.464 in (exact 0.46425); 1/2-12 from
// the inputs of US Army course OD1645; the others computed outside.
func TestOverWires(t *testing.T) {
	for _, c := range []struct {
		designation string
		wire, want  units.Length
		places      float64
	}{
		{"UN 7/16-14", 0.045 * units.Inch, 0.46425 * units.Inch, 0.000005 * 25.4},
		{"UN 1/2-12", 0.04811 * units.Inch, 0.5180 * units.Inch, 0.00005 * 25.4},
		{"M8", 0.7217, 8.2706, 0.0001},
		{"2BA", 0.45, 4.8609, 0.0001},
		{"BSW 1/4", 0.030 * units.Inch, 0.26493 * units.Inch, 0.000005 * 25.4},
	} {
		thread := find(t, c.designation)
		if thread.Series == tables.SeriesBA { // the example has D - 0.6 P, BS 93 prints it to 0.005
			thread.Effective = thread.Major - 0.6*thread.Pitch
		}
		assert.InDelta(t, float64(c.want), float64(OverWires(thread, c.wire)), c.places+rounded, c.designation)
	}
	for designation, factor := range map[string]float64{"M8": 0.57735, "BSW 1/4": 0.56369, "2BA": 0.54626} { // printed constants
		thread := find(t, designation)
		assert.InDelta(t, factor*float64(thread.Pitch), float64(BestWire(thread)), 2*rounded, designation)
	}
}

// rounded is the rounding of effective diameters and results to four decimals.
const rounded = 0.0001

func TestTappingDrill(t *testing.T) {
	tenths := tables.Drills(tables.DrillMetric)
	byTenths := tenths[:0:0]
	for _, d := range tenths {
		if x := float64(d.Diameter) * 10; math.Abs(x-math.Round(x)) < 1e-9 {
			byTenths = append(byTenths, d)
		}
	}
	numbers := tables.Drills(tables.DrillNumber)
	for _, c := range []struct {
		designation, metal string
		length             units.Length
		owned              []tables.Drill
		drill              string
		wanted             float64
		have               bool
	}{
		{"M6", "brass", 8, byTenths, "5 mm", 75, true},             // the standard drill
		{"M6", "stainless", 8, byTenths, "5.2 mm", 65, true},       // 5.15 is not owned: next above
		{"M6", "brass", 10, tenths, "5.15 mm", 65, true},           // deeper than 9
		{"M2.5", "brass", 3, byTenths, "2.1 mm", 65, true},         // small
		{"10BA", "brass", 2, numbers, "#54", 65, true},             // 1.397 leaves 72 %, #53 45 %: the finer one
		{"M8", "brass", 8, numbers, "", 75, false},                 // number drills end at 5.79
		{"1/4x40 ME", "gunmetal", 6, byTenths, "5.7 mm", 75, true}, // the standard drill, 79.9 %
		{"M6", "brass", 8, nil, "", 75, false},
	} {
		got := TappingDrill(find(t, c.designation), c.owned, metal(t, c.metal), c.length)
		assert.Equal(t, c.have, got.Owned, c.designation)
		assert.Equal(t, c.wanted, got.WantedPercent, c.designation)
		if c.have {
			assert.Equal(t, c.drill, got.Drill.Name, c.designation)
		} else {
			assert.Contains(t, got.Why, "no drill owned")
			assert.Positive(t, got.Drill.Diameter)
		}
	}
}

// For every standard thread and every metal, the full metric set has a drill
// between half a thread and 85 %.
func TestEveryThreadCanBeTapped(t *testing.T) {
	all := tables.Drills()
	for _, thread := range tables.Threads() {
		if thread.TapDrill > 50 {
			continue // bored
		}
		for _, name := range []string{"brass", "stainless"} {
			c := TappingDrill(thread, all, metal(t, name), thread.Major)
			assert.True(t, c.Owned, thread.Designation)
			assert.True(t, c.Percent >= floorPercent && c.Percent <= mostPercent, "%s %g", thread.Designation, c.Percent)
		}
	}
}

func TestLeastLength(t *testing.T) {
	m6 := find(t, "M6")
	for name, want := range map[string]units.Length{"steel": 6, "brass": 9, "cast iron": 9, "aluminium": 12} {
		assert.Equal(t, want, LeastLength(m6, metal(t, name)), name)
	}
}

// Worked by hand for M6 (P 1, drill 5) and M4 (P 0.7).
func TestBlindDepth(t *testing.T) {
	m6, m4 := find(t, "M6"), find(t, "M4")
	for _, c := range []struct {
		thread  tables.Thread
		full    units.Length
		last    TapLead
		cleared bool
		want    units.Length
	}{
		{m6, 10, LeadPlug, true, 13},     // 10 + 2P + P
		{m6, 10, LeadTaper, true, 19},    // 10 + 8P + P
		{m6, 10, LeadSecond, false, 21},  // 10 + 4P + P + D
		{m6, 20, LeadPlug, true, 24},     // a fifth more
		{m4, 12, LeadPlug, true, 15},     // a quarter more
		{m4, 6, LeadPlug, true, 6 + 2.1}, // 2P + P
	} {
		b, err := BlindDepth(c.thread, c.thread.TapDrill, c.full, c.last, c.cleared)
		require.NoError(t, err)
		assert.Equal(t, c.want, b.Depth)
	}
	b, err := BlindDepth(m6, 5, 10, LeadPlug, true)
	require.NoError(t, err)
	assert.Equal(t, Blind{13, 1.5, 2.5}, b)
	assert.True(t, b.Fits(17))
	assert.False(t, b.Fits(16.9))
	for _, bad := range []struct {
		drill, full units.Length
		last        TapLead
	}{{5, 0, LeadPlug}, {6, 10, LeadPlug}, {0, 10, LeadPlug}, {5, 10, "blunt"}, {5, units.Length(math.NaN()), LeadPlug}} {
		_, err := BlindDepth(m6, bad.drill, bad.full, bad.last, true)
		assert.Error(t, err)
	}
}

// Rule C-28: 0.6134 P radially, 0.6134 P / cos 29.5 = 0.705 P along the slide.
func TestScrewcut(t *testing.T) {
	in, err := ScrewcutExternal(find(t, "M10"))
	require.NoError(t, err)
	assert.InDelta(t, 0.6134*1.5, float64(in.Depth), 0.0001)
	assert.InDelta(t, 0.705*1.5, float64(in.AlongSlide), 0.0006)
	assert.Equal(t, units.Angle(29.5), in.SlideAngle)
	assert.Equal(t, units.Limits{Low: 2.25, High: 3.75}, in.Undercut)
	in, err = ScrewcutInternal(find(t, "M10"))
	require.NoError(t, err)
	assert.InDelta(t, 0.5413*1.5, float64(in.Depth), 0.0001)
	_, err = ScrewcutExternal(tables.Thread{})
	assert.Error(t, err)
}

// For every thread of the tables the passes go deeper each time, never by more
// than the time before, and end at the full depth.
func TestInfeedsOfEveryThread(t *testing.T) {
	const step = 0.001 // passes are rounded to a micrometre
	for _, thread := range tables.Threads() {
		in, err := ScrewcutExternal(thread)
		require.NoError(t, err)
		require.NotEmpty(t, in.Passes)
		assert.Equal(t, in.Depth, in.Passes[len(in.Passes)-1], thread.Designation)
		before, cut := units.Length(0), units.Length(math.Inf(1))
		for i, reached := range in.Passes {
			now := reached - before
			assert.Positive(t, float64(now), thread.Designation)
			if i < len(in.Passes)-1 { // the last one takes what is left, up to two of the least
				assert.LessOrEqual(t, float64(now), float64(cut)+2*step, thread.Designation)
			}
			before, cut = reached, now
		}
		assert.LessOrEqual(t, in.Passes[0], firstMost)
	}
}

func TestChangeWheels(t *testing.T) {
	metric := []int{20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80}
	for _, c := range []struct {
		name    string
		wheels  []int
		screw   Leadscrew
		pitch   float64
		exact   bool
		simple  bool
		errorUm float64 // over 10 mm
	}{
		{"1 mm on an 8 tpi screw with a 127", append([]int{127}, metric...), Leadscrew{TPI: 8}, 1, true, true, 0},           // 40/127
		{"20 tpi on a 1.5 mm screw with a 127", append([]int{127}, metric...), Leadscrew{Pitch: 1.5}, 1.27, true, false, 0}, // 127/150
		{"1.5 mm on a 3 mm screw", metric, Leadscrew{Pitch: 3}, 1.5, true, true, 0},
		{"10BA on a 2 mm screw", metric, Leadscrew{Pitch: 2}, 0.35, true, false, 0},
		{"1 mm on an 8 tpi screw with a 63", []int{20, 30, 40, 50, 60, 63, 80}, Leadscrew{TPI: 8}, 1, false, false, 1.25}, // 0.315, printed as 0.0125 %
	} {
		train, err := ChangeWheels(c.wheels, c.screw, c.pitch, 10)
		require.NoError(t, err, c.name)
		assert.Equal(t, c.exact, train.Exact, c.name)
		assert.Equal(t, c.simple, train.Driver2 == 0, c.name)
		assert.InDelta(t, c.errorUm, float64(train.ErrorLength)*1000, 0.06, c.name)
		assert.True(t, train.Allowed, c.name)
	}
	coarse, err := ChangeWheels([]int{20, 30}, Leadscrew{Pitch: 3}, 1, 20)
	require.NoError(t, err)
	assert.False(t, coarse.Allowed) // 2 mm for 1 mm
	for _, bad := range []struct {
		wheels []int
		screw  Leadscrew
		pitch  float64
	}{{nil, Leadscrew{Pitch: 3}, 1}, {metric, Leadscrew{}, 1}, {metric, Leadscrew{Pitch: 3}, 0}, {[]int{20, 5}, Leadscrew{Pitch: 3}, 1}, {metric, Leadscrew{Pitch: 3}, math.Inf(1)}} {
		_, err := ChangeWheels(bad.wheels, bad.screw, bad.pitch, 10)
		assert.Error(t, err)
	}
}

// No train of the wheels comes nearer than the one found, whatever their order.
func TestChangeWheelsIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wheels := rapid.SliceOfN(rapid.IntRange(20, 80), 2, 6).Draw(t, "wheels")
		pitch := float64(rapid.IntRange(20, 300).Draw(t, "pitch")) / 100
		train, err := ChangeWheels(wheels, Leadscrew{Pitch: 2}, pitch, 10)
		require.NoError(t, err)
		again, err := ChangeWheels(rapid.Permutation(wheels).Draw(t, "order"), Leadscrew{Pitch: 2}, pitch, 10)
		require.NoError(t, err)
		assert.Equal(t, train, again)
		least := math.Inf(1)
		for i, a := range wheels {
			for j, b := range wheels {
				if i != j {
					least = min(least, math.Abs(float64(a)/float64(b)*2/pitch-1))
				}
			}
		}
		assert.LessOrEqual(t, math.Abs(train.ErrorPercent)/100, least+1e-6) // error is rounded to a ten thousandth of a percent
	})
}
