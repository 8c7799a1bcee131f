package holding

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/mechanics"
	"catchplate/planner/process"
	"catchplate/planner/rules"
)

// inFlatBore lists mandrels in the finished bores of a flat part, either face outward: a nut and a washer, or backing discs nearly as wide as the work, press it
// on the mandrel's shoulder, so that its whole rim is free (rules B-12 to B-14).
func (s Shop) inFlatBore(h partspec.Holding) []Mount {
	var mounts []Mount
	for _, b := range s.bores() {
		if !b.Through || !fitsMandrel(h, 2*b.radius) || s.maker(b.Name) < 0 {
			continue
		}
		for _, free := range faces() {
			off := s.runOut(h, false)
			mounts = append(mounts, Mount{Holding: h, Free: free, Surface: b.Name, About: b.Name, By: ByBore, CentreX: b.x, CentreY: b.y, Inside: true, Z1: s.Length, Radius: b.radius,
				Minutes: s.minutes(h), RunOut: off, Locate: off / 2, Stop: h.Kind == partspec.StubMandrel, Helper: mandrelHelper(h)})
		}
	}
	return mounts
}

// gluedFlat lists arbors glued to a face, about every place that is turned about, and into the bores (rule B-16).
func (s Shop) gluedFlat(h partspec.Holding) []Mount {
	var mounts []Mount
	for _, free := range faces() {
		for _, c := range s.centres() {
			m := Mount{Holding: h, Free: free, Surface: "its " + FaceName(free.Other()), About: c.name, CentreX: c.x, CentreY: c.y, Glue: GlueFace, Z1: s.Length, Minutes: s.minutes(h), RunOut: s.runOut(h, false), Stop: true, Helper: "arbor"}
			m.Radius = s.backed(m)
			if h.Largest > 0 {
				m.Radius = math.Min(m.Radius, float64(h.Largest)/2)
			}
			if m.Radius > 0 {
				mounts = append(mounts, s.found(m)...)
			}
		}
		for _, b := range s.bores() {
			if fitsMandrel(h, 2*b.radius) && s.maker(b.Name) >= 0 {
				mounts = append(mounts, Mount{Holding: h, Free: free, Surface: b.Name, About: b.Name, By: ByBore, CentreX: b.x, CentreY: b.y, Inside: true, Glue: GlueBore, Z1: s.Length, Radius: b.radius,
					Minutes: s.minutes(h), RunOut: gluedSpigot, Locate: gluedSpigot / 2, Stop: true, Helper: "arbor"})
			}
		}
	}
	return mounts
}

// gluedSpigot is the run-out of work glued on a close spigot (rule B-16; the figure is that of a mandrel turned in place and its gap).
const gluedSpigot = 0.02

// backed is the radius, about a mount's place, of a disc that stays clear of a tool on the finished rim.
func (s Shop) backed(m Mount) float64 {
	return s.Flat.Drawn.Inside(m.CentreX, m.CentreY) - toolRoom
}

// latheFacts fills in what no moment changes of flat work on the lathe.
func (s Shop) latheFacts(c *rules.Case, m Mount, t process.Task, way process.Way, light float64) {
	edges := t.Flat != nil && len(t.Flat.Edges) > 0
	if !m.Inside && m.Glue == NoGlue {
		c.Cuts = c.Cuts || edges // jaws and straps turn with the work where the tool comes past
		return
	}
	factor := safety
	if c.Interrupted = s.interrupted(t); c.Interrupted {
		factor = interruptedSafety
	}
	c.TorqueNmm = factor * way.Force(light) * way.ForceAt
	c.DriveNmm = s.flatDrive(m)
	_, face := s.worked(t, way)
	c.Cuts = !edges && (m.Inside || face) // the washer covers the face, the spigot the bore
}

// flatDrive is the torque that a mandrel or glue passes on to flat work, N mm.
func (s Shop) flatDrive(m Mount) float64 {
	hole := 0.0
	for _, b := range s.bores() {
		if math.Hypot(b.x-m.CentreX, b.y-m.CentreY) <= sameSpot {
			hole = b.radius
		}
	}
	var h mechanics.Hold
	var err error
	switch {
	case m.Glue == GlueFace:
		h, err = mechanics.BondedFace(2*m.Radius, 2*hole, glueShear)
	case m.Glue == GlueBore:
		h, err = mechanics.BondedSpigot(2*m.Radius, s.Length, glueShear)
	case m.Holding.Kind == partspec.StubMandrel:
		h, err = mechanics.ClampedFace(screwPull(m.Radius), s.faceRadius(m, m.Radius), frictionFinished)
	default:
		h, err = mechanics.RadialDrive(2*m.Radius, mandrelRadialN, frictionFinished)
	}
	if err != nil {
		return 0
	}
	return h.TorqueNm * 1000
}

// faceRadius is where the friction between a mandrel's shoulder and the work acts; 0 where there is no room for a shoulder.
func (s Shop) faceRadius(m Mount, bore float64) float64 {
	r, err := mechanics.FaceRadiusMM(2*math.Max(bore+1, s.backed(m)), 2*bore)
	if err != nil {
		return 0
	}
	return r
}

