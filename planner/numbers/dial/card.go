package dial

import (
	"fmt"

	"catchplate/partspec/units"
)

// DefaultMaxTurns is how many turns are counted from one zero before the ring is
// set to zero again: more are miscounted (common practice, no source).
const DefaultMaxTurns = 4

// Cut is one size of a dial card.
type Cut struct {
	Label   string
	To      units.Length
	Limits  units.Limits // the zero value: none
	Measure bool         // measure after this cut, then set the ring to zero there
}

// Line is one line of a dial card: a cut, or with ReZero a place where the ring
// is set to zero before going on.
type Line struct {
	Label  string       `json:"label"`
	ReZero bool         `json:"re_zero,omitempty"`
	Why    string       `json:"why,omitempty"` // of a re-zero
	At     units.Length `json:"at_mm"`         // size at a re-zero; aim of a cut
	Add    int          `json:"add"`           // graduations from the line before
	Back   bool         `json:"back,omitempty"`
	Setting
}

// Card is a table of settings worked from one touch-off.
type Card struct {
	Dial    Dial   `json:"-"`
	Kind    Kind   `json:"kind"`
	Lines   []Line `json:"lines"`
	BackOff int    `json:"back_off"` // graduations to go back after overshooting
	Rule    string `json:"rule"`
}

// Make works out a card from the size at touch-off, the dial at zero there. Cuts
// of metal go one way only; places may go back, and such a line says so, for it
// must be approached again from the same side (trade rule C-08). The ring is set
// to zero after a measurement, and where the total would pass maxTurns (0 means
// DefaultMaxTurns). Totals run from the last zero; each is reckoned from the
// size there, so roundings do not add up.
func Make(d Dial, k Kind, from units.Length, maxTurns int, cuts []Cut) (Card, error) {
	if maxTurns < 0 {
		return Card{}, fmt.Errorf("a card counts 1 turn or more, not %d", maxTurns)
	}
	if maxTurns == 0 {
		maxTurns = DefaultMaxTurns
	}
	c := Card{Dial: d, Kind: k, Rule: "C-08"}
	zero, last := from, Setting{Made: from}
	reZero := func(why string) {
		c.Lines = append(c.Lines, Line{Label: "set the dial to 0", ReZero: true, Why: why, At: last.Made})
		zero, last = last.Made, Setting{Made: last.Made}
	}
	for i, cut := range cuts {
		s, err := Set(d, Want{Kind: k, From: zero, To: cut.To, Limits: cut.Limits})
		if err != nil {
			return Card{}, fmt.Errorf("%s: %w", cut.Label, err)
		}
		if zero != last.Made && turnsOf(s) > maxTurns && d.Marks() > 0 {
			reZero(fmt.Sprintf("the next total would pass %s", plural(maxTurns, "turn")))
			if s, err = Set(d, Want{Kind: k, From: zero, To: cut.To, Limits: cut.Limits}); err != nil {
				return Card{}, fmt.Errorf("%s: %w", cut.Label, err)
			}
		}
		add := s.Graduations - last.Graduations
		if add < 0 && k != Place {
			return Card{}, fmt.Errorf("%s: %s comes after a deeper cut: put the cuts in the order in which metal goes", cut.Label, cut.To)
		}
		c.Lines = append(c.Lines, Line{Label: cut.Label, At: cut.To, Add: add, Back: add < 0, Setting: s})
		last = s
		if cut.Measure && i < len(cuts)-1 {
			reZero("after measuring")
		}
	}
	if err := d.Validate(); err != nil {
		return Card{}, err
	}
	c.BackOff = d.BackOff()
	return c, nil
}

func turnsOf(s Setting) int {
	turns := max(s.Turns, -s.Turns)
	if s.Rest != 0 {
		turns++
	}
	return turns
}
