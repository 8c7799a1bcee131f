package tables

import (
	"cmp"
	"slices"
	"strings"
	"sync"

	"catchplate/partspec/units"
)

// Family groups metals that are cut alike.
type Family string

// The families of material.
const (
	FamilyFreeCuttingSteel Family = "free-cutting steel"
	FamilySteel            Family = "steel"
	FamilyToolSteel        Family = "tool steel"
	FamilyStainless        Family = "stainless steel"
	FamilyCastIron         Family = "cast iron"
	FamilyBrass            Family = "brass"
	FamilyBronze           Family = "bronze"
	FamilyCopper           Family = "copper"
	FamilyAluminium        Family = "aluminium"
	FamilyPlastic          Family = "plastic"
	FamilyBacking          Family = "backing" // wood and board to drill into
	FamilyOther            Family = "other"   // rows that carry a warning, not a plan
)

// Families lists every family, in the order above.
func Families() []Family {
	return []Family{
		FamilyFreeCuttingSteel, FamilySteel, FamilyToolSteel, FamilyStainless, FamilyCastIron, FamilyBrass,
		FamilyBronze, FamilyCopper, FamilyAluminium, FamilyPlastic, FamilyBacking, FamilyOther,
	}
}

// Material is one metal, plastic or board. A figure that is not known is zero,
// a range that is not known is not Known. Speeds are in metres a minute.
type Material struct {
	ID, Name     string
	Family       Family
	Designations string // standards' names, separated by commas
	Condition    string

	DensityKgM3     float64
	ModulusGPa      Range
	Poisson         float64
	YieldMPa        Range
	TensileMPa      Range
	ThermalUmMK     float64 // growth in micrometres a metre a kelvin
	Kc11MPa, Mc     float64 // specific cutting force kc = Kc11 h^-Mc (Kienzle)
	KcOtherSources  string  // what other printed sources say of it
	HSSRough        Range
	HSSFinish       Range
	CarbideRough    Range
	CarbideFinish   Range
	DrillHSS        Range
	ReamHSS         Range
	Tap             Range // under power
	ThreadSP        Range // single point
	PartOff         Range
	Fluid, Cautions string

	SourceProperties, SourceCutting, SourceForce string
	FromMemory                                   bool // any of the three sources
}

func parseMaterial(r *record) Material {
	m := Material{
		ID: r.need("id"), Name: r.need("name"), Family: Family(r.need("family")),
		Designations: r.text("designations"), Condition: r.text("condition"),
		DensityKgM3: r.number("density_kg_m3"), ModulusGPa: r.between("youngs_modulus_GPa"), Poisson: r.number("poisson"),
		YieldMPa: r.between("yield_MPa"), TensileMPa: r.between("uts_MPa"), ThermalUmMK: thermal(r),
		Kc11MPa: r.number("kc11_MPa"), Mc: r.number("mc"), KcOtherSources: r.text("kc_other_published"),
		HSSRough: r.between("hss_rough_m_min"), HSSFinish: r.between("hss_finish_m_min"),
		CarbideRough: r.between("carbide_rough_m_min"), CarbideFinish: r.between("carbide_finish_m_min"),
		DrillHSS: r.between("drill_hss_m_min"), ReamHSS: r.between("ream_hss_m_min"), Tap: r.between("tap_machine_m_min"),
		ThreadSP: r.between("thread_single_point_m_min"), PartOff: r.between("part_off_hss_m_min"),
		Fluid: r.text("cutting_fluid"), Cautions: r.text("cautions"),
		SourceCutting: r.text("source_cutting"), SourceForce: r.text("source_force"),
	}
	m.SourceProperties, m.FromMemory = r.provenance("source_properties")
	m.FromMemory = m.FromMemory || remembered(m.SourceCutting) || remembered(m.SourceForce)
	if !slices.Contains(Families(), m.Family) {
		r.fail("family", "%q is not a family", m.Family)
	}
	return m
}

// thermal reads the growth; a remark in words (unknown scrap) is no figure.
func thermal(r *record) float64 {
	if strings.ContainsAny(r.text("thermal_expansion_um_mK"), "abcdefghijklmnopqrstuvwxyz") {
		return 0
	}
	return r.number("thermal_expansion_um_mK")
}

type materialName struct{ name, id string }

func parseMaterialName(r *record) materialName {
	r.provenance("source")
	return materialName{r.need("name"), r.need("id")}
}

type depthPerPass struct {
	family     Family
	depth      units.Length
	source     string
	fromMemory bool
}

func parseDepthPerPass(r *record) depthPerPass {
	d := depthPerPass{family: Family(r.need("family")), depth: r.length("rough_depth_mm")}
	d.source, d.fromMemory = r.provenance("source")
	return d
}

var materials = sync.OnceValue(func() []Material {
	rows := mustLoad("materials.csv", parseMaterial)
	slices.SortFunc(rows, func(a, b Material) int { return cmp.Compare(a.ID, b.ID) })
	return rows
})

var commonNames = sync.OnceValue(func() []materialName { return mustLoad("material_names.csv", parseMaterialName) })

var depths = sync.OnceValue(func() []depthPerPass { return mustLoad("depth_per_pass.csv", parseDepthPerPass) })

// materialIndex maps every lower-case name to a row: id, name, each
// designation, and common speech. A designation of two rows names neither.
var materialIndex = sync.OnceValue(func() map[string]int {
	index := make(map[string]int)
	ambiguous := make(map[string]bool)
	for i, m := range materials() {
		for _, designation := range designations(m) {
			if at, taken := index[designation]; taken && at != i {
				ambiguous[designation] = true
			}
			index[designation] = i
		}
	}
	for name := range ambiguous {
		delete(index, name)
	}
	for i, m := range materials() {
		index[m.Name], index[m.ID] = i, i
	}
	for _, n := range commonNames() {
		index[n.name] = slices.IndexFunc(materials(), func(m Material) bool { return m.ID == n.id })
	}
	return index
})

func designations(m Material) []string {
	var names []string
	for _, group := range strings.FieldsFunc(strings.ToLower(m.Designations), func(r rune) bool { return strings.ContainsRune(",;()", r) }) {
		group = strings.TrimSpace(group)
		names = append(names, group)
		names = append(names, strings.Fields(group)...)
	}
	return slices.DeleteFunc(names, func(name string) bool {
		return !strings.ContainsAny(name, "0123456789") || len(name) < 3
	})
}

// FindMaterial returns the material of that id, name, standard's designation
// ("CZ121") or common name ("brass", the usual shop grade).
func FindMaterial(name string) (Material, bool) {
	i, ok := materialIndex()[strings.ToLower(strings.TrimSpace(name))]
	if !ok {
		return Material{}, false
	}
	return materials()[i], true
}

// Materials lists every material, sorted by id.
func Materials() []Material { return slices.Clone(materials()) }

// MaterialNames lists the common names that FindMaterial knows beside the ids,
// sorted.
func MaterialNames() []string {
	var names []string
	for _, n := range commonNames() {
		names = append(names, n.name)
	}
	slices.Sort(names)
	return names
}

// RoughDepth is the default radial depth of a roughing cut on a bench lathe
// (trade rule C-29). It is not known for every family.
func RoughDepth(family Family) (depth units.Length, source string, ok bool) {
	for _, d := range depths() {
		if d.family == family {
			return d.depth, d.source, true
		}
	}
	return 0, "", false
}
