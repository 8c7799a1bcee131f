// Package plan is the plan as data: what the planner writes, the replay proves and the sheets print.
//
// It is plain values only (no pointers into the job, no behaviour but look-ups), so that a plan is plain JSON. Lengths are
// millimetres, angles degrees, forces newtons, times minutes, unless a field's name says otherwise. Positions named Z run along the part's
// axis from its left end (0) to its right end (its length); positions named R are radii.
package plan

// Schema names the JSON form; it changes when a field changes its meaning or goes.
const Schema = "catchplate-plan-1"

// Plan is the answer to a job.
type Plan struct {
	Schema          string `json:"schema"`
	Workshop        string `json:"workshop"`
	BuiltInWorkshop bool   `json:"built_in_workshop"`
	Parts           []Part `json:"parts"`
	Rules           []Rule `json:"rules"` // heads of every rule the plan cites, by ID
}

// Rule finds the head of a rule that the plan cites.
func (p *Plan) Rule(id string) (Rule, bool) {
	for _, r := range p.Rules {
		if r.ID == id {
			return r, true
		}
	}
	return Rule{}, false
}

// Rule is the head of a rule: the trade's reason as data.
type Rule struct {
	ID     string `json:"id"`
	Class  string `json:"class"` // "order", "holding", "number", "caution"
	Title  string `json:"title"`
	Text   string `json:"text"` // IF ... THEN ...
	Why    string `json:"why"`
	Sure   string `json:"sure"`   // "standard", "published", "common practice", "opinion"
	Source string `json:"source"` // never empty; "common practice, no source" is an answer
	Except string `json:"except,omitempty"`
}

// Part is the plan of one part, or the reasons why there is none.
type Part struct {
	Name         string     `json:"name"`
	Note         string     `json:"note,omitempty"`
	Material     string     `json:"material"` // id in the table of materials
	MaterialName string     `json:"material_name"`
	Quantity     int        `json:"quantity"`
	DrawnInInch  bool       `json:"drawn_in_inch"`
	LengthMM     float64    `json:"length_mm"`
	Stock        Stock      `json:"stock"`
	MakeFirst    []Helper   `json:"make_first"`
	Mates        []Mate     `json:"mates,omitempty"` // what must be there before this part is begun
	Setups       []Setup    `json:"setups"`
	Order        Order      `json:"order"`
	Cautions     []Caution  `json:"cautions"`
	Rejected     []Rejected `json:"rejected"` // holdings that were judged and passed over, with figures
	Refusals     []Refusal  `json:"refusals"` // not empty: there is no plan, and Setups is empty
	Drawing      Drawing    `json:"drawing"`
	Proof        *Proof     `json:"proof"` // nil until the replay has proved the plan
	Minutes      float64    `json:"minutes"`
}

// Mate is a pattern of another part that one of this part is spotted through from: it is drilled first.
type Mate struct {
	Part    string `json:"part"`
	Feature string `json:"feature"` // pattern of that part
	For     string `json:"for"`     // pattern of this part
	Rule    string `json:"rule"`
	// Flush are the edges that hold the two parts true to each other; empty where a fit does. Over tells that the other part is then turned over.
	Flush []FlushEdge `json:"flush,omitempty"`
	Over  bool        `json:"over,omitempty"`
}

// FlushEdge is an edge of this part that one of its mate comes flush with.
type FlushEdge struct {
	Edge string `json:"edge"`
	On   string `json:"on"` // edge of the mate
}

// Stock is the metal to fetch.
type Stock struct {
	Kind      string  `json:"kind"` // "bar", "tube", "hexagon", "existing", "plate", "sheet", "casting"
	Text      string  `json:"text"` // "round bar Ø38, at least 56 long"
	OutsideMM float64 `json:"outside_mm"`
	InsideMM  float64 `json:"inside_mm"`
	LengthMM  float64 `json:"length_mm"`      // least length that the plan needs
	Flat      *Flat   `json:"flat,omitempty"` // of a flat part: the piece as it lies around the part
	// LeftZ and RightZ are where the stock's ends lie in the part's coordinates before the first cut.
	LeftZ  float64 `json:"left_z"`
	RightZ float64 `json:"right_z"`
}

