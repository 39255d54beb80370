package claim

import (
	"slices"
	"testing"
)

// Shares, rates and parts, each beside its nearest neighbour.
func TestSharesRatesAndParts(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		want bool
	}{
		{"Nine creaks in ten are dirt, not bearings.", Frequency, true},
		{"Nine screws in ten holes of the lid.", Frequency, false},
		{"Then ten gentle stops from fifty kilometres an hour.", Frequency, false},
		{"It trips ten times an hour.", Frequency, true},
		{"So up we go on the stepladder, and the cover just pops off.", Causal, false},
		{"The cover warps in the steam, so it pops off.", Causal, true},
	} {
		if got := slices.Contains(Sentence(c.text).Kinds, c.kind); got != c.want {
			t.Errorf("%s: %v %v, want %v", c.text, c.kind, got, c.want)
		}
	}
	for text, want := range map[string]int{
		"The number on the brass is the bore in hundredths of a millimetre.": 0,
		"The number on the brass is the bore, a millimetre.":                 1,
	} {
		if got := len(Sentence(text).Values); got != want {
			t.Errorf("%s: %d values, want %d", text, got, want)
		}
	}
}
