package partspec

import (
	"fmt"
	"math"
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"catchplate/partspec/units"
)

// spindle is what every machine with a spindle may say.
var spindle = shapeOf{
	attrs: []attr{
		may("power_kw", kindNumber), may("speeds", kindNumbers), may("slowest_speed", kindNumber), may("fastest_speed", kindNumber),
	},
	blocks: []string{"dial"},
}

var machineShapes = map[string]shapeOf{
	string(Lathe): spindle.with(
		may("swing", kindLength), may("between_centres", kindLength), may("spindle_bore", kindLength),
		may("leadscrew_pitch", kindLength), may("change_wheels", kindNumbers)),
	string(Drill): spindle,
	string(Mill):  spindle,
	string(Bench): {},
}

// MachineKinds lists every kind of machine.
func MachineKinds() []MachineKind { return []MachineKind{Lathe, Drill, Mill, Bench} }

func (c *checker) machine(b *hclsyntax.Block, inches bool) (Machine, bool) {
	e, name := c.thing(b, inches, machineShapes, words(MachineKinds()))
	m := Machine{
		Kind: MachineKind(e.name), Name: name, Range: e.head(),
		Swing: e.length("swing"), BetweenCentres: e.length("between_centres"), SpindleBore: e.length("spindle_bore"),
		PowerKW: e.number("power_kw"), LeadscrewPitch: e.length("leadscrew_pitch"),
		Speeds: c.speeds(e), SlowestSpeed: units.Speed(e.number("slowest_speed")), FastestSpeed: units.Speed(e.number("fastest_speed")),
		ChangeWheels: c.wheels(e),
	}
	c.checkSpeeds(e, m)
	for _, d := range b.Body.Blocks {
		if d.Type != "dial" || m.Kind == Bench || m.Kind == "" {
			continue // told already
		}
		dial, ok := c.dial(d, m.Kind, inches)
		if _, taken := m.Dial(dial.Name); ok && taken {
			c.fail(e, d.DefRange(), "Two dials of one name", "Give one another name.")
		} else if ok {
			m.Dials = append(m.Dials, dial)
		}
	}
	return m, !e.broken
}

func (c *checker) speeds(e *entry) []units.Speed {
	var speeds []units.Speed
	for _, s := range e.numbers("speeds") {
		speeds = append(speeds, units.Speed(s))
	}
	slices.Sort(speeds)
	return slices.Compact(speeds)
}

// checkSpeeds: either the steps or the ends of a range are written; a lathe, a
// drill or a mill has some.
func (c *checker) checkSpeeds(e *entry, m Machine) {
	if m.Kind == Bench || e.broken {
		return
	}
	stepless := e.has("slowest_speed") || e.has("fastest_speed")
	switch {
	case e.has("speeds") && stepless:
		c.fail(e, e.at("speeds"), "Speeds are told twice", "Write the steps, or slowest_speed and fastest_speed, not both.")
	case e.has("speeds") && (len(m.Speeds) == 0 || m.Speeds[0] <= 0):
		c.fail(e, e.at("speeds"), "A speed is not above 0",
			"Write the steps in revolutions a minute, like speeds = [100, 250, 630].")
	case stepless && !(0 < m.SlowestSpeed && m.SlowestSpeed < m.FastestSpeed):
		c.fail(e, e.head(), "The range of speeds has no end", "Write both slowest_speed and fastest_speed, the first one lower.")
	case !e.has("speeds") && !stepless:
		c.fail(e, e.head(), e.title()+" has no speeds", "Write speeds = [100, 250, 630], or slowest_speed and fastest_speed.")
	}
}

func (c *checker) wheels(e *entry) []int {
	var wheels []int
	for _, n := range e.numbers("change_wheels") {
		const most = 1000
		if n != float64(int(n)) || n < 1 || n > most {
			c.fail(e, e.at("change_wheels"), "A change wheel has a whole number of teeth",
				"Write the teeth of each wheel, like change_wheels = [20, 30, 127].")
			return nil
		}
		wheels = append(wheels, int(n))
	}
	slices.Sort(wheels)
	return wheels // two of one size are two wheels
}

var dialShape = shapeOf{attrs: []attr{
	need("graduation", kindLength), may("per_turn", kindLength), may("reads", kindWord), may("backlash", kindPosition),
	may("travel", kindLength), may("note", kindText),
}}

// dialNames are the slides that the dials of each kind of machine belong to.
var dialNames = map[MachineKind][]string{
	Lathe: {"cross", "top", "saddle", "tailstock"},
	Mill:  {"x", "y", "quill", "z"},
	Drill: {"quill", "x", "y"},
}

func (c *checker) dial(b *hclsyntax.Block, of MachineKind, inches bool) (Dial, bool) {
	e := c.enter(b, "", inches, dialShape, nameLabel)
	c.evaluateEntry(e)
	if e.broken {
		return Dial{}, false
	}
	if !slices.Contains(dialNames[of], e.name) {
		c.fail(e, b.LabelRanges[0], fmt.Sprintf("A %s has no dial %q", of, e.name), "%s", orList(e.name, dialNames[of]))
	}
	d := Dial{
		Name: e.name, Graduation: e.dimension("graduation"), PerTurn: e.dimension("per_turn"),
		Reads: Reads(e.text("reads")), Backlash: e.length("backlash"), Travel: e.length("travel"), Range: e.head(),
	}
	if d.Reads == "" {
		d.Reads = ReadsTravel
		if d.Name == "cross" {
			c.fail(e, e.head(), "The cross slide's dial lacks reads",
				`Write reads = "radius" if one turn moves the slide by one turn's figure, reads = "diameter" if it takes that off the diameter, or "indicator".`)
		}
	}
	c.checkDial(e, d)
	return d, !e.broken
}

func (c *checker) checkDial(e *entry, d Dial) {
	kinds := []string{string(ReadsTravel), string(ReadsRadius), string(ReadsDiameter), string(ReadsIndicator)}
	if !slices.Contains(kinds, string(d.Reads)) {
		c.fail(e, e.at("reads"), "A dial cannot read \""+string(d.Reads)+"\"", "%s", orList(string(d.Reads), kinds))
	}
	if d.Backlash < 0 {
		c.fail(e, e.at("backlash"), "backlash is negative", "Write 0 or more.")
	}
	if d.Reads != ReadsIndicator && !e.has("per_turn") {
		c.fail(e, e.head(), e.title()+" lacks per_turn", "Write what one turn is on the dial, like per_turn = 1.")
		return
	}
	if d.PerTurn.Value == 0 {
		return
	}
	lines := float64(d.PerTurn.Value / d.Graduation.Value)
	const wholeWithin = 1e-6 // lines, far more than the rounding of inch figures
	if whole := math.Round(lines); whole < 1 || math.Abs(lines-whole) > wholeWithin {
		c.fail(e, e.at("graduation"), "A turn is not a whole number of graduations",
			"per_turn %s holds %.2f graduations of %s; write both as they are marked on the dial.",
			d.PerTurn.Value, lines, d.Graduation.Value)
	}
}

// words turns typed names into plain ones.
func words[T ~string](list []T) []string {
	plain := make([]string, len(list))
	for i, w := range list {
		plain[i] = string(w)
	}
	return plain
}
