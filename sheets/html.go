package sheets

import (
	"bufio"
	"bytes"
	_ "embed"
	"fmt"
	"html"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"

	"catchplate/sheets/svg"
)

//go:embed sheet.css
var sheetStyle string

// pageSize is the CSS name of a paper.
func pageSize(paper string) (string, error) {
	switch paper {
	case "", "a4":
		return "A4", nil
	case "letter":
		return "letter", nil
	}
	return "", fmt.Errorf("paper %q is not known: write a4 or letter", paper)
}

// securityPolicy lets the page load nothing and run nothing; only its own styles and images in its own text.
const securityPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:"

// htmlPage is a whole HTML file.
func htmlPage(title, paper string, blocks []block, figures map[string][]byte) ([]byte, error) {
	var out bytes.Buffer
	fmt.Fprintf(&out, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
	fmt.Fprintf(&out, "<meta http-equiv=\"Content-Security-Policy\" content=\"%s\">\n", securityPolicy)
	fmt.Fprintf(&out, "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>%s</title>\n", html.EscapeString(title))
	fmt.Fprintf(&out, "<style>\n@page{size:%s;@bottom-left{content:%s}}\n%s%s</style>\n</head>\n<body>\n<main>\n",
		paper, cssString(title), sheetStyle, svg.Style)
	w := htmlWriter{&out, converter(figures), bufio.NewWriter(nil)}
	if err := w.blocks(blocks); err != nil {
		return nil, err
	}
	out.WriteString("</main>\n</body>\n</html>\n")
	return out.Bytes(), nil
}

// cssString is text as a CSS string: all but letters, figures and blanks by number, so that no text can end it.
func cssString(text string) string {
	var out strings.Builder
	out.WriteByte('"')
	for _, r := range text {
		if r == ' ' || r < 128 && (r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z') {
			out.WriteRune(r)
		} else {
			fmt.Fprintf(&out, `\%06x`, r)
		}
	}
	out.WriteByte('"')
	return out.String()
}

// htmlWriter sends each block's Markdown through goldmark, and sets groups in elements.
type htmlWriter struct {
	out       *bytes.Buffer
	converter goldmark.Markdown
	line      *bufio.Writer // lent to the converter, which makes one for every block otherwise
}

func (w htmlWriter) blocks(blocks []block) error {
	for _, b := range blocks {
		g, ok := b.(group)
		if !ok {
			if err := w.leaf(b); err != nil {
				return err
			}
			continue
		}
		element := "div"
		if g.id != "" {
			element = "section"
		}
		fmt.Fprintf(w.out, "<%s class=\"%s\"", element, html.EscapeString(g.class))
		if g.id != "" {
			fmt.Fprintf(w.out, " id=\"%s\"", html.EscapeString(g.id))
		}
		w.out.WriteString(">\n")
		if err := w.blocks(g.blocks); err != nil {
			return err
		}
		fmt.Fprintf(w.out, "</%s>\n", element)
	}
	return nil
}

func (w htmlWriter) leaf(b block) error {
	var buf bytes.Buffer
	w.line.Reset(&buf)
	if err := w.converter.Convert([]byte(blockText(b)), w.line); err != nil {
		return err
	}
	text := strings.ReplaceAll(buf.String(), "<td>"+string(tick)+"</td>", `<td class="tick"><span></span></td>`)
	w.out.WriteString(text)
	return nil
}

// converter is goldmark with tables and boxes to tick. Raw HTML stays forbidden, its default.
func converter(figures map[string][]byte) goldmark.Markdown {
	m := goldmark.New(goldmark.WithExtensions(extension.Table, extension.TaskList))
	m.Renderer().AddOptions(renderer.WithNodeRenderers(util.Prioritized(inliner{figures}, beforeDefault)))
	return m
}

// beforeDefault puts our renderer of images before goldmark's own, which has priority 1000.
const beforeDefault = 100

// inliner sets sketches into the page where the Markdown names their files.
type inliner struct{ figures map[string][]byte }

func (i inliner) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(ast.KindImage, i.image)
}

func (i inliner) image(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkContinue, nil
	}
	file := string(n.(*ast.Image).Destination)
	drawn, ok := i.figures[file]
	if !ok {
		return ast.WalkStop, fmt.Errorf("no sketch named %q", file)
	}
	_, err := w.Write(drawn)
	return ast.WalkSkipChildren, err
}
