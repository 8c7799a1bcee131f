package speed

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

func material(t require.TestingT, id string) tables.Material {
	m, ok := tables.FindMaterial(id)
	require.True(t, ok, id)
	return m
}

// Printed by a cutting-tool maker: 50 mm at 700 rev/min is 110 m/min (109.96);
// 120 mm/min at 500 rev/min is 0.24 mm/rev; 100 mm at 0.2 mm/rev and 1000
// rev/min take half a minute; 0.2 mm/rev with a nose of 0.8 leaves 6.25 um.
func TestPrintedExamples(t *testing.T) {
	assert.InDelta(t, 109.96, Surface(50, 700), 0.005)
	minutes, err := Minutes(120, 0.24, 500)
	require.NoError(t, err)
	assert.InDelta(t, 1, float64(minutes), 1e-12)
	minutes, err = Minutes(100, 0.2, 1000)
	require.NoError(t, err)
	assert.Equal(t, units.Minutes(0.5), minutes)
	assert.InDelta(t, 0.00625, float64(Ridge(0.2, 0.8)), 1e-12)
}

// Brass, 60 to 90 m/min rough with HSS: the middle is 75; at 20 mm that is
// 1194 rev/min. Reaming, tapping, threading and parting have ranges of their own.
func TestWanted(t *testing.T) {
	brass := material(t, "brass-free-cutting")
	for _, c := range []struct {
		op      Operation
		tool    Tool
		surface tables.Range
		rule    string
	}{
		{Turn, HSS, tables.Range{Low: 60, High: 90}, "C-01"},
		{Turn, Carbide, tables.Range{Low: 120, High: 200}, "C-01"},
		{Finish, HSS, tables.Range{Low: 75, High: 120}, "C-01"},
		{Drill, HSS, tables.Range{Low: 60, High: 90}, "C-01"},
		{Ream, HSS, tables.Range{Low: 30, High: 50}, "C-01"},
		{Tap, HSS, tables.Range{Low: 18, High: 30}, "C-01"},
		{Thread, Carbide, tables.Range{Low: 15, High: 15}, "C-01"},
		{Part, HSS, tables.Range{Low: 30, High: 50}, "C-01"},
		{Part, Carbide, tables.Range{Low: 60, High: 100}, "C-03"},
		{Bore, HSS, tables.Range{Low: 48, High: 72}, "C-03"},
		{Counterbore, HSS, tables.Range{Low: 21, High: 31.5}, "C-03"},
		{Saw, HSS, tables.Range{Low: 30, High: 45}, "C-03"},
	} {
		w, err := Wanted(brass, 20, c.op, c.tool)
		require.NoError(t, err, c.op)
		assert.InDelta(t, c.surface.Low, w.Surface.Low, 1e-9, c.op)
		assert.InDelta(t, c.surface.High, w.Surface.High, 1e-9, c.op)
		assert.Equal(t, c.rule, w.Rule, c.op)
		assert.InDelta(t, w.SurfaceUsed, Surface(20, w.RPM), roundedRPM, c.op)
		assert.NotEmpty(t, w.Source)
	}
	w, err := Wanted(brass, 20, Turn, HSS)
	require.NoError(t, err)
	assert.Equal(t, units.Speed(1193.7), w.RPM)
}

// roundedRPM is the surface speed in m/min of a speed rounded to 0.1 rev/min at
// 20 mm; roundedDepths the sum of as many depths rounded to a nanometre as any
// plan of these tests has.
const (
	roundedRPM    = 0.05 * math.Pi * 20 / 1000
	roundedDepths = 0.5e-6 * 210
)

func TestWantedRefuses(t *testing.T) {
	brass := material(t, "brass-free-cutting")
	for _, d := range []units.Length{0, -1, units.Length(math.NaN()), units.Length(math.Inf(1))} {
		_, err := Wanted(brass, d, Turn, HSS)
		assert.Error(t, err)
	}
	_, err := Wanted(brass, 20, "chew", HSS)
	assert.ErrorContains(t, err, "write one of")
	_, err = Wanted(brass, 20, Turn, "stone")
	assert.ErrorContains(t, err, "hss or carbide")
	_, err = Wanted(material(t, "beryllium-copper"), 20, Turn, HSS)
	assert.ErrorContains(t, err, "no speed is known")
}

// Every metal that is planned for has a speed for every operation.
func TestEveryMetalHasSpeeds(t *testing.T) {
	for _, m := range tables.Materials() {
		if m.Family == tables.FamilyBacking || m.Family == tables.FamilyOther {
			continue
		}
		for _, op := range Operations() {
			for _, tool := range []Tool{HSS, Carbide} {
				w, err := Wanted(m, 20, op, tool)
				require.NoError(t, err, "%s %s %s", m.ID, op, tool)
				assert.Positive(t, float64(w.RPM))
			}
		}
	}
}

