package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// outFile is a file to be written below an output folder; its name has forward slashes.
type outFile struct {
	name string
	data []byte
}

// manifestName is the list of what we wrote into a folder, in the form that sha256sum -c reads. A file is ours while the list has its
// name and its sum: one that was there before, or was edited since, is not overwritten without --force.
const manifestName = "catchplate.sha256"

// manifest maps names to sums.
type manifest map[string]string

func sum(data []byte) string {
	s := sha256.Sum256(data)
	return hex.EncodeToString(s[:])
}

// readManifest reads the list of a folder; a folder without one has an empty list, and lines of another form are passed over.
func readManifest(dir string) (manifest, error) {
	text, err := os.ReadFile(filepath.Join(dir, manifestName))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	list := make(manifest)
	for line := range strings.Lines(string(text)) {
		if hash, name, ok := strings.Cut(strings.TrimRight(line, "\r\n"), "  "); ok {
			list[name] = hash
		}
	}
	return list, nil
}

func (m manifest) text() []byte {
	var out bytes.Buffer
	for _, name := range slices.Sorted(maps.Keys(m)) {
		fmt.Fprintf(&out, "%s  %s\n", m[name], name)
	}
	return out.Bytes()
}

// writeFolder writes files below dir: all of them or, when one would overwrite what is not ours, none. Unchanged files are not touched.
func (c *cli) writeFolder(dir string, files []outFile, force bool) error {
	owned, err := readManifest(dir)
	if err != nil {
		return wrongUse("cannot write to %s: %v", dir, err)
	}
	changed, foreign, err := compareFiles(dir, files, owned)
	if err != nil {
		return wrongUse("cannot write to %s: %v", dir, err)
	}
	if len(foreign) > 0 && !force {
		return wrongUse("nothing was written: %s in %s would be overwritten, and catchplate did not write it, or it was edited since; "+
			"move it away, name another folder, or give --force", strings.Join(foreign, ", "), dir)
	}
	for _, f := range files {
		owned[f.name] = sum(f.data)
	}
	for _, f := range append(changed, outFile{manifestName, owned.text()}) {
		if err := writeWhole(filepath.Join(dir, filepath.FromSlash(f.name)), f.data); err != nil {
			return wrongUse("cannot write to %s: %v", dir, err)
		}
	}
	fmt.Fprintf(c.talk, "%s: %d written, %d unchanged\n", dir, len(changed), len(files)-len(changed))
	return nil
}

// compareFiles sorts out which files differ from what is there, and which of those are not ours to overwrite.
func compareFiles(dir string, files []outFile, owned manifest) (changed []outFile, foreign []string, err error) {
	for _, f := range files {
		if !filepath.IsLocal(filepath.FromSlash(f.name)) {
			return nil, nil, fmt.Errorf("%q is not a name below the folder", f.name)
		}
		there, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(f.name)))
		switch {
		case errors.Is(err, fs.ErrNotExist):
			changed = append(changed, f)
		case err != nil:
			return nil, nil, err
		case bytes.Equal(there, f.data):
		default:
			changed = append(changed, f)
			if owned[f.name] != sum(there) {
				foreign = append(foreign, f.name)
			}
		}
	}
	return changed, foreign, nil
}

// writeWhole puts a file in place in one step, so that a reader finds the old one or the new one and never a part. The folder is made
// when it is not there; a file with these very bytes is left alone.
func writeWhole(name string, data []byte) (err error) {
	if there, err := os.ReadFile(name); err == nil && bytes.Equal(there, data) {
		return nil
	}
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		return err
	}
	beside, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+"-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = os.Remove(beside.Name())
		}
	}()
	_, err = beside.Write(data)
	err = errors.Join(err, beside.Chmod(0o644), beside.Sync(), beside.Close())
	if err != nil {
		return err
	}
	return os.Rename(beside.Name(), name)
}

// writeFile writes one file that was named, or stdout for "-". A file that is there already is overwritten only with force.
func (c *cli) writeFile(name string, data []byte, force bool) error {
	if name == "" || name == "-" {
		_, err := c.out.Write(data)
		return err
	}
	there, err := os.ReadFile(name)
	if err == nil && !bytes.Equal(there, data) && !force {
		return wrongUse("%s is there already: name another file, or give --force", name)
	}
	if err := writeWhole(name, data); err != nil {
		return wrongUse("cannot write: %v", err)
	}
	fmt.Fprintf(c.talk, "%s written\n", name)
	return nil
}
