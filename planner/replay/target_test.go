package replay

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// drawnPart reads a part and makes the body that its drawing shows at the middle of all limits.
func drawnPart(t *testing.T, features string) (*walk, solid.Body) {
	t.Helper()
	hcl := fmt.Sprintf("part \"p\" {\n material = \"brass-free-cutting\"\n length = 40\n stock \"bar\" { diameter = 40 }\n%s\n}", features)
	job, _, diags := partspec.Parse([]partspec.Source{{Name: "t.hcl", Text: []byte(hcl)}})
	require.False(t, diags.HasErrors(), "%v", diags)
	part := job.Parts[0]
	d := newDrawing(part, part.Features, part.Stock, float64(part.Length.Value))
	ideal := solid.NewBody(d.edges(d.outerOf(middle), middle, false), d.edges(d.innerOf(middle), middle, true))
	return &walk{record: &record{part: "p"}, job: job, part: part, plan: plan.Part{Name: "p"}}, ideal
}

// outcome is what the target says of a body.
func outcome(w walk, b solid.Body) []Failure {
	w.record = &record{part: "p"}
	w.body = b
	w.trace = []moment{{-1, -1, b}}
	w.checkTarget()
	return w.failures
}

// variant is a body made from the ideal one, and the clause that must refuse it; empty for none.
type variant struct {
	name   string
	make   func(solid.Body) solid.Body
	clause string
}

func turn(z0, z1, r float64) func(solid.Body) solid.Body {
	return func(b solid.Body) solid.Body { return b.TurnTo(solid.Const(z0, z1, r)) }
}

func bored(z0, z1, r float64) func(solid.Body) solid.Body {
	return func(b solid.Body) solid.Body { return b.BoreTo(solid.Const(z0, z1, r)) }
}

func fill(z0, z1, r float64) func(solid.Body) solid.Body {
	return func(b solid.Body) solid.Body { return b.Add(solid.Cylinder(z0, z1, r, 0)) }
}

// plug puts metal into a hole.
func plug(z0, z1, inner float64) func(solid.Body) solid.Body {
	return func(b solid.Body) solid.Body {
		hole := solid.Lower(b.Inner, solid.Const(z0, z1, inner))
		return solid.NewBody(b.Outer, hole)
	}
}

func as(b solid.Body) solid.Body { return b }

