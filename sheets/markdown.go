package sheets

import (
	"fmt"
	"strings"
	"unicode"
)

// markdown writes blocks as Markdown, with one empty line between blocks.
func markdown(blocks []block) string {
	var parts []string
	for _, b := range blocks {
		if text := blockText(b); text != "" {
			parts = append(parts, text)
		}
	}
	return strings.Join(parts, "\n")
}

// blockText is one block, with a line end behind it.
func blockText(b block) string {
	switch b := b.(type) {
	case heading:
		return strings.Repeat("#", b.level) + " " + string(b.text) + "\n"
	case para:
		return string(b) + "\n"
	case list:
		return listText(b)
	case table:
		return tableText(b)
	case figure:
		return fmt.Sprintf("![%s](%s)\n", b.alt, b.file)
	case quote:
		lines := strings.Split(strings.TrimSuffix(markdown(b), "\n"), "\n")
		return strings.TrimRight("> "+strings.Join(lines, "\n> "), " ") + "\n"
	case group:
		return markdown(b.blocks)
	}
	panic(fmt.Sprintf("sheets: no Markdown for %T", b))
}

func listText(l list) string {
	var out strings.Builder
	for i, item := range l.items {
		switch {
		case l.numbered:
			fmt.Fprintf(&out, "%d. %s\n", i+1, item)
		case l.ticks:
			fmt.Fprintf(&out, "- [ ] %s\n", item)
		default:
			fmt.Fprintf(&out, "- %s\n", item)
		}
	}
	return out.String()
}

func tableText(t table) string {
	var out strings.Builder
	row := func(cells []md) {
		out.WriteString("|")
		for _, c := range cells {
			out.WriteString(" " + string(c) + " |")
		}
		out.WriteString("\n")
	}
	row(t.head)
	out.WriteString("|" + strings.Repeat(" --- |", len(t.head)) + "\n")
	for _, r := range t.rows {
		row(r)
	}
	return out.String()
}

// esc makes words safe in Markdown, in a line or a table cell: marks lose their meaning, line ends and control characters become spaces.
func esc(text string) md {
	var out strings.Builder
	text = strings.Join(strings.FieldsFunc(text, func(r rune) bool { return unicode.IsSpace(r) || unicode.IsControl(r) }), " ")
	for i, r := range text {
		if strings.ContainsRune("\\`*[]<>|~&", r) || r == '#' && i == 0 || r == '_' && !within(text, i) || startsBlock(text, i, r) {
			out.WriteByte('\\')
		}
		out.WriteRune(r)
	}
	return md(out.String())
}

// within reports whether the sign at i stands between letters or figures, where an underscore means only itself.
func within(text string, i int) bool {
	return i > 0 && i+1 < len(text) && alphanumeric(text[i-1]) && alphanumeric(text[i+1])
}

func alphanumeric(b byte) bool {
	return b >= '0' && b <= '9' || b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z'
}

// startsBlock reports whether a sign at the start of a line would open a list or a rule there: "-", "+", "=", "1. ", "1) ".
func startsBlock(text string, i int, r rune) bool {
	if strings.ContainsRune("-+=", r) {
		return i == 0
	}
	if r != '.' && r != ')' || i == 0 {
		return false
	}
	after := text[i+1:]
	return strings.Trim(text[:i], "0123456789") == "" && (after == "" || after[0] == ' ')
}
