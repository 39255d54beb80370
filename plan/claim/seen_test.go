package claim

import (
	"slices"
	"testing"
)

// What is to be kept, found out or seen, beside what is asserted in nearly the
// same words.
func TestSeenAndKept(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		want bool
	}{
		{"Never a longer one, and never tape.", Universal, false},
		{"Never a leak.", Universal, true},
		{"It never takes a longer one.", Universal, true},
		{"Nobody behind the wheel.", Universal, false},
		{"Nobody behind the counter sells them.", Universal, true},
		{"Nobody makes this belt.", Universal, true},
		{"Full tank, and no fuel comes.", Universal, false},
		{"No fuel comes through a blocked tap.", Universal, true},
		{"Turn the shaft towards you and feel if it binds.", Causal, false},
		{"Pull the lever and listen if it scrapes.", Causal, false},
		{"Tighten it too far and it strips.", Causal, true},
		{"Some loosen it to let the oil out.", Causal, false},
		{"Worn seals let the oil out.", Causal, true},
		{"The crack will let water in.", Causal, true},
		{"I see eleven point four.", Measurement, true},
		{"I see 11.4 volts.", Measurement, true},
		{"You should see 11.4 volts.", Measurement, false},
		{"Now it is safe to reach in.", Universal, true},
		{"Right, that is harmless now.", Universal, true},
		{"In eighty percent of cases it is the belt.", Frequency, true},
		{"Eighty percent of the charge is left.", Frequency, false},
	} {
		if got := slices.Contains(Sentence(c.text).Kinds, c.kind); got != c.want {
			t.Errorf("%q: %s %v, want %v", c.text, c.kind, got, c.want)
		}
	}
}