// onDisc lists a chuck's jaws on the rim of a disc that is round already, its face hard on the jaw steps.
func (s Shop) onDisc(h partspec.Holding) []Mount {
	x, y, r, ok := s.round()
	if !ok {
		return nil
	}
	var mounts []Mount
	for _, free := range faces() {
		m := Mount{Holding: h, Free: free, Surface: "its rim", CentreX: x, CentreY: y, Z1: s.Length, Radius: r, Minutes: s.minutes(h), RunOut: s.runOut(h, false), Stop: true}
		m.Locate = m.RunOut / 2
		for _, b := range s.bores() {
			if math.Hypot(b.x-x, b.y-y) <= sameSpot {
				m.About = b.Name
			}
		}
		mounts = append(mounts, m)
	}
	return mounts
}

// round is the circle that the outline is, if it is one.
func (s Shop) round() (x, y, r float64, ok bool) {
	for i, e := range s.Flat.Drawn.Edges {
		if !e.IsArc() || e.Hollow || i > 0 && (math.Hypot(e.CX-x, e.CY-y) > sameSpot || math.Abs(e.Radius-r) > sameSpot) {
			return 0, 0, 0, false
		}
		x, y, r, ok = e.CX, e.CY, e.Radius, true
	}
	return x, y, r, ok
}

// discFigures fills in what jaws on a rim ask and do.
func (s Shop) discFigures(f *Figures, m Mount, at moment) {
	c := &f.Case
	for _, l := range at.flat.Left {
		if l > sameSpot {
			c.Gone = true
			return
		}
	}
	c.Flat, c.Through, c.Disc, c.Largest, c.JawLength = false, true, true, 2*m.Radius, jawLength(m.Holding)
	c.Finished, c.Tight = s.rimFinish()
	c.Length = at.flat.Front - at.flat.Back
	c.Capacity = s.capacity(m)
	c.FirmN, c.LightN = float64(m.Holding.GripFirm), float64(m.Holding.GripLight)
	if c.FirmN == 0 {
		c.FirmN, c.LightN = UsualFirm, UsualLight
	}
	c.LeastN = s.rimNeed(m, at)
	f.LeastN, f.MostN, f.WorkingN = c.LeastN, c.FirmN, math.Min(math.Max(c.LeastN, c.LightN), c.FirmN)
	for _, k := range at.tasks {
		s.discSqueeze(f, m, at, s.Tasks[k])
	}
	c.LobeMM, c.LimitMM, c.Trust, c.Wall = f.LobeMM, f.LimitMM, f.Trust, f.Wall
}

func (s Shop) rimFinish() (bool, float64) {
	tight := math.Inf(1)
	for _, e := range s.Part.Outline.Edges {
		tight = math.Min(tight, float64(e.Off+e.On))
	}
	return true, tight
}

func (s Shop) rimNeed(m Mount, at moment) float64 {
	need := 0.0
	for i, k := range at.tasks {
		d := mechanics.GripDemand{MainN: at.ways[i].Force(at.light), CutRadiusMM: at.ways[i].ForceAt, GripRadiusMM: m.Radius, GripLengthMM: at.flat.Front - at.flat.Back, Jaws: jawCount(m.Holding), Friction: frictionFinished, Safety: safety, AxialStop: true}
		if !axial(s.Tasks[k].By(at.ways[i])) {
			d.PassiveN = d.MainN / 2
		}
		if g, err := mechanics.LeastGripPerJaw(d); err == nil {
			need = math.Max(need, math.Ceil(g.PerJawN))
		}
	}
	return need
}

// discSqueeze is the lobed error of a bore that is finished in the middle of a disc.
func (s Shop) discSqueeze(f *Figures, m Mount, at moment, t process.Task) {
	hole, ok := finishedBore(t)
	if !ok {
		return
	}
	metal := s.Part.Material
	wall := m.Radius - hole.Radius - math.Hypot(hole.X-m.CentreX, hole.Y-m.CentreY)
	thick := at.flat.Front - at.flat.Back
	g := mechanics.RingGrip{OutsideDiameterMM: 2 * m.Radius, WallMM: wall, LengthMM: thick, GripLengthMM: thick, Jaws: jawCount(m.Holding), JawWidthMM: float64(m.Holding.JawWidth), ForcePerJawN: f.WorkingN,
		ModulusMPa: metal.ModulusGPa.Low * 1000, Poisson: metal.Poisson, YieldMPa: metal.YieldMPa.Low}
	m.formJaws(&g)
	d, err := s.ringError(g)
	if err != nil {
		f.Trust = string(mechanics.TrustNone)
		return
	}
	f.LobeMM, f.LimitMM, f.Trust, f.StressMPa, f.Wall, f.Sure = d.ErrorMostMM, t.Round*lobeShare, string(d.Trust), d.StressMostMPa, wall, d.Confidence
}
