package partspec

import (
	"fmt"
	"slices"
)

// checkMatches judges every pattern that is drilled through from one of another part.
func (c *checker) checkMatches(job *Job) {
	for i, p := range c.parts {
		for _, e := range p.features {
			f, _ := job.Parts[i].Feature(e.name).(*Holes)
			if f == nil || f.Match == (FeatureRef{}) || e.broken {
				continue
			}
			if mate := c.matchOf(job, p, e, f); mate != nil {
				c.checkMatch(e, f, mate)
				if !e.broken {
					c.resolveMatch(job, e, p.name, f, mate)
				}
			}
		}
	}
}

// matchOf finds the pattern that a pattern names; nil after an error, told or not.
func (c *checker) matchOf(job *Job, p *partEntry, e *entry, f *Holes) *Holes {
	at := e.at("match")
	part := job.Part(f.Match.Part)
	switch {
	case f.Match.Part == p.name:
		c.fail(e, at, fmt.Sprintf("%s is drilled through from its own part", e.title()), "Name a pattern of another part, like match = part.flange.holes.ring.")
		return nil
	case part == nil:
		if !c.unread {
			c.fail(e, at, fmt.Sprintf("There is no part %q", f.Match.Part), "%s", didYouMean(f.Match.Part, c.partNames(), noParts))
		}
		return nil
	}
	mate, ok := part.Feature(f.Match.Feature).(*Holes)
	if !ok {
		i := slices.IndexFunc(c.parts, func(other *partEntry) bool { return other.name == f.Match.Part })
		if in := c.parts[i].features; !slices.ContainsFunc(in, func(other *entry) bool { return other.name == f.Match.Feature && other.word == "holes" }) {
			c.fail(e, at, fmt.Sprintf("part %q has no holes %q", f.Match.Part, f.Match.Feature), "Name a pattern of holes, like match = part.flange.holes.ring.")
		}
		return nil
	}
	if mate.Match.Part == p.name && mate.Match.Feature == f.Name {
		c.fail(e, at, fmt.Sprintf("%s and %s are drilled through from each other", e.title(), f.Match), "One of them is drilled first, by its own places: leave its match out.")
		return nil
	}
	return mate
}

// checkMatch: the patterns agree, and drill and screw pass the holes of the mate.
func (c *checker) checkMatch(e *entry, f, mate *Holes) {
	at := e.at("match")
	if len(f.Places) != len(mate.Places) {
		c.fail(e, at, fmt.Sprintf("%s and its match have different counts", e.title()), "There are %d holes here and %d in %s.", len(f.Places), len(mate.Places), f.Match)
		return
	}
	for i := range f.Places {
		for k := range i {
			here, there := apart(f.Places[k], f.Places[i]), apart(mate.Places[k], mate.Places[i])
			if (here - there).Abs() > 2*sameLength {
				c.fail(e, at, fmt.Sprintf("%s and its match do not agree", e.title()),
					"Holes %d and %d are %s apart here and %s in %s. Write the figures of one of them as names: circle = part.%s.holes.%s.circle.", k+1, i+1, here, there, f.Match, f.Match.Part, f.Match.Feature)
				return
			}
		}
	}
	passes := mate.Diameter.High
	switch {
	case f.Thread != nil && mate.Thread == nil && f.Thread.Thread.Major > passes+sameLength:
		c.fail(e, at, fmt.Sprintf("The screw of %s does not pass its match", e.title()), "%s is %s over its crests, the holes of %s are %s.",
			f.Thread.Thread.Designation, f.Thread.Thread.Major, f.Match, passes)
	case f.Thread == nil && mate.Thread == nil && f.Diameter.Low > passes+sameLength:
		c.fail(e, at, fmt.Sprintf("The drill of %s does not pass its match", e.title()), "The holes here are %s, those of %s %s: drill the larger ones first, and name these as the match there.",
			f.Diameter.Value, f.Match, mate.Diameter.Value)
	}
}
