package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// mostToFile is the most metal that steps may leave for the file, normal to the surface, where the operation does not say that it takes less
// (rule C-18: 0.05 to 0.1 usual).
const mostToFile = 0.1

// filed is a curve that is filed, as drawn, and the same moved outward by what may stand on it.
type filed struct {
	name          string
	drawn, raised solid.Curve
	edge          float64 // how close to its ends it is not judged
}

// file takes the crests that steps have left on a profile or a rounded edge, and no more: there must be metal on the drawn curve everywhere, and nowhere more than
// the operation takes off. What is left then lies on the drawn curve.
func (w *walk) file(op plan.Operation) {
	most := mostToFile
	if op.DepthMM > 0 {
		most = math.Min(most, op.DepthMM)
	}
	f, ok := w.toFile(op, most)
	if !ok {
		w.failOp("file", "%q is no profile or rounded edge of the part", op.Feature)
		return
	}
	z0, z1, ok := f.drawn.Domain()
	if !ok {
		return
	}
	w.checkMarkedWithin(f.name, z0, z1, false, 0)
	z0, z1 = z0+f.edge, z1-f.edge
	now := solid.NewBody(w.body.Outer.Clip(z0, z1), solid.Const(z0, z1, 0))
	curve := solid.NewBody(f.drawn.Clip(z0, z1), solid.Const(z0, z1, 0))
	if ok, at := solid.Within(curve, now, same); !ok {
		w.fail(w.place(w.maker(at.Z, at.R-at.By/2)), "least metal", "no metal is left to file: it cuts %s mm below the curve of %s at %s", mm(at.By), f.name, mm(at.Z))
	}
	raised := solid.NewBody(f.raised.Clip(z0, z1), solid.Const(z0, z1, 0))
	if ok, at := solid.Within(now, raised, same); !ok {
		w.failOp("file", "at %s the steps leave more than the %s mm that the file is to take off %s, by %s in radius", mm(at.Z), mm(most), f.name, mm(at.By))
		return
	}
	w.body = w.body.TurnTo(f.drawn)
	w.filed[f.name] = true
}

// toFile is the curve that an operation files.
func (w *walk) toFile(op plan.Operation, most float64) (filed, bool) {
	switch f := w.part.Feature(op.Feature).(type) {
	case *partspec.Profile:
		return filed{f.Name, profileCurve(f, middle), profileRaised(f, most), math.Abs(w.slackPlace) + stepEdge}, true
	case *partspec.Fillet:
		if f.Edge.Convex && !f.Edge.Inside {
			return w.roundToFile(f, most), true
		}
	}
	return filed{}, false
}

// roundToFile is a rounded edge, from the face that is really there to the surface that is really there, but never above the middle of its limits. Where that
// surface is measured, as much more may stand on the round.
func (w *walk) roundToFile(f *partspec.Fillet, most float64) filed {
	dir, rho := towards(f.Edge.Axial), float64(f.Radius.Mid())
	z := w.drawing(lengthsOf(w.part)).outer.at(float64(f.Edge.Z)).at
	r := float64(f.Edge.R)
	if s, ok := w.part.Feature(f.Edge.Feature).(*partspec.Spigot); ok && !s.AsSupplied {
		r = float64(s.Diameter.Mid()) / 2
	}
	if now := beside(w.body.Outer, z+dir*rho, dir); now < r {
		r = now
	}
	in := z + dir*rho
	raised := rho + most + w.slackRadius
	return filed{f.Name, solid.Arc(z, r-rho, in, r, in, r-rho, true), solid.Arc(in-dir*raised, r-rho, in, r-rho+raised, in, r-rho, true), 0}
}

// stepEdge is how close to the ends of a profile the file is not judged: shoulders there lie where a graduation lets them, and corners are the file's own.
const stepEdge = 0.25

// profileRaised is the drawn curve moved outward, normal to itself.
func profileRaised(f *partspec.Profile, by float64) solid.Curve {
	g := *f
	g.Zone.High = f.Zone.Value + lengthOf(by)
	return profileCurve(&g, most)
}