// Every kind of feature: as drawn it passes; inside its limits it passes; beyond them, either way, it is refused.
func TestDrawnSolids(t *testing.T) {
	for name, k := range map[string]struct {
		features string
		variants []variant
	}{
		"shoulders": {`
			spigot "a" {
			  diameter = "30 +0.1 -0.1"
			  length   = "20 +0.1 -0.1"
			}
			spigot "b" { diameter = "20 +0.1 -0.1" }`, []variant{
			{"as drawn", as, ""},
			{"small, still good", turn(0, 20, 14.951), ""},
			{"too small", turn(0, 20, 14.94), "least metal"},
			{"too large", fill(0, 20, 15.06), "most metal"},
			{"shoulder back, still good", turn(19.95, 20, 10), ""},
			{"shoulder too far back", turn(19.85, 20, 10), "size"},
			{"too long", fill(0, 40.4, 10), "size"},
			{"tool's corner left", func(b solid.Body) solid.Body {
				return b.Add(solid.NewBody(solid.Arc(20, 10.2, 20.2, 10, 20.2, 10.2, false), solid.Const(20, 20.2, 0)))
			}, ""},
			{"corner too round", func(b solid.Body) solid.Body {
				return b.Add(solid.NewBody(solid.Arc(20, 11.5, 21.5, 10, 21.5, 11.5, false), solid.Const(20, 21.5, 0)))
			}, "most metal"},
			{"nicked", turn(5, 6, 14.9), "least metal"},
		}},
		"bores": {`
			spigot "a" { diameter = 30 }
			bore "way" { diameter = "10 H7" }
			bore "seat" {
			  diameter = "16 +0.05 -0"
			  depth    = "8 +0.1 -0.1"
			  from     = "right"
			}`, []variant{
			{"as drawn", as, ""},
			{"seat wide, still good", bored(32, 40, 8.024), ""},
			{"seat too wide", bored(32, 40, 8.03), "least metal"},
			{"seat too narrow", plug(32, 40, 7.99), "most metal"},
			{"seat deep, still good", bored(31.92, 40, 8), ""},
			{"seat too deep", bored(31.85, 40, 8), "size"},
			{"way too wide", bored(0, 32, 5.01), "least metal"},
			{"way blocked", plug(10, 11, 0), "most metal"},
			{"a drill's cone in the seat's floor", func(b solid.Body) solid.Body { return b.BoreTo(solid.Drill(32-16/2*0.6, 16, 118, solid.TowardsPlus)) }, ""},
		}},
		"blind": {`
			spigot "a" { diameter = 30 }
			bore "hole" {
			  diameter = "10 +0.1 -0.1"
			  depth    = "20 +0.2 -0.2"
			  from     = "left"
			}`, []variant{
			{"flat floor", as, ""},
			{"drilled", func(b solid.Body) solid.Body {
				return plug(15, 40, 0)(b).BoreTo(solid.Drill(20+5/1.6643, 10, 118, solid.TowardsMinus))
			}, ""},
			{"drilled too deep", func(b solid.Body) solid.Body { return b.BoreTo(solid.Drill(23.5, 10, 118, solid.TowardsMinus)) }, "size"},
			{"drilled much too deep", func(b solid.Body) solid.Body { return b.BoreTo(solid.Drill(24.5, 10, 118, solid.TowardsMinus)) }, "least metal"},
			{"too shallow", plug(19.5, 21, 0), "size"},
		}},
		"flat floor": {`
			spigot "a" { diameter = 30 }
			bore "hole" {
			  diameter = "10 +0.1 -0.1"
			  depth    = "20 +0.2 -0.2"
			  from     = "left"
			  flat     = true
			}`, []variant{
			{"as drawn", as, ""},
			{"with a drill's point", func(b solid.Body) solid.Body { return b.BoreTo(solid.Drill(23, 10, 118, solid.TowardsMinus)) }, "least metal"},
		}},
		"recess and groove": {`
			spigot "a" { diameter = 30 }
			bore "way" { diameter = 16 }
			recess "in" {
			  on       = "way"
			  diameter = "20 +0.1 -0.1"
			  width    = "4 +0.1 -0.1"
			  at       = 10
			}
			groove "out" {
			  on       = "a"
			  at       = 20
			  width    = "3 +0.1 -0.1"
			  diameter = "26 +0.1 -0.1"
			}
			groove "vee" {
			  on       = "a"
			  at       = 30
			  angle    = 60
			  width    = "4 +0.1 -0.1"
			  diameter = "26 +0.2 -0.2"
			}`, []variant{
			{"as drawn", as, ""},
			{"recess deep, still good", bored(10, 14, 10.04), ""},
			{"recess too deep", bored(10, 14, 10.06), "least metal"},
			{"recess too wide", bored(10, 14.2, 10), "size"},
			{"recess forgotten", plug(9, 15, 8), "most metal"},
			{"groove wide, still good", turn(20, 23.08, 13), ""},
			{"groove too wide", turn(20, 23.2, 13), "size"},
			{"groove too deep", turn(20, 23, 12.9), "least metal"},
			{"groove forgotten", fill(19, 24, 15), "most metal"},
			{"vee too deep", turn(31.9, 32.1, 12.85), "least metal"},
			{"vee forgotten", fill(29, 35, 15), "most metal"},
		}},
		"taper": {`
			spigot "a" {
			  diameter = 30
			  length   = 10
			}
			taper "cone" {
			  large    = "30 +0.1 -0.1"
			  small    = "20 +0.1 -0.1"
			  length   = 20
			  large_at = "left"
			}
			spigot "b" { diameter = "20 +0.1 -0.1" }`, []variant{
			{"as drawn", as, ""},
			{"cone cut short", func(b solid.Body) solid.Body { return b.TurnTo(solid.Line(10, 14.96, 30, 9.96)) }, ""},
			{"cone too thin", func(b solid.Body) solid.Body { return b.TurnTo(solid.Line(10, 14.8, 30, 9.8)) }, "least metal"},
			{"a cylinder left", fill(10, 25, 15), "most metal"},
			{"wrong angle", func(b solid.Body) solid.Body { return b.TurnTo(solid.Line(10, 14.4, 30, 10)) }, "least metal"},
		}},
		"inside taper": {`
			spigot "a" { diameter = 36 }
			taper "socket" {
			  inside = true
			  large  = "20 +0.1 -0.1"
			  small  = "16 +0.1 -0.1"
			  length = 40
			  from   = "right"
			}`, []variant{
			{"as drawn", as, ""},
			{"too wide", func(b solid.Body) solid.Body { return b.BoreTo(solid.Line(0, 8.1, 40, 10.1)) }, "least metal"},
			{"too narrow", func(b solid.Body) solid.Body {
				return solid.NewBody(b.Outer, solid.Lower(b.Inner, solid.Line(0, 7.9, 40, 9.9)))
			}, "most metal"},
		}},
		"profile": {`
			spigot "a" {
			  diameter = 20
			  length   = 10
			}
			profile "ball" {
			  zone = [-0.05, 0.1]
			  start { diameter = 20 }
			  arc {
			    length   = 20
			    diameter = 20
			    radius   = 15
			    bulge    = "out"
			  }
			}
			spigot "b" { diameter = 20 }`, []variant{
			{"as drawn", as, ""},
			{"a little on", func(b solid.Body) solid.Body { return b.Add(ball(15.08)) }, ""},
			{"too much on", func(b solid.Body) solid.Body { return b.Add(ball(15.15)) }, "most metal"},
			{"a little off", func(b solid.Body) solid.Body { return b.TurnTo(ball(14.97).Outer) }, ""},
			{"too much off", func(b solid.Body) solid.Body { return b.TurnTo(ball(14.9).Outer) }, "least metal"},
		}},
		"edges": {`
			spigot "a" {
			  diameter = 30
			  length   = 20
			}
			spigot "b" { diameter = 20 }
			bore "way" { diameter = 8 }
			chamfer "c" {
			  edge = "b.right"
			  size = "1 +0.2 -0.2"
			}
			chamfer "d" {
			  edge = "way.left"
			  size = "1 +0.2 -0.2"
			}
			fillet "f" {
			  edge   = "b.left"
			  radius = "2 +0.2 -0.2"
			}
			fillet "g" {
			  edge   = "a.right"
			  radius = "1 +0.2 -0.2"
			}`, []variant{
			{"as drawn", as, ""},
			{"chamfer too large", func(b solid.Body) solid.Body { return b.TurnTo(solid.Line(38, 10, 40, 8)) }, "least metal"},
			{"chamfer forgotten", fill(38.5, 40, 10), "most metal"},
			{"mouth too large", func(b solid.Body) solid.Body { return b.BoreTo(solid.Line(0, 6, 2, 4)) }, "least metal"},
			{"mouth forgotten", plug(0, 2, 4), "most metal"},
			{"corner cut sharp", turn(20, 40, 10), "least metal"},
			{"edge left sharp", fill(18, 20, 15), "most metal"},
		}},
		"knurl": {`
			spigot "a" { diameter = "20 +0.1 -0.1" }
			knurl "k" {
			  on    = "a"
			  pitch = 1
			}`, []variant{
			{"blank turned under", turn(0, 40, 9.8), ""},
			{"blank too thin", turn(0, 40, 9.6), "least metal"},
		}},
	} {
		w, ideal := drawnPart(t, k.features)
		for _, v := range k.variants {
			t.Run(name+"/"+v.name, func(t *testing.T) {
				failures := outcome(*w, v.make(ideal))
				if v.clause == "" {
					assert.Empty(t, failures)
					return
				}
				require.NotEmpty(t, failures)
				var clauses []string
				for _, f := range failures {
					clauses = append(clauses, f.Clause)
				}
				assert.Contains(t, clauses, v.clause, "%v", failures)
			})
		}
	}
}

// ball is the profile of the test, of another radius about the same centre.
func ball(r float64) solid.Body {
	whole := solid.NewBody(solid.Arc(20-r, -1.1803, 20+r, -1.1803, 20, -1.1803, true), solid.Const(0, 40, 0))
	return whole.Keep(10, 30)
}
