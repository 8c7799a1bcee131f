package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/plane"
	"catchplate/planner/shape"
)

// faceOverlap is how much of a cutter's diameter lies beside the last pass when a face is milled: a quarter of it cuts over metal that is gone, so that no
// ridge is left. Common practice, no source.
const faceOverlap = 0.25

// runClear is how far beyond the work a milling cutter begins and ends its way, in mm. Common practice, no source.
const runClear = 2.0

// millFaces makes the tasks of both faces, unless they stay as supplied.
func (c *Context) millFaces() []Task {
	var tasks []Task
	for _, e := range []partspec.End{partspec.Right, partspec.Left} {
		if excess := c.faceExcess(e, c.Flat); excess > sizeNoise {
			tasks = append(tasks, c.millFace(e, excess))
		} else if !c.Part.Stock.FacesAsSupplied {
			tasks = append(tasks, Task{Op: shape.Op{ID: "face." + e.String() + "/mill", Feature: "face." + e.String(), Process: plan.MillFace, End: e},
				Lacking: []string{fmt.Sprintf("the stock has nothing to take off the %s face: take thicker stock, or write faces_as_supplied = true", faceWord(e))}})
		}
	}
	return tasks
}

// faceWord is what people call a face of a flat part.
func faceWord(e partspec.End) string {
	if e == partspec.Left {
		return "back"
	}
	return "front"
}

// faceExcess is what stands over a finished face.
func (c *Context) faceExcess(e partspec.End, f shape.Flat) float64 {
	if e == partspec.Left {
		return -f.Back
	}
	return f.Front - c.Length
}

func (c *Context) millFace(e partspec.End, excess float64) Task {
	z := c.endZ(e)
	cut := &shape.FlatCut{Front: &z}
	if e == partspec.Left {
		cut = &shape.FlatCut{Back: &z}
	}
	t := Task{Op: shape.Op{ID: "face." + e.String() + "/mill", Feature: "face." + e.String(), Process: plan.MillFace, Stage: shape.Finishing, End: e,
		Z0: math.Min(z, z+excess*-into(e)), Z1: math.Max(z, z+excess*-into(e)), Flat: cut, Makes: []string{"face." + e.String()}, Tight: float64(c.Part.Length.Width()), Depth: excess}}
	if !c.coordinates() {
		return t.orLacking(fmt.Sprintf("milling the %s face: no mill with dials x, y and quill (or z) is owned; take stock of the finished thickness and write faces_as_supplied = true", faceWord(e)))
	}
	long, wide := c.faceSpans(c.Flat)
	for _, tool := range c.faceCutters(wide) {
		if !c.travels("x", long+tool.size+2*runClear) {
			continue
		}
		w := c.millWay(e, tool)
		w.Rate.DepthMM = c.sprung(c.faceDepth(tool.kind), tool.size)
		n := passes(excess, w.Rate.DepthMM)
		w.ForceN = c.milledForce(w.Rate.DepthMM, tool.size*(1-faceOverlap), tool.size, w.Rate.FeedMM)
		w.DeepMM = excess
		w.ForceAt = tool.size / 2
		w.Span = [2]float64{t.Z0, t.Z1}
		w.Minutes = float64(n*c.faceRows(wide, tool.size))*((long+2*tool.size)/(w.Rate.FeedMM*w.Rate.RPM)+minutesAPass) + minutesTrial
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeMilledFace(t, w, e, j) }
		t.Ways = append(t.Ways, w)
	}
	return t.orLacking(fmt.Sprintf("milling the %s face: no end mill and no fly-cutter is owned that the table's travel lets pass over it", faceWord(e)))
}

// faceSpans are the work's measures along X and along Y.
func (c *Context) faceSpans(f shape.Flat) (long, wide float64) {
	x0, y0, x1, y1 := f.Rim().Bounds()
	return x1 - x0, y1 - y0
}

// faceRows is how many passes side by side cover a width.
func (c *Context) faceRows(wide, cutter float64) int {
	return int(math.Max(1, math.Ceil(wide/(cutter*(1-faceOverlap))-passNoise)))
}

// faceDepth is the most depth of a pass over a face: a fly-cutter takes 0.4 (table of cutting), an end mill half of a turning cut.
func (c *Context) faceDepth(k partspec.ToolKind) float64 {
	if k == partspec.FlyCutter {
		return flyDepth
	}
	return c.depth(cutRough) / 2
}

const flyDepth = 0.4

