package main

import (
	"io"
	"os"

	"golang.org/x/term"
)

func checkColor(mode string) error {
	switch mode {
	case "auto", "always", "never":
		return nil
	}
	return wrongUse("--color is auto, always or never, not %q", mode)
}

// paint colours text by its role, or leaves it as it is. No meaning hangs on the colour alone.
type paint bool

// paintFor decides whether to colour what goes to w: only on a terminal, never with NO_COLOR, unless --color says otherwise.
func (c *cli) paintFor(w io.Writer) paint {
	switch c.color {
	case "always":
		return true
	case "never":
		return false
	}
	file, isFile := w.(*os.File)
	return paint(isFile && term.IsTerminal(int(file.Fd())) && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb")
}

// The codes of ECMA-48, Select Graphic Rendition.
const (
	sgrBold   = "1"
	sgrRed    = "1;31"
	sgrYellow = "1;33"
)

func (p paint) wrap(code, text string) string {
	if !p {
		return text
	}
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}
