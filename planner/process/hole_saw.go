package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
	"catchplate/planner/tables"
)

// sawn is a hole saw chosen for holes, and the drill that makes way for its pilot. The zero value is none.
type sawn struct {
	tool    partspec.Tool
	mm      float64 // across its teeth: the least that the hole comes out
	drill   partspec.Tool
	pilotMM float64 // of that drill
}

func (s sawn) is() bool { return s.mm > 0 }

// shake is how far the saw may lie beside its pilot's hole; 0 where there is no saw.
func (s sawn) shake() float64 { return (s.pilotMM - float64(s.tool.Pilot)) / 2 }

// What a hole saw needs besides, in mm. Ours, no source.
const (
	pilotSlack = 0.2 // how much wider than its pilot the pilot's hole may be drilled
	sawRoom    = 3.0 // what of its cup it keeps free behind the disc
)

// sawOver is how much wider than the saw a sawn hole may come out, on diameter (rule A-26s).
func (c *Context) sawOver() float64 {
	row, ok := tables.FindProcess("hole saw")
	if !ok || !c.Rules.Has("A-26s") {
		return 0
	}
	return float64(row.RunOut.High)
}

// sawFor chooses the largest hole saw whose hole comes out between two diameters right through the work, or says why there is none. Empty words: no saw is owned, or
// none of such a size.
func (c *Context) sawFor(name string, low, high float64) (best sawn, why string) {
	if !c.Part.Flat() || c.Slide != nil { // work on a slide in the lathe is too springy for a ring of teeth
		return sawn{}, ""
	}
	for _, t := range c.tools(partspec.HoleSaw) {
		for _, size := range t.Sizes {
			if d := float64(size); d >= low-sizeNoise && d+c.sawOver() <= high+sizeNoise && d > best.mm {
				s, lack := c.sawReady(name, t, d)
				if why = lack; lack == "" {
					best = s
				}
			}
		}
	}
	if best.is() {
		why = ""
	}
	return best, why
}

// sawReady holds a hole saw against the thickness, the speeds of the machines and the drills owned.
func (c *Context) sawReady(name string, t partspec.Tool, d float64) (s sawn, why string) {
	drill, pilot, ok := c.sizedNear(partspec.Drills, float64(t.Pilot), float64(t.Pilot)+pilotSlack, float64(t.Pilot))
	switch {
	case !ok:
		return s, fmt.Sprintf("sawing %s: no drill owned between %.2f and %.2f makes way for the pilot of the %s", name, float64(t.Pilot), float64(t.Pilot)+pilotSlack, t.Name)
	case float64(t.Depth) < c.Length+sawRoom:
		return s, fmt.Sprintf("sawing %s: the %.0f mm saw is %.1f deep inside, %.1f of metal and %.1f to spare are wanted; from both sides is not planned", name, d, float64(t.Depth), c.Length, sawRoom)
	case !c.sawsSlowly(c.Mill, d) && !c.sawsSlowly(c.Drill, d):
		return s, fmt.Sprintf("sawing %s: no machine turns a saw of Ø%.0f as slowly as a drill of that size", name, d)
	}
	return sawn{t, d, drill, pilot}, ""
}

// sawsSlowly reports whether a machine's slowest speed is no faster at the saw's teeth than a drill's lips may go: above that they burn.
func (c *Context) sawsSlowly(m partspec.Machine, d float64) bool {
	return m.Kind != "" && math.Pi*d*float64(slowest(m))/1000 <= c.Part.Material.DrillHSS.Middle()+sizeNoise
}

// A saw's teeth stand about 5 mm apart, and three of them, set left, right and straight, cut the width of its ring together (teeth of 4 to 6 an inch; from memory).
const (
	sawPitch = 5.0
	sawSet   = 3.0
)

// sawForce is what turns a hole saw, N at its teeth, on the high side: each set of teeth cuts a chip as wide as the ring.
func (c *Context) sawForce(t partspec.Tool, d, feedMM float64) float64 {
	sets := math.Max(1, math.Ceil(math.Pi*d/(sawPitch*sawSet)))
	return sets * c.force(float64(t.Kerf), math.Max(feedMM/sets, leastChip))
}

