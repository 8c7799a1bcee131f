package partspec

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"catchplate/partspec/units"
)

// value is what an attribute says. Which member is set depends on its kind.
type value struct {
	size   units.Toleranced // kindSize, kindLength, kindPosition
	number float64          // kindAngle, kindNumber, kindCount
	text   string           // kindText, kindWord
	flag   bool             // kindFlag
	list   []value          // kindLengths, kindNumbers, kindTexts; kindPair: two
	places []place          // kindPlace: one, unless text names it; kindPlaces
}

// misuse says what is wrong with a value and what to write instead.
type misuse struct{ summary, detail string }

// convert checks a value against the kind of its field. After this a figure is
// finite and within bounds.
func convert(f *field, v cty.Value, files *Sources) (value, *misuse) {
	if v.IsNull() || !v.IsKnown() || v.IsMarked() {
		return value{}, &misuse{"it has no value", "Write " + example(f.attr) + ", or leave it out."}
	}
	switch f.kind {
	case kindLengths, kindNumbers, kindTexts:
		return convertList(f, v)
	case kindFlag:
		if v.Type() != cty.Bool {
			return value{}, wrongKind(f.attr)
		}
		return value{flag: v.True()}, nil
	case kindText, kindWord:
		return convertText(f.attr, v)
	case kindAngle, kindNumber, kindCount, kindTurn:
		return convertNumber(f.attr, v)
	case kindPlace, kindPlaces:
		return convertPlaces(f, v)
	case kindPair:
		return convertPair(f, v)
	}
	return convertLength(f.attr, v, f.owner.bare(), written(f, files))
}

// fullTurn is a whole turn, in degrees.
const fullTurn = 360

func wrongKind(a attr) *misuse {
	return &misuse{"it is of the wrong kind", "Write " + example(a) + "."}
}

func convertText(a attr, v cty.Value) (value, *misuse) {
	if v.Type() != cty.String {
		return value{}, wrongKind(a)
	}
	text := strings.TrimSpace(v.AsString())
	most := maxTextBytes
	if a.kind == kindWord {
		most = maxWordBytes
	}
	if len(text) > most {
		return value{}, &misuse{"the text is too long", fmt.Sprintf("It has at most %d letters.", most)}
	}
	if text == "" {
		return value{}, &misuse{"the text is empty", "Write " + example(a) + ", or leave it out."}
	}
	if strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsPrint(r) }) {
		return value{}, &misuse{"the text has signs that do not print", "Write it on one line, with plain spaces."}
	}
	return value{text: text}, nil
}

func convertNumber(a attr, v cty.Value) (value, *misuse) {
	x, wrong := figure(a, v)
	if wrong != nil {
		return value{}, wrong
	}
	if a.kind == kindTurn {
		if math.Abs(x) > fullTurn {
			return value{}, &misuse{"it is more than a turn", "A direction is in degrees, from -360 to 360."}
		}
		return value{number: x}, nil
	}
	switch {
	case x < 0:
		return value{}, &misuse{"it is negative", "It cannot be less than 0."}
	case a.kind == kindCount && (x < 1 || x != math.Trunc(x)):
		return value{}, &misuse{"it is not a count", "Write a whole number of 1 or more."}
	case a.kind == kindAngle && x >= 180:
		return value{}, &misuse{"it is no angle of a part", "An angle is in degrees, under 180."}
	}
	return value{number: x}, nil
}

// figure reads a plain number and bounds it.
func figure(a attr, v cty.Value) (float64, *misuse) {
	if v.Type() != cty.Number {
		return 0, wrongKind(a)
	}
	big := v.AsBigFloat()
	x, _ := big.Float64()
	if big.IsInf() || math.IsInf(x, 0) {
		return 0, &misuse{"it has no end", "Something is divided by 0, or the figure is too large."}
	}
	if math.Abs(x) > maxNumber {
		return 0, &misuse{"it is too large", fmt.Sprintf("At most %.0f is believed.", float64(maxNumber))}
	}
	return x, nil
}

// convertLength reads a bare figure in the unit of the part, or the text of a
// drawing.
func convertLength(a attr, v cty.Value, bare units.Length, from origin) (value, *misuse) {
	size, wrong := readLength(a, v, bare, from)
	if wrong != nil {
		return value{}, wrong
	}
	least := size.Nominal.Value
	if a.kind == kindSize && size.HasLimits {
		least = size.Limits.Low
	}
	switch {
	case size.Nominal.Value.Abs() > units.MaxLength:
		return value{}, &misuse{"it is too long", fmt.Sprintf("At most %s is believed.", units.MaxLength)}
	case a.kind != kindPosition && size.Nominal.Value <= 0:
		return value{}, &misuse{"it is not above 0", "Write a size above 0."}
	case a.kind == kindSize && (least < leastSize):
		return value{}, &misuse{"it is too small", fmt.Sprintf("At least %s is believed.", leastSize)}
	}
	return value{size: size}, nil
}

