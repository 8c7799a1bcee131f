package main

import (
	"github.com/spf13/cobra"

	"catchplate/planner/numbers/steps"
	"catchplate/sheets/draw"
	"catchplate/sheets/svg"
)

// stepsFlags are the arguments of the command.
type stepsFlags struct {
	concave, convex, quarterRound, cone, ogee bool
	faces, diameter, diameterAcross           bool
	brass, constant                           bool
	radius, width, hollow, drop, along        length
	roundNose, square, corner                 length
	graduation, graduationAcross, leftover    length
	perTurn, perTurnAcross                    length
	originAcross, originDepth                 length
	mostDepth, stock                          length
	flank                                     number
	setup, csvFile, svgFile                   string
	force                                     bool
}

// stepDials name the dials of the set-ups: the one across the curve and the one of depth.
var stepDials = map[string][2]string{
	"":      {"across", "depth"},
	"lathe": {"saddle", "cross"},         // a profile turned by plunging
	"slide": {"cross", "vertical slide"}, // work on the vertical slide, cutter in the spindle
	"mill":  {"table", "down-feed"},
}

func (c *cli) steps() *cobra.Command {
	f := stepsFlags{originAcross: length{signed: true}, originDepth: length{signed: true}, flank: preset(0, 0, 89)}
	cmd := &cobra.Command{
		Use:     "steps",
		GroupID: groupBench,
		Short:   "The fewest cuts that step out a radius on the graduations of two dials",
		Example: `  catchplate steps --concave --radius 45 --width 40 --round-nose 2 --graduation 0.02 --leftover 0.05
  catchplate steps --convex --radius 20 --width 16 --square 3 --graduation 0.05 --leftover 0.1
  catchplate steps --ogee --radius 6 --hollow 4 --drop 5 --round-nose 1 --graduation 0.02 --leftover 0.05
  catchplate steps --setup lathe --convex --radius 20 --width 16 --round-nose 2 --graduation 0.02 --per-turn 2 --diameter \
    --graduation-across "0.001 in" --per-turn-across "0.1 in" --leftover 0.08 --csv knob.csv --svg knob.svg`,
		Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error { return c.runSteps(f) },
	}
	flags := cmd.Flags()
	flags.BoolVar(&f.concave, "concave", false, "a hollow")
	flags.BoolVar(&f.convex, "convex", false, "a round back")
	flags.BoolVar(&f.quarterRound, "quarter-round", false, "the rounded edge of a face, which stays, from the face down to the side")
	flags.BoolVar(&f.cone, "cone", false, "a straight slope: --drop on a --width")
	flags.BoolVar(&f.ogee, "ogee", false, "a round of --radius that goes over into a hollow of --hollow, level at both ends, --drop from end to end")
	flags.BoolVar(&f.faces, "faces", false, "the faces beside the curve are finished and stay: a neck or a bead")
	flags.Var(&f.radius, "radius", "radius of the curve; of an ogee, of its round")
	flags.Var(&f.width, "width", "width of the work across the curve; of a slope, its length across")
	flags.Var(&f.hollow, "hollow", "radius of an ogee's hollow")
	flags.Var(&f.drop, "drop", "how much deeper a slope or an ogee ends than it begins")
	flags.Var(&f.along, "length", "length of the surface along the curve's axis, or round the work, for the time at the file")
	flags.BoolVar(&f.brass, "brass", false, "the metal files as easily as brass or aluminium")
	flags.Var(&f.roundNose, "round-nose", "radius of a round-nosed cutter")
	flags.Var(&f.square, "square", "width of a square-ended cutter")
	flags.Var(&f.corner, "corner", "corner radius of the square-ended cutter (default 0)")
	flags.Var(&f.flank, "flank", "lean of both flanks of the cutter from straight in, in degrees: they must not rub")
	flags.StringVar(&f.setup, "setup", "", "names the dials: lathe (saddle and cross), slide (cross and vertical slide), mill (table and down-feed)")
	flags.Var(&f.graduation, "graduation", "one graduation of the depth dial, and of the other unless it is given")
	flags.Var(&f.graduationAcross, "graduation-across", "one graduation of the dial across")
	flags.BoolVar(&f.diameter, "diameter", false, "the depth dial reads diameters")
	flags.BoolVar(&f.diameterAcross, "diameter-across", false, "the dial across reads diameters, as a cross slide's may with --setup slide")
	flags.Var(&f.perTurn, "per-turn", "what the depth dial counts in a turn, to show whole turns; for the other dial too unless it is given")
	flags.Var(&f.perTurnAcross, "per-turn-across", "what the dial across counts in a turn")
	flags.Var(&f.originAcross, "origin-across", "where the cutter's middle stands, from the centre line, when the dial across reads nought (default 0)")
	flags.Var(&f.originDepth, "origin-depth", "how deep the cutter's end stands when the depth dial reads nought; minus is above the bottom or crown (default 0)")
	flags.Var(&f.leftover, "leftover", "most metal to leave for the file, square to the curve")
	flags.BoolVar(&f.constant, "constant", false, "show the table in which one dial goes on by one number of graduations: easier to count, seldom the fewest")
	flags.Var(&f.mostDepth, "most-depth", "most depth per cut: roughing passes are worked out too")
	flags.Var(&f.stock, "stock", "metal above the highest point of the curve before roughing (default 0)")
	flags.StringVar(&f.csvFile, "csv", "", "write the table to this file as CSV; - prints it alone")
	flags.StringVar(&f.svgFile, "svg", "", "write a sketch with the crests enlarged to this file; - prints it alone")
	flags.BoolVar(&f.force, "force", false, "overwrite files that are there already")
	need(cmd, "graduation", "leftover")
	cmd.PreRunE = inOrder(exactlyOne("concave", "convex", "quarter-round", "cone", "ogee"), exactlyOne("round-nose", "square"), f.check)
	return cmd
}

