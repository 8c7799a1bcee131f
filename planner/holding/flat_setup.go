package holding

import (
	"fmt"
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/process"
)

// FlatStep is a task of a setup, the way it is done there, and how deep its passes go as a part of the ordinary depth.
type FlatStep struct {
	Task  int
	Way   process.Way
	Light float64
}

// at is the moment at which a setup begins, with all that is done in it.
func (s Shop) at(steps []FlatStep, done func(int) bool) moment {
	at := moment{flat: s.flatBody(done), done: done, light: 1}
	for _, st := range steps {
		at.tasks, at.ways = append(at.tasks, st.Task), append(at.ways, st.Way)
		at.light = math.Min(at.light, st.Light)
	}
	return at
}

// FlatSetup fills in how a flat part is held in a setup, once its steps are known: title, grip, clamps or presses, bed, balance, where the work lies, and what to
// do in order. done tells what was done before it.
func (s Shop) FlatSetup(m Mount, steps []FlatStep, done func(int) bool, setup *plan.Setup) {
	at := s.at(steps, done)
	setup.Title = m.Title()
	if datum := s.Part.Outline.Datum; m.Machine != "" && m.Machine != partspec.Bench && len(datum) > 0 {
		setup.Locates = "its " + strings.Join(datum, " and ") + " edges" // the dials count from them, whatever it is held by
	}
	setup.Grip = plan.Grip{Kind: "bench", Surface: m.Surface, FromZ: tidyMM(at.flat.Back), ToZ: tidyMM(at.flat.Front)}
	setup.CentreX, setup.CentreY, setup.LocateMM = tidyMM(m.CentreX), tidyMM(m.CentreY), tidyMM(m.Locate)
	switch {
	case m.Machine == partspec.Bench:
		setup.LocateMM = 0
		setup.How = []string{"Hold it in the bench vice, soft jaws on finished edges and faces."}
	case m.Holding.Kind == partspec.Vice:
		s.viceSetup(m, at, s.gripping(m, steps, done), setup)
	case m.Holding.Kind == partspec.TableClamps:
		s.tableSetup(m, at, setup)
	case m.Holding.Kind == partspec.Faceplate:
		s.plateSetup(m, at, setup)
	case m.Holding.Kind == partspec.AnglePlate:
		s.ledgeSetup(m, at, setup)
	case m.Holding.Kind == partspec.FourJaw:
		s.fourJawSetup(m, at, s.gripping(m, steps, done), setup)
	case m.Holding.Kind == partspec.ThreeJaw || m.Holding.Kind == partspec.SoftJaws:
		s.discSetup(m, at, s.gripping(m, steps, done), setup)
	default:
		s.boreSetup(m, at, setup)
	}
}

// flatTitle names a setup of flat work.
func (m Mount) flatTitle() string {
	face := FaceName(m.Free)
	switch {
	case m.Machine == partspec.Bench:
		return "At the bench"
	case m.OnSlide():
		return fmt.Sprintf("Vertical slide, in its vice by the %s, %s towards the spindle", strings.TrimPrefix(m.Surface, "its "), face)
	case m.Holding.Kind == partspec.Vice:
		return fmt.Sprintf("Machine vice on parallels, gripped by the %s, %s up", strings.TrimPrefix(m.Surface, "its "), face)
	case m.Holding.Kind == partspec.TableClamps:
		return fmt.Sprintf("Clamped to the %s's table, %s up%s", m.Machine, face, strings.TrimPrefix(m.Surface, "its "+FaceName(m.Free.Other())))
	case m.Holding.Kind == partspec.Faceplate:
		return fmt.Sprintf("Faceplate, running true about %s, %s outward", m.About, face)
	case m.Holding.Kind == partspec.AnglePlate:
		return fmt.Sprintf("Angle plate on the faceplate, standing on %s, running true about %s, %s outward", m.Surface, m.About, face)
	case m.Holding.Kind == partspec.FourJaw:
		return fmt.Sprintf("Four-jaw chuck by its sides, running true about %s, %s outward", m.About, face)
	}
	return fmt.Sprintf("%s on %s, %s outward", m.noun(), m.Surface, face)
}

// tidyMM takes the noise of sums out of a place.
func tidyMM(v float64) float64 { return math.Round(v*1e6) / 1e6 }

