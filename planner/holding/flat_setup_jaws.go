package holding

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

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
