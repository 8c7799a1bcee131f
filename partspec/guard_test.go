package partspec_test

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/partspec"
	"catchplate/partspec/parttest"
)

// hostile builds files that stop or crash hcl's parser or its evaluation when
// nothing stands in front of them.
var hostile = map[string]string{
	"brackets":           "a = " + strings.Repeat("(", 100_000),
	"lists":              "a = " + strings.Repeat("[", 100_000),
	"objects":            "a = " + strings.Repeat("{a=", 60_000),
	"minus":              "a = " + strings.Repeat("-", 100_000) + "1",
	"not":                "a = " + strings.Repeat("!", 100_000) + "true",
	"calls":              "a = " + strings.Repeat("max(", 60_000),
	"templates":          "a = " + strings.Repeat(`"${`, 80_000),
	"blocks":             strings.Repeat("part \"a\" {\n", 20_000),
	"index":              "a = b" + strings.Repeat("[0]", 80_000),
	"splats":             "a = b" + strings.Repeat("[*]", 80_000),
	"steps":              "a = b" + strings.Repeat(".c", 100_000),
	"sum":                "a = 1" + strings.Repeat("+1", 120_000),
	"sum over lines":     "a = (1" + strings.Repeat("\n+1", 80_000) + ")",
	"conditions":         "a = " + strings.Repeat("true ? 1 : ", 20_000) + "1",
	"loops":              "a = [for x in [1,2] : [for y in [1,2] : x]]",
	"huge exponent":      "a = 1e999999999",
	"huge floor":         "a = abs(1e99999999)",
	"long number":        "a = " + strings.Repeat("9", 200_000),
	"heredoc":            "a = <<END\n" + strings.Repeat(" x\n", 60_000) + "END\n",
	"open heredoc":       "a = <<END\n" + strings.Repeat("x\n", 100_000),
	"template loop":      `a = "%{ for x in [1,2] }x%{ endfor }"`,
	"too large":          strings.Repeat("# comment\n", 30_000),
	"not UTF-8":          "a = \"\xff\xfe\"",
	"zero byte":          "a = \"\x00\"",
	"bad signs":          strings.Repeat("`", 200_000),
	"open quotes":        strings.Repeat("a = \"\n", 40_000),
	"unclosed quote":     "a = \"" + strings.Repeat("x", 200_000),
	"many attributes":    strings.Repeat("a = 1\n", 40_000),
	"one attribute":      "part \"a\" {\n" + strings.Repeat("length = 1\n", 20_000) + "}\n",
	"spread":             "a = max([1, 2]...)",
	"JSON":               `{"part": {"a": {"length": 1}}}`,
	"arrow":              "a = { for k, v in {} : k => v }",
	"comment after hash": "a = [ # for\n for x in [1] : x]",
}

func TestHostileFilesAreRefusedAtOnce(t *testing.T) {
	for name, text := range hostile {
		t.Run(name, func(t *testing.T) {
			start := time.Now()
			job, _, found := partspec.Parse([]partspec.Source{{Name: "bad.hcl", Text: []byte(text)}})
			assert.Nil(t, job)
			assert.True(t, found.HasErrors())
			assert.LessOrEqual(t, len(found), 200)
			assert.Less(t, time.Since(start), bound)
		})
	}
}

// bound is the longest that any file may take: the worst takes a tenth of it on
// two shared cores.
const bound = 5 * time.Second

