package sheets

import (
	"bytes"
	"encoding/csv"
	"flag"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
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

var update = flag.Bool("update", false, "write the golden files anew")

func render(t *testing.T, p *plan.Plan) map[string]string {
	t.Helper()
	files, err := Render(p, Options{})
	require.NoError(t, err)
	out := map[string]string{}
	for _, f := range files {
		require.NotContains(t, out, f.Name, "two files of one name")
		out[f.Name] = string(f.Data)
	}
	return out
}

func TestGolden(t *testing.T) {
	files := render(t, fixture.Bush())
	for _, p := range []*plan.Plan{fixture.Cover(), fixture.Saddle()} {
		for name, text := range render(t, p) {
			files[name] = text
		}
	}
	for _, name := range []string{"guide-bush.md", "guide-bush-dials.csv", "guide-bush-drawing.svg", "guide-bush-setup-2.svg", "cover_plate.md", "cover_plate-holes.csv",
		"cover_plate-drawing.svg", "cover_plate-template.svg", "cover_plate-setup-4.svg", "cover_plate-setup-5.svg", "cover_plate-file-220.svg",
		"saddle_flange-drawing.svg", "saddle_flange-setup-1.svg", "saddle_flange-setup-2.svg", "crank_pin-setup-1.svg"} {
		path := filepath.Join("testdata", name)
		if *update {
			require.NoError(t, os.WriteFile(path, []byte(files[name]), 0o644))
		}
		want, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, string(want), files[name], "%s: run the test with -update and read the difference", name)
	}
}

func TestFilesOfAJob(t *testing.T) {
	files, err := Render(fixture.Job(), Options{Paper: "letter"})
	require.NoError(t, err)
	var names []string
	for _, f := range files {
		names = append(names, f.Name)
	}
	assert.Equal(t, []string{"guide-bush.md", "guide-bush.html", "guide-bush-drawing.svg", "guide-bush-setup-1.svg", "guide-bush-setup-2.svg", "guide-bush-dials.csv"}, names[:6])
	assert.Equal(t, []string{"long-rod.md", "long-rod.html", "long-rod-drawing.svg", "index.md", "index.html"}, names[len(names)-5:], "a refused part has no dials")
}

// The HTML says what the Markdown says: without the elements that only group, it is goldmark's own rendering of the Markdown file.
func TestHTMLIsTheMarkdown(t *testing.T) {
	files := render(t, fixture.Job())
	groups := regexp.MustCompile(`(?m)^</?(section|div)[^>]*>\n`)
	sketches := regexp.MustCompile(`(?s)<svg.*?</svg>\n`)
	images := regexp.MustCompile(`<img [^>]*>`)
	for name, text := range files {
		if !strings.HasSuffix(name, ".md") || name == "index.md" {
			continue
		}
		var want bytes.Buffer
		require.NoError(t, goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList)).Convert([]byte(text), &want))
		got := files[strings.TrimSuffix(name, ".md")+".html"]
		got = got[strings.Index(got, "<main>\n")+len("<main>\n") : strings.Index(got, "</main>")]
		got = sketches.ReplaceAllString(groups.ReplaceAllString(got, ""), "IMAGE")
		got = strings.ReplaceAll(got, `<td class="tick"><span></span></td>`, "<td>"+string(tick)+"</td>")
		assert.Equal(t, images.ReplaceAllString(want.String(), "IMAGE"), got, name)
	}
}

func TestEveryWordOfThePlanIsPrinted(t *testing.T) {
	p := fixture.Bush()
	for _, part := range fixture.Job().Parts {
		if len(part.Refusals) > 0 {
			p.Parts = append(p.Parts, part)
		}
	}
	var all strings.Builder
	for name, text := range render(t, p) {
		if strings.HasSuffix(name, ".md") {
			all.WriteString(text)
		}
	}
	visitPlan(p, func(field string, v reflect.Value) {
		if _, known := unprinted[field]; known || v.Kind() != reflect.String {
			return
		}
		words := strings.TrimSuffix(v.String(), ".")
		plain, written := string(say(words)), string(esc(words))
		assert.True(t, strings.Contains(all.String(), plain) || strings.Contains(all.String(), written), "%s is lost: %s", field, words)
	})
}

// Sheets only print: a number on a sheet is one of the plan's.
func TestEveryNumberIsThePlans(t *testing.T) {
	numbered := regexp.MustCompile(`(?m)^[0-9]+\. `)
	p := fixture.Job()
	p.Parts = append(append(p.Parts, fixture.Cover().Parts...), fixture.Saddle().Parts...)
	known := numbersOf(p)
	for name, text := range render(t, p) {
		if !strings.HasSuffix(name, ".md") {
			continue
		}
		text = numbered.ReplaceAllString(text, "")
		for _, n := range number.FindAllString(text, -1) {
			assert.True(t, known[n], "%s: the number %s is not in the plan", name, n)
		}
	}
}