// Helper is a small thing to make before or during the job: a mandrel, a plug, an arbor.
type Helper struct {
	ID       string   `json:"id"`
	Title    string   `json:"title"`
	ForSetup int      `json:"for_setup"` // number of the setup that uses it
	Steps    []string `json:"steps"`
	Rules    []string `json:"rules"`
	Minutes  float64  `json:"minutes"`
}

// Setup is one holding of the work: what grips what, and everything that is cut before it is let go.
type Setup struct {
	Number        int         `json:"number"`       // from 1
	ID            string      `json:"id"`           // "three_jaw on stock, right end free"
	Machine       string      `json:"machine"`      // name in the workshop
	MachineKind   string      `json:"machine_kind"` // as in the workshop; or "slide", a lathe that mills work on a vertical slide
	Holding       string      `json:"holding"`      // name in the workshop
	HoldingKind   string      `json:"holding_kind"`
	Title         string      `json:"title"`    // "Three-jaw chuck on the bar, right end outward"
	FreeEnd       string      `json:"free_end"` // "left" or "right": the end that points away from the headstock
	Grip          Grip        `json:"grip"`
	Tailstock     bool        `json:"tailstock"` // a centre supports the free end
	StickOutMM    float64     `json:"stick_out_mm"`
	RunOutMM      float64     `json:"run_out_mm"`            // full indicator reading to expect of the surface located on
	Locates       string      `json:"locates"`               // feature located on, "stock" for raw metal
	How           []string    `json:"how"`                   // how to hold and clock it, in order
	Before        Section     `json:"before"`                // shape when the setup begins
	After         Section     `json:"after"`                 // shape when it ends
	FlatBefore    *Flat       `json:"flat_before,omitempty"` // of a flat part, instead of Before and After
	FlatAfter     *Flat       `json:"flat_after,omitempty"`
	Beside        []FlatHole  `json:"beside,omitempty"`     // of a turned part: holes beside its axis, as they are when the setup ends
	Across        bool        `json:"across,omitempty"`     // mill or drill: the part's axis lies along the table
	AcrossDeg     float64     `json:"across_deg,omitempty"` // where up then is, from +X of the part's frame
	AskewDeg      float64     `json:"askew_deg,omitempty"`  // mill: the direction in the part, from +X, that is turned to lie along the table's x, on an upright dividing head at its nought; 0 = X does
	CentreX       float64     `json:"centre_x,omitempty"`   // lathe: the place of the part that runs on the spindle's axis
	CentreY       float64     `json:"centre_y,omitempty"`
	Axis          string      `json:"axis,omitempty"` // of a turned part: the offset axis that runs true, at CentreX; radii and sections are then as seen from it
	ThrowMM       float64     `json:"throw_mm,omitempty"`
	SwingLowMM    float64     `json:"swing_low_mm,omitempty"` // what the clock on the round outside may swing by, in all
	SwingHighMM   float64     `json:"swing_high_mm,omitempty"`
	LocateMM      float64     `json:"locate_mm,omitempty"` // mill, faceplate: how far the work may lie from where the dials have it, radially
	Clamps        []Clamp     `json:"clamps,omitempty"`
	Bed           *Bed        `json:"bed,omitempty"`
	Ledge         *Ledge      `json:"ledge,omitempty"`    // angle plate on a faceplate
	Dividing      *Dividing   `json:"dividing,omitempty"` // dividing head: what turns the work between operations
	Tilt          *Tilt       `json:"tilt,omitempty"`     // tilting plate: how far the work is set over
	Balance       *Balance    `json:"balance,omitempty"`
	Presses       []Press     `json:"presses,omitempty"` // vice, four-jaw: where the jaws press on flat work
	Operations    []Operation `json:"operations"`
	BeforeRelease []Check     `json:"before_release"`        // due before letting go
	NoWayBack     string      `json:"no_way_back,omitempty"` // why nothing can be mended after this setup
	SafeStop      bool        `json:"safe_stop"`             // a place to stop overnight
	Why           []Reason    `json:"why"`
	Minutes       float64     `json:"minutes"` // setting up, without the operations
}

