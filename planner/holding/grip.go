package holding

import (
	"math"
	"strconv"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// Friction of the grip and the safety factor (rule B-42).
const (
	frictionFinished = 0.15
	frictionRough    = 0.25
	safety           = 2.5
	collets          = 3 // segments, as far as slipping goes
)

func formatMM(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

// demand fills in what the cut asks of the grip, and what there is to hold with.
func (s Shop) demand(c *rules.Case, m Mount, t process.Task, way process.Way, light float64) {
	force := way.Force(light)
	c.TorqueNmm = safety * force * way.ForceAt
	if m.Between {
		return // a carrier drives it
	}
	switch {
	case m.Glue != NoGlue:
		c.DriveNmm = s.glueDrive(m)
		return
	case m.Inside:
		c.DriveNmm = s.mandrelDrive(m)
		return
	}
	c.FirmN, c.LightN = float64(m.Holding.GripFirm), float64(m.Holding.GripLight)
	if c.FirmN == 0 {
		c.FirmN, c.LightN = UsualFirm, UsualLight
	}
	c.LeastN = s.leastGrip(m, t, way, force, jawCount(m.Holding))
}

// squeeze fills in the wall under the grip now, and the error that the grip leaves.
func (s Shop) squeeze(c *rules.Case, f *Figures, m Mount, t process.Task, body solid.Body, done func(int) bool) {
	if m.Glue != NoGlue || m.Between || m.Machine == partspec.Bench {
		return
	}
	c.Wall = body.LeastWall(m.Z0, m.Z1)
	f.Wall = c.Wall
	if !m.Inside {
		s.distortion(f, m, t, body, done, jawCount(m.Holding))
		c.LobeMM, c.LimitMM, c.Trust = f.LobeMM, f.LimitMM, f.Trust
	}
}

// UsualLight and UsualFirm are a hand-tightened small chuck's forces, N a jaw: the workshop file's figures go before them. The ranges are a chuck
// maker's table read down to a hand's pull, so rough by a factor of two.
const (
	UsualLight = 200.0
	UsualFirm  = 4000.0
)

func jawCount(h partspec.Holding) int {
	switch {
	case h.Jaws > 0:
		return h.Jaws
	case h.Kind == partspec.FourJaw:
		return 4
	}
	return collets
}

func (s Shop) leastGrip(m Mount, t process.Task, way process.Way, force float64, jaws int) float64 {
	mu := frictionFinished
	if m.Surface == "stock" {
		mu = frictionRough
	}
	middle := (m.Z0 + m.Z1) / 2
	cut := way.Span[0]
	if m.Free == partspec.Right {
		cut = way.Span[1]
	}
	d := mechanics.GripDemand{MainN: force, FeedN: force / 2, PassiveN: force / 2, CutRadiusMM: way.ForceAt, GripRadiusMM: m.Radius, GripLengthMM: m.Z1 - m.Z0,
		OverhangMM: math.Abs(cut - middle), Jaws: jaws, Friction: mu, Safety: safety, AxialStop: m.Stop}
	if t.Process == plan.Drill || t.Process == plan.Ream || t.Process == plan.Tap || t.Process == plan.Die || len(t.Spots) > 0 {
		// On the axis: the torque twists, the thrust goes into the chuck, nothing tips.
		d.FeedN, d.PassiveN, d.OverhangMM = 0, 0, 0
	}
	if m.Centre {
		d.OverhangMM = 0
	}
	g, err := mechanics.LeastGripPerJaw(d)
	if err != nil {
		return 0
	}
	return math.Ceil(g.PerJawN)
}

// distortion works out the lobed error at the working grip and what of it may pass: a third of the roundness of any round surface that is finished, or is
// being finished, in the part while it is squeezed.
func (s Shop) distortion(f *Figures, m Mount, t process.Task, body solid.Body, done func(int) bool, jaws int) {
	inner := body.Inner.Greatest(m.Z0, m.Z1)
	if inner <= 0 || math.IsInf(f.Wall, 0) {
		return
	}
	round := s.roundAtStake(t, done)
	if round == 0 {
		return
	}
	z0, z1 := body.Ends()
	ring := mechanics.RingGrip{OutsideDiameterMM: 2 * (inner + f.Wall), WallMM: f.Wall, LengthMM: z1 - z0, GripLengthMM: math.Min(m.Z1-m.Z0, z1-z0), Jaws: jaws,
		JawWidthMM: float64(m.Holding.JawWidth), ForcePerJawN: f.WorkingN, ModulusMPa: s.Part.Material.ModulusGPa.Low * 1000, Poisson: s.Part.Material.Poisson, YieldMPa: s.Part.Material.YieldMPa.Low}
	s.jawForm(&ring, m)
	d, err := s.ringError(ring)
	if err != nil {
		f.Trust = "none"
		return
	}
	f.LobeMM, f.LimitMM, f.Trust, f.StressMPa = d.ErrorMostMM, round*lobeShare, string(d.Trust), d.StressMostMPa
}

// ringError is RingGrip.Distortion with its answers kept. Without a plug the error is in proportion to the force, so that one answer serves all.
func (s Shop) ringError(ring mechanics.RingGrip) (mechanics.Distortion, error) {
	scale := 1.0
	if ring.Plug == nil {
		scale, ring.ForcePerJawN = ring.ForcePerJawN/unitForceN, unitForceN
	}
	d, ok := s.rings[ring]
	if !ok {
		var err error
		if d, err = ring.Distortion(); err != nil {
			return d, err
		}
		if ring.Plug == nil {
			s.rings[ring] = d
		}
	}
	d.ErrorJawPlaneMM, d.ErrorMostMM, d.StressMostMPa = d.ErrorJawPlaneMM*scale, d.ErrorMostMM*scale, d.StressMostMPa*scale
	return d, nil
}

// unitForceN is the force a jaw for which answers are kept.
const unitForceN = 100.0

// lobeShare is the part of the roundness allowed that a grip may spend (rule B-23).
const lobeShare = 1.0 / 3

// jawForm gives the ring its kind of jaws.
func (s Shop) jawForm(ring *mechanics.RingGrip, m Mount) {
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

// roundAtStake is the finest roundness among the surfaces finished now or by this task.
func (s Shop) roundAtStake(t process.Task, done func(int) bool) float64 {
	least := 0.0
	take := func(r float64) {
		if r > 0 && (least == 0 || r < least) {
			least = r
		}
	}
	if t.Stage == shape.Finishing {
		take(t.Round)
	}
	for i, o := range s.Tasks {
		if done(i) && o.Stage == shape.Finishing {
			take(o.Round)
		}
	}
	return least
}

// Shear that glue is reckoned with, and the pull of a mandrel's screw (rules B-16, B-08: M6 at 6 N m gives 5 kN, as the square of the diameter).
const (
	glueShear   = 1.5
	screwPullN  = 5000.0
	screwSizeMM = 6.0
	largeScrew  = 8.0
)

func (s Shop) glueDrive(m Mount) float64 {
	var h mechanics.Hold
	var err error
	if m.Glue == GlueBore {
		h, err = mechanics.BondedSpigot(2*m.Radius, m.Z1-m.Z0, glueShear)
	} else {
		h, err = mechanics.BondedFace(2*m.Radius, 2*s.faceHole(m.Free.Other()), glueShear)
	}
	if err != nil {
		return 0
	}
	return h.TorqueNm * 1000
}

// faceHole is the radius of the hole in an end face.
func (s Shop) faceHole(e partspec.End) float64 {
	r := 0.0
	for _, h := range s.Holes {
		if h.Through || h.From == e {
			r = math.Max(r, h.Radius)
		}
	}
	return r
}

// mandrelDrive is the torque a mandrel passes on, N mm: by its screw pressing the work on a shoulder, by the taper's press, or by its wedge.
func (s Shop) mandrelDrive(m Mount) float64 {
	if m.Holding.Kind == partspec.StubMandrel {
		d := math.Min(largeScrew, 2*m.Radius*0.6)
		pull := screwPullN * d * d / (screwSizeMM * screwSizeMM)
		shoulder := s.shoulder(m)
		r, err := mechanics.FaceRadiusMM(2*shoulder, 2*m.Radius)
		if err != nil {
			return 0
		}
		return frictionFinished * pull * r
	}
	h, err := mechanics.RadialDrive(2*m.Radius, mandrelRadialN, frictionFinished)
	if err != nil {
		return 0
	}
	return h.TorqueNm * 1000
}

// mandrelRadialN is what a taper or expanding mandrel presses outward when driven home by hand. Common practice, no source; rough by two.
const mandrelRadialN = 4000.0

// shoulder is the radius of the mandrel's shoulder: as wide as the face it bears on, less a clearance for the tool.
func (s Shop) shoulder(m Mount) float64 {
	b := s.Blocks[0]
	if m.Free == partspec.Left {
		b = s.Blocks[len(s.Blocks)-1]
	}
	return math.Max(m.Radius+1, b.Greatest-1)
}
