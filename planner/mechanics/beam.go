package mechanics

import (
	"errors"
	"math"
	"slices"
)

var errLoose = errors.New("the work swings on one centre: expected a tailstock or a steady as well, or a chuck")

// Section is a plain length of shaft, bar or tube.
type Section struct {
	LengthMM, OutsideDiameterMM float64
	BoreMM                      float64 // 0 for a bar
}

func (s Section) inertia() float64 {
	out, in := s.OutsideDiameterMM*s.OutsideDiameterMM, s.BoreMM*s.BoreMM
	return math.Pi / 64 * (out*out - in*in)
}

// coneSlices is how many plain lengths a cone is reckoned as. An overhang that tapers to half bends 18 % too much by them, one of a single length at its thin end 300 %.
const coneSlices = 8

// Cone is a length that tapers from one diameter to another, as plain lengths that are each as thin as their thin end: it bends a little more so than it does. mm.
func Cone(lengthMM, fromDiameterMM, toDiameterMM, boreMM float64) []Section {
	if fromDiameterMM == toDiameterMM {
		return []Section{{lengthMM, fromDiameterMM, boreMM}}
	}
	list := make([]Section, coneSlices)
	for k := range list {
		at := func(i int) float64 {
			return fromDiameterMM + (toDiameterMM-fromDiameterMM)*float64(i)/coneSlices
		}
		list[k] = Section{lengthMM / coneSlices, math.Min(at(k), at(k+1)), boreMM}
	}
	return list
}

// Shaft is work or a tool that stands out from where it is held, section by section.
type Shaft struct {
	Sections   []Section // from the held end outward
	ModulusMPa float64
	OnCentre   bool    // the held end turns on a centre; false: built in (chuck, collet, clamped tool)
	Tailstock  bool    // a centre supports the far end
	SteadyAtMM float64 // a steady, from the held end; 0 = none
}

// Deflection is how far a shaft bends under a force square to it.
type Deflection struct {
	AtForceMM float64
	MostMM    float64
	StressMPa float64 // largest bending stress
	Confidence
}

const (
	beamPieces   = 8   // pieces per section; the nodes are exact, pieces only find the largest deflection
	leastSlender = 3.0 // length over diameter: below it shear adds 6 % and more
	bandBeam     = 10.0
	mostSections = 200
)

// Deflection of the shaft under a force at a distance from the held end, by beam theory: the moment over E I integrated
// exactly along an overhang, with the reactions of tailstock and steady found so that nothing moves there (force method).
// A plain overhang gives F L^3/(3 E I). N, mm, MPa. Domain: length over diameter of 3 or more (shorter: shear is missing, low by
// 0.54 (D/L)^2). Error: the beam itself a few per cent; spindle, chuck, centre and tool post yield too and are not included.
func (s Shaft) Deflection(forceN, atMM float64) (Deflection, error) {
	total, err := s.check(forceN, atMM)
	if err != nil {
		return Deflection{}, err
	}
	b := s.lay(atMM)
	forces := make([]float64, len(b.at))
	loaded := slices.Index(b.at, atMM)
	forces[loaded] = forceN
	y, moments := b.bend(forces)
	d := Deflection{AtForceMM: math.Abs(y[loaded]), StressMPa: b.stress(moments), Confidence: good(bandBeam,
		"bending of the work alone: spindle, chuck and centre yield too")}
	for _, v := range y {
		d.MostMM = math.Max(d.MostMM, math.Abs(v))
	}
	if !finite(d.AtForceMM, d.MostMM, d.StressMPa) {
		return Deflection{Confidence: unsettled}, nil
	}
	if total < leastSlender*s.thickest() {
		d.Confidence = rough(bandBound, "stouter than 3 diameters: shear and the grip add to a small figure")
	}
	return d, nil
}

func (s Shaft) check(forceN, atMM float64) (total float64, err error) {
	list := []limit{
		within("number of sections", float64(len(s.Sections)), 1, mostSections),
		positive("modulus (MPa)", s.ModulusMPa),
	}
	for _, c := range s.Sections {
		list = append(list, positive("section length (mm)", c.LengthMM),
			positive("section diameter (mm)", c.OutsideDiameterMM),
			limit{"section bore (mm)", c.BoreMM, c.BoreMM >= 0 && c.BoreMM < c.OutsideDiameterMM, "0, or less than the diameter"})
		total += c.LengthMM
	}
	if s.OnCentre && !s.Tailstock && s.SteadyAtMM == 0 {
		return 0, errLoose
	}
	list = append(list, notNegative("force (N)", forceN), within("place of the force (mm)", atMM, 0, total),
		within("place of the steady (mm)", s.SteadyAtMM, 0, total))
	return total, firstFault(list...)
}

