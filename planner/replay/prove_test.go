package replay

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestBushIsProved(t *testing.T) {
	proof := proves(t, bush(t))
	assert.Equal(t, 14, proof.Cuts)
	assert.NotEmpty(t, proof.Clauses)
}
