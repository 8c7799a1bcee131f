package dial

import (
	"errors"
	"math"

	"catchplate/partspec/units"
)

// Verdict says whether a dial can promise a tolerance, and what to do if not.
type Verdict struct {
	Promised bool         `json:"promised"`
	Step     units.Length `json:"step_mm"`  // change of size for one graduation
	Width    units.Length `json:"width_mm"` // of the tolerance
	Ways     []Way        `json:"ways,omitempty"`
	Rule     string       `json:"rule"`
}

// Way is what a worker does where a dial is too coarse.
type Way string

// The ways, in the order in which they are worth trying (trade rule C-12).
const (
	WayMeasure   Way = "measure and creep: set the dial to the measured size for the last cut"
	WayTopSlide  Way = "swing the top slide to 5.74°: 0.1 along feeds 0.01 across"
	WayIndicator Way = "put a dial indicator on the slide"
	WayGauge     Way = "ream it, or fit it to a gauge or its mate"
	WayLap       Way = "leave a little and file or lap it to size"
)

// Promise tells whether a dial can keep a tolerance of that width: it must be
// two graduations wide at least, and wider than the backlash where the screw is
// not always turned the same way to its setting (trade rule C-12).
func Promise(d Dial, k Kind, width units.Length, oneWay bool) (Verdict, error) {
	if err := d.Validate(); err != nil {
		return Verdict{}, err
	}
	if k.sense() == 0 || !(width >= 0) {
		return Verdict{}, errors.New("a promise needs a kind of size and a tolerance of 0 or more")
	}
	v := Verdict{Step: d.Step(k), Width: width, Rule: "C-12"}
	v.Promised = width.Round(nanometre) >= (2 * v.Step).Round(nanometre)
	if play := d.play(k); !oneWay && play > 0 && width <= play {
		v.Promised = false
	}
	if !v.Promised {
		v.Ways = waysFor(k)
	}
	return v, nil
}

// play is the backlash as a change of size.
func (d Dial) play(k Kind) units.Length {
	if d.Reads == ReadsIndicator {
		return 0
	}
	if k == Outside || k == Bore {
		return 2 * d.Backlash
	}
	return d.Backlash
}

func waysFor(k Kind) []Way {
	switch k {
	case Outside:
		return []Way{WayMeasure, WayTopSlide, WayIndicator, WayLap}
	case Bore:
		return []Way{WayMeasure, WayTopSlide, WayIndicator, WayGauge, WayLap}
	case Place:
		return []Way{WayIndicator, WayGauge}
	}
	return []Way{WayMeasure, WayIndicator, WayLap}
}

// Swing is the angle from the axis at which a slide's travel gives that part of
// it as in-feed: asin(part), for a part over 0 and under 1. 0.1 is 5.74 degrees
// (trade rule C-13).
func Swing(part float64) (units.Angle, error) {
	if !(part > 0 && part < 1) {
		return 0, errors.New("a swing gives a part of the travel over 0 and under 1, like 0.1")
	}
	return units.Radians(math.Asin(part)).Round(nanometre), nil
}
