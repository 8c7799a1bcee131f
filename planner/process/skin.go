package process

import (
	"fmt"
	"math"

	"catchplate/partspec"
	"catchplate/planner/numbers/speed"
	"catchplate/planner/shape"
)

// The skin of black and cast stock (rule A-24): how far under the stock's outside the first cut goes, on radius, and the share of the usual speed that it runs at. Ours.
const (
	skinDepth = 1.5
	skinSpeed = 0.75
	leastLeft = 0.2 // under this no cut of its own is left for after the first
)

// skinned reports whether the outside of the stock is a skin that the first cut must go under.
func (c *Context) skinned() bool {
	s := c.Part.Stock
	return s.Rough && (s.Kind == partspec.Bar || s.Kind == partspec.Tube) && c.Part.Seen == nil && c.Rules.Has("A-24")
}

// onSkin reports whether a cut that comes down from a radius begins on the skin.
func (c *Context) onSkin(radius float64) bool {
	return c.skinned() && radius > c.stockRadius()-sizeNoise
}

// skinCut is how deep the first cut is set: a graduation of the cross dial under the skin, as settings are rounded to leave metal.
func (c *Context) skinCut() float64 {
	d, _ := c.Lathe.Dial("cross")
	return skinDepth + radial(d)
}

// skinLack says that a curve or a cone would begin in the skin, with too little over it to rough first; empty where it does not.
func (c *Context) skinLack(b shape.Block) string {
	if !c.skinned() || c.stockRadius()-b.Greatest > leaveRadius {
		return ""
	}
	return fmt.Sprintf("%s: the stock has a skin and stands only %.2f over it, on radius: take stock that is at least %.0f larger, so that it is roughed first", b.Name, c.stockRadius()-b.Greatest, 2*skinDepth)
}

// underSkin is a rate for a cut that begins on the skin: slower, and with a finer feed for the depth that it must have.
func (c *Context) underSkin(r Rate) Rate {
	r.skin = true
	return c.capped(r)
}

// skinFeed is the feed at which the first cut pushes no harder than an ordinary pass, F being in proportion to f^(1-mc).
func (c *Context) skinFeed(r Rate) float64 {
	share := math.Min(1, r.DepthMM/(c.skinCut()+leastLeft))
	return math.Max(leastFeed, math.Floor(100*r.FeedMM*math.Pow(share, 1/(1-c.Part.Material.Mc)))/100)
}

// skinCap is the speed that the skin allows.
func skinCap(want speed.Want) speed.Cap {
	return speed.Cap{What: "the skin of the stock", RPM: want.RPM * skinSpeed, Rule: "A-24", Source: "US Navy, Machinery Repairman training course; the share is ours"}
}

// throughSkin makes a way's force that of its first cut. It goes no less deep where light cuts are wanted: they have a finer feed then, as a blade's.
func (w *Way) throughSkin(c *Context) {
	if w.SkinMM = c.skinCut(); w.DeepMM < w.SkinMM+leastLeft+DepthSlack {
		w.SkinMM = w.DeepMM
	}
	w.ForceN = math.Max(w.ForceN, c.force(w.SkinMM, w.Rate.FeedMM))
}

// underSkin takes the first cut from the skin; where little would be left after it, the whole is one cut. It tells what radius there is then, and how deep passes go
// from there.
func (p *page) underSkin(skin, last, deepest float64, start, stop int64) (before, most float64) {
	p.note("Turn the work round by hand first: set for the first cut, the tool must meet metal all the way round. Feed that cut on to its end; never let the edge rub in the skin.")
	p.why("scale and sand blunt an edge that rubs in them", "A-24")
	marks, r := p.cross(skin - p.c.skinCut())
	if r <= last+leastLeft {
		p.op.DepthMM = math.Max(p.op.DepthMM, math.Ceil(100*(skin-last))/100)
		return skin, math.Max(deepest, skin-last)
	}
	p.op.DepthMM = math.Max(p.op.DepthMM, math.Ceil(100*(skin-r))/100)
	p.cut("through the skin", at(marks, start), at(marks, stop), nil)
	p.line("through the skin", "cross", marks, p.diameter(r), "", false)
	return r, deepest
}
