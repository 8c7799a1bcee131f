package main

import (
	_ "embed"
	"regexp"
	"strings"

	"github.com/spf13/cobra"
)

//go:embed starter.hcl
var starter string

// starterName is what the part is called in the starter file.
const starterName = "starter"

// partName is what a part may be called.
var partName = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9_]{0,39}$`)

func (c *cli) new() *cobra.Command {
	var output string
	var force bool
	cmd := &cobra.Command{
		Use:     "new [NAME]",
		GroupID: groupParts,
		Short:   "Print a part file to start from",
		Example: `  catchplate new
  catchplate new bearing_bush -o bearing_bush.hcl`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			name := starterName
			if len(args) > 0 {
				name = args[0]
			}
			if !partName.MatchString(name) {
				return wrongUse("a part cannot be called %q: begin with a letter, go on with letters, digits and _, 40 in all", name)
			}
			return c.writeFile(output, []byte(strings.ReplaceAll(starter, starterName, name)), force)
		},
	}
	outputFlags(cmd, &output, &force, "file to write (default, and -: standard output)")
	return cmd
}

// outputFlags adds the flags of a command that writes files.
func outputFlags(cmd *cobra.Command, output *string, force *bool, usage string) {
	cmd.Flags().StringVarP(output, "output", "o", "", usage)
	cmd.Flags().BoolVar(force, "force", false, "overwrite files that catchplate did not write")
}
