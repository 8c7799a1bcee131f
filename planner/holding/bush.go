package holding

import (
	"fmt"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// bushMinutes is the time to make a split threaded bush. Ours, no source.
const bushMinutes = 20.0

// onThread lists grips on an outside thread by way of a split bush threaded for it, which the jaws close on (rule B-40).
func (s Shop) onThread(h partspec.Holding) []Mount {
	var mounts []Mount
	for _, f := range s.Part.Features {
		t, ok := f.(*partspec.Thread)
		if !ok || t.Inside || h.Kind != partspec.ThreeJaw {
			continue
		}
		for i, b := range s.Blocks {
			if b.Name != t.On {
				continue
			}
			for _, free := range []partspec.End{partspec.Left, partspec.Right} {
				if !s.passesThrough(i, free) || !s.seats(i, free) {
					continue // it is screwed in up to its shoulder
				}
				m := Mount{Holding: h, Free: free, Surface: t.Name, Radius: b.Greatest, Threaded: true, Packed: true, Stop: true, Helper: "threaded bush",
					Minutes: s.minutes(h) + bushMinutes, RunOut: s.runOut(h, true)}
				front := nearEdge(b, free)
				m.Z0, m.Z1 = span(front, front-inward(free)*min(jawLength(h), b.Z1-b.Z0))
				mounts = append(mounts, m)
			}
		}
	}
	return mounts
}

// Bushed reports whether the work is screwed into a bush that the jaws close on.
func (m Mount) Bushed() bool { return m.Threaded && !m.Inside }

func (m Mount) threadedBush(h *plan.Helper) {
	h.Title = "Split threaded bush, to hold the work by its thread"
	h.Steps = []string{"Brass or aluminium bar, as long as the work's shank: drill and tap it, or screwcut it, to fit the thread " + m.Surface + " of the work.",
		"Face the end that the shoulder comes against in the same setting; open the mouth where the shank is plain.", "Slit it along one side with a saw; deburr."}
	h.Rules = append(h.Rules, "B-40")
}

func (m Mount) howBushed() []string {
	return []string{fmt.Sprintf("Screw the work into the split bush threaded for %s, up to its shoulder; jaws on the bush, none on the slit.", m.Surface)}
}
