package holding

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
	"catchplate/planner/tables"
)

// flatShop is a plate with tasks, in a shop with a lathe and a mill.
func flatShop(t *testing.T, outline partspec.Outline, thick float64, tasks ...process.Task) *Shop {
	t.Helper()
	steel, ok := tables.FindMaterial("mild steel")
	require.True(t, ok)
	part := &partspec.Part{Name: "plate", Material: steel, Outline: &outline}
	c := &process.Context{Part: part, Shop: &partspec.Workshop{}, Rules: rules.All(), Length: thick,
		Lathe: partspec.Machine{Kind: partspec.Lathe, Swing: 180, SlowestSpeed: 60}, Mill: partspec.Machine{Kind: partspec.Mill}}
	c.Flat = shape.Flat{Drawn: shape.DrawnRegion(&outline), Left: make([]float64, len(outline.Edges)), Front: thick}
	return newShop(c, tasks)
}

func rectangle(w, h units.Length) partspec.Outline {
	at := func(name string, x0, y0, x1, y1 units.Length) partspec.OutlineEdge {
		return partspec.OutlineEdge{Name: name, X0: x0, Y0: y0, X1: x1, Y1: y1, Off: 0.2, On: 0.2}
	}
	return partspec.Outline{Kind: "rectangle", Datum: []string{"left", "bottom"}, Edges: []partspec.OutlineEdge{at("bottom", 0, 0, w, 0), at("right", w, 0, w, h), at("top", w, h, 0, h), at("left", 0, h, 0, 0)}}
}

func disc(r units.Length) partspec.Outline {
	return partspec.Outline{Kind: "disc", Edges: []partspec.OutlineEdge{{Name: "rim", X0: r, X1: r, Arc: true, Radius: r}}}
}

// boring finishes a hole through the plate, on a machine.
func boring(x, y, radius, thick, round float64, on partspec.MachineKind, force float64) process.Task {
	return process.Task{Op: shape.Op{ID: "bore.main/bore", Feature: "main", Process: plan.BoreOut, Stage: shape.Finishing, Z1: thick, Round: round, Makes: []string{"main"},
		Spots: []shape.Spot{{X: x, Y: y, Radius: radius}}, Flat: &shape.FlatCut{Holes: []shape.Round{{X: x, Y: y, Radius: radius, Z1: thick}}}},
		Ways: []process.Way{{Machine: on, End: partspec.Right, ForceN: force, ForceAt: radius}}}
}

func never(int) bool { return false }

func now(s *Shop) moment {
	return moment{flat: s.Flat, done: never, tasks: []int{0}, ways: s.Tasks[0].Ways[:1], light: 1}
}

// Clamps bite solid metal, keep clear of the cut and of each other, and leave no wide gap.
func TestClampsFindTheirPlaces(t *testing.T) {
	s := flatShop(t, rectangle(100, 80), 8, boring(50, 40, 20, 8, 0, partspec.Mill, 200))
	m := Mount{Holding: partspec.Holding{Kind: partspec.TableClamps, Clamps: 4, ToeWidth: 12}, Machine: partspec.Mill, Free: partspec.Right}
	l := s.clampsFor(m, now(s))
	require.Empty(t, l.Wanting())
	require.GreaterOrEqual(t, len(l.list), 3)
	assert.LessOrEqual(t, l.SpreadDeg, mostGapDeg(len(l.list)))
	rim := s.Flat.Rim()
	for i, c := range l.list {
		assert.GreaterOrEqual(t, rim.Inside(c.XMM, c.YMM), c.ToeMM/2-edgeNoise, "on the metal: %v", c)
		assert.GreaterOrEqual(t, math.Hypot(c.XMM-50, c.YMM-40)-20, c.ToeMM/2+toeFromCut, "clear of the cut: %v", c)
		a := c.AngleDeg * math.Pi / 180
		assert.Less(t, rim.Inside(c.XMM+c.StudMM*math.Cos(a), c.YMM+c.StudMM*math.Sin(a)), -4.0, "its stud stands beside the work: %v", c)
		for _, o := range l.list[:i] {
			assert.Greater(t, math.Hypot(c.XMM-o.XMM, c.YMM-o.YMM), c.ToeMM)
		}
	}
}

