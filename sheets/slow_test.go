package sheets

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/sheets/draw"
	"catchplate/sheets/internal/fixture"
	"catchplate/sheets/svg"
)

// slow tests print with a real browser. They run when CATCHPLATE_SLOW is set, and then a missing program is a failure.
func slow(t *testing.T) {
	t.Helper()
	if os.Getenv("CATCHPLATE_SLOW") == "" {
		t.Skip("set CATCHPLATE_SLOW=1 to print with chromium")
	}
}

func run(t *testing.T, program string, args ...string) string {
	t.Helper()
	var out, problems bytes.Buffer
	c := exec.Command(program, args...)
	c.Stdout, c.Stderr = &out, &problems
	require.NoError(t, c.Run(), "%s: %s", program, problems.String())
	return out.String()
}

var headless = []string{"--headless", "--no-sandbox", "--disable-gpu", "--virtual-time-budget=2000"}

// printed turns HTML into a PDF and gives its path.
func printed(t *testing.T, html []byte) string {
	t.Helper()
	dir := t.TempDir()
	page, pdf := filepath.Join(dir, "page.html"), filepath.Join(dir, "page.pdf")
	require.NoError(t, os.WriteFile(page, html, 0o644))
	run(t, "chromium", append(headless, "--no-pdf-header-footer", "--print-to-pdf="+pdf, "file://"+page)...)
	return pdf
}

func TestPrintedPages(t *testing.T) {
	slow(t)
	for paper, size := range map[string]string{"a4": "A4", "letter": "letter"} {
		files, err := Render(fixture.Bush(), Options{Paper: paper})
		require.NoError(t, err)
		pdf := printed(t, files[1].Data)
		info := run(t, "pdfinfo", pdf)
		assert.Contains(t, info, "("+size+")")
		pages, err := strconv.Atoi(regexp.MustCompile(`Pages:\s+(\d+)`).FindStringSubmatch(info)[1])
		require.NoError(t, err)
		assert.InDelta(t, 12, pages, 3, "a bush of two holdings fills about a dozen sheets")
		checkPagesText(t, pdf, pages)
	}
}

// checkPagesText: each holding begins once, at the top of a page; each page counts itself; a card's head is on the page of its lines.
func checkPagesText(t *testing.T, pdf string, pages int) {
	begun := 0
	for n := range pages {
		page := strconv.Itoa(n + 1)
		text := run(t, "pdftotext", "-f", page, "-l", page, "-layout", pdf, "-")
		assert.Contains(t, text, fmt.Sprintf("sheet %d of %d", n+1, pages))
		assert.Contains(t, text, "Guide-bush")
		if regexp.MustCompile(`^\s*Holding \d+: `).MatchString(text) {
			begun++
		}
		if strings.Contains(text, "last but one") {
			assert.Contains(t, text, "Turns")
		}
	}
	assert.Equal(t, 2, begun)
}

// barHTML is a sheet with one line of 100 mm.
func barHTML(t *testing.T) []byte {
	c := draw.NewCanvas()
	c.Line(draw.Outline, draw.Point{}, draw.Point{X: 100})
	html, err := htmlPage("bar", "A4", []block{figure{file: "bar.svg", alt: "bar"}}, map[string][]byte{"bar.svg": svg.Inline(c.Page("bar", "bar", "bar"))})
	require.NoError(t, err)
	return html
}

// One unit of a sketch prints as one millimetre: 100 mm is 1,000 pixels at 254 to the inch.
func TestAHundredMillimetresPrintTrue(t *testing.T) {
	slow(t)
	pdf := printed(t, barHTML(t))
	base := strings.TrimSuffix(pdf, ".pdf")
	run(t, "pdftoppm", "-r", "254", "-gray", "-singlefile", pdf, base)
	data, err := os.ReadFile(base + ".pgm")
	require.NoError(t, err)
	assert.InDelta(t, 1000, longestDarkRun(t, data), 1)
}

// longestDarkRun reads a binary PGM and gives the longest row of dark pixels.
func longestDarkRun(t *testing.T, pgm []byte) int {
	var width, height, most int
	_, err := fmt.Sscanf(string(pgm[:30]), "P5\n%d %d\n%d\n", &width, &height, &most)
	require.NoError(t, err)
	pixels := pgm[len(pgm)-width*height:]
	longest := 0
	for y := range height {
		dark := 0
		for x := range width {
			if pixels[y*width+x] < 128 {
				dark++
				longest = max(longest, dark)
			} else {
				dark = 0
			}
		}
	}
	return longest
}

// measureScript writes how far each text of a page is wider than its own declared room, in both fonts.
const measureScript = `<pre id="out"></pre><script>
let out = "";
for (const t of document.querySelectorAll("text")) {
  const room = parseFloat(t.dataset.room);
  for (const font of ["DejaVu Sans", "Liberation Sans"]) {
    t.style.fontFamily = '"' + font + '"';
    const wide = t.getComputedTextLength();
    out += (wide <= room + 0.01 ? "fits" : "SPILLS " + font + " " + wide + " of " + room + " " + t.textContent) + "\n";
  }
}
document.getElementById("out").textContent = out;
</script>`

// The widths by which labels are placed are no less than what a browser needs, in every font of the sketches.
func TestTextsFitTheirRoom(t *testing.T) {
	slow(t)
	var page strings.Builder
	page.WriteString("<!DOCTYPE html><meta charset=utf-8>")
	part := fixture.Bush().Parts[0]
	cover := fixture.Cover().Parts[0]
	for _, figure := range []draw.Page{draw.Part("a", &part), draw.Setup("b", &part, &part.Setups[0]), draw.Part("c", &cover), draw.Setup("d", &cover, &cover.Setups[4])} {
		text := string(svg.Inline(figure))
		for _, s := range figure.Shapes {
			if label, ok := s.(draw.Text); ok {
				room := fmt.Sprintf(`<text data-room="%.3f" `, draw.Width(label.Text, label.Size, label.Bold))
				text = strings.Replace(text, "<text x", room+"x", 1)
			}
		}
		page.WriteString(text)
	}
	page.WriteString(measureScript)
	file := filepath.Join(t.TempDir(), "texts.html")
	require.NoError(t, os.WriteFile(file, []byte(page.String()), 0o644))
	dump := run(t, "chromium", append(headless, "--dump-dom", "file://"+file)...)
	assert.Greater(t, strings.Count(dump, "fits\n"), 40)
	assert.NotContains(t, dump[strings.LastIndex(dump, "<pre"):strings.LastIndex(dump, "</pre>")], "SPILLS")
}

// A browser shows each sketch by itself.
func TestFilesParseAlone(t *testing.T) {
	slow(t)
	files, err := Render(fixture.Bush(), Options{})
	require.NoError(t, err)
	for _, f := range files {
		if !strings.HasSuffix(f.Name, ".svg") {
			continue
		}
		file := filepath.Join(t.TempDir(), f.Name)
		require.NoError(t, os.WriteFile(file, f.Data, 0o644))
		dump := run(t, "chromium", append(headless, "--dump-dom", "file://"+file)...)
		assert.NotContains(t, dump, "parsererror", f.Name)
		assert.Contains(t, dump, "</svg>")
	}
}
