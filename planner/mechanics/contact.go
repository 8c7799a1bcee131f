package mechanics

import "math"

const (
	// contactCells cut the half sector: each is a box of pressure, and each is watched for contact at its middle.
	contactCells = 72
	// contactTerms is how many harmonics carry the boxes; the next one is zero at the middle of every cell.
	contactTerms = contactCells
	// contactRounds bounds the search for the cells that press; 17 were the most seen.
	contactRounds = 60
	// contactTolerance is the overlap, as a share of the radius, that rounding may leave.
	contactTolerance = 1e-12
)

// finely are the cosines of i pi/(2 cells) over a full turn.
var finely = func() (table [4 * contactCells]float64) {
	for i := range table {
		table[i] = math.Cos(float64(i) * math.Pi / (2 * contactCells))
	}
	return table
}()

// A contact finds which cells of a face press. With the cells' middles at (i + 1/2) of a cell, harmonic k of a box of
// 1 MPa on cell i is 4/(pi k) sin(k pi/2N) cos(k pi (2i+1)/2N), and 1/N for k = 0.
type contact struct {
	*field
	angles []float64 // middle of each cell, rad
	force  []float64 // share of the jaw's force that 1 MPa on each cell carries along the jaw, mm of face
}

func (f *field) contact() *contact {
	c := &contact{field: f}
	cell := math.Pi / float64(f.jaws) / contactCells
	for i := range contactCells {
		angle := (float64(i) + 0.5) * cell
		c.angles = append(c.angles, angle)
		c.force = append(c.force, 4*math.Sin(cell/2)*math.Cos(angle)*f.outside)
	}
	return c
}

// boxHeights are the amplitudes of a box's harmonics before their cosines.
var boxHeights = func() (table [contactTerms]float64) {
	table[0] = 1. / contactCells
	for k := 1; k < len(table); k++ {
		table[k] = 4 / (math.Pi * float64(k)) * math.Sin(float64(k)*math.Pi/(2*contactCells))
	}
	return table
}()

// amplitudes gathers the Fourier amplitudes of the cells' pressures.
func (c *contact) amplitudes(cells []float64) []float64 {
	sum := make([]float64, len(c.harmonics))
	for k := range sum {
		for i, p := range cells {
			if p != 0 {
				sum[k] += p * finely[k*(2*i+1)%len(finely)]
			}
		}
		sum[k] *= boxHeights[k]
	}
	return sum
}

// moves are the movements of a face in the middle of the grip for each harmonic of 1 MPa on a face.
func (c *contact) moves(pressed, seen face) []float64 {
	list := make([]float64, len(c.harmonics))
	for k, h := range c.harmonics {
		a := h.outside
		if pressed == onBore {
			a = h.bore
		}
		list[k] = c.moveAmplitude(a, 1, c.grip/2, seen)
	}
	return list
}

// An influence tells how far 1 MPa on cell i moves cell j. Products of cosines are sums of cosines, so that it depends on
// i-j and i+j+1 alone: one list instead of a matrix.
type influence []float64

func influenceOf(moves []float64) influence {
	list := make(influence, 2*contactCells)
	for t := range list {
		for k, u := range moves {
			list[t] += u * boxHeights[k] / 2 * finely[2*k*t%len(finely)]
		}
	}
	return list
}

func (g influence) at(j, i int) float64 {
	apart := i - j
	if apart < 0 {
		apart = -apart
	}
	return g[apart] + g[i+j+1]
}

// on is the movement of cell j under all cells.
func (g influence) on(j int, cells []float64) float64 {
	sum := 0.0
	for i, p := range cells {
		if p != 0 {
			sum += p * g.at(j, i)
		}
	}
	return sum
}

// revise drops the cells that pull and adds the allowed ones that would overlap; false when nothing changed.
func (c *contact) revise(press, allowed []bool, cells []float64, overlap func(i int) float64) bool {
	changed := false
	for i := range press {
		switch {
		case press[i] && cells[i] < 0:
			press[i], changed = false, true
		case !press[i] && allowed[i] && overlap(i) > contactTolerance*c.outside:
			press[i], changed = true, true
		}
	}
	return changed
}

// chosen lists the marked cells.
func chosen(marks []bool) []int {
	var list []int
	for i, m := range marks {
		if m {
			list = append(list, i)
		}
	}
	return list
}

// placed puts values back at the cells they belong to.
func placed(list []int, values []float64) []float64 {
	cells := make([]float64, contactCells)
	for r, i := range list {
		cells[i] = values[r]
	}
	return cells
}
