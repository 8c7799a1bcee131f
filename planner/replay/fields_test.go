package replay

import (
	"encoding/json"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
)

// harmless are the changes of a field, more or less, that a proved plan may suffer and still be proved. Each has its reason. Every other
// change of every field must be refused.
var harmless = map[string]string{
	"parts.drawing.hexagon":                          "a sketch",
	"parts.minutes":                                  "an estimate",
	"parts.order.bound_minutes":                      "the search's own record",
	"parts.order.cost_minutes":                       "the search's own record",
	"parts.order.proven":                             "the search's own record",
	"parts.order.states":                             "the search's own record",
	"parts.stock.length_mm more":                     "more stock than is needed",
	"parts.stock.text":                               "words",
	"parts.setups.id":                                "words",
	"parts.setups.title":                             "words",
	"parts.setups.minutes":                           "an estimate",
	"parts.setups.safe_stop":                         "advice",
	"parts.setups.run_out_mm more":                   "a holding that runs truer than is reckoned",
	"parts.setups.run_out_mm less":                   "on raw stock nothing is located",
	"parts.setups.grip.feel":                         "words",
	"parts.setups.grip.packing":                      "words; that there is packing is proved",
	"parts.setups.grip.from_z less":                  "a longer grip where there is room for it",
	"parts.setups.grip.to_z less":                    "a shorter grip that still holds",
	"parts.setups.grip.working_n":                    "a force between what must hold and what may not harm",
	"parts.setups.grip.least_n":                      "more than is needed",
	"parts.setups.grip.error_mm":                     "the work is stout: no lobed error to speak of",
	"parts.setups.grip.limit_mm":                     "the work is stout: no lobed error to speak of",
	"parts.setups.grip.stress_mpa":                   "the work is stout: no stress to speak of",
	"parts.setups.grip.trust":                        "the work is stout: no figure that needs it",
	"parts.setups.operations.id":                     "any name of its own does",
	"parts.setups.operations.number":                 "any rising row does",
	"parts.setups.operations.title":                  "words",
	"parts.setups.operations.minutes":                "an estimate",
	"parts.setups.operations.speed_why":              "words",
	"parts.setups.operations.wanted_rpm more":        "the speed is held against the metal's own",
	"parts.setups.operations.depth_mm":               "the cuts are held against it, and the grip against the cuts",
	"parts.setups.operations.feed_mm more":           "a feed that grip, motor and judged force still stand",
	"parts.setups.operations.force_n":                "the grip is held against the cuts' own force",
	"parts.setups.operations.tool.text":              "words",
	"parts.setups.operations.tool.size_mm":           "only tools from a set have one",
	"parts.setups.operations.zeros.how":              "words",
	"parts.setups.operations.card.label":             "words",
	"parts.setups.operations.card.makes":             "words where they begin with no diameter",
	"parts.setups.operations.card.by_measure":        "a measurement more than is needed",
	"parts.setups.operations.card.counted":           "below nought no turns are counted",
	"parts.setups.operations.cuts.name":              "words",
	"parts.setups.operations.cuts.from.graduations":  "the beginning of a cut, in the air",
	"parts.setups.operations.cuts.tool_size_mm more": "another pilot drill",
	"parts.setups.operations.checks.limits":          "words",
	"parts.setups.operations.checks.when":            "words",
	"parts.setups.operations.checks.if_large":        "words",
	"parts.setups.operations.checks.if_small":        "words",
}

// mostAlike is how many fields of one name are tried; the others are alike.
const mostAlike = 4

var indices = regexp.MustCompile(`\.\d+`)

// Every field of a plan is changed, one at a time and both ways: the change is refused, or it is one of the harmless ones.
func TestEveryFieldIsProvedOrHarmless(t *testing.T) {
	everyField(t, bush(t), harmless, mostAlike)
}

func everyField(t *testing.T, good *bench, harmless map[string]string, mostAlike int) {
	t.Helper()
	everyFieldOf(t, good, harmless, mostAlike, func(string) bool { return true })
}

// everyFieldOf is everyField for some of the plan only.
func everyFieldOf(t *testing.T, good *bench, harmless map[string]string, mostAlike int, of func(path string) bool) {
	t.Helper()
	text, err := json.Marshal(good.plan())
	require.NoError(t, err)
	tried := map[string]int{}
	for _, path := range leavesOf(t, text) {
		name := indices.ReplaceAllString(path, "")
		if !of(path) {
			continue
		}
		for _, kind := range []string{"more", "less"} {
			key := name + " " + kind
			if tried[key] == mostAlike {
				continue
			}
			p, ok := withChange(t, text, path, kind)
			if !ok {
				continue
			}
			tried[key]++
			if _, failures := Prove(good.job, p); len(failures) == 0 {
				_, any := harmless[name]
				_, one := harmless[key]
				assert.True(t, any || one, "%s, %s: nothing was refused", path, kind)
			}
		}
	}
	assert.Greater(t, len(tried), 50)
}

func leavesOf(t *testing.T, text []byte) []string {
	t.Helper()
	var tree any
	require.NoError(t, json.Unmarshal(text, &tree))
	var list []string
	leaves("", tree, &list)
	sort.Strings(list)
	return list
}

// leaves lists the paths of all numbers, texts and flags of a JSON value.
func leaves(path string, v any, list *[]string) {
	join := func(key string) string { return strings.TrimPrefix(path+"."+key, ".") }
	switch v := v.(type) {
	case map[string]any:
		for k, child := range v {
			leaves(join(k), child, list)
		}
	case []any:
		for i, child := range v {
			leaves(join(strconv.Itoa(i)), child, list)
		}
	case nil:
	default:
		*list = append(*list, path)
	}
}

// withChange is the plan with one leaf changed; not ok when the leaf has no such change.
func withChange(t *testing.T, text []byte, path, kind string) (*plan.Plan, bool) {
	t.Helper()
	var tree any
	require.NoError(t, json.Unmarshal(text, &tree))
	if !spoil(tree, strings.Split(path, "."), kind) {
		return nil, false
	}
	again, err := json.Marshal(tree)
	require.NoError(t, err)
	var p plan.Plan
	require.NoError(t, json.Unmarshal(again, &p))
	return &p, true
}

func spoil(v any, path []string, kind string) bool {
	set := func(child any) (any, bool) {
		if len(path) > 1 {
			return child, spoil(child, path[1:], kind)
		}
		return other(child, kind)
	}
	var ok bool
	switch v := v.(type) {
	case map[string]any:
		v[path[0]], ok = set(v[path[0]])
	case []any:
		i, err := strconv.Atoi(path[0])
		if err != nil {
			return false
		}
		v[i], ok = set(v[i])
	}
	return ok
}

// other is a value clearly greater or smaller, another text, or the opposite.
func other(v any, kind string) (any, bool) {
	switch v := v.(type) {
	case float64:
		if kind == "more" {
			return float64(int(v*1.3) + 3), true
		}
		return float64(int(v*0.7) - 3), true
	case string:
		return v + "x", kind == "more"
	case bool:
		return !v, kind == "more"
	}
	return v, false
}
