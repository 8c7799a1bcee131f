package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
	"catchplate/planner/tables"
)

// centred is the part as the lathe sees it once a place runs on the spindle's axis: a disc of its thickness as far out as any metal swings, with the bores of
// that place. All that is known of holes and outsides of turned parts then holds for it.
func (c *Context) centred(x, y float64) *Context {
	sub := *c
	sub.Place = shape.Placement{LeftZ: 0, RightZ: c.Length}
	sub.Stock = centredBody(c.Flat, x, y)
	sub.Stock = solid.Cylinder(0, c.Length, sub.Stock.Outer.Greatest(c.Flat.Back, c.Flat.Front), 0)
	sub.Holes, sub.Blocks = nil, nil
	for _, h := range shape.Holes(c.Part) {
		if b, ok := h.Feature.(*partspec.Bore); ok && b.At != nil && nearPlace(*b.At, x, y) {
			sub.Holes = append(sub.Holes, h)
		}
	}
	return &sub
}

func nearPlace(p partspec.Point, x, y float64) bool {
	return math.Hypot(float64(p.X.Value)-x, float64(p.Y.Value)-y) < sizeNoise
}

// centredBody is flat work as a body of revolution about a place: as far out as any metal swings, with the hole that is there.
func centredBody(f shape.Flat, x, y float64) solid.Body {
	b := solid.Cylinder(f.Back, f.Front, farthest(f.Rim(), x, y), 0)
	for _, h := range f.Holes {
		if math.Hypot(h.X-x, h.Y-y) < sizeNoise {
			b = b.BoreTo(solid.Const(h.Z0, h.Z1, h.Radius))
		}
	}
	return b
}

// farthest is how far a rim reaches from a place.
func farthest(r plane.Region, x, y float64) float64 {
	far := 0.0
	for _, e := range r.Edges {
		far = math.Max(far, math.Max(math.Hypot(e.X0-x, e.Y0-y), math.Hypot(e.X1-x, e.Y1-y)))
		if d := math.Hypot(e.CX-x, e.CY-y); e.IsArc() {
			ux, uy := 1.0, 0.0
			if d > sizeNoise {
				ux, uy = (e.CX-x)/d, (e.CY-y)/d
			}
			if _, _, off := e.Nearest(e.CX+e.Radius*ux, e.CY+e.Radius*uy); off < sizeNoise {
				far = math.Max(far, d+e.Radius)
			}
		}
	}
	return far
}

// aboutPlace turns a task of a turned part, as made for a centred context, into one of the flat part: its metal becomes a hole or an edge cut, and its ways see the
// work as the lathe does.
func (c *Context) aboutPlace(t Task, x, y float64, cut func(o shape.Op) *shape.FlatCut, done func(d Done) *shape.FlatCut) Task {
	t.Flat = cut(t.Op)
	t.Outer, t.Inner, t.Keep = solid.Curve{}, solid.Curve{}, nil
	for i := range t.Ways {
		write := t.Ways[i].Write
		t.Ways[i].Write = func(j Job) (plan.Operation, Done) {
			j.Before = centredBody(j.Flat, x, y)
			j.DatumZ = j.Flat.Front
			if j.Free == partspec.Left {
				j.DatumZ = j.Flat.Back
			}
			op, d := write(j)
			return op, Done{Flat: done(d), Beside: d.Beside}
		}
	}
	return t
}

// latheHole makes the tasks of a bore that is made on the lathe, about its own centre.
func (c *Context) latheHole(f *partspec.Bore) []Task {
	x, y := float64(f.At.X.Value), float64(f.At.Y.Value)
	sub := c.centred(x, y)
	tasks := c.centreMark(f)
	for _, h := range sub.Holes {
		if h.Name != f.Name {
			continue
		}
		chain := sub.hole(h)
		bored := slices.ContainsFunc(chain, func(t Task) bool { return t.Process == plan.BoreOut })
		for _, t := range chain {
			r := 0.0
			if z0, z1, ok := t.Inner.Domain(); ok {
				r = t.Inner.Greatest(z0, z1)
			}
			t.Z0, t.Z1 = math.Max(0, t.Z0), math.Min(c.Length, t.Z1)
			t.Spots = []shape.Spot{{X: x, Y: y, Radius: r}}
			if t.Stage == shape.Finishing {
				t.Place = c.placeWithin(asHoles(f))
				if !bored { // nothing puts right what the drill wandered
					for i := range t.Ways {
						t.Ways[i].Off += turnedWander()
					}
				}
			}
			round := shape.Round{X: x, Y: y, Radius: r, Z0: t.Z0, Z1: t.Z1}
			tasks = append(tasks, c.aboutPlace(t, x, y, func(shape.Op) *shape.FlatCut { return &shape.FlatCut{Holes: []shape.Round{round}} }, func(d Done) *shape.FlatCut {
				made := round
				if z0, z1, ok := d.Inner.Domain(); ok {
					made.Radius = d.Inner.Greatest(z0, z1)
				}
				return &shape.FlatCut{Holes: []shape.Round{made}}
			}))
		}
	}
	return tasks
}

