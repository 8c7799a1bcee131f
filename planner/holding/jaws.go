package holding

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// BarClearance is the room between the parting cut and the jaws (rule C-35).
const BarClearance = 3.0

// BarGrip is what a bar is gripped by: the jaws of the longest chuck owned, in their whole length.
func BarGrip(w *partspec.Workshop) float64 {
	long := 0.0
	for _, h := range w.Holdings {
		if h.Kind == partspec.ThreeJaw || h.Kind == partspec.FourJaw {
			long = max(long, jawLength(h))
		}
	}
	if long == 0 {
		return usualJawLength
	}
	return long
}

// barFront is where the jaws on a bar begin: off the parting cut, and off what steps a curve there and hangs over the part's end, as far as
// the quickest way has it.
func (s Shop) barFront() float64 {
	barward := -inward(s.Place.Free)
	front := barward*s.Place.BarSide(s.Length) + BarClearance
	for _, t := range s.Tasks {
		minutes, reach := math.Inf(1), math.Inf(-1) // of its quickest way
		for _, w := range t.Ways {
			if t.Process == plan.Steps && w.End == s.Place.Free && w.Minutes < minutes {
				minutes, reach = w.Minutes, max(barward*w.Span[0], barward*w.Span[1])
			}
		}
		front = max(front, reach+jawClearance)
	}
	return barward * front
}

// onStock lists grips on raw metal: on the bar beyond the parting cut, or on one end of a blank.
func (s Shop) onStock(h partspec.Holding) []Mount {
	base := Mount{Holding: h, Surface: "stock", Radius: s.gripRadius(), Minutes: s.minutes(h), RunOut: s.runOut(h, false), RawUntil: true}
	if h.Kind == partspec.SoftJaws || h.Kind == partspec.Collets && s.Part.Stock.Rough {
		return nil
	}
	if s.Place.OnBar() {
		m := base
		m.Free, m.RawUntil = s.Place.Free, false
		front := s.barFront()
		m.Z0, m.Z1 = span(front, front-inward(m.Free)*min(jawLength(h), s.barLeft(front)))
		mounts := []Mount{m}
		if s.Length > shortFrom*2*base.Radius { // a long bar is first gripped close to its end, to face and centre it
			m.RawUntil = true
			front = s.freeEnd(m.Free) - inward(m.Free)*max(shortStand, 2*base.Radius)
			m.Z0, m.Z1 = span(front, front-inward(m.Free)*jawLength(h))
			mounts = append(mounts, m)
			if s.throughSpindle(base.Radius) { // and the piece cut off it close to its other end, for the same
				m.Free = m.Free.Other()
				front = s.freeEnd(m.Free) - inward(m.Free)*max(shortStand, 2*base.Radius)
				m.Z0, m.Z1 = span(front, front-inward(m.Free)*jawLength(h))
				mounts = append(mounts, m)
			}
		}
		return mounts
	}
	var mounts []Mount
	for _, free := range []partspec.End{partspec.Left, partspec.Right} {
		back := 0.0 // the finished end: what stands out beyond it is there or not
		if free == partspec.Left {
			back = s.Length
		}
		for _, grip := range []float64{min(jawLength(h), BarGrip(s.Shop), s.Length-jawClearance), stepGrip} {
			m := base
			m.Free, m.Stop, m.Step = free, grip == stepGrip, grip == stepGrip
			m.Z0, m.Z1 = span(back, back+inward(free)*grip)
			if s.Part.Stock.Kind == partspec.Existing {
				if m.Radius = s.Stock.Outer.Greatest(m.Z0, m.Z1); m.Radius > s.Stock.Outer.Least(m.Z0, m.Z1) {
					continue // jaws do not sit on a step
				}
			}
			mounts = append(mounts, m)
		}
	}
	return mounts
}

// A bar over shortFrom diameters long is also gripped close to its free end, standing out a diameter, or shortStand. Common practice, no source.
const (
	shortFrom  = 3.0
	shortStand = 15.0
)

