package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"catchplate/partspec"
)

// checkAnswer says what was read when nothing is wrong with it.
type checkAnswer struct {
	problems
	Workshop string      `json:"workshop"`
	BuiltIn  bool        `json:"built_in_workshop"`
	Parts    []partCheck `json:"parts"`
}

// partCheck is a part that was understood.
type partCheck struct {
	Name     string   `json:"name"`
	Material string   `json:"material"`
	LengthMM float64  `json:"length_mm"`         // over all; the thickness of a flat part
	Outline  string   `json:"outline,omitempty"` // kind of a flat part's outline
	Quantity int      `json:"quantity"`
	Features []string `json:"features"` // their ids, in file order
}

func (c *cli) check() *cobra.Command {
	return &cobra.Command{
		Use:     "check FILE...",
		GroupID: groupParts,
		Short:   "Read part files and say all that is wrong with them",
		Example: `  catchplate check examples/tide-gauge
  catchplate check workshop.hcl pulley.hcl --json`,
		Args: someFiles,
		RunE: func(_ *cobra.Command, paths []string) error {
			job, found, err := c.load(paths)
			if err != nil {
				return err
			}
			return c.show(newCheckAnswer(job, found))
		},
	}
}

// someFiles asks for at least one file or folder.
func someFiles(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return wrongUse("%s needs a file, or a folder with *.hcl files", cmd.CommandPath())
	}
	return nil
}

func newCheckAnswer(job *partspec.Job, found problems) checkAnswer {
	found.Schema = "catchplate-check-1"
	a := checkAnswer{problems: found, Workshop: job.Workshop.Name, BuiltIn: job.Workshop.BuiltIn, Parts: []partCheck{}}
	for _, p := range job.Parts {
		part := partCheck{Name: p.Name, Material: p.Material.ID, LengthMM: tidy(p.Length.Value), Quantity: p.Quantity, Features: []string{}}
		if p.Flat() {
			part.Outline = p.Outline.Kind
		}
		for _, f := range p.Features {
			part.Features = append(part.Features, f.Head().ID())
		}
		a.Parts = append(a.Parts, part)
	}
	return a
}

func (a checkAnswer) text(w io.Writer) {
	for _, p := range a.Parts {
		over := inMM(p.LengthMM) + " long"
		if p.Outline != "" {
			over = p.Outline + ", " + inMM(p.LengthMM) + " thick"
		}
		fmt.Fprintf(w, "%s: %s, %s, %d features, %d off\n", p.Name, p.Material, over, len(p.Features), p.Quantity)
	}
	workshop := a.Workshop
	if a.BuiltIn {
		workshop = "the built-in one, for no file gives one"
	}
	fmt.Fprintf(w, "workshop: %s\n", workshop)
}
