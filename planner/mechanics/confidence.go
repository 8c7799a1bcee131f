package mechanics

import (
	"fmt"
	"math"
)

// Trust says how far a figure may be relied on. The zero value is invalid.
type Trust string

const (
	// TrustGood: inside the range where the formula was checked; the band applies.
	TrustGood Trust = "good"
	// TrustRough: a bound or an estimate from outside that range; good for ranking and for caution.
	TrustRough Trust = "rough"
	// TrustNone: no trustworthy figure. The number must not be shown without the reason.
	TrustNone Trust = "none"
)

// Confidence goes with every result: how sure, within how many per cent, and why.
type Confidence struct {
	Trust       Trust
	BandPercent float64 // the true value is expected within plus or minus this share; 0 with TrustNone
	Why         string  // domain and error in words, ready for the sheet
}

func good(bandPercent float64, why string) Confidence {
	return Confidence{TrustGood, bandPercent, why}
}

func rough(bandPercent float64, why string) Confidence {
	return Confidence{TrustRough, bandPercent, why}
}

func none(why string) Confidence {
	return Confidence{TrustNone, 0, why}
}

// unsettled is the answer to dimensions so far apart that the arithmetic loses them.
var unsettled = none("the computation does not settle for dimensions so far apart")

// InputError tells which argument is out of range and what was expected instead.
type InputError struct {
	Name     string  // the argument, with its unit
	Value    float64 // what was given
	Expected string  // what would do
}

func (e *InputError) Error() string {
	return fmt.Sprintf("%s is %g: expected %s", e.Name, e.Value, e.Expected)
}

// A limit is one condition on one argument.
type limit struct {
	name     string
	value    float64
	ok       bool
	expected string
}

// firstFault returns an error for the first condition that does not hold. An infinite or missing number never passes.
func firstFault(limits ...limit) error {
	for _, l := range limits {
		if !l.ok || !finite(l.value) {
			return &InputError{l.name, l.value, l.expected}
		}
	}
	return nil
}

// Numbers beyond these are slips of the pen, and would overflow or drown in rounding further on.
const (
	leastNumber = 1e-9
	mostNumber  = 1e12
)

func positive(name string, v float64) limit {
	return limit{name, v, v >= leastNumber && v <= mostNumber, "a number above 0"}
}

func notNegative(name string, v float64) limit {
	return limit{name, v, v >= 0 && v <= mostNumber, "0 or more"}
}

func within(name string, v, low, high float64) limit {
	l := limit{name: name, value: v, ok: v >= low && v <= high}
	if !l.ok { // put into words only where it is told
		l.expected = fmt.Sprintf("a number from %g to %g", low, high)
	}
	return l
}

// finite says that a computation stayed within the numbers.
func finite(list ...float64) bool {
	for _, v := range list {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
