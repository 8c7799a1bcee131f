// Package instance reads ordering problems from files: the JSON form "ordering-1" (described in testdata/README.md of the package above) and
// sequential ordering problems in the TSPLIB form. In flow the bytes of a file, out flows a named sequence.Problem; a file that
// is not well formed is refused with the place and what was expected.
package instance

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"catchplate/planner/sequence"
)

// Instance is a problem with the name its file gives it.
type Instance struct {
	Name    string
	Problem *sequence.Problem
}

// MaxBytes is the largest file that is read.
const MaxBytes = 4 << 20

// Load reads a file. Its content decides the form: JSON starts with a brace.
func Load(path string) (Instance, error) {
	f, err := os.Open(path)
	if err != nil {
		return Instance{}, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, MaxBytes+1)) // not by the size: a device has none
	if err != nil {
		return Instance{}, err
	}
	if len(data) > MaxBytes {
		return Instance{}, fmt.Errorf("%s: the file is too long: at most %d bytes are read", path, MaxBytes)
	}
	inst, err := Parse(data)
	if err != nil {
		return Instance{}, fmt.Errorf("%s: %w", path, err)
	}
	if inst.Name == "" {
		inst.Name = strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	}
	return inst, nil
}

// Parse reads the content of a file.
func Parse(data []byte) (Instance, error) {
	read := parseSOP
	if bytes.HasPrefix(bytes.TrimSpace(data), []byte("{")) {
		read = parseOrdering
	}
	inst, err := read(data)
	if err != nil {
		return Instance{}, err
	}
	if err := inst.Problem.Validate(); err != nil {
		return Instance{}, err
	}
	return inst, nil
}
