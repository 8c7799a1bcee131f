package planner_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"catchplate/planner/plan"
)

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
