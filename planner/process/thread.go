package process

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/numbers/thread"
	"catchplate/planner/plan"
	"catchplate/planner/shape"
)

// thread makes the task of cutting a thread: with a tap or die where one is owned, else with a single point.
func (c *Context) thread(f *partspec.Thread) Task {
	t := Task{Op: shape.Op{ID: f.ID() + "/thread", Feature: f.Name, Process: plan.Thread, Stage: shape.Finishing, Inside: f.Inside, End: f.From,
		Z0: float64(f.Span.Left), Z1: float64(f.Span.Right), Makes: []string{f.Name}, Tight: c.threadTight(f), Depth: threadDepth(f)}}
	var why []string
	if room, need := c.runOut(f); room < need {
		t.Lacking = []string{fmt.Sprintf("%s: %.2f mm are left beyond the full thread, the tool or die needs %.2f (a pitch outside, a pitch and a half inside): shorten the thread or add a groove or recess there", f.Name, math.Max(0, room), need)}
		return t
	}
	if w, process, ok := c.handThread(f, t); ok {
		t.Process = process
		t.Ways = append(t.Ways, w...)
		return t
	}
	ways, lack := c.singlePoint(f, t)
	t.Ways = ways
	why = append(why, fmt.Sprintf("no tap or die for %s is owned (tool \"taps\" or \"dies\" { threads = [...] })", f.Thread.Designation))
	if len(t.Ways) == 0 {
		t.Lacking = append(why, lack)
	}
	return t
}

// runOut is the room beyond the full thread, and what it needs (rule C-28).
func (c *Context) runOut(f *partspec.Thread) (room, need float64) {
	if f.Inside {
		h := c.holeNamed(f.On)
		if h.Through {
			return far, 0
		}
		return h.Depth - float64(f.Length.Value), 1.5 * float64(f.Thread.Pitch)
	}
	for i, b := range c.Blocks {
		if b.Name != f.On {
			continue
		}
		e := f.From.Other()
		if up := c.rise(i); e == partspec.Left && up[0] == 0 || e == partspec.Right && up[1] == 0 {
			return far, 0 // nothing stands higher there
		}
		if c.grooved(f, e) {
			return far, 0
		}
		return b.Z1 - b.Z0 - float64(f.Length.Value) - c.filletAt(b.Name, e), float64(f.Thread.Pitch)
	}
	return far, 0
}

// grooved reports whether a groove at the far end of a spigot lets its thread run out.
func (c *Context) grooved(f *partspec.Thread, far partspec.End) bool {
	for _, g := range c.Part.Features {
		if g, ok := g.(*partspec.Groove); ok && g.On == f.On && float64(g.Bottom.Mid()) <= float64(f.Thread.CoreExt)+sizeNoise {
			if s, ok := c.Part.Feature(f.On).(*partspec.Spigot); ok && near(float64(g.Span.At(far)), float64(s.Span.At(far))) {
				return true
			}
		}
	}
	return false
}

func threadDepth(f *partspec.Thread) float64 {
	if f.Inside {
		return float64(f.Thread.Major-f.Thread.MinorInt) / 2
	}
	return float64(f.Thread.Major-f.Thread.CoreExt) / 2
}

// threadTight is the finest relation that binds a thread to another surface; a thread by itself asks nothing of the holding.
func (c *Context) threadTight(f *partspec.Thread) float64 {
	tight := 0.0
	for _, r := range c.Part.Relations {
		if r.Of.Feature == f.Name || r.To.Feature == f.Name {
			tight = float64(r.Within)
		}
	}
	return tight
}

