package replay

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/tables"
)

// block is work for the noughts: a plate 60 by 40, 10 high, with a round of 20 bored in the middle.
type block struct{}

func (block) tops(p pose) []found {
	if p.up() > 0 {
		return []found{{at: 10}}
	}
	return []found{{at: 0}}
}
func (block) edges(_ pose, axis int) []found {
	return []found{{at: 0}, {at: []float64{60, 40}[axis], off: 0.01}}
}
func (block) centres(pose) []centre { return []centre{{x: 30, y: 20, off: 0.005}} }

func millShop() *partspec.Workshop {
	size := func(v float64) (s partspec.Dial) {
		s.Graduation.Value, s.PerTurn.Value = lengthOf(0.02), lengthOf(v)
		s.Reads = partspec.ReadsTravel
		return s
	}
	x, y, q := size(2), size(2), size(2)
	x.Name, y.Name, q.Name = dialX, dialY, dialQuill
	x.Travel = 200
	return &partspec.Workshop{
		Machines:    []partspec.Machine{{Kind: partspec.Mill, Name: "mill", Speeds: nil, SlowestSpeed: 100, FastestSpeed: 2000, Dials: []partspec.Dial{x, y, q}}},
		Tools:       []partspec.Tool{{Kind: partspec.Drills, Name: "drills", Sizes: lengths(5, 6)}, {Kind: partspec.EndMill, Name: "cutter", Sizes: lengths(10)}, {Kind: partspec.BoringHead, Name: "head", LeastSwing: 12, MostSwing: 30}, {Kind: partspec.EdgeFinder, Name: "finder", Accuracy: 0.01}},
		Instruments: []partspec.Instrument{{Kind: partspec.DialIndicator, Name: "clock"}},
	}
}

func millWalk(free string, across bool) *walk {
	shop := millShop()
	return &walk{record: &record{}, job: &partspec.Job{Workshop: shop}, machine: shop.Machines[0], zeros: map[string]nought{},
		setup: plan.Setup{MachineKind: "mill", FreeEnd: free, Across: across, AcrossDeg: 90, LocateMM: 0.02}}
}

func at(x, y, q int64) []plan.Reading {
	return []plan.Reading{{Dial: dialX, Graduations: x}, {Dial: dialY, Graduations: y}, {Dial: dialQuill, Graduations: q}}
}

func zeros(x, y, z float64) []plan.Zero {
	return []plan.Zero{{Dial: dialX, ReferenceMM: x}, {Dial: dialY, ReferenceMM: y}, {Dial: dialQuill, ReferenceMM: z}}
}

func drilling(z []plan.Zero, to int64) plan.Operation {
	return plan.Operation{ID: "o", Tool: plan.ToolRef{ID: "drills/drills", SizeMM: 5}, Zeros: z, Cuts: []plan.Cut{{
		Name: "1", From: at(100, 50, 0), To: []plan.Reading{{Dial: dialQuill, Graduations: to}}}}}
}

func TestDialsOfAMillPutTheSpindle(t *testing.T) {
	for name, c := range map[string]struct {
		free   string
		across bool
		z      float64
		want   place
	}{
		"front up":    {"right", false, 10, place{2, 1, 6}},
		"turned over": {"left", false, 0, place{-2, 1, 4}}, // the x dial counts the other way in the part
		"across":      {"right", true, 10, place{2, 1, 6}},
	} {
		w := millWalk(c.free, c.across)
		op := drilling(zeros(0, 0, c.z), 200)
		w.zeroMill(op, block{})
		m, ok := w.rebuildMill(op, op.Cuts[0], cutKey{})
		require.True(t, ok, "%s: %v", name, w.failures)
		assert.Empty(t, w.failures, name)
		for i := range m.to {
			assert.InDelta(t, c.want[i], m.to[i], 1e-9, name)
		}
		assert.InDelta(t, 2.5, m.radius, 1e-9)
		assert.InDelta(t, 0.02, m.within, 1e-9)
		assert.InDelta(t, 2.5/math.Tan(59*math.Pi/180), m.coneLong(), 1e-9)
	}
}

func TestPoseTurnsPlacesIntoThePart(t *testing.T) {
	x, y, z := pose{across: true, deg: 90}.inPart(place{7, 2, 5}) // up is +Y, side +X
	assert.InDeltaSlice(t, []float64{2, 5, 7}, []float64{x, y, z}, 1e-9)
	x, y, z = pose{across: true}.inPart(place{7, 2, 5}) // up is +X, side -Y
	assert.InDeltaSlice(t, []float64{5, -2, 7}, []float64{x, y, z}, 1e-9)
}

