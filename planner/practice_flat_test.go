package planner_test

import (
	"fmt"
	"math"
	"strconv"
)

// leaves: leaves A EDGE MM: sawing or filing leaves so much on an edge.
func leaves(w work, words []string) (bool, error) {
	if len(words) != 3 {
		return false, fmt.Errorf("an operation, an edge and a figure are wanted")
	}
	list, err := w.find(words[0])
	if err != nil {
		return false, err
	}
	want, err := strconv.ParseFloat(words[2], 64)
	if err != nil {
		return false, err
	}
	for _, m := range list {
		for _, e := range m.Edges {
			if e.Edge == words[1] && math.Abs(e.LeftMM-want) < 1e-6 {
				return true, nil
			}
		}
	}
	return false, nil
}

// backed: backed A: what comes through has a gap or a board of at least 3 mm under it.
func backed(w work, words []string) (bool, error) {
	lists, err := w.all(words, 1)
	if err != nil {
		return false, err
	}
	for _, m := range lists[0] {
		if b := m.setup.Bed; b == nil || b.GapMM < 3 && b.Kind != "backing board" {
			return false, nil
		}
	}
	return true, nil
}

// clampsOver: clamps_over A X Y RADIUS: some clamp's toe stands over that circle while A is done.
func clampsOver(w work, words []string) (bool, error) {
	if len(words) != 4 {
		return false, fmt.Errorf("an operation and a circle are wanted")
	}
	list, err := w.find(words[0])
	if err != nil {
		return false, err
	}
	var at [3]float64
	for i := range at {
		if at[i], err = strconv.ParseFloat(words[i+1], 64); err != nil {
			return false, err
		}
	}
	for _, m := range list {
		for _, c := range m.setup.Clamps {
			if math.Hypot(c.XMM-at[0], c.YMM-at[1]) < at[2]+c.ToeMM/2 {
				return true, nil
			}
		}
	}
	return false, nil
}

// oneNought: one_nought A: the table's dials are set once in the setup of A, so that no hole is counted from another.
func oneNought(w work, words []string) (bool, error) {
	lists, err := w.all(words, 1)
	if err != nil {
		return false, err
	}
	for _, m := range lists[0] {
		set := map[string]int{}
		for _, o := range m.setup.Operations {
			for _, z := range o.Zeros {
				set[z.Dial]++
			}
		}
		if set["x"] != 1 || set["y"] != 1 {
			return false, nil
		}
	}
	return true, nil
}
