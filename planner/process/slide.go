package process

import "catchplate/partspec"

// SlideMill is the lathe as the milling machine that a vertical slide on its cross slide makes of it. The cutter turns in the spindle and the work stands on the
// slide, so that the dial of the cross slide is x, the slide's own y, and the saddle's z, which counts into the work. ok is false where one of them is wanting.
func SlideMill(lathe partspec.Machine, slide partspec.Holding) (m partspec.Machine, ok bool) {
	cross, hasCross := lathe.Dial("cross")
	saddle, hasSaddle := lathe.Dial("saddle")
	if lathe.Kind == "" || slide.Dial.Name == "" || !hasCross || !hasSaddle {
		return partspec.Machine{}, false
	}
	m = partspec.Machine{Kind: partspec.Mill, Name: lathe.Name, PowerKW: lathe.PowerKW, Speeds: lathe.Speeds, SlowestSpeed: lathe.SlowestSpeed, FastestSpeed: lathe.FastestSpeed}
	up := slide.Dial
	cross.Name, up.Name, saddle.Name = "x", "y", "z"
	m.Dials = []partspec.Dial{cross, up, saddle}
	return m, true
}

// locked is what is locked while an edge is milled.
func (c *Context) locked() string {
	if c.Slide != nil {
		return "the slides that do not feed locked"
	}
	return "table locked across"
}

// millDial and millSlide are what a dial of the mill, and the slide that it moves, are called: on a lathe that mills they go by the lathe's names.
func (c *Context) millDial(name string) string {
	if called, ok := latheDials[name]; ok && c.Slide != nil {
		name = called
	}
	return name + " dial"
}

func (c *Context) millSlide(name string) string {
	switch called := latheDials[name]; {
	case c.Slide == nil:
		return name + " slide"
	case called == "slide":
		return "vertical slide"
	default:
		return called + " slide"
	}
}

// latheDials are the dials of a lathe that mills, by those of the mill that it is then.
var latheDials = map[string]string{"x": "cross", "y": "slide", "z": "saddle"}
