package main

import (
	"errors"
	"flag"
	"os"
	"os/exec"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// update rewrites what the tests compare with: scripts, json.md and the committed examples. Read the difference before committing it.
var update = flag.Bool("update", false, "rewrite scripts, json.md and committed examples")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"catchplate": func() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) },
	})
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       *update,
		Cmds:                map[string]func(*testscript.TestScript, bool, []string){"exits": exits},
	})
}

// exits is a script command: "exits 2 catchplate thrad" runs a program and asks for that exit code and no other.
func exits(ts *testscript.TestScript, negated bool, args []string) {
	if negated || len(args) < 2 {
		ts.Fatalf("usage: exits CODE PROGRAM [ARGS...]")
	}
	code := 0
	err := ts.Exec(args[1], args[2:]...)
	if exit := new(exec.ExitError); errors.As(err, &exit) {
		code = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if strconv.Itoa(code) != args[0] {
		ts.Fatalf("exit code %d, not %s", code, args[0])
	}
}
