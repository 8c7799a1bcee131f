package planner

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/holding"
	"catchplate/planner/mechanics"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
)

// found is an option on its way, with what it rests on.
type found struct {
	plan.Option
	mount      holding.Mount
	figures    holding.Figures
	done       func(int) bool
	objections []rules.Verdict
}

// against sorts the better option first: it passes, is quicker to set, allows deeper passes, spends less of the tolerance, runs truer. Of those refused,
// the one with fewer objections; what is not there to be gripped comes last.
func (f found) against(g found) int {
	return cmp.Or(first(f.Passes, g.Passes), first(!f.figures.Case.Gone, !g.figures.Case.Gone), cmp.Compare(len(f.objections), len(g.objections)), cmp.Compare(f.Minutes, g.Minutes),
		cmp.Compare(g.PassShare, f.PassShare), cmp.Compare(f.share(), g.share()), cmp.Compare(f.RunOutMM, g.RunOutMM), cmp.Compare(f.StickOutMM, g.StickOutMM), cmp.Compare(f.mount.ID, g.mount.ID))
}

// instead sorts the ways to use one holding on one surface: what was asked for comes into it, then it passes, then it is the plan's own.
func (f found) instead(g found) int {
	return cmp.Or(cmp.Compare(len(g.Changed), len(f.Changed)), first(f.Passes, g.Passes), first(f.Chosen, g.Chosen), f.against(g))
}

func first(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

// share is the lobed error as a part of what may pass.
func (f found) share() float64 {
	if k := f.figures.Case; k.LimitMM > 0 {
		return k.LobeMM / k.LimitMM
	}
	return 0
}

// changed is a mount with the what-ifs that bear on it, by name.
func (c comparer) changed(m holding.Mount) (holding.Mount, []string) {
	var names []string
	if m.Jaws() == 0 {
		return m, nil
	}
	if n := c.what.ForceN; n > 0 {
		m.Holding.GripLight, m.Holding.GripFirm = units.Force(n), units.Force(n)
		names = append(names, plan.IfForce)
	}
	if n := c.what.Jaws; n > 0 && m.Holding.Kind != partspec.Collets {
		m.Holding.Jaws = n
		names = append(names, plan.IfJaws)
	}
	if l := c.what.GripLengthMM; l > 0 && l <= m.Z1-m.Z0 {
		if m.Free == partspec.Right {
			m.Z1 = m.Z0 + l
		} else {
			m.Z0 = m.Z1 - l
		}
		names = append(names, plan.IfGripLength)
	}
	return m, names
}

// squeezed is the ring that an option's jaws press on; false where no ring is pressed that has to be round.
func (c comparer) squeezed(f found) (mechanics.RingGrip, bool) {
	k := f.figures.Case
	return f.figures.Ring, f.figures.Ring.Jaws > 0 && !k.Gone && k.LimitMM > 0
}

// thinned judges an option anew with the wall that was asked for. The outside of the ring stays.
func (c comparer) thinned(f *found) {
	w := c.what.WallMM
	k := &f.figures.Case
	if w <= 0 || k.Gone {
		return
	}
	if g, ok := c.squeezed(*f); ok && w < g.OutsideDiameterMM/2 {
		g.WallMM = w
		d, err := g.Distortion()
		if err != nil {
			return
		}
		k.LobeMM, k.Trust = d.ErrorMostMM, string(d.Trust)
	} else if kind := f.mount.Holding.Kind; kind != partspec.PlainMandrel && kind != partspec.ExpandingMandrel {
		return // nothing in the rules asks for its wall
	}
	k.Wall = w
	f.objections = c.ctx.Rules.Judge(*k)
	f.Changed = append(f.Changed, plan.IfWall)
}

// ring fills in what the grip does to the ring, and the most that it bears.
func (c comparer) ring(f *found) {
	g, ok := c.squeezed(*f)
	if !ok {
		return
	}
	if slices.Contains(f.Changed, plan.IfWall) {
		g.WallMM = c.what.WallMM
	}
	f.LimitMM, f.YieldMPa = f.figures.Case.LimitMM, g.YieldMPa
	d, err := g.Distortion()
	if err != nil {
		f.Trust, f.TrustWhy = string(mechanics.TrustNone), err.Error()
		return
	}
	f.ErrorMM, f.BandPercent, f.Trust, f.TrustWhy, f.StressMPa = d.ErrorMostMM, d.BandPercent, string(d.Trust), d.Why, d.StressMostMPa
	f.SharePercent = 100 * f.ErrorMM / f.LimitMM
	if most, err := g.MostForcePerJaw(f.LimitMM); err == nil {
		f.MostN, f.MostBy = math.Floor(most.PerJawN), most.RuledBy
	}
}

// word says how an option was judged.
func (f *found) word() {
	if len(f.objections) > 0 {
		var reasons []string
		for _, v := range f.objections {
			if f.figures.Case.Gone && len(reasons) > 0 {
				break // what is not there has no figures
			}
			reasons = append(reasons, fmt.Sprintf("%s [%s]", v.Reason, v.Rule))
		}
		f.Verdict, f.Rule = "refused: "+strings.Join(reasons, "; "), f.objections[0].Rule
	} else {
		f.Verdict = "passes"
		if f.PassShare < 1 {
			f.Verdict += fmt.Sprintf(" with passes of %.2g of the ordinary depth", f.PassShare)
		}
	}
	if light := f.figures.Case.LightN; f.MostN > 0 && f.LeastN > f.MostN {
		f.Verdict += fmt.Sprintf("; the window is empty: %.0f N a jaw are needed, %.0f are borne (%s)", f.LeastN, f.MostN, f.MostBy)
	} else if f.MostN > 0 && light > f.MostN {
		f.Verdict += fmt.Sprintf("; the window is out of reach: the lightest nip gives %.0f N a jaw, %.0f are borne (%s)", light, f.MostN, f.MostBy)
	}
	if f.UnbalanceKgMM > 0 {
		f.Verdict += fmt.Sprintf("; %.1f kg mm out of balance", f.UnbalanceKgMM)
		if f.CounterweightKg > 0 {
			f.Verdict += fmt.Sprintf(", a counterweight of %.2f kg", f.CounterweightKg)
		}
	}
	if f.Trust == string(mechanics.TrustNone) {
		f.Verdict += "; no trustworthy figure: " + f.TrustWhy
	}
}
