package tables

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec/units"
)

func TestEveryFileIsSound(t *testing.T) {
	require.NoError(t, Check())
}

// A bad row is named by file, line and column, and all faults come together.
func TestBadRowsAreTold(t *testing.T) {
	r := &record{file: "x.csv", line: 3, columns: map[string]int{"a": 0, "b_low": 1, "b_high": 2, "source": 3}, fields: []string{"1e400", "5", "3", ""}}
	r.number("a")
	r.between("b")
	r.provenance("source")
	r.text("missing")
	require.Len(t, r.errs, 4)
	for i, part := range []string{`x.csv:3: a: "1e400"`, "x.csv:3: b_low: 5 is above 3", "x.csv:3: source: is empty", "x.csv:3: missing: no such column"} {
		assert.Contains(t, r.errs[i].Error(), part)
	}
}

func TestMaterials(t *testing.T) {
	require.GreaterOrEqual(t, len(Materials()), 31)
	for i, m := range Materials() {
		found, ok := FindMaterial(m.ID)
		require.True(t, ok, m.ID)
		assert.Equal(t, m.ID, found.ID)
		if i > 0 {
			assert.Less(t, Materials()[i-1].ID, m.ID)
		}
	}
	for name, id := range map[string]string{
		"brass": "brass-free-cutting", "CZ121": "brass-free-cutting", "EN1A": "steel-free-cutting",
		"steel": "steel-mild-bright", "1.4301": "stainless-304", "Silver steel": "silver-steel", "aluminium": "aluminium-6082",
	} {
		m, ok := FindMaterial(name)
		require.True(t, ok, name)
		assert.Equal(t, id, m.ID)
	}
	for _, name := range MaterialNames() {
		_, ok := FindMaterial(name)
		assert.True(t, ok, name)
	}
	_, ok := FindMaterial("cheese")
	assert.False(t, ok)
}

// Every metal that may be turned has a roughing depth; rows that carry only a
// warning have none.
func TestRoughDepth(t *testing.T) {
	for _, family := range Families() {
		depth, source, ok := RoughDepth(family)
		cut := family != FamilyBacking && family != FamilyOther
		assert.Equal(t, cut, ok, family)
		if cut {
			assert.Positive(t, depth)
			assert.NotEmpty(t, source)
		}
	}
}

// The drills that units reads from a drawing are those of the table.
func TestDrillsAgreeWithUnits(t *testing.T) {
	for _, d := range Drills(DrillNumber, DrillLetter, DrillFraction) {
		read, err := units.ParseLength(d.Name+" drill", units.MM)
		require.NoError(t, err, d.Name)
		assert.InDelta(t, float64(read), float64(d.Diameter), tableRounding, d.Name)
	}
	assert.Len(t, Drills(DrillNumber), 80)
	assert.Len(t, Drills(DrillLetter), 26)
}

// tableRounding is the rounding of figures printed to four decimals.
const tableRounding = 0.00005 + 1e-9

func TestFindDrill(t *testing.T) {
	for name, want := range map[string]string{
		"6.8": "6.8 mm", "6.8 mm": "6.8 mm", "#30": "#30", "no. 30": "#30", "number 30 drill": "#30",
		"F": "F", "letter f": "F", "27/64": "27/64 in", "27/64 in drill": "27/64 in", "#7 drill": "#7",
	} {
		d, ok := FindDrill(name)
		require.True(t, ok, name)
		assert.Equal(t, want, d.Name)
	}
	for _, name := range []string{"", "#81", "Ø", "6.83"} {
		_, ok := FindDrill(name)
		assert.False(t, ok, name)
	}
}