// handThread finds a tap or die for the thread.
func (c *Context) handThread(f *partspec.Thread, t Task) ([]Way, plan.Process, bool) {
	kind, process, minutes := partspec.Dies, plan.Die, minutesHandDie
	if f.Inside {
		kind, process, minutes = partspec.Taps, plan.Tap, minutesHandTap
	}
	for _, tool := range c.tools(kind) {
		if f.LeftHand || !slices.Contains(tool.Threads, f.Thread.Designation) {
			continue
		}
		rate := Rate{Why: "by hand", Text: "turned by hand, held true by the tailstock", FeedMM: float64(f.Thread.Pitch)}
		t.Process = process
		w := Way{End: f.From, Tool: tool, SizeMM: float64(f.Thread.Major), Ordinary: true, Rate: rate, Minutes: minutes + float64(f.Length.Value)/10, Span: [2]float64{t.Z0, t.Z1}}
		w.ForceAt, w.ForceN = float64(f.Thread.Major)/2, c.force(t.Depth, float64(f.Thread.Pitch)/4)
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeHandThread(f, t, w, j) }
		return []Way{w}, process, true
	}
	return nil, "", false
}

func (c *Context) writeHandThread(f *partspec.Thread, t Task, w Way, j Job) (plan.Operation, Done) {
	verb := map[plan.Process]string{plan.Tap: "Tap", plan.Die: "Cut with the die"}[t.Process]
	p := c.page(j, t, w, fmt.Sprintf("%s %s, %s", verb, f.Thread.Designation, f.Name))
	p.op.Tool.Text = f.Thread.Designation + " " + map[plan.Process]string{plan.Tap: "taps", plan.Die: "die"}[t.Process]
	if t.Process == plan.Tap {
		p.note("Taper, second, then plug tap; held true by the tailstock centre; back off every half turn.")
	} else {
		p.note("Die in the tailstock holder, opened for the first cut; back off every turn.")
	}
	p.threadWords(f)
	return p.finish()
}

func (p *page) threadWords(f *partspec.Thread) {
	p.note("Try it with the mating part or a gauge before the work is moved: a thread cannot be picked up again.")
	p.why("a thread is cut late, in clear metal, and gauged before it is moved", "A-13")
	check := plan.Check{What: f.Thread.Designation + " thread", Feature: f.Name, Limits: "runs on the mating part without shake", When: "before release",
		IfLarge: "take another pass", IfSmall: "it shakes: the thread is scrap"}
	if f.Inside {
		check.IfLarge, check.IfSmall = check.IfSmall, check.IfLarge
	}
	p.op.Checks = append(p.op.Checks, check)
}

// singlePoint lists how the thread can be cut from the lead screw.
func (c *Context) singlePoint(f *partspec.Thread, t Task) ([]Way, string) {
	if c.Lathe.LeadscrewPitch == 0 {
		return nil, "the lathe has no leadscrew: a single-point thread cannot be cut"
	}
	feeds, err := infeeds(f)
	if err != nil {
		return nil, err.Error()
	}
	gears, ok := c.gears(f)
	if !ok {
		return nil, fmt.Sprintf("the change wheels owned give no pitch near %.4f mm", float64(f.Thread.Pitch))
	}
	kind := partspec.ThreadExternal
	if f.Inside {
		kind = partspec.ThreadInternal
	}
	var ways []Way
	for _, tool := range c.tools(kind) {
		if !c.threadToolReaches(f, tool) {
			continue
		}
		rate := c.rate(cutThread, float64(f.Thread.Major), tool)
		rate.FeedMM = float64(f.Thread.Pitch)
		w := Way{End: f.From, Tool: tool, Ordinary: true, Rate: rate, Span: [2]float64{t.Z0, t.Z1}, ForceAt: float64(f.Thread.Major) / 2}
		w.Minutes = minutesGearSet + cutMinutes(float64(f.Length.Value), len(feeds.Passes)+feeds.Spring, rate)
		w.ForceN = c.force(float64(feeds.Passes[0]), float64(f.Thread.Pitch)/2)
		w.Write = func(j Job) (plan.Operation, Done) { return c.writeSinglePoint(f, t, w, gears, feeds, j) }
		ways = append(ways, w)
	}
	return ways, fmt.Sprintf("no single-point tool owned cuts a pitch of %.3f mm there", float64(f.Thread.Pitch))
}

