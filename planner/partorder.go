package planner

import (
	"catchplate/partspec"
	"catchplate/planner/rules"
)

// inOrder lists the parts so that those whose holes are spotted through come before those that get the spots (rule A-33), and the one with the hole of a fit before
// the one with the shaft (rule A-10), else as in the files.
func inOrder(job *partspec.Job, set rules.Set) []*partspec.Part {
	parts := append([]*partspec.Part(nil), job.Parts...)
	after := needs{}
	if set.Has("A-33") {
		for _, p := range parts {
			for _, f := range p.Features {
				if h, ok := f.(*partspec.Holes); ok && h.Mate != nil {
					after.add(p.Name, h.Match.Part)
				}
			}
		}
	}
	if set.Has("A-10") {
		for _, f := range job.Fits {
			if f.Hole.Part != f.Shaft.Part && !after[f.Hole.Part][f.Shaft.Part] {
				after.add(f.Shaft.Part, f.Hole.Part)
			}
		}
	}
	var out []*partspec.Part
	placed := map[string]bool{}
	for len(out) < len(parts) {
		before := len(out)
		for _, p := range parts {
			if !placed[p.Name] && ready(after[p.Name], placed) {
				out, placed[p.Name] = append(out, p), true
			}
		}
		if len(out) == before { // fits in a ring: the files' order decides
			for _, p := range parts {
				if !placed[p.Name] {
					out, placed[p.Name] = append(out, p), true
					break
				}
			}
		}
	}
	return out
}

// needs are the parts that come before each.
type needs map[string]map[string]bool

func (n needs) add(part, before string) {
	if n[part] == nil {
		n[part] = map[string]bool{}
	}
	n[part][before] = true
}

func ready(needs, placed map[string]bool) bool {
	for n := range needs {
		if !placed[n] {
			return false
		}
	}
	return true
}
