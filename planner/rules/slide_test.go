package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec"
	"catchplate/planner/rules"
)

func slid(f rules.SlideFacts) func(*rules.Case) { return func(c *rules.Case) { c.Slide = &f } }

// A vertical slide bears small cutters in a collet, shallow passes, and no way past its travel; a drill is not asked for a collet.
func TestVerticalSlideBears(t *testing.T) {
	refused := func(f rules.SlideFacts) bool {
		return objects(rules.All(), "B-32", sound(in(partspec.Vice), slid(f)))
	}
	ok := rules.SlideFacts{CutterMM: 10, MostMM: rules.MostOnSlide("steel"), DepthMM: 2.5, Collets: true}
	assert.False(t, refused(ok))
	for name, spoil := range map[string]func(*rules.SlideFacts){
		"a large cutter": func(f *rules.SlideFacts) { f.CutterMM = 12 },
		"a deep pass":    func(f *rules.SlideFacts) { f.DepthMM = 2.6 },
		"no collet":      func(f *rules.SlideFacts) { f.Collets = false },
		"a long way":     func(f *rules.SlideFacts) { f.Travel = "the cross slide would go 120, its travel is 110" },
	} {
		f := ok
		spoil(&f)
		assert.True(t, refused(f), name)
	}
	assert.False(t, refused(rules.SlideFacts{CutterMM: 16, MostMM: rules.MostOnSlide("brass"), DepthMM: 2, Collets: true}), "soft metal")
	assert.False(t, refused(rules.SlideFacts{}), "a drill")
}
