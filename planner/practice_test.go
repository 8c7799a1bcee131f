package planner_test

import (
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
)

// A worked plan of the trade is a list of lines about the plan of its part:
//
//	must  VERB WORDS...     holds of every good plan
//	wrong VERB WORDS...     holds of none
//	# ...                   the source, and what else the trade allows
//
// An operation is named by its id, where * stands for anything; "@main" is the operation that brings the feature main to size. A name that
// fits nothing is an objection, so that a slip in a list is seen; with a "?" behind it the operation may be missing.

// practice is one list.
type practice struct{ lines []practiceLine }

type practiceLine struct {
	must  bool
	verb  string
	words []string
}

func (l practiceLine) String() string {
	head := "wrong"
	if l.must {
		head = "must"
	}
	return head + " " + l.verb + " " + strings.Join(l.words, " ")
}

func parsePractice(text string) (practice, error) {
	var p practice
	for _, line := range strings.Split(text, "\n") {
		line, _, _ = strings.Cut(line, "#")
		words := strings.Fields(line)
		if len(words) == 0 {
			continue
		}
		if len(words) < 2 || words[0] != "must" && words[0] != "wrong" || verbs[words[1]] == nil {
			return p, fmt.Errorf("%q is no line of a practice list", line)
		}
		p.lines = append(p.lines, practiceLine{words[0] == "must", words[1], words[2:]})
	}
	return p, nil
}

// violations are the lines that a plan goes against.
func (p practice) violations(part plan.Part) []string {
	var found []string
	for _, l := range p.lines {
		holds, err := verbs[l.verb](timeline(part), l.words)
		switch {
		case err != nil:
			found = append(found, l.String()+": "+err.Error())
		case holds != l.must:
			found = append(found, l.String())
		}
	}
	return found
}

// moment is an operation at its place in the work.
type moment struct {
	at    int
	setup plan.Setup
	plan.Operation
}

// work is a plan as one line of operations.
type work []moment

func timeline(p plan.Part) work {
	var w work
	for _, s := range p.Setups {
		for _, o := range s.Operations {
			w = append(w, moment{len(w), s, o})
		}
	}
	return w
}

// find looks a name up.
func (w work) find(name string) (work, error) {
	name, optional := strings.CutSuffix(name, "?")
	var found work
	feature, last := strings.CutPrefix(name, "@")
	for _, m := range w {
		fits, err := path.Match(name, m.ID)
		if err != nil {
			return nil, err
		}
		if fits || last && m.Feature == feature {
			found = append(found, m)
		}
	}
	if last && len(found) > 0 {
		found = found[len(found)-1:]
	}
	if len(found) == 0 && !optional {
		return nil, fmt.Errorf("no operation is called %s", name)
	}
	return found, nil
}

// all looks several names up, and holds that there are at least so many.
func (w work) all(names []string, least int) ([]work, error) {
	if len(names) < least {
		return nil, fmt.Errorf("at least %d operations are wanted", least)
	}
	var lists []work
	for _, n := range names {
		list, err := w.find(n)
		if err != nil {
			return nil, err
		}
		lists = append(lists, list)
	}
	return lists, nil
}

// Every worked plan of the trade holds for what the planner makes of the same part.
func TestWorkedPlansOfTheTrade(t *testing.T) {
	lists, err := filepath.Glob(filepath.Join(worked, "*.practice"))
	require.NoError(t, err)
	require.NotEmpty(t, lists)
	for _, list := range lists {
		name := strings.TrimSuffix(filepath.Base(list), ".practice")
		t.Run(name, func(t *testing.T) {
			text, err := os.ReadFile(list)
			require.NoError(t, err)
			p, err := parsePractice(string(text))
			require.NoError(t, err)
			require.NotEmpty(t, p.lines)
			assert.Empty(t, p.violations(planned(t, workedJob(t, name))))
		})
	}
}

// spoilt is a line that holds of the small plan below, and a change after which it does not.
type spoilt struct {
	line   string
	mangle func(*plan.Part)
}

