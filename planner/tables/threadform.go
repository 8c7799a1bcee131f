package tables

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"catchplate/partspec/units"
)

// Form is the shape of a thread.
type Form string

// The forms. A bad row of a table has the empty form.
const (
	FormISO60     Form = "60 degrees"   // ISO 68-1, and ASME B1.1 which has the same figures
	FormWhitworth Form = "55 degrees"   // BS 84, also ISO 228-1
	FormBA        Form = "47.5 degrees" // BS 93
)

// profile holds a form's depths as multiples of the pitch.
type profile struct {
	angle      units.Angle
	external   float64 // depth of the bolt's thread
	internal   float64 // depth of the nut's thread
	effective  float64 // major minus effective diameter
	engagement float64 // diametral depth that counts as 100 %
}

// profileOf gives the figures of a form. For 60 degrees H = sqrt(3)/2 P: bolt
// 17/24 H, nut 5/8 H, effective 3/4 H, and 100 % engagement is 1.5 H, the rule
// that handbooks tabulate. Whitworth: 0.640327 P. BA: 0.6 P.
func profileOf(f Form) profile {
	h := math.Sqrt(3) / 2
	switch f {
	case FormISO60:
		return profile{60, h * 17 / 24, h * 5 / 8, h * 3 / 4, h * 3 / 2}
	case FormWhitworth:
		return profile{55, 0.640327, 0.640327, 0.640327, 1.280654}
	case FormBA:
		return profile{47.5, 0.6, 0.6, 0.6, 1.2}
	}
	return profile{}
}

func formOf(s Series) Form {
	switch s {
	case SeriesMetricCoarse, SeriesMetricFine, SeriesUNC, SeriesUNF, SeriesUN:
		return FormISO60
	case SeriesBA:
		return FormBA
	case SeriesME40, SeriesME32, SeriesBrass, SeriesBSW, SeriesBSF, SeriesG, SeriesWhitworth:
		return FormWhitworth
	}
	return ""
}

func standardOf(s Series) string {
	switch s {
	case SeriesMetricCoarse, SeriesMetricFine:
		return "ISO 261 / ISO 724"
	case SeriesBA:
		return "BS 93"
	case SeriesME40, SeriesME32:
		return "Model Engineer series (55 deg Whitworth form)"
	case SeriesBrass:
		return "British Standard Brass (55 deg Whitworth form)"
	case SeriesG:
		return "ISO 228-1 / BS 2779"
	case SeriesUNC, SeriesUNF, SeriesUN:
		return "ASME B1.1"
	}
	return "BS 84"
}

// threadOf makes the geometry of a thread. An inch size gives its own major
// diameter, and threads an inch give the pitch, so that both are exact.
func threadOf(s Series, size string, major, pitch units.Length, tpi float64) Thread {
	if exact, ok := inchMajor(s, size); ok {
		major = exact
	}
	if tpi > 0 && s != SeriesBA {
		pitch = units.Inch / units.Length(tpi)
	}
	p := profileOf(formOf(s))
	depth := func(factor float64) units.Length {
		d := units.Length(factor) * pitch
		if s == SeriesBA {
			d = (d * 200).Round(0) / 200 // BS 93 prints depths to 0.005 mm
		}
		return d
	}
	t := Thread{
		Series: s, Form: formOf(s), AngleDeg: p.angle, size: size,
		Major: major.Round(nanometre), Pitch: pitch.Round(nanometre), Depth: depth(p.external).Round(4),
		Effective: (major - depth(p.effective)).Round(4),
		CoreExt:   (major - 2*depth(p.external)).Round(4), MinorInt: (major - 2*depth(p.internal)).Round(4),
	}
	if s != SeriesMetricCoarse && s != SeriesMetricFine && s != SeriesBA {
		t.TPI = tpi
	}
	return t
}

// inchMajor is the major diameter that an inch size names: "1/4" is 6.35 mm,
// "#10" is 0.060 + 10 x 0.013 in (ASME B1.1). A G size names the pipe's bore.
func inchMajor(s Series, size string) (units.Length, bool) {
	switch s {
	case SeriesMetricCoarse, SeriesMetricFine, SeriesBA, SeriesG:
		return 0, false
	}
	if number, ok := strings.CutPrefix(size, "#"); ok {
		n, err := strconv.Atoi(number)
		return units.Length(60+13*n) * units.Thou, err == nil
	}
	major, err := units.ParseLength(size, units.Inch)
	return major, err == nil
}

// lastBA is the smallest BA size.
const lastBA = 25

// baSize gives major diameter and pitch of a BA number by BS 93: P = 0.9^n and
// D = 6 P^1.2 with P unrounded, both then rounded to two figures.
func baSize(number int) (major, pitch units.Length) {
	p := math.Pow(0.9, float64(number))
	return twoFigures(6 * math.Pow(p, 1.2)), twoFigures(p)
}

func twoFigures(x float64) units.Length {
	scale := math.Pow10(1 - int(math.Floor(math.Log10(x))))
	return units.Length(math.Round(x*scale) / scale)
}

// Engagement is how much of a full thread a hole of that diameter leaves, in
// percent: (major - hole) / (k P) x 100 with k 1.299 for 60 degrees, 1.2807 for
// 55, 1.2 for BA. Hole and thread in millimetres; above 100 the tap jams.
func (t Thread) Engagement(hole units.Length) float64 {
	full := units.Length(profileOf(t.Form).engagement) * t.Pitch
	if full <= 0 {
		return 0
	}
	return math.Round(float64((t.Major-hole)/full)*1000) / 10
}

// HoleFor is the hole that leaves that much of a full thread, in percent.
func (t Thread) HoleFor(percent float64) units.Length {
	return t.Major - units.Length(profileOf(t.Form).engagement*percent/100)*t.Pitch
}

// shallowest is the least share of the major diameter that a believable
// thread leaves as core: every standard thread leaves more.
const shallowest = 0.5

// validate refuses a thread that cannot be cut.
func (t Thread) validate() error {
	if t.Form == "" || !(t.Pitch > 0) || !(t.Major > 0) {
		return fmt.Errorf("a thread needs a diameter and a pitch above 0")
	}
	if t.CoreExt < shallowest*t.Major {
		return fmt.Errorf("a pitch of %s is too coarse for a diameter of %s", t.Pitch, t.Major)
	}
	if t.Pitch < t.Major/maxThreadsInDiameter {
		return fmt.Errorf("a pitch of %s is too fine for a diameter of %s", t.Pitch, t.Major)
	}
	return nil
}

// maxThreadsInDiameter bounds how fine a thread may be: no series has a hundred
// threads in a length of one diameter.
const maxThreadsInDiameter = 100
