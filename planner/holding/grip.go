package holding

import (
	"math"
	"strconv"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
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
	case m.Inside && m.Machine == "":
		c.DriveNmm = s.mandrelDrive(m)
		return
	}
	c.FirmN, c.LightN = float64(m.Holding.GripFirm), float64(m.Holding.GripLight)
	if c.FirmN == 0 {
		c.FirmN, c.LightN = UsualFirm, UsualLight
	}
	c.LeastN = s.leastGrip(m, t, way, force, jawCount(m.Holding))
}

// UsualLight and UsualFirm are a hand-tightened small chuck's forces, N a jaw: the workshop file's figures go before them. The ranges are a chuck
// maker's table read down to a hand's pull, so rough by a factor of two.
const (
	UsualLight = 200.0
	UsualFirm  = 4000.0
)

// JawFeel puts the grip of hand-tightened jaws into words: their forces are known within a factor of two or three at best.
func JawFeel(workingN float64, h partspec.Holding) string {
	light, firm := float64(h.GripLight), float64(h.GripFirm)
	if firm == 0 {
		light, firm = UsualLight, UsualFirm
	}
	switch share := (workingN - light) / (firm - light); {
	case share < 0.15:
		return "a light nip, finger and thumb on the key"
	case share < 0.6:
		return "a firm pull with one hand, no lean"
	}
	return "a hard pull with both hands on the key"
}

func jawCount(h partspec.Holding) int {
	switch {
	case h.Jaws > 0:
		return h.Jaws
	case h.Kind == partspec.FourJaw:
		return 4
	case h.Kind == partspec.Vice || h.Kind == partspec.VeeBlock:
		return 2
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
		OverhangMM: math.Abs(cut - middle), Jaws: jaws, Friction: mu, Safety: safety, AxialStop: m.Stop || m.Across && !m.swings()}
	if s.Part.Seen != nil { // what is turned there meets gaps until it is round
		d.Safety = interruptedSafety
		d.MainN, d.FeedN, d.PassiveN = d.MainN*cornerShare, d.FeedN*cornerShare, d.PassiveN*cornerShare
	}
	if m.swings() {
		s.overhung(&d, m, t, way, force)
	} else if m.Machine != "" && !pressesDown(t) { // a push in the table's plane turns and tips the work; the bed carries what presses down
		d.FeedN, d.PassiveN = 0, 0
	}
	if !m.swings() && (t.Process == plan.Drill || t.Process == plan.Spot || t.Process == plan.Ream || t.Process == plan.Tap || t.Process == plan.Die || len(t.Spots) > 0) {
		// On the axis: the torque twists, the thrust goes into the chuck, nothing tips.
		d.FeedN, d.PassiveN, d.OverhangMM = way.ThrustN, 0, 0
	}
	if m.Tilted != nil {
		m.tips(&d, t, way)
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

// cornerShare is how much more than its ordinary depth a finishing cut meets where the round nose of the roughing tool has left metal in a corner. It tells where cuts
// are light and the grip is short, as on work that is set over. Ours: a nose of 0.4 leaves 0.14 a tenth of a millimetre from where it stopped.
const cornerShare = 1.25

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
	if m.Holding.Kind == partspec.StubMandrel && !m.Split {
		pull := screwPull(m.Radius)
		if m.Screw > 0 {
			pull = pullOf(m.Screw)
		}
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

// screwPull is what the screw in a mandrel's end pulls with: the largest that leaves metal around it.
func screwPull(radius float64) float64 {
	return pullOf(math.Min(largeScrew, 2*radius*screwShare))
}

func pullOf(screw float64) float64 { return screwPullN * screw * screw / (screwSizeMM * screwSizeMM) }

// screwShare is a screw's diameter as a part of the mandrel's. Common practice, no source.
const screwShare = 0.6

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
