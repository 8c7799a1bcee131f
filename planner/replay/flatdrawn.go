package replay

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
)

// drawnFlat is a flat part as drawn: between which outlines its rim must lie, and its holes and slots.
type drawnFlat struct {
	part        *partspec.Part
	outline     plane.Region // at its nominal place, edge by edge as drawn
	datum       []bool       // edges that coordinates begin at: they lie where they are
	least, most plane.Set    // the rim must lie between
	columns     []column
	slots       []drawnSlot
}

// column is all that is drawn round one place: a hole, its widened mouth, a bore and a counterbore.
type column struct {
	name   string
	x, y   partspec.Size
	within float64 // radially, where the drawing says so; else the limits of x and y count
	ring   float64 // of a hole of a ring: how far the ring's middle may lie off, beside the limits of x and y
	mated  bool    // its hole lies where that of another part does
	rounds []drawnRound
	tapped []tapping
}

// drawnRound is one diameter of a column, from one face to a depth; or the cone of a countersink.
type drawnRound struct {
	hole      hole
	from      partspec.End
	through   bool
	depth     partspec.Size
	low, high float64 // radius; of a cone at the face
	cone      float64 // included angle, degrees; 0 = a cylinder
	flat      bool    // a blind one's floor must be flat
	corner    float64 // the largest radius that a tool may leave between wall and floor
}

// tapping is a thread in a column.
type tapping struct {
	hole    hole
	thread  *partspec.Thread
	deep    float64 // from the face that it begins from to where it ends to be full
	through bool    // right through: a tap comes out
	floor   float64 // how deep the hole is; 0 = it is open there
	from    partspec.End
}

// drawnSlot is a slot.
type drawnSlot struct {
	name      string
	path      plane.Capsule // at its middle width
	low, high float64       // half width
	within    float64       // how far its ends may lie off
	from      partspec.End
	through   bool
	depth     partspec.Size
}

// drawFlat lays a part's drawing out.
func drawFlat(p *partspec.Part) (drawnFlat, error) {
	d := drawnFlat{part: p}
	var off, on []float64
	for _, e := range p.Outline.Edges {
		edge := plane.Edge{X0: float64(e.X0), Y0: float64(e.Y0), X1: float64(e.X1), Y1: float64(e.Y1)}
		if e.Arc {
			edge.CX, edge.CY, edge.Radius, edge.Hollow = float64(e.CX), float64(e.CY), float64(e.Radius), e.Hollow
		}
		d.outline.Edges = append(d.outline.Edges, edge)
		isDatum := false
		for _, name := range p.Outline.Datum {
			isDatum = isDatum || name == e.Name
		}
		d.datum = append(d.datum, isDatum)
		if isDatum {
			off, on = append(off, 0), append(on, 0)
		} else {
			off, on = append(off, -float64(e.Off)), append(on, float64(e.On))
		}
	}
	least, err1 := d.outline.Moved(off)
	most, err2 := d.outline.Moved(on)
	if err1 != nil || err2 != nil {
		return d, fmt.Errorf("the outline's limits are so wide that its edges no longer meet")
	}
	d.least, d.most = least.Figure(), most.Figure()
	for _, f := range p.Features {
		d.add(f)
	}
	return d, nil
}

// add lays a feature out.
func (d *drawnFlat) add(f partspec.Feature) {
	switch f := f.(type) {
	case *partspec.Bore:
		c := d.columnAt(*f.At)
		c.name = f.ID()
		c.rounds = append(c.rounds, drawnRound{hole: hole{f.Name, 0}, from: f.From, through: f.Through, depth: f.Depth,
			low: float64(f.Diameter.Low) / 2, high: float64(f.Diameter.High) / 2, flat: f.FlatBottom, corner: float64(d.part.InnerCorner)})
	case *partspec.Holes:
		for i, at := range f.Places {
			d.addHole(f, i+1, at)
		}
	case *partspec.Chamfer:
		d.addMouth(f)
	case *partspec.Thread:
		d.addThread(f)
	case *partspec.Slot:
		s := drawnSlot{name: f.Name, low: float64(f.Width.Low) / 2, high: float64(f.Width.High) / 2, from: f.From, through: f.Through, depth: f.Depth,
			path:   plane.Capsule{X0: float64(f.Ends[0].X.Mid()), Y0: float64(f.Ends[0].Y.Mid()), X1: float64(f.Ends[1].X.Mid()), Y1: float64(f.Ends[1].Y.Mid()), Radius: float64(f.Width.Mid()) / 2},
			within: math.Inf(1)}
		for _, e := range f.Ends {
			s.within = math.Min(s.within, math.Min(float64(e.X.Width()), float64(e.Y.Width()))/2)
		}
		d.slots = append(d.slots, s)
	}
}

func (d *drawnFlat) addHole(f *partspec.Holes, number int, at partspec.Point) {
	c := d.columnAt(at)
	c.name = fmt.Sprintf("%s, hole %d", f.ID(), number)
	c.within, c.ring, c.mated = float64(f.Within), ringOff(f), f.Mate != nil
	h := hole{f.Name, number}
	c.rounds = append(c.rounds, drawnRound{hole: h, from: f.From, through: f.Through, depth: f.Depth, low: float64(f.Diameter.Low) / 2, high: float64(f.Diameter.High) / 2})
	if s := f.Sink; s != nil {
		c.rounds = append(c.rounds, drawnRound{hole: h, from: f.From, depth: s.Depth, low: float64(s.Diameter.Low) / 2, high: float64(s.Diameter.High) / 2, cone: float64(s.Angle), flat: true})
	}
	if f.Thread != nil {
		t := tapping{hole: h, thread: f.Thread, deep: float64(f.Thread.Length.Value), through: f.Through, from: f.From}
		if !f.Through {
			t.floor = float64(f.Depth.High)
		}
		c.tapped = append(c.tapped, t)
	}
}

