package replay

import (
	"math"

	"catchplate/partspec"
)

// checkPlaces holds every drawn position between holes.
func (f *flatWalk) checkPlaces() {
	for _, r := range f.part.Relations {
		switch r.Kind {
		case partspec.Position, partspec.Concentric:
			f.checkPosition(r)
		case partspec.Square, partspec.Parallel:
			f.checkSquare(r)
		default:
			f.failOp("relation", "%s of %s to %s cannot be proved on flat work", r.Kind, r.Of, r.To)
		}
	}
}

// finalOf is what was made last, as a hole, of each place of a feature.
func (f *flatWalk) finalOf(feature string) map[int]taken {
	last := map[int]taken{}
	for _, t := range f.work.taken {
		c, ok := f.columnOf(t)
		if !ok || t.mark || t.mouth {
			continue
		}
		for _, r := range c.rounds {
			if r.hole.feature == feature {
				last[r.hole.number] = t
			}
		}
	}
	return last
}

// checkPosition holds a pattern's place about a hole: how far the two really lie from each other may differ from the drawing by half the zone.
func (f *flatWalk) checkPosition(r partspec.Relation) {
	of, to := f.finalOf(r.Of.Feature), f.finalOf(r.To.Feature)
	for _, n := range sortedKeys(of) {
		for _, k := range sortedKeys(to) {
			a, b := of[n], to[k]
			ax, ay, _ := a.centred(0)
			bx, by, _ := b.centred(0)
			ca, _ := f.columnOf(a)
			cb, _ := f.columnOf(b)
			dax, day := ca.place()
			dbx, dby := cb.place()
			off := math.Hypot((ax-dax)-(bx-dbx), (ay-day)-(by-dby)) + f.apart(a, b)
			if off > float64(r.Within)/2+figure {
				f.fail(f.place(a.key.setup, a.key.op), "relation", "%s of %s to %s: %s to expect, radially; %s drawn", r.Kind, ca.name, cb.name, mm(off), mm(float64(r.Within)/2))
				return
			}
		}
	}
}

const (
	// seatedError is how far work may stand out of true on parallels, a plate or a table, over its own length (table of accuracies: a job re-held in the vice, 0.02 to
	// 0.05; a faceplate 0.01; from memory).
	seatedError = 0.02
)

// checkSquare holds squareness and parallelism: what was made in settings that seat the work on a face lies true to that face within the seating's error.
func (f *flatWalk) checkSquare(r partspec.Relation) {
	if err := 2 * seatedError; err > float64(r.Within)+figure {
		f.failOp("relation", "%s of %s to %s: %s to expect, %s drawn", r.Kind, r.Of, r.To, mm(err), mm(float64(r.Within)))
	}
}

func sortedKeys(m map[int]taken) []int {
	var keys []int
	for k := range m {
		keys = append(keys, k)
	}
	for i := 1; i < len(keys); i++ {
		for k := i; k > 0 && keys[k] < keys[k-1]; k-- {
			keys[k], keys[k-1] = keys[k-1], keys[k]
		}
	}
	return keys
}
