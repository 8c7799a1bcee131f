package sheets

import (
	"math"
	"reflect"
	"regexp"

	"catchplate/partspec/units"
	"catchplate/planner/plan"
)

// walk visits every plain value of a plan with the name of the field it stands in.
func walk(v reflect.Value, field string, visit func(field string, v reflect.Value)) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			walk(v.Elem(), field, visit)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			walk(v.Field(i), v.Type().Name()+"."+v.Type().Field(i).Name, visit)
		}
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), field, visit)
		}
	default:
		visit(field, v)
	}
}

func visitPlan(p *plan.Plan, visit func(field string, v reflect.Value)) {
	walk(reflect.ValueOf(p), "", visit)
}

// unprinted are the texts of a plan that are names for programs, or that a sheet shows in other words.
var unprinted = map[string]string{
	"Plan.Schema":          "names the JSON form",
	"Part.Material":        "an id; the sheet shows MaterialName",
	"Stock.Kind":           "an id; the sheet shows Text",
	"Helper.ID":            "an id",
	"Setup.ID":             "an id",
	"Setup.MachineKind":    "an id",
	"Setup.HoldingKind":    "an id",
	"Setup.FreeEnd":        "told by the title and the sketch",
	"Setup.Locates":        "in words",
	"Grip.Kind":            "in words",
	"Grip.Surface":         "in words",
	"Grip.Trust":           "in words",
	"Operation.ID":         "an id",
	"Operation.Feature":    "told by the title",
	"Operation.Process":    "told by the title and the sketch",
	"ToolRef.ID":           "an id",
	"Reading.Dial":         "the dial card shows what is to be read",
	"Cut.Name":             "the dial card shows what is to be read",
	"Cut.ToolID":           "an id",
	"Measured.What":        "the checks show what is measured",
	"Line.Reads":           "once for a card",
	"Check.Feature":        "told by What",
	"Dim.Kind":             "drawn",
	"Dim.Feature":          "drawn",
	"Dim.Text":             "drawn",
	"Drawing.Notes":        "drawn",
	"Rule.Class":           "an id",
	"Refusal.Feature":      "",
	"Operation.SpeedWhy":   "",
	"Part.DrawnInInch":     "",
	"Plan.BuiltInWorkshop": "",
}

var number = regexp.MustCompile(`[0-9]+(\.[0-9]+)?`)

// numbersOf are all numbers that a plan holds, in figures or in words, in every form in which units shows them.
func numbersOf(p *plan.Plan) map[string]bool {
	known := map[string]bool{}
	add := func(texts ...string) {
		for _, t := range texts {
			for _, n := range number.FindAllString(t, -1) {
				known[n] = true
			}
		}
	}
	visitPlan(p, func(_ string, v reflect.Value) {
		switch v.Kind() {
		case reflect.String:
			add(v.String())
		case reflect.Int, reflect.Int64:
			add(units.Decimal(float64(v.Int()), 0))
		case reflect.Float64:
			x := math.Abs(v.Float())
			l := units.Length(x)
			add(l.Both(units.InMM), units.Minutes(x).String(), units.Force(x).String(), units.Speed(x).String(),
				units.Angle(x).String(), units.Angle(x).DegreesMinutes(), units.Decimal(x, 0), units.Decimal(x, 1))
		}
	})
	return known
}
