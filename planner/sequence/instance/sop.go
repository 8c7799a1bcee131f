package instance

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"catchplate/planner/sequence"
)

// parseSOP reads a sequential ordering problem of TSPLIB: headers "KEY: VALUE", then after EDGE_WEIGHT_SECTION the dimension and
// the full matrix row by row. An entry -1 in row i, column j says that j comes before i.
func parseSOP(data []byte) (Instance, error) {
	name := ""
	head, body, found := strings.Cut(string(data), "EDGE_WEIGHT_SECTION")
	if !found {
		return Instance{}, errors.New("neither JSON nor TSPLIB: an opening brace or a line EDGE_WEIGHT_SECTION is wanted")
	}
	for line := range strings.Lines(head) {
		key, value, _ := strings.Cut(line, ":")
		key, value = strings.TrimSpace(key), strings.TrimSpace(value)
		switch key {
		case "NAME":
			name = strings.TrimSuffix(value, ".sop")
		case "TYPE":
			if value != "SOP" {
				return Instance{}, fmt.Errorf("TYPE is %q: SOP is wanted", value)
			}
		case "EDGE_WEIGHT_FORMAT":
			if value != "FULL_MATRIX" {
				return Instance{}, fmt.Errorf("EDGE_WEIGHT_FORMAT is %q: FULL_MATRIX is wanted", value)
			}
		}
	}
	p, err := readMatrix(strings.Fields(body))
	return Instance{name, p}, err
}

func readMatrix(words []string) (*sequence.Problem, error) {
	numbers := make([]int, 0, len(words))
	for _, w := range words {
		if w == "EOF" {
			break
		}
		v, err := strconv.Atoi(w)
		if err != nil {
			return nil, fmt.Errorf("%q in the matrix: a whole number is wanted", w)
		}
		numbers = append(numbers, v)
	}
	if len(numbers) == 0 || numbers[0] < 1 || numbers[0] > sequence.MaxOps {
		return nil, fmt.Errorf("the matrix must start with its size, between 1 and %d", sequence.MaxOps)
	}
	n, rest := numbers[0], numbers[1:]
	if len(rest) != n*n {
		return nil, fmt.Errorf("the matrix has %d entries: %d times %d are wanted", len(rest), n, n)
	}
	p := &sequence.Problem{}
	for i := range n {
		row := rest[i*n : (i+1)*n]
		p.Ops = append(p.Ops, sequence.Op{Name: fmt.Sprintf("node %02d", i), Alts: []sequence.Alt{{}}})
		for j, c := range row {
			if c == -1 && i != j {
				p.Prec = append(p.Prec, [2]int{j, i})
				row[j] = 0 // j never follows i
			}
		}
		p.Between = append(p.Between, row)
	}
	return p, nil
}
