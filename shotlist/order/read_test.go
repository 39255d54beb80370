package order_test

import (
	"strings"
	"testing"

	"fixslate/shotlist/order"
)

const small = `NAME: four
TYPE: SOP
DIMENSION: 4
EDGE_WEIGHT_TYPE: EXPLICIT
EDGE_WEIGHT_FORMAT: FULL_MATRIX
EDGE_WEIGHT_SECTION
4
 0  5  9 100
-1  0 -1   6
-1  2  0   1
-1 -1 -1   0
EOF
`

// The layout is that of TSPLIB 95, section 3.4: 0, 2, 1, 3 is the only order.
func TestReadSOP(t *testing.T) {
	for name, text := range map[string]string{
		"as published":     small,
		"number in header": strings.Replace(small, "SECTION\n4\n", "SECTION\n", 1),
		"number in matrix": strings.Replace(small, "DIMENSION: 4\n", "", 1),
		"spaces and CRLF":  strings.ReplaceAll(strings.ReplaceAll(small, ":", " : "), "\n", "\r\n"),
		"no end":           strings.Replace(small, "EOF\n", "", 1),
		"unwritten ends":   strings.ReplaceAll(small, "-1 -1 -1   0\n", "3 3 3 0\n"),
	} {
		p, err := order.ReadSOP(strings.NewReader(text))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		r, err := order.Solve(t.Context(), p, order.Budget{})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		check(t, p, r)
		if r.Cost != 9+2+6 || !r.Optimal {
			t.Errorf("%s: %+v", name, r)
		}
	}
}

func TestReadSOPFaults(t *testing.T) {
	for want, text := range map[string]string{
		"EDGE_WEIGHT_SECTION": "NAME: x\n",
		"line 2: the file is": "NAME: x\nTYPE: ATSP\n",
		"UPPER_ROW":           "EDGE_WEIGHT_FORMAT: UPPER_ROW\n",
		`"x" is not`:          strings.Replace(small, " 5 ", " x ", 1),
		"-2 is no cost":       strings.Replace(small, " 5 ", " -2 ", 1),
		"15 numbers":          strings.Replace(small, " 5 ", " ", 1),
		"the dimension is":    strings.Replace(small, "DIMENSION: 4", "DIMENSION: -4", 1),
		"no number of nodes":  "EDGE_WEIGHT_SECTION\n",
	} {
		_, err := order.ReadSOP(strings.NewReader(text))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v does not say %q", err, want)
		}
	}
}

// Whatever ReadSOP takes, Solve can judge.
func FuzzReadSOP(f *testing.F) {
	f.Add(small)
	f.Add("EDGE_WEIGHT_SECTION\n2\n0 1\n-1 0\n")
	f.Add("DIMENSION: 0\nEDGE_WEIGHT_SECTION\n")
	f.Add("TYPE: SOP\nEDGE_WEIGHT_SECTION\n3\n0 -1 1 -1 0 1 -1 -1 0\n")
	f.Fuzz(func(t *testing.T, text string) {
		p, err := order.ReadSOP(strings.NewReader(text))
		if err != nil {
			return
		}
		r, err := order.Solve(t.Context(), p, order.Budget{Rounds: 10})
		if err == nil {
			check(t, p, r)
		} else if !strings.Contains(err.Error(), "cycle") && !strings.Contains(err.Error(), "cost from") {
			t.Error(err)
		}
	})
}
