// Package process turns the features of a part into operations: the chains by which a hole, a diameter or a thread is made, with the tools owned.
//
// In: a checked part, the workshop, how the stock lies, and the rules in force. Out: tasks (an operation as plain facts, and the ways it can be
// done: from which end, with which tool), and what no tool owned can make, with the reasons. Later, once the order is found, each way writes its
// operation out in dial readings (Way.Write). A file per feature kind. Nothing here decides the order or the holding.
package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/numbers/speed"
	"catchplate/planner/plan"
	"catchplate/planner/rules"
	"catchplate/planner/shape"
	"catchplate/planner/solid"
)

// Context is what a part's tasks are made from.
type Context struct {
	Part   *partspec.Part
	Shop   *partspec.Workshop
	Lathe  partspec.Machine
	Mill   partspec.Machine  // Kind "" = none is owned
	Slide  *partspec.Holding // the vertical slide that makes the lathe the mill; nil where none does
	Drill  partspec.Machine
	Bench  partspec.Machine
	Place  shape.Placement
	Blocks []shape.Block
	Holes  []shape.Hole
	Stock  solid.Body
	Flat   shape.Flat // stock of a flat part, as it lies around it
	Length float64
	Rules  rules.Set
	// Bored is the chain chosen for each hole, by name: "ream", "bore" or "drill"; Chains lists what there is to choose from.
	Bored   map[string]Chain
	Centred map[partspec.End]bool // ends that get a centre hole for a tailstock or two centres
	Memo    *Memo                 // tables already worked out; nil: none are kept
	Split   bool                  // roughing and finishing are operations of their own

	rimRound float64 // of a rim that was sawn: the radius at which a cut is sure to go all round; 0 where the outside is a size to count from
	rimShare float64 // the part of its limits that the size of a turned arc may take up, where its place has the rest; 0: all of them
}

// Task is an operation with the ways in which it can be done. A task without ways cannot be done; Lacking says why.
type Task struct {
	shape.Op
	Ways    []Way
	Lacking []string

	// Of what is cut across the axis: how far from it the outside stands there, and how far round it, at that radius, it may lie off its direction; 0 = it cannot be told.
	Rim    float64
	Aside  float64
	Middle bool // Aside is also what it may lie beside the axis: a slot's
}

// By is the process that a task is when it is done in a way.
func (t Task) By(w Way) plan.Process {
	if w.Process != "" {
		return w.Process
	}
	return t.Process
}

// Way is one way to do a task.
type Way struct {
	Machine   partspec.MachineKind // where it is done; "" = on the lathe
	Process   plan.Process         // what it then is, where that is not what the task says of itself: a chamfer cut by a countersink
	Across    bool                 // mill or drill: the part's axis lies along the table
	AcrossDeg float64              // up, then, from +X of the part's frame
	Indexed   bool                 // mill: the part stands upright on a dividing head, which turns its places under the spindle
	AskewDeg  float64              // mill: the direction in a flat part, from +X, that lies along the table's x; 0 = X does
	Lean      *Lean                // mill: the work is set over by so much; nil = it is not
	Run       [2]float64           // then, how far a cutter's axis goes beyond the beginning and the end of the edge
	End       partspec.End         // the end that must be free; of a flat part the face that looks at the spindle
	Tool      partspec.Tool
	SizeMM    float64 // of a tool taken from a set
	Off       float64 // mill or drill: how far the tool itself may land from the place that it is set to, told as the task's Place is
	Marked    bool    // it is set to a mark or a hole on the work, not by dials: how the work lies does not matter
	Minutes   float64
	Rate      Rate
	Ordinary  bool       // the common way, with the tool coming from the free end
	ForceN    float64    // main cutting force, on the high side
	DeepMM    float64    // how much metal its passes have to take off at most; 0 where the depth of a pass is not chosen
	SureN     float64    // of it, what lighter passes do not lessen: a cut whose depth is only known once it is measured
	SkinMM    float64    // how deep a first cut under the skin of the stock goes, however light the others; 0 = none does
	ThrustN   float64    // mill or drill: along the spindle, into the work
	ForceAt   float64    // radius where it acts
	Span      [2]float64 // where the tool is, along the axis, body included
	Write     func(j Job) (plan.Operation, Done)
}

// Job is the moment at which an operation is written out.
type Job struct {
	Free   partspec.End
	DatumZ float64     // face that the saddle's nought is set on
	Before solid.Body  // the work as it then is
	Flat   shape.Flat  // the same of a flat part
	Setup  *plan.Setup // the setting that it belongs to, as far as it is written
	Table  []plan.Zero // mill: where the dials of its table read nought
	Light  float64     // how deep a pass may go, as a part of the ordinary depth: 1, or less where the holding asks for light cuts
	Caps   []speed.Cap // of the holding
	Glued  bool        // held by glue
	Seated bool        // a seat has hollowed out the free end
	More   bool        // lengths are cut from this end in the same setting, beside facing it
}

