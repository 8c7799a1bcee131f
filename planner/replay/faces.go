package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/solid"
)

// face is a plane or a circle of the drawing square to the axis, and where the finished work has it.
type face struct {
	drawn  float64 // nominal, from the left end
	at     float64
	found  bool    // a step of the work was found there; else at is the drawn place
	lo, hi float64 // where it may be taken to lie: a step made by several cuts is a little spread, and one that is no step is free within its tolerance
}

// length is a drawn distance between two faces.
type length struct {
	feature  string
	what     string
	from, to float64 // drawn places of its faces
	size     partspec.Size
}

// faces holds the faces of one side, outside or inside.
type faces struct {
	list    []face
	lengths []length
}

// at is where the work has the face drawn at z. A place that is no step lies as the drawing has it, free within half the tightest length tolerance there.
func (f faces) at(z float64) face {
	for _, a := range f.list {
		if math.Abs(a.drawn-z) <= same {
			return a
		}
	}
	zone := zoneAt(z, f.lengths)
	return face{drawn: z, at: z, lo: z - zone, hi: z + zone}
}

// with puts a face in place of one that was not found.
func (f faces) with(n face) faces {
	list := []face{n}
	for _, a := range f.list {
		if math.Abs(a.drawn-n.drawn) > same {
			list = append(list, a)
		}
	}
	return faces{list, f.lengths}
}

// lengthsOf lists every drawn length of a part along its axis.
func lengthsOf(p *partspec.Part) []length {
	whole := float64(p.Length.Value)
	list := []length{{"part", "length over all", 0, whole, p.Length}}
	add := func(f partspec.FeatureHead, what string, from, to float64, s partspec.Size) {
		if s.High > 0 && s.High >= s.Low {
			list = append(list, length{f.Name, what, from, to, s})
		}
	}
	for _, f := range p.Features {
		switch f := f.(type) {
		case *partspec.Spigot:
			add(f.FeatureHead, "length", float64(f.Span.Left), float64(f.Span.Right), f.Length)
		case *partspec.Taper:
			add(f.FeatureHead, "length", float64(f.Span.Left), float64(f.Span.Right), f.Length)
		case *partspec.Bore:
			if !f.Through {
				mouth, floor := 0.0, float64(f.Span.Right)
				if f.From == partspec.Right {
					mouth, floor = whole, float64(f.Span.Left)
				}
				add(f.FeatureHead, "depth", mouth, floor, f.Depth)
			}
		case *partspec.Recess:
			add(f.FeatureHead, "width", float64(f.Span.Left), float64(f.Span.Right), f.Width)
		case *partspec.Groove:
			add(f.FeatureHead, "width", float64(f.Span.Left), float64(f.Span.Right), f.Width)
		}
	}
	return list
}

// zoneAt is half the tightest length tolerance that meets at a face.
func zoneAt(z float64, lengths []length) float64 {
	tight := math.Inf(1)
	for _, l := range lengths {
		if math.Abs(l.from-z) <= same || math.Abs(l.to-z) <= same {
			tight = math.Min(tight, float64(l.size.Width()))
		}
	}
	if math.IsInf(tight, 1) {
		return 0
	}
	return tight / 2
}

// stepSearch is how far from its drawn place a step may lie to be told as wrong rather than missing.
const stepSearch = 1.0

// spreadOfStep is how far apart along the axis the parts of one shoulder may lie that several cuts have made.
const spreadOfStep = 0.05

// locate finds the faces of one side of the work. drawn is that side as drawn, with its steps; z0 and z1 are the work's own ends.
func locate(drawn, work solid.Curve, whole, z0, z1 float64, lengths []length) faces {
	list := []face{{0, z0, true, z0, z0}, {whole, z1, true, z1, z1}}
	steps, real := stepsOf(drawn), stepsOf(work)
	for i, s := range steps {
		reach := stepSearch
		for k, other := range steps {
			if gap := math.Abs(other.z-s.z) / 2; k != i && gap < reach {
				reach = gap
			}
		}
		zone := zoneAt(s.z, lengths)
		f := face{drawn: s.z, at: s.z, lo: s.z - zone, hi: s.z + zone}
		if z, found := bestStep(s, real, reach); found {
			f.at, f.found = z, true
			f.lo, f.hi = spread(s, real, z)
		}
		list = append(list, f)
	}
	return faces{list, lengths}
}

// spread is the stretch over which steps of the same direction lie close about the one found.
func spread(want step, real []step, z float64) (lo, hi float64) {
	lo, hi = z, z
	for _, s := range real {
		if math.Abs(s.z-z) <= spreadOfStep && s.height()*want.height() > 0 {
			lo, hi = math.Min(lo, s.z), math.Max(hi, s.z)
		}
	}
	return lo, hi
}

// step is a jump of the radius.
type step struct{ z, left, right float64 }

func (s step) height() float64 { return s.right - s.left }

func stepsOf(c solid.Curve) []step {
	var list []step
	pieces := c.Pieces()
	for i := 1; i < len(pieces); i++ {
		s := step{pieces[i].Z0, pieces[i-1].R1, pieces[i].R0}
		if math.Abs(s.height()) > offSurface {
			list = append(list, s)
		}
	}
	return list
}

// bestStep finds the highest step of the same direction within reach, or says that there is none.
func bestStep(want step, real []step, reach float64) (z float64, found bool) {
	z, height := want.z, 0.0
	for _, s := range real {
		if math.Abs(s.z-want.z) > reach || s.height()*want.height() <= 0 {
			continue
		}
		if h := math.Abs(s.height()); h > height+same || h > height-same && math.Abs(s.z-want.z) < math.Abs(z-want.z) {
			z, height, found = s.z, math.Max(h, height), true
		}
	}
	return z, found
}

// checkLengths holds that every drawn length between faces that were found lies in its limits.
func (w *walk) checkLengths(lengths []length, outer, inner faces) {
	for _, l := range lengths {
		side := outer
		switch w.part.Feature(l.feature).(type) {
		case *partspec.Bore, *partspec.Recess:
			side = inner
		case *partspec.Taper:
			continue // its ends are no steps; its cone is held by the metal itself
		}
		a, b := side.at(l.from), side.at(l.to)
		if !a.found || !b.found {
			continue
		}
		if a.at > b.at {
			a, b = b, a
		}
		for _, got := range []float64{b.lo - a.hi, b.hi - a.lo} {
			if got < float64(l.size.Low)-same || got > float64(l.size.High)+same {
				w.fail(w.blame(a.at, b.at), "size", "%s of %s comes out at %s, drawn %s to %s", l.what, l.feature, mm(got), mm(float64(l.size.Low)), mm(float64(l.size.High)))
			}
		}
	}
}

// blame finds the last operation that changed the metal beside one of a length's two faces.
func (w *walk) blame(a, b float64) where {
	for i := len(w.trace) - 1; i > 0; i-- {
		before, after := w.trace[i-1].body, w.trace[i].body
		if changedAt(before, after, a) || changedAt(before, after, b) {
			return w.place(w.trace[i].setup, w.trace[i].op)
		}
	}
	return where{}
}

// changedAt reports whether the metal close to z, on either side, changed.
func changedAt(before, after solid.Body, z float64) bool {
	return solid.Lost(before.Keep(z-offSurface, z+offSurface), after.Keep(z-offSurface, z+offSurface), same).Any()
}
