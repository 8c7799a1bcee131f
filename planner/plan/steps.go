package plan

// StepTable is what a table of steps rests on, as data: the curve in the frame of the two slides, the cutter, and what is left for the
// file. Across runs along one slide; depth along the other, positive into the metal. The readings stand in the operation's cuts and on
// its card, where the replay holds them to the metal; a step finds its lines there by Label.
type StepTable struct {
	Curve         []StepPiece `json:"curve"` // in order of rising across
	Left          string      `json:"left"`  // what the work is before the curve: "air", "level" (a finished face at the curve's own depth), "wall" (a shoulder)
	Right         string      `json:"right"` // and past it
	Cutter        StepCutter  `json:"cutter"`
	AcrossDial    string      `json:"across_dial"`
	DepthDial     string      `json:"depth_dial"`
	AcrossLeft    bool        `json:"across_left"`     // a sketch shows across growing to the left, as when the headstock stands there
	Along         bool        `json:"along,omitempty"` // each step is fed along, from off the end of the work where across begins: by a knife, whose Cutter is a blade that reaches past that end; else it is plunged
	LeftoverMM    float64     `json:"leftover_mm"`     // the most that may be left, square to the curve
	WorstMM       float64     `json:"worst_mm"`        // the most that is left
	CrestBeforeMM float64     `json:"crest_before_mm"` // left before the first step across
	Steps         []Step      `json:"steps"`           // in the order of cutting
	Runs          []StepRun   `json:"runs"`            // both dials go one way in each

	ProvenFewest bool `json:"proven_fewest"` // no table on these graduations has fewer cuts
	// WitnessAcrossMM is the proof: at least as many places of the curve as there are steps, no two of which any one cut on these graduations brings within what may be left.
	WitnessAcrossMM []float64 `json:"witness_across_mm"`
	ConstantCount   int       `json:"constant_count"` // cuts of the shortest table in which one dial goes on by one number of graduations; 0: none found
	ConstantMarks   int64     `json:"constant_marks"` // that number
	EqualCount      int       `json:"equal_count"`    // cuts by the best equal steps; 0: none found
	CustomCount     int       `json:"custom_count"`   // cuts by the customary steps of a quarter of a millimetre; 0: they leave more than allowed
	Why             string    `json:"why"`

	FileLeastMinutes float64 `json:"file_least_minutes"` // filing takes from this
	FileMostMinutes  float64 `json:"file_most_minutes"`  // to this
}

// StepPiece is a line or, where RadiusMM is not 0, an arc of a stepped curve.
type StepPiece struct {
	FromAcrossMM   float64 `json:"from_across_mm"`
	FromDepthMM    float64 `json:"from_depth_mm"`
	ToAcrossMM     float64 `json:"to_across_mm"`
	ToDepthMM      float64 `json:"to_depth_mm"`
	RadiusMM       float64 `json:"radius_mm"`
	CentreAcrossMM float64 `json:"centre_across_mm"`
	CentreDepthMM  float64 `json:"centre_depth_mm"`
	Hollow         bool    `json:"hollow"` // the arc's centre is in the air
}

// StepCutter is the form that is plunged: a flat with rounded corners, or a round nose, whose flat is 0.
type StepCutter struct {
	WidthMM float64 `json:"width_mm"` // over all
	NoseMM  float64 `json:"nose_mm"`  // radius of the nose or of both corners
}

// Step is one plunge, or one pass along.
type Step struct {
	Label    string  `json:"label"`             // of its lines on the card, and of its cut
	AcrossMM float64 `json:"across_mm"`         // of the cutter's middle
	DepthMM  float64 `json:"depth_mm"`          // of its lowest point
	CrestMM  float64 `json:"crest_mm"`          // left between it and the next one across, or the end of the curve
	Partial  bool    `json:"partial,omitempty"` // only a pass on the way to the next step, which is deeper than one pass may go: it is none of the steps that are counted
	Stop     string  `json:"stop,omitempty"`    // a place to stop or to resume at: what to check there
}

// StepRun is a stretch of the steps, counted from 1, at the start of which the backlash of both slides is taken up.
type StepRun struct {
	First int `json:"first"`
	Last  int `json:"last"`
}

// Count is the number of steps, passes on the way to them left out.
func (t StepTable) Count() int {
	n := 0
	for _, s := range t.Steps {
		if !s.Partial {
			n++
		}
	}
	return n
}