// check refuses words and pairs of flags that do not go together.
func (f *stepsFlags) check(*cobra.Command, []string) error {
	if _, ok := stepDials[f.setup]; !ok {
		return wrongUse("--setup %q is not known: write lathe, slide or mill", f.setup)
	}
	if f.corner.set && !f.square.set {
		return wrongUse("--corner belongs to --square: a round nose has no corners")
	}
	if err := f.checkShape(); err != nil {
		return err
	}
	if f.stock.set && !f.mostDepth.set {
		return wrongUse("--stock says where roughing begins: give --most-depth with it")
	}
	if f.csvFile == "-" && f.svgFile == "-" {
		return wrongUse("only one of --csv and --svg can be -")
	}
	return nil
}

func (c *cli) runSteps(f stepsFlags) error {
	r, err := f.request()
	if err != nil {
		return err
	}
	across, err := marksPerTurn("--per-turn-across", f.acrossTurn(), r.Across.GraduationMM)
	if err != nil {
		return err
	}
	depth, err := marksPerTurn("--per-turn", f.perTurn, r.Depth.GraduationMM)
	if err != nil {
		return err
	}
	table, err := steps.Fewest(r)
	if err != nil {
		return problem("%v", err)
	}
	if f.constant && len(table.ConstantStep.Cuts) == 0 {
		return problem("no constant step on these graduations keeps the leftover: leave --constant out, or allow more than %s", inMM(r.LeftoverMM))
	}
	fewest := len(table.Cuts)
	if f.constant {
		table = constantTable(table)
	}
	a := f.newAnswer(r, table, fewest, across, depth)
	if f.svgFile != "" {
		page := draw.Steps("steps", f.shape().name+" in "+counted(a.Count, "cut"), f.sketch(table, r))
		if err := c.writeFile(f.svgFile, svg.File(page), f.force); err != nil {
			return err
		}
	}
	if f.csvFile != "" {
		text, err := a.csv()
		if err != nil {
			return err
		}
		if err := c.writeFile(f.csvFile, text, f.force); err != nil {
			return err
		}
	}
	if f.svgFile == "-" || f.csvFile == "-" {
		return nil
	}
	return c.show(a)
}

// constantTable puts the cuts by one constant step in place of the fewest. What is known only of the fewest is left out.
func constantTable(t steps.Table) steps.Table {
	c := t.ConstantStep
	t.Cuts, t.Runs, t.WorstLeftoverMM = c.Cuts, c.Runs, c.WorstLeftoverMM
	t.ProvenFewest, t.LeftoverAreaMM2 = false, 0
	return t
}

func (f stepsFlags) request() (steps.Request, error) {
	curve, err := f.shape().curve(f)
	if err != nil {
		return steps.Request{}, problem("%v", err)
	}
	cutter := steps.Cutter{Kind: steps.RoundNose, RadiusMM: f.roundNose.mm()}
	if f.square.set {
		cutter = steps.Cutter{Kind: steps.SquareEnd, WidthMM: f.square.mm(), CornerRadiusMM: f.corner.mm()}
	}
	cutter.LeftFlankDeg, cutter.RightFlankDeg = f.flank.value, f.flank.value
	across := f.graduation
	if f.graduationAcross.set {
		across = f.graduationAcross
	}
	r := steps.Request{
		Curve: curve, Cutter: cutter, LeftoverMM: f.leftover.mm(), MostDepthMM: f.mostDepth.mm(), StockAboveMM: f.stock.mm(),
		Across: steps.Axis{GraduationMM: across.mm(), Reads: steps.ReadsTravel, OriginMM: f.originAcross.mm()},
		Depth:  steps.Axis{GraduationMM: f.graduation.mm(), Reads: steps.ReadsTravel, OriginMM: f.originDepth.mm()},
	}
	if f.diameter {
		r.Depth.Reads = steps.ReadsDiameter
	}
	if f.diameterAcross {
		r.Across.Reads = steps.ReadsDiameter
	}
	return r, nil
}

// acrossTurn is what the dial across counts in a turn: its own figure, or the depth dial's where both dials are alike.
func (f stepsFlags) acrossTurn() length {
	if f.perTurnAcross.set || f.graduationAcross.set {
		return f.perTurnAcross
	}
	return f.perTurn
}

// turnNoise lets a turn that is a whole number of graduations but for rounding count as whole.
const turnNoise = 1e-6

// marksPerTurn is the number of graduations on a dial's rim, 0 where it was not given.
func marksPerTurn(flag string, turn length, graduationMM float64) (int64, error) {
	if !turn.set || graduationMM <= 0 {
		return 0, nil
	}
	n := turn.mm() / graduationMM
	whole := int64(n + 0.5)
	if whole < 1 || n-float64(whole) > turnNoise || float64(whole)-n > turnNoise {
		return 0, wrongUse("%s %s is not a whole number of graduations of %s", flag, inMM(turn.mm()), inMM(graduationMM))
	}
	return whole, nil
}
