package build

import (
	"strings"
	"testing"

	"fixslate/plan/diag"
	"fixslate/samples"
)

// The notes for the cut ask for pictures: the words of a caution's card are no
// picture to get, and what the camera makes apart is one.
func TestToGet(t *testing.T) {
	text, _ := samples.Plan("washer-pump")
	src, _ := diag.NewSource("plan.toml", text)
	c := Compile(Request{Source: src})
	kinds := map[string]int{}
	for _, note := range toGet(c.Shots) {
		kinds[note.Kind]++
		if strings.Contains(note.Of, "card over the picture") {
			t.Errorf("a card to get: %+v", note)
		}
	}
	apart := 0
	for _, s := range c.Shots {
		if s.Apart {
			apart++
		}
	}
	if kinds["filmed apart"] != 1 || kinds["filmed apart"]+kinds["insert"] != apart {
		t.Errorf("%v, %d shots apart", kinds, apart)
	}
}
