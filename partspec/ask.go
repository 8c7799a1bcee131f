package partspec

import (
	"fmt"

	"catchplate/partspec/units"
)

// smallHole is the size above which a small hole in thick stock is nothing to
// ask about.
const smallHole units.Length = 2

// The diameters of one part rarely differ by more than this unless one of them
// was read in the wrong unit; inches read as millimetres differ by 25.4.
const (
	askFrom = 18.0
	askTo   = 60.0
)

// askAboutUnits asks about bare diameters that are some 25 times smaller than
// the stock. The other way round is an error already: such a part is larger than
// its stock.
func (c *checker) askAboutUnits(p *partEntry, part *Part) {
	if p.inches {
		return
	}
	for _, e := range p.features {
		c.askAboutHole(e, part)
	}
	if part.Stock.Outside.Value == 0 {
		return
	}
	for _, e := range p.features {
		f := e.field("diameter")
		isHole := e.word == "bore" || e.word == "counterbore"
		if f == nil || e.broken || f.state != fieldKnown || !isHole && stageOf(e) != stageOutside {
			continue
		}
		size := f.value.size.Nominal
		ratio := float64(part.Stock.Outside.Value / size.Value)
		if size.InInches || ratio < askFrom || ratio > askTo || isHole && size.Value > smallHole {
			continue
		}
		c.report(question(f.at, fmt.Sprintf("Is %s really %s across?", e.title(), size.Value.Text(units.InMM)),
			"It is %.0f times smaller than its stock, %s. If the drawing has inches, write \"%s in\".",
			ratio, part.Stock.Outside.Value, units.Decimal(float64(size.Value), 4)))
	}
}

// askHole is the diameter under which a hole beside the axis is asked about, when the metal it goes into is at least so many times as deep.
const (
	askHole     units.Length = 1
	askHoleDeep units.Length = 3
)

// askAboutHole asks about bare diameters of holes that few drills have: they are usual in inches.
func (c *checker) askAboutHole(e *entry, part *Part) {
	f := e.field("diameter")
	if e.word != "holes" && e.word != "cross_hole" || e.broken || f == nil || f.state != fieldKnown {
		return
	}
	size := f.value.size.Nominal
	deep := part.Length.Value
	if size.InInches || size.Value >= askHole || deep < askHoleDeep*size.Value {
		return
	}
	c.report(question(f.at, fmt.Sprintf("Is %s really %s across?", e.title(), size.Value.Text(units.InMM)),
		"Few drills are so small. If the drawing has inches, write \"%s in\".", units.Decimal(float64(size.Value), 4)))
}
