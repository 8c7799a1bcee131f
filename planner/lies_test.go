package planner_test

import (
	"fmt"
	"math"
	"slices"

	"catchplate/partspec"
	"catchplate/planner/plan"
)

// lie is one corruption of a plan: its kind, what of, and how. A lie about a dial moves the card, the table of holes and what is said of depth and force
// with it, so that the metal alone can show it.
type lie struct {
	kind, of string
	tell     func(*plan.Part)
}

// shifts are how far readings and measured places are moved, in mm: less and more than a roughing cut.
var shifts = []float64{0.3, 2}

// lies are all that are told of a plan.
func lies(shop *partspec.Workshop, p plan.Part) []lie {
	shop = slideDials(shop)
	list := setupLies(shop, p)
	for i, s := range p.Setups {
		for k, o := range s.Operations {
			at := opAt{i, k}
			list = append(list, orderLies(p, at)...)
			list = append(list, toolLies(shop, o, at)...)
			list = append(list, zeroLies(o, at)...)
			for c := range o.Cuts {
				list = append(list, cutLies(shop, s, o, at, c)...)
			}
		}
	}
	return append(list, placeLies(shop, p)...)
}

// opAt is where an operation stands in a part's plan.
type opAt struct{ setup, op int }

func (a opAt) in(p *plan.Part) *plan.Operation { return &p.Setups[a.setup].Operations[a.op] }

func told(s plan.Setup, o plan.Operation) string { return fmt.Sprintf("%d %s", s.Number, o.ID) }

// renumbered numbers setups and operations anew.
func renumbered(p *plan.Part) {
	n := 0
	for i := range p.Setups {
		p.Setups[i].Number = i + 1
		for k := range p.Setups[i].Operations {
			n += 10
			p.Setups[i].Operations[k].Number = n
		}
	}
}

// orderLies drop an operation, change it with the next one, and carry it to the beginning of every other setup.
func orderLies(p plan.Part, at opAt) []lie {
	o, of := at.in(&p), told(p.Setups[at.setup], *at.in(&p))
	take := func(p *plan.Part) plan.Operation {
		s, o := &p.Setups[at.setup], *at.in(p)
		s.Operations = slices.Delete(s.Operations, at.op, at.op+1)
		return o
	}
	list := []lie{{"dropped " + string(o.Process), of, func(p *plan.Part) { take(p); renumbered(p) }}}
	if at.op+1 < len(p.Setups[at.setup].Operations) {
		next := p.Setups[at.setup].Operations[at.op+1]
		list = append(list, lie{fmt.Sprintf("swapped %s, %s, %s", orderedBy(p, o.ID, next.ID), o.Process, next.Process), of, func(p *plan.Part) {
			ops := p.Setups[at.setup].Operations
			ops[at.op], ops[at.op+1] = ops[at.op+1], ops[at.op]
			renumbered(p)
		}})
	}
	for to := range p.Setups {
		if to != at.setup {
			list = append(list, lie{"carried " + string(o.Process), fmt.Sprintf("%s to %d", of, to+1), func(p *plan.Part) {
				o := take(p)
				p.Setups[to].Operations = slices.Insert(p.Setups[to].Operations, 0, o)
				renumbered(p)
			}})
		}
	}
	return list
}

// orderedBy tells what rule has two neighbours in their order.
func orderedBy(p plan.Part, before, after string) string {
	for _, pair := range p.Order.Pairs {
		if pair.Before == before && pair.After == after && pair.Rule != "" {
			return "against " + pair.Rule
		}
	}
	return "freely"
}

// toolLies give an operation every other tool of the workshop, and another size.
func toolLies(shop *partspec.Workshop, o plan.Operation, at opAt) (list []lie) {
	of := fmt.Sprintf("%d %s", at.setup+1, o.ID)
	if o.Tool.ID == "" {
		return nil
	}
	for _, t := range shop.Tools {
		if t.ID() != o.Tool.ID {
			list = append(list, lie{"another tool, " + string(o.Process), of + " " + t.ID(), func(p *plan.Part) {
				at.in(p).Tool.ID = t.ID()
			}})
		}
	}
	for _, by := range []float64{-1, -0.5, 0.5, 1} {
		if o.Tool.SizeMM+by > 0 && o.Tool.SizeMM > 0 {
			list = append(list, lie{fmt.Sprintf("another size of tool, %s", o.Process), fmt.Sprintf("%s %+g", of, by), func(p *plan.Part) {
				q := at.in(p)
				was := q.Tool.SizeMM
				q.Tool.SizeMM += by
				for c := range q.Cuts {
					if q.Cuts[c].ToolSizeMM == was {
						q.Cuts[c].ToolSizeMM += by
					}
				}
			}})
		}
	}
	return list
}