func spoiltPlans() []spoilt {
	return []spoilt{
		{"must order face.right bore.main/* @body part_off", func(p *plan.Part) { p.Setups[0].Operations = p.Setups[0].Operations[1:] }},
		{"must order face.right @main @body", func(p *plan.Part) { o := p.Setups[0].Operations; o[1], o[3] = o[3], o[1] }},
		{"must same_setup @main @body", func(p *plan.Part) {
			o := p.Setups[0].Operations
			p.Setups[1].Operations, p.Setups[0].Operations = append(p.Setups[1].Operations, o[3]), append(o[:3:3], o[4])
		}},
		{"must last_of_setup part_off", func(p *plan.Part) { o := p.Setups[0].Operations; o[3], o[4] = o[4], o[3] }},
		{"must made_in face.left stub_mandrel soft_jaws", func(p *plan.Part) { p.Setups[1].HoldingKind = "three_jaw" }},
		{"must located_on face.left main", func(p *plan.Part) { p.Setups[1].Locates = "body" }},
		{"must supported @body 2", func(p *plan.Part) { p.Setups[0].StickOutMM = 45 }},
		{"must checked_before main part_off", func(p *plan.Part) { p.Setups[0].Operations[2].Checks = nil }},
		{"wrong grip_bare @body", func(p *plan.Part) { gripBody(p, "three_jaw", "") }},
		{"wrong squeezed @body", func(p *plan.Part) { gripBody(p, "four_jaw", "copper") }},
		{"wrong grip_on_thread @body", func(p *plan.Part) { gripBody(p, "soft_jaws", "") }},
		{"wrong lobe_over 0.01", func(p *plan.Part) { p.Setups[0].Grip.ErrorMM = 0.011 }},
		{"wrong ream_unbored main", func(p *plan.Part) { p.Setups[0].Operations[2].Process = plan.Ream }},
		{"must noted face.left the other end", func(p *plan.Part) { p.Setups[1].Operations[0].Notes = nil }},
		{"wrong unplugged face.left @main", func(p *plan.Part) { p.Setups[1].Operations[0].Notes = nil }},
		{"must leaves part_off left 4", func(p *plan.Part) { p.Setups[0].Operations[4].Edges[0].LeftMM = 2 }},
		{"must backed bore.main/*", func(p *plan.Part) { p.Setups[0].Bed.GapMM = 1 }},
		{"wrong clamps_over bore.main/* 10 10 8", func(p *plan.Part) { p.Setups[0].Clamps[0].XMM = 15 }},
		{"must one_nought @main", func(p *plan.Part) {
			p.Setups[0].Operations[1].Zeros = []plan.Zero{{Dial: "x"}}
		}},
		{"wrong slip_on_mandrel 4", func(p *plan.Part) { p.Setups[1].HoldingKind = "plain_mandrel" }},
	}
}

// Every verb can say no and yes.
func TestPracticeVerbsCanFail(t *testing.T) {
	good, tried := mangled(func(*plan.Part) {}), map[string]bool{}
	for _, c := range spoiltPlans() {
		tried[strings.Fields(c.line)[1]] = true
		t.Run(c.line, func(t *testing.T) {
			p, err := parsePractice(c.line)
			require.NoError(t, err)
			assert.Empty(t, p.violations(good), "the good plan")
			assert.NotEmpty(t, p.violations(mangled(c.mangle)), "the mangled plan")
		})
	}
	for v := range verbs {
		assert.True(t, tried[v], "no plan is spoilt for %s", v)
	}
}

// A list with a slip in it is no list, and an operation that is not there is an objection either way.
func TestPracticeSlipsAreSeen(t *testing.T) {
	for _, line := range []string{"must", "should order a b", "must dance a", "order a b"} {
		_, err := parsePractice(line)
		assert.Error(t, err, line)
	}
	for _, line := range []string{"must order nothing @main", "wrong order nothing @main", "wrong same_setup @main", "wrong lobe_over much", "must made_in @main"} {
		p, err := parsePractice(line)
		require.NoError(t, err, line)
		assert.NotEmpty(t, p.violations(mangled(func(*plan.Part) {})), line)
	}
	p, err := parsePractice("must order @main nothing? @body")
	require.NoError(t, err)
	assert.Empty(t, p.violations(mangled(func(*plan.Part) {})))
}

func gripBody(p *plan.Part, kind, packing string) {
	p.Setups[1].HoldingKind = kind
	p.Setups[1].Grip = plan.Grip{Kind: "jaws", Surface: "body", Packing: packing}
}

// mangled is a small plan with something changed in it.
func mangled(change func(*plan.Part)) plan.Part {
	p := plan.Part{Setups: []plan.Setup{
		{Number: 1, HoldingKind: "three_jaw", Locates: "stock", StickOutMM: 30, Grip: plan.Grip{Kind: "jaws", Surface: "stock", RadiusMM: 10, ErrorMM: 0.009},
			Bed: &plan.Bed{Kind: "parallels", GapMM: 6}, Clamps: []plan.Clamp{{XMM: 30, YMM: 10, ToeMM: 8}},
			Operations: []plan.Operation{
				{ID: "face.right", Feature: "face.right", Process: plan.Face, Zeros: []plan.Zero{{Dial: "x"}, {Dial: "y"}}},
				{ID: "bore.main/drill", Feature: "main", Process: plan.Drill},
				{ID: "bore.main/bore", Feature: "main", Process: plan.BoreOut, Checks: []plan.Check{{Feature: "main"}}},
				{ID: "spigot.body/turn", Feature: "body", Process: plan.TurnFinish},
				{ID: "part_off", Feature: "part", Process: plan.PartOff, Edges: []plan.EdgeLeft{{Edge: "left", LeftMM: 4}}},
			}},
		{Number: 2, HoldingKind: "stub_mandrel", Locates: "main", Grip: plan.Grip{Kind: "mandrel", Surface: "main", RadiusMM: 2},
			Before:     plan.Section{Outer: []plan.Segment{{R0: 9, R1: 9}}},
			Operations: []plan.Operation{{ID: "face.left", Feature: "face.left", Process: plan.Face, Notes: []string{"the other end, a plug in the bore"}}}},
	}}
	change(&p)
	return p
}
