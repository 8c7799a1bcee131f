package holding

import (
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// onBore lists mandrels in a finished bore.
func (s Shop) onBore(h partspec.Holding) []Mount {
	var mounts []Mount
	for _, hole := range s.Holes {
		if _, plain := hole.Feature.(*partspec.Bore); !plain || !fitsMandrel(h, 2*hole.Radius) {
			continue
		}
		for _, free := range []partspec.End{partspec.Left, partspec.Right} {
			if !hole.Through && hole.From == free {
				continue // the mandrel comes in at the mouth, from the headstock
			}
			z0, z1 := s.wall(hole)
			if !s.atFace(z0, z1, free.Other()) && (h.Kind != partspec.StubMandrel || s.threadIn(hole.Name) != nil) {
				continue // a larger hole in the mouth; a spigot turned in place is made long enough to pass it
			}
			z0, z1 = s.seat(hole.Name, z0, z1, free)
			m := Mount{Holding: h, Free: free, Surface: hole.Name, Inside: true, Z0: z0, Z1: z1, Radius: hole.Radius, Minutes: s.minutes(h), RunOut: s.runOut(h, false), Stop: h.Kind == partspec.StubMandrel, Helper: mandrelHelper(h)}
			if t := s.threadIn(hole.Name); t != nil {
				if h.Kind != partspec.StubMandrel {
					continue // a plain one would ride on the crests
				}
				m.Threaded, m.Helper, m.Minutes = true, "threaded mandrel", m.Minutes+threadedMore
				m.Surface, m.RunOut = t.Name, threadedRunOut
				m.Z0, m.Z1 = s.seat(hole.Name, float64(t.Span.Left), float64(t.Span.Right), free)
			}
			if h.Kind == partspec.StubMandrel && !m.Threaded {
				mounts = append(mounts, s.stubs(m)...)
				continue
			}
			mounts = append(mounts, m)
		}
	}
	return mounts
}

// What a screw or a key needs to reach a stub mandrel from in front, on diameter, the washer's rim round the hole, on radius, and what a drilled hole may be wider than
// drawn. Common practice, no source.
const (
	leastScrew = 3.0
	washerRim  = 2.0
	washerMore = 0.1
	splitMore  = 5.0 // minutes to drill, tap, countersink and slit a mandrel
)

// stubs lists the two ways in which a spigot turned in place holds work, both by a screw that comes in from in front: with a washer, which presses the work on the
// shoulder and covers the free face; or with a taper head, which spreads the spigot, slit crosswise, and leaves the free face open.
func (s Shop) stubs(m Mount) []Mount {
	way := 2 * s.wayOut(m)
	if way < leastScrew {
		return nil
	}
	split := m
	split.Split, split.Helper, split.Minutes = true, "split mandrel", m.Minutes+splitMore
	front := s.Blocks[0]
	if m.Free == partspec.Right {
		front = s.Blocks[len(s.Blocks)-1]
	}
	m.Washer, m.Screw = math.Ceil(2*(s.faceHole(m.Free)+washerRim)+washerMore)/2, min(largeScrew, 2*m.Radius*screwShare, way-screwPlay)
	if front.Least < m.Washer+jawClearance || m.Screw < leastScrew {
		return []Mount{split}
	}
	return []Mount{m, split}
}

// screwPlay is how much wider than a screw the hole is that it goes through. ISO 273, medium, M4 to M8, rounded down.
const screwPlay = 0.5

// wayOut is the radius of the narrowest hole between a mandrel and the free end; 0 where there is none all the way.
func (s Shop) wayOut(m Mount) float64 {
	from, to := m.Z1, s.Length
	if m.Free == partspec.Left {
		from, to = 0, m.Z0
	}
	stops := []float64{from, to}
	for _, h := range s.Holes {
		for _, z := range []float64{h.Z0, h.Z1} {
			if z > from && z < to {
				stops = append(stops, z)
			}
		}
	}
	slices.Sort(stops)
	least := m.Radius
	for i := 1; i < len(stops); i++ {
		at, open := (stops[i-1]+stops[i])/2, 0.0
		for _, h := range s.Holes {
			if h.Z0 <= at && at <= h.Z1 {
				open = max(open, h.Radius)
			}
		}
		least = min(least, open)
	}
	return least
}

// A threaded mandrel takes longer to make than a plain one, and locates with the play of its thread. Ours, no source.
const (
	threadedMore   = 10.0
	threadedRunOut = 0.03
)

// threadIn is the thread in a bore, or nil.
func (s Shop) threadIn(bore string) *partspec.Thread {
	for _, f := range s.Part.Features {
		if t, ok := f.(*partspec.Thread); ok && t.Inside && t.On == bore {
			return t
		}
	}
	return nil
}

func mandrelHelper(h partspec.Holding) string {
	if h.Kind == partspec.StubMandrel {
		return "stub mandrel"
	}
	return ""
}

// atFace reports whether a wall begins at the face of an end.
func (s Shop) atFace(z0, z1 float64, end partspec.End) bool {
	if end == partspec.Left {
		return z0 <= 0
	}
	return z1 >= s.Length
}

// wall is the stretch of a hole's own wall that larger holes in its mouth leave.
func (s Shop) wall(h shape.Hole) (z0, z1 float64) {
	z0, z1 = h.Z0, h.Z1
	for _, o := range s.Holes {
		if o.Radius <= h.Radius || o.Name == h.Name {
			continue
		}
		if o.From == partspec.Left && o.Z0 <= z0 {
			z0 = max(z0, o.Z1)
		}
		if o.From == partspec.Right && o.Z1 >= z1 {
			z1 = min(z1, o.Z0)
		}
	}
	return z0, z1
}

// seat is the part of a wall that a mandrel bears on: clear of chamfers at its mouths, and of a face that is still to be cut to length.
func (s Shop) seat(name string, z0, z1 float64, free partspec.End) (float64, float64) {
	for _, f := range s.Part.Features {
		c, ok := f.(*partspec.Chamfer)
		if !ok || c.Edge.Feature != name {
			continue
		}
		if c.Edge.End == partspec.Left {
			z0 = max(z0, float64(c.Edge.Z+c.Size.High))
		} else {
			z1 = min(z1, float64(c.Edge.Z-c.Size.High))
		}
	}
	if free == partspec.Left {
		z0 = max(z0, seatClear)
	} else {
		z1 = min(z1, s.Length-seatClear)
	}
	return z0, z1
}

// seatClear is how far a mandrel stays back from the free face. Common practice, no source.
const seatClear = 0.5

// tapped reports whether a thread is cut in a stretch of a hole: glue would fill it.
func (s Shop) tapped(z0, z1 float64) bool {
	for _, t := range s.Tasks {
		if t.Inside && (t.Process == plan.Thread || t.Process == plan.Tap) && t.Touches(z0, z1) {
			return true
		}
	}
	return false
}

func fitsMandrel(h partspec.Holding, d float64) bool {
	if h.Kind == partspec.PlainMandrel {
		for _, s := range h.Sizes {
			if math.Abs(float64(s)-d) < plainMandrelFit {
				return true
			}
		}
		return false
	}
	return (h.Smallest == 0 || d >= float64(h.Smallest)) && (h.Largest == 0 || d <= float64(h.Largest))
}

// plainMandrelFit is how far a bore may be off a plain mandrel's size: its taper of 0.5 mm a metre takes up no more (rule B-12).
const plainMandrelFit = 0.03

// glued lists arbors glued to a face, and into a bore.
func (s Shop) glued(h partspec.Holding) []Mount {
	var mounts []Mount
	for _, free := range []partspec.End{partspec.Left, partspec.Right} {
		held := free.Other()
		m := Mount{Holding: h, Free: free, Surface: "face." + held.String(), Radius: s.Rim(held), Minutes: s.minutes(h), RunOut: s.runOut(h, false), Stop: true, Glue: GlueFace, Helper: "arbor"}
		if held == partspec.Right {
			m.Z0, m.Z1 = s.Length, s.Length
		}
		mounts = append(mounts, m)
		for _, hole := range s.Holes {
			if _, plain := hole.Feature.(*partspec.Bore); plain && fitsMandrel(h, 2*hole.Radius) && (hole.Through || hole.From == held) {
				g := m
				g.Glue, g.Surface, g.Inside, g.Radius, g.RunOut = GlueBore, hole.Name, true, hole.Radius, 0.02
				z0, z1 := s.wall(hole)
				if !s.atFace(z0, z1, held) || s.tapped(z0, z1) {
					continue
				}
				g.Z0, g.Z1 = s.seat(hole.Name, z0, z1, free)
				mounts = append(mounts, g)
			}
		}
	}
	return mounts
}
