// Package draw decides what a sketch shows and where: the dimensioned part, each holding with the metal that comes off in it, the template for marking
// out, the map of metal to file and the figure of a step table.
//
// Three kinds of holding look different: work on a lathe's axis (setup.go), flat work and turned work that stands on a table, seen from its free face and
// cut open (flatsetup.go, upright.go), and turned work that lies along a table (across.go).
//
// In flows a plan.Part or one of its setups; out flows a Page, a list of shapes and texts in millimetres on paper, with the y axis
// downwards from the page's top left corner. How a page is written (SVG) is another package's business.
//
// What holds after: every shape lies on its page, no two texts overlap, the page's width and height are whole multiples of Module, and the
// same plan gives the same page.
package draw
