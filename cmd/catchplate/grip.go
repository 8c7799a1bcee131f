package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"catchplate/partspec/units"
	"catchplate/planner/mechanics"
	"catchplate/planner/tables"
)

// gripAnswer is what jaws do to a ring, tube or bar.
type gripAnswer struct {
	Schema          string  `json:"schema"`
	ErrorJawPlaneMM float64 `json:"error_jaw_plane_mm"` // out of round at the middle of the grip, peak to valley in radius
	ErrorMostMM     float64 `json:"error_most_mm"`      // the same at the worst place along the work
	StressMostMPa   float64 `json:"stress_most_MPa"`
	YieldMPa        float64 `json:"yield_MPa,omitempty"`          // that the stress was judged by; none when it is not known
	YieldForceN     float64 `json:"yield_force_n,omitempty"`      // force of a jaw at which the stress reaches that yield
	ForcePerMicronN float64 `json:"force_per_micron_n,omitempty"` // force of a jaw for an error of 0.001 mm
	Trust           string  `json:"trust"`                        // "good", "rough" or "none": then the figures are no guide
	BandPercent     float64 `json:"band_percent"`                 // the true error is expected within so much either way; 0 when there is no trust
	Why             string  `json:"why"`                          // what the trust rests on
	Material        string  `json:"material,omitempty"`           // whose figures were used, where no flag gave them
	ModulusMPa      float64 `json:"modulus_MPa"`
	Poisson         float64 `json:"poisson"`
}

// gripFlags are the arguments of the command.
type gripFlags struct {
	material                          string
	od, wall, long, jawWidth, gripped length
	web, mismatch, plug               length
	force, modulus, poisson, yield    number
	jaws                              int
	inside                            bool
}

func (c *cli) grip() *cobra.Command {
	f := gripFlags{
		mismatch: length{signed: true}, force: between(0, 1e6), modulus: between(100, 1e6), poisson: between(0, 0.49), yield: between(0, 5000),
	}
	cmd := &cobra.Command{
		Use:     "grip",
		GroupID: groupBench,
		Short:   "How far jaws push a ring or tube out of round",
		Example: `  catchplate grip --od 60 --wall 3 --length 24 --material steel --jaws 3 --jaw-width 8 --grip-length 24 --force-per-jaw 1000
  catchplate grip --od 60 --wall 3 --length 24 --material brass --jaws 3 --jaw-width 8 --grip-length 10 --force-per-jaw 400 --plug-clearance 0.01`,
		Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error { return c.runGrip(f) },
	}
	flags := cmd.Flags()
	flags.Var(&f.od, "od", "outside diameter")
	flags.Var(&f.wall, "wall", "thickness of the wall")
	flags.Var(&f.long, "length", "whole length along the axis")
	flags.StringVar(&f.material, "material", "", "material by name or designation")
	flags.IntVar(&f.jaws, "jaws", 3, "how many jaws")
	flags.Var(&f.jawWidth, "jaw-width", "width of one jaw where it touches")
	flags.Var(&f.gripped, "grip-length", "length gripped (default: the whole length)")
	flags.Var(&f.force, "force-per-jaw", "force of one jaw in newtons")
	flags.BoolVar(&f.inside, "inside", false, "the jaws push outward in the bore")
	flags.Var(&f.web, "web", "thickness of a web that closes the gripped end (default: open)")
	flags.Var(&f.mismatch, "mismatch", "radius of stiff bored jaws over that of the work (default: jaws that press evenly)")
	flags.Var(&f.plug, "plug-clearance", "radial clearance of a plug in the bore (default: no plug)")
	flags.Var(&f.modulus, "modulus", "Young's modulus in MPa, instead of the material's")
	flags.Var(&f.poisson, "poisson", "Poisson's ratio, instead of the material's")
	flags.Var(&f.yield, "yield", "yield stress in MPa, instead of the material's")
	need(cmd, "od", "wall", "length", "jaw-width", "force-per-jaw")
	return cmd
}