func TestNoughtsOfAMillNeedASurface(t *testing.T) {
	clock := float64(tables.PlaceError(tables.ByClocking))
	for name, c := range map[string]struct {
		z       []plan.Zero
		locate  float64
		refused string
	}{
		"corner":                     {zeros(0, 0, 10), 0.0142, ""},
		"corner claimed too well":    {zeros(0, 0, 10), 0.013, "located"},
		"far corner":                 {zeros(60, 40, 10), 0.0284, ""},
		"far corner, its own error":  {zeros(60, 40, 10), 0.02, "located"},
		"clocked":                    {zeros(30, 20, 10), clock + 0.005, ""},
		"clocked, claimed too well":  {zeros(30, 20, 10), 0.01, "located"},
		"clocked one way":            {zeros(30, 0, 10), 0.1, "zero"},
		"no such edge":               {zeros(1, 0, 10), 0.1, "zero"},
		"no such face":               {zeros(0, 0, 9), 0.1, "zero"},
		"one dial is not set":        {zeros(0, 0, 10)[1:], 0.1, "zero"},
		"the same dial twice":        {append(zeros(0, 0, 10), plan.Zero{Dial: dialX}), 0.1, "zero"},
		"a dial that there is not":   {append(zeros(0, 0, 10), plan.Zero{Dial: dialZ}), 0.1, "zero"},
		"a dial that counts outward": {append(zeros(0, 0, 10)[:2], plan.Zero{Dial: dialQuill, ReferenceMM: 10, Outward: true}), 0.1, "zero"},
	} {
		w := millWalk("right", false)
		w.setup.LocateMM = c.locate
		op := drilling(c.z, 200)
		w.zeroMill(op, block{})
		w.rebuildMill(op, op.Cuts[0], cutKey{})
		assertRefused(t, w, name, c.refused)
	}
}

func assertRefused(t *testing.T, w *walk, name, clause string) {
	t.Helper()
	if clause == "" {
		assert.Empty(t, w.failures, name)
		return
	}
	var clauses []string
	for _, f := range w.failures {
		clauses = append(clauses, f.Clause)
	}
	assert.Contains(t, clauses, clause, "%s: %v", name, w.failures)
}

func TestQuillIsSetAnewForEachTool(t *testing.T) {
	w := millWalk("right", false)
	w.zeroMill(drilling(zeros(0, 0, 10), 200), block{})
	op := plan.Operation{Tool: plan.ToolRef{ID: "end_mill/cutter", SizeMM: 10}}
	w.zeroMill(op, block{})
	assert.Contains(t, w.zeros, dialX)
	assert.NotContains(t, w.zeros, dialQuill)
}

func TestPlacesTakenFromTheWork(t *testing.T) {
	mark := float64(tables.PlaceError(tables.ByPunch))
	for name, c := range map[string]struct {
		at      plan.Place
		dials   bool
		refused string
	}{
		"punched":         {plan.Place{XMM: 5, YMM: 6, By: byPunch, WithinMM: mark}, false, ""},
		"claimed closer":  {plan.Place{XMM: 5, YMM: 6, By: byPunch, WithinMM: 0.1}, false, "located"},
		"by eye":          {plan.Place{XMM: 5, YMM: 6, By: "eye", WithinMM: 1}, false, "located"},
		"less than none":  {plan.Place{XMM: 5, YMM: 6, By: byMate, WithinMM: -1}, false, "located"},
		"and by the dial": {plan.Place{XMM: 5, YMM: 6, By: byPunch, WithinMM: mark}, true, "readings"},
	} {
		w := millWalk("right", false)
		op := drilling(zeros(0, 0, 10), 200)
		op.Cuts[0].At = &c.at
		if !c.dials {
			op.Cuts[0].From = op.Cuts[0].From[2:]
		}
		w.zeroMill(op, block{})
		m, ok := w.rebuildMill(op, op.Cuts[0], cutKey{})
		assertRefused(t, w, name, c.refused)
		if c.refused == "" {
			assert.True(t, ok)
			assert.Equal(t, place{5, 6, 6}, m.to, name)
		}
	}
}

func TestBoringHeadsSwingWhatIsMeasured(t *testing.T) {
	for name, c := range map[string]struct {
		low, high float64
		what      string
		refused   string
	}{
		"within its swing": {20, 20.02, "diameter", ""},
		"too wide":         {31, 31.02, "diameter", "tool"},
		"a length":         {20, 20.02, "length", "tool"}, // it is set to no diameter
	} {
		w := millWalk("right", false)
		op := drilling(zeros(0, 0, 10), 200)
		op.Tool = plan.ToolRef{ID: "boring_head/head"}
		op.Cuts[0].ToMeasure = &plan.Measured{What: c.what, LowMM: c.low, HighMM: c.high}
		w.zeroMill(op, block{})
		m, _ := w.rebuildMill(op, op.Cuts[0], cutKey{})
		assertRefused(t, w, name, c.refused)
		if c.refused == "" {
			assert.InDelta(t, 10, m.radius, 1e-9)
			assert.InDelta(t, 0.02, m.measured, 1e-9)
		}
	}
}

