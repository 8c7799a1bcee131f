package replay

import (
	"math"

	"catchplate/partspec"
)

// surface is a surface of the finished work, by a place on it.
type surface struct {
	name   string
	z, r   float64
	plane  bool
	inside bool
	look   float64 // for a plane: the direction in which it looks along the axis
}

// surfaceOf finds a surface of the part on the work.
func (w *walk) surfaceOf(s partspec.Surface) (surface, bool) {
	d := w.drawing(lengthsOf(w.part))
	if s.Feature == "face" {
		z := d.z0
		if s.Face == partspec.Right {
			z = d.z1
		}
		return w.planeAt(s.String(), z, towards(s.Face), false), true
	}
	f := w.part.Feature(s.Feature)
	left, right, ok := spanOfNamed(f)
	if !ok {
		return surface{}, false
	}
	inside, fs := isInside(f), d.outer
	if inside {
		fs = d.inner
	}
	if s.Face == partspec.EndInvalid {
		return w.cylinderAt(s.String(), fs.at(left).at, fs.at(right).at, inside), true
	}
	z := left
	if s.Face == partspec.Right {
		z = right
	}
	return w.planeAt(s.String(), fs.at(z).at, 0, inside), true
}

// cylinderAt is the surface between two faces, by the middle of its widest plain stretch.
func (w *walk) cylinderAt(name string, z0, z1 float64, inside bool) surface {
	c := w.body.Outer
	if inside {
		c = w.body.Inner
	}
	s, width := surface{name: name, z: (z0 + z1) / 2, inside: inside}, 0.0
	for _, p := range c.Clip(z0, z1).Pieces() {
		if p.Z1-p.Z0 > width {
			width, s.z, s.r = p.Z1-p.Z0, (p.Z0+p.Z1)/2, p.At((p.Z0+p.Z1)/2)
		}
	}
	return s
}

// planeAt is the plane face at z. look 0: it looks to where the lower (inside: the wider) neighbour is.
func (w *walk) planeAt(name string, z, look float64, inside bool) surface {
	c := w.body.Outer
	if inside {
		c = w.body.Inner
	}
	left, right := c.At(z)
	if look == 0 {
		look = 1
		if (left < right) != inside {
			look = -1
		}
	}
	if math.IsNaN(left) {
		left = 0
	}
	if math.IsNaN(right) {
		right = 0
	}
	if !inside { // an end face begins at its hole
		hole := math.Max(0, w.body.Inner.Greatest(z-offSurface, z+offSurface))
		left, right = math.Max(left, hole), math.Max(right, hole)
	}
	return surface{name: name, z: z, r: (left + right) / 2, plane: true, inside: inside, look: look}
}

// madeBy is the place in the plan of the cut that made a surface, -1 for the stock's own.
func (w *walk) madeBy(s surface) (setup, op int) {
	if s.plane {
		return w.maker(s.z+2*offSurface*s.look, s.r)
	}
	return w.madeAt(s.z, s.r, s.inside)
}

// roundness is the tightest share of roundness that the grip may take, among the surfaces made in the setup at hand, and whose it is.
func (w *walk) roundness() (limit float64, of string) {
	limit, of = math.Inf(1), "nothing"
	for _, f := range w.part.Features {
		size, ok := diameterOf(f)
		if !ok {
			continue
		}
		left, right, _ := spanOf(f)
		s := w.cylinderAt(f.Head().Name, left, right, isInside(f))
		setup, _ := w.madeBy(s)
		if setup < 0 || w.plan.Setups[setup].Number != w.setup.Number || !finished(2*s.r, size) {
			continue
		}
		allowed := float64(w.part.Roundness)
		if allowed == 0 {
			allowed = float64(size.Width()) / 2
		}
		if share := allowed * roundShare; share < limit {
			limit, of = share, f.Head().ID()
		}
	}
	return limit, of
}

// finished reports whether a diameter lies in the drawn limits.
func finished(d float64, s partspec.Size) bool {
	return d >= float64(s.Low)-same && d <= float64(s.High)+same
}
