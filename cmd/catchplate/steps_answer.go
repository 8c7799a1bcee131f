package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"catchplate/partspec/units"
	"catchplate/planner/numbers/steps"
	"catchplate/planner/plan"
)

// stepsAnswer is a table of steps for a radius.
type stepsAnswer struct {
	Schema           string        `json:"schema"`
	Count            int           `json:"count"`
	ProvenFewest     bool          `json:"proven_fewest"` // no table on these graduations that keeps the leftover has fewer cuts
	WorstLeftoverMM  float64       `json:"worst_leftover_mm"`
	Origin           string        `json:"origin"` // where across and depth are nought
	AcrossDial       string        `json:"across_dial"`
	DepthDial        string        `json:"depth_dial"`
	AcrossCounts     string        `json:"across_counts"`      // what the marks of the dial across count: travel, or diameter, which is twice the travel
	DepthCounts      string        `json:"depth_counts"`       // the same of the depth dial
	Cuts             []stepAnswer  `json:"cuts"`               // in order across
	Runs             []runAnswer   `json:"runs"`               // in which order to cut, so that both dials go one way and always deeper
	Rough            []roughAnswer `json:"rough"`              // straight passes before the cuts; none without --most-depth
	ConstantCount    int           `json:"constant_count"`     // cuts by the shortest table found in which one dial goes on by one number of graduations; 0 when none does
	ConstantMarks    int64         `json:"constant_marks"`     // that number of graduations
	ConstantZones    []zoneAnswer  `json:"constant_zones"`     // which dial goes on by it in which of the cuts; none unless --constant shows that table
	FewestCount      int           `json:"fewest_count"`       // cuts of the table of the fewest, which is shown unless --constant is given
	EqualStepsCount  int           `json:"equal_steps_count"`  // cuts by the best equal steps that keep the leftover; 0 when none do
	CustomaryCount   int           `json:"customary_count"`    // cuts by steps of a quarter of a millimetre; 0 when they do not keep the leftover
	FileAreaMM2      float64       `json:"file_area_mm2"`      // section of the crests that are left for the file; 0 with --constant
	FileLeastMinutes float64       `json:"file_least_minutes"` // filing the crests takes from this; 0 without --length, and with --constant
	FileMostMinutes  float64       `json:"file_most_minutes"`  // to this
	Why              string        `json:"why"`                // what the proof rests on
}

// stepAnswer is one cut: set across, then feed to depth.
type stepAnswer struct {
	AcrossMM     float64    `json:"across_mm"` // of the cutter's middle, from the origin
	DepthMM      float64    `json:"depth_mm"`  // of the cutter's lowest point, from the origin; more is deeper
	AcrossMarks  int64      `json:"across_marks"`
	DepthMarks   int64      `json:"depth_marks"` // readings in whole graduations
	AcrossTurns  *turnCount `json:"across_turns,omitempty"`
	DepthTurns   *turnCount `json:"depth_turns,omitempty"` // the same readings in turns, where the dials have them
	CrestAfterMM float64    `json:"crest_after_mm"`
	MayStop      bool       `json:"may_stop"` // a place to stop at, and to go back to when a count is lost
}

// turnCount is a reading in whole turns and graduations past them; both are minus on the far side of nought.
type turnCount struct {
	Turns int64 `json:"turns"`
	Marks int64 `json:"marks"`
}

// runAnswer is a stretch of the table to be cut from First to Last, counted from 1.
type runAnswer struct {
	First int `json:"first"`
	Last  int `json:"last"`
}

// zoneAnswer is a stretch of the table with constant steps, counted from 1.
type zoneAnswer struct {
	First int    `json:"first"`
	Last  int    `json:"last"`
	Dial  string `json:"dial"`
}

// roughAnswer is one straight pass at a depth, before the cuts.
type roughAnswer struct {
	DepthMM    float64 `json:"depth_mm"`
	DepthMarks int64   `json:"depth_marks"`
	FromMarks  int64   `json:"from_marks"`
	ToMarks    int64   `json:"to_marks"`
}

// resumeEvery is how many cuts lie between two places to stop. Common practice, no source.
const resumeEvery = 8

