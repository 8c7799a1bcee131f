package partspec

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// Source is the text of one file, with the name that messages use for it.
type Source struct {
	Name string
	Text []byte
}

// Sources keeps the files of a run, so that messages can show their lines.
type Sources struct {
	sources []Source
}

// Names lists the files in the order in which they were read.
func (f *Sources) Names() []string {
	names := make([]string, len(f.sources))
	for i, s := range f.sources {
		names[i] = s.Name
	}
	return names
}

// Text is the source of a file; nil for a name that was not read.
func (f *Sources) Text(name string) []byte {
	for _, s := range f.sources {
		if s.Name == name {
			return s.Text
		}
	}
	return nil
}

// Line is one line of a file without its end, counted from 1; empty where there is none.
func (f *Sources) Line(name string, number int) string {
	rest := string(f.Text(name))
	for ; number > 1; number-- {
		var more bool
		if _, rest, more = strings.Cut(rest, "\n"); !more {
			return ""
		}
	}
	line, _, _ := strings.Cut(rest, "\n")
	return strings.TrimSuffix(line, "\r")
}

// Load reads files and folders as one job. A folder stands for its *.hcl files,
// sorted by name. The Job is nil when there is an error among the diagnostics;
// warnings may come along with a Job. The Sources are never nil.
func Load(paths []string) (*Job, *Sources, Diagnostics) {
	sources, problems := readAll(paths)
	return parseAll(sources, problems)
}

// Parse reads sources that are in memory already, in the given order.
func Parse(sources []Source) (*Job, *Sources, Diagnostics) { return parseAll(sources, nil) }

// parseAll parses what could be read. problems are those of what could not.
func parseAll(sources []Source, problems Diagnostics) (*Job, *Sources, Diagnostics) {
	files := &Sources{sources: sources}
	c := newChecker(files)
	c.found, c.unread = problems, problems.HasErrors()
	for _, s := range sources {
		body, found := parseSource(s)
		c.report(found...)
		if body == nil {
			c.unread = true
			continue
		}
		c.gather(body)
	}
	job := c.job()
	found := tidy(c.found)
	if found.HasErrors() {
		return nil, files, found
	}
	return job, files, found
}

// parseSource guards and parses one file. The body is nil when it cannot be
// trusted: what hcl recovers from a broken file would only cause more messages.
func parseSource(s Source) (*hclsyntax.Body, Diagnostics) {
	if found := guard(s.Name, s.Text); found.HasErrors() {
		return nil, found
	}
	file, found := hclsyntax.ParseConfig(s.Text, s.Name, hcl.InitialPos)
	if found.HasErrors() {
		return nil, reword(s.Text, found)
	}
	body, ok := file.Body.(*hclsyntax.Body)
	if !ok {
		return nil, Diagnostics{fault(Range{Filename: s.Name}, "The file is not HCL", "Write it in HCL's native syntax.")}
	}
	return body, nil
}

func readAll(paths []string) ([]Source, Diagnostics) {
	var sources []Source
	var found Diagnostics
	total := 0
	for _, path := range paths {
		names, err := hclFiles(path)
		if err != nil {
			found = append(found, unreadable(path, err))
		}
		for _, name := range names {
			if slices.ContainsFunc(sources, func(s Source) bool { return s.Name == name }) {
				continue
			}
			text, err := readBounded(name)
			if err != nil {
				found = append(found, unreadable(name, err))
				continue
			}
			total += len(text)
			if len(sources) == maxFiles || total > maxJobBytes {
				return sources, append(found, unreadable(name, fmt.Errorf("a job has at most %d files and %d KiB", maxFiles, maxJobBytes>>10)))
			}
			sources = append(sources, Source{name, text})
		}
	}
	return sources, found
}

// hclFiles turns a path into the files it stands for.
func hclFiles(path string) ([]string, error) {
	path = filepath.Clean(path)
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	if !info.IsDir() {
		return []string{path}, nil
	}
	entries, err := os.ReadDir(path) // sorted by name
	if err != nil {
		return nil, err
	}
	var names []string
	for _, e := range entries {
		if filepath.Ext(e.Name()) == ".hcl" && !e.IsDir() {
			names = append(names, filepath.Join(path, e.Name()))
		}
	}
	if len(names) == 0 {
		return nil, errors.New("the folder holds no *.hcl files")
	}
	return names, nil
}

// readBounded reads one byte more than a file may have, so that the guard sees
// that it is too large.
func readBounded(name string) ([]byte, error) {
	info, err := os.Stat(name)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, errors.New("it is not a plain file")
	}
	file, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return io.ReadAll(io.LimitReader(file, maxFileBytes+1))
}

func unreadable(path string, err error) *Diagnostic {
	reason := err.Error()
	if pathErr := new(fs.PathError); errors.As(err, &pathErr) {
		reason = pathErr.Err.Error()
	}
	return &Diagnostic{Severity: hcl.DiagError, Summary: fmt.Sprintf("Cannot read %s", path),
		Detail: fmt.Sprintf("The system says: %s. Name a file, or a folder with *.hcl files.", reason)}
}
