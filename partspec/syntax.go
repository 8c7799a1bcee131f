package partspec

import (
	"fmt"
	"strings"

	"github.com/hashicorp/hcl/v2"
)

// plainWords says what the parser says in the words of the trade, by the beginning of its message: what was expected, and what to write. Where one of its
// summaries stands for several mistakes, the longer beginning comes first.
var plainWords = []struct{ begins, summary, detail string }{
	{"Attribute redefined", "It is written twice", "A block says each thing once: leave one of the two out."},
	{"Invalid argument name", "A name stands in quotes", "Write it without: diameter = 20."},
	{"Unclosed configuration", "The block is not closed", "Write } on a line of its own where it ends. Look at the blocks inside it too: each { needs its }."},
	{"Argument definition required", "The line cannot be read", "A value follows its name and an equals sign: diameter = 20."},
	{"Argument or block definition required: An argument or block definition is required here. To set", "The equals sign is missing",
		"Write the name, an equals sign and the value: diameter = 20. A block has braces: bore \"main\" { ... }."},
	{"Argument or block definition required", "A name was expected", "Each line holds a name and its value, like diameter = 20, or begins a block, like bore \"main\" {. Is there one } too many?"},
	{"Invalid block definition: The equals sign", "A block takes no equals sign", "Write bore \"main\" { ... }, without it."},
	{"Invalid block definition", "The block does not begin", "Write its word, its name in quotes and { on one line: bore \"main\" {."},
	{"Invalid single-argument block definition", "A block on one line holds one value", "Write each value on a line of its own, and } on the last."},
	{"Missing newline after", "The line should end here", "Write what follows on a line of its own; text stands in quotes, as in material = \"mild steel\"."},
	{"Extra characters after", "The line should end here", "Write what follows on a line of its own; text stands in quotes, as in material = \"mild steel\"."},
	{"Missing false expression", "The condition has one answer only", "Write both, with a colon between: length > 25 ? 30 : 25."},
	{"Unbalanced parentheses", "A bracket is not closed", "Each ( needs its )."},
	{"Missing expression", "The value is missing", "Write it behind the equals sign: diameter = 20."},
	{"Invalid expression", "The value cannot be read", "Write a figure, arithmetic, or text in quotes: 20, 7/8 * inch, \"20 h7\"."},
	{"Invalid number literal", "The number cannot be read", "Write it like 12.5."},
	{"Missing open parenthesis", "The function has no brackets", "Write the figures in brackets behind it: max(3, 5)."},
	{"Missing function name", "The function has no name", "Write one of " + strings.Join(functionNames, ", ") + "."},
	{"Missing closing parenthesis", "A bracket is not closed", "Each ( needs its )."},
	{"Unterminated function call", "A bracket is not closed", "Each ( needs its ): max(3, 5)."},
	{"Missing argument separator", "A comma is missing", "Write one between figures: max(3, 5)."},
	{"Unterminated tuple", "The list is not closed", "Write ] behind its last item: [2, 80]."},
	{"Missing item separator", "A comma is missing", "Write one between the items of a list: [2, 80]."},
	{"Missing close bracket", "A square bracket is not closed", "Names take no index; a list ends with ]: [2, 80]."},
	{"Invalid attribute name", "A name ends in a point", "Write the word behind it, as in part.tube.length."},
	{"Unterminated string", "The text is not closed", "Write \" at its end, on the same line."},
	{"Unterminated template", "The text is not closed", "Write \" at its end, on the same line."},
	{"Invalid multi-line string", "The text is not closed", "A text stands on one line: write \" at its end."},
	{"Invalid string literal", "The text cannot be read", "Write plain letters in quotes, on one line."},
	{"Invalid escape sequence", "A backslash stands in the text", "Write two for one; an inch mark in text is in: \"7/8 in\"."},
	{"Invalid character encoding", "The file is not UTF-8 text", "Save it as UTF-8 in your editor."},
	{"Invalid character: Single quotes", "Text stands in double quotes", "Write \" instead of '."},
	{"Invalid character: \"Curly quotes\"", "Text stands in straight quotes", "Write \" instead of the curly ones that word processors make."},
	{"Invalid character: The \";\"", "The sign ; is not part of the language", "Write each value on a line of its own, and commas between the items of a list."},
	{"Invalid character", "The sign is not part of the language", "Figures, names, text in quotes and + - * / are."},
	{"Unsupported operator", "The sign is not part of the language", "Expressions have +, -, * and /; write 3 * 3 for a square, and sqrt(2)."},
	{"Unterminated object", "A brace is not closed", "Each { needs its }. A value is no { ... }: a block is written without an equals sign."},
	{"Missing attribute", "A value is no { ... }", "A block is written without an equals sign: bore \"main\" { ... }."},
	{"Missing key/value separator", "A value is no { ... }", "A block is written without an equals sign: bore \"main\" { ... }."},
}

// unitWords are how units are written behind bare figures.
var unitWords = map[string]string{"mm": "mm", "in": "inch", "inch": "inch", "thou": "thou", "deg": "deg"}

// reword puts the parser's messages into plain words, one for each line: what it finds behind the first is mostly a consequence.
func reword(text []byte, found hcl.Diagnostics) Diagnostics {
	type line struct {
		file   string
		number int
	}
	told := map[line]bool{}
	var list Diagnostics
	for _, d := range found {
		at := subject(d)
		if key := (line{at.Filename, at.Start.Line}); !told[key] {
			told[key] = true
			list = append(list, plain(text, d, at))
		}
	}
	return list
}

// plain is one message in plain words. A unit behind a bare figure is how people write sizes, so that it gets words of its own.
func plain(text []byte, d *hcl.Diagnostic, at Range) *Diagnostic {
	if at.CanSliceBytes(text) {
		if unit, ok := unitWords[string(at.SliceBytes(text))]; ok {
			return fault(at, "A unit cannot stand behind a bare figure", "Write 3 * %s, or put the size in quotes: \"3 %s\".", unit, string(at.SliceBytes(text)))
		}
	}
	said := d.Summary + ": " + d.Detail
	for _, w := range plainWords {
		if strings.HasPrefix(said, w.begins) {
			return fault(at, w.summary, "%s", w.detail)
		}
	}
	return fault(at, "The line cannot be read", "%s", fmt.Sprintf("Each line holds a name and its value, like diameter = 20, or begins a block, like bore %q {.", "main"))
}
