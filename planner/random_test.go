package planner_test

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/partspec/parttest"
	"catchplate/planner"
)

// Seeds whose plans the replay once refuted, and why.
func TestSeedsOnceRefuted(t *testing.T) {
	for seed, why := range map[int]string{
		23383: "a bar that is parted before it is turned was gripped for the force at the smaller diameter",
		33376: "a blade stopped at the face of an end that was turned from the other side",
		33398: "a steep cone was cut deeper than said, for it begins beside a face that lies off by what the length may be",
		33559: "the same, and a sliver of the bar stood between a cone's large end and its lower neighbour",
		33685: "a blade stopped at the face of an end that was turned from the other side",
		34478: "the flank of a chamfer tool met a collar as far off as it reaches",
		33269: "a recess on a disc held by the jaw steps was deeper than such a grip stands",
		35162: "a cone was thought to go on farther than whole marks of the top slide take it, and the dial was set there",
		42919: "the blank of a knurl was turned from within a neighbour that still stood higher, and may come down to it",
		43505: "the same, under a neighbour with close limits",
	} {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			part, shop := drawnOf(seed)
			answered(t, parsed(t, part.HCL(false)+shop))
			if t.Failed() {
				t.Log(why)
			}
		})
	}
}

// Whatever is drawn is planned and proved, or refused with reasons; twice the same, and in the order of the workshop's file or another.
func TestRandomPartsAreProvedOrRefused(t *testing.T) {
	made, asked := 0, 0
	drawn(t, func(t *testing.T, seed int, part parttest.PartText, shop string) {
		job := parsed(t, part.HCL(false)+shop)
		p := answered(t, job)
		asked++
		if len(p.Parts[0].Setups) > 0 {
			made++
		}
		if t.Failed() {
			t.Log(part.HCL(false) + shop)
		}
		if seed%5 == 0 {
			again, _ := planner.Proved(job, planner.Options{})
			assert.Equal(t, text(t, p), text(t, again), "planned twice")
		}
	})
	t.Logf("%d of %d random parts are made", made, asked)
	assert.Greater(t, made, asked/6, "hardly anything is made: the test would prove nothing")
}

// Sizes that no mark of a dial falls on, as those of a drawing in inches on millimetre dials: the parts are proved or refused all the same.
func TestRandomPartsBetweenTheMarks(t *testing.T) {
	made, asked := 0, 0
	drawn(t, func(t *testing.T, seed int, part parttest.PartText, shop string) {
		if seed%2 != 0 && os.Getenv("CATCHPLATE_SLOW") == "" {
			return
		}
		text := part.Scaled(127.0/128).HCL(false) + shop
		p := answered(t, parsed(t, text))
		asked++
		if len(p.Parts[0].Setups) > 0 {
			made++
		}
		if t.Failed() {
			t.Log(text)
		}
	})
	t.Logf("%d of %d random parts are made", made, asked)
	assert.Greater(t, made, asked/8, "hardly anything is made: the test would prove nothing")
}
