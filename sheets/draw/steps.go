package draw

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// Sizes of the sketch of a stepped curve, in millimetres on paper.
const (
	stepsLong    = 135.0 // the curve, at most
	stepsHigh    = 50.0
	crestTall    = 6.0 // the highest crest, about
	metalBelow   = 9.0 // hatched metal under the deepest point
	cutterAbove  = 5.0 // the cutter is drawn raised by this much more than the highest crest
	cutterShank  = 9.0
	knifeBroad   = 8.0
	mostCrest    = 0.45 // of the tightest hollow's radius: taller crests would cross one another
	crestSamples = 24   // points drawn for each step
	closeCrests  = 2.5  // crests nearer to one another on the average are drawn with a thin pen
	labelApart   = 8.0  // least distance of step numbers
	awayArrow    = 16.0
)

// crestScales are the factors by which crests are drawn taller than the curve's scale says.
var crestScales = []float64{200, 150, 100, 75, 50, 40, 30, 25, 20, 15, 10, 8, 6, 5, 4, 3, 2, 1}

// stepView carries across and depth to paper.
type stepView struct {
	t       *plan.StepTable
	scale   float64
	enlarge float64
	side    float64 // -1 where across grows to the left
	reach   float64 // half the cutter's width
}

// Steps is the sketch of a stepped curve: the curve, the crests that the steps leave, drawn enlarged, and the cutter, raised off the work.
func Steps(name, title string, t *plan.StepTable) Page {
	if len(t.Curve) == 0 || len(t.Steps) == 0 {
		return NewCanvas().Page(name, title, "No curve is known for these steps.")
	}
	v := newStepView(counted(t))
	c := NewCanvas()
	c.crests(v)
	c.stepNumbers(v)
	c.raisedCutter(v)
	c.ways(v)
	c.stepNotes(v)
	return c.Page(name, title, v.describe())
}

// counted is a table without the passes that come beside its steps: they leave nothing that a step does not take.
func counted(t *plan.StepTable) *plan.StepTable {
	plain := *t
	plain.Steps = slices.DeleteFunc(slices.Clone(t.Steps), func(s plan.Step) bool { return s.Partial })
	return &plain
}

func newStepView(t *plan.StepTable) stepView {
	first, last := t.Curve[0].FromAcrossMM, t.Curve[len(t.Curve)-1].ToAcrossMM
	v := stepView{t: t, side: 1, reach: t.Cutter.WidthMM / 2, enlarge: 1}
	if t.AcrossLeft {
		v.side = -1
	}
	high, deep := v.depths()
	v.scale = scales[len(scales)-1]
	for _, s := range scales {
		if (last-first)*s <= stepsLong && (deep-high)*s <= stepsHigh {
			v.scale = s
			break
		}
	}
	tall := crestTall
	for _, p := range t.Curve {
		if p.Hollow {
			tall = min(tall, mostCrest*p.RadiusMM*v.scale)
		}
	}
	for _, e := range crestScales {
		if t.WorstMM*e*v.scale <= tall {
			v.enlarge = e
			break
		}
	}
	return v
}

// depths are the highest and the deepest point of the curve.
func (v stepView) depths() (high, deep float64) {
	high, deep = math.Inf(1), math.Inf(-1)
	for _, p := range v.t.Curve {
		for _, x := range []float64{p.FromAcrossMM, p.ToAcrossMM, min(max(p.CentreAcrossMM, p.FromAcrossMM), p.ToAcrossMM)} {
			d, _ := along(p, x)
			high, deep = min(high, d), max(deep, d)
		}
	}
	return high, deep
}

func (v stepView) at(across, depth float64) Point {
	return Point{v.side * across * v.scale, depth * v.scale}
}

// along is the depth of a piece at a place across, and the direction that leads square off it into the air.
func along(p plan.StepPiece, across float64) (depth float64, off Point) {
	if p.RadiusMM == 0 {
		long := math.Hypot(p.ToAcrossMM-p.FromAcrossMM, p.ToDepthMM-p.FromDepthMM)
		depth = p.FromDepthMM + (p.ToDepthMM-p.FromDepthMM)*(across-p.FromAcrossMM)/(p.ToAcrossMM-p.FromAcrossMM)
		return depth, Point{(p.ToDepthMM - p.FromDepthMM) / long, -(p.ToAcrossMM - p.FromAcrossMM) / long}
	}
	dx := (across - p.CentreAcrossMM) / p.RadiusMM
	dy := math.Sqrt(max(0, 1-dx*dx))
	if p.Hollow {
		return p.CentreDepthMM + p.RadiusMM*dy, Point{-dx, -dy}
	}
	return p.CentreDepthMM - p.RadiusMM*dy, Point{dx, -dy}
}

