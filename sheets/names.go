package sheets

import (
	"strconv"
	"strings"

	"catchplate/planner/plan"
)

// fileNames gives each part the start of its files' names: its own name, with a hyphen for all that a file system might not take.
func fileNames(parts []plan.Part) []string {
	used := map[string]bool{"index": true}
	out := make([]string, len(parts))
	for i, p := range parts {
		base := safeName(p.Name)
		name := base
		for n := 2; used[strings.ToLower(name)]; n++ {
			name = base + "-" + strconv.Itoa(n)
		}
		used[strings.ToLower(name)] = true
		out[i] = name
	}
	return out
}

func safeName(name string) string {
	safe := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '_' || r == '-' {
			return r
		}
		return '-'
	}, name)
	safe = strings.Trim(safe, "-")
	if len(safe) > longestName {
		safe = safe[:longestName]
	}
	if safe == "" {
		return "part"
	}
	return safe
}

// longestName keeps file names, with their endings, well within every file system's limit.
const longestName = 80
