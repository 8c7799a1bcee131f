package holding

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/process"
	"catchplate/planner/rules"
	"catchplate/planner/tables"
)

// The vertical slide stands on the lathe's cross slide and carries a vice of its own; the cutter turns in the spindle. For all that grips, it is a vice under a spindle,
// on the machine that the lathe and the slide make together (process.SlideMill). What is its own: what it lets a cutter take, how far its screws go, and the words.

// OnSlide reports whether the work stands on a vertical slide, the cutter in the lathe's spindle.
func (m Mount) OnSlide() bool { return m.Machine == partspec.Mill && m.Holding.Dial.Name != "" }

// HoldingKind is the kind of what the workshop owns: the vice of a slide belongs to the slide.
func (m Mount) HoldingKind() partspec.HoldingKind {
	switch {
	case m.OnSlide():
		return partspec.VerticalSlide
	case m.Head != nil:
		return partspec.DividingHead
	case m.Tilted != nil:
		return partspec.TiltingPlate
	}
	return m.Holding.Kind
}

// MachineKind is the plan's word for the machine that a mount stands on.
func (m Mount) MachineKind(on partspec.Machine) string {
	if m.OnSlide() {
		return plan.OnSlide
	}
	return string(on.Kind)
}

// table is the word of a name for the machine that a mount stands on.
func (m Mount) table() string {
	if m.OnSlide() {
		return plan.OnSlide
	}
	return string(m.Machine)
}

// stands reports whether a holding stands on a machine's table: on a lathe that mills, only what its slide carries.
func (s Shop) stands(h partspec.Holding, on partspec.MachineKind) bool {
	return on != partspec.Mill || (s.Slide != nil) == (h.Dial.Name != "")
}

// viceOf is the vice that a vertical slide carries, where it is the one that mills.
func (s Shop) viceOf(h partspec.Holding) (partspec.Holding, bool) {
	vice := h
	vice.Kind = partspec.Vice
	return vice, s.Slide != nil && h.Name == s.Slide.Name
}

// play is how far the work may lie off because the slide gives, radially: its own figure, or the usual one (rule B-32).
func play(h partspec.Holding) float64 {
	switch {
	case h.Dial.Name == "":
		return 0
	case h.RunOut > 0:
		return float64(h.RunOut)
	}
	return float64(tables.PlaceError(tables.BySlide))
}

// Play is how far work on the vertical slide that mills may lie off because the slide gives; 0 where none mills.
func (s Shop) Play() float64 {
	if s.Slide == nil {
		return 0
	}
	return play(*s.Slide)
}

// sprung adds to mounts in a slide's vice what the slide gives.
func sprung(mounts []Mount) []Mount {
	for i := range mounts {
		m := &mounts[i]
		m.Locate += play(m.Holding)
		m.Along += play(m.Holding) / math.Sqrt2
	}
	return mounts
}

// slideFacts are what a cut asks of the vertical slide; nil off it.
func (s Shop) slideFacts(m Mount, t process.Task, way process.Way, depth float64) *rules.SlideFacts {
	if !m.OnSlide() {
		return nil
	}
	f := &rules.SlideFacts{DepthMM: depth, Travel: s.slideTravel(m, t, way)}
	switch way.Tool.Kind {
	case partspec.EndMill, partspec.BallNose, partspec.FlyCutter:
		f.CutterMM, f.MostMM = way.SizeMM, rules.MostOnSlide(string(s.Part.Material.Family))
	}
	for _, h := range s.Shop.Holdings {
		f.Collets = f.Collets || h.Kind == partspec.Collets
	}
	return f
}

// slideTravel says which slide a cut would take past its travel; empty where none.
func (s Shop) slideTravel(m Mount, t process.Task, way process.Way) string {
	if way.Marked {
		return ""
	}
	var far [2]float64
	if s.Part.Flat() {
		far = s.flatReach(t, way)
	} else {
		far = m.lyingReach(s.Context, way)
	}
	for axis, d := range []string{"x", "y"} {
		dial, _ := s.Mill.Dial(d)
		if dial.Travel > 0 && far[axis] > float64(dial.Travel) {
			return fmt.Sprintf("the %s would go %.0f, its travel is %.0f", [2]string{"cross slide", "vertical slide"}[axis], math.Ceil(far[axis]), float64(dial.Travel))
		}
	}
	return ""
}

// flatReach is how far each dial goes from the datum edges, or the middle, to everywhere that a cut on flat work takes the cutter.
func (s Shop) flatReach(t process.Task, way process.Way) [2]float64 {
	x0, y0, x1, y1 := s.rawRim().Bounds()
	low, high := [2]float64{(x0 + x1) / 2, (y0 + y1) / 2}, [2]float64{(x0 + x1) / 2, (y0 + y1) / 2}
	for _, name := range s.Part.Outline.Datum {
		for i, e := range s.Part.Outline.Edges {
			if e.Name != name {
				continue
			}
			d := s.Flat.Drawn.Edges[i]
			ox, _ := d.Outward(0)
			axis, at := 1, d.Y0
			if math.Abs(ox) > facesJaws {
				axis, at = 0, d.X0
			}
			low[axis], high[axis] = at, at
		}
	}
	widen := func(x, y, by float64) {
		for axis, v := range [2]float64{x, y} {
			low[axis], high[axis] = math.Min(low[axis], v-by), math.Max(high[axis], v+by)
		}
	}
	zones, all := s.worked(t, way)
	for _, z := range zones {
		widen(z.X0, z.Y0, 0)
		widen(z.X1, z.Y1, 0)
	}
	if all {
		widen(x0, y0, way.SizeMM/2+runOver)
		widen(x1, y1, way.SizeMM/2+runOver)
	}
	return [2]float64{high[0] - low[0], high[1] - low[1]}
}

// lyingReach is the same of turned work that lies across: from where its dials read nought, wound back, to as far as the cut takes the spindle.
func (m Mount) lyingReach(c *process.Context, way process.Way) [2]float64 {
	var far [2]float64
	for _, z := range m.lyingTable(c) {
		if z.Dial == "x" {
			far[0] = way.Span[1] - z.ReferenceMM
		} else {
			far[1] = float64(c.Part.Stock.EnvelopeDiameter())/2 - z.ReferenceMM
		}
	}
	return far
}

// howOnSlide tells how the slide is set up before the work goes into its vice.
func (m Mount) howOnSlide() []string {
	if !m.OnSlide() {
		return nil
	}
	return []string{
		"Vertical slide on the cross slide in place of the tool post; with an indicator in the chuck, or on the faceplate, its face square to the spindle both ways, within 0.02 over 100.",
		"Cutter short in a collet that fits its shank, drawn up hard; gibs snug, and the lock on of every slide that does not feed.",
		"Seen from the spindle: the cross slide wound in counts to the right, the slide wound down counts up, the saddle wound towards the headstock goes into the work.",
	}
}

// bed is what a vice stands on.
func (m Mount) bed() string {
	if m.OnSlide() {
		return "slide"
	}
	return "table"
}

// along is the slide that work lies along.
func (m Mount) along() string {
	if m.OnSlide() {
		return "cross slide"
	}
	return "x slide"
}
