package main

import (
	"flag"
	"os"
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
	})
}
