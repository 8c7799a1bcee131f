package partspec

import (
	"fmt"
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"catchplate/partspec/units"
	"catchplate/planner/tables"
)

// nosed is what a single-point tool may say.
var nosed = shapeOf{attrs: []attr{may("material", kindWord), may("nose_radius", kindLength)}}

var drillShape = shapeOf{attrs: []attr{
	may("sizes", kindLengths), may("set", kindWord), may("from", kindLength), may("to", kindLength), may("step", kindLength),
	may("material", kindWord),
}}

// reaching is what a tool that goes into a bore must say.
var reaching = nosed.with(need("least_bore", kindLength), need("reach", kindLength))

var toolShapes = map[string]shapeOf{
	string(CentreDrill):    {attrs: []attr{need("sizes", kindLengths)}},
	string(Drills):         drillShape,
	string(Reamers):        {attrs: []attr{need("sizes", kindLengths)}},
	string(Turning):        nosed.with(need("hand", kindWord)),
	string(Boring):         reaching.with(need("bar_diameter", kindLength)),
	string(RecessTool):     reaching.with(need("width", kindLength), need("depth", kindLength)),
	string(Parting):        nosed.with(need("width", kindLength), need("reach", kindLength)),
	string(Grooving):       nosed.with(need("width", kindLength), need("reach", kindLength)),
	string(RoundNose):      {attrs: []attr{need("radius", kindLength), need("reach", kindLength), may("material", kindWord)}},
	string(ChamferTool):    {attrs: []attr{need("angle", kindAngle), may("material", kindWord)}},
	string(ThreadExternal): nosed.with(need("pitches", kindLengths)),
	string(ThreadInternal): reaching.with(need("pitches", kindLengths)),
	string(Taps):           {attrs: []attr{need("threads", kindTexts)}},
	string(Dies):           {attrs: []attr{need("threads", kindTexts)}},
	string(KnurlTool):      {attrs: []attr{need("pitches", kindLengths)}},
	string(Saw):            {attrs: []attr{may("kerf", kindLength)}},
	string(Files):          {},
	string(EndMill):        {attrs: []attr{need("sizes", kindLengths), may("reach", kindLength), may("material", kindWord)}},
	string(BallNose):       {attrs: []attr{need("sizes", kindLengths), may("reach", kindLength), may("material", kindWord)}},
	string(FlyCutter):      nosed.with(need("swing", kindLengths)),
	string(BoringHead):     nosed.with(need("swing", kindLengths), may("reach", kindLength)),
	string(HoleSaw):        {attrs: []attr{need("sizes", kindLengths), may("depth", kindLength), may("pilot", kindLength), may("lead", kindLength), may("kerf", kindLength)}},
	string(Counterbores):   {attrs: []attr{need("sizes", kindLengths)}},
	string(Countersink):    {attrs: []attr{need("sizes", kindLengths), may("angle", kindAngle)}},
	string(EdgeFinder):     {attrs: []attr{may("accuracy", kindLength)}},
	string(Scriber):        {attrs: []attr{may("accuracy", kindLength)}},
}

// ToolKinds lists every kind of tool in the order the language document tells
// them.
func ToolKinds() []ToolKind {
	return []ToolKind{CentreDrill, Drills, Reamers, Turning, Boring, RecessTool, Parting, Grooving, RoundNose, ChamferTool,
		ThreadExternal, ThreadInternal, Taps, Dies, KnurlTool, Saw, Files, EndMill, BallNose, FlyCutter, BoringHead, HoleSaw, Counterbores,
		Countersink, EdgeFinder, Scriber}
}

func (c *checker) tool(b *hclsyntax.Block, inches bool) (Tool, bool) {
	e, name := c.thing(b, inches, toolShapes, words(ToolKinds()))
	unread := e.broken
	t := Tool{
		Kind: ToolKind(e.name), Name: name, Range: e.head(),
		Sizes: c.ascending(e, "sizes"), Threads: c.threads(e), Hand: e.text("hand"), Carbide: c.carbide(e),
		NoseRadius: e.length("nose_radius"), Radius: e.length("radius"), Width: e.length("width"), Depth: e.length("depth"),
		Reach: e.length("reach"), BarDiameter: e.length("bar_diameter"), LeastBore: e.length("least_bore"),
		Angle: e.angle("angle"), Kerf: e.length("kerf"), Accuracy: e.length("accuracy"), Pilot: e.length("pilot"), Lead: e.length("lead"),
	}
	if unread {
		return t, false // what its values mean together is not judged
	}
	switch t.Kind {
	case Drills:
		t.Sizes = c.drillSizes(e, t.Sizes)
	case ThreadExternal, ThreadInternal:
		t.LeastPitch, t.MostPitch = c.pair(e, "pitches")
	case FlyCutter, BoringHead:
		t.LeastSwing, t.MostSwing = c.pair(e, "swing")
	case Countersink:
		if !e.has("angle") {
			t.Angle = commonSink
		}
	case KnurlTool:
		t.Pitches = c.ascending(e, "pitches")
	case Turning:
		if t.Hand != "right" && t.Hand != "left" {
			c.fail(e, e.at("hand"), fmt.Sprintf("A tool's hand cannot be %q", t.Hand),
				`Write hand = "right" for a tool that cuts towards the headstock, hand = "left" for one that cuts away from it.`)
		}
	case HoleSaw:
		c.holeSaw(e, &t)
	case Boring:
		if t.LeastBore < t.BarDiameter {
			c.fail(e, e.at("least_bore"), "The boring bar is thicker than the smallest hole it enters",
				"Write least_bore above bar_diameter %s.", t.BarDiameter)
		}
	}
	return t, !e.broken
}