func round1(v float64) float64 { return math.Round(v*10) / 10 }

func (s Shop) viceSetup(m Mount, at moment, grip plan.Grip, setup *plan.Setup) {
	p := s.grips(m, at)
	setup.Grip = grip
	g := &setup.Grip
	g.Kind, g.Jaws, g.JawWidthMM, g.RadiusMM, g.Feel = "vice", 2, tidyMM(p.jawWidth()), 0, viceFeel(g.WorkingN)
	if g.Eased != nil {
		g.Eased.Feel = viceFeel(g.Eased.WorkingN)
	}
	if m.Free == partspec.Right {
		g.ToZ = tidyMM(at.flat.Back + p.gripMM)
	} else {
		g.FromZ = tidyMM(at.flat.Front - p.gripMM)
	}
	setup.Presses = tidyPresses(p.presses)
	high := round1(or(float64(m.Holding.JawHeight), usualJawHeight) - p.gripMM)
	setup.Bed = &plan.Bed{Kind: "parallels", HeightMM: high, GapMM: high, Under: tidyStrips(p.under)}
	setup.Why = append(setup.Why, plan.Reason{Text: fmt.Sprintf("two parallel edges %.1f apart, %.1f of %.1f thickness in the jaws", p.Across, p.gripMM, p.Thick), Rule: "B-33"})
	squareness := or(float64(m.Holding.Squareness), squareLift)
	setup.How = append(m.howOnSlide(),
		"Vice clocked square to the "+m.bed()+" and cleaned; its fixed jaw is the datum: the better edge goes against it, a round bar behind the moving jaw if the other is rough.",
		fmt.Sprintf("Two parallels %s high and at most %s wide, one along each jaw; %s of the thickness in the jaws.", mm(high), mm(p.wide), mm(p.gripMM)),
		fmt.Sprintf("Tighten with %s, tap the work down until neither parallel moves; it then lies square within %.2f in 100.", g.Feel, squareness),
	)
	if g.Eased != nil {
		setup.How = append(setup.How, fmt.Sprintf("Before %s slacken the vice, and tighten it again with %s: more than %.0f N would leave the bore out of round.", g.Eased.Before, g.Eased.Feel, g.MostN))
	}
	setup.How = append(setup.How, s.howFound(m)...)
}

func viceFeel(needN float64) string {
	if needN <= viceLightN*2 {
		return "one hand on the handle"
	}
	return "a firm pull on the handle"
}

func (p pinch) jawWidth() float64 {
	if len(p.presses) == 0 {
		return 0
	}
	return p.presses[0].WidthMM
}

func tidyPresses(list []plan.Press) []plan.Press {
	for i, p := range list {
		list[i] = plan.Press{XMM: tidyMM(p.XMM), YMM: tidyMM(p.YMM), AngleDeg: tidyMM(p.AngleDeg), WidthMM: tidyMM(p.WidthMM)}
	}
	return list
}

func tidyStrips(list []plan.Strip) []plan.Strip {
	for i, p := range list {
		list[i] = plan.Strip{X0: tidyMM(p.X0), Y0: tidyMM(p.Y0), X1: tidyMM(p.X1), Y1: tidyMM(p.Y1)}
	}
	return list
}

func tidyClamps(list []plan.Clamp) []plan.Clamp {
	out := append([]plan.Clamp(nil), list...)
	for i, c := range out {
		out[i] = plan.Clamp{XMM: tidyMM(c.XMM), YMM: tidyMM(c.YMM), ToeMM: tidyMM(c.ToeMM), AngleDeg: tidyMM(c.AngleDeg), StudMM: tidyMM(c.StudMM), ForceN: math.Floor(c.ForceN)}
	}
	return out
}

// clampedGrip fills in what clamps hold with.
func clampedGrip(l laid, setup *plan.Setup) {
	g := &setup.Grip
	g.Kind, g.LeastN, g.WorkingN, g.Feel = "clamps", l.NeedN, math.Floor(l.HaveN), "each nut a firm pull with a short spanner, in turns, a little at a time"
	setup.Clamps = tidyClamps(l.list)
	setup.Why = append(setup.Why, plan.Reason{Text: fmt.Sprintf("%d clamps on solid metal, no two more than %.0f degrees apart, press with %.0f N in all; the cuts ask %.0f, safety 2.5", l.Placed, math.Ceil(l.SpreadDeg), g.WorkingN, l.NeedN), Rule: "B-07"})
}

