package planner_test

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// eccentricParts are parts of the tide gauge that turn about two axes.
var eccentricParts = map[string]string{
	"pen lift": `part "lift" {
  material = "mild steel"
  length = 26
  stock "bar" { 
    diameter = 40 
  }
  axis "spindle" { 
    offset = "3 ±0.05" 
  }
  flange "sheave" { 
    diameter = 36 
  }
  spigot "boss" {
    axis = "spindle"
    diameter = 20
    length = 8
    from = "right"
  }
  bore "hole" {
    axis = "spindle"
    diameter = "10 H7"
  }
}`,
	"crank": `part "crank" {
  material = "mild steel"
  length = 60
  stock "bar" {
    diameter = 25
  }
  axis "pin" {
    offset = 4
  }
  spigot "shaft" {
    diameter = "12 h8"
    length = 40
  }
  flange "disc" {
    diameter = 22
  }
  spigot "crankpin" {
    axis = "pin"
    diameter = "8 h8"
    length = 12
  }
}`,
	"bush": `part "bush" {
  material = "brass"
  length = 20
  stock "bar" {
    diameter = 30
  }
  axis "off" {
    offset = "2 ±0.1"
  }
  spigot "outside" {
    diameter = "25 h8"
  }
  bore "hole" {
    axis = "off"
    diameter = "12 H8"
  }
}`,
	"left pin": `part "cam" {
  material = "brass"
  length = 40
  stock "bar" {
    diameter = 30
  }
  axis "off" {
    offset = "2.5 ±0.1"
  }
  spigot "body" {
    diameter = 28
  }
  spigot "pin" {
    axis = "off"
    diameter = 10
    length = 10
    from = "left"
  }
  chamfer "edge" {
    edge = "body.right"
    size = 1
  }
}`,
}

func eccentricJob(t *testing.T, text string) *partspec.Job {
	t.Helper()
	job, _, found := partspec.Parse([]partspec.Source{{Name: "part.hcl", Text: []byte(text)}})
	require.False(t, found.HasErrors(), "%v", found)
	return job
}

// Eccentrics are planned after all that lies about the main axis, in the four-jaw, and proved; the clock swings by twice the throw.
func TestEccentrics(t *testing.T) {
	for name, text := range eccentricParts {
		t.Run(name, func(t *testing.T) {
			job := eccentricJob(t, text)
			p, failures := planner.Proved(job, planner.Options{})
			require.Empty(t, failures)
			part := p.Parts[0]
			require.Empty(t, part.Refusals)
			require.NotNil(t, part.Proof)
			axis, over := job.Parts[0].Axes[0], 0
			for i, s := range part.Setups {
				assert.Equal(t, i+1, s.Number)
				if s.Axis == "" {
					assert.Zero(t, over, "the main axis comes first")
					continue
				}
				over++
				assert.Equal(t, "four_jaw", s.HoldingKind)
				assert.InDelta(t, 2*float64(axis.Offset.Value), (s.SwingLowMM+s.SwingHighMM)/2, 1e-6)
				assert.GreaterOrEqual(t, s.SwingLowMM, 2*float64(axis.Offset.Low))
				assert.LessOrEqual(t, s.SwingHighMM, 2*float64(axis.Offset.High))
			}
			assert.Positive(t, over)
		})
	}
}

// A plan whose setting over is wrong is refused.
func TestWrongSettingOverIsRefused(t *testing.T) {
	job := eccentricJob(t, eccentricParts["pen lift"])
	good, failures := planner.Proved(job, planner.Options{})
	require.Empty(t, failures)
	last := func(p *plan.Plan) *plan.Setup { return &p.Parts[0].Setups[len(p.Parts[0].Setups)-1] }
	for name, spoil := range map[string]func(p *plan.Plan){
		"half the swing":       func(p *plan.Plan) { last(p).SwingLowMM, last(p).SwingHighMM = 2.95, 3.05 },
		"a swing too wide":     func(p *plan.Plan) { last(p).SwingHighMM += 0.05 },
		"no swing":             func(p *plan.Plan) { last(p).SwingLowMM, last(p).SwingHighMM = 0, 0 },
		"the wrong side":       func(p *plan.Plan) { last(p).CentreX *= -1 },
		"another direction":    func(p *plan.Plan) { last(p).CentreY = 3 },
		"another axis":         func(p *plan.Plan) { last(p).Axis = "other" },
		"not set over":         func(p *plan.Plan) { s := last(p); s.Axis, s.ThrowMM, s.SwingLowMM, s.SwingHighMM = "", 0, 0, 0 },
		"never set over":       func(p *plan.Plan) { s := &p.Parts[0].Setups; *s = (*s)[:len(*s)-1] },
		"a three-jaw":          func(p *plan.Plan) { last(p).Holding, last(p).HoldingKind = "three_jaw", "three_jaw" },
		"another surface":      func(p *plan.Plan) { last(p).Grip.Surface = "boss" },
		"a smaller grip":       func(p *plan.Plan) { last(p).Grip.RadiusMM -= 1 },
		"too light a grip":     func(p *plan.Plan) { last(p).Grip.WorkingN, last(p).Grip.LeastN = 300, 300 },
		"too fast":             func(p *plan.Plan) { last(p).Operations[1].RPM = 5000 },
		"the pin is left":      func(p *plan.Plan) { o := &last(p).Operations; *o = (*o)[:1] },
		"the grip is cut into": func(p *plan.Plan) { last(p).Grip.ToZ += 8 },
		"set over twice": func(p *plan.Plan) {
			s := *last(p)
			s.Number, s.Operations = s.Number+1, s.Operations[2:]
			last(p).Operations = last(p).Operations[:2]
			p.Parts[0].Setups = append(p.Parts[0].Setups, s)
		},
		"over before the rest": func(p *plan.Plan) { s := p.Parts[0].Setups; s[0], s[len(s)-1] = s[len(s)-1], s[0] },
		"cut too deep": func(p *plan.Plan) {
			for i := range last(p).Operations {
				for k := range last(p).Operations[i].Cuts {
					c := &last(p).Operations[i].Cuts[k]
					for n := range c.To {
						c.To[n].Graduations += 20
					}
				}
			}
		},
	} {
		t.Run(name, func(t *testing.T) {
			text, err := json.Marshal(good)
			require.NoError(t, err)
			var p plan.Plan
			require.NoError(t, json.Unmarshal(text, &p))
			spoil(&p)
			_, failures := replay.Prove(job, &p)
			assert.NotEmpty(t, failures)
		})
	}
}

