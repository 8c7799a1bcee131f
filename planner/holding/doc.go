// Package holding lists the ways a part can be held in a workshop and judges each by figures on the work as it then is.
//
// In: a context of a part, its tasks, the holdings owned. Out: mounts (a holding, on a surface, with an end free, as facts) and for each task in each mount
// the objections of the rules, with the grip's figures. A file per kind of holding; judge.go measures, the rules decide.
package holding

import (
	"fmt"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/process"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// Mount is one way to hold the work.
type Mount struct {
	ID               string
	Holding          partspec.Holding
	Machine          partspec.MachineKind // "" = the lathe
	Flat             bool                 // it holds a flat part
	Across           bool                 // mill or drill: the part's axis lies along the table
	AcrossDeg        float64              // up, then, from +X of the part's frame
	AskewDeg         float64              // mill: the direction in the part, from +X, that lies along the table's x, on an upright dividing head at its nought; 0 = X does
	CentreX, CentreY float64              // lathe: the place of the part that runs on the spindle's axis
	About            string               // feature that lies there
	By               Finding              // how that place is brought to run true
	PressDeg         float64              // vice: direction that the jaws press along, from +X: 0 or 90
	Spared           []int                // vice, table clamps: edges of the outline that stay free to be cut while it holds; nil = none that is cut
	Base             int                  // angle plate under flat work: the edge of the outline that stands on its ledge
	EdgesOnly        bool                 // flat parts: it has no room for the tools of anything but the edges it spares, and a seat
	Locate           float64              // how far the work may lie from where the dials have it, radially
	Turning          float64              // of Locate, what turns with the work on an upright dividing head, so that it moves no ring as a whole
	Head             *plan.Dividing       // a dividing head carries it: AcrossDeg is where its nought has up
	Lean             *process.Lean        // a tilting plate carries it, set over as the plan then says:
	Tilted           *plan.Tilt           // nearest to Lean that packing gives
	Along            float64              // and along either axis, where that is less: two edges were found each by itself; 0 = as Locate
	Free             partspec.End
	Surface          string  // feature located on; "stock" for raw metal
	Inside           bool    // held from a bore
	Z0, Z1           float64 // the grip along the axis
	Radius           float64 // of the surface gripped, as finished (or raw)
	RawUntil         bool    // the surface gripped is raw stock: the grip is lost once it is cut
	Between          bool    // between two centres
	Centre           bool    // a tailstock centre in the free end
	Mouth            float64 // diameter, mm, of the hole that the centre sits in; 0 for a centre hole
	Packed           bool    // soft packing under hard jaws
	Stop             bool    // a face sits hard on the jaw step or shoulder
	Step             bool    // and it is the work's own finished end, on the steps of the jaws
	StandOff         float64 // how far a shoulder stands above the jaws, for drills that come out there; 0 = it does not
	Split            bool    // a mandrel turned in place is slit and spread by a taper screw
	Washer           float64 // radius of the washer in front of the work on a mandrel turned in place; 0 = none
	Screw            float64 // diameter of its screw
	Threaded         bool    // the mandrel is threaded for the thread in the bore; or a bush for one outside
	Plug             bool    // a plug stands in the bore under the jaws
	Glue             Glue
	Minutes          float64
	RunOut           float64
	Helper           string // what has to be made first, empty for nothing
}

// Tilt is by how much a run-out grows from the grip's length to a plane face of a diameter; 1 where it does not.
func (m Mount) Tilt(wide float64) float64 {
	if long := m.Z1 - m.Z0; long > 0 && wide > long {
		return wide / long
	}
	return 1
}

// front is where the grip ends on the free end's side.
func (m Mount) front() float64 {
	if m.Free == partspec.Left {
		return m.Z0
	}
	return m.Z1
}

// Finding is how the place that is to run true is found on flat work.
type Finding string

const (
	ByMark  Finding = "its mark"
	ByBore  Finding = "its bore" // that is there already
	ByEdges Finding = "two edges"
)

// Glue says how a glued arbor holds.
type Glue int

const (
	NoGlue   Glue = iota
	GlueFace      // on a plane face
	GlueBore      // in a bore
)

// Shop finds the mounts of a part.
type Shop struct {
	*process.Context
	Tasks []process.Task

	of     []partspec.Feature // what each task belongs to, or nil
	sunk   bool               // some task cuts a seat, or across the axis
	wide   float64            // diameter of the finished work at its widest
	end    solid.Body         // the work when everything is done, with its bar still behind it
	bodies map[uint64]solid.Body
	flats  map[uint64]shape.Flat
	edging []int // tasks that move edges of a flat part
	flexes map[flexKey]float64
	*flatAnswers
}

// flatAnswers are answers about a flat part that are kept.
type flatAnswers struct {
	outlines map[uint64]int // by the tasks done that move edges: which of rims
	byLeft   map[string]int // the same by what is left on the edges, which several sets of tasks leave alike
	rims     []plane.Region
	clear    map[string][]zone // by mount
	clamps   map[clampKey]clamping
	inVices  map[outlineKey]lying
	webs     map[webKey]webAnswer
	wastes   map[wasteKey]float64
}

func newFlatAnswers() *flatAnswers {
	return &flatAnswers{outlines: map[uint64]int{}, byLeft: map[string]int{}, clear: map[string][]zone{}, clamps: map[clampKey]clamping{}, inVices: map[outlineKey]lying{},
		webs: map[webKey]webAnswer{}, wastes: map[wasteKey]float64{}}
}

// New makes a Shop for a context's tasks.
func New(c *process.Context) *Shop { return newShop(c, process.Expand(c)) }

func newShop(c *process.Context, tasks []process.Task) *Shop {
	s := &Shop{Context: c, Tasks: tasks, end: c.Stock, bodies: map[uint64]solid.Body{}, flats: map[uint64]shape.Flat{}, flexes: map[flexKey]float64{}}
	for _, t := range s.Tasks {
		s.of = append(s.of, c.Part.Feature(t.Feature))
	}
	if c.Part.Flat() {
		s.flatAnswers = newFlatAnswers()
		for i, t := range s.Tasks {
			if t.Flat != nil && len(t.Flat.Edges) > 0 {
				s.edging = append(s.edging, i)
			}
		}
		return s
	}
	for i, t := range s.Tasks {
		s.sunk = s.sunk || t.Cross || s.isSeat(i)
		if t.Keep == nil {
			s.end = t.Apply(s.end)
		}
	}
	s.wide = 2 * s.end.Outer.Greatest(0, s.Length)
	return s
}

// Mounts lists every mount of the part, in the order of the workshop's holdings.
func (s Shop) Mounts() []Mount {
	if s.Part.Flat() {
		return s.flatMounts()
	}
	if s.Part.Seen != nil {
		return s.setOver()
	}
	var mounts []Mount
	for _, h := range s.Shop.Holdings {
		switch h.Kind {
		case partspec.ThreeJaw, partspec.FourJaw, partspec.SoftJaws, partspec.Collets:
			mounts = append(mounts, s.onStock(h)...)
			mounts = append(mounts, s.onOutside(h)...)
		case partspec.StubMandrel, partspec.PlainMandrel, partspec.ExpandingMandrel:
			mounts = append(mounts, s.onBore(h)...)
		case partspec.GluedArbor:
			mounts = append(mounts, s.glued(h)...)
		case partspec.Plug:
			mounts = append(mounts, s.plugged(h)...)
		case partspec.BetweenCentres:
			mounts = append(mounts, s.between(h)...)
		case partspec.Tailstock:
			// goes with jaws: see withCentre
		}
	}
	mounts = append(mounts, s.withCentre(mounts)...)
	if !s.Part.Flat() {
		mounts = append(mounts, s.onTable()...)
	}
	for _, h := range s.Shop.Holdings {
		mounts = append(mounts, s.onThread(h)...)
	}
	for i := range mounts {
		mounts[i].ID = mounts[i].name()
	}
	return mounts
}

func (m Mount) name() string {
	id := fmt.Sprintf("%s on %s, %s end free", m.Holding.Name, m.Surface, m.Free)
	if m.Machine == partspec.Bench {
		id = fmt.Sprintf("%s, %s end up", m.Holding.Name, m.Free)
	} else if m.indexes() {
		id = fmt.Sprintf("%s upright on the %s, on %s, %s end up, circle %d of %d from %s", m.Holding.Name, m.table(), m.Surface, m.Free, m.Head.Circle, m.Head.Ratio, inDegrees(m.AskewDeg))
	} else if m.Head != nil {
		id = fmt.Sprintf("%s on the %s, on %s over %s, %s end free", m.Holding.Name, m.table(), m.Surface, units.Decimal(m.Z1-m.Z0, 1), m.Free)
	} else if m.Tilted != nil {
		id = fmt.Sprintf("%s on the %s, on %s, %s end up, set over by %s°, %s° along x", m.Holding.Name, m.Machine, m.Surface, m.Free, units.Decimal(m.Lean.Deg, 2), units.Decimal(m.Lean.AlongDeg, 2))
	} else if m.Across {
		id = fmt.Sprintf("%s on the %s, lying, on %s over %s, %s end free, up at %.0f", m.Holding.Name, m.table(), m.Surface, units.Decimal(m.Z1-m.Z0, 1), m.Free, m.AcrossDeg)
	} else if m.Machine != "" {
		id = fmt.Sprintf("%s on the %s, on %s, %s end up", m.Holding.Name, m.Machine, m.Surface, m.Free)
	}
	if m.About != "" && !m.Flat {
		id += ", set over for " + m.About
	}
	if m.Stop {
		id += ", against the step"
	}
	if m.Bushed() {
		id += ", in a threaded bush"
	} else if m.Packed {
		id += ", packed"
	}
	if m.Split {
		id += ", spread"
	}
	if m.Plug {
		id += ", plugged"
	}
	if m.Centre {
		id += ", centred"
	}
	if m.RawUntil {
		id += fmt.Sprintf(", grip %s", units.Decimal(m.Z1-m.Z0, 1))
	}
	return id
}

// minutes is the time a holding takes to set: the workshop's own figure, or the ladder's (rule B-01).
func (s Shop) minutes(h partspec.Holding) float64 {
	if !s.Rules.Has("B-01") {
		return 1
	}
	if h.SetupMinutes > 0 {
		return float64(h.SetupMinutes)
	}
	if headed(h) { // a chuck on a dividing head, which is bolted down and set true along the table first
		h.Kind = partspec.DividingHead
	}
	if h.SineLength > 0 { // a chuck on a tilting plate, whose packing is made up first
		h.Kind = partspec.TiltingPlate
	}
	if h.Dial.Name != "" { // a vice that has its slide bolted on and set square first
		h.Kind = partspec.VerticalSlide
	}
	return map[partspec.HoldingKind]float64{
		partspec.ThreeJaw: 1, partspec.Collets: 2, partspec.SoftJaws: 15, partspec.StubMandrel: 15, partspec.FourJaw: 8,
		partspec.PlainMandrel: 5, partspec.ExpandingMandrel: 5, partspec.GluedArbor: 40, partspec.Plug: 10, partspec.BetweenCentres: 6,
		partspec.Vice: 3, partspec.VerticalSlide: 15, partspec.VeeBlock: 5, partspec.DividingHead: 20, partspec.TiltingPlate: 25, partspec.TableClamps: 10, partspec.Faceplate: 20, partspec.AnglePlate: 30,
	}[h.Kind]
}

// runOut is the full indicator reading to expect: measured, or usual (rule B-02).
func (s Shop) runOut(h partspec.Holding, packed bool) float64 {
	if !s.Rules.Has("B-02") {
		return 0
	}
	if h.Kind == partspec.SoftJaws && !s.Rules.Has("B-20") {
		return softUnbored
	}
	usual := map[partspec.HoldingKind]float64{
		partspec.ThreeJaw: 0.08, partspec.FourJaw: 0.025, partspec.Collets: 0.02, partspec.SoftJaws: 0.025, partspec.StubMandrel: 0.015,
		partspec.PlainMandrel: 0.01, partspec.ExpandingMandrel: 0.03, partspec.GluedArbor: 0.05, partspec.BetweenCentres: 0.01,
		partspec.Faceplate: 0.02, partspec.AnglePlate: 0.02,
	}[h.Kind]
	if h.RunOut > 0 {
		usual = float64(h.RunOut)
	}
	if packed && h.Kind == partspec.ThreeJaw {
		return max(usual, packedRunOut)
	}
	return usual
}

// softUnbored is what soft jaws run out by when they are not bored in place: no truer than a three-jaw (rule B-02).
const softUnbored = 0.08

// packedRunOut is a three-jaw's full indicator reading over soft packing (rule B-02).
const packedRunOut = 0.1

// jawLength is how long a grip the jaws or collet give.
func jawLength(h partspec.Holding) float64 {
	switch {
	case h.JawLength > 0:
		return float64(h.JawLength)
	case h.GripLength > 0:
		return float64(h.GripLength)
	}
	return usualJawLength
}

// usualJawLength is that of a small chuck. Common practice, no source.
const usualJawLength = 18.0

// jawClearance is what a tool keeps from the jaws: the 2 mm of rule B-45, and what a face set by measuring may lie otherwise.
const jawClearance = 2.5

// span orders two places.
func span(a, b float64) (z0, z1 float64) { return min(a, b), max(a, b) }

// inward is +1 where going from the held end towards the free end raises Z.
func inward(free partspec.End) float64 {
	if free == partspec.Right {
		return 1
	}
	return -1
}
