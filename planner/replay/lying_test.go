package replay

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// lie begins a setup in the mill's vice, on the body, the left end free, with that direction up.
func (b *bench) lie(deg float64) {
	b.hold("left", 9.6, 20, 10, 9.6, 3500, "body", "copper strip")
	b.setup.Machine, b.setup.MachineKind, b.setup.Holding, b.setup.HoldingKind = "bench mill", "mill", "mill vice", "vice"
	b.setup.Across, b.setup.AcrossDeg, b.setup.LocateMM = true, deg, 0.015
	b.setup.Grip.Kind, b.setup.Grip.Jaws, b.setup.Grip.JawWidthMM = "vice", 2, 0
	b.setup.Bed = &plan.Bed{Kind: "jaws", GapMM: 10}
}

// crossed is the bush with a hole across its body into the bore, two flats on its rim and a slot in it.
func crossed(t *testing.T) *bench {
	t.Helper()
	b := bush(t)
	b.withMill()
	head := func(word, name string) partspec.FeatureHead { return partspec.FeatureHead{Word: word, Name: name} }
	b.add(
		&partspec.CrossHole{FeatureHead: head("cross_hole", "oil"), Make: partspec.PlainHole, Z: sized(6.2, 0.2), Angle: 0, Diameter: sized(2.5, 0.1), Into: "main", On: "body"},
		&partspec.Flat{FeatureHead: head("flat", "spanner"), On: "rim", Distance: sized(12, 0.1), Angle: 0, Count: 2, Span: partspec.Span{Left: 0, Right: 4}},
		&partspec.Slot{FeatureHead: head("slot", "key"), On: "rim", Width: sized(3, 0.1), Depth: sized(2, 0.1), Angle: 90, Span: partspec.Span{Left: 0, Right: 4}},
	)
	for _, deg := range []float64{0, 180} {
		b.lie(deg)
		id := map[float64]string{0: "flat.spanner/mill", 180: "flat.spanner/mill 2"}[deg]
		b.mill(id, "spanner", plan.MillFlat, "end_mill/cutters", 10, 400, 0.05, 2, 0, 0, 14)
		b.move("flat", place{2, -20, 12}, place{2, 20, 12})
		if deg == 180 {
			break
		}
		b.mill("cross_hole.oil/drill", "oil", plan.Drill, smallDrills, 2.5, 1600, 0.05, 0, 0, 0, 10)
		b.down(1, "spot", spotDrill, 2.5, 6.2, 0, 10, 8.5)
		b.down(1, "drill", smallDrills, 2.5, 6.2, 0, 10, 3.5)
	}
	b.lie(90)
	b.mill("slot.key/mill", "key", plan.MillSlot, "end_mill/cutters", 3, 1600, 0.02, 1, 0, 0, 14)
	b.move("slot 1", place{-2, 0, 13}, place{5.5, 0, 13})
	b.move("slot 2", place{-2, 0, 12}, place{5.5, 0, 12})
	return b
}

func TestWorkCutAcrossIsProved(t *testing.T) {
	assert.Equal(t, 20, proves(t, crossed(t)).Cuts)
}

const (
	oilID   = "cross_hole.oil/drill"
	flatID  = "flat.spanner/mill"
	otherID = "flat.spanner/mill 2"
	keyID   = "slot.key/mill"
)

// cutTo moves the end of a cut along the spindle, and the start with it where it only moves over the table, with the card.
func cutTo(id string, cut int, by int64) func(*testing.T, *plan.Plan) {
	return shiftCut(id, cut, dialQuill, by)
}

