package main

import (
	"bytes"
	"fmt"
	"io"
	"path"
	"path/filepath"

	"github.com/spf13/cobra"

	"catchplate/sheets"
)

// filesAnswer tells what was written.
type filesAnswer struct {
	Schema string   `json:"schema"`
	Folder string   `json:"folder"`
	Files  []string `json:"files"` // names below the folder, in printed order
}

const filesSchema = "catchplate-files-1"

func (c *cli) sheet() *cobra.Command {
	var output, paper string
	var force bool
	cmd := &cobra.Command{
		Use:     "sheet FILE... -o FOLDER",
		GroupID: groupParts,
		Short:   "Plan, prove, and write the operation sheets as Markdown, HTML, sketches and dial tables",
		Example: `  catchplate sheet examples/tide-gauge -o sheets-out
  catchplate sheet workshop.hcl pulley.hcl -o sheets --paper letter`,
		Args: someFiles,
		RunE: func(_ *cobra.Command, paths []string) error {
			return c.runSheet(paths, sheets.Options{Paper: paper}, output, force)
		},
	}
	outputFlags(cmd, &output, &force, "folder to write to; - prints the Markdown sheets")
	cmd.Flags().StringVar(&paper, "paper", "a4", "paper of the HTML pages: a4 or letter")
	cmd.PreRunE = func(*cobra.Command, []string) error { return checkPaper(paper) }
	need(cmd, "output")
	return cmd
}

func checkPaper(paper string) error {
	if paper != "a4" && paper != "letter" {
		return wrongUse("--paper is a4 or letter, not %q", paper)
	}
	return nil
}

func (c *cli) runSheet(paths []string, options sheets.Options, output string, force bool) error {
	job, _, err := c.load(paths)
	if err != nil {
		return err
	}
	p, err := c.planJob(job)
	if err != nil {
		return err
	}
	if refused := refusals(job, p); len(refused) > 0 {
		return c.refuse(report(refused, c.input))
	}
	rendered, err := sheets.Render(p, options)
	if err != nil {
		return fault("%v", err)
	}
	var files []outFile
	for _, f := range rendered {
		files = append(files, outFile{f.Name, f.Data})
	}
	return c.deliver(output, files, ".md", force)
}

// deliver writes files to a folder and names them; to "-" it prints those of one kind.
func (c *cli) deliver(output string, files []outFile, printed string, force bool) error {
	if output == "-" {
		var all bytes.Buffer
		for _, f := range files {
			if path.Ext(f.name) == printed {
				all.Write(f.data)
			}
		}
		_, err := c.out.Write(all.Bytes())
		return err
	}
	if err := c.writeFolder(output, files, force); err != nil {
		return err
	}
	a := filesAnswer{Schema: filesSchema, Folder: output}
	for _, f := range files {
		a.Files = append(a.Files, f.name)
	}
	return c.show(a)
}

// text names the pages to open: of sheets the HTML, of drawings the SVG.
func (a filesAnswer) text(w io.Writer) {
	for _, kind := range []string{".html", ".svg"} {
		named := false
		for _, name := range a.Files {
			if path.Ext(name) == kind {
				fmt.Fprintln(w, filepath.Join(a.Folder, name))
				named = true
			}
		}
		if named {
			return
		}
	}
}