// crowded are files that the guard passes, just under its bounds.
func crowded() map[string]string {
	part := func(body string) string {
		return "part \"p\" {\n material = \"brass\"\n length = 100\n stock \"bar\" {\n  diameter = 60\n }\n" + body + "}\n"
	}
	plate := func(body string) string {
		return "part \"p\" {\n material = \"brass\"\n thickness = 10\n stock \"sheet\" {\n  thickness = 10\n }\n" + body + "}\n"
	}
	repeat := func(n int, line func(i int) string) string {
		var b strings.Builder
		for i := range n {
			b.WriteString(line(i))
		}
		return b.String()
	}
	name := func(i int) string {
		return "f" + strings.Repeat("a", i%7) + string(rune('a'+i%26)) + strings.Repeat("b", i/26%30)
	}
	return map[string]string{
		"features": part(repeat(3_400, func(i int) string { return "spigot \"" + name(i) + "\" {\n diameter = 5\n length = 1\n}\n" })),
		"grooves": part("spigot \"s\" {\n diameter = 50\n}\n" + repeat(2_000, func(i int) string {
			return "groove \"" + name(i) + "\" {\n on = \"s\"\n at = 1\n width = 1\n depth = 1\n}\n"
		})),
		"chamfers": part("spigot \"s\" {\n diameter = 50\n}\n" + repeat(2_500, func(i int) string { return "chamfer \"" + name(i) + "\" {\n edge = \"s.left\"\n size = 1\n}\n" })),
		"holes on a face": part("spigot \"s\" {\n diameter = 50\n}\n" + repeat(1_500, func(i int) string {
			return "holes \"" + name(i) + "\" {\n circle = 30\n count = 200\n diameter = 0.1\n}\n"
		})),
		"cross holes": part("spigot \"s\" {\n diameter = 50\n}\n" + repeat(1_500, func(i int) string {
			return "cross_hole \"" + name(i) + "\" {\n on = \"s\"\n at = 10\n diameter = 1\n}\n"
		})),
		"holes in a plate": plate("outline \"disc\" {\n diameter = 400\n }\n" + repeat(250, func(i int) string {
			return "holes \"" + name(i) + "\" {\n circle = 3" + strconv.Itoa(i+10) + "\n count = 4\n diameter = 1\n}\n"
		})),
		"slots": plate("outline \"disc\" {\n diameter = 400\n }\n" + repeat(300, func(i int) string {
			return "slot \"" + name(i) + "\" {\n width = 1\n ends = [[0, " + strconv.Itoa(i) + "], [100, 0]]\n through = true\n}\n"
		})),
		"edges": plate("outline \"chain\" {\n start {\n at = [0, 0]\n}\n" + repeat(2_000, func(i int) string {
			return "line \"" + name(i) + "\" {\n to = [" + strconv.Itoa(i) + ", " + strconv.Itoa(i*i%97) + "]\n}\n"
		}) + "}\n"),
		"edges that close": plate("outline \"chain\" {\n start {\n at = [0, 0]\n}\n" + repeat(190, func(i int) string {
			return "arc \"" + name(i) + "\" {\n to = [" + strconv.Itoa(i+1) + ", 0]\n radius = 2\n}\n"
		}) + "line \"up\" {\n to = [190, 50]\n}\nline \"back\" {\n to = [0, 50]\n}\nline \"down\" {}\n}\n" + repeat(250, func(i int) string {
			return "holes \"" + name(i) + "\" {\n at = [[" + strconv.Itoa(i%180+5) + ", " + strconv.Itoa(i/180*10+10) + "]]\n diameter = 0.5\n}\n"
		})),
		"places":  plate("outline \"disc\" {\n diameter = 400\n }\nholes \"h\" {\n diameter = 1\n at = [" + strings.Repeat("[1, 2],", 9_000) + "[1, 2]]\n}\n"),
		"unknown": part(repeat(14_000, func(i int) string { return name(i) + " = 1\n" })),
		"parts":   repeat(4_500, func(i int) string { return "part \"" + name(i) + "\" {\n length = 1\n}\n" }),
		"fits":    repeat(3_000, func(i int) string { return "fit \"" + name(i) + "\" {\n hole = \"a.b\"\n}\n" }),
		"sums":    part("spigot \"s\" {\n diameter = " + strings.Repeat("(", 25) + "1" + strings.Repeat("+1)", 25) + "\n}\n"),
		"tools":   "workshop \"w\" {\n" + repeat(5_000, func(i int) string { return "tool \"files\" {}\n" }) + "}\n",
		"list":    "workshop \"w\" {\n tool \"reamers\" {\n sizes = [" + strings.Repeat("1,", 29_000) + "1]\n}\n}\n",
		"chain": repeat(400, func(i int) string {
			return "part \"" + "p" + strings.Repeat("i", i%50) + strings.Repeat("j", i/50) + "\" {\n length = part.p" + strings.Repeat("i", (i+1)%50) + strings.Repeat("j", (i+1)/50) + ".length\n}\n"
		}),
	}
}

