package partspec

import (
	"github.com/hashicorp/hcl/v2"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// Range and Diagnostic are hcl's own, used through to the planner so that a refusal points at the line of the feature it is about.
type (
	Range       = hcl.Range
	Diagnostic  = hcl.Diagnostic
	Diagnostics = hcl.Diagnostics
)

// Job is a checked set of files: every name is known, every dimension has limits, every feature has its place along the part.
// A Job is immutable; a pass that needs another value makes a copy.
type Job struct {
	Workshop *Workshop // never nil; Workshop.BuiltIn says that no file gave one
	Parts    []*Part   // in file order (files sorted by name)
	Fits     []Fit
}

// Part finds a part by name; nil when there is none.
func (j *Job) Part(name string) *Part {
	for _, p := range j.Parts {
		if p.Name == name {
			return p
		}
	}
	return nil
}

// End is one of the two ends of a turned part. The part's axis runs from the left end (position 0) to the right end (position Length).
type End int

const (
	EndInvalid End = iota
	Left
	Right
)

func (e End) String() string {
	switch e {
	case Left:
		return "left"
	case Right:
		return "right"
	}
	return "end?"
}

// Other is the opposite end.
func (e End) Other() End {
	switch e {
	case Left:
		return Right
	case Right:
		return Left
	}
	return EndInvalid
}

// Size is a dimension as drawn, with the limits it must be made to.
type Size struct {
	units.Dimension
	Low, High units.Length
	Basis     string // where the limits come from, in words: "as drawn", "H7 (ISO 286-1)", "general tolerance ISO 2768-m"
	Class     string // the ISO 286 class when the limits come from one, else empty
	Range     Range  // the expression in the file
	general   bool   // nobody wrote limits: a fit may still set them
}

// Width is the tolerance, High - Low.
func (s Size) Width() units.Length { return s.High - s.Low }

// Mid is the middle of the limits.
func (s Size) Mid() units.Length { return (s.High + s.Low) / 2 }

// Span is where a feature lies along the axis, nominal, from the left end: Left < Right.
type Span struct{ Left, Right units.Length }

// At is the position of one end of the span.
func (s Span) At(e End) units.Length {
	if e == Left {
		return s.Left
	}
	return s.Right
}

func (s Span) Length() units.Length { return s.Right - s.Left }

// Part is one workpiece, fully resolved.
//
// Its frame: Z along the axis from the left end (0) to the right end (Length). X and Y lie square to it, X to the right and Y up as seen from the
// right end, looking towards the left one. A turned part's origin is its axis. A flat part lies with its back on the plane Z = 0 and its front at Z = Length,
// which is its thickness: Left stands for the back, Right for the front, and its origin is where its outline puts it.
type Part struct {
	Name      string
	Material  tables.Material
	Stock     Stock
	Length    Size         // over all; the thickness of a flat part
	Outline   *Outline     // of a flat part; nil = a turned one
	General   string       // ISO 2768-1 class: "f", "m", "c" or "v"
	Quantity  int          // at least 1
	Bought    bool         // nothing is planned for a bought part; its features are mates for others
	Inches    bool         // drawn_in = "inch"
	Roundness units.Length // roundness asked of every turned surface; 0 = the general one (half the diameter's tolerance)
	Roughness float64      // Ra in micrometres asked of every machined surface unless the feature says otherwise
	// InnerCorner is the largest radius a tool may leave in an internal corner that the drawing shows sharp.
	InnerCorner units.Length
	Features    []Feature // in file order: what lies about the main axis, and beside or across it
	Axes        []Axis    // beside the main one, with what lies about them
	Seen        *Seen     // set on a part as it is seen from an offset axis
	Relations   []Relation
	Note        string
	Range       Range
}

// Flat reports whether the part is cut from plate or sheet to an outline, rather than turned.
func (p *Part) Flat() bool { return p.Outline != nil }

// Feature finds a feature by name (names are unique within a part); nil when there is none.
func (p *Part) Feature(name string) Feature {
	for _, f := range p.Features {
		if f.Head().Name == name {
			return f
		}
	}
	return nil
}

// StockKind is the form of the metal bought.
type StockKind int

const (
	StockInvalid StockKind = iota
	Bar                    // round
	Tube                   // round with a bore
	Hexagon                // hexagonal bar
	Existing               // rework: the features of the stock are its shape as it is
	Plate                  // of flat parts: Width along X, Length along Y, Thickness
	Sheet                  // the same, thin: its faces are left as supplied unless the part says otherwise
	Casting                // with metal to come off each face
)

func (k StockKind) String() string {
	return [...]string{"stock?", "bar", "tube", "hexagon", "existing", "plate", "sheet", "casting"}[k]
}

// Stock is what the part is cut from.
type Stock struct {
	Kind            StockKind
	Outside         Size            // diameter of bar, tube or existing; across flats of a hexagon
	Inside          Size            // bore of a tube, else zero
	Thickness       Size            // of plate and sheet; a casting's follows from the part and Metal
	Width           units.Dimension // of plate and sheet, along X; zero: cut as the plan needs it
	Metal           units.Length    // of a casting: on every face
	FacesAsSupplied bool            // of plate and sheet: front and back are left as they are; the part's thickness is the stock's
	// Length is zero when the file gives none: then bar is cut as the plan needs it, and may stand long in the spindle. Of plate and sheet: along Y.
	Length   units.Dimension
	Rough    bool      // black bar or casting skin, which collets do not hold
	Features []Feature // shape of existing stock, resolved like a part's from its own left end (Existing only)
	// At is where the left end of existing stock lies on the part's axis: 0, or negative when metal stands out on the left.
	At    units.Length
	Range Range
}

// EnvelopeDiameter is the diameter of the smallest cylinder around the stock (across corners for a hexagon).
func (s Stock) EnvelopeDiameter() units.Length {
	if s.Kind == Hexagon {
		return s.Outside.Value * hexagonCornersPerFlats
	}
	return s.Outside.Value
}

// hexagonCornersPerFlats is 2/sqrt(3): across corners for one across flats.
const hexagonCornersPerFlats = 1.1547005383792515

// Outline is the edge of a flat part: closed, anticlockwise as seen from the front. The metal lies on the left of each edge.
type Outline struct {
	Kind  string // "rectangle", "disc", "round_topped", "chain"
	Edges []OutlineEdge
	// Width, Height and Radius are the sizes as they were written; of a disc Width is its diameter, of a rectangle Radius that of its corners. Zero where the
	// kind has none.
	Width, Height, Radius Size
	// Datum are the edges that coordinates are measured from, one across X and one across Y, as drawn: "left" and "bottom" unless the file says
	// otherwise. Empty on a disc, whose coordinates are measured from its centre.
	Datum []string
	Range Range
}

// Edge finds an edge by name.
func (o *Outline) Edge(name string) (OutlineEdge, bool) {
	for _, e := range o.Edges {
		if e.Name == name {
			return e, true
		}
	}
	return OutlineEdge{}, false
}

// OutlineEdge is a line or an arc of an outline, from its start to its end in the outline's direction. A disc has one edge, "rim", an arc that ends where it begins.
type OutlineEdge struct {
	Name           string
	X0, Y0, X1, Y1 units.Length
	Arc            bool
	CX, CY, Radius units.Length
	Hollow         bool // of an arc: its centre lies outside the metal
	// Off and On are how far the finished edge may lie inside and outside its place, square to it; both at least 0. A datum edge has the limits of
	// the size across the part on neither side: it is where coordinates begin.
	Off, On    units.Length
	Basis      string // where they come from, in words
	FinishFile bool   // finish_by = "file": sawn and filed to a scribed line or a template
	AsSupplied bool   // the stock's own edge
	Range      Range
}

// Relation binds two surfaces of a part.
type Relation struct {
	Kind   RelationKind
	Of, To Surface
	Within units.Length // run-out as full indicator reading; squareness over the face's diameter; others a zone
	Range  Range
}

// RelationKind is how two surfaces are bound.
type RelationKind int

const (
	RelationInvalid RelationKind = iota
	Concentric                   // axes agree: zone diameter
	RunOut                       // full indicator reading of one about the other
	Square                       // a face square to an axis
	Parallel                     // two faces
	Position                     // a hole's or a pattern's centre about another: zone diameter
)

func (k RelationKind) String() string {
	return [...]string{"relation?", "concentric", "run_out", "square", "parallel", "position"}[k]
}

// Surface names a surface of a part: a turned feature's own surface, or a plane face.
type Surface struct {
	Feature string // feature name, or "face" for an end face of the part
	Face    End    // set for a plane: the part's end face, or the shoulder at that end of the feature
}

func (s Surface) String() string {
	if s.Face == EndInvalid {
		return s.Feature
	}
	return s.Feature + "." + s.Face.String()
}

// Fit binds a hole and a shaft of two parts (or of one). The limits are already in the features' sizes.
type Fit struct {
	Name        string
	Hole, Shaft FeatureRef
	Class       string // "H7/g6", or a purpose such as "sliding" with the pair it stands for
	Range       Range
}

// FeatureRef names a feature of a part.
type FeatureRef struct{ Part, Feature string }

func (r FeatureRef) String() string { return r.Part + "." + r.Feature }
