package partspec

import "catchplate/partspec/units"

// Workshop is what the person owns. Lists keep file order; names are unique within a list.
type Workshop struct {
	Name        string
	BuiltIn     bool // no file gave a workshop: the built-in one serves, and the sheet says so
	Machines    []Machine
	Holdings    []Holding
	Tools       []Tool
	Instruments []Instrument
	Range       Range
}

// MachineKind is one of the words a machine block may carry.
type MachineKind string

const (
	Lathe MachineKind = "lathe"
	Drill MachineKind = "drill"
	Mill  MachineKind = "mill"
	Bench MachineKind = "bench"
)

// Machine is a machine with its speeds and dials. Zero capacities mean "not given": no limit is then checked, and the sheet says so.
type Machine struct {
	Kind           MachineKind
	Name           string
	Swing          units.Length // diameter over the bed
	BetweenCentres units.Length
	SpindleBore    units.Length
	PowerKW        float64
	Speeds         []units.Speed // ascending; empty when the range is stepless
	SlowestSpeed   units.Speed   // of a stepless drive
	FastestSpeed   units.Speed
	LeadscrewPitch units.Length // 0 = no leadscrew: threads are cut with taps and dies only
	ChangeWheels   []int        // teeth
	Dials          []Dial
	Range          Range
}

// Dial finds a dial by name.
func (m Machine) Dial(name string) (Dial, bool) {
	for _, d := range m.Dials {
		if d.Name == name {
			return d, true
		}
	}
	return Dial{}, false
}

// Reads is what one graduation of a dial means.
type Reads string

const (
	ReadsTravel    Reads = "travel"    // the slide's own travel (top slide, saddle, tailstock)
	ReadsRadius    Reads = "radius"    // cross slide: travel, so radius
	ReadsDiameter  Reads = "diameter"  // cross slide: twice the travel
	ReadsIndicator Reads = "indicator" // a dial indicator on the slide: travel, free of backlash
)

// Dial is a graduated collar. Graduation and PerTurn are as marked on the dial (so on a diameter dial, in diameter).
type Dial struct {
	Name       string // "cross", "top", "saddle", "tailstock"; on a mill "x", "y" and "quill" or "z"; of a vertical slide "slide"
	Graduation units.Dimension
	PerTurn    units.Dimension // 0 = no turns are counted (indicator)
	Reads      Reads
	Backlash   units.Length
	Travel     units.Length // 0 = not given
	Range      Range
}

// HoldingKind is one of the words a holding block may carry.
type HoldingKind string

const (
	ThreeJaw         HoldingKind = "three_jaw"
	FourJaw          HoldingKind = "four_jaw"
	Collets          HoldingKind = "collets"
	SoftJaws         HoldingKind = "soft_jaws"
	StubMandrel      HoldingKind = "stub_mandrel"
	PlainMandrel     HoldingKind = "plain_mandrel"
	ExpandingMandrel HoldingKind = "expanding_mandrel"
	GluedArbor       HoldingKind = "glued_arbor"
	BetweenCentres   HoldingKind = "between_centres"
	Tailstock        HoldingKind = "tailstock"
	Plug             HoldingKind = "plug"
	Faceplate        HoldingKind = "faceplate"
	AnglePlate       HoldingKind = "angle_plate"
	Vice             HoldingKind = "vice"
	TableClamps      HoldingKind = "table_clamps"
	VerticalSlide    HoldingKind = "vertical_slide"
	VeeBlock         HoldingKind = "vee_block"
	DividingHead     HoldingKind = "dividing_head"
	TiltingPlate     HoldingKind = "tilting_plate"
)

// HoldingKinds lists every kind in the order the language document tells them.
func HoldingKinds() []HoldingKind {
	return []HoldingKind{ThreeJaw, FourJaw, Collets, SoftJaws, StubMandrel, PlainMandrel, ExpandingMandrel, GluedArbor, BetweenCentres, Tailstock, Plug,
		Faceplate, AnglePlate, Vice, TableClamps, VerticalSlide, VeeBlock, DividingHead, TiltingPlate}
}

