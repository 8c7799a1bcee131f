package speed

import (
	"fmt"
	"math"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// Operation is what is being cut.
type Operation string

// The operations. Milling takes the cutter's diameter, drilling the drill's,
// facing the outside diameter.
const (
	Turn        Operation = "turn"
	Finish      Operation = "finish" // finish turning
	Face        Operation = "face"
	Bore        Operation = "bore"
	BoreDeep    Operation = "bore-deep" // bar longer than three times its diameter
	Drill       Operation = "drill"
	Ream        Operation = "ream"
	Counterbore Operation = "counterbore"
	Countersink Operation = "countersink"
	SpotFace    Operation = "spot-face"
	Tap         Operation = "tap" // under power
	Thread      Operation = "thread"
	Part        Operation = "part"
	Groove      Operation = "groove" // and form tools
	Knurl       Operation = "knurl"
	Interrupted Operation = "interrupted" // turning across gaps
	Mill        Operation = "mill"
	FlyCut      Operation = "fly-cut"
	Saw         Operation = "saw"      // slitting saw
	HoleSaw     Operation = "hole-saw" // a ring of teeth on a drill
)

// Operations lists every operation, in the order above.
func Operations() []Operation {
	return []Operation{
		Turn, Finish, Face, Bore, BoreDeep, Drill, Ream, Counterbore, Countersink, SpotFace,
		Tap, Thread, Part, Groove, Knurl, Interrupted, Mill, FlyCut, Saw, HoleSaw,
	}
}

// Tool is the metal of the cutting edge.
type Tool string

// The tools.
const (
	HSS     Tool = "hss"
	Carbide Tool = "carbide"
)

// Want is the speed that material, tool and diameter ask for, before any cap.
type Want struct {
	Surface     tables.Range `json:"surface_range_m_per_min"` // for the operation, factor taken in
	SurfaceUsed float64      `json:"surface_used_m_per_min"`  // the middle of it
	RPM         units.Speed  `json:"wanted_rpm"`
	Factor      float64      `json:"factor"` // of plain turning or drilling; 1 where the table has the operation itself
	Rule        string       `json:"rule"`
	Source      string       `json:"source"`
}

// base is the plain cut whose speed an operation's is a part of.
type base int

const (
	turning base = iota + 1
	finishing
	drilling
)

// factors are the parts of plain turning or drilling speed at which the other
// operations run (trade rule C-03; Saw: half of milling, cutting table; HoleSaw:
// from memory, a drill's speed being the most that its teeth bear). A range
// in print is taken at its middle, or at the rule's own default.
var factors = map[Operation]struct {
	of     base
	factor float64
}{
	Turn: {turning, 1}, Finish: {finishing, 1}, Face: {turning, 1}, Mill: {turning, 1}, FlyCut: {turning, 1},
	Bore: {turning, 0.8}, BoreDeep: {turning, 0.6}, Interrupted: {turning, 0.6},
	Part: {turning, 0.5}, Groove: {turning, 0.35}, Knurl: {turning, 0.3}, Thread: {turning, 0.3}, Saw: {turning, 0.5},
	Drill: {drilling, 1}, Ream: {drilling, 0.5}, Counterbore: {drilling, 0.35}, SpotFace: {drilling, 0.35},
	Countersink: {drilling, 0.3}, Tap: {drilling, 0.3}, HoleSaw: {drilling, 0.6},
}

// Wanted is the speed for an operation: n = 1000 v / (pi D), v the middle of
// the material's range in m/min and D in mm (trade rule C-01). Where the
// material has a range for the operation itself (reaming, tapping, threading,
// parting off), that is used, else a part of its turning or drilling range.
func Wanted(m tables.Material, diameter units.Length, op Operation, tool Tool) (Want, error) {
	if !(diameter > 0 && diameter <= units.MaxLength) {
		return Want{}, fmt.Errorf("a speed needs a diameter above 0, not %s", diameter)
	}
	if _, known := factors[op]; !known {
		return Want{}, fmt.Errorf("no operation is called %q: write one of %v", op, Operations())
	}
	if tool != HSS && tool != Carbide {
		return Want{}, fmt.Errorf("no tool is called %q: write hss or carbide", tool)
	}
	w, ok := ownRange(m, op, tool)
	if !ok {
		w, ok = factoredRange(m, op, tool)
	}
	if !ok {
		return Want{}, fmt.Errorf("no speed is known for %s in %s with %s", op, m.Name, tool)
	}
	w.Surface = tables.Range{Low: rounded(w.Surface.Low, 2), High: rounded(w.Surface.High, 2)}
	w.SurfaceUsed = rounded(w.Surface.Middle(), 2)
	w.RPM = units.Speed(rounded(1000*w.SurfaceUsed/(math.Pi*float64(diameter)), 1))
	w.Source = m.SourceCutting
	return w, nil
}

// rounded takes the noise of float64 out of a figure, so that every processor
// prints the same.
func rounded(x float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	return math.Round(x*scale) / scale
}

// ownRange is the range that the material has for the operation itself.
func ownRange(m tables.Material, op Operation, tool Tool) (Want, bool) {
	var own tables.Range
	switch {
	case op == Ream:
		own = m.ReamHSS
	case op == Tap:
		own = m.Tap
	case op == Thread: // the hand that withdraws the tool sets the pace, not the edge
		own = m.ThreadSP
	case op == Part && tool == HSS:
		own = m.PartOff
	}
	return Want{Surface: own, Factor: 1, Rule: "C-01"}, own.Known()
}

func factoredRange(m tables.Material, op Operation, tool Tool) (Want, bool) {
	f := factors[op]
	plain := baseRange(m, f.of, tool)
	rule := "C-01"
	if f.factor != 1 {
		rule = "C-03"
	}
	return Want{
		Surface: tables.Range{Low: plain.Low * f.factor, High: plain.High * f.factor},
		Factor:  f.factor, Rule: rule,
	}, plain.Known()
}

// baseRange is the range of plain cutting. Drills are taken as HSS whatever
// the tool: no range for carbide drills in a small machine is known.
func baseRange(m tables.Material, of base, tool Tool) tables.Range {
	switch {
	case of == drilling:
		return m.DrillHSS
	case of == finishing && tool == Carbide:
		return m.CarbideFinish
	case of == finishing:
		return m.HSSFinish
	case tool == Carbide:
		return m.CarbideRough
	}
	return m.HSSRough
}

// Surface is the cutting speed in m/min at a diameter and a speed: pi D n / 1000.
func Surface(diameter units.Length, rpm units.Speed) float64 {
	return math.Pi * float64(diameter) * float64(rpm) / 1000
}