func (s Shop) tableSetup(m Mount, at moment, setup *plan.Setup) {
	l := s.clampsFor(m, at)
	clampedGrip(l, setup)
	setup.Bed = &plan.Bed{Kind: "plate"}
	setup.How = []string{"Table and work wiped clean, every burr off the lower face."}
	if board := s.backing(m, at); board > 0 {
		setup.Bed = &plan.Bed{Kind: "backing board", HeightMM: board, GapMM: board}
		setup.How = append(setup.How, fmt.Sprintf("A flat board of MDF or hardwood %s thick under the whole of it, for what comes through.", mm(board)))
	}
	if m.AskewDeg != 0 {
		setup.AskewDeg, setup.Locates = m.AskewDeg, m.Surface
		setup.How = append(setup.How, process.AskewHow(s.Part, m.AskewDeg)...)
	}
	setup.How = append(setup.How, s.howClamped(l, setup.Bed.HeightMM)...)
	if s.Rules.Has("B-34") {
		setup.How = append(setup.How, "An end stop against the cut's push; never take a clamp off before the next one is on.")
		setup.Why = append(setup.Why, plan.Reason{Text: "all edges stay free, clamps on solid metal", Rule: "B-34"})
	}
	if m.AskewDeg == 0 {
		setup.How = append(setup.How, s.howFound(m)...)
	}
}

// howClamped tells where the clamps stand and how they are set.
func (s Shop) howClamped(l laid, under float64) []string {
	how := []string{fmt.Sprintf("%d clamps where the sketch shows them, no two more than %.0f degrees apart, each toe at least %.0f clear of the cut, card under it on a finished face.", l.Placed, math.Ceil(l.SpreadDeg), toeFromCut)}
	if s.Rules.Has("B-08") {
		how = append(how, fmt.Sprintf("Stud at one third of the strap from the work, packing 1 to 2 higher than its upper face (%s): the strap level or a shade down at the work.", mm(under+s.Length+1.5)))
	}
	return append(how, fmt.Sprintf("Tighten evenly, in turns: together they press with about %.0f N; %.0f must hold.", math.Floor(l.HaveN/10)*10, l.NeedN))
}

// backing is how thick a board must be for what comes through it: 0.3 of the widest tool and 3, and more than the longest point (rule B-35); 0 where nothing does.
func (s Shop) backing(m Mount, at moment) float64 {
	if !s.Rules.Has("B-35") {
		return 0
	}
	widest := 0.0
	for i, k := range at.tasks {
		zones, _ := s.worked(s.Tasks[k], at.ways[i])
		for _, z := range zones {
			if z.through {
				widest = math.Max(widest, 2*z.Radius)
			}
		}
	}
	if widest == 0 {
		return 0
	}
	return math.Ceil(math.Max(math.Max(leastBoard, backingShare*widest+backingMore), s.comesOut(m, at)+clearBehind))
}

// Backing for what comes through (rule B-35): a board's figures, and what stays clear behind the tools where work is packed off a plate. The thinnest board is
// ours, no source.
const (
	leastBoard   = 6.0
	backingShare = 0.3
	backingMore  = 3.0
	clearBehind  = 3.0
	leastGap     = 6.0
)

// comesOut is how far the tools of a moment come out behind the held face.
func (s Shop) comesOut(m Mount, at moment) float64 {
	out := 0.0
	for _, w := range at.ways {
		if m.Free == partspec.Right {
			out = math.Max(out, at.flat.Back-w.Span[0])
		} else {
			out = math.Max(out, w.Span[1]-at.flat.Front)
		}
	}
	return out
}

// gapBehind is how high packing stands between plate or chuck and work, so that every tool comes out free.
func (s Shop) gapBehind(m Mount, at moment) float64 {
	if !s.Rules.Has("B-35") {
		return 0
	}
	return math.Ceil(math.Max(leastGap, s.comesOut(m, at)+clearBehind))
}

