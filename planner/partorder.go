package planner

import (
	"catchplate/partspec"
	"catchplate/planner/rules"
)

// inOrder lists the parts so that the one with the hole of a fit comes before the one with the shaft (rule A-10), else as in the files.
func inOrder(job *partspec.Job, set rules.Set) []*partspec.Part {
	parts := append([]*partspec.Part(nil), job.Parts...)
	if !set.Has("A-10") {
		return parts
	}
	after := map[string]map[string]bool{}
	for _, f := range job.Fits {
		if f.Hole.Part != f.Shaft.Part {
			if after[f.Shaft.Part] == nil {
				after[f.Shaft.Part] = map[string]bool{}
			}
			after[f.Shaft.Part][f.Hole.Part] = true
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

func ready(needs, placed map[string]bool) bool {
	for n := range needs {
		if !placed[n] {
			return false
		}
	}
	return true
}
