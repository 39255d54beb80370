package book

import "testing"

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
