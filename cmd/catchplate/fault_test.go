package main

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"

	"catchplate/planner/replay"
)

func TestOurOwnFaultsEndWithThree(t *testing.T) {
	t.Run("a plan that the replay refutes", func(t *testing.T) {
		var out, talk bytes.Buffer
		c := &cli{out: &out, talk: &talk}
		failures := []replay.Failure{{Part: "bush", Setup: 2, Operation: "bore.main/ream", Clause: "size", Reason: "comes out at 9.9"}}
		assert.Equal(t, exitFault, c.finish(nil, c.refuted(failures)))
		assert.Contains(t, talk.String(), "bush")
		assert.Contains(t, talk.String(), "bore.main/ream")
		assert.Contains(t, talk.String(), "comes out at 9.9")
		assert.Empty(t, out.String())
	})
	t.Run("a panic", func(t *testing.T) {
		var talk bytes.Buffer
		code := func() (code int) {
			c := &cli{talk: &talk}
			defer c.recoverFault(&code)
			panic("slip")
		}()
		assert.Equal(t, exitFault, code)
		assert.Contains(t, talk.String(), "a fault of the program, please report it with the input: slip")
	})
}
