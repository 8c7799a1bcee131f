package planner

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

func comparedPart(t testing.TB, name string) (*partspec.Job, *partspec.Part) {
	t.Helper()
	job, _, found := partspec.Load([]string{"../examples/tide-gauge"})
	require.False(t, found.HasErrors(), "%v", found)
	part := job.Part(name)
	require.NotNil(t, part)
	return job, part
}

// The ring that is shown is the ring that was judged: same lobed error, same stress.
func TestComparedRingIsTheJudgedRing(t *testing.T) {
	job, _ := comparedPart(t, "bezel")
	squeezed := 0
	for _, part := range job.Parts {
		best, _ := bestAttempt(job, part, Options{})
		if part.Bought || best == nil {
			continue
		}
		c := comparer{attempt: best, planned: true}
		tasks, err := c.tasks("")
		require.NoError(t, err)
		for _, i := range tasks {
			for _, m := range c.shop.Mounts() {
				f, ok := c.best(i, m)
				if !ok {
					continue
				}
				c.ring(&f)
				if f.LimitMM == 0 {
					continue
				}
				squeezed++
				assert.InEpsilon(t, f.figures.LobeMM, f.ErrorMM, 1e-6, "%s, %s", c.shop.Tasks[i].ID, m.ID)
				assert.InEpsilon(t, f.figures.StressMPa, f.StressMPa, 1e-6, "%s, %s", c.shop.Tasks[i].ID, m.ID)
			}
		}
	}
	assert.Greater(t, squeezed, 50)
}

// Those that pass stand first, the quickest at the top; the plan's own is among them once; a refusal names its rule or says that there is nothing to hold.
func TestComparedOptionsAreSorted(t *testing.T) {
	job, _ := comparedPart(t, "bezel")
	for _, part := range job.Parts {
		if part.Bought {
			continue
		}
		list, err := Compare(job, part, "", plan.WhatIf{}, Options{})
		require.NoError(t, err, part.Name)
		for _, s := range list {
			where := part.Name + " " + s.Operation
			refused, minutes, chosen := false, 0.0, 0
			for _, o := range s.Options {
				if o.Passes {
					assert.False(t, refused, "%s: %s passes below one that is refused", where, o.Title)
					assert.GreaterOrEqual(t, o.Minutes, minutes, where)
					minutes = o.Minutes
				} else {
					refused = true
					assert.Contains(t, o.Verdict, "refused: ")
					assert.Equal(t, o.Surface == "", o.Rule == "", "%s: %s", where, o.Verdict)
				}
				if o.Chosen {
					chosen++
					assert.True(t, o.Passes, "%s: the plan's own holding is refused: %s", where, o.Verdict)
					assert.Equal(t, plan.MomentPlan, o.Moment)
				}
			}
			assert.Equal(t, s.Planned, chosen == 1, "%s: %d holdings are the plan's own", where, chosen)
		}
	}
}

// The wall decides which holding is best for the bore of the bezel: a three-jaw while it is thick, a four-jaw as it thins, then nothing that squeezes.
func TestComparedByWall(t *testing.T) {
	job, part := comparedPart(t, "bezel")
	var table strings.Builder
	last := 1e9
	for _, wall := range []float64{2, 3, 3.5, 4, 5, 6, 7.5, 10} {
		list, err := Compare(job, part, "sight", plan.WhatIf{WallMM: wall}, Options{})
		require.NoError(t, err)
		top := list[0].Options[0]
		var three plan.Option
		for _, o := range list[0].Options {
			if o.Kind == string(partspec.ThreeJaw) && o.Surface == "stock" {
				three = o
			}
		}
		per := three.ErrorMM / three.WorkingN
		assert.Less(t, per, last, "wall %g: a thicker wall gives less to a newton", wall)
		last = per
		fmt.Fprintf(&table, "wall %g: %s, %s; three-jaw borne %.0f N\n", wall, top.Title, top.Verdict, three.MostN)
	}
	t.Log("\n" + table.String())
	assert.Equal(t, wallTable, table.String())
}

const wallTable = `wall 2: Glued arbor on face.right, left end outward, passes with passes of 0.5 of the ordinary depth; three-jaw borne 18 N
wall 3: Four-jaw chuck, clocked on the bar, right end outward, passes with passes of 0.25 of the ordinary depth; three-jaw borne 61 N
wall 3.5: Four-jaw chuck, clocked on the bar, right end outward, passes with passes of 0.5 of the ordinary depth; three-jaw borne 98 N
wall 4: Four-jaw chuck, clocked on the bar, right end outward, passes; three-jaw borne 148 N
wall 5: Three-jaw chuck on the bar, right end outward, passes with passes of 0.5 of the ordinary depth; three-jaw borne 295 N
wall 6: Three-jaw chuck on the bar, right end outward, passes; three-jaw borne 520 N
wall 7.5: Three-jaw chuck on the bar, right end outward, passes; three-jaw borne 1042 N
wall 10: Three-jaw chuck on the bar, right end outward, passes; three-jaw borne 2564 N
`

// What if the jaws press harder: the error grows with the force, and what does not hold is refused by B-42.
func TestComparedByForce(t *testing.T) {
	job, part := comparedPart(t, "bezel")
	last := 0.0
	for _, force := range []float64{20, 300, 900, 3000} {
		list, err := Compare(job, part, "sight", plan.WhatIf{ForceN: force}, Options{})
		require.NoError(t, err)
		for _, o := range list[0].Options {
			if o.Kind != string(partspec.ThreeJaw) || o.Surface != "stock" {
				continue
			}
			assert.Equal(t, force, o.WorkingN)
			assert.Greater(t, o.ErrorMM, last)
			last = o.ErrorMM
			assert.Equal(t, force >= o.LeastN && force <= o.MostN, o.Passes, "%g N in %g to %g: %s", force, o.LeastN, o.MostN, o.Verdict)
			assert.Equal(t, force > o.MostN, strings.Contains(o.Verdict, "[B-23]"), o.Verdict)
		}
	}
}

func TestComparedFeatureMustBeThere(t *testing.T) {
	job, part := comparedPart(t, "bezel")
	_, err := Compare(job, part, "sght", plan.WhatIf{}, Options{})
	var e *NoSurfaceError
	require.ErrorAs(t, err, &e)
	assert.Contains(t, e.Names, "sight")
}

// All holdings for all surfaces of a ring, once its order is known.
func BenchmarkCompareRing(b *testing.B) {
	job, part := comparedPart(b, "bezel")
	best, _ := bestAttempt(job, part, Options{})
	require.NotNil(b, best)
	for b.Loop() {
		if _, err := (comparer{attempt: best, planned: true}).surfaces(""); err != nil {
			b.Fatal(err)
		}
	}
}

// The same with the planning that finds the moments.
func BenchmarkCompareRingWithPlan(b *testing.B) {
	job, part := comparedPart(b, "bezel")
	for b.Loop() {
		if _, err := Compare(job, part, "", plan.WhatIf{}, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