// Grip is what holds the work, in the part's coordinates.
type Grip struct {
	Kind       string  `json:"kind"`    // "jaws", "collet", "mandrel", "split_mandrel" (turned in place, slit and spread by a taper screw), "centres", "glued_face", "glued_bore"; "vice", "clamps", "ledge" (by straps on an angle plate that turns with a faceplate), "vee", "bench" (by hand, in the bench vice)
	Surface    string  `json:"surface"` // feature gripped, or "stock"
	Inside     bool    `json:"inside"`
	FromZ      float64 `json:"from_z"`
	ToZ        float64 `json:"to_z"`
	RadiusMM   float64 `json:"radius_mm"`
	Jaws       int     `json:"jaws"`
	JawWidthMM float64 `json:"jaw_width_mm"`
	// Forces are per jaw (or in all, for grips without jaws); the window lies between what must hold and what may not harm.
	LeastN    float64 `json:"least_n"`
	MostN     float64 `json:"most_n"` // 0 = no limit found within the chuck's own
	WorkingN  float64 `json:"working_n"`
	Feel      string  `json:"feel"`     // a light nip, a firm pull on the key
	ErrorMM   float64 `json:"error_mm"` // lobed error at the working grip, peak to valley in radius
	LimitMM   float64 `json:"limit_mm"` // what the tolerance lets pass
	Trust     string  `json:"trust"`    // of the error: "good", "rough", "none"
	StressMPa float64 `json:"stress_mpa"`
	// Eased is set where the grip is slackened part way (rule B-24): WorkingN holds until then, Eased.WorkingN from its operation on.
	Eased   *Ease   `json:"eased,omitempty"`
	DriveMM float64 `json:"drive_mm,omitempty"` // stub mandrel: radius at which its shoulder and washer drive flat work by friction, WorkingN pressing them on it
	// WasherMM is the radius of the washer that presses turned work on the shoulder of a stub mandrel, with a screw from in front: it covers the free face that far.
	WasherMM float64 `json:"washer_mm,omitempty"`
	Packing  string  `json:"packing,omitempty"` // soft packing between hard jaws and finished work
}

// Ease is a slackening of the grip before an operation, once the heavy cuts are done. LeastN, MostN and the error of the Grip are then those of the
// operations from here on.
type Ease struct {
	Before   string  `json:"before"` // operation's id
	WorkingN float64 `json:"working_n"`
	Feel     string  `json:"feel"`
}

// Reason is a sentence with the rule behind it.
type Reason struct {
	Text string `json:"text"`
	Rule string `json:"rule"`
}

// Caution is a warning that the sheet must print.
type Caution struct {
	Text string `json:"text"`
	Rule string `json:"rule"`
}

// Rejected is a holding that was considered and passed over.
type Rejected struct {
	Holding string `json:"holding"`
	For     string `json:"for"`    // what it would have served: operation or setup
	Reason  string `json:"reason"` // with the figures
	Rule    string `json:"rule"`
}

// Refusal says why a feature cannot be made here and what would make it possible.
type Refusal struct {
	Feature  string   `json:"feature"` // feature name; empty = the whole part
	What     string   `json:"what"`    // the operation that found no way
	Reasons  []string `json:"reasons"`
	Remedies []string `json:"remedies"`
}

// Order says what the order of work rests on.
type Order struct {
	CostMinutes  float64 `json:"cost_minutes"`  // setting, tool changes, cutting and priced risk
	BoundMinutes float64 `json:"bound_minutes"` // no order costs less
	Proven       bool    `json:"proven"`
	States       int     `json:"states"` // states the search looked at
	Pairs        []Pair  `json:"pairs"`  // why each operation stands before the next
}

// Pair is the reason why two neighbours stand in this order.
type Pair struct {
	Before       string  `json:"before"`
	After        string  `json:"after"`
	Rule         string  `json:"rule,omitempty"`          // keeps the two, as they are held, from changing places
	ExtraMinutes float64 `json:"extra_minutes,omitempty"` // what the best opposite order costs more; less than 0 if the order is not the cheapest
	Text         string  `json:"text"`

	// Opposite is what is known of the best order with the two the other way round: "forbidden" (by the rule), "impossible" (rules and
	// holdings together leave none), "exact" (it costs ExtraMinutes more) or "at_least" (so much more, or yet more). Only explain --order tells it.
	Opposite Opposite `json:"opposite,omitempty"`
}

// Opposite is what is known of the best order with two neighbours the other way round.
type Opposite string

// What can be known of an opposite order.
const (
	Forbidden  Opposite = "forbidden"
	Impossible Opposite = "impossible"
	Exact      Opposite = "exact"
	AtLeast    Opposite = "at_least"
)