// zeroLies set a dial's nought elsewhere, the other way round, or not at all.
func zeroLies(o plan.Operation, at opAt) (list []lie) {
	of := fmt.Sprintf("%d %s", at.setup+1, o.ID)
	for z, zero := range o.Zeros {
		of := of + " " + zero.Dial
		for _, by := range shifts {
			for _, by := range []float64{-by, by} {
				list = append(list, lie{"nought elsewhere, " + zero.Dial, fmt.Sprintf("%s %+g", of, by), func(p *plan.Part) {
					at.in(p).Zeros[z].ReferenceMM += by
				}})
			}
		}
		list = append(list,
			lie{"nought turned round, " + zero.Dial, of, func(p *plan.Part) { at.in(p).Zeros[z].Outward = !zero.Outward }},
			lie{"nought wound back, " + zero.Dial, of, func(p *plan.Part) { at.in(p).Zeros[z].WoundBack++ }},
			lie{"nought forgotten, " + zero.Dial, of, func(p *plan.Part) { at.in(p).Zeros = slices.Delete(at.in(p).Zeros, z, z+1) }})
	}
	return list
}

// cutLies drop a cut, move its readings and its measured place, and change its own tool and place.
func cutLies(shop *partspec.Workshop, s plan.Setup, o plan.Operation, at opAt, c int) (list []lie) {
	cut := o.Cuts[c]
	of := fmt.Sprintf("%s, cut %d", told(s, o), c+1)
	rank := "an earlier cut of "
	if c == len(o.Cuts)-1 {
		rank = "the last cut of "
	}
	add := func(kind, more string, tell func(*plan.Operation)) {
		list = append(list, lie{kind + ", " + rank + string(o.Process), of + " " + more, func(p *plan.Part) {
			tell(at.in(p))
			reprint(shop, p.Setups[at.setup], at.in(p))
		}})
	}
	add("cut dropped", "", func(o *plan.Operation) { o.Cuts, o.Passes = slices.Delete(o.Cuts, c, c+1), len(o.Cuts)-1 })
	for _, rd := range cut.To {
		setting := slices.Contains(cut.From, rd) || o.Process == plan.PartOff && rd.Dial == "saddle"
		for _, mm := range shifts {
			for _, way := range []float64{-1, 1} {
				by := graduations(shop, s.Machine, rd.Dial, way*mm)
				kind := "setting moved"
				if !setting {
					kind = endMoved(cut, rd, by)
				}
				add(kind, fmt.Sprintf("%s %+g", rd.Dial, way*mm), func(o *plan.Operation) { move(o, c, rd, by) })
			}
		}
	}
	if m := cut.ToMeasure; m != nil {
		for _, mm := range shifts {
			for _, by := range []float64{-mm, mm} {
				add("measured elsewhere", fmt.Sprintf("%s %+g", m.What, by), func(o *plan.Operation) {
					q := *m
					q.LowMM, q.HighMM = q.LowMM+by, q.HighMM+by
					o.Cuts[c].ToMeasure = &q
				})
			}
		}
	}
	if cut.At != nil {
		for _, by := range []float64{-2, -0.5, 0.5, 2} {
			add("spindle elsewhere", fmt.Sprintf("%+g", by), func(o *plan.Operation) { q := *cut.At; q.XMM += by; o.Cuts[c].At = &q })
		}
	}
	return list
}

