package main

import (
	"errors"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"catchplate/planner"
	"catchplate/planner/plan"
)

// compareFlags are what compare is asked with.
type compareFlags struct {
	at, output   string
	wall, grip   length
	forceN, jaws number
}

// whatIf is what the flags ask to be otherwise; nil: nothing.
func (f *compareFlags) whatIf() (*plan.WhatIf, error) {
	if f.jaws.value != float64(int(f.jaws.value)) {
		return nil, wrongUse("--jaws is %g: write a whole number", f.jaws.value)
	}
	w := plan.WhatIf{WallMM: f.wall.mm(), ForceN: f.forceN.value, Jaws: int(f.jaws.value), GripLengthMM: f.grip.mm()}
	if f.wall.set && w.WallMM <= 0 || f.grip.set && w.GripLengthMM <= 0 {
		return nil, wrongUse("--wall and --grip-length are lengths above 0")
	}
	if w == (plan.WhatIf{}) {
		return nil, nil
	}
	return &w, nil
}

func (c *cli) compare() *cobra.Command {
	f := &compareFlags{forceN: between(1, 1e5), jaws: between(2, 24)}
	cmd := &cobra.Command{
		Use:     "compare FILE... [--at PART[.FEATURE]]",
		GroupID: groupParts,
		Short:   "Lay the holdings of the workshop side by side for each surface that is brought to size",
		Long: `Lay every holding of the workshop side by side for each finishing operation: what it grips, the least and the most force of a jaw, how far the
grip pushes the work out of round and how much of that may pass, run-out, stick-out, minutes, what has to be made first, and whether it passes
or by which rule it is refused. Those that pass come first, the quickest to set at the top.

A holding is judged as the work stands in the plan when the operation comes. Where what it grips is not there then, or the part has no plan, it is
judged with everything finished but this, and the table says so (*).

--wall, --force, --jaws and --grip-length ask what if. The wall changes the sum of the grip alone (the outside stays); cuts and order stay as
drawn. The lines that they bear on are marked (~).`,
		Example: `  catchplate compare examples/tide-gauge --at bezel.sight
  catchplate compare examples/tide-gauge --at bezel --wall 6
  catchplate compare pulley.hcl -o compared`,
		Args: someFiles,
		RunE: func(_ *cobra.Command, paths []string) error { return c.runCompare(paths, f) },
	}
	cmd.Flags().StringVar(&f.at, "at", "", "this part alone, or this feature of it: PART or PART.FEATURE")
	cmd.Flags().Var(&f.wall, "wall", "what if the wall under the grip were so thick")
	cmd.Flags().Var(&f.forceN, "force", "what if each jaw pressed with so many newtons")
	cmd.Flags().Var(&f.jaws, "jaws", "what if the chucks had so many jaws")
	cmd.Flags().Var(&f.grip, "grip-length", "what if the grip were so long, at most as long as it is")
	cmd.Flags().StringVarP(&f.output, "output", "o", "", "folder to write compare.md and its figures to")
	return cmd
}

func (c *cli) runCompare(paths []string, f *compareFlags) error {
	what, err := f.whatIf()
	if err != nil {
		return err
	}
	job, _, err := c.load(paths)
	if err != nil {
		return err
	}
	name, feature, _ := strings.Cut(f.at, ".")
	parts, err := madeParts(job, name)
	if err != nil {
		return err
	}
	a := comparison{plan.Comparison{Schema: plan.CompareSchema, Workshop: job.Workshop.Name, WhatIf: what, Surfaces: []plan.Surface{}}}
	asked := plan.WhatIf{}
	if what != nil {
		asked = *what
	}
	for _, part := range parts {
		list, err := planner.Compare(job, part, feature, asked, planner.Options{})
		if err != nil {
			return noSurface(err)
		}
		a.Surfaces = append(a.Surfaces, list...)
	}
	if err := a.allApply(); err != nil {
		return err
	}
	if f.output == "" {
		return c.show(a)
	}
	return c.writeCompared(f.output, a)
}

// writeCompared writes the comparison as Markdown with its figures. Here --force is a force, so that nothing of others' is ever overwritten.
func (c *cli) writeCompared(folder string, a comparison) error {
	err := c.deliver(folder, a.files(), ".md", false)
	if f := new(failure); errors.As(err, &f) {
		f.text = strings.Replace(f.text, ", name another folder, or give --force", " or name another folder", 1)
	}
	return err
}

// noSurface names the features that could be meant.
func noSurface(err error) error {
	var e *planner.NoSurfaceError
	if !errors.As(err, &e) {
		return problem("%v", err)
	}
	return problem("%v%s; it has some on %s", e, didYouMean(e.Feature, e.Names), strings.Join(e.Names, ", "))
}

// allApply refuses a what-if that bears on no holding shown.
func (a comparison) allApply() error {
	if a.WhatIf == nil {
		return nil
	}
	for _, f := range []struct {
		name string
		set  bool
		need string
	}{
		{plan.IfWall, a.WhatIf.WallMM > 0, "a hollow part, held from outside or on a bore, and a wall less than its radius"},
		{plan.IfForce, a.WhatIf.ForceN > 0, "a chuck or a collet"},
		{plan.IfJaws, a.WhatIf.Jaws > 0, "a chuck"},
		{plan.IfGripLength, a.WhatIf.GripLengthMM > 0, "jaws or a collet that grip at least so long now"},
	} {
		if f.set && !a.changes(f.name) {
			return problem("--%s bears on no holding here: it needs %s", f.name, f.need)
		}
	}
	return nil
}

func (a comparison) changes(name string) bool {
	for _, s := range a.Surfaces {
		for _, o := range s.Options {
			if slices.Contains(o.Changed, name) {
				return true
			}
		}
	}
	return false
}