// Holding is a way of holding work that the workshop owns. Zero fields mean "not given": the table's or rule's default serves.
type Holding struct {
	Kind           HoldingKind
	Name           string
	Smallest       units.Length // capacity, outside gripping (a mandrel: bore)
	Largest        units.Length
	InsideSmallest units.Length // gripping from inside; 0 = it cannot
	InsideLargest  units.Length
	Sizes          []units.Length // collets, plain mandrels owned
	SizeRange      units.Length   // how far under its size a collet closes
	Jaws           int
	JawWidth       units.Length
	JawLength      units.Length // along the axis: the longest grip
	GripLength     units.Length // collet: gripping length of its bore
	RunOut         units.Length // full indicator reading
	GripLight      units.Force  // a jaw, lightest nip
	GripFirm       units.Force  // a jaw, firm pull on the key
	MostSpeed      units.Speed
	Diameter       units.Length // faceplate
	Opening        units.Length // vice: widest; vertical slide: of its vice
	JawHeight      units.Length // vice: how deep work can sit
	Clamps         int          // faceplate, table: how many are owned
	ClampForce     units.Force  // that one clamp presses with, tightened by hand
	ToeWidth       units.Length // of a clamp
	Squareness     units.Length // out of square over 100 mm: vice, angle plate
	Width          units.Length // angle plate: of its ledge, across the spindle
	Reach          units.Length // angle plate: of its ledge, out from the plate that it is bolted to
	Leg            units.Length // angle plate: of the leg that is bolted on
	Thickness      units.Length // angle plate: of both legs
	Ratio          int          // dividing head: turns of its crank for one of the work; 0 = it has only direct plates
	Plates         []int        // dividing head: holes of each circle on the plates owned, ascending
	Direct         []int        // dividing head: notches of each plate on its spindle, ascending
	Height         units.Length // dividing head: of its axis over the table
	Upright        bool         // dividing head: it also stands with its axis along the mill's spindle
	SineLength     units.Length // tilting plate: from its hinge to where the packing stands
	TiltsTo        units.Angle  // tilting plate: the most that it can be set over
	Dial           Dial         // vertical slide: on its screw; no name on all others
	SetupMinutes   units.Minutes
	Range          Range
}

// SlideDial is the name of a vertical slide's dial.
const SlideDial = "slide"

// ToolKind is one of the words a tool block may carry.
type ToolKind string

const (
	CentreDrill    ToolKind = "centre_drill"
	Drills         ToolKind = "drills"
	Reamers        ToolKind = "reamers"
	Turning        ToolKind = "turning"
	Boring         ToolKind = "boring"
	RecessTool     ToolKind = "recess"
	Parting        ToolKind = "parting"
	Grooving       ToolKind = "grooving"
	RoundNose      ToolKind = "round_nose"
	ChamferTool    ToolKind = "chamfer"
	ThreadExternal ToolKind = "thread_external"
	ThreadInternal ToolKind = "thread_internal"
	Taps           ToolKind = "taps"
	Dies           ToolKind = "dies"
	KnurlTool      ToolKind = "knurl"
	Saw            ToolKind = "saw"
	Files          ToolKind = "files"
	EndMill        ToolKind = "end_mill"
	BallNose       ToolKind = "ball_nose" // round-nosed milling cutter
	FlyCutter      ToolKind = "fly_cutter"
	BoringHead     ToolKind = "boring_head"
	HoleSaw        ToolKind = "hole_saw"
	Counterbores   ToolKind = "counterbores" // piloted
	Countersink    ToolKind = "countersink"
	EdgeFinder     ToolKind = "edge_finder"
	Scriber        ToolKind = "scriber" // dividers, scriber, square and centre punch
)

// Tool is a cutting tool or a set of them. Which fields are used depends on the kind; the rest are zero.
type Tool struct {
	Kind        ToolKind
	Name        string
	Carbide     bool           // else high-speed steel
	Sizes       []units.Length // centre_drill, drills, reamers, end_mill, ball_nose, hole_saw, counterbores, countersink: diameters, ascending
	Threads     []string       // taps, dies: designations known to tables.Thread
	Hand        string         // turning: "right" cuts towards the headstock, "left" away from it
	NoseRadius  units.Length   // turning, boring
	Radius      units.Length   // round_nose
	Width       units.Length   // parting, grooving, recess
	Depth       units.Length   // recess, hole_saw: how deep it can cut
	Reach       units.Length   // boring, recess, thread_internal: into the bore; parting, grooving, round_nose: from the surface
	BarDiameter units.Length   // boring
	LeastBore   units.Length   // boring, recess, thread_internal: smallest hole it enters
	Angle       units.Angle    // chamfer
	LeastPitch  units.Length   // thread tools, knurl
	MostPitch   units.Length
	Pitches     []units.Length // knurl
	Kerf        units.Length   // saw, hole_saw
	Pilot       units.Length   // hole_saw: diameter of the drill in its middle
	Lead        units.Length   // hole_saw: how far that stands before the teeth
	LeastSwing  units.Length   // boring_head, fly_cutter: smallest and largest diameter swung
	MostSwing   units.Length
	Accuracy    units.Length // edge_finder, scriber: how far the place may lie from where it says
	Range       Range
}

// ID names the tool in a plan: "turning/right-hand knife tool".
func (t Tool) ID() string { return string(t.Kind) + "/" + t.Name }

// InstrumentKind is one of the words a measuring block may carry.
type InstrumentKind string

const (
	Rule            InstrumentKind = "rule"
	Caliper         InstrumentKind = "caliper"
	Micrometer      InstrumentKind = "micrometer"
	BoreGauge       InstrumentKind = "bore_gauge"
	PlugGauge       InstrumentKind = "plug_gauge"
	DepthMicrometer InstrumentKind = "depth_micrometer"
	DialIndicator   InstrumentKind = "dial_indicator"
)

// Instrument measures. Largest 0 = no limit given.
type Instrument struct {
	Kind              InstrumentKind
	Name              string
	Smallest, Largest units.Length
	Resolution        units.Length
	Range             Range
}
