package holding

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// squeeze fills in the wall under the grip once the cut is done, the error that the grip leaves, and what of it may pass: a third of the roundness of
// what is made round in this grip (rule B-23). What was made round before it was gripped springs back, as long as nothing yields.
func (s Shop) squeeze(c *rules.Case, f *Figures, m Mount, t process.Task, body solid.Body) {
	if m.Glue != NoGlue || m.Between || m.Machine == partspec.Bench || m.GripKind() == "clamps" || m.Across {
		return
	}
	_, c.Wall = s.truly(body.Outer.Greatest(m.Z0, m.Z1), body.LeastWall(m.Z0, m.Z1))
	f.Wall = c.Wall
	if m.Inside {
		return
	}
	ring, hollow := s.ring(m, body, f.WorkingN)
	if !hollow {
		return
	}
	f.Ring = ring
	c.LimitMM = atStake(*c, t) * lobeShare
	f.LimitMM = c.LimitMM
	d, err := s.ringError(ring)
	if err != nil {
		c.Trust, f.Trust = string(mechanics.TrustNone), string(mechanics.TrustNone)
		return
	}
	f.LobeMM, f.Trust, f.StressMPa = d.ErrorMostMM, string(d.Trust), d.StressMostMPa
	c.LobeMM, c.Trust, c.StressMPa = f.LobeMM, f.Trust, f.StressMPa
	f.YieldShare = ring.YieldShare(d.StressMostMPa)
	c.YieldShare = f.YieldShare
}

// atStake is the finest roundness among what was made round earlier in the same stay and what this task makes round; 0 for none.
func atStake(c rules.Case, t process.Task) float64 {
	if t.Stage != shape.Finishing || t.Round == 0 {
		return c.Round
	}
	if c.Round == 0 {
		return t.Round
	}
	return math.Min(c.Round, t.Round)
}

// lobeShare is the part of the roundness allowed that a grip may spend (rule B-23).
const lobeShare = 1.0 / 3

// ring is the work under the jaws as a plain ring, as wide as they are set and as thin as it is anywhere under them; not hollow where it is solid there.
func (s Shop) ring(m Mount, body solid.Body, forcePerJawN float64) (ring mechanics.RingGrip, hollow bool) {
	outer, wall := s.truly(body.Outer.Greatest(m.Z0, m.Z1), body.LeastWall(m.Z0, m.Z1))
	if body.Inner.Greatest(m.Z0, m.Z1) <= 0 || math.IsInf(wall, 0) {
		return ring, false
	}
	z0, z1 := body.Ends()
	metal := s.Part.Material
	ring = mechanics.RingGrip{OutsideDiameterMM: 2 * outer, WallMM: wall, LengthMM: z1 - z0, GripLengthMM: math.Min(m.Z1-m.Z0, z1-z0), Jaws: jawCount(m.Holding),
		JawWidthMM: float64(m.Holding.JawWidth), ForcePerJawN: forcePerJawN, ModulusMPa: metal.ModulusGPa.Low * 1000, Poisson: metal.Poisson, YieldMPa: metal.YieldMPa.Low}
	m.formJaws(&ring)
	return ring, true
}

// formJaws gives a ring the kind of jaws of its mount.
func (m Mount) formJaws(ring *mechanics.RingGrip) {
	if m.Holding.Kind == partspec.Collets || m.Holding.Kind == partspec.SoftJaws {
		// Bored jaws and collets meet the work over nearly all of their share of the circle; even pressure is the pessimistic reading of that.
		ring.JawWidthMM, ring.JawArcDeg = 0, wrapShare*360/float64(ring.Jaws)
	} else if ring.JawWidthMM == 0 {
		ring.JawWidthMM = usualJawWidth
	}
	if m.Plug {
		ring.Plug = &mechanics.Plug{ClearanceMM: plugClearance}
	}
}

// usualJawWidth is that of a small chuck; plugClearance that of a plug turned to the measured bore, radial (0.01 to 0.02 on diameter).
// wrapShare is the part of the circle that bored jaws cover.
const (
	wrapShare     = 0.9
	usualJawWidth = 8.0
	plugClearance = 0.005
)

// ringError is RingGrip.Distortion with its answers kept. Without a plug the error is in proportion to the force, so that one answer serves all.
func (s Shop) ringError(ring mechanics.RingGrip) (mechanics.Distortion, error) {
	scale := 1.0
	if ring.Plug == nil {
		scale, ring.ForcePerJawN = ring.ForcePerJawN/unitForceN, unitForceN
	}
	d, err := s.Memo.Ring(ring)
	if err != nil {
		return d, err
	}
	d.ErrorJawPlaneMM, d.ErrorMostMM, d.StressMostMPa = d.ErrorJawPlaneMM*scale, d.ErrorMostMM*scale, d.StressMostMPa*scale
	return d, nil
}

// unitForceN is the force a jaw for which answers are kept.
const unitForceN = 100.0
