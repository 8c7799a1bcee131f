package replay

import (
	"math"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/tables"
)

const (
	// overSpeed is how far a step may lie above the speed wanted (rule C-01).
	overSpeed = 1.05
	// gluedShare is the share of the speed that a glued holding is run at (rule C-02).
	gluedShare = 0.6
	// sameSpeed is how far a speed may differ from a step and still be it: printed speeds are whole numbers.
	sameSpeed = 0.5
	// mostSwung is the most that a boring head or a fly-cutter, one heavy edge off centre, is driven at (caution F-16).
	mostSwung = 500.0
)

// checkSpeed holds that an operation's speed is one that the machine has, below every cap, and no faster than the metal is cut.
func (w *walk) checkSpeed(op plan.Operation) {
	if op.RPM == 0 {
		if turns(op.Process) {
			w.failOp("speed", "it has none")
		}
		return
	}
	m := w.machine
	if !runsAt(m, op.RPM) {
		w.failOp("speed", "%s rev/min is no speed of %s", mm(op.RPM), m.Name)
	}
	if most := float64(w.holding.MostSpeed); most > 0 && op.RPM > most+sameSpeed {
		w.failOp("speed", "%s rev/min; %s is good for %s", mm(op.RPM), w.holding.Name, mm(most))
	}
	if c, err := findCutter(w.job.Workshop, op.Tool.ID, op.Tool.SizeMM); err == nil && (c.Kind == partspec.BoringHead || c.Kind == partspec.FlyCutter) &&
		op.RPM > math.Max(mostSwung, slowest(m))+sameSpeed {
		w.failOp("speed", "%s rev/min; a tool that is swung off centre goes no faster than %s (caution F-16)", mm(op.RPM), mm(mostSwung))
	}
	if op.WantedRPM > 0 && op.RPM > op.WantedRPM*overSpeed+sameSpeed && op.RPM > slowest(m)+sameSpeed {
		w.failOp("speed", "%s rev/min is more than the %s wanted (rule C-01)", mm(op.RPM), mm(op.WantedRPM))
	}
}

// turns reports whether the spindle turns in a process.
func turns(p plan.Process) bool {
	switch p {
	case plan.MarkOut, plan.Saw, plan.FileEdge, plan.FileSeat, plan.Tap, plan.Die, plan.Deburr, plan.SawOff, plan.FileProfile, plan.Thread, plan.Knurl:
		return false
	}
	return true
}

// step1 reports whether a machine runs at a speed.
func runsAt(m partspec.Machine, rpm float64) bool {
	for _, s := range m.Speeds {
		if math.Abs(float64(s)-rpm) <= sameSpeed {
			return true
		}
	}
	return len(m.Speeds) == 0 && (m.FastestSpeed == 0 || rpm <= float64(m.FastestSpeed)+sameSpeed) && rpm >= float64(m.SlowestSpeed)-sameSpeed
}

func slowest(m partspec.Machine) float64 {
	if len(m.Speeds) > 0 {
		return float64(m.Speeds[0])
	}
	return float64(m.SlowestSpeed)
}

// checkSurface holds the speed at the largest diameter that a cut works on against the fastest that the table gives for metal and tool.
func (w *walk) checkSurface(op plan.Operation, m motion, across float64) {
	most := fastest(w.part.Material, m.cutter)
	if most == 0 || op.RPM == 0 || op.RPM <= slowest(w.machine)+sameSpeed {
		return
	}
	if w.setup.Grip.Kind == "glued_face" || w.setup.Grip.Kind == "glued_bore" {
		most *= gluedShare
	}
	if v := math.Pi * across * op.RPM / 1000; v > most*overSpeed {
		w.failOp("speed", "%s rev/min on Ø%s is %s m/min; %s is cut at up to %s with this tool", mm(op.RPM), mm(across), mm(math.Round(v*10)/10), w.part.Material.Name, mm(most))
	}
}

// fastest is the highest published cutting speed for a metal and a tool, m/min; 0 when the table has none.
func fastest(m tables.Material, c cutter) float64 {
	switch {
	case c.Kind == partspec.Reamers:
		return m.ReamHSS.High
	case c.Kind == partspec.Drills || c.Kind == partspec.CentreDrill || c.Kind == partspec.HoleSaw:
		return m.DrillHSS.High
	case c.Kind == partspec.Parting && !c.Carbide:
		return m.PartOff.High
	case c.Carbide:
		return math.Max(m.CarbideRough.High, m.CarbideFinish.High)
	}
	return math.Max(m.HSSRough.High, m.HSSFinish.High)
}