// A clamp fewer than three, a bore that leaves no metal beside it, or a cut too heavy for them is refused with the reason.
func TestClampsRefuse(t *testing.T) {
	table := func(clamps int) Mount {
		return Mount{Holding: partspec.Holding{Kind: partspec.TableClamps, Clamps: clamps, ToeWidth: 12, ClampForce: 3000}, Machine: partspec.Mill, Free: partspec.Right}
	}
	for name, c := range map[string]struct {
		clamps           int
		y, radius, force float64
		says             string
	}{
		"enough":           {4, 40, 20, 200, ""},
		"two owned":        {2, 40, 20, 200, "2 clamps are owned"},
		"on its corners":   {4, 40, 38, 200, ""},
		"a thin web":       {4, 46, 30, 200, ""},
		"past every place": {4, 40, 60, 200, "no place for three clamps"},
		"a heavy cut":      {4, 40, 20, 4000, "N of clamping"},
	} {
		t.Run(name, func(t *testing.T) {
			s := flatShop(t, rectangle(100, 80), 8, boring(50, c.y, c.radius, 8, 0, partspec.Mill, c.force))
			why := s.clampsFor(table(c.clamps), now(s)).Wanting()
			if c.says == "" {
				assert.Empty(t, why)
			} else {
				assert.Contains(t, why, c.says)
			}
		})
	}
}

// A bigger force never asks for less.
func TestClampNeedGrowsWithTheCut(t *testing.T) {
	s := flatShop(t, rectangle(90, 70), 6, boring(40, 30, 15, 6, 0, partspec.Mill, 100))
	m := Mount{Holding: partspec.Holding{Kind: partspec.TableClamps, ToeWidth: 10}, Machine: partspec.Mill, Free: partspec.Right}
	need := 0.0
	for force := 50.0; force < 800; force += 50 {
		s.Tasks[0].Ways[0].ForceN = force
		l := s.clampsFor(m, now(s))
		assert.GreaterOrEqual(t, l.NeedN, need)
		need = l.NeedN
	}
}

func TestViceOnParallels(t *testing.T) {
	vice := Mount{Holding: partspec.Holding{Kind: partspec.Vice, Opening: 100, JawHeight: 25, JawWidth: 90}, Machine: partspec.Mill, Free: partspec.Right}
	for name, c := range map[string]struct {
		outline partspec.Outline
		thick   float64
		at      float64 // centre of a hole of 6 across, along X
		press   float64
		says    string
	}{
		"a plate":                      {rectangle(60, 80), 8, 30, 0, ""},
		"across its length":            {rectangle(60, 80), 8, 30, 90, ""},
		"wider than it opens":          {rectangle(120, 80), 8, 30, 0, "opening"},
		"that side fits":               {rectangle(120, 80), 8, 30, 90, ""},
		"a disc":                       {disc(30), 8, 0, 0, "no two parallel straight edges"},
		"a strip":                      {rectangle(60, 80), 3.2, 30, 0, ""},
		"thin sheet":                   {rectangle(60, 80), 0.9, 30, 0, "would be in the jaws"},
		"sheet that bows":              {rectangle(98, 80), 1, 49, 0, "would bow"},
		"a hole over its parallel":     {rectangle(60, 80), 8, 6, 0, "parallels"},
		"beside it a thinner one does": {rectangle(60, 80), 8, 9, 0, ""},
	} {
		t.Run(name, func(t *testing.T) {
			s := flatShop(t, c.outline, c.thick, boring(c.at, 0.5*float64(c.outline.Edges[0].Y1)+20, 3, c.thick, 0, partspec.Mill, 100))
			m := vice
			m.PressDeg = c.press
			p := s.grips(m, now(s))
			if c.says != "" {
				assert.Contains(t, p.Wanting(), c.says)
				return
			}
			require.Empty(t, p.Wanting())
			require.Len(t, p.presses, 2)
			rim := s.Flat.Rim()
			for _, j := range p.presses {
				assert.InDelta(t, 0, rim.Inside(j.XMM, j.YMM), 1e-9, "a jaw presses on the rim: %v", j)
				a := j.AngleDeg * math.Pi / 180
				assert.Less(t, rim.Inside(j.XMM+math.Cos(a), j.YMM+math.Sin(a)), 0.0, "and lies outside it")
			}
			hole := plane.Round(s.Tasks[0].Spots[0].X, s.Tasks[0].Spots[0].Y, 3+toolRoom)
			for _, u := range p.under {
				assert.False(t, plane.Meet(hole, plane.Rectangle(u.X0, u.Y0, u.X1, u.Y1).Figure()), "%v", u)
				assert.True(t, plane.Meet(rim.Figure(), plane.Rectangle(u.X0, u.Y0, u.X1, u.Y1).Figure()))
			}
		})
	}
}

