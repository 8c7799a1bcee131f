package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"catchplate/planner/plan"
)

// documents lists what each command prints with --json.
var documents = []struct {
	command  string
	document any
}{
	{"speed", speedAnswer{}},
	{"thread", threadAnswer{}},
	{"steps", stepsAnswer{}},
	{"grip", gripAnswer{}},
	{"fit", fitAnswer{}},
	{"taper", taperAnswer{}},
	{"holes", holesAnswer{}},
	{"check", checkAnswer{}},
	{"plan", plan.Plan{}},
	{"sheet and draw", filesAnswer{}},
	{"prove", proveAnswer{}},
	{"compare", plan.Comparison{}},
	{"explain", explainAnswer{}},
	{"explain --order", orderAnswer{}},
	{"any command, when the input has problems", problems{}},
	{"any command, when it fails otherwise", errorDocument{}},
}

const jsonDocHead = `# What --json prints

Every command takes --json and then prints one JSON document on stdout. Its key ` + "`schema`" + ` names the form; the number at the end changes when
a key goes or changes its meaning, and new keys may come at any time. Lengths are millimetres, angles degrees, forces newtons, stresses
MPa, times minutes, unless the key says otherwise. This file is made from the program's own types by
` + "`go test ./cmd/catchplate -update`" + `, and a test fails when it is stale.
`

func TestJSONIsDocumented(t *testing.T) {
	w := docWriter{t: t, comments: make(map[string]string), told: make(map[reflect.Type]bool)}
	w.WriteString(jsonDocHead)
	for _, d := range documents {
		kind := reflect.TypeOf(d.document)
		fmt.Fprintf(&w, "\n## %s\n", d.command)
		w.tell(kind)
	}
	if *update {
		require.NoError(t, os.WriteFile("json.md", []byte(w.String()), 0o644))
	}
	committed, err := os.ReadFile("json.md")
	require.NoError(t, err)
	sameText(t, "cmd/catchplate/json.md", string(committed), w.String())
}

// docWriter writes a table of keys for each type, with the comments that stand at the fields.
type docWriter struct {
	strings.Builder
	t        *testing.T
	comments map[string]string // "package.Type.Field" -> comment
	told     map[reflect.Type]bool
}

// tell writes the table of a struct and then of the structs within it, each once.
func (w *docWriter) tell(kind reflect.Type) {
	w.told[kind] = true
	w.read(kind)
	if about := w.comments[kind.PkgPath()+"."+kind.Name()]; about != "" { // "threadAnswer is ...", as Go has it
		fmt.Fprintf(w, "\nIt %s\n", about)
	}
	fmt.Fprint(w, "\n| key | value | what |\n| --- | --- | --- |\n")
	inner := w.keys(kind)
	for _, in := range inner {
		if !w.told[in] {
			fmt.Fprintf(w, "\n### %s\n", typeName(in))
			w.tell(in)
		}
	}
}

// keys writes a line for each field and returns the structs that they hold.
func (w *docWriter) keys(kind reflect.Type) (inner []reflect.Type) {
	for i := range kind.NumField() {
		field := kind.Field(i)
		if field.Anonymous {
			w.read(field.Type)
			inner = append(inner, w.keys(field.Type)...)
			continue
		}
		key, options, _ := strings.Cut(field.Tag.Get("json"), ",")
		require.NotEmpty(w.t, key, "%s.%s has no JSON key", kind, field.Name)
		word, of := valueWord(field.Type)
		if strings.Contains(options, "omitempty") {
			word += ", may be missing"
		}
		if of != nil {
			inner = append(inner, of)
		}
		comment := w.comments[kind.PkgPath()+"."+kind.Name()+"."+field.Name]
		if key == "schema" {
			comment = "the name of this form"
		}
		fmt.Fprintf(w, "| `%s` | %s | %s |\n", key, word, strings.ReplaceAll(comment, "|", "\\|"))
	}
	return inner
}

// valueWord names a value for people, and the struct it holds.
func valueWord(kind reflect.Type) (word string, of reflect.Type) {
	switch kind.Kind() {
	case reflect.Slice:
		word, of = valueWord(kind.Elem())
		return "list of " + word, of
	case reflect.Pointer:
		word, of = valueWord(kind.Elem())
		return word + " or null", of
	case reflect.Struct:
		return typeName(kind), kind
	case reflect.String:
		return "text", nil
	case reflect.Bool:
		return "true or false", nil
	case reflect.Int, reflect.Int64:
		return "whole number", nil
	}
	return "number", nil
}

func typeName(kind reflect.Type) string {
	return strings.ToLower(strings.TrimSuffix(kind.Name(), "Answer"))
}

// read collects the comments of the package that declares a type.
func (w *docWriter) read(kind reflect.Type) {
	dir := filepath.Join(repoRoot, strings.TrimPrefix(kind.PkgPath(), modulePath))
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	require.NoError(w.t, err)
	for _, file := range files {
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ParseComments|parser.SkipObjectResolution)
		require.NoError(w.t, err)
		for _, declaration := range parsed.Decls {
			if types, ok := declaration.(*ast.GenDecl); ok && types.Tok == token.TYPE {
				w.collect(kind.PkgPath(), types)
			}
		}
	}
}

func (w *docWriter) collect(pkg string, types *ast.GenDecl) {
	for _, spec := range types.Specs {
		named := spec.(*ast.TypeSpec)
		about := commentText(named.Doc, types.Doc)
		w.comments[pkg+"."+named.Name.Name] = strings.TrimPrefix(about, named.Name.Name+" ")
		structure, ok := named.Type.(*ast.StructType)
		if !ok {
			continue
		}
		for _, field := range structure.Fields.List {
			for _, name := range field.Names {
				text := strings.TrimPrefix(commentText(field.Comment, field.Doc), name.Name+" is ")
				w.comments[pkg+"."+named.Name.Name+"."+name.Name] = text
			}
		}
	}
}

// commentText joins comments into one line.
func commentText(groups ...*ast.CommentGroup) string {
	var words []string
	for _, g := range slices.Compact(groups) {
		words = append(words, strings.Fields(g.Text())...)
	}
	return strings.Join(words, " ")
}
