package process

import (
	"fmt"

	"catchplate/partspec/units"
	"catchplate/planner/numbers/dividing"
	"catchplate/planner/plan"
)

// turnHead puts on the card how a dividing head is turned until the work's direction looks up.
func (p *page) turnHead(w Way) {
	d := p.j.Setup.Dividing
	if d == nil {
		return
	}
	p.head, _ = dividing.Head{Ratio: d.Ratio, Circles: []int{d.Circle}}.Count(d.Circle, w.AcrossDeg-p.j.Setup.AcrossDeg)
	circle := int64(d.Circle)
	reads, on := "holes", "circle"
	if d.Ratio == 1 {
		reads, on = "notches", "plate"
	}
	p.op.Card = append(p.op.Card, plan.Line{Label: "turn the work", Dial: plan.HeadDial, Counted: true, Turns: p.head / circle, Marks: p.head % circle, Total: p.head, Reads: reads,
		Reading: fmt.Sprintf("%s°", units.Decimal(d.Degrees(p.head), 4)), Makes: fmt.Sprintf("%s° of the drawing looks up", units.Decimal(w.AcrossDeg, 4)), Note: fmt.Sprintf("marks are %s of the %s of %d; lock the spindle", reads, on, d.Circle)})
	p.why("what lies round the axis is divided in one setting, every place counted from one nought", "C-24d")
}

// onHead adds to every cut how the dividing head then stands.
func (p *page) onHead() {
	if p.j.Setup == nil || p.j.Setup.Dividing == nil {
		return
	}
	at := plan.Reading{Dial: plan.HeadDial, Graduations: p.head}
	for i := range p.op.Cuts {
		c := &p.op.Cuts[i]
		c.From, c.To = append(c.From[:len(c.From):len(c.From)], at), append(c.To[:len(c.To):len(c.To)], at)
	}
}
