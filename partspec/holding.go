package partspec

import (
	"math"
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"catchplate/partspec/units"
)

// always is what every holding may say.
var always = shapeOf{attrs: []attr{may("run_out", kindLength), may("most_speed", kindNumber), may("setup_minutes", kindNumber)}}

// jawed is what a chuck may say.
var jawed = always.with(
	may("capacity", kindLengths), may("inside", kindLengths), may("jaws", kindCount), may("jaw_width", kindLength),
	may("jaw_length", kindLength), may("grip_force", kindNumbers))

// sprung is what a holding that closes or opens a little may say.
var sprung = always.with(may("range", kindLength), may("grip_length", kindLength))

var holdingShapes = map[string]shapeOf{
	string(ThreeJaw):         jawed,
	string(FourJaw):          jawed,
	string(SoftJaws):         jawed,
	string(Collets):          sprung.with(need("sizes", kindLengths), may("grip_force", kindNumbers)),
	string(StubMandrel):      always.with(may("capacity", kindLengths)),
	string(PlainMandrel):     always.with(need("sizes", kindLengths)),
	string(ExpandingMandrel): sprung.with(may("capacity", kindLengths), may("sizes", kindLengths)),
	string(GluedArbor):       always.with(may("capacity", kindLengths)),
	string(BetweenCentres):   always.with(may("capacity", kindLengths)),
	string(Tailstock):        always,
	string(Plug):             always.with(may("capacity", kindLengths)),
	string(Faceplate):        clamped.with(need("diameter", kindLength)),
	string(AnglePlate):       clamped.with(may("squareness", kindLength), may("width", kindLength), may("reach", kindLength), may("leg", kindLength), may("thickness", kindLength)),
	string(Vice):             pinching.with(need("opening", kindLength)),
	string(TableClamps):      clamped,
	string(VerticalSlide):    pinching.with(need("opening", kindLength), need("graduation", kindLength), need("per_turn", kindLength), may("travel", kindLength), may("backlash", kindPosition)),
	string(VeeBlock):         always.with(may("capacity", kindLengths)),
	string(DividingHead):     jawed.with(need("height", kindLength), may("ratio", kindCount), may("plates", kindNumbers), may("direct", kindNumbers), may("upright", kindFlag)),
	string(TiltingPlate):     jawed.with(need("sine_length", kindLength), need("tilts_to", kindAngle)),
}

// clamped is what a holding may say that presses with straps.
var clamped = always.with(may("clamps", kindCount), may("clamp_force", kindNumber), may("toe_width", kindLength))

// pinching is what a vice may say.
var pinching = always.with(may("jaw_width", kindLength), may("jaw_height", kindLength), may("grip_force", kindNumbers), may("squareness", kindLength))

func (c *checker) holding(b *hclsyntax.Block, inches bool) (Holding, bool) {
	e, name := c.thing(b, inches, holdingShapes, words(HoldingKinds()))
	h := Holding{
		Kind: HoldingKind(e.name), Name: name, Range: e.head(),
		Sizes: c.ascending(e, "sizes"), SizeRange: e.length("range"), Jaws: int(e.number("jaws")),
		JawWidth: e.length("jaw_width"), JawLength: e.length("jaw_length"), GripLength: e.length("grip_length"),
		RunOut: e.length("run_out"), MostSpeed: units.Speed(e.number("most_speed")), SetupMinutes: units.Minutes(e.number("setup_minutes")),
		Diameter: e.length("diameter"), Opening: e.length("opening"), JawHeight: e.length("jaw_height"), Squareness: e.length("squareness"),
		Clamps: int(e.number("clamps")), ClampForce: units.Force(e.number("clamp_force")), ToeWidth: e.length("toe_width"),
		Width: e.length("width"), Reach: e.length("reach"), Leg: e.length("leg"), Thickness: e.length("thickness"),
	}
	h.Smallest, h.Largest = c.pair(e, "capacity")
	h.InsideSmallest, h.InsideLargest = c.pair(e, "inside")
	h.GripLight, h.GripFirm = c.gripForce(e)
	const mostClamps = 50
	if h.Clamps > mostClamps {
		c.fail(e, e.at("clamps"), "Nobody owns so many clamps", "At most %d are believed.", mostClamps)
	}
	if e.known("clamp_force") && h.ClampForce <= 0 {
		c.fail(e, e.at("clamp_force"), "A clamp presses with some force", "Write newtons on the work, like clamp_force = 3000.")
	}
	if e.known("jaws") && (h.Jaws < 2 || h.Jaws > 6) {
		c.fail(e, e.at("jaws"), "A chuck has 2 to 6 jaws", "Write jaws = 3 or jaws = 4.")
	}
	if h.Kind == VerticalSlide {
		h.Dial = Dial{Name: SlideDial, Graduation: e.dimension("graduation"), PerTurn: e.dimension("per_turn"), Reads: ReadsTravel, Backlash: e.length("backlash"), Travel: e.length("travel"), Range: e.head()}
		if !e.broken {
			c.checkDial(e, h.Dial)
		}
	}
	if h.Kind == DividingHead {
		c.divides(e, &h)
	}
	if h.Kind == TiltingPlate {
		c.tilts(e, &h)
	}
	return h, !e.broken
}

