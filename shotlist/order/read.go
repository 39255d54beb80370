package order

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// maxFile caps what ReadSOP reads, in bytes; 2,000 nodes need about 20 MB.
const maxFile = 1 << 28

// ReadSOP reads a file of TSPLIB type SOP (Reinelt, TSPLIB 95, sections 1 and
// 3.4): a full matrix, in which -1 at row i, column j means that j comes
// before i. The first node comes first and the last one last, whether or not
// the matrix says so. The number of nodes may stand before the matrix, as it
// does in TSPLIB, or in the header alone. Errors name the line.
func ReadSOP(r io.Reader) (Problem, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxFile+1))
	if err != nil {
		return Problem{}, err
	}
	if len(text) > maxFile {
		return Problem{}, fmt.Errorf("the file is larger than %d bytes; split the problem", maxFile)
	}
	s := &sopFile{dimension: -1}
	sc := bufio.NewScanner(bytes.NewReader(text))
	sc.Buffer(nil, maxFile+1)
	for sc.Scan() && !s.ended {
		s.line++
		if err := s.read(strings.TrimSpace(sc.Text())); err != nil {
			return Problem{}, fmt.Errorf("line %d: %w", s.line, err)
		}
	}
	if err := sc.Err(); err != nil {
		return Problem{}, err
	}
	return s.problem()
}

type sopFile struct {
	line      int
	dimension int // from the header, -1 without
	matrix    bool
	ended     bool
	numbers   []int
	lead      int // numbers in the first line that holds any
}

// read takes one line.
func (s *sopFile) read(l string) error {
	key, value, _ := strings.Cut(l, ":")
	key, value = strings.TrimSpace(key), strings.TrimSpace(value)
	switch {
	case key == "EOF":
		s.ended = true
	case key == "EDGE_WEIGHT_SECTION":
		s.matrix = true
	case s.matrix:
		return s.row(l)
	case key == "TYPE" && value != "SOP":
		return fmt.Errorf("the file is of type %q; only SOP can be read", value)
	case key == "EDGE_WEIGHT_TYPE" && value != "EXPLICIT", key == "EDGE_WEIGHT_FORMAT" && value != "FULL_MATRIX":
		return fmt.Errorf("%s is %q; only EXPLICIT weights as a FULL_MATRIX can be read", key, value)
	case key == "DIMENSION":
		n, err := strconv.Atoi(value)
		if err != nil || n < 0 || n > maxNodes {
			return fmt.Errorf("the dimension is %q; give a number from 0 to %d", value, maxNodes)
		}
		s.dimension = n
	}
	return nil
}

func (s *sopFile) row(l string) error {
	for f := range strings.FieldsSeq(l) {
		v, err := strconv.Atoi(f)
		if err != nil {
			return fmt.Errorf("%q is not a whole number; write whole numbers only", f)
		}
		if v < -1 || v > maxCost {
			return fmt.Errorf("%d is no cost; give -1 for a forced order, or 0 to %d", v, maxCost)
		}
		s.numbers = append(s.numbers, v)
	}
	if s.lead == 0 {
		s.lead = len(s.numbers)
	}
	return nil
}

func (s *sopFile) problem() (Problem, error) {
	if !s.matrix {
		return Problem{}, fmt.Errorf("no line EDGE_WEIGHT_SECTION; this is no file of type SOP")
	}
	n, nums := s.dimension, s.numbers
	if len(nums) > 1 && (n < 0 || s.lead == 1 && nums[0] == n) {
		n, nums = nums[0], nums[1:]
	}
	if n < 0 || n > maxNodes {
		return Problem{}, fmt.Errorf("no number of nodes; give a line DIMENSION")
	}
	if len(nums) != n*n {
		return Problem{}, fmt.Errorf("%d numbers for a matrix of %d nodes; %d are needed", len(nums), n, n*n)
	}
	p := Problem{Cost: make([][]int, n)}
	for i := range n {
		p.Cost[i] = nums[i*n : (i+1)*n : (i+1)*n]
	}
	for i, row := range p.Cost {
		for j, c := range row {
			if i != j && (c == -1 || j == 0 || i == n-1) {
				p.Before = append(p.Before, [2]int{j, i})
			}
		}
	}
	return p, nil
}
