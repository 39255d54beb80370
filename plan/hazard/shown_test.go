package hazard

import "testing"

// What shows a hazard stands by kind, each word once.
func TestShown(t *testing.T) {
	for want, h := range map[string]Hazard{
		"":                               {},
		"do: undo":                       {Evidence: []Evidence{{Kind: "do", Words: "undo"}}},
		"say: spin; odds 0.4":            {Evidence: []Evidence{{Kind: "say", Words: "spin"}}, Odds: 0.4},
		"do: undo, lift; state: running": {Evidence: []Evidence{{Kind: "do", Words: "undo"}, {Kind: "state", Words: "running"}, {Kind: "do", Words: "lift"}, {Kind: "state", Words: "running"}}},
	} {
		if got := h.Shown(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
