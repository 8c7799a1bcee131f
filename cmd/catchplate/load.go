package main

import "catchplate/partspec"

// load reads part files and tells what is wrong with them. With errors the job is nil and the
// command ends; the problems of a good job are warnings.
func (c *cli) load(paths []string) (*partspec.Job, problems, error) {
	job, files, found := partspec.Load(paths)
	c.input = newSources(files.Text)
	p := report(found, c.input)
	if job == nil {
		return nil, p, c.refuse(p)
	}
	p.text(c.talk, c.paintFor(c.talk))
	return job, p, nil
}

// refuse ends a command because of problems in the input: as text on stderr, with --json as the document.
func (c *cli) refuse(p problems) error {
	p.text(c.talk, c.paintFor(c.talk))
	if c.json {
		if err := writeJSON(c.out, p); err != nil {
			return err
		}
	}
	return &failure{code: exitProblems}
}

// loadWorkshop reads the workshop of files that may hold no part: the starter part is read with them. Without files, or when they
// give none, it is the built-in one.
func (c *cli) loadWorkshop(paths []string) (*partspec.Workshop, error) {
	_, files, found := partspec.Load(paths)
	if len(paths) > 0 && len(files.Names()) == 0 {
		c.input = newSources(files.Text)
		return nil, c.refuse(report(found, c.input))
	}
	together := []partspec.Source{{Name: "starter.hcl", Text: []byte(starter)}}
	for _, name := range files.Names() {
		together = append(together, partspec.Source{Name: name, Text: files.Text(name)})
	}
	job, files, found := partspec.Parse(together)
	c.input = newSources(files.Text)
	if job == nil {
		return nil, c.refuse(report(found, c.input))
	}
	return job.Workshop, nil
}
