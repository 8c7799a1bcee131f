package planner_test

import (
	"fmt"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
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

// verb is a statement about the work.
type verb func(w work, words []string) (bool, error)

var verbs = map[string]verb{
	"order":           inOrder,
	"same_setup":      sameSetup,
	"last_of_setup":   lastOfSetup,
	"made_in":         madeIn,
	"located_on":      locatedOn,
	"supported":       supported,
	"checked_before":  checkedBefore,
	"grip_bare":       gripBare,
	"squeezed":        squeezed,
	"grip_on_thread":  gripOnThread,
	"lobe_over":       lobeOver,
	"ream_unbored":    reamUnbored,
	"slip_on_mandrel": slipOnMandrel,
	"noted":           noted,
	"unplugged":       unplugged,
	"leaves":          leaves,
	"backed":          backed,
	"clamps_over":     clampsOver,
	"one_nought":      oneNought,
}

// noted: noted A WORDS...: a note of A says that.
func noted(w work, words []string) (bool, error) {
	if len(words) < 2 {
		return false, fmt.Errorf("an operation and what its note says are wanted")
	}
	list, err := w.find(words[0])
	if err != nil {
		return false, err
	}
	for _, m := range list {
		if !strings.Contains(strings.Join(m.Notes, "\n"), strings.Join(words[1:], " ")) {
			return false, nil
		}
	}
	return true, nil
}

// unplugged: unplugged SEAT @BORE: the bore is finished before the seat, and nothing stands in it while the seat is cut.
func unplugged(w work, words []string) (bool, error) {
	lists, err := w.all(words, 2)
	if err != nil {
		return false, err
	}
	for _, seat := range lists[0] {
		if lists[1][0].at < seat.at && !strings.Contains(strings.Join(seat.Notes, "\n"), "plug") {
			return true, nil
		}
	}
	return false, nil
}

// inOrder: order A B C: every A comes before every B, and so on.
func inOrder(w work, words []string) (bool, error) {
	lists, err := w.all(words, 2)
	if err != nil {
		return false, err
	}
	before := -1
	for _, list := range lists {
		latest := before
		for _, m := range list {
			if m.at <= before {
				return false, nil
			}
			latest = max(latest, m.at)
		}
		before = latest
	}
	return true, nil
}

// sameSetup: same_setup A B C: one unbroken stay in one holding.
func sameSetup(w work, words []string) (bool, error) {
	lists, err := w.all(words, 2)
	if err != nil {
		return false, err
	}
	numbers := map[int]bool{}
	for _, list := range lists {
		for _, m := range list {
			numbers[m.setup.Number] = true
		}
	}
	return len(numbers) == 1, nil
}

// lastOfSetup: last_of_setup A: nothing is done after A in its setup.
func lastOfSetup(w work, words []string) (bool, error) {
	lists, err := w.all(words, 1)
	if err != nil {
		return false, err
	}
	for _, m := range lists[0] {
		if m.at+1 < len(w) && w[m.at+1].setup.Number == m.setup.Number {
			return false, nil
		}
	}
	return true, nil
}

// madeIn: made_in A KINDS...: A is done in a holding of one of these kinds.
func madeIn(w work, words []string) (bool, error) {
	return about(w, words, func(m moment, kind string) bool { return m.setup.HoldingKind == kind })
}

// locatedOn: located_on A SURFACES...: A is done while the work is located on one of these surfaces.
func locatedOn(w work, words []string) (bool, error) {
	return about(w, words, func(m moment, surface string) bool { return m.setup.Locates == surface })
}

// about holds that each operation of the first name fits one of the words.
func about(w work, words []string, fits func(moment, string) bool) (bool, error) {
	if len(words) < 2 {
		return false, fmt.Errorf("an operation and a word are wanted")
	}
	list, err := w.find(words[0])
	if err != nil {
		return false, err
	}
	for _, m := range list {
		if !slices.ContainsFunc(words[1:], func(word string) bool { return fits(m, word) }) {
			return false, nil
		}
	}
	return true, nil
}

// supported: supported A DIAMETERS: a centre supports the work at A, or it stands out no more diameters of the grip than that.
func supported(w work, words []string) (bool, error) {
	return about(w, words, func(m moment, word string) bool {
		most, err := strconv.ParseFloat(word, 64)
		return err == nil && (m.setup.Tailstock || m.setup.StickOutMM <= most*2*m.setup.Grip.RadiusMM)
	})
}

// checkedBefore: checked_before FEATURE A: the feature is measured or gauged before the setup of A lets go of the work.
func checkedBefore(w work, words []string) (bool, error) {
	if len(words) != 2 {
		return false, fmt.Errorf("a feature and an operation are wanted")
	}
	list, err := w.find(words[1])
	if err != nil {
		return false, err
	}
	for _, m := range w[:list[0].at+1] {
		for _, c := range append(slices.Clone(m.Checks), m.setup.BeforeRelease...) {
			if c.Feature == words[0] {
				return true, nil
			}
		}
	}
	return false, nil
}

// hardJaws are the holdings whose jaws are hard and few.
func hardJaws(s plan.Setup) bool { return s.HoldingKind == "three_jaw" || s.HoldingKind == "four_jaw" }

// gripped holds that a later setup than the one that makes a feature grips it in a certain way.
func gripped(w work, words []string, how func(plan.Setup) bool) (bool, error) {
	lists, err := w.all(words, 1)
	if err != nil {
		return false, err
	}
	for _, list := range lists {
		feature := list[0].Feature
		for _, m := range w[list[0].at+1:] {
			if m.setup.Grip.Surface == feature && m.setup.Number != list[0].setup.Number && how(m.setup) {
				return true, nil
			}
		}
	}
	return false, nil
}

// gripBare: grip_bare @A: bare hard jaws close on a feature that is at size.
func gripBare(w work, words []string) (bool, error) {
	return gripped(w, words, func(s plan.Setup) bool { return hardJaws(s) && s.Grip.Packing == "" })
}

// squeezed: squeezed @A: hard jaws close on a feature that is at size, bare or packed.
func squeezed(w work, words []string) (bool, error) {
	return gripped(w, words, func(s plan.Setup) bool { return hardJaws(s) && !strings.Contains(s.Title, "plug in the bore") })
}

// gripOnThread: grip_on_thread @A: jaws of any kind close on a thread that is cut.
func gripOnThread(w work, words []string) (bool, error) {
	return gripped(w, words, func(s plan.Setup) bool { return s.Grip.Kind == "jaws" || s.Grip.Kind == "collet" })
}

// lobeOver: lobe_over MM: some grip leaves the work lobed by more than that.
func lobeOver(w work, words []string) (bool, error) {
	if len(words) != 1 {
		return false, fmt.Errorf("one figure is wanted")
	}
	most, err := strconv.ParseFloat(words[0], 64)
	if err != nil {
		return false, err
	}
	return slices.ContainsFunc(w, func(m moment) bool { return m.setup.Grip.ErrorMM > most }), nil
}

// reamUnbored: ream_unbored FEATURE: a hole is reamed that was only drilled.
func reamUnbored(w work, words []string) (bool, error) {
	if len(words) != 1 {
		return false, fmt.Errorf("one feature is wanted")
	}
	reamed, bored := false, false
	for _, m := range w {
		reamed = reamed || m.Feature == words[0] && m.Process == plan.Ream
		bored = bored || m.Feature == words[0] && m.Process == plan.BoreOut && !reamed
	}
	return reamed && !bored, nil
}

// slipOnMandrel: slip_on_mandrel DIAMETERS: metal is turned off on a plain mandrel at more than so many diameters of its bore.
func slipOnMandrel(w work, words []string) (bool, error) {
	if len(words) != 1 {
		return false, fmt.Errorf("one figure is wanted")
	}
	most, err := strconv.ParseFloat(words[0], 64)
	if err != nil {
		return false, err
	}
	for _, m := range w {
		if m.setup.HoldingKind == "plain_mandrel" && widest(m.setup.Before) > most*m.setup.Grip.RadiusMM {
			return true, nil
		}
	}
	return false, nil
}

func widest(s plan.Section) float64 {
	r := 0.0
	for _, seg := range s.Outer {
		r = max(r, seg.R0, seg.R1)
	}
	return r
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
