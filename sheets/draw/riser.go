package draw

// A riser is a label that stands beside the work at the end of a line: the line rises from the work, away from the axis, and the label's
// first or last letter stands at it. Labels left of a parting go outwards to the left, the others to the right, and each stands farther
// out than every label whose line it would else cut. So no label meets another one or another one's line.
type riser struct {
	x     float64
	lines []string
	bold  bool
}

// flag is a riser with its place found.
type flag struct {
	riser
	toLeft bool
	near   float64 // distance from the rows' base to the label's near edge
}

const (
	riserGap  = 2.5 // least distance of two risers
	flagPad   = 1.0 // white around a label
	flagGap   = 1.2 // between two labels, one farther out than the other
	lineStep  = LineStep * textSize
	shelfDrop = 1.0 // from a label's last base line to its shelf
)

func (r riser) width() float64 {
	w := 0.0
	for _, l := range r.lines {
		w = max(w, Width(l, textSize, r.bold))
	}
	return w + 2*flagPad
}

func (r riser) height() float64 { return float64(len(r.lines))*lineStep + shelfDrop }

func (f flag) far() float64 { return f.near + f.height() }

// span is the room of the label along the axis.
func (f flag) span() (left, right float64) {
	if f.toLeft {
		return f.x - f.width(), f.x
	}
	return f.x, f.x + f.width()
}

// spread moves sorted risers apart where they stand too close.
func spread(risers []riser) []riser {
	out := append([]riser(nil), risers...)
	xs := make([]float64, len(out))
	for i, r := range out {
		xs[i] = r.x
	}
	for i, x := range apart(xs, riserGap) {
		out[i].x = x
	}
	return out
}

// apart moves sorted places so that neighbours keep a gap, with the least sum of squared shifts: places less i gaps must not fall, and the
// nearest such run is found by pooling neighbours that are out of order at their mean.
func apart(places []float64, gap float64) []float64 {
	type pool struct {
		sum   float64
		count int
	}
	var pools []pool
	for i, p := range places {
		pools = append(pools, pool{p - float64(i)*gap, 1})
		for n := len(pools); n > 1 && pools[n-2].sum*float64(pools[n-1].count) > pools[n-1].sum*float64(pools[n-2].count); n-- {
			pools[n-2].sum += pools[n-1].sum
			pools[n-2].count += pools[n-1].count
			pools = pools[:n-1]
		}
	}
	var out []float64
	for _, p := range pools {
		for range p.count {
			out = append(out, p.sum/float64(p.count)+float64(len(out))*gap)
		}
	}
	return out
}

// stack finds a place for every riser. Risers must be sorted and apart. Of all partings it takes one that keeps the labels between the
// bounds, or else spills least, and of these the lowest.
func stack(risers []riser, left, right float64) []flag {
	var best []flag
	bestCost := 0.0
	for part := 0; part <= len(risers); part++ {
		flags := stackAt(risers, part)
		cost := costOf(flags, left, right)
		if best == nil || cost < bestCost {
			best, bestCost = flags, cost
		}
	}
	return best
}

// spillPrice makes a millimetre beyond the bounds count as this many millimetres of height.
const spillPrice = 20.0

func costOf(flags []flag, left, right float64) float64 {
	height, spill := 0.0, 0.0
	for _, f := range flags {
		l, r := f.span()
		height = max(height, f.far())
		spill = max(spill, left-l, r-right)
	}
	return height + spill*spillPrice
}

// stackAt sends the first part labels to the left and the rest to the right.
func stackAt(risers []riser, part int) []flag {
	flags := make([]flag, len(risers))
	for i, r := range risers {
		flags[i] = flag{riser: r, toLeft: i < part}
	}
	for i := 0; i < part; i++ {
		settle(flags[:i], &flags[i])
	}
	for i := len(flags) - 1; i >= part; i-- {
		settle(flags[i+1:], &flags[i])
	}
	return flags
}

// settle puts a label beyond all those whose lines or labels its own would meet.
func settle(settled []flag, f *flag) {
	left, right := f.span()
	for _, o := range settled {
		if l, r := o.span(); l < right+flagPad && left < r+flagPad {
			f.near = max(f.near, o.far()+flagGap)
		}
	}
}

// flags draws labels whose rows begin at base and go up (away = -1) or down (away = 1). starts holds where each riser's line comes from.
func (c *Canvas) flags(flags []flag, base, away float64, starts []float64) {
	for i, f := range flags {
		near, far := base+away*f.near, base+away*f.far()
		shelf := max(near, far) // the lower edge on paper
		left, right := f.span()
		c.Line(Thin, Point{f.x, starts[i]}, Point{f.x, shelf})
		c.Line(Thin, Point{left, shelf}, Point{right, shelf})
		c.block(f, left+flagPad, min(near, far))
	}
}

// block writes a label's lines below one another, from the top of its room.
func (c *Canvas) block(f flag, left, top float64) {
	for i, line := range f.lines {
		y := top + float64(i)*lineStep + ascent*textSize
		c.Text(Text{At: Point{left, y}, Anchor: AtStart, Size: textSize, Bold: f.bold, Text: line})
	}
}
