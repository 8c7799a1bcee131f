package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/solid"
)

// nought is a dial set to nought.
type nought struct {
	plan.Zero
	reference  float64 // where it really is, once the surface is touched: radius, or place along the axis
	graduation float64 // travel of one graduation, in radius for the cross slide
	off        float64 // on a mill: how far it may have been found from there
	clocked    bool    // on the middle of a round surface, whose error both dials share
}

// graduationOf is how far one graduation moves the slide. A dial that reads diameters is marked in diameter.
func graduationOf(d partspec.Dial) float64 {
	g := float64(d.Graduation.Value)
	if d.Reads == partspec.ReadsDiameter {
		return g / 2
	}
	return g
}

// turnOf is how far one turn moves the slide.
func turnOf(d partspec.Dial) float64 {
	if d.Reads == partspec.ReadsDiameter {
		return float64(d.PerTurn.Value) / 2
	}
	return float64(d.PerTurn.Value)
}

// setZeros sets the dials to nought as an operation asks. With another tool, old noughts do not serve.
func (w *walk) setZeros(op plan.Operation) {
	if op.Tool.ID != w.zeroTool {
		w.zeros, w.zeroTool = map[string]nought{}, op.Tool.ID
	}
	seen := map[string]bool{}
	for _, z := range op.Zeros {
		if seen[z.Dial] {
			w.failOp("zero", "the %s dial is set to nought twice in one operation: which one its figures start from cannot be told", z.Dial)
		}
		seen[z.Dial] = true
		d, ok := w.machine.Dial(z.Dial)
		if !ok {
			w.failOp("zero", "%s has no %s dial", w.machine.Name, z.Dial)
			continue
		}
		if z.WoundBack != 0 {
			w.failOp("zero", "the %s dial is wound back %d turns: only dials of a mill's table are", z.Dial, z.WoundBack)
		}
		n := nought{Zero: z, graduation: graduationOf(d)}
		n.reference, ok = w.touch(op, z)
		if ok {
			w.zeros[z.Dial] = n
		}
	}
}

// touch finds the surface that a dial is set on. It must be there; where it was made by measuring, it is where this world has it.
func (w *walk) touch(op plan.Operation, z plan.Zero) (float64, bool) {
	switch z.Dial {
	case "top":
		if z.ReferenceMM != 0 {
			w.failOp("zero", "the top slide counts from where it stands, not from %s", mm(z.ReferenceMM))
		}
		return 0, true
	case "cross":
		return w.touchRadius(op, z)
	case "saddle", "tailstock":
		return w.touchFace(op, z)
	}
	w.failOp("zero", "%q is no dial: expected cross, top, saddle or tailstock", z.Dial)
	return 0, false
}

func (w *walk) touchRadius(op plan.Operation, z plan.Zero) (float64, bool) {
	want := z.ReferenceMM / 2
	got, off, steepest := math.NaN(), math.Inf(1), 0.0
	for _, c := range []solid.Curve{w.body.Outer, w.body.Inner} {
		for _, p := range c.Pieces() {
			radii := []float64{p.R0, p.R1}
			if p.IsArc() && p.Z0 < p.CentreZ && p.CentreZ < p.Z1 {
				radii = append(radii, p.At(p.CentreZ))
			}
			if r, d := nearest(radii, want); d < off {
				got, off, steepest = r, d, slopeOf(p)
			}
		}
	}
	if op.Process == plan.Steps && w.wholeMarks(got-want) {
		return want, true // touched, and moved on by whole graduations to the diameter that the table counts from
	}
	if off > w.slackRadius+steepest*w.slackPlace+same { // the edge of a cone moves with the face that is measured
		w.failOp("zero", "the cross dial is to be set on Ø%s, but there is no such diameter to touch; the nearest is Ø%s", mm(z.ReferenceMM), mm(2*got))
		return 0, false
	}
	return got, true
}

// slopeOf is how steeply a straight piece rises; 0 for an arc.
func slopeOf(p solid.Piece) float64 {
	if p.IsArc() || p.Z1-p.Z0 <= same {
		return 0
	}
	return math.Abs(p.R1-p.R0) / (p.Z1 - p.Z0)
}

// wholeMarks reports whether a distance in radius is a whole number of the cross dial's graduations.
func (w *walk) wholeMarks(by float64) bool {
	d, ok := w.machine.Dial("cross")
	if !ok {
		return false
	}
	n := by / graduationOf(d)
	return math.Abs(n-math.Round(n))*graduationOf(d) <= same
}

func (w *walk) touchFace(op plan.Operation, z plan.Zero) (float64, bool) {
	if w.makesDatum(op, z) {
		return z.ReferenceMM, true
	}
	faces := facesOf(w.body)
	best, off := math.NaN(), math.Inf(1)
	for _, shift := range w.touching(op) {
		// The point stands shift beyond the face that the tool's side touches.
		if f, d := nearest(faces, z.ReferenceMM-shift); d < off {
			best, off = f+shift, d
		}
	}
	if off > w.slackPlace+same {
		w.failOp("zero", "the %s dial is to be set on a face at %s, but there is none to touch; the nearest is at %s", z.Dial, mm(z.ReferenceMM), mm(best))
		return 0, false
	}
	return best, true
}

// makesDatum reports whether an operation faces the end that all lengths of this setup are then taken from: the place is what the cut at
// nought makes, where no place along the axis was fixed before.
func (w *walk) makesDatum(op plan.Operation, z plan.Zero) bool {
	if op.Process != plan.Face || z.Dial != "saddle" || w.fixed {
		return false
	}
	for _, cut := range op.Cuts {
		if c, ok := countsOf(cut)["saddle"]; ok && c == [2]int64{0, 0} {
			return true
		}
	}
	return false
}

// touching lists how far from a face the tool's point may stand when one of its sides touches it.
func (w *walk) touching(op plan.Operation) []float64 {
	c, err := findCutter(w.job.Workshop, op.Tool.ID, op.Tool.SizeMM)
	if err != nil {
		return []float64{0}
	}
	switch c.Kind {
	case partspec.Grooving, partspec.Parting, partspec.RecessTool:
		return []float64{0, -w.free() * float64(c.Width)}
	case partspec.RoundNose:
		return []float64{float64(c.Radius), -float64(c.Radius)}
	}
	return []float64{0}
}

// facesOf lists the places with a plane face: the ends, and where a radius jumps.
func facesOf(b solid.Body) []float64 {
	z0, z1 := b.Ends()
	faces := []float64{z0, z1}
	for _, c := range []solid.Curve{b.Outer, b.Inner} {
		pieces := c.Pieces()
		for i := 1; i < len(pieces); i++ {
			if math.Abs(pieces[i].R0-pieces[i-1].R1) > offSurface {
				faces = append(faces, pieces[i].Z0)
			}
		}
	}
	return faces
}

func nearest(list []float64, want float64) (got, off float64) {
	got, off = math.NaN(), math.Inf(1)
	for _, v := range list {
		if d := math.Abs(v - want); d < off {
			got, off = v, d
		}
	}
	return got, off
}
