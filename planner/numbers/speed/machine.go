package speed

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec/units"
)

// Machine is what speeds a spindle has: a list of steps, or with no steps any
// speed from Low to High.
type Machine struct {
	Steps     []units.Speed
	Low, High units.Speed
}

// aboveWanted is how far above the wanted speed a step may lie (trade rule C-01).
const aboveWanted = 1.05

// Cap is a speed that must not be passed, with what sets it.
type Cap struct {
	What   string      `json:"what"`
	RPM    units.Speed `json:"rpm"`
	Rule   string      `json:"rule"`
	Source string      `json:"source"`
}

// Choice is the speed to set, and why it is that one.
type Choice struct {
	Want
	Speed    units.Speed `json:"rpm"`
	Surface  float64     `json:"surface_m_per_min"` // at the chosen speed
	RuledBy  string      `json:"ruled_by"`          // "tool and material", or the cap that ruled
	CapRule  string      `json:"cap_rule,omitempty"`
	TooFast  bool        `json:"too_fast"` // even the lowest speed is over the wanted one or a cap
	Variable bool        `json:"variable"` // the machine has a range, not steps
}

// Choose takes the lowest of the wanted speed and the caps down to a speed of
// the machine (trade rules C-01, C-02). A step may lie up to 5 % above the
// wanted speed, never above a cap. Where even the lowest speed is over, it is
// chosen and TooFast is set: reduce the diameter, take carbide, or say so.
func Choose(w Want, diameter units.Length, machine Machine, caps ...Cap) (Choice, error) {
	if err := machine.validate(); err != nil {
		return Choice{}, err
	}
	c := Choice{Want: w, RuledBy: "tool and material", Variable: len(machine.Steps) == 0}
	ceiling := w.RPM * aboveWanted
	lowest := w.RPM
	for _, one := range caps {
		if !(one.RPM > 0) {
			return Choice{}, fmt.Errorf("the cap %q of %g rev/min is not above 0", one.What, float64(one.RPM))
		}
		ceiling = min(ceiling, one.RPM)
		if one.RPM < lowest {
			lowest, c.RuledBy, c.CapRule = one.RPM, one.What, one.Rule
		}
	}
	if top := machine.top(); top < lowest {
		c.RuledBy, c.CapRule = "the machine's highest speed", "C-02"
	}
	c.Speed, c.TooFast = machine.under(lowest, ceiling)
	c.Surface = rounded(Surface(diameter, c.Speed), 1)
	return c, nil
}

func (m Machine) validate() error {
	for _, s := range m.Steps {
		if !(s > 0) || math.IsInf(float64(s), 0) {
			return fmt.Errorf("a spindle speed of %g rev/min is not above 0", float64(s))
		}
	}
	if len(m.Steps) == 0 && !(m.Low > 0 && m.Low <= m.High && !math.IsInf(float64(m.High), 0)) {
		return fmt.Errorf("a machine needs a list of speeds, or a range with both ends above 0, not %g to %g rev/min", float64(m.Low), float64(m.High))
	}
	return nil
}

func (m Machine) top() units.Speed {
	if len(m.Steps) > 0 {
		return slices.Max(m.Steps)
	}
	return m.High
}

// under is the machine's speed for a wanted one: of steps the highest not above
// the ceiling; of a range the wanted speed in round tens. tooFast tells that
// the machine cannot go so slowly.
func (m Machine) under(wanted, ceiling units.Speed) (chosen units.Speed, tooFast bool) {
	if len(m.Steps) == 0 {
		round := min(wanted, m.High)
		if tens := units.Speed(math.Floor(float64(round)/10) * 10); tens >= m.Low {
			round = tens
		}
		return max(round, m.Low), m.Low > ceiling
	}
	lowest := slices.Min(m.Steps)
	for _, s := range m.Steps {
		if s <= ceiling && s > chosen {
			chosen = s
		}
	}
	if chosen == 0 {
		return lowest, true
	}
	return chosen, false
}