// The balance of a plain plate, by hand: m = 100 x 80 x 10 x 7850e-9 = 0.628 kg with its centre 30 off the axis, U = m e = 18.84 kg mm; F = m e w^2 (ISO 1925
// defines unbalance so), so that 60 rad/s shake with 67.8 N.
func TestWeightAndBalance(t *testing.T) {
	s := flatShop(t, rectangle(100, 80), 10)
	w := s.weight(moment{flat: s.Flat, done: never})
	density := s.Part.Material.DensityKgM3
	assert.InDelta(t, 100*80*10*density*1e-9, w.MassKG, 1e-12)
	assert.InDelta(t, 50, w.XMM, 1e-9)
	b, ok := balance([]mechanics.Weight{w}, 20, 40, 80)
	require.True(t, ok)
	u := w.MassKG * 30
	assert.InDelta(t, u, b.UnbalanceKgMM, 1e-9)
	assert.InDelta(t, u/64, b.WeightKg, 1e-9, "on 0.8 of the radius")
	assert.InDelta(t, 180, b.AngleDeg, 1e-9, "opposite the heavy side")
	omega := b.MostRPM * 2 * math.Pi / 60
	assert.LessOrEqual(t, b.LeftOverKgMM*1e-3*omega*omega, mostShakingN)
	assert.Greater(t, b.LeftOverKgMM*1e-3*math.Pow(omega*1.03, 2), mostShakingN, "no lower than it has to be")
}

// A hole takes its mass away; a pilot is part of the bore that follows it.
func TestWeightOfBoredPlate(t *testing.T) {
	s := flatShop(t, rectangle(100, 80), 10)
	f := s.Flat
	f.Holes = []shape.Round{{X: 20, Y: 40, Radius: 4, Z1: 10}, {X: 20, Y: 40, Radius: 10, Z1: 10}}
	whole, left := s.weight(moment{flat: s.Flat, done: never}), s.weight(moment{flat: f, done: never})
	hole := math.Pi * 100 * 10 * s.Part.Material.DensityKgM3 * 1e-9
	assert.InDelta(t, whole.MassKG-hole, left.MassKG, 1e-12)
	assert.InDelta(t, (whole.MassKG*50-hole*20)/left.MassKG, left.XMM, 1e-9)
}

func TestFaceplateRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		x, y, plate float64
		raw         bool
		rule        string
	}{
		"in the middle":       {50, 40, 160, false, ""},
		"over the edge":       {50, 40, 110, false, "B-06"},
		"a raw face":          {50, 40, 160, true, "B-06"},
		"far off its centre":  {85, 40, 230, false, ""},
		"over the lathe":      {85, 40, 230, false, ""},
		"off balance and out": {95, 40, 120, false, "B-06"},
	} {
		t.Run(name, func(t *testing.T) {
			s := flatShop(t, rectangle(100, 80), 8, boring(c.x, c.y, 12, 8, 0.02, "", 100))
			s.Lathe.Swing = 300
			if c.raw {
				s.Flat.Back = -1
			}
			m := Mount{Holding: partspec.Holding{Kind: partspec.Faceplate, Diameter: units.Length(c.plate), Clamps: 6, ToeWidth: 10}, Free: partspec.Right, CentreX: c.x, CentreY: c.y, About: "main", By: ByEdges}
			way := s.Tasks[0].Ways[0]
			verdicts, _ := s.Judge(m, 0, way, 1, s.Facts(m, 0, way, 1), never)
			if c.rule == "" {
				assert.Empty(t, ruleOf(verdicts, "B-06"), "%v", verdicts)
				return
			}
			assert.NotEmpty(t, ruleOf(verdicts, c.rule), "%v", verdicts)
		})
	}
}

func ruleOf(list []rules.Verdict, id string) string {
	for _, v := range list {
		if v.Rule == id {
			return v.Reason
		}
	}
	return ""
}

// fourJaw judges the finishing of a bore of 40 in a plate of 60, so much metal above it, in the independent chuck.
func fourJaw(t *testing.T, web, round float64) (reason string, f Figures) {
	t.Helper()
	s := flatShop(t, rectangle(60, units.Length(60+web)), 6, boring(30, 40, 20, 6, round, "", 60))
	m := Mount{Holding: partspec.Holding{Kind: partspec.FourJaw, JawWidth: 10, Largest: 120, GripLight: 200, GripFirm: 3000}, Free: partspec.Right, CentreX: 30, CentreY: 40, About: "main", By: ByEdges}
	way := s.Tasks[0].Ways[0]
	verdicts, f := s.Judge(m, 0, way, 1, s.Facts(m, 0, way, 1), never)
	return ruleOf(verdicts, "B-23"), f
}