func (s Shop) plateSetup(m Mount, at moment, setup *plan.Setup) {
	p := s.plated(m, at)
	clampedGrip(p.laid, setup)
	gap := s.gapBehind(m, at)
	setup.Bed = &plan.Bed{Kind: "parallels", HeightMM: gap, GapMM: gap, Under: tidyStrips(underToes(p.list))}
	b := p.balance
	b.MassKg, b.UnbalanceKgMM, b.WeightKg, b.AngleDeg = round3(b.MassKg), round3(b.UnbalanceKgMM), round3(b.WeightKg), round1(b.AngleDeg)
	b.LeftOverKgMM = round3(b.LeftOverKgMM)
	if s.Rules.Has("B-06") {
		setup.Why = append(setup.Why, plan.Reason{Text: fmt.Sprintf("it reaches %.0f from the axis, the plate %.0f; its centre of mass lies %.0f off", p.Reach, p.Diameter/2, p.OffCentre), Rule: "B-06"})
	}
	if s.Rules.Has("B-09") {
		setup.Balance = &b
		setup.Why = append(setup.Why, plan.Reason{Text: fmt.Sprintf("%.1f kg mm out of balance with its clamps: a counterweight of %.2f kg; the %.1f that balancing leaves shake with %.0f N at %.0f a minute", b.UnbalanceKgMM, b.WeightKg, b.LeftOverKgMM, b.ShakingN, b.MostRPM), Rule: "B-09"})
	}
	setup.RunOutMM = m.RunOut
	setup.How = []string{
		"Skim or check the faceplate; wipe plate and work, thin paper between them for grip.",
		fmt.Sprintf("Packing %s high, all of one height, each piece whole and screwed to the plate, under every clamp's toe: the tool's nose needs at least 3 clear behind the bore.", mm(gap)),
	}
	setup.How = append(setup.How, s.howClamped(p.laid, gap)...)
	setup.How = append(setup.How, "A peg against the turning direction, touching an edge of the work.")
	setup.How = append(setup.How, s.howFound(m)...)
	setup.How = append(setup.How,
		fmt.Sprintf("Counterweight about %.2f kg at %s from the axis, opposite the heavy side (%.0f degrees from +X): move it until the plate, out of gear, stops anywhere.", b.WeightKg, mm(b.RadiusMM), b.AngleDeg),
		fmt.Sprintf("Turn it by hand one full revolution, the tool at each end of its travel; then no faster than %.0f a minute.", b.MostRPM))
}

func round3(v float64) float64 { return math.Round(v*1e3) / 1e3 }

// underToes is a piece of packing under each clamp, as large as fits under its toe.
func underToes(list []plan.Clamp) []plan.Strip {
	var under []plan.Strip
	for _, c := range list {
		h := c.ToeMM / 2
		under = append(under, plan.Strip{X0: c.XMM - h, Y0: c.YMM - h, X1: c.XMM + h, Y1: c.YMM + h})
	}
	return under
}

func (s Shop) fourJawSetup(m Mount, at moment, g plan.Grip, setup *plan.Setup) {
	jaws, _ := s.fourJaws(m, at)
	setup.RunOutMM, setup.Grip = m.RunOut, g
	setup.Grip.Packing = "card or thin aluminium under each jaw on finished edges"
	for _, j := range jaws {
		setup.Presses = append(setup.Presses, j.Press)
	}
	setup.Presses = tidyPresses(setup.Presses)
	gap := s.gapBehind(m, at)
	setup.Bed = &plan.Bed{Kind: "parallels", HeightMM: gap, GapMM: gap}
	b := s.jawBalance(m, at, jaws)
	setup.Balance = &b
	setup.Why = append(setup.Why, plan.Reason{Text: "four sides that face the jaws, within their reach; clocked true", Rule: "B-04"})
	setup.How = []string{
		fmt.Sprintf("A flat backing ring or packing, %s thick and clear of the bore by 2, between the work and the chuck's face; press the work hard back while tightening.", mm(gap)),
		"Set the jaws by the face rings, then clock: move a pair by half the difference of its readings, bring in the last 0.05 by tightening only.",
	}
	setup.How = append(setup.How, s.howFound(m)...)
	setup.How = append(setup.How, howGripped(setup.Grip)...)
	setup.How = append(setup.How, fmt.Sprintf("Turn it by hand one full revolution; it is about %.1f kg mm out of balance: no faster than %.0f a minute.", b.UnbalanceKgMM, b.MostRPM))
}

