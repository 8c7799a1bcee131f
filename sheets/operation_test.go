package sheets

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestTopSlidePastSquareIsSaidFromSquare(t *testing.T) {
	assert.Equal(t, "30° from the axis (30° 00')", setOver(30))
	assert.Equal(t, "-109° from the axis (-109° 00'), which is 19° past square", setOver(-109))
}
