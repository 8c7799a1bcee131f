package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// What the boring head leaves: roughing for finishing on diameter, and how deep its passes go on radius (cutting table, rows of boring).
const (
	headLeaves = 0.6
	headDepth  = 0.4
)

// headChains lists how a boring head on the mill makes a bore: to measure where it can be measured, opened by drills or by a hole saw; else true for a reamer that makes
// the size (rule A-28). Why ways fall out is said as well.
func (c *Context) headChains(f *partspec.Bore) (chains []Chain, lacking []string) {
	switch {
	case !c.coordinates():
		return nil, []string{fmt.Sprintf("boring %s on a mill: none with dials x, y and quill (or z) is owned", f.Name)}
	case !f.Through:
		return nil, []string{fmt.Sprintf("boring %s by a boring head: it is blind", f.Name)}
	}
	ways := []Chain{ChainHead}
	if len(c.tools(partspec.HoleSaw)) > 0 {
		ways = append(ways, ChainSaw)
	}
	if unmeasured := c.unmeasurable(f.Name, f.Diameter, insideCheck); unmeasured != "" {
		ways = []Chain{ChainTrue}
		if _, _, ok := c.sized(partspec.Reamers, float64(f.Diameter.Low), float64(f.Diameter.High)); !ok {
			return nil, []string{"boring " + unmeasured}
		}
	}
	for _, way := range ways {
		if _, why := c.headFor(f, way); why == "" {
			chains = append(chains, way)
		} else {
			lacking = append(lacking, why)
		}
	}
	return chains, lacking
}

// headDrillMost is the largest drill that opens a bore for a boring head: what a small mill and a few clamps bear (rule A-25; the figure is ours).
const headDrillMost = 20.0

// headed is how a boring head makes a bore: the drill that opens it, or the hole saw round that drill's hole, and the head with how far it bores it on diameter, which
// a reamer may follow.
type headed struct {
	drill        partspec.Tool
	drillMM      float64
	saw          sawn
	head         partspec.Tool
	toMM, reamMM float64
}

// openMM is the diameter that the head finds at least.
func (h headed) openMM() float64 { return math.Max(h.drillMM, h.saw.mm) }

// headFor chooses the boring head for a bore and the largest drill or hole saw that lets it in and leaves it its cut, or says why none serves.
func (c *Context) headFor(f *partspec.Bore, chain Chain) (h headed, why string) {
	h.toMM = float64(f.Diameter.Mid())
	most, least := float64(f.Diameter.High), float64(f.Diameter.Low)
	if chain == ChainTrue {
		_, h.reamMM, _ = c.sized(partspec.Reamers, least, most)
		h.toMM = h.reamMM - reamLeave(h.reamMM)
		most, least = h.toMM, h.toMM
	}
	why = fmt.Sprintf("boring %s on the mill: no boring head is owned", f.Name)
	for _, t := range c.tools(partspec.BoringHead) {
		h.head = t
		switch lack := c.openFor(f, &h, least-boreLeave, chain); {
		case most > float64(t.MostSwing)+sizeNoise:
			why = fmt.Sprintf("boring %s on the mill: Ø%.1f is over the %.1f that the %s swings", f.Name, most, float64(t.MostSwing), t.Name)
		case lack != "":
			why = lack
		case float64(t.Reach) > 0 && float64(t.Reach) < c.Length+through:
			why = fmt.Sprintf("boring %s on the mill: the %s reaches %.1f deep, %.1f is wanted", f.Name, t.Name, float64(t.Reach), c.Length+through)
		default:
			return h, ""
		}
	}
	return headed{}, why
}

// openFor chooses what opens a bore for a boring head up to a size, or says why nothing does.
func (c *Context) openFor(f *partspec.Bore, h *headed, most float64, chain Chain) (why string) {
	least := float64(h.head.LeastSwing)
	if chain != ChainSaw {
		if h.drill, h.drillMM = c.headDrill(most, h.head); h.drillMM == 0 {
			why = fmt.Sprintf("boring %s on the mill: no drill owned opens it for the %s, which wants Ø%.1f", f.Name, h.head.Name, least)
		}
		return why
	}
	if h.saw, why = c.sawFor(f.Name, least, most); !h.saw.is() && why == "" {
		why = fmt.Sprintf("sawing %s: no hole saw owned from %.1f to %.1f leaves the %s its cut, %.1f wider as it may come out", f.Name, least, most-c.sawOver(), h.head.Name, c.sawOver())
	}
	h.drill, h.drillMM = h.saw.drill, h.saw.pilotMM
	return why
}

// headDrill is the largest drill up to a size that lets a boring head in; 0 when there is none.
func (c *Context) headDrill(most float64, head partspec.Tool) (tool partspec.Tool, best float64) {
	for _, t := range c.tools(partspec.Drills) {
		for _, s := range t.Sizes {
			if v := float64(s); v <= most && v >= float64(head.LeastSwing)-sizeNoise && v > best && (v <= headDrillMost || best == 0) {
				tool, best = t, v
			}
		}
	}
	return tool, best
}