func TestCorruptCutsAcrossAreRefused(t *testing.T) {
	good := crossed(t)
	feature := func(name string, f func(*partspec.Part)) *bench {
		b := crossed(t)
		part := *b.job.Parts[0]
		part.Features = slices.Clone(part.Features)
		f(&part)
		b.job.Parts = []*partspec.Part{&part}
		return b
	}
	for _, c := range []corruption{
		{"no cross hole", drop(oilID), "finished part"},
		{"one flat of two", drop(otherID), "finished part"},
		{"no slot", drop(keyID), "finished part"},
		{"cross hole beside its place", all(shiftHole(oilID, 1, dialX, 15)), "place"},
		{"cross hole into the rim", shiftHole(oilID, 1, dialX, -60), "place"},
		{"cross hole beside the axis", shiftHole(oilID, 1, dialY, 15), "place"},
		{"cross hole not into the bore", deeper(oilID, 1, 2, -40), "most metal"},
		{"cross hole into the far wall", deeper(oilID, 1, 2, 180), "least metal"},
		{"cross hole not spotted", change(oilID, func(o *plan.Operation) { o.Cuts = o.Cuts[1:]; o.Passes = 1 }), "start"},
		{"cross hole from the other side", func(t *testing.T, p *plan.Plan) {
			o := *op(t, p, oilID)
			drop(oilID)(t, p)
			p.Parts[0].Setups[3].Operations = append(p.Parts[0].Setups[3].Operations, o)
			renumber(p)
		}, "pose"},
		{"a flat too deep", cutTo(flatID, 0, 4), "least metal"},
		{"a flat too shallow", cutTo(flatID, 0, -4), "most metal"},
		{"a flat beyond its feature", shiftCut(flatID, 0, dialX, 300), "clearance"},
		{"a flat not across", change(flatID, func(o *plan.Operation) { moveReadings(o.Cuts[0].To, dialY, -1200) }), ""},
		{"a flat at another angle", held(4, func(s *plan.Setup) { s.AcrossDeg = 175 }), "pose"},
		{"a flat twice at one angle", held(4, func(s *plan.Setup) { s.AcrossDeg = 0 }), "finished part"},
		{"a flat deeper at once than it says", change(flatID, func(o *plan.Operation) { o.DepthMM = 1 }), "depth of cut"},
		{"a slot too deep", cutTo(keyID, 1, 4), "least metal"},
		{"a slot too shallow", change(keyID, func(o *plan.Operation) { o.Cuts, o.Passes, o.Card = o.Cuts[:1], 1, o.Card[:3] }), "most metal"},
		{"a slot beside the axis", all(shiftCut(keyID, 0, dialY, 15), shiftCut(keyID, 1, dialY, 15)), "place"},
		{"a slot half as long", change(keyID, func(o *plan.Operation) {
			for i := range o.Cuts {
				moveReadings(o.Cuts[i].To, dialX, -200)
			}
		}), "most metal"},
		{"a slot by a wider cutter", change(keyID, func(o *plan.Operation) { o.Tool.SizeMM = 6 }), "size"},
		{"a slot at another angle", held(5, func(s *plan.Setup) { s.AcrossDeg = 91 }), "pose"},
		{"a slot with no metal to begin in", change(keyID, func(o *plan.Operation) { o.Tool.ID = "drills/small" }), "tool"},
		{"a setting claimed too well", held(5, func(s *plan.Setup) { s.LocateMM = 0.005 }), "located"},
		{"the vice as if it pressed not at all", held(5, func(s *plan.Setup) { s.Grip.WorkingN, s.Grip.LeastN = 20, 20 }), "grip force"},
		{"nothing to stand in the vice on", held(5, func(s *plan.Setup) { s.Grip.RadiusMM = 12 }), "grip"},
		{"gripped where it is cut", held(3, func(s *plan.Setup) { s.Grip.FromZ, s.StickOutMM = 6, 6 }), "clearance"},
		{"a chuck that lies across", held(5, func(s *plan.Setup) { s.Grip.Kind = "magnet" }), "grip"},
	} {
		t.Run(c.name, func(t *testing.T) { refuse(t, good, c) })
	}
	for name, b := range map[string]*bench{
		"a kind of feature that nobody proves": feature("a bore beside the axis", func(p *partspec.Part) {
			p.Features = append(p.Features, &partspec.Bore{FeatureHead: partspec.FeatureHead{Word: "bore", Name: "side"}, At: &partspec.Point{X: sized(5, 0.1), Y: sized(5, 0.1)}, Diameter: sized(2, 0.1), Through: true})
		}),
		"a relation that nobody proves": feature("", func(p *partspec.Part) {
			p.Relations = append(p.Relations, partspec.Relation{Kind: partspec.Parallel, Of: partspec.Surface{Feature: "spanner"}, To: partspec.Surface{Feature: "main"}, Within: 0.1})
		}),
	} {
		_, failures := Prove(b.job, b.plan())
		assert.NotEmpty(t, failures, name)
	}
}
