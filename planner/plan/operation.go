package plan

// Operation is one thing done with one tool.
type Operation struct {
	ID          string       `json:"id"`      // "bore.main/ream"
	Number      int          `json:"number"`  // 10, 20, ... through the part
	Feature     string       `json:"feature"` // feature name; "face.left", "face.right", "part" for ends and parting
	Process     Process      `json:"process"`
	Title       string       `json:"title"` // "Ream the bore main to Ø8 H7"
	Tool        ToolRef      `json:"tool"`
	RPM         float64      `json:"rpm"` // a step of this machine
	WantedRPM   float64      `json:"wanted_rpm"`
	SpeedWhy    string       `json:"speed_why"` // which cap ruled
	FeedMM      float64      `json:"feed_mm"`   // per revolution; 0 = by hand
	Passes      int          `json:"passes"`
	DepthMM     float64      `json:"depth_mm"`      // most depth of one pass, radial or axial
	ForceN      float64      `json:"force_n"`       // main cutting force that the grip was judged by
	TopSlideDeg float64      `json:"top_slide_deg"` // set-over of the top slide from the axis; 0 = along it
	Zeros       []Zero       `json:"zeros"`
	Cuts        []Cut        `json:"cuts"`
	Card        []Line       `json:"card"`
	Steps       *StepTable   `json:"steps,omitempty"`  // of a curve that is stepped and filed
	Holes       []HoleLine   `json:"holes,omitempty"`  // of a pattern, one line a hole
	Chords      []ChordCheck `json:"chords,omitempty"` // to measure over
	Edges       []EdgeLeft   `json:"edges,omitempty"`  // sawn or filed: what is left on each edge of the outline
	Checks      []Check      `json:"checks"`
	Notes       []string     `json:"notes"`
	Why         []Reason     `json:"why"`
	Minutes     float64      `json:"minutes"`
}

// Process is the kind of work an operation does.
type Process string

// The processes. What metal each takes away is known to the planner's shape and, separately, to the replay.
const (
	Face        Process = "face"
	Spot        Process = "spot"
	Drill       Process = "drill"
	BoreOut     Process = "bore"
	Ream        Process = "ream"
	TurnRough   Process = "turn_rough"
	TurnFinish  Process = "turn_finish"
	Groove      Process = "groove"
	Recess      Process = "recess"
	Chamfer     Process = "chamfer"
	Fillet      Process = "fillet"
	TaperTurn   Process = "taper"
	Steps       Process = "steps"
	FileProfile Process = "file"
	Thread      Process = "thread" // single point
	Tap         Process = "tap"
	Die         Process = "die"
	Knurl       Process = "knurl"
	PartOff     Process = "part_off"
	SawOff      Process = "saw_off"
	Deburr      Process = "deburr"

	// On a mill, a drilling machine or at the bench.
	Saw         Process = "saw"         // a blank, or near an outline
	MarkOut     Process = "mark_out"    // lines and punch marks
	MillFace    Process = "mill_face"   // front or back
	MillEdge    Process = "mill_edge"   // an edge of an outline
	FileEdge    Process = "file_edge"   // to a line or a template
	BoreHead    Process = "bore_head"   // a hole by a boring head, or a seat swung by one
	SawHole     Process = "saw_hole"    // by a hole saw
	Counterbore Process = "counterbore" // piloted, in a hole's mouth
	Countersink Process = "countersink"
	SeatSteps   Process = "seat_steps" // a seat in steps
	FileSeat    Process = "file_seat"
	MillFlat    Process = "mill_flat"
	MillSlot    Process = "mill_slot"
)

// ToolRef names a tool of the workshop, with the size taken from a set.
type ToolRef struct {
	ID     string  `json:"id"`      // partspec.Tool.ID(); empty for hand work
	Text   string  `json:"text"`    // "6.8 mm drill"
	SizeMM float64 `json:"size_mm"` // drill, reamer or centre drill: diameter
}

