package mechanics

import (
	"flag"
	"os"
	"testing"
)

// TestMain fixes the seed of all property tests, unless the command line names one, and keeps failures out of testdata.
func TestMain(m *testing.M) {
	flag.Parse()
	named := false
	flag.Visit(func(f *flag.Flag) { named = named || f.Name == "rapid.seed" })
	if !named {
		if err := flag.Set("rapid.seed", "20261125"); err != nil {
			panic(err)
		}
	}
	if err := flag.Set("rapid.nofailfile", "true"); err != nil {
		panic(err)
	}
	os.Exit(m.Run())
}
