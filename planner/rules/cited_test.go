package rules_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/rules"
)

// Every ID that the planner's code names in a text of its own exists.
func TestCitedRulesExist(t *testing.T) {
	id := regexp.MustCompile(`\b[A-F]-[0-9]{2}[a-z]?\b`)
	cited := 0
	var unknown []string
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			text, ok := n.(*ast.BasicLit)
			if !ok || text.Kind != token.STRING {
				return true
			}
			for _, name := range id.FindAllString(text.Value, -1) {
				cited++
				if _, known := rules.All().Head(name); !known {
					unknown = append(unknown, path+" cites "+name)
				}
			}
			return true
		})
		return nil
	})
	require.NoError(t, err)
	assert.Empty(t, unknown, "no such rules")
	assert.Greater(t, cited, 50, "hardly anything is cited: the test looks in the wrong place")
}
