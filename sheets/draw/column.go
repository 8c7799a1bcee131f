package draw

import (
	"sort"
	"strconv"
	"strings"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// item is a label in the column at the free end, with the place beside the work that it belongs to.
type item struct {
	y     float64
	way   heading // of a cut; headingInvalid for a zero
	lines []string
	bold  bool
}

const (
	columnOff  = 16.0 // from the free end to the labels
	tailOff    = 30.0 // and past a tailstock centre
	columnText = 46.0 // widest label
	arrowApart = 3.0  // least distance of two arrows into the work
	columnGap  = 1.5  // between two labels
)

// column draws the arrows into the bore and the zeros of the cross slide, with labels below one another; it gives the lowest place taken.
func (c *Canvas) column(sc *scene, cuts []cutMark) float64 {
	items := append(insideItems(sc, cuts), crossZeros(sc)...)
	sort.SliceStable(items, func(i, j int) bool { return items[i].y < items[j].y })
	for i := 1; i < len(items); i++ {
		items[i].y = max(items[i].y, items[i-1].y+arrowApart)
	}
	x := sc.xFree + columnOff
	if sc.setup.Tailstock {
		x = sc.xFree + tailOff
	}
	bottom := 0.0
	for i, top := range tops(items, -sc.reach) {
		it := items[i]
		middle := top + it.height()/2
		c.pointer(sc, it, Point{x - 1, middle})
		for j, line := range it.lines {
			y := top + float64(j)*lineStep + ascent*textSize
			c.Text(Text{At: Point{x, y}, Anchor: AtStart, Size: textSize, Bold: it.bold, Text: line})
		}
		bottom = max(bottom, top+it.height())
	}
	return bottom
}

func (it item) height() float64 { return float64(len(it.lines)) * lineStep }

// tops finds the upper edge of each label: beside its place, but below the one before, and none above the highest.
func tops(items []item, highest float64) []float64 {
	out := make([]float64, len(items))
	for i, it := range items {
		out[i] = max(it.y-it.height()/2, highest)
		if i > 0 {
			out[i] = max(out[i], out[i-1]+items[i-1].height()+columnGap)
		}
	}
	return out
}

// pointer is the arrow or the mark of zero at the work, and the line from there to the label.
func (c *Canvas) pointer(sc *scene, it item, label Point) {
	near, far := Point{sc.xFree + 1, it.y}, Point{sc.xFree + 1 + cutLong, it.y}
	switch it.way {
	case headingInvalid:
		c.Line(Thin, near, far)
		c.Circle(Head, near, 0.8)
	case toFree:
		c.shaft(far, near)
	default:
		c.shaft(near, far)
	}
	c.Line(Thin, far, label)
}

func insideItems(sc *scene, cuts []cutMark) []item {
	var items []item
	for _, m := range cuts {
		y := -max(m.place.r*sc.v.scale-1.5, m.place.r*sc.v.scale/2)
		items = append(items, item{y, m.way, m.lines, true})
	}
	return items
}

// mostCrossZeros is how many zeros of the cross slide are shown; where there are more, each operation's own line must serve.
const mostCrossZeros = 3

// crossZeros are the diameters at which the cross slide's dial is set to nought.
func crossZeros(sc *scene) []item {
	zeros := zerosOf(sc.setup, "cross")
	if len(zeros) > mostCrossZeros {
		return nil
	}
	var items []item
	for _, z := range zeros {
		text := "cross 0 at Ø" + units.Decimal(z.referenceMM, 2) + " (" + z.numbers(sc.setup) + ")"
		items = append(items, item{y: z.referenceMM / 2 * sc.v.scale, lines: Wrap(text, columnText, textSize, false)})
	}
	return items
}

// zeroGroup is one place of nought with the operations that set it.
type zeroGroup struct {
	dial        string
	referenceMM float64
	operations  []int // their places in the holding's list
}

// numbers names the operations, runs of neighbours by their first and last.
func (z zeroGroup) numbers(s *plan.Setup) string {
	var out []string
	for i := 0; i < len(z.operations); {
		j := i
		for j+1 < len(z.operations) && z.operations[j+1] == z.operations[j]+1 {
			j++
		}
		text := strconv.Itoa(s.Operations[z.operations[i]].Number)
		if j > i {
			text += " to " + strconv.Itoa(s.Operations[z.operations[j]].Number)
		}
		out = append(out, text)
		i = j + 1
	}
	return strings.Join(out, ", ")
}

// zerosOf collects the zeros of some dials, in the order in which they are first set.
func zerosOf(s *plan.Setup, dials ...string) []zeroGroup {
	var out []zeroGroup
	for i, op := range s.Operations {
		for _, z := range op.Zeros {
			if contains(dials, z.Dial) {
				out = addZero(out, z, i)
			}
		}
	}
	return out
}

func addZero(groups []zeroGroup, z plan.Zero, operation int) []zeroGroup {
	for i, g := range groups {
		if g.dial == z.Dial && g.referenceMM == z.ReferenceMM {
			if n := g.operations; n[len(n)-1] != operation {
				groups[i].operations = append(n, operation)
			}
			return groups
		}
	}
	return append(groups, zeroGroup{z.Dial, z.ReferenceMM, []int{operation}})
}

func contains(list []string, s string) bool {
	for _, l := range list {
		if l == s {
			return true
		}
	}
	return false
}
