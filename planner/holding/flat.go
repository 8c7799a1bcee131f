package holding

import (
	"encoding/binary"
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plane"
	"catchplate/planner/process"
	"catchplate/planner/shape"
)

// flatMounts lists the ways to hold a flat part: at the bench, then in the order of the workshop's holdings.
func (s Shop) flatMounts() []Mount {
	mounts := s.flatBench()
	for _, h := range s.Shop.Holdings {
		switch h.Kind {
		case partspec.Vice:
			mounts = append(mounts, s.inVice(h)...)
		case partspec.VerticalSlide:
			if vice, ok := s.viceOf(h); ok {
				mounts = append(mounts, sprung(s.inVice(vice))...)
			}
		case partspec.TableClamps:
			mounts = append(mounts, s.clampedDown(h)...)
		case partspec.Faceplate:
			mounts = append(mounts, s.onFaceplate(h)...)
		case partspec.AnglePlate:
			mounts = append(mounts, s.onAnglePlate(h)...)
		case partspec.FourJaw:
			mounts = append(mounts, s.inFourJaw(h)...)
		case partspec.ThreeJaw, partspec.SoftJaws:
			mounts = append(mounts, s.onDisc(h)...)
		case partspec.StubMandrel, partspec.PlainMandrel, partspec.ExpandingMandrel:
			mounts = append(mounts, s.inFlatBore(h)...)
		case partspec.GluedArbor:
			mounts = append(mounts, s.gluedFlat(h)...)
		}
	}
	for i := range mounts {
		mounts[i].Flat = true
		mounts[i].ID = mounts[i].flatName()
	}
	return mounts
}

// faces are the two ways a flat part may lie.
func faces() [2]partspec.End { return [2]partspec.End{partspec.Right, partspec.Left} }

// FaceName is the word for the face of a flat part at an end.
func FaceName(e partspec.End) string {
	if e == partspec.Left {
		return "back"
	}
	return "front"
}

func (m Mount) flatName() string {
	id := fmt.Sprintf("%s on %s", m.Holding.Name, m.Surface)
	if m.Machine != "" && m.Machine != partspec.Bench {
		id += fmt.Sprintf(", %s", m.table())
	}
	if m.About != "" {
		id += ", about " + m.About
	}
	if m.By != "" {
		id += " by " + string(m.By)
	}
	return fmt.Sprintf("%s, %s up", id, FaceName(m.Free))
}

// flatBody is the flat part once the tasks done have been carried out.
func (s Shop) flatBody(done func(int) bool) shape.Flat {
	key := s.key(done)
	if f, ok := s.flats[key]; ok {
		return f
	}
	f := s.Flat
	for i, t := range s.Tasks {
		if done(i) && t.Flat != nil {
			f = t.Flat.Apply(f)
		}
	}
	s.flats[key] = f
	return f
}

// outlineKey is a mount and the state of the outline that it holds: holes and faces do not move what presses on the edges.
type outlineKey struct {
	mount   string
	outline int
}

// edgesKey names the tasks done that move edges.
func (s Shop) edgesKey(done func(int) bool) uint64 {
	key := uint64(0)
	for _, i := range s.edging {
		if done(i) {
			key |= 1 << i
		}
	}
	return key
}

// outline is the number under which the outline at a moment is kept.
func (s Shop) outline(at moment) int {
	key := s.edgesKey(at.done)
	n, ok := s.outlines[key]
	if ok {
		return n
	}
	var left []byte
	for _, l := range at.flat.Left {
		left = binary.LittleEndian.AppendUint64(left, math.Float64bits(l))
	}
	if n, ok = s.byLeft[string(left)]; !ok {
		n = len(s.rims)
		s.byLeft[string(left)], s.rims = n, append(s.rims, at.flat.Rim())
	}
	s.outlines[key] = n
	return n
}

// rim is the outline at a moment. It is kept: nobody writes to it.
func (s Shop) rim(at moment) plane.Region { return s.rims[s.outline(at)] }

// rawRim is the outline of the blank.
func (s Shop) rawRim() plane.Region { return s.rim(moment{flat: s.Flat, done: none}) }

func none(int) bool { return false }

// sameSpot is how far two drawn places may lie apart and still be one: rounding of coordinates.
const sameSpot = 1e-6

// MiddleBore is the task that makes a bore about the origin that a table can be set by, or -1.
func (s Shop) MiddleBore() int {
	for _, b := range s.bores() {
		if math.Hypot(b.x, b.y) <= sameSpot && b.radius >= WideHole {
			return s.maker(b.Name)
		}
	}
	return -1
}

// WideHole is the radius from which on a hole counts as weakening a plate that is squeezed, and from which on a table is set by it. Ours, no source.
const WideHole = 5.0

func wide(holes []shape.Round) bool {
	for _, h := range holes {
		if h.Radius >= WideHole {
			return true
		}
	}
	return false
}

// moment is the work as it lies at some moment, and what is to be done to it then.
type moment struct {
	flat  shape.Flat
	done  func(int) bool
	tasks []int
	ways  []process.Way
	light float64
}

// atDatum is how far the work may lie from where the dials have it once two of its edges have been found, radially.
func (s Shop) atDatum() float64 { return math.Sqrt2 * s.edgeError() }

// uprights lists the machines, beside the lathe, on whose table work can lie in a holding.
func (s Shop) uprights(h partspec.Holding) []partspec.MachineKind {
	var list []partspec.MachineKind
	if s.Mill.Kind != "" && s.stands(h, partspec.Mill) {
		list = append(list, partspec.Mill)
	}
	if s.Drill.Kind != "" && h.Dial.Name == "" {
		list = append(list, partspec.Drill)
	}
	return list
}