func (f stepsFlags) newAnswer(r steps.Request, t steps.Table, fewest int, acrossTurn, depthTurn int64) stepsAnswer {
	dials := stepDials[f.setup]
	a := stepsAnswer{
		Schema: "catchplate-steps-1", Count: len(t.Cuts), ProvenFewest: t.ProvenFewest, WorstLeftoverMM: tidy(t.WorstLeftoverMM),
		Origin: f.shape().origin, AcrossDial: dials[0], DepthDial: dials[1],
		AcrossCounts: r.Across.Reads.String(), DepthCounts: r.Depth.Reads.String(), ConstantCount: len(t.ConstantStep.Cuts), ConstantMarks: t.ConstantStep.StepGrads,
		EqualStepsCount: t.EqualStepsCount, CustomaryCount: t.CustomarySteps, FileAreaMM2: tidy(t.LeftoverAreaMM2), Why: t.Why,
		Cuts: []stepAnswer{}, Runs: []runAnswer{}, Rough: []roughAnswer{},
		ConstantZones: []zoneAnswer{}, FewestCount: fewest,
	}
	if f.constant {
		a.ConstantZones = zones(t.ConstantStep, dials)
	}
	for _, cut := range t.Cuts {
		a.Cuts = append(a.Cuts, stepAnswer{AcrossMM: tidy(cut.AcrossMM), DepthMM: tidy(cut.DepthMM), AcrossMarks: cut.AcrossGrads, DepthMarks: cut.DepthGrads,
			AcrossTurns: turns(cut.AcrossGrads, acrossTurn), DepthTurns: turns(cut.DepthGrads, depthTurn), CrestAfterMM: tidy(cut.CrestAfterMM)})
	}
	for _, run := range t.Runs {
		a.Runs = append(a.Runs, runAnswer{run.First + 1, run.Last + 1})
	}
	for _, run := range a.Runs {
		order := run.order()
		for n, i := range order {
			a.Cuts[i].MayStop = n == len(order)-1 || (n+1)%resumeEvery == 0 && n+1+resumeEvery/2 < len(order)
		}
	}
	for _, p := range t.Rough.Passes {
		a.Rough = append(a.Rough, roughAnswer{tidy(p.DepthMM), p.DepthGrads, p.FromGrads, p.ToGrads})
	}
	rate := float64(steps.FilingSteelMM3PerMin)
	if f.brass {
		rate = steps.FilingBrassMM3PerMin
	}
	if f.along.set && !f.constant {
		if least, most, err := t.FilingMinutes(f.along.mm(), rate); err == nil {
			a.FileLeastMinutes, a.FileMostMinutes = tidy(least), tidy(most)
		}
	}
	return a
}

// zones tell which dial leads from which cut to which.
func zones(c steps.ConstantStep, dials [2]string) []zoneAnswer {
	var out []zoneAnswer
	for n, z := range c.Zones {
		last, dial := len(c.Cuts), dials[0]
		if n+1 < len(c.Zones) {
			last = c.Zones[n+1].First
		}
		if z.DepthLeads {
			dial = dials[1]
		}
		out = append(out, zoneAnswer{z.First + 1, last, dial})
	}
	return out
}

// turns splits a reading, nil where the dial counts no turns.
func turns(marks, perTurn int64) *turnCount {
	if perTurn == 0 {
		return nil
	}
	return &turnCount{marks / perTurn, marks % perTurn}
}

// order lists the indexes of a run's cuts in the order of cutting.
func (r runAnswer) order() []int {
	step := 1
	if r.First > r.Last {
		step = -1
	}
	var out []int
	for i := r.First; i != r.Last+step; i += step {
		out = append(out, i-1)
	}
	return out
}

// sketch is what the sketch needs of the table.
func (f stepsFlags) sketch(t steps.Table, r steps.Request) *plan.StepTable {
	dials := stepDials[f.setup]
	s := &plan.StepTable{Curve: pieces(r.Curve), Cutter: plan.StepCutter{WidthMM: r.Cutter.WidthMM, NoseMM: r.Cutter.CornerRadiusMM}, AcrossDial: dials[0], DepthDial: dials[1],
		AcrossLeft: f.setup == "lathe", LeftoverMM: r.LeftoverMM, WorstMM: t.WorstLeftoverMM}
	if r.Cutter.Kind == steps.RoundNose {
		s.Cutter = plan.StepCutter{WidthMM: 2 * r.Cutter.RadiusMM, NoseMM: r.Cutter.RadiusMM}
	}
	for i, cut := range t.Cuts {
		step := plan.Step{Label: strconv.Itoa(i + 1), AcrossMM: cut.AcrossMM, DepthMM: cut.DepthMM, CrestMM: cut.CrestAfterMM}
		s.Steps = append(s.Steps, step)
	}
	return s
}

func (a stepsAnswer) text(w io.Writer) {
	fmt.Fprint(w, counted(a.Count, "cut"))
	if a.ProvenFewest {
		fmt.Fprint(w, ": proven to be the fewest on these graduations")
	}
	if len(a.ConstantZones) > 0 && a.Count > 1 {
		fmt.Fprintf(w, ", one dial going on by %s; the fewest are %d", counted(a.ConstantMarks, "mark"), a.FewestCount)
	}
	fmt.Fprintln(w)
	rows(w, a.facts()...)
	a.rough(w)
	head, table := a.table()
	columns := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(columns, "done\t"+strings.Join(head, "\t")+"\t")
	for n, run := range a.Runs {
		for k, i := range run.order() {
			mind := ""
			switch {
			case k == 0:
				mind = fmt.Sprintf("  run %d: take up the backlash of both dials", n+1)
			case a.Cuts[i].MayStop:
				mind = "  may stop here"
			}
			fmt.Fprintln(columns, "[ ]\t"+strings.Join(table[i], "\t")+"\t"+mind)
		}
	}
	columns.Flush()
}

// facts are what the table keeps and what it saves.
func (a stepsAnswer) facts() []row {
	return slices.Concat(a.kept(), a.compared(), []row{{"why", a.Why}})
}

