package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"catchplate/partspec"
	"catchplate/partspec/units"
	"catchplate/planner/numbers/speed"
)

// speedAnswer is the speed to set, and why it is that one.
type speedAnswer struct {
	Schema   string `json:"schema"`
	Material string `json:"material"` // its id in the table
	Machine  string `json:"machine"`  // whose speeds were looked at
	Workshop string `json:"workshop"`
	speed.Choice
	Feed *speed.Feed `json:"feed,omitempty"` // for operations that have a usual one
}

// speedFlags are the arguments of the command.
type speedFlags struct {
	material, operation, tool, workshop, machine string
	diameter                                     length
}

func (c *cli) speed() *cobra.Command {
	var f speedFlags
	cmd := &cobra.Command{
		Use:     "speed",
		GroupID: groupBench,
		Short:   "Spindle speed for a cut, as a step of the machine",
		Example: `  catchplate speed --material brass --diameter 25 --operation turn
  catchplate speed --material "mild steel" --diameter "3/8 in" --operation drill --workshop examples/tide-gauge/workshop.hcl`,
		Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error { return c.runSpeed(f) },
	}
	flags := cmd.Flags()
	flags.StringVar(&f.material, "material", "", "material by name or designation")
	flags.Var(&f.diameter, "diameter", "diameter of the work, or of the drill or cutter")
	flags.StringVar(&f.operation, "operation", "", "what is cut: "+strings.Join(operationNames(), ", "))
	flags.StringVar(&f.tool, "tool", string(speed.HSS), "cutting edge: hss or carbide")
	flags.StringVar(&f.workshop, "workshop", "", "file or folder with the workshop (default: the built-in one)")
	flags.StringVar(&f.machine, "machine", "", "machine of the workshop by kind or name (default: its lathe)")
	need(cmd, "material", "diameter", "operation")
	return cmd
}

func operationNames() []string {
	var names []string
	for _, op := range speed.Operations() {
		names = append(names, string(op))
	}
	return names
}

func (c *cli) runSpeed(f speedFlags) error {
	if !slices.Contains(operationNames(), f.operation) {
		return wrongUse("--operation is one of %s, not %q%s", strings.Join(operationNames(), ", "), f.operation, didYouMean(f.operation, operationNames()))
	}
	if f.tool != string(speed.HSS) && f.tool != string(speed.Carbide) {
		return wrongUse("--tool is hss or carbide, not %q", f.tool)
	}
	material, err := findMaterial(f.material)
	if err != nil {
		return err
	}
	workshop, machine, err := c.findMachine(f)
	if err != nil {
		return err
	}
	op := speed.Operation(f.operation)
	want, err := speed.Wanted(material, f.diameter.value, op, speed.Tool(f.tool))
	if err != nil {
		return problem("%v", err)
	}
	choice, err := speed.Choose(want, f.diameter.value, speed.Machine{Steps: machine.Speeds, Low: machine.SlowestSpeed, High: machine.FastestSpeed})
	if err != nil {
		return problem("%v", err)
	}
	a := speedAnswer{Schema: "catchplate-speed-1", Material: material.ID, Machine: machineText(machine), Workshop: workshop, Choice: choice}
	if feed, err := speed.FeedFor(op, material, f.diameter.value); err == nil {
		a.Feed = &feed
	}
	return c.show(a)
}

// findMachine reads the workshop, or takes the built-in one, and finds the machine in it.
func (c *cli) findMachine(f speedFlags) (workshop string, m partspec.Machine, err error) {
	var paths []string
	if f.workshop != "" {
		paths = []string{f.workshop}
	}
	owned, err := c.loadWorkshop(paths)
	if err != nil {
		return "", m, err
	}
	want := f.machine
	if want == "" {
		want = string(partspec.Lathe)
	}
	var names []string
	for _, m := range owned.Machines {
		if string(m.Kind) == want || m.Name == want {
			return workshopText(owned), m, nil
		}
		names = append(names, machineText(m))
	}
	return "", m, problem("the workshop has no machine %q: it has %s", want, strings.Join(names, ", "))
}

func workshopText(w *partspec.Workshop) string {
	if w.BuiltIn {
		return "the built-in workshop"
	}
	return w.Name
}

func machineText(m partspec.Machine) string {
	if m.Name == "" || m.Name == string(m.Kind) {
		return string(m.Kind)
	}
	return string(m.Kind) + " " + m.Name
}

func (a speedAnswer) text(w io.Writer) {
	fmt.Fprintf(w, "%s (wanted %s)\n", a.Speed, a.RPM)
	list := []row{
		{"on", "the " + a.Machine + " of " + a.Workshop},
		{"cutting speed", fmt.Sprintf("%s m/min; the table gives %g to %g", units.Decimal(a.Surface, 1), a.Want.Surface.Low, a.Want.Surface.High)},
		{"ruled by", a.RuledBy + cited(a.CapRule)},
	}
	if a.Feed != nil {
		list = append(list, row{"feed", fmt.Sprintf("%s mm a revolution", units.Decimal(a.Feed.Used, 3))})
	}
	if a.TooFast {
		list = append(list, row{"too fast", "even the slowest speed is over what the tool stands: take carbide, or a smaller diameter"})
	}
	rows(w, append(list, row{"rule", a.Rule}, row{"source", a.Source})...)
}