func TestOrderOfASheet(t *testing.T) {
	text := render(t, fixture.Bush())["guide-bush.md"]
	at := -1
	for _, want := range []string{"# Guide-bush", "## The part as it was understood", "## Metal to fetch", "## Lay ready", "## Make first", "## Order at a glance",
		"## Cautions", "Defer to local codes and licensed practice.", "## Holding 1: ", "### How to hold it", "### 10 Face the end", "### 80 Part off", "### Before you let go of holding 1",
		"## Holding 2: ", "**No way back after this.**", "A safe place to stop overnight.", "## Holdings passed over", "## On what this order rests", "## Proof", "## Rules cited"} {
		i := strings.Index(text, want)
		require.Greater(t, i, at, "%q is missing or too early", want)
		at = i
	}
	assert.Equal(t, 1, strings.Count(text, "\n## Holding 1: "))
}

func TestVerdictIsHonest(t *testing.T) {
	text := render(t, fixture.Job())
	assert.Contains(t, text["guide-bush.md"], "it is proven that no order of these operations in these holdings costs less")
	assert.Contains(t, text["float-pulley.md"], "costs 2 h 20 min. No order can cost less than 2 h 13 min; that none lies between is not proven.")
}

func TestUnprovedPlanSaysSo(t *testing.T) {
	p := fixture.Bush()
	const warning = "This plan has not been proved. Do not cut metal by it."
	assert.NotContains(t, render(t, p)["guide-bush.md"], warning)
	p.Parts[0].Proof = nil
	assert.Contains(t, render(t, p)["guide-bush.md"], warning)
}

func TestRefusalIsAPageOfItsOwn(t *testing.T) {
	text := render(t, fixture.Job())["long-rod.md"]
	assert.Contains(t, text, "## There is no plan for this part")
	assert.Contains(t, text, "900 mm is longer than the 400 mm")
	assert.Contains(t, text, "Buy ground bar")
	assert.NotContains(t, text, "## Holding")
	assert.NotContains(t, text, "Time:")
}

func TestSmallIsNotNought(t *testing.T) {
	for mm, want := range map[float64]string{0: "about 0 mm", 0.0004: "less than a micrometre", 0.0006: "about 0.001 mm", 0.02: "about 0.02 mm"} {
		assert.Equal(t, want, small(mm))
	}
}

func TestPlaceBeforeNoughtIsExplained(t *testing.T) {
	assert.Equal(t, md("saddle locked; minus: marks still short of nought"), mind(plan.Line{Marks: -9, Total: -9, Note: "saddle locked"}))
	assert.Empty(t, mind(plan.Line{Marks: 9, Total: 9}))
}

func TestToolsOfAChain(t *testing.T) {
	text := render(t, fixture.Bush())["guide-bush.md"]
	assert.Contains(t, text, "- [ ] 2.5 mm centre drill\n- [ ] 15.5 mm drill\n")
	assert.Contains(t, text, "**Tool:** 2.5 mm centre drill, 15.5 mm drill")
}

func TestTrustInWords(t *testing.T) {
	files := render(t, fixture.Job())
	assert.Contains(t, files["guide-bush.md"], trusts["rough"])
	assert.Contains(t, files["vent-tube.md"], trusts["good"])
	assert.Contains(t, files["gland-nut.md"], trusts["none"], "a grip that cannot be judged must not pass in silence")
}

func TestDialTable(t *testing.T) {
	p := fixture.Bush()
	rows, err := csv.NewReader(strings.NewReader(render(t, p)["guide-bush-dials.csv"])).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, dialHead, rows[0])
	n := 0
	for _, s := range p.Parts[0].Setups {
		for _, op := range s.Operations {
			for _, l := range op.Card {
				n++
				assert.Equal(t, dialRow("guide-bush", s.Number, op, indexIn(op.Card, l)+1, l), rows[n])
			}
		}
	}
	assert.Len(t, rows, n+1)
	assert.Equal(t, "", rows[n-2][7], "an indicator counts no turns")
}

func indexIn(card []plan.Line, l plan.Line) int {
	for i := range card {
		if card[i] == l {
			return i
		}
	}
	return -1
}

func TestCellIsNoFormula(t *testing.T) {
	for text, want := range map[string]string{"=1+1": "'=1+1", "+x": "'+x", "-x": "'-x", "@x": "'@x", "\tx": "'\tx", "Ø24": "Ø24", "": ""} {
		assert.Equal(t, want, cell(text))
	}
}