func (c *cli) runGrip(f gripFlags) error {
	material, err := f.elasticity()
	if err != nil {
		return err
	}
	if !f.gripped.set {
		f.gripped = f.long
	}
	ring := mechanics.RingGrip{
		OutsideDiameterMM: f.od.mm(), WallMM: f.wall.mm(), LengthMM: f.long.mm(), GripLengthMM: f.gripped.mm(),
		Jaws: f.jaws, JawWidthMM: f.jawWidth.mm(), ForcePerJawN: f.force.value,
		ModulusMPa: f.modulus.value, Poisson: f.poisson.value, YieldMPa: f.yield.value, WebMM: f.web.mm(), Inside: f.inside,
	}
	if f.mismatch.set {
		ring.Rigid = &mechanics.RigidJaws{MismatchMM: f.mismatch.mm()}
	}
	if f.plug.set {
		ring.Plug = &mechanics.Plug{ClearanceMM: f.plug.mm()}
	}
	d, err := ring.Distortion()
	if err != nil {
		return problem("%v", err)
	}
	return c.show(newGripAnswer(ring, d, material))
}

// elasticity fills in what the flags leave to the material: the middle of the modulus, the least yield.
func (f *gripFlags) elasticity() (material string, err error) {
	if f.modulus.set && f.poisson.set && f.material == "" {
		return "", nil
	}
	if f.material == "" {
		return "", wrongUse("grip needs --material, or --modulus and --poisson (and --yield, to judge the stress)")
	}
	m, err := findMaterial(f.material)
	if err != nil {
		return "", err
	}
	if !f.modulus.set {
		f.modulus.value = 1000 * (m.ModulusGPa.Low + m.ModulusGPa.High) / 2
	}
	if !f.poisson.set {
		f.poisson.value = m.Poisson
	}
	if !f.yield.set {
		f.yield.value = m.YieldMPa.Low
	}
	if f.modulus.value == 0 {
		return "", problem("the table has no modulus for %s: give --modulus and --poisson", m.Name)
	}
	return m.Name, nil
}

// findMaterial looks a material up and names near ones when there is none.
func findMaterial(name string) (tables.Material, error) {
	if m, ok := tables.FindMaterial(name); ok {
		return m, nil
	}
	names := tables.MaterialNames()
	for _, m := range tables.Materials() {
		names = append(names, m.ID)
	}
	near := didYouMean(name, names)
	if near == "" {
		near = "; among others there are " + strings.Join(tables.MaterialNames()[:6], ", ")
	}
	return tables.Material{}, problem("no material is called %q%s", name, near)
}

func newGripAnswer(ring mechanics.RingGrip, d mechanics.Distortion, material string) gripAnswer {
	a := gripAnswer{
		Schema: "catchplate-grip-1", ErrorJawPlaneMM: tidy(d.ErrorJawPlaneMM), ErrorMostMM: tidy(d.ErrorMostMM), StressMostMPa: tidy(d.StressMostMPa),
		Trust: string(d.Trust), BandPercent: d.BandPercent, Why: d.Why,
		Material: material, ModulusMPa: ring.ModulusMPa, Poisson: ring.Poisson, YieldMPa: ring.YieldMPa,
	}
	if evenPads := ring.Rigid == nil && ring.Plug == nil; !evenPads {
		return a // contact changes with the force: the figures do not scale
	}
	if d.ErrorMostMM > 0 {
		a.ForcePerMicronN = tidy(ring.ForcePerJawN * micronMM / d.ErrorMostMM)
	}
	if d.StressMostMPa > 0 {
		a.YieldForceN = tidy(ring.ForcePerJawN * ring.YieldMPa / d.StressMostMPa)
	}
	return a
}

const micronMM = 0.001

func (a gripAnswer) text(w io.Writer) {
	if a.Trust == string(mechanics.TrustNone) {
		fmt.Fprintf(w, "no trustworthy figure: %s\n", a.Why)
		return
	}
	fmt.Fprintf(w, "out of round by %s (true figure within %.0f %% either way)\n", inMM(a.ErrorMostMM), a.BandPercent)
	list := []row{
		{"at the jaws", inMM(a.ErrorJawPlaneMM)},
		{"stress", fmt.Sprintf("%.0f MPa", a.StressMostMPa)},
	}
	if a.YieldMPa > 0 {
		list = append(list, row{"yield", fmt.Sprintf("%.0f MPa", a.YieldMPa)})
	}
	if a.YieldForceN > 0 {
		list = append(list, row{"yields at", units.Force(a.YieldForceN).String() + " a jaw"})
	}
	if a.ForcePerMicronN > 0 {
		list = append(list, row{"0.001 mm needs", units.Force(a.ForcePerMicronN).String() + " a jaw"})
	}
	rows(w, append(list,
		row{"figures of", a.Material},
		row{"trust", a.Trust + ": " + a.Why},
	)...)
	fmt.Fprintln(w, "Peak to valley in radius, of the surface that is cut in this grip. Three lobes do not show on a two-point gauge.")
}