var small = Machine{Steps: []units.Speed{1200, 90, 200, 350, 600, 2000}} // any order will do

func TestChoose(t *testing.T) {
	for _, c := range []struct {
		wanted  units.Speed
		machine Machine
		caps    []Cap
		want    units.Speed
		ruled   string
		tooFast bool
	}{
		{1194, small, nil, 1200, "tool and material", false}, // half a percent above
		{1150, small, nil, 1200, "tool and material", false}, // 4.3 % above
		{1140, small, nil, 600, "tool and material", false},  // 5.3 % above
		{599, small, []Cap{{What: "chuck", RPM: 599, Rule: "B-29"}}, 350, "tool and material", false},
		{1500, small, []Cap{{What: "chuck", RPM: 500, Rule: "B-29"}, {What: "glue", RPM: 700}}, 350, "chuck", false},
		{50, small, nil, 90, "tool and material", true},
		{1500, small, []Cap{{What: "balance", RPM: 60}}, 90, "balance", true},
		{5000, small, nil, 2000, "the machine's highest speed", false},
		{1194, Machine{Low: 100, High: 2500}, nil, 1190, "tool and material", false},
		{95, Machine{Low: 100, High: 2500}, nil, 100, "tool and material", true}, // 5.3 % above
		{98, Machine{Low: 100, High: 2500}, nil, 100, "tool and material", false},
		{4000, Machine{Low: 100, High: 2500}, nil, 2500, "the machine's highest speed", false},
	} {
		got, err := Choose(Want{RPM: c.wanted}, 20, c.machine, c.caps...)
		require.NoError(t, err)
		assert.Equal(t, c.want, got.Speed, "%v", c)
		assert.Equal(t, c.ruled, got.RuledBy, "%v", c)
		assert.Equal(t, c.tooFast, got.TooFast, "%v", c)
	}
	for _, m := range []Machine{{}, {Steps: []units.Speed{0}}, {Low: 200, High: 100}, {Low: 1, High: units.Speed(math.Inf(1))}} {
		_, err := Choose(Want{RPM: 100}, 20, m)
		assert.Error(t, err)
	}
	_, err := Choose(Want{RPM: 100}, 20, small, Cap{What: "chuck"})
	assert.Error(t, err)
}

// Whatever is wanted and capped: not above a cap, not more than 5 % above the
// wanted speed, unless it is the lowest speed and said to be too fast.
func TestChooseNeverAbove(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wanted := units.Speed(rapid.Float64Range(1, 5000).Draw(t, "wanted"))
		limit := units.Speed(rapid.Float64Range(1, 5000).Draw(t, "cap"))
		machine := rapid.SampledFrom([]Machine{small, {Low: 75, High: 2500}}).Draw(t, "machine")
		c, err := Choose(Want{RPM: wanted}, 20, machine, Cap{What: "chuck", RPM: limit})
		require.NoError(t, err)
		if c.TooFast {
			lowest, _ := machine.under(0, 0)
			assert.Equal(t, lowest, c.Speed)
			return
		}
		assert.LessOrEqual(t, c.Speed, limit)
		assert.LessOrEqual(t, c.Speed, wanted*aboveWanted)
	})
}

// Rule B-29's list for unmarked chucks, and two examples of work out of balance.
func TestCaps(t *testing.T) {
	for diameter, rpm := range map[units.Length]units.Speed{80: 4000, 100: 3800, 125: 3000, 160: 2300, 200: 1900} {
		c, err := ChuckCap(diameter, 0, JawsNormal)
		require.NoError(t, err)
		assert.Equal(t, rpm, c.RPM)
	}
	marked, err := ChuckCap(100, 3000, JawsReversed)
	require.NoError(t, err)
	assert.Equal(t, units.Speed(2000), marked.RPM)
	heavy, err := ChuckCap(100, 3000, JawsHeavy)
	require.NoError(t, err)
	assert.Equal(t, units.Speed(1500), heavy.RPM)
	for u, rpm := range map[float64]units.Speed{10: 520, 50: 230} {
		c, err := BalanceCap(u, 30)
		require.NoError(t, err)
		assert.Equal(t, rpm, c.RPM)
	}
	assert.Equal(t, units.Speed(600), GluedCap(Want{RPM: 1000}).RPM)
	_, err = ChuckCap(0, 0, JawsNormal)
	assert.Error(t, err)
	_, err = ChuckCap(100, 0, "none")
	assert.Error(t, err)
	_, err = BalanceCap(0, 30)
	assert.Error(t, err)
}

