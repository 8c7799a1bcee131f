package holding

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/process"
)

// ledgeShop is a bearing with a bore, on the lathe with a faceplate and a large angle plate.
func ledgeShop(t *testing.T, o partspec.Outline, x, y float64) (*Shop, Mount) {
	t.Helper()
	s := flatShop(t, o, 30, boring(x, y, 10, 30, 0.02, "", 300))
	angle := partspec.Holding{Kind: partspec.AnglePlate, Name: "angle", Width: 160, Reach: 60, Leg: 40, Thickness: 8, ToeWidth: 10, ClampForce: 4000}
	s.Shop = &partspec.Workshop{Holdings: []partspec.Holding{{Kind: partspec.Faceplate, Name: "plate", Diameter: 150}, angle}}
	s.Lathe.Swing = 250
	return s, Mount{Holding: angle, Free: partspec.Right, CentreX: x, CentreY: y, About: "main", Z1: 30}
}

// bracket is a T standing on its foot.
func bracket() partspec.Outline {
	o := partspec.Outline{Kind: "chain", Datum: []string{"foot"}}
	at := [][2]float64{{0, 0}, {80, 0}, {80, 12}, {58, 12}, {58, 60}, {22, 60}, {22, 12}, {0, 12}}
	for i, p := range at {
		n := at[(i+1)%len(at)]
		e := partspec.OutlineEdge{X0: mmOf(p[0]), Y0: mmOf(p[1]), X1: mmOf(n[0]), Y1: mmOf(n[1]), Off: 0.2, On: 0.2}
		if i == 0 {
			e.Name = "foot"
		}
		o.Edges = append(o.Edges, e)
	}
	return o
}

// A block gets one bar over its top with a stud at each end; a bracket a strap on each shoulder of its foot, its packing outside. Each toe stands over solid metal,
// clear of the bore, and all of it finds room on the ledge.
func TestStrapsOnALedge(t *testing.T) {
	for _, c := range []struct {
		name    string
		outline partspec.Outline
		x, y    float64
		bar     bool
		up      float64
	}{
		{"block", rectangle(90, 44), 45, 24, true, 44},
		{"bracket", bracket(), 40, 40, false, 12},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, m := ledgeShop(t, c.outline, c.x, c.y)
			l := s.onLedge(m, now(s))
			require.Empty(t, l.Why)
			assert.Equal(t, c.bar, l.ledge.Bar)
			require.Len(t, l.ledge.Straps, 2)
			for i, strap := range l.ledge.Straps {
				assert.InDelta(t, c.up, strap.YMM, edgeNoise)
				assert.Equal(t, i == 0, strap.XMM < c.x, "one on each side of the bore")
				assert.GreaterOrEqual(t, math.Abs(strap.XMM-c.x), 10+columnClear+strap.ToeMM/2, "clear of the bore")
				end, _ := strapEnd(strap, l.ledge.Bar)
				assert.GreaterOrEqual(t, end, l.ledge.X0-edgeNoise)
				assert.LessOrEqual(t, end, l.ledge.X1+edgeNoise)
			}
			assert.Positive(t, l.NeedN)
			assert.Greater(t, l.limit, l.lobe)
		})
	}
}

// What an angle plate cannot do is refused with its figures.
func TestAnglePlateRefuses(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*Shop, *Mount)
		want  string
	}{
		{"no faceplate", func(s *Shop, _ *Mount) { s.Shop.Holdings = s.Shop.Holdings[1:] }, "none is owned"},
		{"one bolt", func(_ *Shop, m *Mount) { m.Holding.Clamps = 1 }, "1 bolt"},
		{"raw edge", func(s *Shop, _ *Mount) { s.Flat.Left[0] = 1 }, "not finished"},
		{"narrow ledge", func(_ *Shop, m *Mount) { m.Holding.Width = 100 }, "it is 100 wide"},
		{"short ledge", func(_ *Shop, m *Mount) { m.Holding.Reach = 20 }, "thickness would stand"},
		{"long leg", func(_ *Shop, m *Mount) { m.Holding.Leg = 120 }, "beyond the faceplate's 75"},
		{"small lathe", func(s *Shop, _ *Mount) { s.Lathe.Swing = 150 }, "foul the bed"},
		{"weak straps", func(_ *Shop, m *Mount) { m.Holding.ClampForce = 500 }, "they give 1000"},
		{"on its side", func(_ *Shop, m *Mount) { m.Base = 1 }, "on both sides"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, m := ledgeShop(t, rectangle(90, 44), 45, 15)
			c.spoil(s, &m)
			m.Surface = "its bottom edge"
			facts := s.Facts(m, 0, s.Tasks[0].Ways[0], 1)
			facts.Ledge = nil
			verdicts, _ := s.Judge(m, 0, s.Tasks[0].Ways[0], 1, facts, never)
			require.NotEmpty(t, verdicts)
			said := ""
			for _, v := range verdicts {
				said += v.Rule + " " + v.Reason + "; "
			}
			assert.Contains(t, said, "B-10")
			assert.Contains(t, said, c.want)
		})
	}
}

// A drill only twists the work: its straps need far less than a boring tool's, which also pushes it along the ledge.
func TestLedgeNeedsLessForADrill(t *testing.T) {
	s, m := ledgeShop(t, rectangle(90, 44), 45, 24)
	bored := s.onLedge(m, now(s)).NeedN
	drill := process.Task{Op: s.Tasks[0].Op, Ways: s.Tasks[0].Ways}
	drill.Process = plan.Drill
	s.Tasks[0] = drill
	assert.Less(t, s.onLedge(m, now(s)).NeedN, bored)
}

func mmOf(v float64) units.Length { return units.Length(v) }
