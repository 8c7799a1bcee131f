package main

import (
	"github.com/spf13/cobra"

	"catchplate/partspec"
	"catchplate/planner/drawing"
	"catchplate/planner/plan"
	"catchplate/sheets/draw"
	"catchplate/sheets/svg"
)

func (c *cli) draw() *cobra.Command {
	var output string
	var force bool
	cmd := &cobra.Command{
		Use:     "draw FILE... -o FOLDER",
		GroupID: groupParts,
		Short:   "Draw the parts as they were understood, to hold against the paper drawing",
		Example: `  catchplate draw examples/tide-gauge -o drawings
  catchplate draw pulley.hcl -o - > pulley.svg`,
		Args: someFiles,
		RunE: func(_ *cobra.Command, paths []string) error { return c.runDraw(paths, output, force) },
	}
	outputFlags(cmd, &output, &force, "folder to write to; - prints the drawing when there is one part")
	need(cmd, "output")
	return cmd
}

func (c *cli) runDraw(paths []string, output string, force bool) error {
	job, _, err := c.load(paths)
	if err != nil {
		return err
	}
	if output == "-" && len(job.Parts) != 1 {
		return wrongUse("-o - prints one drawing, and the files hold %d parts: name a folder", len(job.Parts))
	}
	var files []outFile
	for _, p := range job.Parts {
		name := p.Name + "-drawing" // as a sheet calls it
		files = append(files, outFile{name + ".svg", drawPart(p, name)})
	}
	return c.deliver(output, files, ".svg", force)
}

// drawPart draws what a plan would begin with, without planning.
func drawPart(p *partspec.Part, name string) []byte {
	drawn := plan.Part{
		Name: p.Name, Material: p.Material.ID, MaterialName: p.Material.Name, Quantity: p.Quantity, DrawnInInch: p.Inches,
		LengthMM: float64(p.Length.Value), Drawing: drawing.Of(p),
	}
	return svg.File(draw.Part(name, &drawn))
}
