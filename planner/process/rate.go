package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/mechanics"
	"catchplate/planner/numbers/speed"
	"catchplate/planner/plan"
)

// Rate is how fast a cut goes: a speed of this machine, a feed and the most depth of a pass.
type Rate struct {
	RPM       float64
	WantedRPM float64
	Why       string // what ruled the speed
	Text      string // the speed's reason as a sentence
	FeedMM    float64
	DepthMM   float64 // radial, of one pass
	kind      cutKind
	own       float64 // depth of a pass where the kind of cut does not say it
	diameter  float64
	least     float64 // of drills one after the other: the smallest, at whose feed all go
	tool      partspec.Tool
	on        partspec.MachineKind // "" = the lathe
	glued     bool                 // held by glue, which heat lets go
	skin      bool                 // its first cut goes under the skin of the stock
}

// cutKind is what a rate is wanted for.
type cutKind int

const (
	cutRough cutKind = iota + 1
	cutFinish
	cutFace
	cutBore
	cutGroove
	cutPart
	cutDrill
	cutReam
	cutThread
	cutKnurl
	cutCounterbore
	cutCountersink
	cutEdge // an end mill beside metal, or over a face
	cutFly
	cutSaw // a hole saw
)

// operation is the word of the speed tables for a kind of cut.
func (k cutKind) operation() speed.Operation { return operations[k] }

var operations = map[cutKind]speed.Operation{
	cutRough: speed.Turn, cutFinish: speed.Finish, cutFace: speed.Face, cutBore: speed.Bore, cutGroove: speed.Groove,
	cutPart: speed.Part, cutDrill: speed.Drill, cutReam: speed.Ream, cutThread: speed.Thread, cutKnurl: speed.Knurl,
	cutCounterbore: speed.Counterbore, cutCountersink: speed.Countersink, cutEdge: speed.Mill, cutFly: speed.FlyCut,
	cutSaw: speed.HoleSaw,
}

// boreDepth is the most that a boring bar takes at once, on radius (the boring rows of the cutting table).
const boreDepth = 0.4

// rate works out the speed and feed of a cut on the lathe, with no cap but the machine's own.
func (c *Context) rate(kind cutKind, diameterMM float64, tool partspec.Tool) Rate {
	return c.rateOn("", kind, diameterMM, tool)
}

// rateOn is rate on any machine.
func (c *Context) rateOn(on partspec.MachineKind, kind cutKind, diameterMM float64, tool partspec.Tool) Rate {
	return c.capped(Rate{kind: kind, diameter: diameterMM, tool: tool, on: on})
}

// capped works a rate out anew under the caps of a holding.
func (c *Context) capped(r Rate, caps ...speed.Cap) Rate {
	op, m := r.kind.operation(), c.Part.Material
	edge := speed.HSS
	if r.tool.Carbide {
		edge = speed.Carbide
	}
	if !c.Rules.Has("C-03") {
		op = plainOperation(op)
	}
	want, err := speed.Wanted(m, units.Length(r.diameter), op, edge)
	if err != nil {
		// A material without figures for this cut: the slowest speed is the safe one.
		want = speed.Want{RPM: slowest(c.MachineFor(r.on))}
	}
	if !c.Rules.Has("B-29") {
		caps = nil
	}
	r.DepthMM = c.depth(r.kind)
	if r.own > 0 {
		r.DepthMM = r.own
	}
	if r.kind != cutThread { // a thread's feed is its pitch
		r.FeedMM = c.feed(r.kind, r.diameter)
		if r.tool.Kind == partspec.BallNose {
			r.FeedMM = c.ballFeed(r.diameter)
		}
		if r.skin {
			r.FeedMM = c.skinFeed(r)
		}
		if r.least > 0 {
			r.FeedMM = math.Min(r.FeedMM, c.feed(r.kind, r.least))
		}
	}
	caps = append(caps[:len(caps):len(caps)], c.powerCap(r)...)
	if r.skin {
		caps = append(caps, skinCap(want))
	}
	if (r.tool.Kind == partspec.FlyCutter || r.tool.Kind == partspec.BoringHead) && c.Rules.Has("C-34") {
		caps = append(caps, speed.Cap{What: "the tool that is swung", RPM: mostSwung, Rule: "C-34", Source: "common practice, no source"})
	}
	if r.glued && c.Rules.Has("C-02") {
		caps = append(caps, speed.GluedCap(want))
	}
	if !c.Rules.Has("C-01") { // without the rule no step is looked for
		r.RPM, r.WantedRPM, r.Why = math.Round(float64(want.RPM)), math.Round(float64(want.RPM)), "tool and material"
		return r
	}
	choice, err := speed.Choose(want, units.Length(r.diameter), spindleOf(c.MachineFor(r.on)), caps...)
	if err != nil {
		choice = speed.Choice{Want: want, Speed: slowest(c.MachineFor(r.on)), RuledBy: "no figure known: the lowest speed"}
	}
	r.RPM, r.WantedRPM, r.Why = float64(choice.Speed), math.Round(float64(want.RPM)), choice.RuledBy
	r.Text = fmt.Sprintf("%s wants %s; %s is this machine's step, ruled by %s", m.Name, want.RPM.String(), choice.Speed.String(), choice.RuledBy)
	return r
}