// edge is the depth of a step's floor at a place across; minus infinity beside it.
func (v stepView) edge(s plan.Step, across float64) float64 {
	d, nose := math.Abs(across-s.AcrossMM)-(v.reach-v.t.Cutter.NoseMM), v.t.Cutter.NoseMM
	switch {
	case d <= 0:
		return s.DepthMM
	case d > nose:
		return math.Inf(-1)
	}
	return s.DepthMM - nose + math.Sqrt((nose-d)*(nose+d))
}

// near lists the steps that reach a place or the metal left on it.
func (v stepView) near(across float64) []plan.Step {
	var near []plan.Step
	for _, s := range v.t.Steps {
		if math.Abs(s.AcrossMM-across) <= v.reach+v.t.WorstMM {
			near = append(near, s)
		}
	}
	return near
}

// cleared reports whether one of some steps takes the metal at a place.
func (v stepView) cleared(near []plan.Step, across, depth float64) bool {
	for _, s := range near {
		if v.edge(s, across) >= depth {
			return true
		}
	}
	return false
}

// left is the metal left square off the curve at a place of it, no more than the worst that the table says.
func (v stepView) left(across, depth float64, off Point) float64 {
	low, high, near := 0.0, v.t.WorstMM, v.near(across)
	for range 24 { // halved to a millionth
		if mid := (low + high) / 2; v.cleared(near, across+off.X*mid, depth+off.Y*mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// crests draws the curve as a thin line, the metal below it, and the crests on it.
func (c *Canvas) crests(v stepView) {
	var curve, tops []Point
	for _, p := range v.t.Curve {
		n := crestSamples * max(1, len(v.t.Steps)/len(v.t.Curve))
		for i := range n + 1 {
			x := p.FromAcrossMM + (p.ToAcrossMM-p.FromAcrossMM)*float64(i)/float64(n)
			d, off := along(p, x)
			h := v.left(x, d, off) * v.enlarge
			curve, tops = append(curve, v.at(x, d)), append(tops, v.at(x+off.X*h, d+off.Y*h))
		}
	}
	_, deep := v.depths()
	floor := deep*v.scale + metalBelow
	first, last := curve[0], curve[len(curve)-1]
	edge := append(append([]Point{{first.X, floor}, first}, tops...), last, Point{last.X, floor})
	c.Poly(Stays, true, edge...)
	pen := Outline
	if math.Abs(last.X-first.X) < closeCrests*float64(len(v.t.Steps)) {
		pen = Thin
	}
	c.Poly(pen, false, edge...)
	c.Poly(Thin, false, curve...)
}

// stepNumbers writes below the metal the numbers of the steps, each under the place where its step comes nearest to the curve: the first
// and last steps and those at which a person may stop, then others where there is room.
func (c *Canvas) stepNumbers(v stepView) {
	y := c.Bounds().Bottom + 1.5
	var taken []float64
	for _, others := range []bool{false, true} {
		for i, s := range v.t.Steps {
			chief := i == 0 || i == len(v.t.Steps)-1 || s.Stop != ""
			foot := v.touch(s)
			if chief == others || crowded(taken, foot.X) {
				continue
			}
			taken = append(taken, foot.X)
			c.Line(Thin, foot, Point{foot.X, y})
			c.Text(Text{At: Point{foot.X, y + textSize}, Anchor: AtMiddle, Size: textSize, Bold: chief, Text: strconv.Itoa(i + 1)})
		}
	}
}

// touch is the place of the curve that a step comes nearest to.
func (v stepView) touch(s plan.Step) Point {
	var best Point
	least := math.Inf(1)
	for _, p := range v.t.Curve {
		from, to := max(p.FromAcrossMM, s.AcrossMM-v.reach), min(p.ToAcrossMM, s.AcrossMM+v.reach)
		for i := range crestSamples + 1 {
			x := from + (to-from)*float64(i)/crestSamples
			if d, off := along(p, x); from <= to && (d-v.edge(s, x))*-off.Y < least {
				best, least = v.at(x, d), (d-v.edge(s, x))*-off.Y
			}
		}
	}
	return best
}

func crowded(taken []float64, x float64) bool {
	for _, t := range taken {
		if math.Abs(t-x) < labelApart {
			return true
		}
	}
	return false
}

// raisedCutter draws the cutter over the middle step at the curve's scale, clear of the crests.
func (c *Canvas) raisedCutter(v stepView) {
	across, depth := v.middle()
	tip := v.at(across, depth)
	tip.Y = min(tip.Y, c.Bounds().Top) - cutterAbove
	if v.t.Along {
		c.raisedKnife(v, tip.Y)
		return
	}
	r, nose := v.reach*v.scale, v.t.Cutter.NoseMM*v.scale
	shank := max(cutterShank, nose+2)
	p := Path{Class: Holder, Start: Point{tip.X - r, tip.Y - shank}, Closed: true, Steps: []Step{
		{To: Point{tip.X - r, tip.Y - nose}},
		{To: Point{tip.X - r + nose, tip.Y}, Radius: nose, Centre: Point{tip.X - r + nose, tip.Y - nose}},
		{To: Point{tip.X + r - nose, tip.Y}},
		{To: Point{tip.X + r, tip.Y - nose}, Radius: nose, Centre: Point{tip.X + r - nose, tip.Y - nose}},
		{To: Point{tip.X + r, tip.Y - shank}},
	}}
	c.Path(p)
	words := units.Decimal(v.t.Cutter.WidthMM, 3) + " mm wide, drawn raised"
	if v.t.Cutter.NoseMM > 0 {
		words = "nose radius " + units.Decimal(v.t.Cutter.NoseMM, 3) + " mm, drawn raised"
	}
	c.Text(Text{At: Point{tip.X + r + 3, tip.Y - shank + textSize}, Anchor: AtStart, Size: noteSize, Text: "Cutter: " + words})
}

// raisedKnife draws a knife over the middle step: square to the axis on its leading side, where across grows, its trailing edge and its flank leaning away.
func (c *Canvas) raisedKnife(v stepView, tipY float64) {
	across, _ := v.middle()
	nose := v.t.Cutter.NoseMM * v.scale
	lead, side := v.at(across+v.reach, 0).X, v.side // the leading side, and which way it looks
	trail := lead - side*knifeBroad
	shank := max(cutterShank, nose+2)
	c.Path(Path{Class: Holder, Start: Point{lead, tipY - shank}, Closed: true, Steps: []Step{
		{To: Point{lead, tipY - nose}},
		{To: Point{lead - side*nose, tipY}, Radius: nose, Centre: Point{lead - side*nose, tipY - nose}, Clockwise: side > 0},
		{To: Point{trail, tipY - knifeBroad*math.Tan(plan.TrailDeg*math.Pi/180)}},
		{To: Point{trail, tipY - shank}},
	}})
	words := "a knife"
	if v.t.Cutter.NoseMM > 0 {
		words += ", nose radius " + units.Decimal(v.t.Cutter.NoseMM, 3) + " mm"
	}
	c.Text(Text{At: Point{max(lead, trail) + 3, tipY - shank + textSize}, Anchor: AtStart, Size: noteSize, Text: "Cutter: " + words + ", fed along; drawn raised"})
}

// middle is the place of the step nearest to the middle of the curve.
func (v stepView) middle() (across, depth float64) {
	half := (v.t.Curve[0].FromAcrossMM + v.t.Curve[len(v.t.Curve)-1].ToAcrossMM) / 2
	if v.t.Along {
		half -= v.reach // a knife's nose is its leading side
	}
	best := v.t.Steps[0]
	for _, s := range v.t.Steps {
		if math.Abs(s.AcrossMM-half) < math.Abs(best.AcrossMM-half) {
			best = s
		}
	}
	return best.AcrossMM, best.DepthMM
}

// ways draws below the curve which way the two dials count.
func (c *Canvas) ways(v stepView) {
	box := c.Bounds()
	y := box.Bottom + 6
	from, to := Point{box.Left, y}, Point{box.Left + awayArrow, y}
	if v.side < 0 {
		from, to = to, from
	}
	c.shaft(to, from)
	words := Text{At: Point{box.Left + awayArrow + 2, y + 1.2}, Anchor: AtStart, Size: noteSize, Text: v.t.AcrossDial + " dial counts this way"}
	c.Text(words)
	x := words.Box().Right + 8
	c.shaft(Point{x, y + 4}, Point{x, y - 4})
	c.Text(Text{At: Point{x + 3, y + 1.2}, Anchor: AtStart, Size: noteSize, Text: v.t.DepthDial + " dial counts into the metal"})
}

// stepNotes says how the sketch is to be read.
func (c *Canvas) stepNotes(v stepView) {
	box := c.Bounds()
	y := box.Bottom + 2
	for _, l := range []string{
		"Curve " + scaleText(v.scale) + ", thin line. Crests drawn " + units.Decimal(v.enlarge, 0) + " times as tall, square to it; the tallest is " + units.Decimal(v.t.WorstMM, 3) + " mm.",
		"The numbers are those of the steps in the table. Do not measure the paper.",
	} {
		for _, part := range Wrap(l, PageWidth-4*pageEdge, noteSize, false) {
			y += LineStep * noteSize
			c.Text(Text{At: Point{box.Left, y}, Anchor: AtStart, Size: noteSize, Text: part})
		}
	}
}

func (v stepView) describe() string {
	parts := []string{fmt.Sprintf("A curve cut in %d steps", len(v.t.Steps)), fmt.Sprintf("crests drawn %s times as tall as the curve's scale", units.Decimal(v.enlarge, 0)),
		"the cutter raised above the work"}
	return strings.Join(parts, ", ") + "."
}