// What a hole saw is where its block does not say: how deep its cup takes the disc in, its pilot drill (1/4 in), how far that stands before the teeth, and how wide the
// teeth are set. From memory; the depth is that of the shallow ones.
const (
	commonSawDepth units.Length = 25
	commonSawPilot units.Length = 6.35
	commonSawLead  units.Length = 8
	commonSawKerf  units.Length = 2
)

// holeSaw completes a hole saw, and holds that its pilot leaves room for the ring of teeth.
func (c *checker) holeSaw(e *entry, t *Tool) {
	for _, one := range []struct {
		name   string
		figure *units.Length
		common units.Length
	}{{"depth", &t.Depth, commonSawDepth}, {"pilot", &t.Pilot, commonSawPilot}, {"lead", &t.Lead, commonSawLead}, {"kerf", &t.Kerf, commonSawKerf}} {
		if !e.has(one.name) {
			*one.figure = one.common
		}
	}
	if len(t.Sizes) > 0 && t.Sizes[0] <= t.Pilot+2*t.Kerf {
		c.fail(e, e.at("sizes"), fmt.Sprintf("No disc is left inside a hole saw of %s", t.Sizes[0]),
			"Write sizes above %s: its pilot is %s, and its teeth take %s all round.", t.Pilot+2*t.Kerf, t.Pilot, t.Kerf)
	}
}

func (c *checker) carbide(e *entry) bool {
	switch material := e.text("material"); material {
	case "", "hss":
		return false
	case "carbide":
		return true
	default:
		c.fail(e, e.at("material"), fmt.Sprintf("A tool cannot be of %q", material),
			`Write material = "hss" (also when none is written) or material = "carbide".`)
		return false
	}
}

// threads checks the designations of taps and dies and gives them the names of
// the table.
func (c *checker) threads(e *entry) []string {
	var names []string
	for _, text := range e.texts("threads") {
		thread, err := tables.FindThread(text)
		if err != nil {
			c.fail(e, e.at("threads"), fmt.Sprintf("No table has the thread %q", text), "%s", sentence(err))
			continue
		}
		names = append(names, thread.Designation)
	}
	return names
}

var drillSets = []string{string(tables.DrillMetric), string(tables.DrillNumber), string(tables.DrillLetter), string(tables.DrillFraction)}

// drillSizes lists the drills of a set and those written one by one.
func (c *checker) drillSizes(e *entry, sizes []units.Length) []units.Length {
	set := e.text("set")
	if set == "" {
		if len(sizes) == 0 {
			c.fail(e, e.head(), "The drills have no sizes", "Write sizes = [3, 5], or a set: %s.", listed(drillSets))
		}
		for _, name := range []string{"from", "to", "step"} {
			if e.has(name) {
				c.fail(e, e.at(name), name+" belongs to a set", `Write set = "metric" beside it.`)
			}
		}
		return sizes
	}
	if !slices.Contains(drillSets, set) {
		c.fail(e, e.at("set"), fmt.Sprintf("There is no set of drills %q", set), "%s", orList(set, drillSets))
		return nil
	}
	sizes = append(sizes, c.setSizes(e, tables.DrillKind(set))...)
	slices.Sort(sizes)
	return slices.Compact(sizes)
}

func (c *checker) setSizes(e *entry, set tables.DrillKind) []units.Length {
	from, to, step := e.length("from"), e.length("to"), e.length("step")
	if e.has("from") && e.has("to") && from >= to {
		c.fail(e, e.at("from"), "The set of drills ends before it begins", "Write from below to.")
		return nil
	}
	if step > 0 {
		return c.steppedSizes(e, from, to, step)
	}
	if set == tables.DrillMetric {
		c.fail(e, e.head(), "The metric set lacks step", "Write from = 1, to = 13 and step = 0.5.")
		return nil
	}
	var sizes []units.Length
	for _, d := range tables.Drills(set) {
		if d.Diameter >= from-sameLength && (to == 0 || d.Diameter <= to+sameLength) {
			sizes = append(sizes, d.Diameter)
		}
	}
	return sizes
}

func (c *checker) steppedSizes(e *entry, from, to, step units.Length) []units.Length {
	if !e.has("from") || !e.has("to") {
		c.fail(e, e.at("step"), "A stepped set of drills needs both ends", "Write from = 1 and to = 13 beside step.")
		return nil
	}
	most := (to-from+sameLength)/step + 1
	if most > maxListItems {
		c.fail(e, e.at("step"), "The set of drills is too long", "At most %d drills are believed; write a larger step.",
			maxListItems)
		return nil
	}
	const drillDecimals = 4
	var sizes []units.Length
	for i := range int(most) {
		sizes = append(sizes, (from + units.Length(i)*step).Round(drillDecimals))
	}
	return sizes
}

// commonSink is the included angle of a countersink that says none: that of metric screws (ISO 7046, ISO 10642, from memory).
const commonSink units.Angle = 90
