// Command catchplate turns descriptions of metal parts into proved operation sheets for a small workshop.
//
// In flow arguments and part files; out flow results on stdout, talk on stderr, and files in the folder that was named. Each command is
// one file of this package: it reads its flags, calls one library function and prints. What holds after: nothing is written unless the
// command succeeded, every file is written whole, and the exit code is one of those below.
package main

import (
	"io"
	"os"
	"runtime/debug"

	"github.com/spf13/cobra"
)

// The exit codes. They are part of what the program promises: scripts rely on them.
const (
	exitGood     = 0
	exitProblems = 1 // the input has problems, or there is no plan for it
	exitUsage    = 2 // wrong use of the command
	exitFault    = 3 // our own fault: the replay refuted our plan, or the program failed
)

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(sparing)
	}
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// sparing lets the heap grow to five times what is in use before memory is gathered in: a run lives for a moment, and takes some 60 MB for a folder of parts so.
const sparing = 400

// run is the whole program without the process around it.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) (code int) {
	c := &cli{in: stdin, out: stdout, talk: stderr}
	defer c.recoverFault(&code)
	root := c.root()
	root.SetArgs(args)
	return c.finish(args, root.Execute())
}

// commands lists every command in the order in which help shows them.
func (c *cli) commands() []*cobra.Command {
	return []*cobra.Command{
		c.check(), c.plan(), c.sheet(), c.draw(), c.prove(), c.compare(), c.explain(), c.new(),
		c.speed(), c.thread(), c.fit(), c.taper(), c.holes(), c.steps(), c.grip(),
	}
}
