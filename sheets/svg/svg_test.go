package svg_test

import (
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/sheets/draw"
	"catchplate/sheets/svg"
)

func page(shapes ...draw.Shape) draw.Page {
	return draw.Page{Name: "p", Title: "t", Desc: "d", Width: 12.7, Height: 6.35, Shapes: shapes}
}

// elements reads SVG as any XML reader would, and gives the names and attributes of its elements.
func elements(t *testing.T, data []byte) []xml.StartElement {
	t.Helper()
	var out []xml.StartElement
	d := xml.NewDecoder(strings.NewReader(string(data)))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		require.NoError(t, err)
		if e, ok := token.(xml.StartElement); ok {
			out = append(out, e.Copy())
		}
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func TestFileIsXMLInMillimetres(t *testing.T) {
	root := elements(t, svg.File(page()))[0]
	assert.Equal(t, "svg", root.Name.Local)
	assert.Equal(t, "http://www.w3.org/2000/svg", root.Name.Space)
	assert.Equal(t, "12.70mm", attribute(root, "width"))
	assert.Equal(t, "6.35mm", attribute(root, "height"))
	assert.Equal(t, "0 0 12.70 6.35", attribute(root, "viewBox"), "one unit must be one millimetre")
}

func TestWordsCannotActAsMarkup(t *testing.T) {
	for _, words := range []string{`</text><script>alert(1)</script>`, `"&<>'`, "\x00\x07\ufffe", `]]>`, `--><!--`} {
		p := page(draw.Text{Text: words, Size: 3, Anchor: draw.AtStart})
		p.Name, p.Title, p.Desc = words, words, words
		for _, data := range [][]byte{svg.File(p), svg.Inline(p)} {
			for _, e := range elements(t, data) {
				assert.NotEqual(t, "script", e.Name.Local, "%q", words)
			}
		}
	}
}

func TestTextIsKept(t *testing.T) {
	data := svg.File(page(draw.Text{Text: `Ø24 <p6> & "so"`, Size: 3.5, Anchor: draw.AtEnd, Bold: true}))
	var found struct {
		Text []struct {
			Value  string `xml:",chardata"`
			Anchor string `xml:"text-anchor,attr"`
			Weight string `xml:"font-weight,attr"`
		} `xml:"text"`
	}
	require.NoError(t, xml.Unmarshal(data, &found))
	require.Len(t, found.Text, 1)
	assert.Equal(t, `Ø24 <p6> & "so"`, found.Text[0].Value)
	assert.Equal(t, "end", found.Text[0].Anchor)
	assert.Equal(t, "bold", found.Text[0].Weight)
}

// A path is written with two decimals and no minus nought; an arc runs clockwise (sweep 1) or not.
func TestPaths(t *testing.T) {
	arc := func(clockwise bool) draw.Path {
		return draw.Path{Class: draw.Outline, Start: draw.Point{X: -0.001, Y: 1.005}, Closed: true,
			Steps: []draw.Step{{To: draw.Point{X: 2, Y: 3}, Radius: 4, Centre: draw.Point{X: 0, Y: 5}, Clockwise: clockwise}, {To: draw.Point{X: 1.0 / 3}}}}
	}
	for clockwise, want := range map[bool]string{true: "M0.00 1.00A4.00 4.00 0 0 1 2.00 3.00L0.33 0.00Z", false: "M0.00 1.00A4.00 4.00 0 0 0 2.00 3.00L0.33 0.00Z"} {
		all := elements(t, svg.Inline(page(arc(clockwise))))
		assert.Equal(t, want, attribute(all[len(all)-1], "d"))
	}
}

func TestFillingsHaveIdsOfTheirPage(t *testing.T) {
	square := draw.Path{Class: draw.Stays, Steps: []draw.Step{{To: draw.Point{X: 1}}, {To: draw.Point{Y: 1}}}, Closed: true}
	one, two := page(square), page(square)
	one.Name, two.Name = "a b", "a_20b"
	ids := map[string]bool{}
	for _, p := range []draw.Page{one, two} {
		for _, e := range elements(t, svg.Inline(p)) {
			if id := attribute(e, "id"); id != "" {
				assert.False(t, ids[id], "%s is there twice", id)
				ids[id] = true
			}
			if style := attribute(e, "style"); style != "" {
				id := strings.TrimSuffix(strings.TrimPrefix(style, "fill:url(#"), ")")
				assert.True(t, ids[id], "%s fills from nowhere", style)
			}
		}
	}
}

// Every class has its entry, and nothing is thinner than 0.25 mm: what is thinner vanishes on some printers.
func TestStyle(t *testing.T) {
	for _, c := range draw.Classes() {
		assert.Contains(t, svg.Style, "."+string(c)+"{", "no style for %s", c)
	}
	widths := regexp.MustCompile(`stroke-width:([0-9.]+)`).FindAllStringSubmatch(svg.Style, -1)
	require.NotEmpty(t, widths)
	for _, w := range widths {
		mm, err := strconv.ParseFloat(w[1], 64)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, mm, 0.25)
	}
	for _, colour := range regexp.MustCompile(`#[0-9a-f]{3,6}`).FindAllString(svg.Style, -1) {
		assert.Contains(t, []string{"#000", "#fff"}, colour, "a sketch is black on white")
	}
}