func TestCrowdedFilesAreQuick(t *testing.T) {
	for name, text := range crowded() {
		t.Run(name, func(t *testing.T) {
			start := time.Now()
			_, _, found := partspec.Parse([]partspec.Source{{Name: "bad.hcl", Text: []byte(text)}})
			assert.LessOrEqual(t, len(found), 200)
			assert.Less(t, time.Since(start), bound)
		})
	}
}

// FuzzParse: whatever the bytes, no panic and no long wait; with a Job come no
// errors, and what is promised of a Job holds.
func FuzzParse(f *testing.F) {
	for _, pattern := range []string{"testdata/bad/*.hcl", "testdata/good/*.hcl", "../examples/*/*.hcl", "builtin/*.hcl"} {
		paths, err := filepath.Glob(pattern)
		require.NoError(f, err)
		for _, path := range paths {
			text, err := os.ReadFile(path)
			require.NoError(f, err)
			f.Add(text)
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		start := time.Now()
		job, sources, found := partspec.Parse([]partspec.Source{{Name: "fuzz.hcl", Text: text}})
		assert.Less(t, time.Since(start), bound)
		require.NotNil(t, sources)
		require.Equal(t, job == nil, found.HasErrors())
		for _, d := range found {
			require.NotNil(t, d.Subject)
			assert.NotEmpty(t, d.Summary)
			assert.NotEmpty(t, d.Detail, d.Summary)
		}
		if job == nil {
			return
		}
		require.NotNil(t, job.Workshop)
		for _, p := range job.Parts {
			if p.Flat() {
				checkFlat(t, p)
			} else {
				checkPart(t, p)
			}
		}
	})
}

func TestLoad(t *testing.T) {
	folder := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(folder, name)
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
		return path
	}
	b := write("b.hcl", brassPart("spigot \"s\" {\n diameter = part.q.length\n}"))
	write("a.hcl", strings.Replace(brassPart("spigot \"s\" {\n diameter = 10\n}"), `"p"`, `"q"`, 1))
	write("notes.txt", "no HCL at all")

	job, sources, found := partspec.Load([]string{folder, b})
	require.NotNil(t, job, found)
	assert.Equal(t, []string{filepath.Join(folder, "a.hcl"), b}, sources.Names())
	assert.Equal(t, "q", job.Parts[0].Name)
	assert.Equal(t, ` material = "brass"`, sources.Line(b, 2))
	assert.Empty(t, sources.Line(b, 99))
	assert.Nil(t, sources.Text("none"))

	for path, reason := range map[string]string{
		filepath.Join(folder, "none.hcl"): "no such file", t.TempDir(): "no *.hcl files", os.DevNull: "not a plain file",
	} {
		job, _, found := partspec.Load([]string{path})
		assert.Nil(t, job)
		require.Len(t, found, 1)
		assert.Contains(t, found[0].Detail, reason)
	}
}

// What a file that cannot be read may hold is not missed in the others.
func TestUnreadFilesCauseNoMoreMessages(t *testing.T) {
	job, _, found := partspec.Parse([]partspec.Source{
		{Name: "a.hcl", Text: []byte("part \"q\" {")},
		{Name: "b.hcl", Text: []byte(brassPart("spigot \"s\" {\n diameter = part.q.length\n}") + "fit \"f\" {\n hole = \"q.a\"\n shaft = \"p.s\"\n class = \"H7/g6\"\n}\n")},
	})
	assert.Nil(t, job)
	require.Len(t, found, 1)
	assert.Equal(t, "a.hcl", found[0].Subject.Filename)
}

// Messages come in one order, whatever the order of hcl's maps.
func TestMessagesAreInOrder(t *testing.T) {
	paths, err := filepath.Glob("testdata/bad/*.hcl")
	require.NoError(t, err)
	var first []string
	for range 5 {
		_, _, found := partspec.Load(paths)
		var texts []string
		for _, d := range found {
			texts = append(texts, parttest.Describe(d))
		}
		if first == nil {
			first = texts
		}
		require.Equal(t, first, texts)
	}
}
