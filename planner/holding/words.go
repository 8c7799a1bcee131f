package holding

import (
	"fmt"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/plan"
	"catchplate/planner/process"
)

// GripKind is the plan's word for how a mount grips.
func (m Mount) GripKind() string {
	switch {
	case m.Flat && m.Holding.Kind == partspec.Vice:
		return "vice"
	case m.Flat && (m.Holding.Kind == partspec.TableClamps || m.Holding.Kind == partspec.Faceplate):
		return "clamps"
	case m.Flat && m.Holding.Kind == partspec.AnglePlate:
		return "ledge"
	case m.Machine == partspec.Bench:
		return "bench"
	case m.Holding.Kind == partspec.TableClamps || m.Holding.Kind == partspec.AnglePlate:
		return "clamps"
	case m.Holding.Kind == partspec.Vice:
		return "vice"
	case m.Holding.Kind == partspec.VeeBlock:
		return "vee"
	case m.Between:
		return "centres"
	case m.Glue == GlueFace:
		return "glued_face"
	case m.Glue == GlueBore:
		return "glued_bore"
	case m.Split:
		return "split_mandrel"
	case m.Inside:
		return "mandrel"
	case m.Holding.Kind == partspec.Collets:
		return "collet"
	}
	return "jaws"
}

// Jaws is how many jaws press on the work; 0 where none do.
func (m Mount) Jaws() int {
	switch {
	case m.Flat && m.GripKind() == "vice":
		return 2
	case m.Flat && (m.GripKind() == "clamps" || m.GripKind() == "ledge" || m.Machine != ""):
		return 0
	}
	if m.Between || m.Inside || m.Glue != NoGlue || m.Machine == partspec.Bench {
		return 0
	}
	return jawCount(m.Holding)
}

// noun is the holding in a person's words.
func (m Mount) noun() string {
	if m.Split {
		return "Split mandrel turned in place"
	}
	return map[partspec.HoldingKind]string{
		partspec.ThreeJaw: "Three-jaw chuck", partspec.FourJaw: "Four-jaw chuck, clocked", partspec.Collets: "Collet", partspec.SoftJaws: "Soft jaws bored in place",
		partspec.StubMandrel: "Stub mandrel turned in place", partspec.PlainMandrel: "Plain mandrel", partspec.ExpandingMandrel: "Expanding mandrel", partspec.GluedArbor: "Glued arbor",
		partspec.Vice: "Vice", partspec.VeeBlock: "Vee block", partspec.TableClamps: "Screw through the bore", partspec.AnglePlate: "Angle plate, screw through the bore",
	}[m.Holding.Kind]
}

// Title names the setup on the sheet.
func (m Mount) Title() string {
	if m.Flat {
		return m.flatTitle()
	}
	if m.About != "" {
		return fmt.Sprintf("Four-jaw chuck on %s, set over for the axis %s, %s end outward", m.Surface, m.About, m.Free)
	}
	on := "the bar"
	switch {
	case m.Surface != "stock":
		on = m.Surface
	case m.RawUntil:
		on = "the raw outside"
	}
	noun := m.noun()
	switch {
	case m.Bushed():
		noun += ", split threaded bush"
	case m.Threaded:
		noun = "Threaded mandrel turned in place"
	}
	t := fmt.Sprintf("%s on %s, %s end outward", noun, on, m.Free)
	if m.Machine != "" {
		t = m.tableTitle(noun, on)
	}
	if m.Between {
		t = fmt.Sprintf("Between centres, carrier on the %s end", m.Free.Other())
	} else if m.Centre {
		t += ", tailstock centre"
	}
	if m.Plug {
		t += ", plug in the bore"
	}
	return t
}

