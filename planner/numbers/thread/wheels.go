package thread

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"catchplate/partspec/units"
)

// Leadscrew is a lathe's leadscrew; the spindle drives it one to one where no
// wheel changes the ratio.
type Leadscrew struct {
	Pitch units.Length // of the screw
	TPI   float64      // instead of Pitch, where it is an inch screw
}

// PitchOf is a pitch in mm, exact for threads an inch: 25.4 / tpi.
func PitchOf(pitch units.Length, tpi float64) float64 {
	if tpi > 0 {
		return float64(units.Inch) / tpi
	}
	return float64(pitch)
}

// Train is a set of change wheels, by number of teeth. The spindle turns Driver;
// it meshes with Driven. In a compound train Driver2 sits on Driven's stud and
// meshes with Driven2 on the leadscrew.
type Train struct {
	Driver       int          `json:"driver"`
	Driven       int          `json:"driven"`
	Driver2      int          `json:"driver_2,omitempty"` // 0 in a simple train
	Driven2      int          `json:"driven_2,omitempty"`
	Pitch        units.Length `json:"pitch_mm"` // that the train cuts
	Exact        bool         `json:"exact"`
	ErrorPercent float64      `json:"error_percent"`    // of the pitch; plus is too coarse
	ErrorLength  units.Length `json:"error_mm"`         // over the engaged length
	OverLength   units.Length `json:"engaged_mm"`       // that length
	Allowed      bool         `json:"allowed"`          // the error stays under what the length bears
	AllowedError units.Length `json:"allowed_error_mm"` //
	Rule         string       `json:"rule"`
}

const (
	// exactRatio is how near, in parts of the ratio, a train must come to be
	// called exact: above float64 noise, far below any two trains' difference.
	exactRatio = 1e-9
	// allowedPitchShare is the part of a pitch by which a thread may be out over
	// its engaged length and still turn on freely (ours, opinion).
	allowedPitchShare = 0.05
	// meshTeeth is how many more teeth than the next stud's wheel a meshing pair
	// must have, so that the wheel clears the stud (common practice, no source).
	meshTeeth  = 15
	leastTeeth = 10
	mostTeeth  = 200
	mostWheels = 40
)

// ChangeWheels finds the wheels that cut a pitch in mm over an engaged length.
// wheels lists every wheel owned, twice where two are. Of all simple trains and
// compound trains that mesh, the one with the least pitch error is taken, of
// those the one with fewest wheels, then with the smallest.
func ChangeWheels(wheels []int, screw Leadscrew, pitch float64, engaged units.Length) (Train, error) {
	lead := PitchOf(screw.Pitch, screw.TPI)
	if !(lead > 0) || !(pitch > 0) || !(engaged >= 0) || math.IsInf(pitch/lead, 0) {
		return Train{}, errors.New("a wheel train needs a leadscrew, a pitch and a length above 0")
	}
	if len(wheels) < 2 || len(wheels) > mostWheels {
		return Train{}, fmt.Errorf("a wheel train needs 2 to %d wheels, not %d", mostWheels, len(wheels))
	}
	for _, teeth := range wheels {
		if teeth < leastTeeth || teeth > mostTeeth {
			return Train{}, fmt.Errorf("a change wheel has %d to %d teeth, not %d", leastTeeth, mostTeeth, teeth)
		}
	}
	sorted := slices.Sorted(slices.Values(wheels))
	best, found := bestTrain(sorted, pitch/lead)
	if !found {
		return Train{}, errors.New("no two of the wheels can be set up")
	}
	return best.withErrors(lead, pitch, engaged), nil
}

// bestTrain tries every train of the wheels, sorted, against a ratio.
func bestTrain(wheels []int, ratio float64) (best Train, found bool) {
	try := func(t Train) {
		if !found || t.better(best, ratio) {
			best, found = t, true
		}
	}
	for i, a := range wheels {
		for j, b := range wheels {
			if j == i {
				continue
			}
			try(Train{Driver: a, Driven: b})
			for k, c := range wheels {
				if k == i || k == j {
					continue
				}
				for l, d := range wheels {
					if l != i && l != j && l != k && a+b >= c+meshTeeth && c+d >= b+meshTeeth {
						try(Train{Driver: a, Driven: b, Driver2: c, Driven2: d})
					}
				}
			}
		}
	}
	return best, found
}

// ratio is turns of the leadscrew for one of the spindle.
func (t Train) ratio() float64 {
	if t.Driver2 == 0 {
		return float64(t.Driver) / float64(t.Driven)
	}
	return float64(t.Driver*t.Driver2) / float64(t.Driven*t.Driven2)
}

// off is how far the train is from a ratio, in whole billionths of it, so that
// equal trains compare equal on every processor.
func (t Train) off(ratio float64) int64 {
	return int64(math.Round(math.Min(math.Abs(t.ratio()/ratio-1)/exactRatio, math.MaxInt32*1e6)))
}

func (t Train) wheels() int {
	if t.Driver2 == 0 {
		return 2
	}
	return 4
}

func (t Train) better(other Train, ratio float64) bool {
	return cmp.Or(
		cmp.Compare(t.off(ratio), other.off(ratio)),
		cmp.Compare(t.wheels(), other.wheels()),
		cmp.Compare(t.Driver+t.Driven+t.Driver2+t.Driven2, other.Driver+other.Driven+other.Driver2+other.Driven2),
		cmp.Compare(t.Driver, other.Driver),
		cmp.Compare(t.Driven, other.Driven),
		cmp.Compare(t.Driver2, other.Driver2),
	) < 0
}

func (t Train) withErrors(lead, pitch float64, engaged units.Length) Train {
	relative := t.ratio()*lead/pitch - 1
	t.Pitch = units.Length(t.ratio() * lead).Round(6)
	t.Exact = t.off(pitch/lead) == 0
	t.ErrorPercent = math.Round(relative*1e6) / 1e4
	t.OverLength = engaged
	t.ErrorLength = (units.Length(relative) * engaged).Round(4)
	t.AllowedError = (allowedPitchShare * units.Length(pitch)).Round(4)
	t.Allowed = t.ErrorLength.Abs() <= t.AllowedError
	t.Rule = "C-28"
	return t
}