// The geometry that is computed agrees with the geometry columns of the thread
// table: printed or generated figures, with the source in each row. The table
// rounds pitches and inch diameters to four decimals.
func TestThreadGeometryAgreesWithTheTable(t *testing.T) {
	const roundedInputs = 0.00016 // half of the last place of diameter and pitch, times the depth factor
	raw, err := files.ReadFile("data/threads.csv")
	require.NoError(t, err)
	lines, err := csv.NewReader(strings.NewReader(string(raw))).ReadAll()
	require.NoError(t, err)
	columns := make(map[string]int)
	for i, name := range lines[0] {
		columns[name] = i
	}
	for i, fields := range lines[1:] {
		r := &record{file: "threads.csv", line: i + 2, columns: columns, fields: fields}
		thread, err := FindThread(r.text("designation"))
		require.NoError(t, err)
		require.Equal(t, r.text("designation"), thread.Designation)
		for column, got := range map[string]units.Length{
			"major_mm": thread.Major, "pitch_mm": thread.Pitch, "thread_depth_mm": thread.Depth,
			"effective_mm": thread.Effective, "core_ext_mm": thread.CoreExt, "minor_int_mm": thread.MinorInt,
		} {
			assert.InDelta(t, r.number(column), float64(got), roundedInputs, "%s %s", thread.Designation, column)
		}
		assert.InDelta(t, r.number("engagement_pct"), thread.EngagementPercent, 0.11, thread.Designation)
		assert.InDelta(t, r.number("tap_drill_mm"), float64(thread.TapDrill), 0.00051, thread.Designation)
		require.Empty(t, r.errs)
	}
}

// Every standard thread, whatever the source of its drills: the drill cuts
// between half and 90 % of a thread, the clearances are in order above the
// major diameter, and the designation reads back as the same thread.
func TestEveryThreadIsSound(t *testing.T) {
	require.GreaterOrEqual(t, len(Threads()), 190)
	for _, thread := range Threads() {
		name := thread.Designation
		require.NoError(t, thread.validate(), name)
		assert.Greater(t, thread.EngagementPercent, 60.0, name)
		assert.Less(t, thread.EngagementPercent, 90.0, name)
		assert.InDelta(t, 65, thread.Engagement(thread.Drill65), stockStep, name)
		assert.Greater(t, thread.ClearClose, thread.Major, name)
		assert.GreaterOrEqual(t, thread.ClearMedium, thread.ClearClose, name)
		assert.GreaterOrEqual(t, thread.ClearFree, thread.ClearMedium, name)
		assert.NotEmpty(t, thread.Source, name)
		assert.NotEmpty(t, thread.DrillSource, name)
		assert.NotEmpty(t, thread.ClearSource, name)
		again, err := FindThread(name)
		require.NoError(t, err)
		assert.Equal(t, thread.Pitch, again.Pitch, name)
		assert.Equal(t, thread.Major, again.Major, name)
	}
}

// stockStep is how far, in percent of a thread, the stock drill nearest 65 % may
// lie from it: a step of 0.05 mm is that much of the smallest threads.
const stockStep = 10.0

// BS 93 as printed in Machinery's Handbook: number, major, pitch; the odd sizes
// above 8 are not in the table and come from the rule.
func TestBAByRule(t *testing.T) {
	for _, c := range []struct {
		name               string
		major, pitch, core units.Length
		drill              units.Length
	}{
		{"9BA", 1.9, 0.39, 1.43, 1.55},
		{"BA 11", 1.5, 0.31, 1.13, 1.2},
		{"13 BA", 1.2, 0.25, 0.9, 0.98},
		{"No. 15 BA", 0.9, 0.21, 0.65, 0.7},
		{"0BA", 6, 1, 4.8, 5.1},
		{"16BA", 0.79, 0.19, 0.56, 0.6},
	} {
		thread, err := FindThread(c.name)
		require.NoError(t, err, c.name)
		assert.Equal(t, [4]units.Length{c.major, c.pitch, c.core, c.drill}, [4]units.Length{thread.Major, thread.Pitch, thread.CoreExt, thread.TapDrill}, c.name)
	}
}

