package planner_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/replay"
)

// matchFile is a cover whose holes the ring of a housing is spotted through from.
var matchFile = filepath.Join("testdata", "rules", "cover-on-ring.hcl")

// operation finds an operation of a part; its setup too.
func operationOf(t *testing.T, part *plan.Part, id string) (*plan.Setup, *plan.Operation) {
	t.Helper()
	for i := range part.Setups {
		for k := range part.Setups[i].Operations {
			if o := &part.Setups[i].Operations[k]; o.ID == id {
				return &part.Setups[i], o
			}
		}
	}
	require.Fail(t, "no operation "+id)
	return nil, nil
}

// Holes are spotted through from the mate by a drill that just passes its holes, with the register finished, and drilled by those spots.
func TestSpottedThroughFromTheMate(t *testing.T) {
	p := answered(t, inShop(t, matchFile))
	require.Len(t, p.Parts, 2)
	ring := &p.Parts[1]
	require.Empty(t, ring.Refusals)
	_, spot := operationOf(t, ring, "holes.screws/mark")
	_, drill := operationOf(t, ring, "holes.screws/drill")
	_, register := operationOf(t, ring, "spigot.lip/turn")
	assert.InDelta(t, 4.5, spot.Tool.SizeMM, 1e-9, "the drill of an M4 clearance hole")
	assert.Less(t, register.Number, spot.Number)
	assert.Less(t, spot.Number, drill.Number)
	assert.Equal(t, []plan.Mate{{Part: "gauge_cover", Feature: "screws", For: "screws", Rule: "A-33"}}, ring.Mates)
	for _, c := range append(append([]plan.Cut(nil), spot.Cuts...), drill.Cuts...) {
		require.NotNil(t, c.At, c.Name)
		assert.Equal(t, "mate", c.At.By, c.Name)
	}
	assert.Contains(t, strings.Join(spot.Notes, " "), "registered by lip")
}

// The part whose holes are spotted through is planned first, wherever it stands in the files.
func TestMateIsPlannedFirst(t *testing.T) {
	job := inShop(t, matchFile)
	job.Parts[0], job.Parts[1] = job.Parts[1], job.Parts[0]
	job.Fits = nil // that rule A-10 does not decide
	p := answered(t, job)
	assert.Equal(t, "gauge_cover", p.Parts[0].Name)
}

// A drill far smaller than the mate's holes leans in them by more than the screw has room: no plan, and the drill to buy is named.
func TestSpottingDrillTooSmall(t *testing.T) {
	job := withShop(inShop(t, matchFile), func(s *partspec.Workshop) {
		s.Tools = slices.Clone(s.Tools)
		for i := range s.Tools {
			if s.Tools[i].Kind == partspec.Drills {
				s.Tools[i].Sizes = slices.DeleteFunc(slices.Clone(s.Tools[i].Sizes), func(d units.Length) bool { return d > 3.8 && d <= 4.5 })
			}
		}
	})
	ring := answered(t, job).Parts[1]
	require.NotEmpty(t, ring.Refusals)
	assert.Contains(t, fmt.Sprint(ring.Refusals), "buy a drill nearer to Ø4.50")
}

// Every way in which a plan could leave the mate's holes is caught, on turned work and on flat work.
func TestMatchCorruptions(t *testing.T) {
	for _, file := range []string{"cover-on-ring", "plate-on-flange", "plate-on-plate"} {
		t.Run(file, func(t *testing.T) { corruptMatch(t, inShop(t, filepath.Join("testdata", "rules", file+".hcl"))) })
	}
}