// Zero is where a dial is set to nought.
type Zero struct {
	Dial string `json:"dial"` // "cross", "top", "saddle", "tailstock"; on a mill "x", "y", "quill" or "z"
	// ReferenceMM is the place that reads nought: a diameter for the cross slide, a position Z for saddle and tailstock, 0 for the top slide.
	ReferenceMM float64 `json:"reference_mm"`
	// Outward is true when the cross dial's count grows away from the axis (boring); else it grows towards the axis. Saddle and
	// tailstock count towards the headstock.
	Outward bool   `json:"outward"`
	How     string `json:"how"` // "touch the turned face"
	// WoundBack is how many whole turns a dial of a mill's table is wound back from where it touched before it is called nought there: every count is then
	// a positive one, come to from the same side. ReferenceMM is the place after winding back.
	WoundBack int64 `json:"wound_back,omitempty"`
}

// Reading is a place on a dial as a whole number of graduations from its zero, always approached in the same direction.
type Reading struct {
	Dial        string `json:"dial"`
	Graduations int64  `json:"graduations"`
}

// Cut is one movement of the tool under metal: from one set of readings to another, in a straight line. It is what the replay
// rebuilds the removed metal from. The moving dial appears in both From and To with different counts.
type Cut struct {
	Name string    `json:"name"` // "rough 1", "last but one", "finish"
	From []Reading `json:"from"`
	To   []Reading `json:"to"`
	// ToMeasure marks a place that no dial can promise: the tool is set by measuring, and the size ends between Low and High.
	ToMeasure  *Measured `json:"to_measure,omitempty"`
	ToolSizeMM float64   `json:"tool_size_mm,omitempty"` // this cut's own drill of a chain
	ToolID     string    `json:"tool_id,omitempty"`      // this cut's own tool, when it differs from the operation's
	At         *Place    `json:"at,omitempty"`           // on a mill or drill: where the spindle stands, when not by dials
	Along      *Along    `json:"along,omitempty"`        // on a mill: past an edge that lies askew in the part and along the table
}

// Along is a pass of a cutter past a straight edge of the outline, from beyond its beginning to beyond its end, as the outline runs.
type Along struct {
	EdgeLeft
	BeforeMM float64 `json:"before_mm"` // how far before the edge's beginning the cutter's axis starts
	BeyondMM float64 `json:"beyond_mm"` // and how far beyond its end it stops
}

// Place is where a spindle is put over the work by something other than dials.
type Place struct {
	XMM      float64 `json:"x_mm"` // in the part's frame (in an across pose: Z and side)
	YMM      float64 `json:"y_mm"`
	By       string  `json:"by"`        // "punch mark", "scribed line", "hole" (that is there already), "mate"
	WithinMM float64 `json:"within_mm"` // how far it may lie from there, radially
}

// Measured is a size reached by measuring and creeping.
type Measured struct {
	What   string  `json:"what"` // "diameter" (cross slide) or "position" (saddle, as Z) or "length"
	LowMM  float64 `json:"low_mm"`
	HighMM float64 `json:"high_mm"`
}

// Line is one line of a dial card: one labelled number.
type Line struct {
	Label     string `json:"label"` // "rough 1"
	Dial      string `json:"dial"`
	Turns     int64  `json:"turns"`
	Marks     int64  `json:"marks"`          // graduations past the whole turns
	Total     int64  `json:"total"`          // graduations from zero in all
	Counted   bool   `json:"counted"`        // false: no turns are counted on this dial (Turns is 0 and Marks the whole)
	Reads     string `json:"reads"`          // what one graduation means: "diameter", "radius", "travel"
	Reading   string `json:"reading"`        // the dial's own figure, with its unit: "3.46 mm"
	Makes     string `json:"makes"`          // what the work then is: "Ø24.52 (0.965 in)"
	Note      string `json:"note,omitempty"` // "measure", "set the dial to nought here"
	ByMeasure bool   `json:"by_measure"`     // the figure is a guide; the last movement is by measuring
}

// Check is a measurement with its limits and consequences.
type Check struct {
	What       string  `json:"what"` // "bore main, diameter"
	Feature    string  `json:"feature"`
	LowMM      float64 `json:"low_mm"`
	HighMM     float64 `json:"high_mm"`
	Limits     string  `json:"limits"`     // as text, in the drawing's unit first
	Instrument string  `json:"instrument"` // name in the workshop; empty: by mate or gauge
	When       string  `json:"when"`       // "before the last two cuts", "before release"
	IfLarge    string  `json:"if_large"`
	IfSmall    string  `json:"if_small"`
	Doubt      string  `json:"doubt,omitempty"` // "measure three times": the instrument is coarse for these limits
}
