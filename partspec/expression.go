package partspec

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"
	"github.com/zclconf/go-cty/cty/function"
)

// mmInInch is exact; cty's numbers carry 512 bits, so that 7/8 * inch is
// rounded once, at the end.
var mmInInch = cty.MustParseNumberVal("25.4")

// constants are the units that a figure can be multiplied with, in the unit of a
// bare figure: millimetres, or inches in a part that is drawn in inches.
func constants(inches bool) map[string]cty.Value {
	one := cty.NumberIntVal(1)
	mm, inch := one, mmInInch
	if inches {
		mm, inch = one.Divide(mmInInch), one
	}
	return map[string]cty.Value{"mm": mm, "inch": inch, "thou": inch.Divide(cty.NumberIntVal(1000)), "deg": one}
}

func constantNames() []string { return []string{"deg", "inch", "mm", "thou"} }

// decimal is a number with the decimal figures of x, not its binary noise.
func decimal(x float64) cty.Value {
	return cty.MustParseNumberVal(strconv.FormatFloat(x, 'f', -1, 64))
}

// functions is all that an expression can call. Angles are in degrees.
var functions = map[string]function.Function{
	"abs":  oneFigure(math.Abs),
	"sqrt": oneFigure(math.Sqrt),
	"sin":  oneFigure(func(x float64) float64 { return math.Sin(x * math.Pi / 180) }),
	"cos":  oneFigure(func(x float64) float64 { return math.Cos(x * math.Pi / 180) }),
	"tan":  oneFigure(func(x float64) float64 { return math.Tan(x * math.Pi / 180) }),
	"min":  someFigures(func(a, b cty.Value) bool { return a.LessThan(b).True() }),
	"max":  someFigures(func(a, b cty.Value) bool { return a.GreaterThan(b).True() }),
}

var functionNames = []string{"abs", "cos", "max", "min", "sin", "sqrt", "tan"}

var errNoResult = errors.New("this has no result")

func oneFigure(f func(float64) float64) function.Function {
	return function.New(&function.Spec{
		Params: []function.Parameter{{Name: "figure", Type: cty.Number}},
		Type:   function.StaticReturnType(cty.Number),
		Impl: func(args []cty.Value, _ cty.Type) (cty.Value, error) {
			x, _ := args[0].AsBigFloat().Float64()
			y := f(x)
			if math.IsNaN(y) || math.IsInf(y, 0) {
				return cty.NilVal, errNoResult
			}
			return decimal(y), nil
		},
	})
}

func someFigures(better func(a, b cty.Value) bool) function.Function {
	return function.New(&function.Spec{
		Params:   []function.Parameter{{Name: "figure", Type: cty.Number}},
		VarParam: &function.Parameter{Name: "figures", Type: cty.Number},
		Type:     function.StaticReturnType(cty.Number),
		Impl: func(args []cty.Value, _ cty.Type) (cty.Value, error) {
			best := args[0]
			for _, a := range args[1:] {
				if better(a, best) {
					best = a
				}
			}
			return best, nil
		},
	})
}

// checkExpression refuses what the language does not have, before anything is
// evaluated: only arithmetic, names, conditions, lists and the functions above.
func checkExpression(expr hclsyntax.Expression) *Diagnostic {
	var problem *Diagnostic
	hclsyntax.VisitAll(expr, func(node hclsyntax.Node) hcl.Diagnostics {
		if problem == nil {
			problem = checkNode(node)
		}
		return nil
	})
	return problem
}

func checkNode(node hclsyntax.Node) *Diagnostic {
	switch n := node.(type) {
	case *hclsyntax.LiteralValueExpr, *hclsyntax.ScopeTraversalExpr, *hclsyntax.ParenthesesExpr,
		*hclsyntax.ConditionalExpr, *hclsyntax.TupleConsExpr:
		return nil
	case *hclsyntax.TemplateExpr:
		if n.IsStringLiteral() {
			return nil
		}
	case *hclsyntax.UnaryOpExpr:
		return checkOperands(n.Val)
	case *hclsyntax.BinaryOpExpr:
		if n.Op == hclsyntax.OpModulo {
			return fault(n.SrcRange, "The sign % is not part of the language", "Expressions have +, -, * and /.")
		}
		return checkOperands(n.LHS, n.RHS)
	case *hclsyntax.FunctionCallExpr:
		if slices.Contains(functionNames, n.Name) && !n.ExpandFinal {
			return nil
		}
		return fault(n.NameRange, fmt.Sprintf("There is no function %s", n.Name), "%s", didYouMean(n.Name, functionNames, ""))
	}
	return fault(node.Range(), "This is not part of the language",
		"Expressions are arithmetic, names, conditions and a few functions.")
}

// checkOperands refuses text in arithmetic: hcl would read "7" * 2 as 14, and
// would not know the unit of "7 in" * 2.
func checkOperands(operands ...hclsyntax.Expression) *Diagnostic {
	for _, o := range operands {
		if template, ok := o.(*hclsyntax.TemplateExpr); ok {
			return fault(template.SrcRange, "Text cannot be reckoned with", "Write the size without quotes: 7/8 * inch.")
		}
	}
	return nil
}