func readLength(a attr, v cty.Value, bare units.Length, from origin) (units.Toleranced, *misuse) {
	if v.Type() == cty.String {
		return readDrawn(a, v.AsString(), bare)
	}
	if _, wrong := figure(a, v); wrong != nil {
		return units.Toleranced{}, wrong
	}
	if bare == units.Inch {
		v = v.Multiply(mmInInch)
	}
	mm, _ := v.AsBigFloat().Float64()
	return units.Toleranced{Nominal: units.Dimension{Value: units.Length(mm), Written: from.text, InInches: from.inches}}, nil
}

func readDrawn(a attr, text string, bare units.Length) (units.Toleranced, *misuse) {
	if a.kind == kindSize {
		size, err := units.ParseToleranced(text, bare)
		if err != nil {
			return size, &misuse{"it cannot be read", sentence(err)}
		}
		return size, nil
	}
	if a.kind == kindPosition {
		l, err := units.ParsePosition(text, bare)
		if err != nil {
			return units.Toleranced{}, &misuse{"it cannot be read", sentence(err)}
		}
		return units.Toleranced{Nominal: units.Dimension{Value: l, Written: text}}, nil
	}
	d, err := units.ParseDimension(text, bare)
	if err != nil {
		return units.Toleranced{}, &misuse{"it cannot be read", sentence(err) + plainOnly(text, bare)}
	}
	return units.Toleranced{Nominal: d}, nil
}

// plainOnly tells that limits are good writing, but not here.
func plainOnly(text string, bare units.Length) string {
	if t, err := units.ParseToleranced(text, bare); err == nil && (t.HasLimits || t.Class != "") {
		return " This dimension takes no limits."
	}
	return ""
}

func sentence(err error) string {
	text := err.Error()
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

func convertList(f *field, v cty.Value) (value, *misuse) {
	if !v.Type().IsTupleType() || v.LengthInt() == 0 {
		return value{}, wrongKind(f.attr)
	}
	if v.LengthInt() > maxListItems {
		return value{}, &misuse{"the list is too long", fmt.Sprintf("It has at most %d items.", maxListItems)}
	}
	item := attr{f.name, map[kind]kind{kindLengths: kindPosition, kindNumbers: kindNumber, kindTexts: kindWord}[f.kind], false}
	var result value
	for i, member := range v.AsValueSlice() {
		if member.IsNull() || !member.IsKnown() {
			return value{}, wrongKind(f.attr)
		}
		v, wrong := convertItem(item, member, f)
		if wrong != nil {
			wrong.summary = fmt.Sprintf("item %d: %s", i+1, wrong.summary)
			return value{}, wrong
		}
		result.list = append(result.list, v)
	}
	return result, nil
}

func convertItem(item attr, v cty.Value, f *field) (value, *misuse) {
	switch item.kind {
	case kindNumber:
		return convertNumber(item, v)
	case kindWord:
		return convertText(item, v)
	}
	return convertLength(item, v, f.owner.bare(), origin{inches: f.owner.inches})
}

// origin is what the file says of a figure: its text when it is a plain number,
// and whether it was meant in inches.
type origin struct {
	text   string
	inches bool
}

// written cuts the text of a plain number out of the source. Arithmetic has no
// text that a drawing would show.
func written(f *field, files *Sources) origin {
	from := origin{inches: f.owner.inches}
	for _, name := range f.expr.Variables() {
		if slices.Contains([]string{"inch", "thou"}, name.RootName()) {
			from.inches = true
		} else if name.RootName() == "mm" {
			from.inches = false
		}
	}
	if _, plain := f.expr.(*hclsyntax.LiteralValueExpr); plain {
		from.text = slice(f.at, files)
	}
	return from
}

func slice(at hcl.Range, files *Sources) string {
	text := files.Text(at.Filename)
	if !at.CanSliceBytes(text) {
		return ""
	}
	return string(at.SliceBytes(text))
}

// The readers below give the value of an attribute, or nothing when it is not
// written or has failed; a failed value has broken its entry already.

func (e *entry) value(name string) value {
	if f := e.field(name); f != nil && f.state == fieldKnown {
		return f.value
	}
	return value{}
}

// known reports whether an attribute is written and its value could be read.
func (e *entry) known(name string) bool {
	f := e.field(name)
	return f != nil && f.state == fieldKnown
}

func (e *entry) length(name string) units.Length { return e.value(name).size.Nominal.Value }

func (e *entry) dimension(name string) units.Dimension { return e.value(name).size.Nominal }

func (e *entry) number(name string) float64 { return e.value(name).number }

func (e *entry) angle(name string) units.Angle { return units.Angle(e.value(name).number) }

func (e *entry) text(name string) string { return e.value(name).text }

func (e *entry) flag(name string) bool { return e.value(name).flag }

func (e *entry) lengths(name string) []units.Length {
	var list []units.Length
	for _, v := range e.value(name).list {
		list = append(list, v.size.Nominal.Value)
	}
	return list
}

func (e *entry) numbers(name string) []float64 {
	var list []float64
	for _, v := range e.value(name).list {
		list = append(list, v.number)
	}
	return list
}

func (e *entry) texts(name string) []string {
	var list []string
	for _, v := range e.value(name).list {
		list = append(list, v.text)
	}
	return list
}