// Minutes at a hole saw. Ours, no source.
const (
	minutesADisc = 1.0 // push the disc out of the saw
	clearEvery   = 3.0 // mm, after which the teeth are cleared
)

// sawHoles saws the holes of a pattern round the pilot holes that are there; last: the saw brings them to size.
func (c *Context) sawHoles(s spotted, last bool) Task {
	t := c.holesTask(s, "saw", plan.SawHole, s.saw.mm, 0)
	t.Depth, t.Place = (s.saw.mm-s.saw.pilotMM)/2, 0
	if last {
		t.Stage, t.Makes, t.Tight, t.Place = shape.Finishing, []string{s.Name}, float64(s.Diameter.Width()), c.placeWithin(s.Holes)
	}
	deep := s.thick() + overrun
	for _, w := range c.holeWays(s, true) {
		if !c.sawsSlowly(c.MachineFor(w.Machine), s.saw.mm) {
			continue
		}
		w.Tool, w.SizeMM, w.ForceAt, w.Ordinary = s.saw.tool, s.saw.mm, s.saw.mm/2, true
		w.Off += s.saw.shake()
		w.Rate = c.rateOn(w.Machine, cutSaw, s.saw.mm, s.saw.tool)
		w.ForceN = c.sawForce(s.saw.tool, s.saw.mm, w.Rate.FeedMM)
		w.SureN, w.ThrustN = w.ForceN, w.ForceN
		w.Span = s.span(w.End, deep+float64(s.saw.tool.Lead))
		w.Minutes = minutesADrill + float64(len(s.Places))*(minutesAPlace+minutesADisc+math.Ceil(deep/clearEvery)*minutesAPeck+deep/(w.Rate.FeedMM*w.Rate.RPM))
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeHoleSaw(s, t, w, deep, j) }
		t.Ways = append(t.Ways, w)
	}
	return t.orLacking(fmt.Sprintf("%s: the spindle that finds its places does not turn slowly enough for a saw of Ø%.0f", s.Name, s.saw.mm))
}

func (c *Context) writeHoleSaw(s spotted, t Task, w Way, deep float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Saw %s with the %s mm hole saw: %s", s.Name, units.Decimal(w.SizeMM, 3), holesInWords(len(s.Places))))
	p.begin(s, w)
	if q := p.quill(); q != "" {
		p.setQuill(p.faceNow(s.columns[0].entry(w.End), w.End), "the saw's teeth just touch the face, its pilot in the hole")
	}
	p.eachHole(s, w, w.Tool, w.SizeMM, units.Decimal(w.SizeMM, 3)+" mm hole saw", deep, true, "by hand, lightly")
	p.note("Its pilot runs in the drilled hole. Draw back every %s to clear the teeth; oil on steel.", units.Length(clearEvery).Text(c.unit()))
	p.note("Ease the feed where it comes through. The disc turns with the saw, or jams in it: stop the spindle, then push the disc out through the slots with a drift.")
	inside := w.SizeMM - 2*float64(w.Tool.Kerf)
	p.note("It leaves a disc of about Ø%s with the pilot's hole in it: keep it.", units.Length(math.Floor(inside)).Text(c.unit()))
	p.why(fmt.Sprintf("the ring of teeth takes %.0f %% of the metal that a drill would; the hole comes out up to %s wider than the saw", math.Ceil(100*(1-inside*inside/(w.SizeMM*w.SizeMM))), units.Length(c.sawOver()).Text(c.unit())), "A-26s")
	p.why("what is behind the hole keeps the teeth from snatching as they come out", "B-35")
	if t.Stage == shape.Finishing {
		p.op.Checks = append(p.op.Checks, c.check(s.Name+", diameter", s.Name, s.Diameter, insideCheck))
	}
	p.holesDone(s, w.End, w.SizeMM)
	return p.finish()
}
