package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// swingPass is the most that a swung tool takes at once, on radius (rule C-34).
const swingPass = 0.4

// swung lists the boring heads and fly-cutters that swing a seat's radius, the pipe's axis standing along the spindle, and says why there is none.
func (c *Context) swung(s saddle, t Task) (ways []Way, whyNot []string) {
	if !c.coordinates() {
		return nil, []string{s.Name + ": no mill with dials x, y and quill (or z) is owned to swing it on"}
	}
	through := s.to - s.from + 2*seatRun
	down, _ := depthDial(c.Mill)
	for _, kind := range []partspec.ToolKind{partspec.BoringHead, partspec.FlyCutter} {
		for _, tool := range c.tools(kind) {
			switch d := 2 * s.radius; {
			case d < float64(tool.LeastSwing) || tool.MostSwing > 0 && d > float64(tool.MostSwing):
				whyNot = append(whyNot, fmt.Sprintf("%s: R%.1f is Ø%.1f; the %s swings Ø%.0f to Ø%.0f", s.Name, s.radius, d, tool.Name, float64(tool.LeastSwing), float64(tool.MostSwing)))
			case down.Travel > 0 && through > float64(down.Travel):
				whyNot = append(whyNot, fmt.Sprintf("%s: swung, the tool goes %.0f through; the %s travels %.0f", s.Name, through, down.Name, float64(down.Travel)))
			default:
				ways = append(ways, c.swingWay(s, t, tool, through))
			}
		}
	}
	if len(ways)+len(whyNot) == 0 {
		whyNot = []string{s.Name + ": no boring head and no fly-cutter is owned to swing its radius"}
	}
	return ways, whyNot
}

func (c *Context) swingWay(s saddle, t Task, tool partspec.Tool, through float64) Way {
	w := Way{Machine: partspec.Mill, Across: true, AcrossDeg: float64(s.Angle), End: s.On, Tool: tool, SizeMM: 2 * s.radius, ForceAt: (s.to-s.from)/2 + 2*seatRun}
	low, high := ordered(s.axisZ, s.crownZ()) // the head stands outside the end
	w.Span = [2]float64{low, high}
	first := swingPass + radial(c.dialOf("x")) + float64(c.Part.Length.Width())/2 // the end may stand out as far as the length's limits let it
	w.Rate = c.capped(Rate{kind: cutFly, diameter: 2 * s.radius, tool: tool, on: partspec.Mill, own: first})
	w.ForceN = c.pushOf(first, w.Rate.FeedMM)
	w.SureN = w.ForceN
	w.Minutes = minutesTrial + float64(passes(s.depth, swingPass))*(through/(w.Rate.FeedMM*w.Rate.RPM)+minutesAPass)
	w.Write = func(j Job) (plan.Operation, Done) { return c.writeSwing(s, t, w, through, j) }
	return w
}

func (c *Context) writeSwing(s saddle, t Task, w Way, through float64, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Swing the seat %s, R%s", s.Name, s.Radius.Value.Text(c.unit())))
	p.tableZeros()
	p.quillZero(s.to, "the tool's tip just touches the top of the round")
	deep, _ := p.sunk(s.to-s.from+seatRun, true)
	side := p.along("y", 0)
	last := p.alongShort("x", s.axisZ, -into(s.On))
	n := passes(s.depth, swingPass)
	g := radial(p.dial("x"))
	for k := 1; k <= n; k++ {
		short := s.depth * float64(n-k) / float64(n)
		at := last - int64(into(s.On)*math.Round(short/g))
		name := fmt.Sprintf("pass %d", k)
		set := func(q int64) []plan.Reading {
			return []plan.Reading{{Dial: "x", Graduations: at}, {Dial: "y", Graduations: side}, {Dial: p.quill(), Graduations: q}}
		}
		p.cut(name, set(0), set(deep), &plan.Measured{What: "diameter", LowMM: 2 * float64(s.Radius.Low), HighMM: 2 * float64(s.Radius.High)})
		p.line(name, "x", at, "", "", false)
	}
	p.line("the whole time", "y", side, "over the part's axis", "lock it", false)
	p.line("each pass", p.quill(), deep, "through and clear", "", false)
	p.note("Set the tip to R%s: bar's diameter B, from the far side of the bar to the tip R + B/2; try it in scrap and gauge the sagitta.", s.Radius.Value.Text(c.unit()))
	p.note("Interrupted cut: half speed, guard, stand out of the tool's plane, turn it once by hand.")
	p.why("one radius of the cutter makes the whole seat", "C-34")
	p.seatWords(s)
	p.plugged(s)
	return p.finish()
}