// How tells how to hold the work, step by step.
func (m Mount) How(c *process.Context, g plan.Grip) []string {
	u := units.InMM
	if c.Part.Inches {
		u = units.InInch
	}
	d := "Ø" + units.Length(2*m.Radius).Round(3).Text(u)
	long := units.Length(m.Z1 - m.Z0).Round(1).String()
	var how []string
	switch m.Holding.Kind {
	case BenchKind:
		how = []string{fmt.Sprintf("On the bench, or in the bench vice between soft jaws, %s end up.", m.Free)}
	case partspec.BetweenCentres:
		how = []string{"True the live centre in place; grease the dead one.", fmt.Sprintf("Carrier on the last 10 mm of the %s end, soft packing under its screw if that is finished.", m.Free.Other()), "Adjust the tailstock so that the work turns without shake, and again as it warms."}
	case partspec.ThreeJaw:
		how = []string{fmt.Sprintf("Jaws on %s over %s.", d, long)}
		if m.Bushed() {
			how = m.howBushed()
		}
	case partspec.FourJaw:
		how = []string{fmt.Sprintf("Jaws on %s over %s; set by the face rings, then clock to %.2f full reading: move a pair by half the difference.", d, long, m.RunOut)}
	case partspec.SoftJaws:
		how = []string{fmt.Sprintf("Bore the jaws in place to %s, 0 to 0.05 small, while they grip a ring; relieve the corner; grip %s.", d, long)}
	case partspec.Collets:
		how = []string{fmt.Sprintf("Collet for %s, clean, grip %s.", d, long)}
	case partspec.StubMandrel:
		if m.Threaded {
			how = []string{fmt.Sprintf("Screw the work on a mandrel threaded in place for %s, up to its square shoulder, a paper washer behind it so that it comes off again.", m.Surface)}
			break
		}
		if m.Split {
			how = []string{fmt.Sprintf("Mandrel turned in place to the measured bore, nominally %s, 0.005 to 0.015 small, square shoulder; turn its taper screw from in front until it just drives. Do not take it out of the chuck until the job is done.", d)}
			break
		}
		how = []string{fmt.Sprintf("Mandrel turned in place to the measured bore, nominally %s, 0.005 to 0.015 small, square shoulder; screw and washer in front. Do not take it out of the chuck until the job is done.", d)}
	case partspec.PlainMandrel:
		how = []string{fmt.Sprintf("Oil the %s mandrel and press the work on, large end towards the headstock; feed towards the large end.", d)}
	case partspec.ExpandingMandrel:
		how = []string{fmt.Sprintf("Expand in %s only until it drives.", d)}
	case partspec.GluedArbor:
		how = []string{"Face the arbor with a relieved centre, degrease both, cyanoacrylate, press with the tailstock, leave it to cure.", "Release by heat (120 to 150 °C) and a sideways slide."}
		if m.Glue == GlueBore {
			how[0] = fmt.Sprintf("Turn a spigot to slide in %s, degrease both, cyanoacrylate, push home to the shoulder, leave it to cure.", d)
		}
	}
	how = append(how, m.howOnTable()...)
	if m.Stop {
		how = append(how, "Press the face hard against the step or shoulder while tightening.")
	}
	if m.Packed && !m.Bushed() {
		how = append(how, "Soft packing, copper or aluminium 0.3 to 0.5 thick, under every jaw.")
	}
	if m.Centre && !m.Between {
		how = append(how, m.centreUp())
	}
	if m.Plug {
		how = append(how, "Push the plug in to stand under the jaws only.")
	}
	return append(how, m.force(g)...)
}

// plainCentre is the widest mouth, mm in diameter, that an ordinary tailstock centre fills. Common practice, no source.
const plainCentre = 12.0

func (m Mount) centreUp() string {
	centre, mouth := "the tailstock centre", "the end"
	if m.Mouth > 0 {
		mouth = "the mouth of the hole, its edge free of burrs"
	}
	if m.Mouth > plainCentre {
		centre = fmt.Sprintf("a pipe centre, wider than Ø%s,", units.Decimal(m.Mouth, 1))
	}
	return fmt.Sprintf("Bring %s up into %s; grease it, and adjust it again as the work warms.", centre, mouth)
}