// mostSwung is the speed that a boring head or a fly-cutter is not driven above: one heavy edge, off centre. Common practice, no source.
const mostSwung units.Speed = 500

// powerShare is the part of the motor's power that a cut may take at the spindle: belts lose a quarter, and 0.7 of the rest is used (rule C-29).
const powerShare = 0.7 * 0.75

// powerCap is the speed at which a cut with a sharp edge takes all the power there is for it: a worn one is the grip's concern, not the motor's.
func (c *Context) powerCap(r Rate) []speed.Cap {
	power := c.MachineFor(r.on).PowerKW
	if power == 0 || !c.Rules.Has("C-29") {
		return nil
	}
	torque := 0.0 // N m
	switch r.kind {
	case cutDrill:
		torque = c.drillForce(r.diameter, r.FeedMM) * r.diameter / 4 / 1000
	case cutRough, cutFinish, cutFace, cutBore:
		deep := r.DepthMM
		if r.skin {
			deep = math.Max(deep, c.skinCut()+leastLeft)
		}
		torque = c.force(deep, r.FeedMM) * r.diameter / 2 / 1000
	case cutEdge:
		torque = math.Max(c.force(r.own, r.FeedMM/leastTeeth), c.milledForce(r.own, r.diameter, r.diameter, r.FeedMM)) * r.diameter / 2 / 1000
	case cutSaw:
		torque = c.sawForce(r.tool, r.diameter, r.FeedMM) * r.diameter / 2 / 1000
	case cutGroove, cutPart:
		torque = c.force(bladeWidth(r.tool), r.FeedMM) * r.diameter / 2 / 1000
	}
	if torque <= 0 {
		return nil
	}
	return []speed.Cap{{What: "the motor's power", RPM: units.Speed(power * powerShare * 60_000 / (2 * math.Pi * torque / wear)), Rule: "C-29", Source: "power = force x speed"}}
}

// leastTeeth is how many teeth a milling cutter shares its feed among at least: two, as those have that cut slots. Common practice, no source.
const leastTeeth = 2.0

func plainOperation(op speed.Operation) speed.Operation {
	if op == speed.Ream {
		return speed.Drill
	}
	if op == speed.Drill {
		return op
	}
	return speed.Turn
}

func spindleOf(m partspec.Machine) speed.Machine {
	return speed.Machine{Steps: m.Speeds, Low: m.SlowestSpeed, High: m.FastestSpeed}
}

func slowest(m partspec.Machine) units.Speed {
	if len(m.Speeds) > 0 {
		return m.Speeds[0]
	}
	return m.SlowestSpeed
}

