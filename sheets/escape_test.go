package sheets

import (
	"bytes"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"catchplate/planner/plan"
	"catchplate/sheets/internal/fixture"
)

// hostile are words that would act as markup somewhere.
var hostile = []string{
	`<script>alert(1)</script>`, `<img src=x onerror=alert(1)>`, "a | b | c", "**bold** _it_ `code`", "[x](javascript:alert(1))", "![x](http://example.org/x.png)",
	"# heading", "- item", "1. item", "> quote", "line one\n\n# line two", "</style><script>", "&lt;b&gt; &amp;", `"; } body{display:none} /*`, "```\ncode", "***", "a\\", "<!-- -->", "~~x~~", "=", "::: x",
}

// words that choose a way of printing must stay.
var enumerations = map[string]bool{
	"Setup.FreeEnd": true, "Grip.Kind": true, "Grip.Trust": true, "Setup.HoldingKind": true, "Operation.Process": true, "Zero.Dial": true, "Line.Reads": true, "Dim.Kind": true, "Reading.Dial": true,
	"Setup.MachineKind": true, "Crossed.Kind": true, "Crossed.On": true, "Bed.Kind": true,
}

// templateLink is the one link of a sheet: to a file of its own.
var templateLink = regexp.MustCompile(`<a href="[A-Za-z0-9_-]+-template\.svg">[A-Za-z0-9_-]+-template\.svg</a>`)

func poisoned(with string) *plan.Plan {
	p := fixture.Job()
	p.Parts = append(append(p.Parts, fixture.Cover().Parts...), fixture.Saddle().Parts...)
	visitPlan(p, func(field string, v reflect.Value) {
		if v.Kind() == reflect.String && !enumerations[field] {
			v.SetString(with)
		}
	})
	return p
}

func TestHostileWordsStayWords(t *testing.T) {
	tag := regexp.MustCompile(`</?([a-zA-Z0-9]+)`)
	known := map[string]int{}
	for _, m := range tag.FindAllStringSubmatch(bodies(t, poisoned("harmless")), -1) {
		known[m[1]]++
	}
	for _, words := range hostile {
		body := bodies(t, poisoned(words))
		for _, m := range tag.FindAllStringSubmatch(body, -1) {
			assert.Contains(t, known, m[1], "%q makes an element", words)
		}
		assert.Equal(t, strings.Count(bodies(t, poisoned("harmless")), "<td"), strings.Count(body, "<td"), "%q breaks a table", words)
		assert.NotContains(t, body, "javascript:alert(1)\"")
		assert.Equal(t, strings.Count(body, "<a "), len(templateLink.FindAllString(body, -1)), "%q makes a link", words)
	}
}

// bodies are all sheets' HTML below the head, without the index, whose links are its own.
func bodies(t *testing.T, p *plan.Plan) string {
	var out strings.Builder
	files, err := Render(p, Options{})
	require.NoError(t, err)
	for _, f := range files {
		if strings.HasSuffix(f.Name, ".html") && f.Name != "index.html" {
			_, body, _ := strings.Cut(string(f.Data), "<body>")
			out.WriteString(body)
		}
	}
	return out.String()
}

func TestHeadKeepsHostileNamesIn(t *testing.T) {
	for _, words := range hostile {
		files, err := Render(poisoned(words), Options{})
		require.NoError(t, err)
		for _, f := range files {
			if !strings.HasSuffix(f.Name, ".html") {
				continue
			}
			head, _, found := strings.Cut(string(f.Data), "</head>")
			require.True(t, found)
			assert.Equal(t, 1, strings.Count(head, "</style>"), "%q ends the stylesheet", words)
			assert.NotContains(t, head, "<script")
			assert.Contains(t, head, securityPolicy)
			assert.NotContains(t, string(f.Data), "<script")
		}
	}
}

// What esc has made safe reads back, through Markdown, as the words that went in.
func TestEscReadsBack(t *testing.T) {
	m := goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList, extension.Strikethrough))
	plain := func(text string) string { return strings.Join(strings.Fields(text), " ") }
	unescape := strings.NewReplacer("&lt;", "<", "&gt;", ">", "&quot;", `"`, "&amp;", "&")
	for _, words := range append(hostile, "Ø24 p6 (24.022 to 24.035)", "three_jaw", "12.", "3) x", "+x", "a*b", "[ ] x", "https://example.org") {
		var out bytes.Buffer
		require.NoError(t, m.Convert([]byte(string(esc(words))+"\n"), &out))
		assert.Equal(t, "<p>"+plain(words)+"</p>", unescape.Replace(strings.TrimSpace(out.String())), "%q", words)
	}
}

func FuzzEsc(f *testing.F) {
	m := goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList))
	for _, words := range hostile {
		f.Add(words)
	}
	f.Fuzz(func(t *testing.T, words string) {
		var out bytes.Buffer
		require.NoError(t, m.Convert([]byte("x "+string(esc(words))+"\n"), &out))
		assert.Equal(t, 1, strings.Count(out.String(), "<p>"))
		assert.Equal(t, 2, strings.Count(out.String(), "<"), "%q", out.String())
	})
}