func (s Shaft) thickest() float64 {
	most := 0.0
	for _, c := range s.Sections {
		most = math.Max(most, c.OutsideDiameterMM)
	}
	return most
}

// A beam is the shaft cut into pieces of one section each, with a node at every step, at the force and at each support.
type beam struct {
	at       []float64 // nodes
	pieces   []Section // between them
	modulus  float64
	hinged   bool  // the held end turns freely
	supports []int // nodes that do not move, besides the held end
}

func (s Shaft) lay(forceAt float64) *beam {
	b := &beam{at: []float64{0}, modulus: s.ModulusMPa, hinged: s.OnCentre}
	from := 0.0
	for _, c := range s.Sections {
		to := from + c.LengthMM
		for i := 1; i < beamPieces; i++ {
			b.extend(c, from+(to-from)*float64(i)/beamPieces, forceAt, s.SteadyAtMM)
		}
		b.extend(c, to, forceAt, s.SteadyAtMM)
		from = to
	}
	for i, z := range b.at {
		if (s.Tailstock && i == len(b.at)-1) || (s.SteadyAtMM > 0 && z == s.SteadyAtMM) {
			b.supports = append(b.supports, i)
		}
	}
	return b
}

// extend adds a piece up to end, cut where a force or a steady falls within it.
func (b *beam) extend(c Section, end float64, marks ...float64) {
	for from := b.at[len(b.at)-1]; from < end; from = b.at[len(b.at)-1] {
		next := end
		for _, m := range marks {
			if m > from && m < next {
				next = m
			}
		}
		piece := c
		piece.LengthMM = next - from
		b.at, b.pieces = append(b.at, next), append(b.pieces, piece)
	}
}

// bend gives deflection and moment at the nodes under forces at the nodes.
func (b *beam) bend(forces []float64) (y, moments []float64) {
	all := append([]float64(nil), forces...)
	y, moments = b.overhang(all)
	n := len(b.supports)
	if n == 0 {
		return y, moments
	}
	// Unknown: the reactions, and on a centre the slope there. Known: no movement at supports, no moment at a centre.
	unknowns := n
	if b.hinged {
		unknowns++
	}
	m, right := newBandMatrix(unknowns, unknowns-1), make([]float64, unknowns)
	for c, node := range b.supports {
		unit := make([]float64, len(b.at))
		unit[node] = 1
		moved, turned := b.overhang(unit)
		for r, seen := range b.supports {
			m.add(r, c, moved[seen])
		}
		if b.hinged {
			m.add(c, n, b.at[node])
			m.add(n, c, turned[0])
		}
	}
	for r, node := range b.supports {
		right[r] = -y[node]
	}
	if b.hinged {
		right[n] = -moments[0]
	}
	m.solve(right)
	for c, node := range b.supports {
		all[node] += right[c]
	}
	y, moments = b.overhang(all)
	if b.hinged {
		for i := range y {
			y[i] += right[n] * b.at[i]
		}
	}
	return y, moments
}

// overhang integrates the moments of forces on the shaft built in at the held end and free elsewhere.
func (b *beam) overhang(forces []float64) (y, moments []float64) {
	y, moments = make([]float64, len(b.at)), make([]float64, len(b.at))
	shear := 0.0
	for i := len(b.pieces) - 1; i >= 0; i-- {
		shear += forces[i+1]
		moments[i] = moments[i+1] + shear*b.pieces[i].LengthMM
	}
	slope := 0.0
	for i, c := range b.pieces {
		l, k := c.LengthMM, 1/(b.modulus*c.inertia())
		y[i+1] = y[i] + slope*l + l*l*(2*moments[i]+moments[i+1])/6*k
		slope += l * (moments[i] + moments[i+1]) / 2 * k
	}
	return y, moments
}

// stress is the largest bending stress M r/I; at a shoulder the weaker section counts.
func (b *beam) stress(moments []float64) float64 {
	most := 0.0
	for i, c := range b.pieces {
		m := math.Max(math.Abs(moments[i]), math.Abs(moments[i+1]))
		most = math.Max(most, m*c.OutsideDiameterMM/2/c.inertia())
	}
	return most
}