// The squeeze of four jaws decides, and the waste that is told is the waste that it takes: a hair less is refused, a hair more passes. A wider tolerance wants less.
func TestFourJawFlipsAtItsWaste(t *testing.T) {
	last := math.Inf(1)
	for _, round := range []float64{0.01, 0.02, 0.04} {
		reason, f := fourJaw(t, 1, round)
		require.NotEmpty(t, reason, "a web of 1 mm")
		waste := f.Case.WasteMM
		require.Less(t, waste, last, "a roundness of %.3f wants less than one half as wide", round)
		last = waste
		short, _ := fourJaw(t, waste-2*wasteWithin, round)
		enough, g := fourJaw(t, waste+2*wasteWithin, round)
		assert.NotEmpty(t, short)
		assert.Empty(t, enough)
		assert.InDelta(t, round*lobeShare, g.LobeMM, 0.02*round)
		t.Logf("roundness %.3f: web 1.0 -> %.4f, passes from %.2f on", round, f.LobeMM, waste)
	}
}

// A thicker web is never squeezed more.
func TestThickerWebNeverSqueezedMore(t *testing.T) {
	last := math.Inf(1)
	for web := 0.8; web < 12; web += 0.4 {
		_, f := fourJaw(t, web, 0.02)
		assert.LessOrEqual(t, f.LobeMM, last, "web %.1f", web)
		last = f.LobeMM
	}
}

// Jaws stand on sides that face them: a rectangle's, and the crown of an arc, but not a slope.
func TestJawsFaceTheRim(t *testing.T) {
	slope := rectangle(60, 80)
	slope.Edges[1].X1, slope.Edges[2].X0 = 50, 50
	for name, c := range map[string]struct {
		outline partspec.Outline
		x, y    float64
		ok      bool
	}{
		"a rectangle":         {rectangle(60, 80), 30, 40, true},
		"over a corner":       {rectangle(60, 80), 4.5, 40, false},
		"just beside one":     {rectangle(60, 80), 5, 40, true},
		"a slope":             {slope, 30, 40, false},
		"a disc":              {disc(30), 0, 0, true},
		"a disc off its axis": {disc(30), 4, 0, false},
	} {
		t.Run(name, func(t *testing.T) {
			s := flatShop(t, c.outline, 6, boring(c.x, c.y, 4, 6, 0.02, "", 60))
			m := Mount{Holding: partspec.Holding{Kind: partspec.FourJaw, JawWidth: 10}, Free: partspec.Right, CentreX: c.x, CentreY: c.y}
			jaws, ok := s.fourJaws(m, now(s))
			require.Equal(t, c.ok, ok)
			for _, j := range jaws {
				assert.InDelta(t, 0, s.Flat.Rim().Inside(j.XMM, j.YMM), 1e-9)
			}
		})
	}
}

// A bore that is finished in the vice is squeezed as well: alike along X and Y where the plate is alike, and it tells the waste that would save it.
func TestViceSqueezesTheBore(t *testing.T) {
	judged := func(w, h units.Length, press float64) Figures {
		s := flatShop(t, rectangle(w, h), 8, boring(30, 30, 20, 8, 0.02, partspec.Mill, 120))
		m := Mount{ID: "vice", Holding: partspec.Holding{Kind: partspec.Vice, Opening: 100, JawHeight: 25, JawWidth: 50, GripFirm: 8000}, Machine: partspec.Mill, Free: partspec.Right, PressDeg: press}
		way := s.Tasks[0].Ways[0]
		_, f := s.Judge(m, 0, way, 1, s.Facts(m, 0, way, 1), never)
		return f
	}
	x, y := judged(60, 60, 0), judged(60, 60, 90)
	require.Positive(t, x.LobeMM)
	assert.InEpsilon(t, x.LobeMM, y.LobeMM, 1e-6)
	assert.InDelta(t, 10, x.Case.WebMM, 1e-9)
	thin := judged(60, 56, 0)
	assert.Greater(t, thin.LobeMM/thin.WorkingN, x.LobeMM/x.WorkingN, "a thinner web gives more")
	assert.Greater(t, thin.Case.WasteMM, thin.Case.WebMM)
}

// A small bore with metal all round it is squeezed as a hole in a pressed plate: 4 p r/E from peak to valley, and something more, as the plate ends.
func TestViceSqueezesAHoleInAPlate(t *testing.T) {
	s := flatShop(t, rectangle(90, 90), 8, boring(45, 45, 5, 8, 0.02, partspec.Mill, 120))
	m := Mount{ID: "vice", Holding: partspec.Holding{Kind: partspec.Vice, Opening: 100, JawHeight: 25, JawWidth: 80, GripFirm: 8000}, Machine: partspec.Mill, Free: partspec.Right}
	way := s.Tasks[0].Ways[0]
	_, f := s.Judge(m, 0, way, 1, s.Facts(m, 0, way, 1), never)
	wide := 4 * f.WorkingN / (80 * 8) * 5 / (1000 * s.Part.Material.ModulusGPa.Low)
	assert.Greater(t, f.LobeMM, wide)
	assert.Less(t, f.LobeMM, 1.1*wide)
}