// What cannot be set over is refused with the figures: no clock, a throw wider than half a jaw, limits that no clock keeps.
func TestEccentricsRefused(t *testing.T) {
	for want, text := range map[string]string{
		"over half the width of a jaw": strings.Replace(strings.Replace(eccentricParts["bush"], `"2 ±0.1"`, "7", 1), "12 H8", "6 H8", 1),
		"does not keep them":           strings.Replace(eccentricParts["bush"], "±0.1", "±0.005", 1),
	} {
		p, failures := planner.Proved(eccentricJob(t, text), planner.Options{})
		require.Empty(t, failures)
		assert.Empty(t, p.Parts[0].Setups)
		assert.Contains(t, fmt.Sprint(p.Parts[0].Refusals), want)
	}
}

// The work as it is seen from an offset axis holds every point of the work: what lies at a radius of the main axis is nowhere farther than that and the throw.
func TestSeenFromHoldsTheWork(t *testing.T) {
	for name, text := range eccentricParts {
		part := eccentricJob(t, text).Parts[0]
		seen := part.SeenFrom(part.Axes[0])
		e := float64(part.Axes[0].Offset.Value)
		for _, f := range part.Features {
			s, ok := f.(*partspec.Spigot)
			if !ok {
				continue
			}
			var swept *partspec.Spigot
			for _, g := range seen.Stock.Features {
				if g.Head().Name == s.Name {
					swept = g.(*partspec.Spigot)
				}
			}
			require.NotNil(t, swept, name)
			most := 0.0
			for deg := 0.0; deg < 360; deg++ {
				a, r := deg*math.Pi/180, float64(s.Diameter.Value)/2
				most = math.Max(most, math.Hypot(r*math.Cos(a)-e, r*math.Sin(a)))
			}
			assert.InDelta(t, most, float64(swept.Diameter.Value)/2, 1e-9, "%s %s", name, s.Name)
		}
	}
}

// randomEccentric is the text of a part with eccentrics, drawn by lot; empty where nothing has room.
func randomEccentric(r *rand.Rand) string {
	host, length, e := 14+r.IntN(34), 12+r.IntN(50), 1+0.5*float64(r.IntN(10))
	room := float64(host)/2 - e
	if room < 3.5 {
		return ""
	}
	text := fmt.Sprintf("part \"p\" {\n material = %q\n length = %d\n stock \"bar\" {\n diameter = %d\n }\n axis \"a\" {\n offset = \"%g ±0.1\"\n }\n",
		[]string{"brass", "mild steel", "bronze", "aluminium"}[r.IntN(4)], length, host+2+r.IntN(3), e)
	if r.IntN(3) == 0 {
		text += fmt.Sprintf(" spigot \"tail\" {\n diameter = %d\n length = %d\n }\n", host*7/10, length/3)
	}
	text += fmt.Sprintf(" flange \"disc\" {\n diameter = \"%d%s\"\n }\n", host, []string{"", " h8", " h6"}[r.IntN(3)])
	kind, boss := r.IntN(4), 0.0
	if kind != 0 {
		boss = math.Floor(2*(room-0.7)*(1+r.Float64())) / 2
		text += fmt.Sprintf(" spigot \"pin\" {\n axis = \"a\"\n diameter = \"%g%s\"\n length = %d\n from = %q\n }\n", boss, []string{"", " h8"}[r.IntN(2)], 3+r.IntN(length/3), []string{"left", "right"}[r.IntN(2)])
	}
	most := room - 1.5
	if boss > 0 {
		most = boss/2 - 1.5
	}
	if d := int(2 * most * (0.4 + 0.6*r.Float64())); kind != 1 && d >= 3 {
		text += fmt.Sprintf(" bore \"hole\" {\n axis = \"a\"\n diameter = \"%d%s\"\n }\n", d, []string{"", " H8", " H7"}[r.IntN(3)])
	}
	if r.IntN(3) == 0 {
		text += " chamfer \"c\" {\n edge = \"disc.right\"\n size = 0.5\n }\n"
	}
	return text + "}\n"
}

// Parts drawn by lot are planned and proved, or refused; the replay refutes none.
func TestRandomEccentrics(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	planned := 0
	for range 200 {
		text := randomEccentric(r)
		job, _, found := partspec.Parse([]partspec.Source{{Name: "part.hcl", Text: []byte(text)}})
		if text == "" || found.HasErrors() {
			continue
		}
		p, failures := planner.Proved(job, planner.Options{})
		require.Empty(t, failures, text)
		if len(p.Parts[0].Refusals) == 0 {
			planned++
		}
	}
	assert.Greater(t, planned, 30)
}