func (c *Context) threadToolReaches(f *partspec.Thread, tool partspec.Tool) bool {
	if f.Thread.Pitch < tool.LeastPitch || f.Thread.Pitch > tool.MostPitch {
		return false
	}
	if !f.Inside {
		return true
	}
	reach := math.Max(math.Abs(c.endZ(f.From)-float64(f.Span.Left)), math.Abs(c.endZ(f.From)-float64(f.Span.Right)))
	return float64(tool.LeastBore) <= float64(f.Thread.MinorInt)+sizeNoise && float64(tool.Reach) >= reach
}

// infeeds plans the passes of a single-point thread (rule C-28).
func infeeds(f *partspec.Thread) (thread.Infeeds, error) {
	if f.Inside {
		return thread.ScrewcutInternal(f.Thread)
	}
	return thread.ScrewcutExternal(f.Thread)
}

func (c *Context) writeSinglePoint(f *partspec.Thread, t Task, w Way, gears string, in thread.Infeeds, j Job) (plan.Operation, Done) {
	p := c.page(j, t, w, fmt.Sprintf("Screwcut %s, %s", f.Thread.Designation, f.Name))
	blank := j.Before.Outer.Greatest(t.Z0, t.Z1)
	if f.Inside {
		blank = j.Before.Inner.Least(t.Z0, t.Z1)
		p.crossZero(2*blank, true, "touch the bore, "+p.diameter(blank))
	} else {
		p.crossZero(2*blank, false, "touch the blank, "+p.diameter(blank))
	}
	p.saddleZero()
	p.note("%s", gears)
	for k, depth := range in.Passes {
		r := blank - float64(depth)
		if f.Inside {
			r = blank + float64(depth)
		}
		marks, _ := p.cross(r)
		p.line(fmt.Sprintf("pass %d", k+1), "cross", marks, "", "", k == len(in.Passes)-1)
	}
	p.note("Then %s at the last setting; the depth is %s in all.", springPasses(in.Spring), p.both(float64(in.Depth), "cross"))
	p.note("Draw the tool out at the run-out before the half nuts are opened or the spindle stops.")
	p.why("in-feeds fall so that the chips flow", "C-28")
	p.threadWords(f)
	op, done := p.finish()
	op.Passes = len(in.Passes) + in.Spring
	return op, done
}

// knurl makes the task of knurling a spigot.
func (c *Context) knurl(f *partspec.Knurl) Task {
	t := Task{Op: shape.Op{ID: f.ID() + "/knurl", Feature: f.Name, Process: plan.Knurl, Stage: shape.Finishing, Z0: float64(f.Span.Left), Z1: float64(f.Span.Right), Makes: []string{f.Name}}}
	for _, tool := range c.tools(partspec.KnurlTool) {
		if !slices.Contains(tool.Pitches, f.Pitch) {
			continue
		}
		r := c.blockRadius(f.On)
		rate := c.rate(cutKnurl, 2*r, tool)
		for _, e := range ends() {
			w := Way{End: e, Tool: tool, Ordinary: true, Rate: rate, Minutes: 2 + cutMinutes(t.Z1-t.Z0, 2, rate), Span: [2]float64{t.Z0, t.Z1}, ForceAt: r, ForceN: knurlForce}
			w.Write = func(j Job) (plan.Operation, Done) {
				p := c.page(j, t, w, fmt.Sprintf("Knurl %s, %s, pitch %s", f.On, f.Pattern, f.Pitch.Text(c.unit())))
				p.note("Press in firmly at once so that it tracks, plenty of oil, then along; the tailstock supports slender work.")
				p.why("knurled before its neighbours are finished", "A-14")
				return p.finish()
			}
			t.Ways = append(t.Ways, w)
		}
	}
	return t.orLacking(fmt.Sprintf("no knurl of pitch %s is owned (tool \"knurl\" { pitches = [...] })", f.Pitch.Text(c.unit())))
}

// knurlForce is what a pressed knurl is reckoned to ask of the grip, N. Common practice, no source: it presses "very hard".
const knurlForce = 800

func (c *Context) blockRadius(name string) float64 {
	for _, b := range c.Blocks {
		if b.Name == name {
			return b.Greatest
		}
	}
	return c.stockRadius()
}

func springPasses(n int) string {
	if n == 1 {
		return "one more pass"
	}
	return fmt.Sprintf("%d more passes", n)
}