// gripping finds the forces of jaws on flat work: one for all steps where one will do, else a firm one for the heavy cuts, eased before the rest (rule B-24).
func (s Shop) gripping(m Mount, steps []FlatStep, done func(int) bool) plan.Grip {
	at := s.at(steps, done)
	g := plan.Grip{Kind: "jaws", Surface: m.Surface, FromZ: tidyMM(at.flat.Back), ToZ: tidyMM(at.flat.Front), Jaws: m.Jaws(), JawWidthMM: float64(m.Holding.JawWidth), RadiusMM: tidyMM(m.Radius)}
	list := s.pulls(m, steps, done)
	split := 0
	for split < len(list)-1 && !oneGrip(list[split:]) {
		split++
	}
	before, after := list[:split], list[split:]
	g.LeastN, g.MostN = leastMost(after)
	g.WorkingN = math.Max(g.LeastN, list[0].Case.LightN)
	for _, f := range after {
		if lobe := f.LobeMM / f.WorkingN * g.WorkingN; f.LimitMM > 0 && lobe > g.ErrorMM {
			g.ErrorMM, g.LimitMM, g.Trust, g.StressMPa = math.Ceil(lobe*1e4)/1e4, math.Round(f.LimitMM*1e4)/1e4, f.Trust, math.Round(f.StressMPa)
		}
	}
	g.Feel = JawFeel(g.WorkingN, m.Holding)
	if firm, _ := leastMost(before); firm > g.WorkingN { // else the one grip serves all
		g.Eased = &plan.Ease{Before: s.Tasks[steps[split].Task].ID, WorkingN: g.WorkingN, Feel: g.Feel}
		g.WorkingN = firm
		g.Feel = JawFeel(g.WorkingN, m.Holding)
	} else {
		g.LeastN = math.Max(g.LeastN, firm)
	}
	return g
}

// pulls are what the steps ask of the jaws, each at its own moment.
func (s Shop) pulls(m Mount, steps []FlatStep, done func(int) bool) []Figures {
	var list []Figures
	here := map[int]bool{}
	for _, st := range steps {
		_, f := s.Judge(m, st.Task, st.Way, st.Light, s.Facts(m, st.Task, st.Way, st.Light), func(i int) bool { return here[i] || done(i) })
		list = append(list, f)
		here[st.Task] = true
	}
	return list
}

// leastMost is the least that holds for all, and the most that none is spoiled by (0: no limit).
func leastMost(list []Figures) (least, most float64) {
	for _, f := range list {
		least = math.Max(least, f.LeastN)
		if f.LimitMM > 0 && f.LobeMM > 0 && (most == 0 || f.MostN < most) {
			most = f.MostN
		}
	}
	return least, most
}

func oneGrip(list []Figures) bool {
	least, most := leastMost(list)
	return most == 0 || math.Max(least, list[0].Case.LightN) <= most
}

func howGripped(g plan.Grip) []string {
	text := fmt.Sprintf("Tighten with %s: at least %.0f N a jaw must hold", g.Feel, g.LeastN)
	if e := g.Eased; e != nil {
		text = fmt.Sprintf("Tighten with %s for the heavy cuts. Before %s let the work cool, slacken the jaws and tighten them again with %s: at least %.0f N a jaw must hold", g.Feel, e.Before, e.Feel, g.LeastN)
	}
	if g.MostN > 0 {
		text += fmt.Sprintf(", more than %.0f N would leave the bore out of round", g.MostN)
	}
	return []string{text + "."}
}

func (s Shop) discSetup(m Mount, at moment, g plan.Grip, setup *plan.Setup) {
	setup.RunOutMM, setup.Grip = m.RunOut, g
	gap := math.Max(breakThrough, s.gapBehind(m, at))
	setup.Bed = &plan.Bed{Kind: "jaws", HeightMM: gap, GapMM: gap}
	setup.Balance = s.turning(m, at)
	setup.How = append([]string{fmt.Sprintf("Jaws on the rim, Ø%s, its face pressed hard back on the jaw steps.", mm(2*m.Radius))}, howGripped(setup.Grip)...)
}

