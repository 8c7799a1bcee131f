package mechanics

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"sort"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A feCase is one row of testdata/cases.csv: a finite-element result for a held ring or plate. Origin and columns:
// testdata/README.md.
type feCase struct {
	t      *testing.T
	values map[string]string
}

func (c feCase) text(column string) string {
	v, ok := c.values[column]
	require.True(c.t, ok, "no column %s", column)
	return v
}

func (c feCase) number(column string) float64 {
	v, err := strconv.ParseFloat(c.text(column), 64)
	require.NoError(c.t, err, "%s of %s", column, c.text("id"))
	return v
}

func (c feCase) has(column string) bool { return c.text(column) != "" }

func (c feCase) group() string { return c.text("group") }

func readCases(t *testing.T) []feCase {
	file, err := os.Open("testdata/cases.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	var list []feCase
	for _, row := range rows[1:] {
		c := feCase{t, map[string]string{}}
		for i, name := range rows[0] {
			c.values[name] = row[i]
		}
		list = append(list, c)
	}
	require.Len(t, list, 114)
	return list
}

func (c feCase) ring() RingGrip {
	g := RingGrip{
		OutsideDiameterMM: c.number("OD_mm"), WallMM: c.number("wall_mm"), LengthMM: c.number("length_mm"),
		GripLengthMM: c.number("grip_length_mm"), Jaws: int(c.number("n_jaws")), JawArcDeg: 2 * c.number("jaw_half_angle_deg"),
		ForcePerJawN: c.number("force_per_jaw_N"), ModulusMPa: c.number("E_MPa"), Poisson: c.number("nu"), Inside: c.group() == "M",
	}
	if c.has("web_mm") {
		g.WebMM = c.number("web_mm")
	}
	if c.has("jaw_mismatch_mm") {
		g.Rigid = &RigidJaws{c.number("jaw_mismatch_mm")}
	}
	if c.has("plug_clearance_mm") {
		plug := plugMetals[c.text("plug_material")]
		plug.ClearanceMM = c.number("plug_clearance_mm")
		g.Plug = &plug
	}
	return g
}

// plugMetals are the elastic figures the finite-element plugs had; the zero value is rigid.
var plugMetals = map[string]Plug{
	"steel": {ModulusMPa: 210000, Poisson: 0.3},
	"alu":   {ModulusMPa: 70000, Poisson: 0.33},
	"brass": {ModulusMPa: 100000, Poisson: 0.34},
}

// family sorts the rows of rings by how they are held.
func (c feCase) family() string {
	switch {
	case c.text("kind") == "plate":
		return "plate"
	case c.group() == "G" || c.group() == "X":
		return c.group()
	case c.has("jaw_mismatch_mm"):
		return "rigid jaws"
	case c.has("plug_clearance_mm"):
		return "plug"
	case c.group() == "M":
		return "mandrel"
	case c.has("web_mm"):
		return "web"
	case c.number("grip_length_mm") < c.number("length_mm"):
		return "part length"
	}
	return "full length"
}

// A spread collects the relative errors of one figure in one family, in per cent.
type spread []float64

func (s *spread) add(got, want float64) { *s = append(*s, 100*math.Abs(got/want-1)) }

func (s spread) quantile(share float64) float64 {
	sorted := append([]float64(nil), s...)
	sort.Float64s(sorted)
	return sorted[int(share*float64(len(sorted)-1)+0.5)]
}

func (s spread) String() string {
	return fmt.Sprintf("%5.1f %5.1f %5.1f %%", s.quantile(0.5), s.quantile(0.9), s.quantile(1))
}

// The bands, per cent: median and worst of the error at the jaw plane, worst of the largest error, worst of the stress.
func TestRingsAgainstFiniteElements(t *testing.T) {
	bands := []struct {
		family                         string
		rows                           int
		median, jawPlane, most, stress float64
	}{
		{"full length", 24, 0.5, 1, 11, 23},
		{"part length", 18, 2, 5, 10, 14},
		{"web", 17, 5, 20, 11, 24},
		{"rigid jaws", 8, 5, 20, 20, 21},
		{"plug", 7, 2, 2, 6, 15},
		{"mandrel", 3, 0.5, 0.6, 3, 4},
	}
	jawPlane, most, stress := map[string]*spread{}, map[string]*spread{}, map[string]*spread{}
	for _, b := range bands {
		jawPlane[b.family], most[b.family], stress[b.family] = &spread{}, &spread{}, &spread{}
	}
	for _, c := range readCases(t) {
		family := c.family()
		if jawPlane[family] == nil {
			continue
		}
		g := c.ring()
		d, settled := g.elastic()
		require.True(t, settled, c.text("id"))
		jawPlane[family].add(d.ErrorJawPlaneMM, c.number("fe_pv_jawplane_mm"))
		most[family].add(d.ErrorMostMM, c.number("fe_pv_max_mm"))
		if g.WebMM > 0 && g.GripLengthMM < g.WebMM+g.WallMM {
			continue // all that the jaws press on lies beside the web, where the finite-element stress was not read
		}
		stress[family].add(d.StressMostMPa, c.number("fe_vm_max_MPa"))
	}
	t.Log("error against finite elements, median / 90 % / worst: jaw plane, largest, stress")
	for _, b := range bands {
		t.Logf("%-12s %2d rows   %v   %v   %v", b.family, len(*jawPlane[b.family]), jawPlane[b.family], most[b.family], stress[b.family])
		assert.Len(t, *jawPlane[b.family], b.rows, b.family)
		assert.LessOrEqual(t, jawPlane[b.family].quantile(0.5), b.median, b.family)
		assert.LessOrEqual(t, jawPlane[b.family].quantile(1), b.jawPlane, b.family)
		assert.LessOrEqual(t, most[b.family].quantile(1), b.most, b.family)
		assert.LessOrEqual(t, stress[b.family].quantile(1), b.stress, b.family)
	}
}

// The stated band must cover both errors of every row that is called good.
func TestStatedBandCoversEveryGoodRow(t *testing.T) {
	covered := 0
	for _, c := range readCases(t) {
		if f := c.family(); f == "plate" || f == "G" || f == "X" {
			continue
		}
		g := c.ring()
		g.ForcePerJawN = math.Min(g.ForcePerJawN, 0.001*g.ForcePerJawN/c.number("fe_pv_max_mm")) // well within the elastic range
		if g.Rigid != nil || g.Plug != nil {
			g.ForcePerJawN = c.number("force_per_jaw_N") // contact is not in proportion
		}
		d, err := g.Distortion()
		require.NoError(t, err)
		if d.Trust != TrustGood {
			continue
		}
		covered++
		scale := c.number("force_per_jaw_N") / g.ForcePerJawN
		assert.InEpsilon(t, c.number("fe_pv_jawplane_mm"), d.ErrorJawPlaneMM*scale, d.BandPercent/100, c.text("id"))
		assert.InEpsilon(t, c.number("fe_pv_max_mm"), d.ErrorMostMM*scale, d.BandPercent/100, c.text("id"))
	}
	assert.GreaterOrEqual(t, covered, 45)
}

func TestPlatesAgainstFiniteElements(t *testing.T) {
	var error, stress spread
	lowest := math.Inf(1)
	for _, c := range readCases(t) {
		if c.family() != "plate" {
			continue
		}
		g, thin, side := c.plate()
		d := g.frame(thin, side)
		error.add(d.ErrorMostMM, c.number("fe_pv_jawplane_mm"))
		stress.add(d.StressMostMPa, c.number("fe_vm_max_MPa"))
		lowest = math.Min(lowest, d.StressMostMPa/c.number("fe_vm_max_MPa"))
	}
	t.Logf("plate %d rows   %v   %v, least stress ratio %.2f", len(error), error, stress, lowest)
	assert.Len(t, error, 30)
	assert.LessOrEqual(t, error.quantile(1), 15.0)
	assert.LessOrEqual(t, stress.quantile(1), 18.0)
	assert.GreaterOrEqual(t, lowest*yieldReserveBar, 0.99)
}

// plate reads the plate's outside from the note ("plate 75x90x4, ..."), bore and thin section from the ring's columns.
func (c feCase) plate() (g PlateGrip, thin, side float64) {
	g = PlateGrip{BoreDiameterMM: c.number("OD_mm"), ThinMM: c.number("wall_mm"), JawWidthMM: c.number("jaw_width_mm"),
		ModulusMPa: c.number("E_MPa"), Poisson: c.number("nu")}
	_, err := fmt.Sscanf(c.text("note"), "plate %gx%gx%g", &g.LengthMM, &g.WidthMM, &g.ThicknessMM)
	require.NoError(c.t, err)
	axes := strings.TrimLeft(c.text("id"), "HW0123456789")
	force := c.number("force_per_jaw_N")
	if strings.Contains(axes, "X") {
		thin = force
	}
	if strings.Contains(axes, "Y") {
		side = force
	}
	return g, thin, side
}

// Straps: an upper figure, and within 0.6 um a kN of strap of the finite elements.
func TestStrapsAgainstFiniteElements(t *testing.T) {
	const perStrap = 0.0006
	rows := 0
	for _, c := range readCases(t) {
		if c.family() != "X" {
			continue
		}
		rows++
		g := AxialStraps{OutsideDiameterMM: c.number("OD_mm"), WallMM: c.number("wall_mm"), LengthMM: c.number("length_mm"),
			Straps: int(c.number("n_jaws")), StrapWidthMM: c.number("jaw_width_mm"), ForcePerStrapN: c.number("force_per_jaw_N"),
			ModulusMPa: c.number("E_MPa"), Poisson: c.number("nu")}
		d, err := g.Distortion()
		require.NoError(t, err)
		kN := g.ForcePerStrapN / 1000
		assert.InDelta(t, c.number("fe_pv_max_mm"), d.ErrorMostMM, perStrap*kN, c.text("id"))
		assert.InDelta(t, c.number("fe_pv_jawplane_mm"), d.ErrorJawPlaneMM, perStrap*kN, c.text("id"))
		assert.GreaterOrEqual(t, d.ErrorMostMM, c.number("fe_pv_max_mm"), c.text("id"))
		assert.InEpsilon(t, c.number("fe_vm_max_MPa"), d.StressMostMPa, 0.07, c.text("id"))
		assert.Equal(t, TrustRough, d.Trust)
	}
	assert.Equal(t, 3, rows)
}

// Cut round while gripped and let go: what is left is the final wall under the force left, at constant force.
func TestReleaseAgainstFiniteElements(t *testing.T) {
	rows := 0
	for _, c := range readCases(t) {
		if c.family() != "G" {
			continue
		}
		rows++
		var raw float64
		_, err := fmt.Sscanf(c.text("note"), "bored round from wall %g", &raw)
		require.NoError(t, err)
		r, err := c.ring().Released(raw, 0)
		require.NoError(t, err)
		assert.InEpsilon(t, c.number("fe_pv_jawplane_mm"), r.ErrorSoftest.ErrorJawPlaneMM, 0.002, c.text("id"))
	}
	assert.Equal(t, 4, rows)
}
