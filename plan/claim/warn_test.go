package claim

import "testing"

func TestWarns(t *testing.T) {
	for text, want := range map[string]bool{
		"Keep your face away, because it can burst.":             true,
		"Never lean over it: the spring can hurt you.":           true,
		"Don't open it hot, or the steam scalds your skin.":      true,
		"The seal bursts because it is old.":                     false,
		"Keep the screws apart, because they differ in length.":  false,
		"Stand clear of the door: it lets go without a warning.": true,
		"": false,
	} {
		if got := Warns(text); got != want {
			t.Errorf("%q: %t", text, got)
		}
	}
}
