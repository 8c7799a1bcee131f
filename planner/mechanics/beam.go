package mechanics

import (
	"errors"
	"math"
)

var errLoose = errors.New("the work swings on one centre: expected a tailstock or a steady as well, or a chuck")

// Section is a plain length of shaft, bar or tube.
type Section struct {
	LengthMM, OutsideDiameterMM float64
	BoreMM                      float64 // 0 for a bar
}

func (s Section) inertia() float64 {
	return math.Pi / 64 * (math.Pow(s.OutsideDiameterMM, 4) - math.Pow(s.BoreMM, 4))
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

// Deflection of the shaft under a force at a distance from the held end, by beam theory with exact cubic elements; a
// plain overhang gives F L^3/(3 E I). N, mm, MPa. Domain: length over diameter of 3 or more (shorter: shear is missing, low by
// 0.54 (D/L)^2). Error: the beam itself a few per cent; spindle, chuck, centre and tool post yield too and are not included.
func (s Shaft) Deflection(forceN, atMM float64) (Deflection, error) {
	total, err := s.check(forceN, atMM)
	if err != nil {
		return Deflection{}, err
	}
	b := s.lay(atMM)
	x := make([]float64, 2*len(b.at))
	for i, z := range b.at {
		if z == atMM {
			x[2*i] = forceN
			break
		}
	}
	b.solve(x)
	d := Deflection{StressMPa: b.stress(x), Confidence: good(bandBeam,
		"bending of the work alone: spindle, chuck and centre yield too")}
	for i, z := range b.at {
		d.MostMM = math.Max(d.MostMM, math.Abs(x[2*i]))
		if z == atMM {
			d.AtForceMM = math.Abs(x[2*i])
		}
	}
	if !finite(d.AtForceMM, d.MostMM, d.StressMPa) {
		return Deflection{Confidence: none("these dimensions drown in rounding")}, nil
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

// A beam is the shaft cut into pieces, with a node at every step, at the force and at the steady.
type beam struct {
	at        []float64
	pieces    []Section
	modulus   float64
	equations *bandMatrix
	held      []int // unknowns that a support keeps at 0
}

func (s Shaft) lay(forceAt float64) *beam {
	b := &beam{at: []float64{0}, modulus: s.ModulusMPa}
	from := 0.0
	for _, c := range s.Sections {
		to := from + c.LengthMM
		for i := 1; i <= beamPieces; i++ {
			end := from + (to-from)*float64(i)/beamPieces
			if i == beamPieces {
				end = to
			}
			b.extend(c, end, forceAt, s.SteadyAtMM)
		}
		from = to
	}
	b.assemble()
	b.held = []int{0}
	if !s.OnCentre {
		b.held = append(b.held, 1)
	}
	for i, z := range b.at {
		if (s.Tailstock && i == len(b.at)-1) || (s.SteadyAtMM > 0 && z == s.SteadyAtMM) {
			b.held = append(b.held, 2*i)
		}
	}
	return b
}

// extend adds a piece up to end, cut where a force or a steady falls within it.
func (b *beam) extend(c Section, end float64, marks ...float64) {
	for {
		from, next := b.at[len(b.at)-1], end
		if from >= end {
			return
		}
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

func (b *beam) assemble() {
	b.equations = newBandMatrix(2*len(b.at), 3)
	for i, c := range b.pieces {
		e := hermite.scaled(c.LengthMM)
		for p := range 4 {
			for q := range 4 {
				b.equations.add(2*i+p, 2*i+q, b.modulus*c.inertia()*e.bends[p][q])
			}
		}
	}
}

// solve overwrites the forces with deflections and slopes; supports carry whatever load stands on them.
func (b *beam) solve(x []float64) bool {
	for _, row := range b.held {
		b.equations.fix(row)
		x[row] = 0
	}
	return b.equations.solve(x)
}

// stress is the largest bending stress M r/I; the moment is E I w” at the ends of each piece.
func (b *beam) stress(x []float64) float64 {
	most := 0.0
	for i, c := range b.pieces {
		start, end := endBends(c.LengthMM, x[2*i:2*i+2], x[2*i+2:2*i+4])
		bend := math.Max(math.Abs(start), math.Abs(end))
		most = math.Max(most, b.modulus*bend*c.OutsideDiameterMM/2)
	}
	return most
}