// feed is a feed for hand or power feed on a small lathe, mm a revolution, two decimals.
func (c *Context) feed(kind cutKind, d float64) float64 {
	if kind == cutEdge {
		return c.millFeed(d)
	}
	f, err := speed.FeedFor(kind.operation(), c.Part.Material, units.Length(d))
	if err != nil {
		return leastFeed
	}
	return math.Max(leastFeed, math.Round(f.Used*100)/100)
}

// leastFeed is the finest feed that is asked of a hand or a small gearbox. Common practice, no source.
const leastFeed = 0.02

// depth is the most depth of one pass.
func (c *Context) depth(kind cutKind) float64 {
	rough := 1.0
	if d, err := speed.RoughDepth(c.Part.Material, 0); err == nil && c.Rules.Has("C-29") {
		rough = float64(d.Depth)
	}
	switch kind {
	case cutRough, cutFinish:
		return rough
	case cutFace:
		return math.Min(rough, 1)
	case cutBore:
		return boreDepth
	case cutDrill, cutSaw:
		return 0 // the tool's own size
	case cutReam:
		return mostReam / 2
	}
	return rough
}

// wear is the factor for a used edge; grips are reckoned with it (handbook practice, from memory).
const wear = 1.3

// force is the main cutting force of a turning cut, N, on the high side.
func (c *Context) force(depthMM, feedMM float64) float64 {
	if depthMM <= 0 || feedMM <= 0 {
		return 0
	}
	f, err := mechanics.CuttingForce(mechanics.Cut{KC11MPa: c.kc(), MC: c.Part.Material.Mc, DepthMM: depthMM, FeedMM: feedMM, EdgeAngleDeg: 90, WearFactor: wear})
	if err != nil {
		return 0
	}
	return f.MainN
}

// kc is the specific cutting force; a material without one is reckoned like unalloyed steel, the high side for soft stuff.
func (c *Context) kc() float64 {
	if k := c.Part.Material.Kc11MPa; k > 0 {
		return k
	}
	return kcUnknown
}

// kcUnknown is the VDI 3323 group figure of unalloyed steel, used where a table has none.
const kcUnknown = 1500

// drillsForce is the turning force of the heaviest of drills that open a hole in solid metal one after another, as if it acted at a quarter of the last one's diameter, N.
func (c *Context) drillsForce(steps []float64, feedMM float64) float64 {
	return c.openingForce(0, steps, feedMM)
}

// openingForce is the same where there is a hole already, of the diameter from.
func (c *Context) openingForce(from float64, steps []float64, feedMM float64) float64 {
	most := 0.0
	for _, d := range steps {
		f, err := mechanics.DrillCut{DiameterMM: d, FeedMM: feedMM, PointAngleDeg: plan.DrillPointDeg, KC11MPa: c.kc(), MC: c.Part.Material.Mc, WearFactor: wear, PilotMM: from}.Force()
		if err == nil {
			most = math.Max(most, f.TorqueNm*1000)
		}
		from = d
	}
	return most / (steps[len(steps)-1] / 4)
}

// drillsThrust is the heaviest of what drills that open a hole one after another press along their axis, N.
func (c *Context) drillsThrust(steps []float64, feedMM float64) float64 {
	most, before := 0.0, 0.0
	for _, d := range steps {
		f, err := mechanics.DrillCut{DiameterMM: d, FeedMM: feedMM, PointAngleDeg: plan.DrillPointDeg, KC11MPa: c.kc(), MC: c.Part.Material.Mc, WearFactor: wear, PilotMM: before}.Force()
		if err == nil {
			most = math.Max(most, f.ThrustN)
		}
		before = d
	}
	return most
}

// drillForce is the turning force of a drill as if it acted at a quarter of its diameter, N.
func (c *Context) drillForce(d, feedMM float64) float64 {
	f, err := mechanics.DrillCut{DiameterMM: d, FeedMM: feedMM, PointAngleDeg: 118, KC11MPa: c.kc(), MC: c.Part.Material.Mc, WearFactor: wear}.Force()
	if err != nil {
		return 0
	}
	return f.TorqueNm * 1000 / (d / 4)
}
