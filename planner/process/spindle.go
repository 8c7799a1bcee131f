package process

import (
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// depthDial is the dial by which a mill or a drilling machine goes into the work; ok is false when it has none.
func depthDial(m partspec.Machine) (partspec.Dial, bool) {
	for _, name := range []string{"quill", "z"} {
		if d, ok := m.Dial(name); ok {
			return d, true
		}
	}
	return partspec.Dial{}, false
}

// coordinates reports whether the mill can be set to a place by its dials, and to a depth.
func (c *Context) coordinates() bool {
	_, x := c.Mill.Dial("x")
	_, y := c.Mill.Dial("y")
	_, z := depthDial(c.Mill)
	return x && y && z
}

// stand is where a spindle stands over the work: by the dials of the table, or at something on the work.
type stand struct {
	at    []plan.Reading
	place *plan.Place
	x, y  plan.Line
}

// overDials puts the spindle over a place by the table's dials, at the graduations nearest to it.
func (p *page) overDials(x, y float64) stand {
	mx, my := p.along("x", x), p.along("y", y)
	return stand{at: []plan.Reading{{Dial: "x", Graduations: mx}, {Dial: "y", Graduations: my}}, x: p.lineOf("", "x", mx, "", "", false), y: p.lineOf("", "y", my, "", "", false)}
}

// along is the count of a table's dial that is nearest to a place.
func (p *page) along(dial string, place float64) int64 {
	return int64(math.Round((place - p.zero(dial).ReferenceMM) * p.sense(dial) / radial(p.dial(dial))))
}

// alongShort is the last count of a table's dial that does not pass a place, coming from a side: -1 from below, +1 from above.
func (p *page) alongShort(dial string, place, from float64) int64 {
	n := (place - p.zero(dial).ReferenceMM) * p.sense(dial) / radial(p.dial(dial))
	if from*p.sense(dial) < 0 {
		return int64(math.Floor(n + markNoise))
	}
	return int64(math.Ceil(n - markNoise))
}

// dialOf is a dial of the mill.
func (c *Context) dialOf(name string) partspec.Dial {
	d, _ := c.Mill.Dial(name)
	return d
}

// sense is -1 for the dial x when the part has been turned over.
func (p *page) sense(dial string) float64 {
	if dial == "x" && p.j.Free == partspec.Left && (p.j.Setup == nil || !p.j.Setup.Across && p.j.Setup.Tilt == nil) {
		return -1
	}
	return 1
}

// tableZeros notes where the table's dials read nought, as the holding gives it, when nothing in the setting has set them yet.
func (p *page) tableZeros() {
	for _, z := range p.j.Table {
		if !p.alreadySet(z) {
			p.op.Zeros = append(p.op.Zeros, z)
		}
	}
}

// alreadySet reports whether an operation of the setting has set a dial of the table to that nought.
func (p *page) alreadySet(z plan.Zero) bool {
	if p.j.Setup == nil {
		return false
	}
	for _, o := range p.j.Setup.Operations {
		if slices.Contains(o.Zeros, z) {
			return true
		}
	}
	return false
}

// quill is the name of the dial that goes into the work; empty where there is none.
func (p *page) quill() string {
	d, _ := depthDial(p.on)
	return d.Name
}

// quillZero sets that dial to nought at a height.
func (p *page) quillZero(z float64, how string) {
	if name := p.quill(); name != "" {
		p.op.Zeros = append(p.op.Zeros, plan.Zero{Dial: name, ReferenceMM: z, How: how})
	}
}

// sunk is the count for a depth below the quill's nought: at least so deep where a hole goes through, else no deeper. It gives the depth really reached.
func (p *page) sunk(depth float64, through bool) (marks int64, reached float64) {
	g := float64(p.dial(p.quill()).Graduation.Value)
	marks = p.whole(depth / g)
	if through && float64(marks) < depth/g-markNoise {
		marks++
	}
	return marks, float64(marks) * g
}

// layersOf is how many layers of whole graduations, none deeper than so much, make up a count of the quill's.
func (p *page) layersOf(count int64, mostMM float64) int64 {
	each := max(1, int64(math.Floor(mostMM/float64(p.dial(p.quill()).Graduation.Value)+markNoise)))
	return max(1, (count+each-1)/each)
}

// plunge is a cut straight down at a place: by the quill's dial to that many marks, or between two heights that are measured.
func (p *page) plunge(name string, s stand, marks int64, low, high float64) plan.Cut {
	cut := plan.Cut{Name: name, From: s.at, To: s.at, At: s.place}
	if q := p.quill(); q != "" {
		cut.From = withReading(s.at, q, 0)
		cut.To = withReading(s.at, q, marks)
		return cut
	}
	cut.ToMeasure = &plan.Measured{What: "position", LowMM: math.Min(low, high), HighMM: math.Max(low, high)}
	return cut
}

func withReading(at []plan.Reading, dial string, marks int64) []plan.Reading {
	return append(append([]plan.Reading(nil), at...), plan.Reading{Dial: dial, Graduations: marks})
}
