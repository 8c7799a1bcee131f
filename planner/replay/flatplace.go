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