// addMouth lays out the cone that breaks the mouth of a bore.
func (d *drawnFlat) addMouth(f *partspec.Chamfer) {
	b := d.part.Feature(f.Edge.Feature).(*partspec.Bore)
	tan := math.Tan(f.Angle.Radians())
	c := d.columnAt(*b.At)
	c.rounds = append(c.rounds, drawnRound{hole: hole{f.Name, 0}, from: f.Edge.End, low: float64(b.Diameter.Low)/2 + float64(f.Size.Low)*tan, high: float64(b.Diameter.High)/2 + float64(f.Size.High)*tan,
		cone: 2 * float64(f.Angle)})
}

// addThread lays out the thread in a bore.
func (d *drawnFlat) addThread(f *partspec.Thread) {
	b := d.part.Feature(f.On).(*partspec.Bore)
	thick := float64(d.part.Length.Value)
	t := tapping{hole: hole{f.Name, 0}, thread: f, deep: float64(f.Span.Right), from: f.From}
	if f.From == partspec.Right {
		t.deep = thick - float64(f.Span.Left)
	}
	t.through = t.deep >= thick-same
	if !b.Through {
		t.floor = float64(b.Depth.High)
	}
	c := d.columnAt(*b.At)
	c.tapped = append(c.tapped, t)
}

// columnAt finds the column of a place, or begins one.
func (d *drawnFlat) columnAt(at partspec.Point) *column {
	for i := range d.columns {
		if c := &d.columns[i]; math.Hypot(float64(c.x.Mid()-at.X.Mid()), float64(c.y.Mid()-at.Y.Mid())) <= same {
			return c
		}
	}
	d.columns = append(d.columns, column{x: at.X, y: at.Y})
	return &d.columns[len(d.columns)-1]
}

func (c column) place() (x, y float64) { return float64(c.x.Mid()), float64(c.y.Mid()) }

// widest is the radius of the column's largest round.
func (c column) widest() float64 {
	r := 0.0
	for _, d := range c.rounds {
		r = math.Max(r, d.high)
	}
	return r
}

// ringOff is how far the middle of a ring may lie off where no zone is drawn; its holes have their limits from it.
func ringOff(f *partspec.Holes) float64 {
	if f.Circle == nil || f.Within > 0 {
		return 0
	}
	return math.Min(float64(f.Circle.Centre.X.Width()), float64(f.Circle.Centre.Y.Width())) / 2
}

// lies reports whether a hole lies where the column may. The holes of a ring may each lie off its middle, and the middle off its place by as much again as is
// drawn for it, where all were made in one setting and so share what that had off.
func (c column) lies(t taken, x, y float64, together bool) bool {
	dx, dy := math.Abs(x-float64(c.x.Mid())), math.Abs(y-float64(c.y.Mid()))
	if c.mated {
		return math.Hypot(dx, dy) <= figure // held against the mate, cut by cut
	}
	if c.within > 0 {
		return math.Hypot(dx, dy)+t.off <= c.within+figure
	}
	in := func(off, more float64) bool {
		return dx+off <= float64(c.x.Width())/2+more+figure && dy+off <= float64(c.y.Width())/2+more+figure
	}
	if c.ring > 0 && together {
		return in(t.off-t.shared, 0) && in(t.off-t.less, c.ring)
	}
	return in(t.off-t.less, 0)
}

// under is how deep a height lies below the face that a round goes in from.
func (d drawnRound) under(z, back, front float64) float64 {
	if d.from == partspec.Left {
		return z - back
	}
	return front - z
}

// most is the largest radius that a round may have at a height; 0 where it does not reach.
func (d drawnRound) most(z, back, front float64) float64 {
	deep := d.under(z, back, front)
	switch {
	case d.cone > 0:
		return math.Max(0, d.high-deep*math.Tan(d.cone/2*math.Pi/180))
	case d.through || deep <= float64(d.depth.High):
		return d.high
	case d.flat:
		return 0
	}
	return math.Max(0, d.high-(deep-float64(d.depth.High))*math.Tan(plan.CentreDrillDeg/2*math.Pi/180)) // the cone of a drill's point, or of the centre drill before it
}

// least is the smallest radius that a round may have at a height.
func (d drawnRound) least(z, back, front float64) float64 {
	deep := d.under(z, back, front)
	switch {
	case d.cone > 0:
		return math.Max(0, d.low-deep*math.Tan(d.cone/2*math.Pi/180))
	case d.through:
		return d.low
	case deep <= float64(d.depth.Low):
		if in := deep - d.cornerFrom(); in > 0 {
			return d.low - d.corner + math.Sqrt(math.Max(0, d.corner*d.corner-in*in))
		}
		return d.low
	}
	return 0
}

// cornerFrom is how deep the corner between wall and floor may begin.
func (d drawnRound) cornerFrom() float64 { return float64(d.depth.Low) - d.corner }

// levels are the heights at which the least of a round bends.
func (d drawnRound) levels(back, front float64) []float64 {
	switch {
	case d.through || d.corner == 0:
		return nil
	case d.from == partspec.Left:
		return []float64{back + d.cornerFrom()}
	}
	return []float64{front - d.cornerFrom()}
}
