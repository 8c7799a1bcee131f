package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// mostToFile is the most metal that steps may leave for the file, normal to the surface, when the operation does not say how much it takes
// (rule C-18: 0.05 to 0.1 usual).
const mostToFile = 0.1

// file takes the crests that steps have left on a profile, and no more: there must be metal on the drawn curve everywhere, and nowhere more than
// the operation takes off. What is left then lies on the drawn curve.
func (w *walk) file(op plan.Operation) {
	f, ok := w.part.Feature(op.Feature).(*partspec.Profile)
	if !ok {
		w.failOp("file", "%q is no profile of the part", op.Feature)
		return
	}
	most := mostToFile
	if op.DepthMM > 0 {
		most = op.DepthMM
	}
	drawn := profileCurve(f, middle)
	z0, z1, ok := drawn.Domain()
	if !ok {
		return
	}
	z0, z1 = z0+math.Abs(w.slackPlace)+stepEdge, z1-math.Abs(w.slackPlace)-stepEdge
	now := solid.NewBody(w.body.Outer.Clip(z0, z1), solid.Const(z0, z1, 0))
	curve := solid.NewBody(drawn.Clip(z0, z1), solid.Const(z0, z1, 0))
	if ok, at := solid.Within(curve, now, same); !ok {
		w.fail(w.place(w.maker(at.Z, at.R-at.By/2)), "least metal", "no metal is left to file: it cuts %s mm below the profile %s at %s", mm(at.By), f.Name, mm(at.Z))
	}
	raised := solid.NewBody(profileRaised(f, most).Clip(z0, z1), solid.Const(z0, z1, 0))
	if ok, at := solid.Within(now, raised, same); !ok {
		w.failOp("file", "at %s the steps leave more than the %s mm that the file is to take off %s, by %s in radius", mm(at.Z), mm(most), f.Name, mm(at.By))
		return
	}
	w.body = w.body.TurnTo(drawn)
	w.filed[f.Name] = true
}

// stepEdge is how close to the ends of a profile the file is not judged: shoulders there lie where a graduation lets them, and corners are the file's own.
const stepEdge = 0.25

// profileRaised is the drawn curve moved outward, normal to itself.
func profileRaised(f *partspec.Profile, by float64) solid.Curve {
	g := *f
	g.Zone.High = f.Zone.Value + lengthOf(by)
	return profileCurve(&g, most)
}
