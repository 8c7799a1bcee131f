package plan

// CompareSchema names the JSON form of a Comparison.
const CompareSchema = "catchplate-compare-1"

// Comparison is every holding of the workshop side by side, for each surface that is brought to size.
type Comparison struct {
	Schema   string    `json:"schema"`
	Workshop string    `json:"workshop"`
	WhatIf   *WhatIf   `json:"what_if,omitempty"` // what was asked to be otherwise; nothing else in the job is changed by it
	Surfaces []Surface `json:"surfaces"`
}

// WhatIf is what a comparison takes to be otherwise than the part and the workshop say. 0 = as they say.
type WhatIf struct {
	WallMM       float64 `json:"wall_mm,omitempty"`        // of the ring that is squeezed, its outside kept; in the sum of the grip alone
	ForceN       float64 `json:"force_n,omitempty"`        // of each jaw, neither more nor less
	Jaws         int     `json:"jaws,omitempty"`           // of a chuck
	GripLengthMM float64 `json:"grip_length_mm,omitempty"` // along the axis, from the held end
}

// The what-ifs by name, as in Option.Changed.
const (
	IfWall       = "wall"
	IfForce      = "force"
	IfJaws       = "jaws"
	IfGripLength = "grip-length"
)

// Surface is one finishing operation with its holdings: those that pass first, the quickest of them at the top; then those refused.
type Surface struct {
	Part      string   `json:"part"`
	Feature   string   `json:"feature"`
	Operation string   `json:"operation"` // id
	Planned   bool     `json:"planned"`   // the part has a plan, and Option.Moment "plan" is a moment of it
	Options   []Option `json:"options"`
}

// Moments at which a holding is judged.
const (
	MomentPlan     = "plan"
	MomentFinished = "finished"
)

// Option is one holding, in the best way that it can be used for the operation. Forces are newtons a jaw.
type Option struct {
	Holding      string  `json:"holding"` // name in the workshop
	Kind         string  `json:"kind"`
	Title        string  `json:"title"`
	Surface      string  `json:"surface"` // gripped or located on, "stock" for raw metal; empty: there is nothing for it to hold
	FreeEnd      string  `json:"free_end"`
	Moment       string  `json:"moment"` // "plan": as the work stands in the plan when the operation comes; "finished": with everything finished but this
	GripMM       float64 `json:"grip_mm"`
	DiameterMM   float64 `json:"diameter_mm"`
	WallMM       float64 `json:"wall_mm"` // least under the grip; 0 = solid, or not squeezed
	LeastN       float64 `json:"least_n"` // that holds; 0 = no force of jaws comes into it
	MostN        float64 `json:"most_n"`  // that spares the work; 0 = none is known or needed
	MostBy       string  `json:"most_by"` // what sets it: "tolerance", "yield" or "range" (of the figure)
	WorkingN     float64 `json:"working_n"`
	ErrorMM      float64 `json:"error_mm"`     // lobed error at the working grip, peak to valley in radius
	BandPercent  float64 `json:"band_percent"` // the true error is expected within so much either way
	Trust        string  `json:"trust"`        // "good", "rough", "none"; empty: no ring is squeezed that must be round
	TrustWhy     string  `json:"trust_why"`
	LimitMM      float64 `json:"limit_mm"`      // what may pass: a third of the roundness at stake
	SharePercent float64 `json:"share_percent"` // error of the limit
	StressMPa    float64 `json:"stress_mpa"`
	YieldMPa     float64 `json:"yield_mpa"`
	// WasteMM is the web, between a bore of flat work and its rim, with which the jaws' squeeze would pass; 0 = it passes, or no waste would help.
	WasteMM         float64  `json:"waste_mm,omitempty"`
	UnbalanceKgMM   float64  `json:"unbalance_kg_mm,omitempty"`  // of flat work that turns, with what holds it
	CounterweightKg float64  `json:"counterweight_kg,omitempty"` // on the faceplate
	RunOutMM        float64  `json:"run_out_mm"`                 // full reading to expect
	StickOutMM      float64  `json:"stick_out_mm"`               // from the grip to the cut
	MostRPM         float64  `json:"most_rpm"`                   // marked on the holding; 0 = no mark is known
	Minutes         float64  `json:"minutes"`                    // to set, what has to be made first included
	ToMake          string   `json:"to_make"`
	PassShare       float64  `json:"pass_share"` // depth of a pass, of the ordinary one: lighter cuts ask for less grip
	Chosen          bool     `json:"chosen"`     // the plan holds the work so
	Changed         []string `json:"changed"`    // the what-ifs that come into this option's figures
	Passes          bool     `json:"passes"`
	Verdict         string   `json:"verdict"` // in words, with the figures
	Rule            string   `json:"rule"`    // the first that refuses it
}