// turnedWander is how far a drill in the lathe lands off the axis of work that turns, once it is spotted: the better end of what spotted drills do.
func turnedWander() float64 {
	row, _ := tables.FindProcess(string(tables.ByDrill))
	return float64(row.RunOut.Low)
}

// rimOf reports whether a stretch of the outline is the rim of work that turns round with nothing in the tool's way: arcs about one centre, and no metal beyond them.
func (c *Context) rimOf(run []int) bool {
	if c.Lathe.Kind == "" || len(run) == 0 {
		return false
	}
	first := c.Flat.Drawn.Edges[run[0]]
	for _, i := range run {
		e := c.Flat.Drawn.Edges[i]
		if !e.IsArc() || e.Hollow || math.Hypot(e.CX-first.CX, e.CY-first.CY) > sizeNoise || math.Abs(e.Radius-first.Radius) > sizeNoise {
			return false
		}
	}
	return farthest(c.Flat.Drawn, first.CX, first.CY) <= first.Radius+sizeNoise && c.cornersClear(run)
}

// cornersClear reports whether the corners that a turned arc does not end at stay inside the least that it may be turned to.
func (c *Context) cornersClear(run []int) bool {
	arc, least := c.Flat.Drawn.Edges[run[0]], math.Inf(1)
	for _, i := range run {
		least = math.Min(least, arc.Radius-float64(c.Part.Outline.Edges[i].Off))
	}
	n := len(c.Flat.Drawn.Edges)
	for i, e := range c.Flat.Drawn.Edges {
		if !slices.Contains(run, i) && !slices.Contains(run, (i+n-1)%n) && math.Hypot(e.X0-arc.CX, e.Y0-arc.CY) > least {
			return false
		}
	}
	return true
}

// turnedAbout reports whether the part is round and its rim is to be turned about a place.
func (c *Context) turnedAbout(at partspec.Point) bool {
	if !c.Part.Flat() || c.Bored[Outlined] == ChainFile {
		return false
	}
	for _, run := range c.runs() {
		if c.rimOf(run) {
			e := c.Flat.Drawn.Edges[run[0]]
			return nearPlace(at, e.CX, e.CY)
		}
	}
	return false
}

// turnRim makes the tasks of a round outline that is turned: sawn near its line, roughed and finished.
func (c *Context) turnRim(run []int) []Task {
	e, drawn := c.Flat.Drawn.Edges[run[0]], c.Part.Outline.Edges[run[0]]
	size := partspec.Size{Basis: drawn.Basis}
	size.Value = units.Length(2 * e.Radius)
	size.Low, size.High = size.Value-2*drawn.Off, size.Value+2*drawn.On
	sub := c.centred(e.CX, e.CY)
	place := 0.0
	if len(c.Part.Outline.Datum) > 0 { // a disc's coordinates are laid about its rim; another arc lies off by where its centre was found
		sub.rimShare, place = sizeShare, (1-sizeShare)*float64(min(drawn.Off, drawn.On))
	}
	tasks := append(c.markEdges(run), c.sawRun(run)...)
	stands := e.Radius + sawLeaves + sawWithin
	if len(tasks) == 0 {
		stands = farthest(c.Flat.Rim(), e.CX, e.CY)
	}
	sub.Stock = solid.Cylinder(0, c.Length, stands, 0)
	if !c.Flat.Blank.Empty() {
		sub.rimRound = c.roundWithin(e)
	}
	spigot := &partspec.Spigot{FeatureHead: partspec.FeatureHead{Word: "edge", Name: drawn.Name}, Diameter: size}
	sub.Blocks = []shape.Block{{Feature: spigot, Name: "edge." + drawn.Name, Z1: c.Length, Curve: solid.Const(0, c.Length, e.Radius), Least: e.Radius, Greatest: e.Radius, Diameter: size}}
	for _, t := range sub.outsides() {
		left := 0.0
		if z0, z1, ok := t.Outer.Domain(); ok {
			left = t.Outer.Greatest(z0, z1) - e.Radius
		}
		t.Feature = "edge." + drawn.Name
		if t.Stage == shape.Finishing {
			t.Makes = c.edgeNames(run)
			t.Place, t.Zone = place, true
		}
		tasks = append(tasks, c.aboutPlace(t, e.CX, e.CY, func(shape.Op) *shape.FlatCut { return edgeCuts(run, left) }, func(d Done) *shape.FlatCut {
			if z0, z1, ok := d.Outer.Domain(); ok && left > 0 {
				return edgeCuts(run, d.Outer.Greatest(z0, z1)-e.Radius)
			}
			return edgeCuts(run, left)
		}))
	}
	return tasks
}

