// Package fit turns the words of a fit into limits and clearances.
//
// In flow: a nominal size and a class ("H7"), a pair ("H7/g6") or a purpose
// ("sliding"). Out flow: the limits of hole and shaft, and the least and most
// clearance, all in millimetres on diameter, with their source.
//
// What holds after: lower <= upper in every limit; least = lower hole - upper
// shaft and most = upper hole - lower shaft, negative where there is
// interference; a result of one class has one side and no clearance.
package fit

import (
	"fmt"
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// Side is a hole or a shaft with its limits.
type Side struct {
	units.Limits
	Class  string `json:"class"`
	Source string `json:"source"`
}

// Fit is what a class, a pair or a purpose comes to at one size.
type Fit struct {
	Nominal        units.Length  `json:"nominal_mm"`
	Hole           *Side         `json:"hole,omitempty"`
	Shaft          *Side         `json:"shaft,omitempty"`
	LeastClearance *units.Length `json:"least_clearance_mm,omitempty"` // only with both sides
	MostClearance  *units.Length `json:"most_clearance_mm,omitempty"`
	Purpose        string        `json:"purpose,omitempty"`
	Note           string        `json:"note,omitempty"`
	Source         string        `json:"source"`
}

// Kind says whether parts of a fit are always free, always tight, or either.
type Kind string

// The kinds of fit.
const (
	Clearance    Kind = "clearance"
	Transition   Kind = "transition"
	Interference Kind = "interference"
)

// Resolve reads spec as a pair of ISO 286 classes ("H7/g6"), one class ("H7",
// "g6") or a purpose of the table of usual fits ("sliding", "press").
// nominal is over 0 up to 250 mm.
func Resolve(nominal units.Length, spec string) (Fit, error) {
	spec = strings.TrimSpace(spec)
	switch {
	case strings.Contains(spec, "/") && units.CheckClass(strings.TrimSpace(spec[:strings.Index(spec, "/")])) == nil:
		return pair(nominal, spec)
	case units.CheckClass(spec) == nil:
		return single(nominal, spec)
	}
	choice, err := tables.FindFit(spec)
	if err != nil {
		return Fit{}, err
	}
	f, err := pair(nominal, choice.Hole+"/"+choice.Shaft)
	if err != nil {
		return Fit{}, err
	}
	f.Purpose, f.Note, f.Source = choice.Purpose, choice.Note, choice.Source+"; "+f.Source
	return f, nil
}

func single(nominal units.Length, class string) (Fit, error) {
	side, err := sideOf(nominal, class)
	if err != nil {
		return Fit{}, err
	}
	f := Fit{Nominal: nominal, Source: side.Source}
	if tables.IsHole(class) {
		f.Hole = side
	} else {
		f.Shaft = side
	}
	return f, nil
}

func pair(nominal units.Length, spec string) (Fit, error) {
	holeClass, shaftClass, err := tables.SplitFit(spec)
	if err != nil {
		return Fit{}, err
	}
	hole, err := sideOf(nominal, holeClass)
	if err != nil {
		return Fit{}, err
	}
	shaft, err := sideOf(nominal, shaftClass)
	if err != nil {
		return Fit{}, err
	}
	f := Fit{Nominal: nominal, Hole: hole, Shaft: shaft, Source: "ISO 286-1"}
	gap := Clearances(hole.Limits, shaft.Limits)
	f.LeastClearance, f.MostClearance = &gap.Low, &gap.High
	return f, nil
}

func sideOf(nominal units.Length, class string) (*Side, error) {
	d, err := tables.ISO286(class, nominal)
	if err != nil {
		return nil, err
	}
	return &Side{Limits: units.Around(nominal, d.Lower, d.Upper), Class: class, Source: d.Source}, nil
}

// Clearances are the least and the most clearance on diameter between any hole
// and any shaft within their limits; negative is interference.
func Clearances(hole, shaft units.Limits) units.Limits {
	return units.Around(0, hole.Low-shaft.High, hole.High-shaft.Low)
}

// KindOf classes a range of clearances.
func KindOf(clearance units.Limits) Kind {
	switch {
	case clearance.Low >= 0:
		return Clearance
	case clearance.High <= 0:
		return Interference
	}
	return Transition
}

// ShaftFor is the shaft to make for a hole of that measured size, so that the
// clearance stays within the fit's own.
func (f Fit) ShaftFor(hole units.Length) (units.Limits, error) {
	if f.LeastClearance == nil {
		return units.Limits{}, errOneSide
	}
	return units.Around(hole, -*f.MostClearance, -*f.LeastClearance), nil
}

// HoleFor is the hole to make for a shaft of that measured size.
func (f Fit) HoleFor(shaft units.Length) (units.Limits, error) {
	if f.LeastClearance == nil {
		return units.Limits{}, errOneSide
	}
	return units.Around(shaft, *f.LeastClearance, *f.MostClearance), nil
}

var errOneSide = fmt.Errorf("a single class makes no fit: write a pair like H7/g6")
