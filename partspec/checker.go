package partspec

import (
	"fmt"

	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// checker carries one run: what the files say, and what was found wrong.
type checker struct {
	files  *Sources
	found  Diagnostics
	unread bool // a file could not be read: names it may hold are not missed

	shop      *Workshop    // what is owned, once it is read
	parts     []*partEntry // in file order
	fits      []*entry
	workshops []*hclsyntax.Block
	strays    []*entry // what cannot be in the job, such as a second part of one name: only its values are read
}

func newChecker(files *Sources) *checker { return &checker{files: files} }

func (c *checker) report(found ...*Diagnostic) { c.found = append(c.found, found...) }

// fail reports an error of an entry and marks it, so that nothing that rests on
// it is judged.
func (c *checker) fail(e *entry, at Range, summary, detail string, args ...any) {
	e.broken = true
	c.report(fault(at, summary, detail, args...))
}

// topWords may stand at the top of a file.
var topWords = []string{"workshop", "part", "fit"}

// gather takes the blocks of one file.
func (c *checker) gather(body *hclsyntax.Body) {
	for _, a := range sortedAttributes(body) {
		c.report(fault(a.NameRange, fmt.Sprintf("%s stands outside every block", a.Name),
			"Put it into a part or a workshop; at the top of a file stand the blocks part, workshop and fit."))
	}
	for _, block := range body.Blocks {
		switch block.Type {
		case "workshop":
			c.workshops = append(c.workshops, block)
		case "part":
			c.gatherPart(block)
		case "fit":
			c.gatherFit(block)
		default:
			c.unknownBlock(block, "", topWords)
		}
	}
}

// job builds everything that was gathered: values first, then the workshop, the
// parts, and the fits that bind them.
func (c *checker) job() *Job {
	c.evaluateParts()
	c.shop = c.workshop()
	job := &Job{Workshop: c.shop}
	for _, p := range c.parts {
		job.Parts = append(job.Parts, c.buildPart(p))
	}
	job.Fits = c.resolveFits(job)
	c.checkMatches(job)
	for i, p := range c.parts {
		c.askAboutUnits(p, job.Parts[i])
	}
	if len(c.parts) == 0 && len(c.workshops) == 0 && !c.unread {
		c.report(fault(c.start(), "There is nothing to make", "Write a part: part \"bush\" { material = \"brass\" ... }."))
	}
	return job
}

// start is the beginning of the first file.
func (c *checker) start() Range {
	r := Range{}
	r.Start.Line, r.Start.Column = 1, 1
	r.End = r.Start
	if names := c.files.Names(); len(names) > 0 {
		r.Filename = names[0]
	}
	return r
}