// setupLies drop a setup and change what it says of machine, holding, pose and grip.
func setupLies(shop *partspec.Workshop, p plan.Part) (list []lie) {
	for i, s := range p.Setups {
		add := func(kind, more string, tell func(*plan.Setup)) {
			list = append(list, lie{kind + ", " + s.Grip.Kind, fmt.Sprintf("%d %s", s.Number, more), func(p *plan.Part) { tell(&p.Setups[i]) }})
		}
		list = append(list, lie{"setup dropped", s.ID, func(p *plan.Part) { p.Setups = slices.Delete(p.Setups, i, i+1); renumbered(p) }})
		add("other end free", "", func(s *plan.Setup) { s.FreeEnd = map[string]string{"left": "right", "right": "left"}[s.FreeEnd] })
		add("centre", "", func(s *plan.Setup) { s.Tailstock = !s.Tailstock })
		add("inside out", "", func(s *plan.Setup) { s.Grip.Inside = !s.Grip.Inside })
		add("across", "", func(s *plan.Setup) { s.Across = !s.Across })
		add("round the axis", "", func(s *plan.Setup) { s.AcrossDeg += 7 })
		add("off the centre", "x", func(s *plan.Setup) { s.CentreX += 0.5 })
		add("off the centre", "y", func(s *plan.Setup) { s.CentreY -= 0.5 })
		add("no packing", "", func(s *plan.Setup) { s.Grip.Packing = "" })
		add("bare bed", "", func(s *plan.Setup) { s.Bed = nil })
		add("located surely", "", func(s *plan.Setup) { s.LocateMM /= 4 })
		add("run-out", "", func(s *plan.Setup) { s.RunOutMM /= 4 })
		add("stick-out", "", func(s *plan.Setup) { s.StickOutMM -= 3 })
		add("grip tight", "", func(s *plan.Setup) { s.Grip.WorkingN, s.Grip.MostN = 8*s.Grip.WorkingN, 8*s.Grip.MostN })
		add("grip loose", "", func(s *plan.Setup) { s.Grip.WorkingN, s.Grip.LeastN = s.Grip.WorkingN/8, s.Grip.LeastN/8 })
		add("error belied", "", func(s *plan.Setup) { s.Grip.ErrorMM = 0 })
		for _, by := range []float64{-3, 3} {
			more := fmt.Sprintf("%+g", by)
			add("grip from", more, func(s *plan.Setup) { s.Grip.FromZ += by })
			add("grip to", more, func(s *plan.Setup) { s.Grip.ToZ += by })
			add("grip along", more, func(s *plan.Setup) {
				s.Grip.FromZ, s.Grip.ToZ, s.StickOutMM = s.Grip.FromZ+by, s.Grip.ToZ+by, s.StickOutMM-by
			})
			add("grip radius", more, func(s *plan.Setup) { s.Grip.RadiusMM += by })
			add("clear depth", more, func(s *plan.Setup) { clearDepth(s, by) })
		}
		for _, h := range shop.Holdings {
			if h.Name != s.Holding {
				add("another holding", h.Name, func(s *plan.Setup) { s.Holding, s.HoldingKind = h.Name, string(h.Kind) })
			}
		}
		for _, m := range shop.Machines {
			if m.Name != s.Machine {
				add("another machine", m.Name, func(s *plan.Setup) { s.Machine, s.MachineKind = m.Name, string(m.Kind) })
			}
		}
		for _, f := range located(p) {
			if f != s.Locates {
				add("located on another", f, func(s *plan.Setup) { s.Locates = f })
			}
			if f != s.Grip.Surface {
				add("gripped by another", f, func(s *plan.Setup) { s.Grip.Surface = f })
			}
		}
		for k := range s.Presses {
			add("a jaw moved", fmt.Sprint(k), func(s *plan.Setup) { s.Presses[k].XMM, s.Presses[k].YMM = s.Presses[k].XMM+3, s.Presses[k].YMM+3 })
			add("a jaw turned", fmt.Sprint(k), func(s *plan.Setup) { s.Presses[k].AngleDeg += 30 })
			add("a jaw dropped", fmt.Sprint(k), func(s *plan.Setup) { s.Presses = slices.Delete(s.Presses, k, k+1) })
		}
		for k := range s.Clamps {
			add("a clamp moved", fmt.Sprint(k), func(s *plan.Setup) { s.Clamps[k].XMM, s.Clamps[k].YMM = s.Clamps[k].XMM*0.6, s.Clamps[k].YMM*0.6 })
			add("a clamp turned", fmt.Sprint(k), func(s *plan.Setup) { s.Clamps[k].AngleDeg += 180 })
			add("a clamp loose", fmt.Sprint(k), func(s *plan.Setup) { s.Clamps[k].ForceN /= 8 })
			add("a clamp tight", fmt.Sprint(k), func(s *plan.Setup) { s.Clamps[k].ForceN *= 8 })
			add("a clamp dropped", fmt.Sprint(k), func(s *plan.Setup) { s.Clamps = slices.Delete(s.Clamps, k, k+1) })
		}
	}
	return list
}

func clearDepth(s *plan.Setup, by float64) {
	if s.Bed != nil {
		bed := *s.Bed
		bed.GapMM = math.Max(0, bed.GapMM+by)
		s.Bed = &bed
	}
}

// located are the surfaces that a plan may name.
func located(p plan.Part) []string {
	list := []string{"stock"}
	for _, s := range p.Setups {
		for _, o := range s.Operations {
			if !slices.Contains(list, o.Feature) {
				list = append(list, o.Feature)
			}
		}
	}
	return list
}

// placeLies move all cuts of a feature in a setting together by a dial that its last cut is set by, its holes' places too.
func placeLies(shop *partspec.Workshop, p plan.Part) (list []lie) {
	for i, s := range p.Setups {
		for _, f := range located(plan.Part{Setups: []plan.Setup{s}}) {
			for _, dial := range []string{"x", "y", "saddle", "cross"} {
				for _, mm := range []float64{-2, -0.3, 0.3, 2} {
					by := graduations(shop, s.Machine, dial, mm)
					if by == 0 || !moves(s, f, dial) {
						continue
					}
					list = append(list, lie{"all of a feature moved, " + dial, fmt.Sprintf("%d %s %+g", s.Number, f, mm), func(p *plan.Part) {
						for k := range p.Setups[i].Operations {
							if o := &p.Setups[i].Operations[k]; o.Feature == f {
								moveAll(o, dial, by)
								reprint(shop, p.Setups[i], o)
							}
						}
					}})
				}
			}
		}
	}
	return list
}
