package holding

import (
	"fmt"
	"math"
	"strings"

	"catchplate/partspec"
	"catchplate/planner/plan"
	"catchplate/planner/process"
)

// FlatStep is a task of a setup, the way it is done there, and how deep its passes go as a part of the ordinary depth.
type FlatStep struct {
	Task  int
	Way   process.Way
	Light float64
}

// at is the moment at which a setup begins, with all that is done in it.
func (s Shop) at(steps []FlatStep, done func(int) bool) moment {
	at := moment{flat: s.flatBody(done), done: done, light: 1}
	for _, st := range steps {
		at.tasks, at.ways = append(at.tasks, st.Task), append(at.ways, st.Way)
		at.light = math.Min(at.light, st.Light)
	}
	return at
}

// FlatSetup fills in how a flat part is held in a setup, once its steps are known: title, grip, clamps or presses, bed, balance, where the work lies, and what to
// do in order. done tells what was done before it.
func (s Shop) FlatSetup(m Mount, steps []FlatStep, done func(int) bool, setup *plan.Setup) {
	at := s.at(steps, done)
	setup.Title = m.Title()
	if datum := s.Part.Outline.Datum; m.Machine != "" && m.Machine != partspec.Bench && len(datum) > 0 {
		setup.Locates = "its " + strings.Join(datum, " and ") + " edges" // the dials count from them, whatever it is held by
	}
	setup.Grip = plan.Grip{Kind: "bench", Surface: m.Surface, FromZ: tidyMM(at.flat.Back), ToZ: tidyMM(at.flat.Front)}
	setup.CentreX, setup.CentreY, setup.LocateMM = tidyMM(m.CentreX), tidyMM(m.CentreY), tidyMM(m.Locate)
	switch {
	case m.Machine == partspec.Bench:
		setup.LocateMM = 0
		setup.How = []string{"Hold it in the bench vice, soft jaws on finished edges and faces."}
	case m.Holding.Kind == partspec.Vice:
		s.viceSetup(m, at, s.gripping(m, steps, done), setup)
	case m.Holding.Kind == partspec.TableClamps:
		s.tableSetup(m, at, setup)
	case m.Holding.Kind == partspec.Faceplate:
		s.plateSetup(m, at, setup)
	case m.Holding.Kind == partspec.AnglePlate:
		s.ledgeSetup(m, at, setup)
	case m.Holding.Kind == partspec.FourJaw:
		s.fourJawSetup(m, at, s.gripping(m, steps, done), setup)
	case m.Holding.Kind == partspec.ThreeJaw || m.Holding.Kind == partspec.SoftJaws:
		s.discSetup(m, at, s.gripping(m, steps, done), setup)
	default:
		s.boreSetup(m, at, setup)
	}
}

// flatTitle names a setup of flat work.
func (m Mount) flatTitle() string {
	face := FaceName(m.Free)
	switch {
	case m.Machine == partspec.Bench:
		return "At the bench"
	case m.OnSlide():
		return fmt.Sprintf("Vertical slide, in its vice by the %s, %s towards the spindle", strings.TrimPrefix(m.Surface, "its "), face)
	case m.Holding.Kind == partspec.Vice:
		return fmt.Sprintf("Machine vice on parallels, gripped by the %s, %s up", strings.TrimPrefix(m.Surface, "its "), face)
	case m.Holding.Kind == partspec.TableClamps:
		return fmt.Sprintf("Clamped to the %s's table, %s up%s", m.Machine, face, strings.TrimPrefix(m.Surface, "its "+FaceName(m.Free.Other())))
	case m.Holding.Kind == partspec.Faceplate:
		return fmt.Sprintf("Faceplate, running true about %s, %s outward", m.About, face)
	case m.Holding.Kind == partspec.AnglePlate:
		return fmt.Sprintf("Angle plate on the faceplate, standing on %s, running true about %s, %s outward", m.Surface, m.About, face)
	case m.Holding.Kind == partspec.FourJaw:
		return fmt.Sprintf("Four-jaw chuck by its sides, running true about %s, %s outward", m.About, face)
	}
	return fmt.Sprintf("%s on %s, %s outward", m.noun(), m.Surface, face)
}

// tidyMM takes the noise of sums out of a place.
func tidyMM(v float64) float64 { return math.Round(v*1e6) / 1e6 }

func round1(v float64) float64 { return math.Round(v*10) / 10 }

func tidyPresses(list []plan.Press) []plan.Press {
	for i, p := range list {
		list[i] = plan.Press{XMM: tidyMM(p.XMM), YMM: tidyMM(p.YMM), AngleDeg: tidyMM(p.AngleDeg), WidthMM: tidyMM(p.WidthMM)}
	}
	return list
}

func tidyStrips(list []plan.Strip) []plan.Strip {
	for i, p := range list {
		list[i] = plan.Strip{X0: tidyMM(p.X0), Y0: tidyMM(p.Y0), X1: tidyMM(p.X1), Y1: tidyMM(p.Y1)}
	}
	return list
}

func tidyClamps(list []plan.Clamp) []plan.Clamp {
	out := append([]plan.Clamp(nil), list...)
	for i, c := range out {
		out[i] = plan.Clamp{XMM: tidyMM(c.XMM), YMM: tidyMM(c.YMM), ToeMM: tidyMM(c.ToeMM), AngleDeg: tidyMM(c.AngleDeg), StudMM: tidyMM(c.StudMM), ForceN: math.Floor(c.ForceN)}
	}
	return out
}

func round3(v float64) float64 { return math.Round(v*1e3) / 1e3 }

// howFound tells how the place that runs true, or the nought of the dials, is found, and how far off that leaves it.
func (s Shop) howFound(m Mount) []string {
	off := fmt.Sprintf("within %.2f", m.Locate)
	switch {
	case m.Machine == partspec.Drill:
		return nil
	case m.Machine != "" && len(s.Part.Outline.Datum) == 0:
		return []string{"Find the middle half-way between opposite sides of the work, or sweep its bore once that is there: the first hole that is made begins the coordinates."}
	case m.Machine != "":
		return []string{"Find the two datum edges: how far they then lie from where the dials have them is told above."}
	case m.By == ByMark:
		return []string{fmt.Sprintf("Centre finder in the punch mark of %s: tap the work until its tail stands still against the indicator; the place is then %s.", m.About, off)}
	case m.By == ByBore:
		return []string{fmt.Sprintf("Indicator in the bore %s: tap the work until it reads the same all round; the place is then %s.", m.About, off)}
	}
	return []string{fmt.Sprintf("Set %s by its two datum edges: with the indicator on each edge, turned level, half the sum over a bar in the spindle; the place is then %s.", m.About, off)}
}
