package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"catchplate/partspec/units"
	"catchplate/planner/numbers/taper"
)

// taperAnswer is how to set a lathe for a taper.
type taperAnswer struct {
	Schema string `json:"schema"`
	taper.Setting
}

// taperFlags are the arguments of the command: a taper in one of four ways.
type taperFlags struct {
	large, small, long, work length
	ratio, name              string
	included, half           number
}

func (c *cli) taper() *cobra.Command {
	f := taperFlags{included: between(0, 180), half: between(0, 90)}
	cmd := &cobra.Command{
		Use:     "taper",
		GroupID: groupBench,
		Short:   "Settings of top slide and tailstock for a taper",
		Example: `  catchplate taper --large 20 --small 18 --length 40
  catchplate taper --ratio 1:20.02
  catchplate taper --name MT2 --work 150`,
		Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			s, err := f.setting()
			if err != nil {
				return asProblem(err)
			}
			if f.work.set {
				s = s.Between(f.work.value)
			}
			return c.show(taperAnswer{"catchplate-taper-1", s})
		},
	}
	flags := cmd.Flags()
	flags.Var(&f.large, "large", "large diameter")
	flags.Var(&f.small, "small", "small diameter")
	flags.Var(&f.long, "length", "length of the taper")
	flags.StringVar(&f.ratio, "ratio", "", `ratio as the drawing writes it: 1:20.02, "5/8 in/ft"`)
	flags.StringVar(&f.name, "name", "", "standard taper: MT2")
	flags.Var(&f.included, "angle", "included angle in degrees")
	flags.Var(&f.half, "half-angle", "angle per side in degrees")
	flags.Var(&f.work, "work", "length of the work between centres, for the set-over (default: the taper's own)")
	cmd.PreRunE = exactlyOne("large", "ratio", "name", "angle", "half-angle")
	return cmd
}

func (f taperFlags) setting() (taper.Setting, error) {
	switch {
	case f.ratio != "":
		return taper.Parse(f.ratio)
	case f.name != "":
		return taper.Named(f.name)
	case f.included.set:
		return taper.FromIncluded(units.Angle(f.included.value))
	case f.half.set:
		return taper.FromHalf(units.Angle(f.half.value))
	case !f.small.set || !f.long.set:
		return taper.Setting{}, wrongUse("a taper by its ends needs --large, --small and --length")
	}
	return taper.FromEnds(f.large.value, f.small.value, f.long.value)
}

func (a taperAnswer) text(w io.Writer) {
	fmt.Fprintf(w, "set the top slide over by %s (%s)\n", degrees(a.HalfAngle), a.HalfAngle.DegreesMinutes())
	list := []row{
		{"included angle", degrees(a.IncludedAngle)},
		{"ratio", "1 in " + units.Decimal(a.Ratio, 3)},
		{"indicator on the slide", a.RisePer25.String() + " rise over 25 mm of its travel, against a true bar"},
		{"tailstock set-over", a.SetoverPer100.String() + " for 100 mm between centres"},
	}
	if a.Setover != 0 {
		list = append(list, row{"for this work", a.Setover.String()})
	}
	if a.SlideTravel != 0 {
		list = append(list, row{"travel of the slide", a.SlideTravel.String()})
	}
	rows(w, append(list, row{"rule", a.Rule}, row{"source", a.Source})...)
}

// degrees shows an angle to the thousandth, finer than any graduation, so that it can be checked.
func degrees(a units.Angle) string { return units.Decimal(float64(a), 3) + "°" }