// Expand lists every task of a part.
func Expand(c *Context) []Task {
	if c.Part.Flat() {
		return c.flatTasks()
	}
	var tasks []Task
	tasks = append(tasks, c.faces()...)
	tasks = append(tasks, c.centres()...)
	tasks = append(tasks, c.outsides()...)
	for _, h := range c.Holes {
		tasks = append(tasks, c.hole(h)...)
	}
	for _, f := range c.Part.Features {
		switch f := f.(type) {
		case *partspec.Recess:
			tasks = append(tasks, c.recess(f))
		case *partspec.Groove:
			tasks = append(tasks, c.groove(f)...)
		case *partspec.Chamfer:
			tasks = append(tasks, c.chamfer(f))
		case *partspec.Fillet:
			tasks = append(tasks, c.fillet(f)...)
		case *partspec.Thread:
			tasks = append(tasks, c.thread(f))
		case *partspec.Knurl:
			tasks = append(tasks, c.knurl(f))
		case *partspec.Holes:
			tasks = append(tasks, c.pattern(f)...)
		case *partspec.CrossHole:
			tasks = append(tasks, c.crossHole(f)...)
		case *partspec.Flat:
			tasks = append(tasks, c.flats(f)...)
		case *partspec.Slot:
			tasks = append(tasks, c.slot(f)...)
		case *partspec.Seat:
			tasks = append(tasks, c.seat(f)...)
		case *partspec.SideSeat:
			tasks = append(tasks, c.sideSeat(f)...)
		case *partspec.Spigot, *partspec.Bore, *partspec.Taper, *partspec.Profile:
			// made as blocks and holes
		default:
			panic(fmt.Sprintf("process: no task for a feature of type %T", f))
		}
	}
	if c.Place.OnBar() {
		tasks = append(tasks, c.partOff())
	}
	return tasks
}

// MachineFor is the machine of a kind; "" stands for the lathe.
func (c *Context) MachineFor(k partspec.MachineKind) partspec.Machine {
	switch k {
	case partspec.Mill:
		return c.Mill
	case partspec.Drill:
		return c.Drill
	case partspec.Bench:
		return c.Bench
	}
	return c.Lathe
}

func ends() [2]partspec.End { return [2]partspec.End{partspec.Left, partspec.Right} }

// endZ is the place of an end face of the finished part.
func (c *Context) endZ(e partspec.End) float64 {
	if e == partspec.Right {
		return c.Length
	}
	return 0
}

// tools lists the tools of a kind, in file order.
func (c *Context) tools(k partspec.ToolKind) []partspec.Tool {
	var found []partspec.Tool
	for _, t := range c.Shop.Tools {
		if t.Kind == k {
			found = append(found, t)
		}
	}
	return found
}

// sized finds in the sets of a kind the size between two limits that is nearest to their middle.
func (c *Context) sized(k partspec.ToolKind, low, high float64) (t partspec.Tool, size float64, ok bool) {
	return c.sizedNear(k, low, high, (low+high)/2)
}

// sizedNear is sized for the size nearest to one that is wanted.
func (c *Context) sizedNear(k partspec.ToolKind, low, high, wanted float64) (t partspec.Tool, size float64, ok bool) {
	off := math.Inf(1)
	for _, tool := range c.tools(k) {
		for _, s := range tool.Sizes {
			v := float64(s)
			if d := math.Abs(v - wanted); v >= low-sizeNoise && v <= high+sizeNoise && d < off-sizeNoise {
				t, size, ok, off = tool, v, true, d
			}
		}
	}
	return t, size, ok
}

// sizeNoise lets sizes that differ only by how they were written count as one.
const sizeNoise = 1e-6

// Force is the main cutting force with passes as light as that.
func (w Way) Force(light float64) float64 {
	switch w.Rate.kind {
	case cutDrill, cutReam, cutCounterbore, cutCountersink, cutSaw: // a drill takes its whole width however it is held
		light = 1
	}
	if w.DeepMM > 0 && w.SkinMM == 0 {
		light = w.PassMM(light) / w.PassMM(1)
	}
	return math.Max(w.ForceN*light, w.SureN)
}

// deep sets the force of cuts that have so much metal to take off.
func (w *Way) deep(c *Context, metalMM float64) {
	w.DeepMM = metalMM
	w.ForceN = c.force(w.PassMM(1), w.Rate.FeedMM)
}

// PassMM is how deep a pass goes with passes as light as that: there may be less metal than a lighter pass would take.
func (w Way) PassMM(light float64) float64 { return math.Min(w.DeepMM, w.Rate.DepthMM*light) }
