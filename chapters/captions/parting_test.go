package captions

import (
	"strings"
	"testing"
	"time"
)

// In each row the line is parted more gladly at the first stroke than at any
// other.
func TestWherePartingIsBest(t *testing.T) {
	for _, row := range []string{
		"the wiper stays on | while the lid is shut",
		"we climb in | behind the seat",
		"the tank fills up there | below the roof",
		"a wet belt tells you | about the seal",
		"lift it out, | fit the new one",
		"it is the maker's own sheet | with every figure",
		"now two springs | in a row",
		"a pump seal (RX-12, two-pin) | for the early one",
		"that is a worn chain | on a good wheel",
		"the clutch lever alone | is loose",
	} {
		var parts []int32
		best, plain := -1, ""
		for _, field := range strings.Fields(row) {
			if field == "|" {
				best = len(strings.Fields(plain)) - 1
			} else {
				plain += field + " "
			}
		}
		p := Profile{Width: 200, Lines: 2, Longest: time.Minute}
		w := wordsOf([]Unit{{Text: plain, End: 9}}, p)
		for i := range w.list[:len(w.list)-1] {
			parts = append(parts, w.list[i].part)
		}
		for i, cost := range parts {
			if i != best && cost <= parts[best] {
				t.Errorf("%s\nafter word %d it costs %d, at the stroke %d: %v", row, i+1, cost, parts[best], parts)
			}
		}
	}
}