func (s Shop) freeEnd(free partspec.End) float64 {
	if free == partspec.Right {
		return s.Length
	}
	return 0
}

// stepGrip is how long a blank is gripped with its face hard on the jaw steps.
const stepGrip = 6.5

// barLeft is the length of bar behind the jaws' front.
func (s Shop) barLeft(front float64) float64 {
	if s.Place.Free == partspec.Right {
		return front - s.Place.LeftZ
	}
	return s.Place.RightZ - front
}

// gripRadius is the radius that jaws meet on the stock: across the flats of a hexagon.
func (s Shop) gripRadius() float64 { return float64(s.Part.Stock.Outside.Value) / 2 }

// onOutside lists grips on finished or roughed outside cylinders.
func (s Shop) onOutside(h partspec.Holding) []Mount {
	var mounts []Mount
	for i, b := range s.Blocks {
		if !b.Cylinder() {
			continue
		}
		for _, free := range []partspec.End{partspec.Left, partspec.Right} {
			if !s.passesThrough(i, free) {
				continue
			}
			for _, packed := range packings(h, b) {
				m := Mount{Holding: h, Free: free, Surface: b.Name, Radius: s.blockGrip(b), Packed: packed, Minutes: s.minutes(h) + packing(packed), RunOut: s.runOut(h, packed), Stop: s.seats(i, free) && s.rounded(nearEdge(b, free)) == 0}
				front := nearEdge(b, free)
				if !m.Stop {
					front -= inward(free) * (jawClearance + 0.5)
				}
				front -= inward(free) * s.rounded(nearEdge(b, free))
				back := farEdge(b, free) + inward(free)*s.rounded(farEdge(b, free))
				if over := s.behind(i, h, free, front); over > 0 {
					front, m.Stop = front-inward(free)*over, false
				}
				long := min(jawLength(h), (front-back)*inward(free))
				if long <= 0 {
					continue
				}
				m.Z0, m.Z1 = span(front, front-inward(free)*long)
				mounts = append(mounts, m)
				if m, ok := s.onStep(m, i); ok {
					mounts = append(mounts, m)
				}
			}
		}
	}
	return mounts
}

// chuckHollow is how far work that does not go through the spindle reaches back into a chuck behind its jaws, beside their own length, mm. Common practice, no source.
const chuckHollow = 25.0

// behind is how much too far work gripped from a front reaches back where it is too wide for the spindle: the jaws must take it so much further back.
func (s Shop) behind(i int, h partspec.Holding, free partspec.End, front float64) float64 {
	if s.throughSpindle(s.Blocks[i].Greatest) {
		return 0
	}
	return math.Abs(front-s.freeEnd(free.Other())) - 2*jawLength(h) - chuckHollow
}

// onStep is a grip on the block at the held end, with the end's face hard on the jaw steps: for discs, which are too short to be held by their outside
// alone (rule B-27). Soft jaws are bored with a floor for it; a collet has none.
func (s Shop) onStep(m Mount, block int) (Mount, bool) {
	end := m.Free.Other()
	if m.Stop || !s.ends(block, end) || m.Holding.Kind == partspec.Collets || s.land(end) < shoulderSeat {
		return m, false
	}
	back, front := s.freeEnd(end), m.front()
	m.Stop, m.Step = true, true
	m.Z0, m.Z1 = span(back, back+inward(m.Free)*min(stepGrip, math.Abs(front-back)))
	return m, s.disc(m)
}

// ends reports whether a block is the part's last towards an end.
func (s Shop) ends(block int, end partspec.End) bool {
	if end == partspec.Left {
		return block == 0
	}
	return block == len(s.Blocks)-1
}

// land is how wide an end's finished face is, from its hole to its edge.
func (s Shop) land(end partspec.End) float64 {
	z := s.freeEnd(end) - inward(end)*faceLook
	return s.Rim(end) - max(0, s.end.Inner.Greatest(z-faceLook/2, z+faceLook/2))
}