// mostTilt is the most, in degrees, that a plate is believed to be set over: packing under a steeper one slips. Common practice, no source.
const mostTilt = 60

// tilts reads how a tilting plate is set over.
func (c *checker) tilts(e *entry, h *Holding) {
	h.SineLength, h.TiltsTo = e.length("sine_length"), e.angle("tilts_to")
	if !e.broken && (h.TiltsTo <= 0 || h.TiltsTo > mostTilt) {
		c.fail(e, e.at("tilts_to"), "No packing sets a plate over so far", "Write the most that its hinge and its locks allow, up to %d degrees, like tilts_to = 45.", mostTilt)
	}
}

// The most that is believed of a dividing head: turns of its crank for one of the work, and holes on a circle of its plates.
const (
	mostRatio      = 400
	mostPlateHoles = 500
)

// divides reads what a dividing head counts by.
func (c *checker) divides(e *entry, h *Holding) {
	h.Ratio, h.Height, h.Upright = int(e.number("ratio")), e.length("height"), e.flag("upright")
	h.Plates, h.Direct = c.plateHoles(e, "plates"), c.plateHoles(e, "direct")
	switch {
	case e.broken:
	case h.Ratio > mostRatio:
		c.fail(e, e.at("ratio"), "No dividing head has such a ratio", "Write the turns of its crank for one turn of the work, like ratio = 40.")
	case (h.Ratio > 0) != (len(h.Plates) > 0):
		c.fail(e, e.head(), "A crank counts holes of a plate", "Write ratio and plates together, like ratio = 40 and plates = [15, 16, 17, 18, 19, 20].")
	case h.Ratio == 0 && len(h.Direct) == 0:
		c.fail(e, e.head(), "The dividing head has nothing to count by", "Write ratio = 40 and plates = [15, 16, 17, 18, 19, 20], or the notches of the plate on its spindle: direct = [24].")
	}
}

// plateHoles reads a list of holes on circles, or of notches.
func (c *checker) plateHoles(e *entry, name string) []int {
	var list []int
	for _, n := range e.numbers(name) {
		if n != math.Trunc(n) || n < 2 || n > mostPlateHoles {
			c.fail(e, e.at(name), "A circle has a whole number of holes", "Write from 2 to %d holes a circle, like %s = [24, 36].", mostPlateHoles, name)
			return nil
		}
		list = append(list, int(n))
	}
	slices.Sort(list)
	return slices.Compact(list)
}

func (c *checker) gripForce(e *entry) (light, firm units.Force) {
	list := e.numbers("grip_force")
	if len(list) == 0 {
		return 0, 0
	}
	if len(list) != 2 || list[0] <= 0 || list[0] > list[1] {
		c.fail(e, e.at("grip_force"), "grip_force is not a range",
			"Write newtons a jaw, a light nip and a firm pull on the key: grip_force = [150, 2500].")
		return 0, 0
	}
	return units.Force(list[0]), units.Force(list[1])
}