func (m Mount) force(g plan.Grip) []string {
	if g.Jaws == 0 || g.LeastN == 0 {
		return nil
	}
	text := fmt.Sprintf("Tighten with %s: at least %s a jaw must hold", g.Feel, units.Force(g.LeastN))
	if g.MostN > 0 {
		text += fmt.Sprintf(", more than %s would spoil the part", units.Force(g.MostN))
	}
	if g.Eased == nil {
		return []string{text + "."}
	}
	return []string{fmt.Sprintf("Tighten with %s for the heavy cuts.", g.Feel),
		fmt.Sprintf("Before %s let the work cool, slacken the chuck and tighten again with %s: at least %s a jaw must hold, more than %s would spoil the part. Clock it again.", g.Eased.Before, g.Eased.Feel, units.Force(g.LeastN), units.Force(g.MostN))}
}

// ToMake is the small job that must be done before a mount can be used; nil for none.
func (m Mount) ToMake(c *process.Context, setup int, measured *units.Length) *plan.Helper {
	size := "the measured bore, nominally Ø" + units.Length(2*m.Radius).Round(3).String()
	if !c.Rules.Has("C-36") {
		size = "Ø" + units.Length(2*m.Radius).Round(3).String()
	}
	if measured != nil {
		size = fmt.Sprintf("the bore as measured, Ø%s", measured.String())
	}
	id := fmt.Sprintf("%s for %s", m.Helper, m.Surface)
	h := &plan.Helper{ID: id, ForSetup: setup, Rules: []string{"A-47", "C-36"}, Minutes: m.Minutes}
	switch m.Helper {
	case "stub mandrel":
		h.Title = "Stub mandrel, turned in the chuck just before it is used"
		h.Steps = []string{"Steel or brass bar in the three-jaw, standing out by the bore's length and 10.",
			fmt.Sprintf("Turn a spigot to %s, less 0.005 to 0.015; length %s less 1.", size, units.Length(m.Z1-m.Z0).Round(1)), "Face the shoulder square in the same setting, undercut the corner.", "Drill and tap the end for a screw and washer.", "Leave it in the chuck; mark jaw 1 on it."}
		h.Rules = append(h.Rules, "B-14")
	case "split mandrel":
		h.Title = "Split mandrel, turned in the chuck just before it is used"
		h.Steps = []string{"Steel or brass bar in the three-jaw, standing out by the bore's length and 10.", "Drill and tap the end for a screw that the work's hole lets by, countersink it 60°, turn the head of the screw to match.",
			"Slit the end crosswise with a fine saw, by its diameter deeper than the spigot will be long, the spindle stopped; take off the burrs, nip the screw.",
			fmt.Sprintf("Turn a spigot to %s, less 0.005 to 0.015; length %s less 1.", size, units.Length(m.Z1-m.Z0).Round(1)), "Face the shoulder square in the same setting, undercut the corner.", "Leave it in the chuck; mark jaw 1 on it."}
		h.Rules = append(h.Rules, "B-14")
	case "threaded mandrel":
		h.Title = "Threaded mandrel, turned and screwcut in the chuck just before it is used"
		h.Steps = []string{"Steel or brass bar in the three-jaw, standing out by the thread's length and 10.", fmt.Sprintf("Turn and screwcut it to fit the thread %s of the work without shake; a run-out at the shoulder.", m.Surface), "Face the shoulder square in the same setting.", "Leave it in the chuck; mark jaw 1 on it."}
	case "bush":
		m.bushToMake(c, h, size)
	case "threaded bush":
		m.threadedBush(h)
	case "plug":
		h.Title = "Plug for the bore, to stand under the jaws"
		h.Steps = []string{fmt.Sprintf("Turn it to %s, less 0.01 to 0.02: a push by hand.", size), "As long as the jaws grip, a hole through it for air, a tapped hole to draw it out."}
	case "arbor":
		h.Title = "Arbor to glue the work to"
		h.Steps = []string{"Aluminium bar in the three-jaw: face it, shallow grooves, a relieved centre. It is not moved after this."}
		if m.Glue == GlueBore {
			h.Steps = append(h.Steps, fmt.Sprintf("Turn a close spigot to %s, less 0.01 to 0.02, with a shoulder.", size))
		}
		h.Rules = append(h.Rules, "B-16")
	default:
		return nil
	}
	return h
}
