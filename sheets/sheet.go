package sheets

import (
	"fmt"
	"slices"

	"catchplate/partspec/units"
	"catchplate/planner/parallel"
	"catchplate/planner/plan"
	"catchplate/sheets/draw"
	"catchplate/sheets/svg"
)

// Options are the choices of the person who prints.
type Options struct {
	Paper string // "a4" or "letter"; empty is "a4"
}

// File is one file of the result. Name has no folder.
type File struct {
	Name string
	Data []byte
}

// section is one part of a sheet. It gives no blocks when there is nothing to say.
type section func(*sheet) []block

// sections are a sheet's, in printed order.
var sections = []section{
	opening, refusals, drawing, stock, kit, makeFirst, glance, cautions,
	holdings, passedOver, restsOn, proof, rulesCited,
}

// sheet is a part while it is printed.
type sheet struct {
	plan *plan.Plan
	part *plan.Part
	base string // start of the names of its files
	// figures are the sketches, by file name, as elements for HTML; files keeps them in order as files.
	figures map[string][]byte
	files   []File
}

// Render prints all parts of a plan, and an index when there are several.
func Render(p *plan.Plan, opt Options) ([]File, error) {
	paper, err := pageSize(opt.Paper)
	if err != nil {
		return nil, err
	}
	if err := checkFigures(p); err != nil {
		return nil, err
	}
	names := fileNames(p.Parts)
	made, wrong := make([][]File, len(p.Parts)), make([]error, len(p.Parts))
	parallel.Each(len(p.Parts), func(i int) {
		s := &sheet{plan: p, part: worded(&p.Parts[i]), base: names[i], figures: map[string][]byte{}}
		made[i], wrong[i] = s.render(paper)
	})
	for i, err := range wrong {
		if err != nil {
			return nil, fmt.Errorf("sheet of %s: %w", p.Parts[i].Name, err)
		}
	}
	out := slices.Concat(made...)
	if len(p.Parts) > 1 {
		files, err := index(p, names, paper)
		if err != nil {
			return nil, err
		}
		out = append(out, files...)
	}
	return out, nil
}

func (s *sheet) render(paper string) ([]File, error) {
	var tree []block
	for _, write := range sections {
		tree = append(tree, write(s)...)
	}
	html, err := htmlPage(draw.Title(s.part.Name), paper, tree, s.figures)
	if err != nil {
		return nil, err
	}
	out := []File{{s.base + ".md", []byte(markdown(tree))}, {s.base + ".html", html}}
	out = append(out, s.files...)
	if len(s.part.Setups) > 0 {
		for _, t := range []struct {
			name string
			make func(*plan.Part) ([]byte, error)
		}{{"dials", dialTable}, {"holes", holesTable}, {"steps", stepsTable}} {
			table, err := t.make(s.part)
			if err != nil {
				return nil, err
			}
			if table != nil {
				out = append(out, File{s.base + "-" + t.name + ".csv", table})
			}
		}
	}
	return out, nil
}

// figure draws a page into the sheet's files and gives the block that shows it.
func (s *sheet) figure(p draw.Page) block {
	file := p.Name + ".svg"
	s.figures[file] = svg.Inline(p)
	s.files = append(s.files, File{file, svg.File(p)})
	return figure{file: file, alt: esc(p.Title)}
}

// length shows a length in the drawing's unit first.
func (s *sheet) length(mm float64) string {
	if s.part.DrawnInInch {
		return units.Length(mm).Both(units.InInch)
	}
	return units.Length(mm).String()
}

func minutes(m float64) string { return units.Minutes(m).String() }

func newtons(n float64) string { return units.Force(n).String() }

// cite shows the rule behind a sentence.
func cite(rule string) md {
	if rule == "" {
		return ""
	}
	return " (" + esc(rule) + ")"
}
