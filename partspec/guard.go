package partspec

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// guard looks at a file before the parser does and refuses what could stop or
// crash it: hcl's parser recurses without a limit and its loops and templates
// can take hours on a kilobyte. The lexer used here does not recurse. A file the
// guard has passed is parsed and evaluated in well under a second.
func guard(name string, text []byte) Diagnostics {
	if d := guardBytes(name, text); d != nil {
		return Diagnostics{d}
	}
	tokens, _ := hclsyntax.LexConfig(text, name, hcl.InitialPos) // the parser reports bad characters again
	if len(tokens) > maxTokens {
		return Diagnostics{fault(tokens[maxTokens].Range, "The file is too long",
			"A file has at most %d words and signs; split the job into several files.", maxTokens)}
	}
	w := guardWalk{}
	before := hclsyntax.TokenNil // the last one that is no newline and no comment
	for _, token := range tokens {
		w.step(token, before)
		if token.Type != hclsyntax.TokenNewline && token.Type != hclsyntax.TokenComment {
			before = token.Type
		}
		if w.stop || len(w.found) >= maxGuardReports {
			break
		}
	}
	return w.found
}

// firstLook is how many bytes are looked at to tell JSON.
const firstLook = 1000

func guardBytes(name string, text []byte) *Diagnostic {
	start := Range{Filename: name, Start: hcl.InitialPos, End: hcl.InitialPos}
	switch {
	case len(text) > maxFileBytes:
		return fault(start, "The file is too large", "A file has at most %d KiB; split the job into several files.",
			maxFileBytes>>10)
	case strings.HasPrefix(strings.TrimSpace(string(text[:min(len(text), firstLook)])), "{"):
		return fault(start, "The file looks like JSON", "Write it in HCL's native syntax: part \"bush\" { ... }.")
	case !utf8.Valid(text):
		return fault(start, "The file is not UTF-8 text", "Save it as UTF-8 in your editor.")
	case strings.IndexByte(string(text), 0) >= 0:
		return fault(start, "The file is not text", "It holds a zero byte; a part is described in plain text.")
	}
	return nil
}

// guardWalk counts what is open and what one expression holds.
type guardWalk struct {
	open      []hclsyntax.TokenType
	operators int
	found     Diagnostics
	stop      bool // nothing after this can be trusted
}

func (w *guardWalk) step(token hclsyntax.Token, before hclsyntax.TokenType) {
	switch token.Type {
	case hclsyntax.TokenOParen, hclsyntax.TokenOBrack, hclsyntax.TokenOBrace, hclsyntax.TokenOQuote:
		w.push(token)
	case hclsyntax.TokenCParen, hclsyntax.TokenCBrack, hclsyntax.TokenCBrace, hclsyntax.TokenCQuote:
		w.pop()
	case hclsyntax.TokenComma:
		w.operators = 0
	case hclsyntax.TokenNewline, hclsyntax.TokenQuotedNewline:
		w.closeQuote()
		if w.inBody() {
			w.operators = 0
		}
	case hclsyntax.TokenNumberLit:
		w.number(token)
	case hclsyntax.TokenIdent:
		if string(token.Bytes) == "for" && (before == hclsyntax.TokenOBrack || before == hclsyntax.TokenOBrace) {
			w.refuse(token, "Loops are not part of the language", "Write each block or figure out.")
		}
	default:
		w.sign(token, before)
	}
}

// sign looks at operators and at the signs that begin something refused.
func (w *guardWalk) sign(token hclsyntax.Token, before hclsyntax.TokenType) {
	switch token.Type {
	case hclsyntax.TokenTemplateInterp, hclsyntax.TokenTemplateControl:
		w.refuse(token, "Expressions inside quotes are not part of the language", "Write the figure without quotes: 7/8 * inch.")
		w.stop = true
	case hclsyntax.TokenOHeredoc:
		w.refuse(token, "Text over several lines is not part of the language", "Write the text in quotes on one line.")
		w.stop = true
	case hclsyntax.TokenEllipsis, hclsyntax.TokenFatArrow:
		w.refuse(token, fmt.Sprintf("%q is not part of the language", token.Bytes), "Expressions are arithmetic, names and a few functions.")
	case hclsyntax.TokenStar:
		if before == hclsyntax.TokenDot || before == hclsyntax.TokenOBrack {
			w.refuse(token, "Names with a star are not part of the language", "Name one thing at a time.")
		}
		w.operator(token)
	default:
		if isOperator(token.Type) {
			w.operator(token)
		}
	}
}

func isOperator(t hclsyntax.TokenType) bool {
	switch t {
	case hclsyntax.TokenSlash, hclsyntax.TokenPlus, hclsyntax.TokenMinus, hclsyntax.TokenPercent, hclsyntax.TokenBang,
		hclsyntax.TokenEqualOp, hclsyntax.TokenNotEqual, hclsyntax.TokenLessThan, hclsyntax.TokenLessThanEq,
		hclsyntax.TokenGreaterThan, hclsyntax.TokenGreaterThanEq, hclsyntax.TokenAnd, hclsyntax.TokenOr,
		hclsyntax.TokenQuestion, hclsyntax.TokenDot, hclsyntax.TokenDoubleColon:
		return true
	}
	return false
}

func (w *guardWalk) operator(token hclsyntax.Token) {
	w.operators++
	if w.operators > maxOperators {
		w.refuse(token, "The expression is too long", fmt.Sprintf("One expression has at most %d signs; work the figure out first.", maxOperators))
		w.stop = true
	}
}

func (w *guardWalk) push(token hclsyntax.Token) {
	if token.Type == hclsyntax.TokenOBrack {
		w.operator(token) // an index is a step of a name
	}
	w.open = append(w.open, token.Type)
	if len(w.open) > maxDepth {
		w.refuse(token, "Too many brackets inside one another", fmt.Sprintf("At most %d are read; work the figure out first.", maxDepth))
		w.stop = true
	}
}

func (w *guardWalk) pop() {
	if len(w.open) > 0 {
		w.open = w.open[:len(w.open)-1]
	}
}

// closeQuote ends a text that was not closed: a text has one line.
func (w *guardWalk) closeQuote() {
	if n := len(w.open); n > 0 && w.open[n-1] == hclsyntax.TokenOQuote {
		w.open = w.open[:n-1]
	}
}

// inBody reports whether a newline here ends an attribute.
func (w *guardWalk) inBody() bool {
	return len(w.open) == 0 || w.open[len(w.open)-1] == hclsyntax.TokenOBrace
}

func (w *guardWalk) number(token hclsyntax.Token) {
	text := string(token.Bytes)
	_, exponent, _ := strings.Cut(strings.ToLower(text), "e")
	if len(text) > maxNumberRunes || len(strings.TrimLeft(exponent, "+-")) > maxExponent {
		w.refuse(token, "The number is too long", fmt.Sprintf("A number has at most %d figures and an exponent of at most %d.", maxNumberRunes, maxExponent))
	}
}

func (w *guardWalk) refuse(token hclsyntax.Token, summary, detail string) {
	w.found = append(w.found, fault(token.Range, summary, "%s", detail))
}
