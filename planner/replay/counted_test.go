package replay

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestCounted(t *testing.T) {
	assert.Equal(t, "1 drawn relation holds", counted(1, "drawn relation", "hold"))
	assert.Equal(t, "2 drawn relations hold", counted(2, "drawn relation", "hold"))
	assert.Equal(t, "1 thread or knurl", counted(1, "thread or knurl", ""))
	assert.Equal(t, "3 threads or knurls", counted(3, "thread or knurl", ""))
}