// sizeShare is the part of a turned arc's limits that its size has; where it lies has the rest. Ours, no source.
const sizeShare = 0.5

// rimRange is the width of the diameter that a sawn rim's first cut is measured to, mm: a caliper takes it surely. Ours, no source.
const rimRange = 0.2

// roundWithin is the radius at which a sawn rim is sure to be cut all round: within what the saw leaves at the least and within the blank, but no nearer to the
// finished line than roughing goes.
func (c *Context) roundWithin(e plane.Edge) float64 {
	sure := e.Radius + sawLeaves - sawWithin
	for _, side := range c.Flat.Blank.Edges {
		_, _, d := side.Nearest(e.CX, e.CY)
		sure = math.Min(sure, d)
	}
	return math.Max(sure-rimRange/2, e.Radius+leaveRadius)
}

// cutRound takes light cuts from a sawn rim until the tool cuts all round. How far the saw left it is not known, so that ends by measuring; the card counts on
// from the diameter measured. Where that is nearer to the finished radius than the saw is sure, the last light cut that is not is measured as well.
func (p *page) cutRound(before, first, finished float64, start, stop int64) {
	deepest, sure := p.dialled(), 0
	near := first < finished+sawWithin
	if near {
		deepest = math.Max(deepest/2, deepest-rimRange/4) // as after the rim is round
	}
	n := passes(before-first, deepest)
	for k := 1; k < n && near; k++ {
		if _, r := p.cross(before + (first-before)*float64(k)/float64(n)); r >= finished+sawWithin+rimRange/2 {
			sure = k
		}
	}
	for k := 1; k <= n; k++ {
		marks, r := p.cross(before + (first-before)*float64(k)/float64(n))
		name := fmt.Sprintf("light cut %d", k)
		if k == sure {
			p.cut(name, at(marks, start), at(marks, stop), &plan.Measured{What: "diameter", LowMM: 2*r - rimRange/2, HighMM: 2*r + rimRange/2})
			p.line(name, "cross", marks, p.diameter(r), "measure over the corners that it has cut; turn the dial's ring to this reading and count on from it", true)
			continue
		}
		if k < n {
			p.cut(name, at(marks, start), at(marks, stop), nil)
			p.line(name, "cross", marks, p.diameter(r), "the saw may have left it off by as much as "+p.both(sawWithin, "cross")+": light cuts", false)
			continue
		}
		p.cut(name, at(marks, start), at(marks, stop), &plan.Measured{What: "diameter", LowMM: 2*first - rimRange/2, HighMM: 2*first + rimRange/2})
		p.line(name, "cross", marks, p.diameter(r), "when it cuts all round, measure; turn the dial's ring to this reading and count on from it", true)
	}
	p.why("a saw wanders: nothing is counted from a sawn rim before it is round and measured", "A-40")
}

// byMeasuring is the setting for a size that the dial is only a guide to: the middle of its limits, and no farther from it than a caliper tells.
func (p *page) byMeasuring(low, high float64) aim {
	middle, half := (low+high)/2, math.Min(high-low, rimRange)/2
	marks, _ := p.cross(middle / 2)
	return aim{marks, middle / 2, &plan.Measured{What: "diameter", LowMM: middle - half, HighMM: middle + half}}
}

// aimedWithin are the limits that a turned diameter is brought within: those drawn, or of an arc its share of them.
func (c *Context) aimedWithin(size partspec.Size) (low, high float64) {
	low, high = float64(size.Low), float64(size.High)
	if c.rimShare > 0 {
		middle, half := (low+high)/2, c.rimShare*(high-low)/2
		low, high = middle-half, middle+half
	}
	return low, high
}