func TestFindThread(t *testing.T) {
	for _, c := range []struct {
		written, want string
		major, pitch  units.Length
	}{
		{"M6", "M6", 6, 1},
		{"M6x1", "M6", 6, 1},
		{"m8 x 1", "M8x1", 8, 1},
		{"M20 × 1.5", "M20x1.5", 20, 1.5},
		{"M 7", "M7", 7, 1},
		{"M27", "M27", 27, 3},
		{"M25x1.5", "M25x1.5", 25, 1.5},
		{"M4.5", "M4.5", 4.5, 0.75},
		{"BA 10", "10BA", 1.7, 0.35},
		{"10 BA", "10BA", 1.7, 0.35},
		{"20BA", "20BA", 0.48, 0.12},
		{"ME 1/4x40", "1/4x40 ME", 6.35, 0.635},
		{"1/4 x 40 ME", "1/4x40 ME", 6.35, 0.635},
		{"1/4x40", "1/4x40 ME", 6.35, 0.635},
		{"ME 7/16x40", "7/16x40 ME", 11.1125, 0.635},
		{"BSW 1/4", "1/4 BSW", 6.35, 1.27},
		{"1/4-20 BSW", "1/4 BSW", 6.35, 1.27},
		{"1/4 Whitworth", "1/4 BSW", 6.35, 1.27},
		{"BSW 5/32", "5/32 BSW", 3.96875, 0.79375},
		{"BSF 7/32", "7/32 BSF", 5.55625, 0.907143},
		{"UNC 10-24", "#10-24 UNC", 4.826, 1.058333},
		{"#10-24 UNC", "#10-24 UNC", 4.826, 1.058333},
		{"UNC #10", "#10-24 UNC", 4.826, 1.058333},
		{"UNF 3/8", "3/8-24 UNF", 9.525, 1.058333},
		{"UNC 1-8", "1-8 UNC", 25.4, 3.175},
		{"UNF 1-72", "#1-72 UNF", 1.8542, 0.352778},
		{"UN 1/4-24", "1/4-24 UN", 6.35, 1.058333},
		{"10-30 UN", "#10-30 UN", 4.826, 0.846667},
		{"1 1/8 BSW", "1 1/8 BSW", 28.575, 3.628571},
		{"G 1/4", "G1/4", 13.157, 1.336842},
		{"1/4 BSP", "G1/4", 13.157, 1.336842},
		{"G5/8", "G5/8", 22.911, 1.814286},
		{"26 tpi brass 1/4", "1/4x26 Brass", 6.35, 0.976923},
		{"brass 1/4", "1/4x26 Brass", 6.35, 0.976923},
		{"1/4 in x 26 tpi brass", "1/4x26 Brass", 6.35, 0.976923},
		{"brass 11/32", "11/32x26 Brass", 8.73125, 0.976923},
		{"1/4x60 ME", "1/4x60 Whit", 6.35, 0.423333},
	} {
		thread, err := FindThread(c.written)
		require.NoError(t, err, c.written)
		assert.Equal(t, c.want, thread.Designation, c.written)
		assert.Equal(t, c.major, thread.Major, c.written)
		assert.Equal(t, c.pitch, thread.Pitch, c.written)
	}
}

func TestFindThreadRefuses(t *testing.T) {
	for written, part := range map[string]string{
		"":                        "write it like",
		"M":                       "cannot read",
		"M1/4x1":                  "in decimals",
		"M13":                     "write the pitch",
		"M6x6":                    "too coarse",
		"M300x0.1":                "too fine",
		"M0":                      "no coarse pitch",
		"M0x1":                    "above 0",
		"26BA":                    "0BA to 25BA",
		"-1BA":                    "", // reads as 1BA: a dash in front is a slip
		"ME 1/4":                  "or 1/4x32 ME",
		"1/4-20":                  "1/4 BSW or 1/4-20 UNC",
		"1/4":                     "which series",
		"UNC 1":                   "number 1 or 1 inch",
		"UNC 5/7":                 "threads an inch",
		"G 3/16":                  "G1/16 to G2",
		"BSW 0/0":                 "threads an inch",
		"BSW 1/0x20":              "cannot read the size",
		"acme 1/4":                "cannot read",
		"M6 M8":                   "cannot read",
		"UNC 1/4x20x20":           "cannot read",
		strings.Repeat("M6 ", 20): "at most 40",
	} {
		_, err := FindThread(written)
		if part == "" {
			assert.NoError(t, err, written)
			continue
		}
		require.Error(t, err, written)
		assert.Contains(t, err.Error(), part, written)
	}
}

func FuzzFindThread(f *testing.F) {
	for _, seed := range []string{"M6", "M8x1", "10BA", "ME 1/4x40", "UNC 10-24", "G 1/4", "26 tpi brass 1/4", "1-1/4-7 UNC"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, written string) {
		thread, err := FindThread(written)
		if err != nil {
			return
		}
		require.NoError(t, thread.validate())
		again, err := FindThread(thread.Designation)
		require.NoError(t, err, thread.Designation)
		assert.Equal(t, thread.Major, again.Major)
	})
}
