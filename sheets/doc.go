// Package sheets prints a plan: operation sheets in Markdown, the same as self-contained HTML that prints on A4 and Letter, sketches as SVG
// and the dial tables as CSV.
//
// In flows a plan.Plan; out flow files as names and bytes, in a fixed order. A part becomes a tree of blocks, section by section; the tree
// is written as Markdown, and goldmark turns that very Markdown into the HTML. Every figure on a sheet stands in the plan: nothing is
// reckoned here, figures only become text through partspec/units.
//
// What holds after: the same plan gives the same bytes; words that came from people are escaped in every form; the HTML loads nothing from
// anywhere and runs no script; no two files have one name.
package sheets
