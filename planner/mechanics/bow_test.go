package mechanics

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A steel strip of 3 by 20, 80 of it in the jaws: 210000 x 27 / (12 x 0.91) = 519231 N mm; x pi^2 x 80 / 400 = 1 024 917 N.
func TestPlateBetweenJawsBows(t *testing.T) {
	strip := PlateBetweenJaws{ThicknessMM: 3, AcrossMM: 20, WidthMM: 80, ModulusMPa: 210000, Poisson: 0.3}
	assert.InDelta(t, 1024917, strip.BowsAtN(), 20)
	wide := strip
	wide.AcrossMM = 40
	assert.InDelta(t, strip.BowsAtN()/4, wide.BowsAtN(), 1e-6)
	thin := strip
	thin.ThicknessMM = 1.5
	assert.InDelta(t, strip.BowsAtN()/8, thin.BowsAtN(), 1e-6)
	assert.Zero(t, PlateBetweenJaws{}.BowsAtN())
}

// 1000 N midway on 60 by 3 of steel, 80 along the parallels, 60 of it counted: 1000 x 216000 / (4 x 210000 x 60 x 27) = 0.1587 mm.
func TestPlateOnParallelsSags(t *testing.T) {
	plate := PlateOnParallels{ThicknessMM: 3, SpanMM: 60, WidthMM: 80, ModulusMPa: 210000}
	assert.InDelta(t, 0.1587, plate.SagMM(1000), 1e-4)
	assert.InDelta(t, 2*plate.SagMM(1000), plate.SagMM(2000), 1e-12)
	narrow := plate
	narrow.WidthMM = 30
	assert.InDelta(t, 2*plate.SagMM(1000), narrow.SagMM(1000), 1e-12)
	assert.Zero(t, plate.SagMM(-1))
	assert.Zero(t, PlateOnParallels{}.SagMM(1000))
}