func (c *Context) writeMilledFace(t Task, w Way, e partspec.End, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Mill the %s face", faceWord(e)))
	p.op.DepthMM = w.PassMM(j.Light)
	p.tableZeros()
	top, other := j.Flat.Front, j.Flat.Back
	if e == partspec.Left {
		top, other = other, top
	}
	p.quillZero(top, "touch the face as it is, with a slip of paper")
	depth := math.Abs(top - c.endZ(e))
	last := near(other, c.endZ(e.Other()))
	marks, reached := p.sunk(depth, false)
	var m *plan.Measured
	if size := c.Part.Length; last && float64(size.Width()) < 4*float64(p.dial(p.quill()).Graduation.Value) {
		lo, hi := ordered(other-into(e)*float64(size.Low), other-into(e)*float64(size.High))
		m = &plan.Measured{What: "position", LowMM: lo, HighMM: hi}
	}
	most := w.Rate.DepthMM * j.Light
	if m != nil { // the last pass goes on to the middle of what is measured, and may go on to its far end
		most = math.Max(most/2, most-float64(c.Part.Length.Width())/2)
	}
	n := max(passes(depth, most), int(p.layersOf(marks, most)))
	if n == 1 && m != nil {
		n = 2
	}
	rows := p.faceRowsOver(j.Flat.Rim(), w.SizeMM)
	for k := 1; k <= n; k++ {
		deep, measure := p.whole(float64(marks)*float64(k)/float64(n)), (*plan.Measured)(nil)
		if k == n {
			deep, measure = marks, m
		}
		note := ""
		if k == n-1 && m != nil {
			note = "stop and measure the thickness: what is left now sets the last cut"
		}
		p.line(passName(k, n), p.quill(), deep, fmt.Sprintf("%s still to come off", p.both(depth-float64(deep)*float64(p.dial(p.quill()).Graduation.Value), p.quill())), note, measure != nil)
		for i, row := range rows {
			p.op.Cuts = append(p.op.Cuts, plan.Cut{Name: fmt.Sprintf("%s, row %d", passName(k, n), i+1), From: withReading(row.from, p.quill(), deep), To: withReading(row.to, p.quill(), deep), ToMeasure: measure})
		}
	}
	p.rowLines(rows)
	p.note("Feed every row the same way and lift the cutter to come back: the screws' slack is then always on the same side.")
	p.why("each row is counted from one nought, always coming up in the same direction", "C-08")
	if last {
		p.note("Clean the vice and the face below, tap the work down until the parallels do not move.")
		p.op.Checks = append(p.op.Checks, c.check("thickness", "face."+e.String(), c.Part.Length, outsideCheck))
	}
	z := c.endZ(e)
	if m == nil {
		z = top + into(e)*reached
	} else {
		z = other - into(e)*float64(c.Part.Length.Mid())
	}
	p.done.Flat = &shape.FlatCut{Front: &z}
	if e == partspec.Left {
		p.done.Flat = &shape.FlatCut{Back: &z}
	}
	return p.finish()
}

// row is a straight way of a cutter over the table.
type row struct{ from, to []plan.Reading }

// faceRowsOver lays rows along X over a rim, in the order of Y, each a little over the last.
func (p *page) faceRowsOver(rim plane.Region, cutter float64) []row {
	x0, y0, x1, y1 := rim.Bounds()
	n := p.c.faceRows(y1-y0, cutter)
	if cutter > y1-y0 {
		n = 1
	}
	x0, x1 = x0-cutter/2-runClear, x1+cutter/2+runClear
	if p.sense("x") < 0 {
		x0, x1 = x1, x0 // the dial still counts up
	}
	var rows []row
	for i := range n {
		y := y0 + (y1-y0)*(float64(i)+0.5)/float64(n)
		rows = append(rows, row{p.overDials(x0, y).at, p.overDials(x1, y).at})
	}
	return rows
}

// rowLines writes where the rows run.
func (p *page) rowLines(rows []row) {
	for i, r := range rows {
		p.line(fmt.Sprintf("row %d", i+1), "y", countOf(r.to, "y"), "middle of the cutter", "", false)
	}
	p.line("run from", "x", countOf(rows[0].from, "x"), "clear of the work", "", false)
	p.line("run to", "x", countOf(rows[0].to, "x"), "clear of the work", "", false)
}

func countOf(at []plan.Reading, dial string) int64 {
	for _, r := range at {
		if r.Dial == dial {
			return r.Graduations
		}
	}
	return 0
}