func TestFeeds(t *testing.T) {
	brass, stainless := material(t, "brass"), material(t, "stainless-304")
	for _, c := range []struct {
		op   Operation
		m    tables.Material
		d    units.Length
		want float64
	}{
		{Turn, brass, 20, 0.14}, {Turn, stainless, 20, 0.08}, {Finish, brass, 20, 0.055},
		{Drill, brass, 3.2, 0.038}, {Drill, brass, 3.3, 0.075}, {Drill, stainless, 10, 0.1}, {Drill, brass, 30, 0.51}, {Ream, stainless, 10, 0.2},
	} {
		f, err := FeedFor(c.op, c.m, c.d)
		require.NoError(t, err)
		assert.InDelta(t, c.want, f.Used, 0.0011, "%s %s", c.op, c.m.ID)
		assert.NotEmpty(t, f.Source)
	}
	_, err := FeedFor(Knurl, brass, 20)
	assert.Error(t, err)
	_, err = FeedFor(Drill, brass, 0)
	assert.Error(t, err)

	f, err := FinishFeed(0.4, 1.6) // the usual worked example
	require.NoError(t, err)
	assert.Equal(t, 0.15, f.Used)
	assert.LessOrEqual(t, float64(Ridge(f.Used, 0.4)), 0.0016*rzPerRa)
	_, err = FinishFeed(0, 1.6)
	assert.Error(t, err)

	for depth, want := range map[float64][2]float64{2: {1, 1}, 3: {0.9, 0.9}, 4.5: {0.8, 0.9}, 5: {0.7, 0.8}, 9: {0.6, 0.8}} {
		speed, feed, _ := DeepHole(depth)
		assert.InDelta(t, want[0], speed, 1e-9)
		assert.InDelta(t, want[1], feed, 1e-9)
	}
	assert.Equal(t, units.Length(3), PointLength(10))
}

func TestDepths(t *testing.T) {
	d, err := RoughDepth(material(t, "stainless-304"), 2)
	require.NoError(t, err)
	assert.Equal(t, Depth{0.5, "C-29", d.Source}, d)
	d, err = RoughDepth(material(t, "brass"), 3.1)
	require.NoError(t, err)
	assert.Equal(t, units.Length(0.75), d.Depth)
	_, err = RoughDepth(material(t, "mdf"), 1)
	assert.Error(t, err)

	depth, floor := FinishDepth(HSS, 0.4)
	assert.Equal(t, []units.Length{0.2, 0.05}, []units.Length{depth.Depth, floor.Depth})
	depth, floor = FinishDepth(Carbide, 0.8)
	assert.Equal(t, []units.Length{0.2, 0.2}, []units.Length{depth.Depth, floor.Depth})
	_, floor = FinishDepth(Carbide, 0.2)
	assert.Equal(t, units.Length(0.1), floor.Depth)
}

func TestDivide(t *testing.T) {
	p, err := Divide(5, 1, 0.2, 0.05)
	require.NoError(t, err)
	assert.Equal(t, 5, p.Rough)
	assert.InDelta(t, 0.92, float64(p.RoughDepth), 1e-9)
	p, err = Divide(0.08, 1, 0.2, 0.05)
	require.NoError(t, err)
	assert.Equal(t, Passes{Finish: 1, FinishDepth: 0.08}, p)
	for _, bad := range [][4]units.Length{{0, 1, 0.2, 0.05}, {5, 0, 0.2, 0.05}, {5, 1, 0, 0.05}, {5, 1, 0.2, 0.3}, {5, 0.001, 0.2, 0.05}, {units.Length(math.NaN()), 1, 0.2, 0.05}} {
		_, err := Divide(bad[0], bad[1], bad[2], bad[3])
		assert.Error(t, err)
	}
}

// The cuts add up, none is deeper than asked, and one fewer roughing cut would
// be too deep.
func TestDivideAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		total := units.Length(rapid.IntRange(1, 20_000).Draw(t, "micrometres")) / 1000
		rough := units.Length(rapid.IntRange(100, 3000).Draw(t, "rough")) / 1000
		p, err := Divide(total, rough, 0.2, 0.05)
		require.NoError(t, err)
		assert.InDelta(t, float64(total), float64(units.Length(p.Rough)*p.RoughDepth+units.Length(p.Finish)*p.FinishDepth), roundedDepths)
		assert.LessOrEqual(t, p.RoughDepth, rough)
		assert.LessOrEqual(t, p.FinishDepth.Round(nanometre), units.Length(0.2))
		if p.Rough > 1 {
			assert.Greater(t, float64(p.RoughDepth)*float64(p.Rough)/float64(p.Rough-1), float64(rough)-roundedDepths)
		}
	})
}