func TestPaper(t *testing.T) {
	for paper, size := range map[string]string{"": "A4", "a4": "A4", "letter": "letter"} {
		files, err := Render(fixture.Bush(), Options{Paper: paper})
		require.NoError(t, err)
		assert.Contains(t, string(files[1].Data), "@page{size:"+size)
	}
	_, err := Render(fixture.Bush(), Options{Paper: "a5"})
	assert.ErrorContains(t, err, "a4 or letter")
}

func TestFileNames(t *testing.T) {
	names := fileNames([]plan.Part{{Name: "a/b"}, {Name: "a b"}, {Name: "../.."}, {Name: "A-B"}, {Name: "index"}, {Name: strings.Repeat("x", 300)}})
	assert.Equal(t, []string{"a-b", "a-b-2", "part", "A-B-3", "index-2", strings.Repeat("x", longestName)}, names)
}

func TestFiguresThatAreNoneAreRefused(t *testing.T) {
	for name, spoil := range map[string]func(*plan.Part){
		"nan":       func(p *plan.Part) { p.Drawing.Section.Outer[0].R0 = math.NaN() },
		"infinite":  func(p *plan.Part) { p.Setups[0].Before.Outer[0].Z1 = math.Inf(1) },
		"negative":  func(p *plan.Part) { p.Setups[0].After.Outer[0].R1 = -1 },
		"backwards": func(p *plan.Part) { p.Setups[0].After.Outer[0].Z0 = 100 },
		"dimension": func(p *plan.Part) { p.Drawing.Dims[0].R = math.Inf(-1) },
		"grip":      func(p *plan.Part) { p.Setups[1].Grip.FromZ = math.NaN() },
		"zero":      func(p *plan.Part) { p.Setups[0].Operations[0].Zeros[0].ReferenceMM = math.NaN() },
		"end":       func(p *plan.Part) { p.Setups[0].FreeEnd = "up" },
	} {
		t.Run(name, func(t *testing.T) {
			p := fixture.Bush()
			spoil(&p.Parts[0])
			_, err := Render(p, Options{})
			assert.ErrorContains(t, err, "guide-bush")
		})
	}
}

func TestFlatFiguresThatAreNoneAreRefused(t *testing.T) {
	for name, spoil := range map[string]func(*plan.Part){
		"outline": func(p *plan.Part) { p.Drawing.Flat.Outline[0].X0 = math.NaN() },
		"hole":    func(p *plan.Part) { p.Drawing.Flat.Holes[0].DiameterMM = -1 },
		"before":  func(p *plan.Part) { p.Setups[1].FlatBefore.FrontZ = math.Inf(1) },
		"clamp":   func(p *plan.Part) { p.Setups[2].Clamps[0].XMM = math.NaN() },
		"jaw":     func(p *plan.Part) { p.Setups[1].Presses[0].YMM = math.NaN() },
		"strip":   func(p *plan.Part) { p.Setups[1].Bed.Under[0].X1 = math.NaN() },
		"weight":  func(p *plan.Part) { p.Setups[4].Balance.AngleDeg = math.NaN() },
		"ring":    func(p *plan.Part) { p.Drawing.Rings = []plan.Ring{{DiameterMM: math.NaN()}} },
		"crossed": func(p *plan.Part) { p.Drawing.Crossed = []plan.Crossed{{Count: 1 << 40}} },
	} {
		t.Run(name, func(t *testing.T) {
			p := fixture.Cover()
			spoil(&p.Parts[0])
			_, err := Render(p, Options{})
			assert.ErrorContains(t, err, "cover_plate")
		})
	}
}

func TestEmptyPlanPrints(t *testing.T) {
	p := &plan.Plan{Parts: []plan.Part{{}, {Name: "x", Setups: []plan.Setup{{FreeEnd: "right"}}}}}
	_, err := Render(p, Options{})
	require.NoError(t, err)
}

func TestAnyPlanPrints(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 100 {
		_, err := Render(fixture.Random(r), Options{})
		require.NoError(t, err)
	}
}

func TestTheSamePlanGivesTheSameBytes(t *testing.T) {
	assert.Equal(t, render(t, fixture.Job()), render(t, fixture.Job()))
}

func TestEmptyColumnsAreLeftOut(t *testing.T) {
	op := plan.Operation{Card: []plan.Line{{Label: "step 1", Dial: "cross", Counted: true}}}
	head := func() []md { return card(op)[0].(group).blocks[1].(table).head }
	assert.Len(t, head(), firstOptional)
	op.Card[0].Note = "measure"
	assert.Equal(t, md("Mind"), head()[firstOptional])
	op.Card[0].Makes = "Ø20 mm"
	assert.Len(t, head(), firstOptional+2)
}

func BenchmarkRender(b *testing.B) {
	p := fixture.Bush()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Render(p, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
