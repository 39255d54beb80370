package book

import (
	"html/template"
	"testing"
)

func TestKeep(t *testing.T) {
	for in, want := range map[string]string{
		"torque 1.5 N·m (1.1 lb·ft), class 8": "torque 1.5\u00a0N·m (1.1\u00a0lb·ft), class 8",
		"Now wait 5 min.":                     "Now wait 5\u00a0min.",
		"step 3 in the book":                  "step 3 in the book",
		"two  spaces, 4 × M5":                 "two  spaces, 4 × M5",
		"":                                    "",
	} {
		if got := keep(in); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// A part number is kept whole by markup: what is copied has its own hyphen.
func TestWhole(t *testing.T) {
	for in, want := range map[string]template.HTML{
		"drain pump, number NV-2231": `drain pump, number <span class="unbroken">NV-2231</span>`,
		"2 × non-return valve":       "2 × non-return valve",
		"seal <A>-1 & \"b\"":         `seal <span class="unbroken">&lt;A&gt;-1</span> &amp; &#34;b&#34;`,
		"wait 5 min":                 "wait 5 min",
	} {
		if got := whole(in); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
