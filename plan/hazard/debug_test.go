package hazard

import (
	"fmt"
	"os"
	"strings"
	"testing"
)

func TestDebug(t *testing.T) {
	text := os.Getenv("HAZARD_TEXT")
	if text == "" {
		t.Skip("nothing to show")
	}
	x := compiled()
	toks := x.tokens(nil, text)
	hits := x.find(nil, toks, here, 0)
	x.heads(toks, hits)
	x.manner(toks, hits)
	for _, h := range hits {
		var m []string
		h.marks.each(func(n uint16) { m = append(m, x.names[n]) })
		kind := "thing"
		if h.act {
			kind = "act"
		} else if h.state {
			kind = "state"
		}
		fmt.Printf("%-6s %-24q mod=%v quiet=%v %s\n", kind, text[h.start:h.end], h.modifier, h.quiet, strings.Join(m, " "))
	}
}