// boreSetup is work on a mandrel or glued to an arbor.
func (s Shop) boreSetup(m Mount, at moment, setup *plan.Setup) {
	setup.Grip.Kind, setup.Grip.Inside, setup.Grip.RadiusMM, setup.RunOutMM = m.GripKind(), m.Inside, tidyMM(s.made(m, at)), m.RunOut
	gap := math.Max(behindShoulder, s.gapBehind(m, at))
	setup.Bed = &plan.Bed{Kind: "plate", HeightMM: gap, GapMM: gap}
	setup.Balance = s.turning(m, at)
	if m.Holding.Kind == partspec.StubMandrel {
		setup.Grip.WorkingN, setup.Grip.DriveMM = math.Floor(screwPull(s.made(m, at))), tidyMM(s.faceRadius(m, s.made(m, at)))
	}
	switch {
	case m.Glue == GlueFace:
		setup.How = []string{fmt.Sprintf("Arbor faced in the chuck to Ø%s, shallow grooves, a relief Ø%s in its middle.", mm(2*m.Radius), mm(2*s.relief(m))), "Degrease both, cyanoacrylate, press on with the tailstock, leave it to cure."}
		setup.How = append(setup.How, s.howFound(m)...)
		setup.How = append(setup.How, "Release by heat (120 to 150 degrees) and a sideways slide.")
	case m.Glue == GlueBore:
		setup.How = []string{fmt.Sprintf("Turn a spigot to slide in %s, with a shoulder; degrease, cyanoacrylate, push home, leave it to cure.", m.Surface), "Release by heat (120 to 150 degrees)."}
	case m.Holding.Kind == partspec.StubMandrel:
		setup.How = []string{
			fmt.Sprintf("Mandrel turned in place to the measured bore, nominally Ø%s, 0.005 to 0.015 small, its spigot shorter than the work is thick.", mm(2*m.Radius)),
			fmt.Sprintf("Shoulder and washer Ø%s, faced flat, so that the sheet is backed on both sides to 2 from its finished rim; tighten the screw well.", mm(2*math.Max(m.Radius+1, s.backed(m)))),
			"Do not take the mandrel out of the chuck until the job is done.",
		}
	case m.Holding.Kind == partspec.PlainMandrel:
		setup.How = []string{fmt.Sprintf("Oil the Ø%s mandrel and press the work on, large end towards the headstock.", mm(2*m.Radius))}
	default:
		setup.How = []string{fmt.Sprintf("Expand in %s only until it drives.", m.Surface)}
	}
}

// behindShoulder is how far a mandrel's shoulder or an arbor's face stands out from what carries it: tools run past the work there. Common practice, no source.
const behindShoulder = 8.0

// made is the radius of the bore that a mandrel or arbor stands in, as it is; of a face glued to an arbor, the arbor's.
func (s Shop) made(m Mount, at moment) float64 {
	r := m.Radius
	if !m.Inside {
		return r
	}
	for _, h := range widest(at.flat.Holes) {
		if math.Hypot(h.X-m.CentreX, h.Y-m.CentreY) <= sameSpot {
			r = h.Radius
		}
	}
	return r
}

// relief is the radius kept free of glue in the middle of an arbor: of the bore that is made on it, and its tool.
func (s Shop) relief(m Mount) float64 {
	for _, b := range s.bores() {
		if math.Hypot(b.x-m.CentreX, b.y-m.CentreY) <= sameSpot {
			return b.radius + toolRoom
		}
	}
	return 0
}

// howFound tells how the place that runs true, or the nought of the dials, is found, and how far off that leaves it.
func (s Shop) howFound(m Mount) []string {
	off := fmt.Sprintf("within %.2f", m.Locate)
	switch {
	case m.Machine == partspec.Drill:
		return nil
	case m.Machine != "" && len(s.Part.Outline.Datum) == 0:
		return []string{"Find the middle half-way between opposite sides of the work, or sweep its bore once that is there: the first hole that is made begins the coordinates."}
	case m.Machine != "":
		return []string{"Find the two datum edges: how far they then lie from where the dials have them is told above."}
	case m.By == ByMark:
		return []string{fmt.Sprintf("Centre finder in the punch mark of %s: tap the work until its tail stands still against the indicator; the place is then %s.", m.About, off)}
	case m.By == ByBore:
		return []string{fmt.Sprintf("Indicator in the bore %s: tap the work until it reads the same all round; the place is then %s.", m.About, off)}
	}
	return []string{fmt.Sprintf("Set %s by its two datum edges: with the indicator on each edge, turned level, half the sum over a bar in the spindle; the place is then %s.", m.About, off)}
}
