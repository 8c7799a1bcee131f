package dial

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
)

// Standing says how a setting stands to what was wanted.
type Standing string

// The standings.
const (
	OnSize  Standing = "on size"           // a graduation falls on the aim
	Inside  Standing = "inside limits"     // beside the aim, within the limits
	MetalOn Standing = "metal on"          // no limits given; metal is left
	Nearest Standing = "nearest"           // a place without limits
	Creep   Standing = "measure and creep" // no graduation lands inside the limits
)

// Want is one size to make from a touch-off.
type Want struct {
	Kind   Kind
	From   units.Length // size at the dial's zero: a diameter for Outside and Bore
	To     units.Length // the size aimed at
	Limits units.Limits // the zero value: none given
}

// Setting is where to turn the dial.
type Setting struct {
	Graduations int          `json:"graduations"` // total from the zero
	Turns       int          `json:"turns"`       // whole turns of it
	Rest        int          `json:"rest"`        // graduations beyond the whole turns
	Reading     units.Length `json:"reading_mm"`  // what the dial has counted
	Made        units.Length `json:"made_mm"`     // the size that the setting makes
	Leftover    units.Length `json:"leftover_mm"` // metal left on the size; below 0: past the aim
	Standing    Standing     `json:"standing"`
	Rule        string       `json:"rule"`
}

// Set finds the graduation for a size. Where none falls on it, the setting that
// leaves metal on is taken (outside diameters larger, bores smaller, depths
// short, lengths long, hole places to the nearest); if that lies outside the
// limits and one beside it inside, that one; if none does, the metal-on setting
// stands, marked "measure and creep" (trade rules C-10, C-11).
func Set(d Dial, w Want) (Setting, error) {
	if err := d.Validate(); err != nil {
		return Setting{}, err
	}
	if err := w.validate(); err != nil {
		return Setting{}, err
	}
	exact := w.Kind.sense() * d.perSize(w.Kind) * float64(w.To-w.From) / float64(d.Graduation)
	if math.Abs(exact) > maxTotal {
		return Setting{}, fmt.Errorf("the travel from %s to %s is more than %d graduations: check the sizes and the dial", w.From, w.To, maxTotal)
	}
	if exact < -snap && w.Kind != Place {
		return Setting{}, fmt.Errorf("%s from %s to %s would put metal on: cut the other way", w.Kind, w.From, w.To)
	}
	total := int(math.Round(exact))
	if math.Abs(exact-float64(total)) > snap && w.Kind != Place {
		total = int(math.Floor(exact))
	}
	s := at(d, w, total)
	for _, beside := range []int{total + 1, total - 1} {
		if next := at(d, w, beside); s.Standing == Creep && next.Standing == Inside {
			s = next
		}
	}
	return s, nil
}

func (w Want) validate() error {
	if w.Kind.sense() == 0 {
		return fmt.Errorf("a size is outside, bore, depth, length or place, not %q", w.Kind)
	}
	if !(w.From.Abs() <= units.MaxLength) || !(w.To.Abs() <= units.MaxLength) {
		return fmt.Errorf("the sizes from %s to %s are not believable", w.From, w.To)
	}
	if w.hasLimits() && (!w.Limits.Valid() || !w.Limits.Contains(w.To)) {
		return fmt.Errorf("the aim %s lies outside its limits %s", w.To, w.Limits)
	}
	return nil
}

func (w Want) hasLimits() bool { return w.Limits != units.Limits{} }

// at is the setting of a whole number of graduations from the zero.
func at(d Dial, w Want, total int) Setting {
	reading := units.Length(total) * d.Graduation
	made := (w.From + units.Length(w.Kind.sense()/d.perSize(w.Kind))*reading).Round(nanometre)
	s := Setting{
		Graduations: total, Rest: total, Reading: reading.Round(nanometre), Made: made,
		Leftover: (units.Length(w.Kind.sense()) * (w.To - made)).Round(nanometre), Rule: "C-11",
	}
	if marks := d.Marks(); marks > 0 {
		s.Turns, s.Rest = total/marks, total%marks
	}
	s.Standing = w.standing(s)
	return s
}

func (w Want) standing(s Setting) Standing {
	switch {
	case s.Leftover == 0:
		return OnSize
	case !w.hasLimits() && w.Kind == Place:
		return Nearest
	case !w.hasLimits():
		return MetalOn
	case w.Limits.Contains(s.Made):
		return Inside
	}
	return Creep
}

// Text says the setting in turns and graduations: "2 turns + 37 graduations",
// "back 12 graduations"; on an indicator it is the reading.
func (s Setting) Text(d Dial) string {
	if d.Marks() == 0 {
		return s.Reading.Text(d.Unit()) + " on the indicator"
	}
	turns, rest, back := s.Turns, s.Rest, ""
	if s.Graduations < 0 {
		turns, rest, back = -turns, -rest, "back "
	}
	switch {
	case turns == 0:
		return back + plural(rest, "graduation")
	case rest == 0:
		return back + plural(turns, "turn")
	}
	return back + plural(turns, "turn") + " + " + plural(rest, "graduation")
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
