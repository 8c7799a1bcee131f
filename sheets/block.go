package sheets

import (
	"slices"
	"strings"
)

// md is a run of Markdown inside a block. It comes only from constants and from esc, so that no word of a person's acts as Markdown.
type md string

// block is a piece of a sheet: heading, para, list, table, figure, quote or group. The list is closed.
type block interface{ isBlock() }

type heading struct {
	level int
	text  md
}

type para md

// list is a list of one-line items: with boxes to tick, with numbers, or plain.
type list struct {
	ticks, numbered bool
	items           []md
}

// table has one head row. A cell of its first column that is tick becomes a box to tick.
type table struct {
	head []md
	rows [][]md
}

// empty reports whether no row fills a column.
func (t table) empty(column int) bool {
	return !slices.ContainsFunc(t.rows, func(r []md) bool { return r[column] != "" })
}

// without leaves out a column.
func (t table) without(column int) table {
	out := table{head: slices.Delete(slices.Clone(t.head), column, column+1)}
	for _, r := range t.rows {
		out.rows = append(out.rows, slices.Delete(slices.Clone(r), column, column+1))
	}
	return out
}

type figure struct {
	file string
	alt  md
}

// quote sets a warning apart.
type quote []block

// group is a run of blocks that HTML sets in an element of its own; Markdown shows only what is in it.
type group struct {
	class, id string
	blocks    []block
}

func (heading) isBlock() {}
func (para) isBlock()    {}
func (list) isBlock()    {}
func (table) isBlock()   {}
func (figure) isBlock()  {}
func (quote) isBlock()   {}
func (group) isBlock()   {}

// tick is a box to tick in a table.
const tick md = "☐"

// bold is text that stands out; no text stays none, for four stars would be printed as they are.
func bold(m md) md {
	if m == "" {
		return ""
	}
	return "**" + m + "**"
}

// labelled is a line of the form "Tool: knife".
func labelled(label string, value md) md { return bold(esc(label)+":") + " " + value }

// words joins texts that are not empty with a separator.
func words(separator string, texts ...string) string {
	var out []string
	for _, t := range texts {
		if t != "" {
			out = append(out, t)
		}
	}
	return strings.Join(out, separator)
}
