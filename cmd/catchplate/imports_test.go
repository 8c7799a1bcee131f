package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// importRule says what one package, or all packages under a folder, may import besides the standard library.
type importRule struct {
	pkg   string // below the module; "x/..." means x and all below it
	may   []string
	tests []string // what its tests may import as well
}

// The libraries, by the name used in the table.
var libraries = map[string]string{
	"hcl":         "github.com/hashicorp/hcl/v2",
	"cty":         "github.com/zclconf/go-cty",
	"goldmark":    "github.com/yuin/goldmark",
	"cobra":       "github.com/spf13/cobra",
	"pflag":       "github.com/spf13/pflag",
	"levenshtein": "github.com/agext/levenshtein",
	"term":        "golang.org/x/term",
	"gonum":       "gonum.org/v1/gonum",
	"rapid":       "pgregory.net/rapid",
	"testify":     "github.com/stretchr/testify",
}

// testLibraries serve every test and nothing else.
var testLibraries = []string{"github.com/stretchr/testify", "pgregory.net/rapid", "github.com/rogpeppe/go-internal", "partspec/parttest"}

// importRules is the policy, and DEVELOPERS.md says why. The first rule that fits a package counts. The replay has its own row so
// that it can never lean on the code whose plans it judges.
var importRules = []importRule{
	{pkg: "partspec/units"},
	{pkg: "partspec/parttest", may: []string{"hcl", "partspec", "partspec/units", "planner/tables", "rapid", "testify"}}, // only tests import it
	{pkg: "partspec/...", may: []string{"hcl", "cty", "levenshtein", "partspec", "partspec/units", "planner/tables", "planner/plane"}},
	{pkg: "planner/parallel"},
	{pkg: "planner/plan", may: []string{"partspec/units"}},
	{pkg: "planner/tables", may: []string{"partspec/units"}},
	{pkg: "planner/solid", may: []string{"partspec/units"}},
	{pkg: "planner/plane", may: []string{"partspec/units"}},
	{pkg: "planner/mechanics", may: []string{"partspec/units", "gonum"}},
	{pkg: "planner/numbers/...", may: []string{"partspec/units", "planner/tables", "planner/plan", "planner/mechanics", "planner/numbers/..."}},
	{pkg: "planner/shape", may: []string{"partspec", "partspec/units", "planner/solid", "planner/plane", "planner/plan", "gonum"}},
	{pkg: "planner/sequence/instance", may: []string{"planner/sequence"}},
	{pkg: "planner/sequence/...", tests: []string{"planner/sequence/..."}},
	{pkg: "planner/replay", may: []string{"partspec", "partspec/units", "planner/parallel", "planner/solid", "planner/plane", "planner/tables", "planner/plan", "planner/mechanics"},
		tests: []string{"planner", "planner/numbers/steps"}},
	{pkg: "planner/rules", may: []string{"partspec", "partspec/units", "planner/plane", "planner/shape", "planner/numbers/...", "planner/tables", "planner/plan", "planner/mechanics"}, tests: []string{"planner/solid"}},
	{pkg: "planner/process", may: []string{"partspec", "partspec/units", "planner/parallel", "planner/solid", "planner/plane", "planner/shape", "planner/numbers/...", "planner/tables", "planner/plan", "planner/rules", "planner/mechanics"}},
	{pkg: "planner/holding", may: []string{"partspec", "partspec/units", "planner/solid", "planner/plane", "planner/shape", "planner/numbers/...", "planner/tables", "planner/plan", "planner/rules", "planner/mechanics", "planner/process"}},
	{pkg: "planner", may: []string{"partspec", "partspec/units", "planner/..."}},
	{pkg: "planner/drawing", may: []string{"partspec", "partspec/units", "planner/plan", "planner/plane", "planner/shape", "planner/tables"}},
	{pkg: "sheets/...", may: []string{"planner/parallel", "planner/plan", "partspec/units", "goldmark", "sheets/..."}},
	{pkg: "cmd/...", may: []string{"partspec", "partspec/units", "planner/...", "planner", "sheets/...", "hcl", "cty", "cobra", "pflag", "levenshtein", "term"}},
	{pkg: "examples", may: nil},
}

const modulePath = "catchplate"

func TestImportsKeepToTheTable(t *testing.T) {
	used := make(map[string]bool)
	for _, file := range goFiles(t) {
		pkg := path.Dir(file)
		rule, ok := ruleFor(pkg)
		if !assert.True(t, ok, "package %s has no row in the table of imports", pkg) {
			continue
		}
		used[rule.pkg] = true
		for _, imported := range importsOf(t, file) {
			assert.True(t, rule.allows(imported, strings.HasSuffix(file, "_test.go")), "%s may not import %s", file, imported)
		}
	}
}

func ruleFor(pkg string) (importRule, bool) {
	i := slices.IndexFunc(importRules, func(r importRule) bool { return fits(r.pkg, pkg) })
	if i < 0 {
		return importRule{}, false
	}
	return importRules[i], true
}

// fits says whether a path is the one that a pattern names, or below it.
func fits(pattern, name string) bool {
	if folder, below := strings.CutSuffix(pattern, "/..."); below {
		return name == folder || strings.HasPrefix(name, folder+"/")
	}
	return name == pattern
}

func (r importRule) allows(imported string, isTest bool) bool {
	own := fits(strings.TrimSuffix(r.pkg, "/..."), imported)
	if own || r.listed(r.may, imported) {
		return true
	}
	return isTest && (r.listed(r.tests, imported) || r.listed(testLibraries, imported))
}

func (r importRule) listed(list []string, imported string) bool {
	return slices.ContainsFunc(list, func(name string) bool {
		if library, ok := libraries[name]; ok {
			name = library + "/..."
		} else if strings.Contains(strings.Split(name, "/")[0], ".") {
			name += "/..."
		}
		return fits(name, imported)
	})
}

// importsOf lists what a file imports from outside the standard library; our own packages without the module's name.
func importsOf(t *testing.T, file string) []string {
	parsed, err := parser.ParseFile(token.NewFileSet(), filepath.Join(repoRoot, file), nil, parser.ImportsOnly)
	require.NoError(t, err)
	var list []string
	for _, spec := range parsed.Imports {
		name, err := strconv.Unquote(spec.Path.Value)
		require.NoError(t, err)
		if own, ok := strings.CutPrefix(name, modulePath+"/"); ok {
			list = append(list, own)
		} else if strings.Contains(strings.Split(name, "/")[0], ".") {
			list = append(list, name)
		}
	}
	return list
}

// repoRoot is the folder where go.mod lies.
var repoRoot = func() string {
	dir, err := filepath.Abs("../..")
	if err != nil {
		panic(err)
	}
	return dir
}()

// goFiles lists every Go file of the repository, below its root.
func goFiles(t *testing.T) []string {
	var list []string
	root := os.DirFS(repoRoot)
	err := fs.WalkDir(root, ".", func(name string, entry fs.DirEntry, err error) error {
		if entry != nil && entry.IsDir() && name != "." && (strings.HasPrefix(entry.Name(), ".") || entry.Name() == "testdata") {
			return fs.SkipDir
		}
		if strings.HasSuffix(name, ".go") {
			list = append(list, name)
		}
		return err
	})
	require.NoError(t, err)
	require.NotEmpty(t, list)
	return list
}
