package main

import (
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/agext/levenshtein"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// cli is one run of the program: its streams and the flags that every command has.
type cli struct {
	in    io.Reader
	out   io.Writer // results
	talk  io.Writer // everything else
	json  bool
	color string

	input *sources // of the files that were read
}

// failure ends a command with an exit code. An empty text says that the reader has been told already.
type failure struct {
	code int
	text string
}

func (f *failure) Error() string { return f.text }

func problem(format string, args ...any) error {
	return &failure{exitProblems, fmt.Sprintf(format, args...)}
}

// asProblem makes an error of a library a problem with the input; a failure stays what it is.
func asProblem(err error) error {
	if f := new(failure); errors.As(err, &f) {
		return f
	}
	return problem("%v", err)
}

func wrongUse(format string, args ...any) error {
	return &failure{exitUsage, fmt.Sprintf(format, args...)}
}

func fault(format string, args ...any) error {
	return &failure{exitFault, fmt.Sprintf(format, args...)}
}

// The groups of commands in help.
const (
	groupParts = "parts"
	groupBench = "bench"
)

const about = `catchplate reads parts described in HCL files and plans how to make them on a small lathe: the order of the operations, how to hold the
part for each, tools, speeds and dial readings. A plan is replayed on a model of the part, and proved, before it is printed.

Exit codes: 0 good, 1 problems in the input or no plan, 2 wrong use, 3 a fault of the program's own.`

func (c *cli) root() *cobra.Command {
	cobra.EnableCommandSorting = false // help lists commands in written order
	root := &cobra.Command{
		Use:           "catchplate",
		Short:         "Plan and prove how to make metal parts on a small lathe",
		Long:          about,
		Version:       version(),
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          cobra.ArbitraryArgs,
		RunE:          noCommand,
	}
	root.SetIn(c.in)
	root.SetOut(c.out)
	root.SetErr(c.talk)
	root.SetVersionTemplate("{{.Version}}\n")
	root.SetFlagErrorFunc(flagError)
	root.PersistentFlags().BoolVar(&c.json, "json", false, "print one JSON document instead of text (its keys: json.md)")
	root.PersistentFlags().StringVar(&c.color, "color", "auto", "colour the messages: auto, always or never")
	root.PersistentPreRunE = func(*cobra.Command, []string) error { return checkColor(c.color) }
	root.AddGroup(&cobra.Group{ID: groupParts, Title: "Parts:"}, &cobra.Group{ID: groupBench, Title: "Bench sums:"})
	root.AddCommand(c.commands()...)
	root.SetHelpCommand(help())
	return root
}

// noCommand answers a run without a command, or with one that does not exist.
func noCommand(root *cobra.Command, args []string) error {
	if len(args) == 0 {
		root.SetOut(root.ErrOrStderr())
		_ = root.Help()
		return &failure{code: exitUsage}
	}
	return unknownCommand(root, args[0])
}

func unknownCommand(root *cobra.Command, name string) error {
	var names []string
	for _, sub := range root.Commands() {
		names = append(names, sub.Name())
	}
	return wrongUse("there is no command %q%s", name, didYouMean(name, names))
}

func help() *cobra.Command {
	return &cobra.Command{
		Use:   "help [COMMAND]",
		Short: "Tell about a command",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			root := cmd.Root()
			if len(args) == 0 {
				return root.Help()
			}
			for _, sub := range root.Commands() {
				if sub.Name() == args[0] {
					return sub.Help()
				}
			}
			return unknownCommand(root, args[0])
		},
	}
}

// flagError words what is wrong with a flag, and names the nearest one.
func flagError(cmd *cobra.Command, err error) error {
	var missing *pflag.NotExistError
	if !errors.As(err, &missing) {
		return wrongUse("%v", err)
	}
	name := missing.GetSpecifiedName()
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, "--"+f.Name) })
	return wrongUse("%s has no flag --%s%s", cmd.CommandPath(), name, didYouMean("--"+name, names))
}

// didYouMean names the nearest name, or nothing when none is near.
func didYouMean(name string, names []string) string {
	if near := nearest(name, names); len(near) > 0 {
		return fmt.Sprintf("; did you mean %s?", near[0])
	}
	return ""
}

// nearest lists the names at most two edits, or a third of the length, away: nearest first.
func nearest(name string, names []string) []string {
	most := max(2, len(name)/3)
	distance := func(to string) int {
		return levenshtein.Distance(strings.ToLower(name), strings.ToLower(to), nil)
	}
	near := slices.DeleteFunc(slices.Clone(names), func(to string) bool { return distance(to) > most })
	slices.SortStableFunc(near, func(a, b string) int { return distance(a) - distance(b) })
	return near
}

// finish says what went wrong and turns it into the exit code. An error that is not a failure comes from reading the arguments.
func (c *cli) finish(args []string, err error) int {
	if err == nil {
		return exitGood
	}
	var f *failure
	if !errors.As(err, &f) {
		f = &failure{exitUsage, err.Error()}
	}
	if f.text == "" {
		return f.code
	}
	fmt.Fprintf(c.talk, "catchplate: %s\n", f.text)
	if f.code == exitUsage {
		fmt.Fprintln(c.talk, "catchplate help, and catchplate COMMAND --help, tell how to use it.")
	}
	if c.json || slices.Contains(args, "--json") {
		_ = writeJSON(c.out, errorDocument{Schema: errorSchema, Error: f.text, Exit: f.code})
	}
	return f.code
}

const errorSchema = "catchplate-error-1"

// errorDocument is what --json prints when a command fails and has no better document to print.
type errorDocument struct {
	Schema string `json:"schema"`
	Error  string `json:"error"` // the message, as on stderr
	Exit   int    `json:"exit"`  // the exit code
}

// recoverFault turns a panic into exit code 3: whatever the input was, a panic is a fault of the program.
func (c *cli) recoverFault(code *int) {
	if p := recover(); p != nil {
		fmt.Fprintf(c.talk, "catchplate: a fault of the program, please report it with the input: %v\n%s", p, debug.Stack())
		*code = exitFault
	}
}

// version names the program, the commit when the build knows it, and the Go version.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "catchplate"
	}
	text := "catchplate " + info.Main.Version
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" {
			text += " " + s.Value
		}
	}
	return text + " " + info.GoVersion
}