// headHole makes the tasks of a bore made by a boring head: drilled by the dials, or sawn round a pilot hole, roughed, and finished to measure or left to a reamer.
func (c *Context) headHole(f *partspec.Bore, chain Chain) []Task {
	h, _ := c.headFor(f, chain)
	s := spotted{Holes: asHoles(f), by: partspec.LocateDial, from: []partspec.End{f.From, f.From.Other()}, columns: []column{{0, c.Length}}, drill: h.drill, drillMM: h.drillMM, reamMM: float64(f.Diameter.Mid()), saw: h.saw}
	tasks := []Task{c.drillHoles(s)}
	tasks[0].Place = 0 // the head bores where the spindle stands
	if s.saw.is() {
		tasks = append(tasks, c.sawHoles(s, false))
	}
	if h.reamMM > 0 {
		tasks = append(tasks, c.headTask(s, f, h.head, headTrue, h.drillMM, h.toMM))
		s.drillMM, s.reamMM, s.bored = h.toMM, h.reamMM, true
		return c.askRound(f, append(tasks, c.reamHoles(s)))
	}
	open := h.openMM()
	if h.toMM-headLeaves > open+sizeNoise {
		tasks = append(tasks, c.headTask(s, f, h.head, headRough, open, h.toMM-headLeaves))
		open = h.toMM - headLeaves
	}
	return append(tasks, c.headTask(s, f, h.head, headFinish, open, h.toMM))
}

// headStep is what a boring head does to a bore: roughs it, bores it true for a reamer, or finishes it to measure. Its text ends the task's name.
type headStep string

const (
	headRough  headStep = "rough"
	headTrue   headStep = "true"
	headFinish headStep = "bore"
)

// headTask bores from one diameter to another.
func (c *Context) headTask(s spotted, f *partspec.Bore, head partspec.Tool, step headStep, from, to float64) Task {
	t := c.holesTask(s, string(step), plan.BoreHead, to, 0)
	t.Depth, t.Place = (to-from)/2, 0
	if step != headRough {
		t.Place = c.placeWithin(s.Holes)
	}
	if step == headFinish {
		t.Stage, t.Makes, t.Tight, t.Round = shape.Finishing, []string{f.Name}, float64(f.Diameter.Width()), c.roundness(f.Diameter)
	}
	for _, w := range c.holeWays(s, true) {
		w.Tool, w.SizeMM, w.ForceAt, w.Ordinary = head, to, to/2, true
		w.Rate = c.rateOn(partspec.Mill, cutBore, to, head)
		w.deep(c, (to-from)/2)
		w.Span = s.span(w.End, c.Length+through)
		n := passes((to-from)/2, headDepth)
		w.Minutes = minutesADrill + float64(n+1)*(c.Length/(w.Rate.FeedMM*w.Rate.RPM)+minutesAPass)
		if step == headFinish {
			w.Minutes += minutesTrial
		}
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeHead(s, f, t, w, from, to, step, j) }
		t.Ways = append(t.Ways, w)
	}
	return t
}

func (c *Context) writeHead(s spotted, f *partspec.Bore, t Task, w Way, from, to float64, step headStep, j Job) (plan.Operation, Done) {
	title := fmt.Sprintf("Rough %s with the boring head to Ø%s", f.Name, units.Length(to).Text(c.unit()))
	switch step {
	case headTrue:
		title = fmt.Sprintf("Bore %s true for the reamer with the boring head, to Ø%s", f.Name, units.Length(to).Text(c.unit()))
	case headFinish:
		title = fmt.Sprintf("Bore %s%s with the boring head", f.Name, aimedAt(f.Diameter))
	}
	finish := step == headFinish
	p := c.page(j, t, w, title)
	p.begin(s, w)
	top := j.Flat.Front
	if w.End == partspec.Left {
		top = j.Flat.Back
	}
	p.setQuill(top, "the tool's point just touches the face")
	marks, reached := p.sunk(j.Flat.Front-j.Flat.Back+through, true)
	p.line("run to", p.quill(), marks, p.both(reached, p.quill())+" below the face", "through", false)
	st := p.over(s, w, 0)
	n := passes((to-from)/2, headDepth*j.Light)
	if finish {
		n = max(n, 2)
	}
	for k := 1; k <= n; k++ {
		cut := p.plunge(passName(k, n), st, marks, 0, 0)
		cut.ToolID, cut.ToolSizeMM = w.Tool.ID(), tidyMM(from+(to-from)*float64(k)/float64(n))
		if finish && k == n {
			cut.ToMeasure = &plan.Measured{What: "diameter", LowMM: float64(f.Diameter.Low), HighMM: float64(f.Diameter.High)}
		}
		p.op.Cuts = append(p.op.Cuts, cut)
		p.note("%s: the head set to Ø%s.", passName(k, n), p.both(cut.ToolSizeMM, ""))
	}
	p.op.DepthMM = (to - from) / 2 / float64(n)
	if s.saw.is() && from == s.saw.mm {
		p.note("The hole may have come out up to %s wider than the saw: the first passes may find little to cut.", units.Length(c.sawOver()).Text(c.unit()))
	}
	if finish {
		p.note("Measure after the last but one; set the head by what is left, and repeat the last pass until nothing more comes off.")
		p.why("dials give differences, not sizes", "C-15")
		p.op.Checks = append(p.op.Checks, c.check(f.Name+", diameter", f.Name, f.Diameter, insideCheck))
	}
	p.why("boring puts the hole where the spindle stands, whatever the drill did", "A-26")
	if step == headTrue {
		p.note("A caliper will do to measure it: what is left is for the reamer.")
		p.why("the reamer follows a hole that boring has made true", "A-28")
	}
	p.done.Flat = t.Flat
	p.done.Beside = []plan.FlatHole{{Feature: f.Name, XMM: s.place(0)[0], YMM: s.place(0)[1], DiameterMM: to, FromZ: 0, ToZ: c.Length}}
	return p.finish()
}
