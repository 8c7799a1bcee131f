package dial

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
)

// Reads says what the figures of a dial count. The empty value is not valid.
type Reads string

// The kinds of reading (trade rule C-09). An indicator or a scale on the slide
// reads true travel, and has no turns and no backlash.
const (
	ReadsRadius    Reads = "radius"
	ReadsDiameter  Reads = "diameter"
	ReadsIndicator Reads = "indicator"
)

// Dial is a graduated ring on a screw, or an indicator on a slide.
type Dial struct {
	Name       string
	Graduation units.Length // one graduation, as the dial reads it
	PerTurn    units.Length // one turn, as the dial reads it; 0 for an indicator
	Reads      Reads
	Backlash   units.Length // play of the screw in its nut, as slide travel; 0 where not known
}

const (
	// maxPerTurn and maxTotal bound what is believed: no ring has more
	// graduations, and no slide a longer travel.
	maxPerTurn = 1000
	maxTotal   = 1_000_000
	// snap is how near, in graduations, a size must lie to a graduation to be on
	// it: float64 sums of sizes in millimetres stay far nearer, and no hand can
	// set a millionth of a graduation.
	snap = 1e-6
	// nanometre is the number of decimals to which sizes are rounded.
	nanometre = 6
)

// Validate says what is wrong with a dial.
func (d Dial) Validate() error {
	if d.Reads != ReadsRadius && d.Reads != ReadsDiameter && d.Reads != ReadsIndicator {
		return fmt.Errorf("a dial reads radius, diameter or indicator, not %q", d.Reads)
	}
	if !(d.Graduation > 0 && d.Graduation <= units.MaxLength) || !(d.Backlash >= 0 && d.Backlash <= units.MaxLength) {
		return fmt.Errorf("a dial needs a graduation above 0, like 0.02, and a backlash of 0 or more")
	}
	if d.PerTurn == 0 && d.Reads == ReadsIndicator {
		return nil
	}
	marks := float64(d.PerTurn / d.Graduation)
	if !(marks >= 1-snap && marks <= maxPerTurn) || math.Abs(marks-math.Round(marks)) > snap {
		return fmt.Errorf("one turn of %s is not a whole number of graduations of %s: write per_turn as a multiple of graduation", d.PerTurn, d.Graduation)
	}
	return nil
}

// Marks is the number of graduations in a turn; 0 for an indicator.
func (d Dial) Marks() int { return int(math.Round(float64(d.PerTurn / d.Graduation))) }

// Unit is the unit in which the dial counts: inches where its graduation is a
// whole number of tenths of a thou and not of micrometres.
func (d Dial) Unit() units.Unit {
	whole := func(x float64) bool { return math.Abs(x-math.Round(x)) < snap }
	if whole(float64(d.Graduation/units.Thou)*10) && !whole(float64(d.Graduation)*1000) {
		return units.InInch
	}
	return units.InMM
}

// BackOff is how far to go back, in graduations, before coming up to a setting
// again: a full turn, or three times the backlash if that is more (trade rule
// C-08).
func (d Dial) BackOff() int {
	play := d.Backlash
	if d.Reads == ReadsDiameter {
		play *= 2
	}
	return max(d.Marks(), int(math.Ceil(float64(3*play/d.Graduation)-snap)))
}

// Kind is what a travel makes. The empty value is not valid.
type Kind string

// The kinds of size. Outside and Bore are diameters; the others are straight
// travel, counted in the direction of the cut.
const (
	Outside Kind = "outside" // a diameter that shrinks as the tool goes in
	Bore    Kind = "bore"    // a diameter that grows
	Depth   Kind = "depth"   // from a face, grows
	Length  Kind = "length"  // between a datum and the face being cut, shrinks
	Place   Kind = "place"   // of a hole: no metal side, either direction
)

// perSize is the reading for a change of 1 in size.
func (d Dial) perSize(k Kind) float64 {
	onDiameter := k == Outside || k == Bore
	switch {
	case onDiameter && d.Reads != ReadsDiameter:
		return 0.5
	case !onDiameter && d.Reads == ReadsDiameter:
		return 2
	}
	return 1
}

// sense is +1 where the size grows with the reading, -1 where it shrinks, and 0
// for a bad kind.
func (k Kind) sense() float64 {
	switch k {
	case Bore, Depth, Place:
		return 1
	case Outside, Length:
		return -1
	}
	return 0
}

// Step is the change of size for one graduation.
func (d Dial) Step(k Kind) units.Length {
	return (d.Graduation / units.Length(d.perSize(k))).Round(nanometre)
}