func (a stepsAnswer) kept() []row {
	list := []row{{"worst crest", inMM(a.WorstLeftoverMM)}, {"counted from", a.Origin}}
	for _, d := range [][2]string{{a.AcrossDial, a.AcrossCounts}, {a.DepthDial, a.DepthCounts}} {
		if d[1] == steps.ReadsDiameter.String() {
			list = append(list, row{"marks count diameter", "on the " + d[0] + " dial: half of it is travel"})
		}
	}
	for _, z := range a.ConstantZones {
		list = append(list, row{"constant", fmt.Sprintf("%s dial, from cut %d to cut %d", z.Dial, z.First, z.Last)})
	}
	if a.FileMostMinutes > 0 {
		list = append(list, row{"filing the crests", units.Decimal(a.FileLeastMinutes, 1) + " to " + units.Decimal(a.FileMostMinutes, 1) + " min"})
	}
	return list
}

// compared are the tables that people would make by hand; a single cut saves none.
func (a stepsAnswer) compared() []row {
	if a.Count == 1 {
		return nil
	}
	var list []row
	if a.ConstantCount > 0 {
		list = append(list, row{"by one constant step", fmt.Sprintf("%s, one dial going on by %s", counted(a.ConstantCount, "cut"), counted(a.ConstantMarks, "mark"))})
	}
	if a.EqualStepsCount > 0 {
		list = append(list, row{"by the best equal steps", counted(a.EqualStepsCount, "cut")})
	}
	custom := "leaves more than is allowed"
	if a.CustomaryCount > 0 {
		custom = counted(a.CustomaryCount, "cut")
	}
	return append(list, row{"by quarter millimetres", custom})
}

// counted shows a number of things: 1 cut, 2 cuts.
func counted[N int | int64](n N, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// rough lists the straight passes before the cuts.
func (a stepsAnswer) rough(w io.Writer) {
	for n, p := range a.Rough {
		fmt.Fprintf(w, "  rough %d: %s at %d, %s from %d to %d\n", n+1, a.DepthDial, p.DepthMarks, a.AcrossDial, p.FromMarks, p.ToMarks)
	}
}

// table is the cuts as texts, in order across. A dial has columns for turns where it counts them.
func (a stepsAnswer) table() (head []string, cells [][]string) {
	head = []string{"cut"}
	head = append(head, dialHead(a.AcrossDial, a.Cuts[0].AcrossTurns)...)
	head = append(append(head, dialHead(a.DepthDial, a.Cuts[0].DepthTurns)...), "crest mm")
	for i, c := range a.Cuts {
		line := append([]string{strconv.Itoa(i + 1)}, dialCells(c.AcrossMM, c.AcrossTurns, c.AcrossMarks)...)
		line = append(line, dialCells(c.DepthMM, c.DepthTurns, c.DepthMarks)...)
		cells = append(cells, append(line, units.Decimal(c.CrestAfterMM, 3)))
	}
	return head, cells
}

func dialHead(name string, t *turnCount) []string {
	if t == nil {
		return []string{name + " mm", "marks"}
	}
	return []string{name + " mm", "turns", "marks", "from nought"}
}

func dialCells(mm float64, t *turnCount, marks int64) []string {
	out := []string{units.Decimal(mm, 4)}
	if t != nil {
		out = append(out, strconv.FormatInt(t.Turns, 10), strconv.FormatInt(t.Marks, 10))
	}
	return append(out, strconv.FormatInt(marks, 10))
}

// csvHead names the columns of the CSV. Turns and marks past them are empty where a dial counts no turns.
var csvHead = []string{"run", "cut", "across_dial", "across_turns", "across_marks", "across_from_zero", "depth_dial", "depth_turns", "depth_marks",
	"depth_from_zero", "across_mm", "depth_mm", "crest_after_mm", "may_stop"}

// csv is the table in the order of cutting.
func (a stepsAnswer) csv() ([]byte, error) {
	lines := [][]string{csvHead}
	for n, run := range a.Runs {
		for _, i := range run.order() {
			c := a.Cuts[i]
			line := []string{strconv.Itoa(n + 1), strconv.Itoa(i + 1)}
			line = append(append(line, a.AcrossDial), csvCount(c.AcrossTurns, c.AcrossMarks)...)
			line = append(append(line, a.DepthDial), csvCount(c.DepthTurns, c.DepthMarks)...)
			lines = append(lines, append(line, units.Decimal(c.AcrossMM, 6), units.Decimal(c.DepthMM, 6), units.Decimal(c.CrestAfterMM, 6), strconv.FormatBool(c.MayStop)))
		}
	}
	var out bytes.Buffer
	err := csv.NewWriter(&out).WriteAll(lines)
	return out.Bytes(), err
}

func csvCount(t *turnCount, marks int64) []string {
	total := strconv.FormatInt(marks, 10)
	if t == nil {
		return []string{"", "", total}
	}
	return []string{strconv.FormatInt(t.Turns, 10), strconv.FormatInt(t.Marks, 10), total}
}