// Rim is the radius of an end's finished face, its edge broken.
func (s Shop) Rim(end partspec.End) float64 {
	z := s.freeEnd(end) - inward(end)*faceLook
	return s.end.Outer.Least(z-faceLook/2, z+faceLook/2)
}

// rounded is how far the fillet in the corner at an edge reaches along the work from it: jaws keep clear of that.
func (s Shop) rounded(z float64) float64 {
	most := 0.0
	for _, f := range s.Part.Features {
		round, ok := f.(*partspec.Fillet)
		if !ok || round.Edge.Convex {
			continue
		}
		for _, b := range s.Blocks {
			if b.Name == round.Edge.Feature && nearEdge(b, round.Edge.End) == z {
				most = max(most, float64(round.Radius.High)+edgeMM)
			}
		}
	}
	return most
}

// blockGrip is the radius jaws meet on a block: across the flats where the block is the stock's hexagon.
func (s Shop) blockGrip(b shape.Block) float64 {
	if b.AsSupplied && s.Part.Stock.Kind != partspec.Existing { // a piece that has its shape already may have several outsides
		return s.gripRadius()
	}
	return b.Greatest
}

// packing is the time to lay soft packing under the jaws. Ours, no source.
func packing(packed bool) float64 {
	if packed {
		return packingMinutes
	}
	return 0
}

const packingMinutes = 2.0

// packings tells whether hard jaws go on bare, packed, or may do either.
func packings(h partspec.Holding, b shape.Block) []bool {
	if h.Kind != partspec.ThreeJaw && h.Kind != partspec.FourJaw {
		return []bool{false}
	}
	return []bool{false, true}
}

func nearEdge(b shape.Block, free partspec.End) float64 {
	if free == partspec.Right {
		return b.Z1
	}
	return b.Z0
}

func farEdge(b shape.Block, free partspec.End) float64 { return nearEdge(b, free.Other()) }

// passesThrough reports whether everything behind a block goes into the chuck's own hole.
func (s Shop) passesThrough(i int, free partspec.End) bool {
	for k, other := range s.Blocks {
		behind := k < i
		if free == partspec.Left {
			behind = k > i
		}
		if behind && (other.Greatest >= s.Blocks[i].Greatest || !s.throughSpindle(other.Greatest)) {
			return false
		}
	}
	return true
}

// throughSpindle reports whether work of a radius goes into the hole through the spindle.
func (s Shop) throughSpindle(radius float64) bool {
	return s.Lathe.SpindleBore == 0 || 2*radius <= float64(s.Lathe.SpindleBore)
}

// seats reports whether the next block towards the free end stands higher, so that its shoulder sits on the jaws' faces.
func (s Shop) seats(i int, free partspec.End) bool {
	k := i + int(inward(free))
	return k >= 0 && k < len(s.Blocks) && s.Blocks[k].Greatest > s.Blocks[i].Greatest+shoulderSeat
}

// shoulderSeat is the least shoulder that jaws can bear on.
const shoulderSeat = 1.5

// plugged lists three-jaw grips with a plug under the jaws.
func (s Shop) plugged(plug partspec.Holding) []Mount {
	var mounts []Mount
	for _, h := range s.Shop.Holdings {
		if h.Kind != partspec.ThreeJaw {
			continue
		}
		for _, m := range s.onOutside(h) {
			if m.Packed && s.hollow(m) {
				m.Plug, m.Minutes, m.Helper = true, m.Minutes+s.minutes(plug), "plug"
				mounts = append(mounts, m)
			}
		}
	}
	return mounts
}

func (s Shop) hollow(m Mount) bool {
	for _, h := range s.Holes {
		if h.Z0 < m.Z1 && h.Z1 > m.Z0 {
			return true
		}
	}
	return false
}