func corruptMatch(t *testing.T, job *partspec.Job) {
	good := answered(t, job)
	require.Empty(t, good.Parts[1].Refusals)
	text, err := json.Marshal(good)
	require.NoError(t, err)
	const spot, drill = "holes.screws/mark", "holes.screws/drill"
	for _, c := range []struct {
		name, op string
		spoil    func(*plan.Setup, *plan.Operation)
		clause   string
	}{
		{"two spots are exchanged for one", spot, func(_ *plan.Setup, o *plan.Operation) { *o.Cuts[1].At = *o.Cuts[0].At }, "match"},
		{"a drill that does not pass the mate", spot, func(_ *plan.Setup, o *plan.Operation) { o.Tool.SizeMM = 5 }, "match"},
		{"a drill that leans too far", spot, func(_ *plan.Setup, o *plan.Operation) { o.Tool.SizeMM = 4 }, "match"},
		{"by no drill", spot, func(_ *plan.Setup, o *plan.Operation) { o.Tool.ID = "files" }, "match"},
		{"one hole is left out", spot, func(_ *plan.Setup, o *plan.Operation) { o.Cuts, o.Holes = o.Cuts[1:], o.Holes[1:] }, "match"},
		{"on the other face", spot, func(s *plan.Setup, _ *plan.Operation) { s.FreeEnd = "left" }, "match"},
		{"never spotted", spot, func(_ *plan.Setup, o *plan.Operation) { o.Process, o.Cuts, o.Holes = plan.Deburr, nil, nil }, "match"},
		{"a spot beside its place", spot, func(_ *plan.Setup, o *plan.Operation) { o.Cuts[2].At.XMM += 0.1 }, "match"},
		{"drilled by a punch mark", drill, func(_ *plan.Setup, o *plan.Operation) { o.Cuts[0].At.By = "punch mark" }, "match"},
		{"drilled beside the spot", drill, func(_ *plan.Setup, o *plan.Operation) { o.Cuts[0].At.YMM += 0.1 }, "match"},
		{"said truer than it is", drill, func(_ *plan.Setup, o *plan.Operation) { o.Cuts[0].At.WithinMM = 0.05 }, "located"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var p plan.Plan
			require.NoError(t, json.Unmarshal(text, &p))
			s, o := operationOf(t, &p.Parts[1], c.op)
			c.spoil(s, o)
			_, failures := replay.Prove(job, &p)
			assert.Contains(t, clauses(failures), c.clause)
		})
	}
	for name, spoil := range map[string]func(*plan.Plan){
		"the mate is not named":    func(p *plan.Plan) { p.Parts[1].Mates = nil },
		"another mate is named":    func(p *plan.Plan) { p.Parts[1].Mates[0].Feature = "others" },
		"the mate is planned last": func(p *plan.Plan) { p.Parts[0], p.Parts[1] = p.Parts[1], p.Parts[0] },
	} {
		t.Run(name, func(t *testing.T) {
			var p plan.Plan
			require.NoError(t, json.Unmarshal(text, &p))
			spoil(&p)
			_, failures := replay.Prove(job, &p)
			assert.NotEmpty(t, failures)
		})
	}
	t.Run("before its register is made", func(t *testing.T) {
		var p plan.Plan
		require.NoError(t, json.Unmarshal(text, &p))
		part := &p.Parts[1]
		at := slices.IndexFunc(part.Setups, func(s plan.Setup) bool { return s.Operations[0].ID == spot })
		require.Positive(t, at)
		first := part.Setups[at]
		part.Setups = slices.Insert(slices.Delete(part.Setups, at, at+1), 0, first)
		_, failures := replay.Prove(job, &p)
		assert.True(t, slices.ContainsFunc(failures, func(f replay.Failure) bool { return strings.Contains(f.Reason, "not to size yet") }), "%v", failures)
	})
}

// Two plates are laid flush by edges that are cut before; which edges, and whether one is turned over, is held by the replay, and so is what they shift by.
func TestSpottedWithEdgesFlush(t *testing.T) {
	job := inShop(t, filepath.Join("testdata", "rules", "plate-on-plate.hcl"))
	good := answered(t, job)
	base := &good.Parts[1]
	require.Empty(t, base.Refusals)
	_, spot := operationOf(t, base, "holes.screws/mark")
	for _, edge := range []string{"edge.left/mill", "edge.bottom/mill"} {
		_, o := operationOf(t, base, edge)
		assert.Less(t, o.Number, spot.Number, edge)
	}
	assert.Equal(t, []plan.Mate{{Part: "arm_cover", Feature: "screws", For: "screws", Rule: "A-33", Flush: []plan.FlushEdge{{Edge: "left", On: "left"}, {Edge: "bottom", On: "bottom"}}}}, base.Mates)
	assert.Contains(t, strings.Join(spot.Notes, " "), "its back down: its left edge flush with the left edge")
	text, err := json.Marshal(good)
	require.NoError(t, err)
	for name, spoil := range map[string]func(*plan.Part){
		"another edge":          func(p *plan.Part) { p.Mates[0].Flush[0].Edge = "right" },
		"another edge of it":    func(p *plan.Part) { p.Mates[0].Flush[1].On = "top" },
		"by one edge":           func(p *plan.Part) { p.Mates[0].Flush = p.Mates[0].Flush[:1] },
		"said to be over":       func(p *plan.Part) { p.Mates[0].Over = true },
		"as if it did not turn": func(p *plan.Part) { _, o := operationOf(t, p, "holes.screws/drill"); o.Cuts[0].At.WithinMM -= 0.012 },
	} {
		t.Run(name, func(t *testing.T) {
			var p plan.Plan
			require.NoError(t, json.Unmarshal(text, &p))
			spoil(&p.Parts[1])
			_, failures := replay.Prove(job, &p)
			assert.NotEmpty(t, failures)
		})
	}
}

// Plates that lie mirrored are laid so, and the sheet's words say it.
func TestSpottedWithThePlateTurnedOver(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "rules", "plate-on-plate.hcl"))
	require.NoError(t, err)
	const base = `    width  = 90
    height = 70
`
	require.Contains(t, string(text), base)
	mirrored := strings.Replace(string(text), base, base+"    datum  = [\"right\", \"bottom\"]\n", 1)
	mirrored = strings.Replace(mirrored, "at       = [[8, 8], [72, 8], [72, 48], [8, 48]]", "at       = [[82, 8], [18, 8], [18, 48], [82, 48]]", 1)
	part := answered(t, parsed(t, mirrored)).Parts[1]
	require.Empty(t, part.Refusals)
	_, spot := operationOf(t, &part, "holes.screws/mark")
	assert.True(t, part.Mates[0].Over)
	assert.Contains(t, strings.Join(spot.Notes, " "), "turned over, its front down: its left edge flush with the right edge")
}

func clauses(failures []replay.Failure) []string {
	var names []string
	for _, f := range failures {
		names = append(names, f.Clause)
	}
	return names
}