// The table of holes and the card say what the cuts do.
func TestTableOfHolesIsTheCuts(t *testing.T) {
	line := func(dial string, total int64) plan.Line {
		return plan.Line{Label: dial, Dial: dial, Total: total, Turns: total / 100, Marks: total % 100, Counted: true, Reads: "travel", Reading: mm(float64(total)*0.02) + " mm"}
	}
	good := func() plan.Operation {
		op := plan.Operation{ID: "o", Tool: plan.ToolRef{ID: "drills/drills", SizeMM: 5}, Zeros: zeros(0, 0, 10), Passes: 2, Card: []plan.Line{line(dialQuill, 200)}}
		for i, p := range [][2]int64{{250, 500}, {1000, 250}} {
			op.Cuts = append(op.Cuts, plan.Cut{Name: "hole", From: at(p[0], p[1], 0), To: []plan.Reading{{Dial: dialQuill, Graduations: 200}}})
			op.Holes = append(op.Holes, plan.HoleLine{Number: i + 1, XMM: float64(p[0]) * 0.02, YMM: float64(p[1]) * 0.02, X: line(dialX, p[0]), Y: line(dialY, p[1])})
		}
		d := math.Hypot(15, 5)
		op.Chords = []plan.ChordCheck{{From: 1, To: 2, DistanceMM: d, WithinMM: 0.1, PinMM: 5, OverMM: d + 5}}
		return op
	}
	for name, c := range map[string]struct {
		spoil   func(*plan.Operation)
		refused string
	}{
		"as it is":                {func(*plan.Operation) {}, ""},
		"place by the nearest":    {func(o *plan.Operation) { o.Holes[0].XMM, o.Chords = o.Holes[0].XMM+0.009, nil }, ""},
		"place off by a mark":     {func(o *plan.Operation) { o.Holes[0].XMM += 0.02 }, "table"},
		"readings exchanged":      {func(o *plan.Operation) { o.Holes[0].X, o.Holes[1].X = o.Holes[1].X, o.Holes[0].X }, "table"},
		"a line left out":         {func(o *plan.Operation) { o.Holes = o.Holes[:1] }, "table"},
		"a line twice":            {func(o *plan.Operation) { o.Holes = append(o.Holes, o.Holes[0]) }, "table"},
		"a cut left out":          {func(o *plan.Operation) { o.Cuts, o.Passes = o.Cuts[:1], 1 }, "table"},
		"a chord a tenth off":     {func(o *plan.Operation) { o.Chords[0].DistanceMM += 0.1 }, "table"},
		"over other pins":         {func(o *plan.Operation) { o.Chords[0].PinMM = 4 }, "table"},
		"a chord to nowhere":      {func(o *plan.Operation) { o.Chords[0].To = 3 }, "table"},
		"turns that do not add":   {func(o *plan.Operation) { o.Holes[0].X.Turns++ }, "card"},
		"the depth not on a card": {func(o *plan.Operation) { o.Card = nil }, "card"},
		"beyond the travel": {func(o *plan.Operation) {
			o.Cuts[0].From[0].Graduations = 11000
			o.Holes[0].X, o.Holes[0].XMM = line(dialX, 11000), 220
		}, "travel"},
	} {
		w := millWalk("right", false)
		op := good()
		c.spoil(&op)
		w.zeroMill(op, block{})
		w.checkDials(op)
		var passes []pass
		for i, cut := range op.Cuts {
			m, ok := w.rebuildMill(op, cut, cutKey{0, 0, i})
			require.True(t, ok)
			w.checkShownPass(op, m, false)
			passes = append(passes, m)
		}
		w.checkTable(op, passes)
		assertRefused(t, w, name, c.refused)
	}
}

func lengths(mm ...float64) (list []units.Length) {
	for _, v := range mm {
		list = append(list, lengthOf(v))
	}
	return list
}

// A dial that is wound back whole turns from a clocked centre reads nought there; and a drill without a dial goes down to where it is measured.
func TestNoughtsWoundBackAndMeasuredDepths(t *testing.T) {
	w := millWalk("right", false)
	z := zeros(30-2*20, 20-2*20, 10)
	z[0].WoundBack, z[1].WoundBack = 20, 20
	op := drilling(z, 200)
	w.zeroMill(op, block{})
	assert.Empty(t, w.failures)
	m, ok := w.rebuildMill(op, op.Cuts[0], cutKey{})
	require.True(t, ok)
	assert.InDelta(t, -10+2, m.to[0], 1e-9)

	w = millWalk("right", false)
	z[0].WoundBack = 19
	w.zeroMill(drilling(z, 200), block{})
	assert.NotEmpty(t, w.failures, "nothing is there to touch")

	w = millWalk("right", false)
	w.machine.Dials, w.world = nil, world{}
	cut := plan.Cut{Name: "1", At: &plan.Place{XMM: 5, YMM: 6, By: byPunch, WithinMM: 0.5}, ToMeasure: &plan.Measured{What: "position", LowMM: -3, HighMM: -2}}
	m, ok = w.rebuildMill(plan.Operation{ID: "o", Tool: plan.ToolRef{ID: "drills/drills", SizeMM: 5}, Cuts: []plan.Cut{cut}}, cut, cutKey{})
	require.True(t, ok, w.failures)
	assert.Greater(t, m.from[2], 100.0)
	assert.True(t, m.to[2] >= -3 && m.to[2] <= -2)
}
