package instance

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"catchplate/planner/sequence"
)

const small = `{"format": "ordering-1", "name": "small", "n": 2, "machines": [{"name": "m"}], "machine_change": 5,
 "setups": [{"name": "s", "machine": 0, "cost": 7}], "tools": [{"name": "t", "cost": 3}],
 "ops": [{"name": "a", "alts": [{"setup": 0, "machine": 0, "tool": 0, "own": 1}]},
         {"name": "b", "alts": [{"setup": 0, "machine": 0, "tool": 0, "own": 2}]}],
 "prec": [[1, 0]], "first_free": true}`

func TestOrdering(t *testing.T) {
	inst, err := Parse([]byte(small))
	require.NoError(t, err)
	assert.Equal(t, Instance{"small", &sequence.Problem{
		Ops: []sequence.Op{
			{Name: "a", Alts: []sequence.Alt{{Own: 1}}},
			{Name: "b", Alts: []sequence.Alt{{Own: 2}}},
		},
		Setups:        []sequence.Setup{{Name: "s", Cost: 7}},
		Tools:         []sequence.Tool{{Name: "t", Cost: 3}},
		Machines:      []string{"m"},
		MachineChange: 5,
		FirstFree:     true,
		Prec:          [][2]int{{1, 0}},
	}}, inst)
}

func TestSOP(t *testing.T) {
	inst, err := Parse([]byte("NAME: tiny.sop\nTYPE: SOP\nDIMENSION: 3\nEDGE_WEIGHT_FORMAT: FULL_MATRIX\nEDGE_WEIGHT_SECTION\n3\n0 4 9\n-1 0 5\n-1 -1 0\nEOF\n"))
	require.NoError(t, err)
	assert.Equal(t, "tiny", inst.Name)
	assert.Equal(t, [][2]int{{0, 1}, {0, 2}, {1, 2}}, inst.Problem.Prec)
	assert.Equal(t, [][]int{{0, 4, 9}, {0, 0, 5}, {0, 0, 0}}, inst.Problem.Between)
}

func TestRefused(t *testing.T) {
	sop := func(matrix string) string { return "NAME: x\nEDGE_WEIGHT_SECTION\n" + matrix + "\nEOF\n" }
	for name, c := range map[string]struct{ text, want string }{
		"neither":      {"hello", "neither JSON nor TSPLIB"},
		"broken JSON":  {"{", "not JSON of the form ordering-1"},
		"other form":   {`{"format": "ordering-2"}`, `"ordering-1" is wanted`},
		"count":        {`{"format": "ordering-1", "n": 3}`, "0 operations are listed"},
		"no operation": {`{"format": "ordering-1", "n": 0}`, "between 1 and 64"},
		"arc":          {`{"format": "ordering-1", "n": 1, "ops": [{}], "prec": [[0]]}`, "a pair [before, after] is wanted"},
		"machine": {`{"format": "ordering-1", "n": 1, "machines": [{}, {}], "setups": [{"machine": 0}], "tools": [{}],
			"ops": [{"alts": [{"setup": 0, "machine": 1, "tool": 0}]}]}`, "setup 0 is on machine 0"},
		"not a number":   {`{"format": "ordering-1", "n": 1, "machine_change": NaN}`, "not JSON"},
		"a fraction":     {`{"format": "ordering-1", "n": 1, "machine_change": 1.5}`, "machine_change"},
		"too dear":       {`{"format": "ordering-1", "n": 1, "machine_change": 1e300}`, "machine_change"},
		"huge cost":      {`{"format": "ordering-1", "n": 1, "machines": [{}], "setups": [{}], "tools": [{"cost": 9000000000000000000}], "ops": [{"alts": [{}]}]}`, "a cost lies between 0 and 1000000"},
		"below nothing":  {`{"format": "ordering-1", "n": 1, "machines": [{}], "setups": [{"cost": -1}], "tools": [{}], "ops": [{"alts": [{}]}]}`, "a cost lies between 0 and 1000000"},
		"no alternative": {`{"format": "ordering-1", "n": 1, "ops": [{"alts": []}]}`, "has no alternative"},
		"two in a circle": {`{"format": "ordering-1", "n": 2, "machines": [{}], "setups": [{}], "tools": [{}],
			"ops": [{"alts": [{}]}, {"alts": [{}]}], "prec": [[0, 1], [1, 0]]}`, "goes in a circle"},
		"after itself": {`{"format": "ordering-1", "n": 1, "machines": [{}], "setups": [{}], "tools": [{}], "ops": [{"alts": [{}]}], "prec": [[0, 0]]}`, "goes in a circle"},
		"two values":   {small + small, "not JSON of the form"},
		"setup": {`{"format": "ordering-1", "n": 1, "machines": [{}], "setups": [{}], "tools": [{}],
			"ops": [{"alts": [{"setup": 4, "tool": 0}]}]}`, "at least 0 and below 1"},
		"type":     {"TYPE: TSP\nEDGE_WEIGHT_SECTION\n", "SOP is wanted"},
		"form":     {"EDGE_WEIGHT_FORMAT: UPPER_ROW\nEDGE_WEIGHT_SECTION\n", "FULL_MATRIX is wanted"},
		"word":     {sop("2 0 1 x 0"), "a whole number is wanted"},
		"no size":  {sop(""), "must start with its size"},
		"size":     {sop("65 0"), "between 1 and 64"},
		"entries":  {sop("2 0 1 1"), "2 times 2 are wanted"},
		"negative": {sop("2 0 -7 1 0"), "a cost lies between 0"},
		"circle":   {sop("2 0 -1 -1 0"), "goes in a circle"},
	} {
		_, err := Parse([]byte(c.text))
		require.Error(t, err, name)
		assert.ErrorContains(t, err, c.want, name)
	}
}

func TestLoad(t *testing.T) {
	path := filepath.Join(t.TempDir(), "nameless.json")
	require.NoError(t, os.WriteFile(path, []byte(`{"format": "ordering-1", "n": 1, "machines": [{}], "setups": [{}], "tools": [{}], "ops": [{"alts": [{}]}]}`), 0o644))
	inst, err := Load(path)
	require.NoError(t, err)
	assert.Equal(t, "nameless", inst.Name)
	_, err = Load(path + ".not")
	assert.Error(t, err)
	_, err = Load(t.TempDir())
	assert.Error(t, err)
	require.NoError(t, os.WriteFile(path, make([]byte, MaxBytes+1), 0o644))
	_, err = Load(path)
	assert.ErrorContains(t, err, "too long")
}

func FuzzParse(f *testing.F) {
	f.Add([]byte(small))
	f.Add([]byte("EDGE_WEIGHT_SECTION\n2\n0 1\n-1 0\nEOF\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if inst, err := Parse(data); err == nil {
			assert.NoError(t, inst.Problem.Validate())
		}
	})
}
