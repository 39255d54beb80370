package class

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The four words of ANSI Z535.4-2007, 4.14.1 to 4.14.4, in order of gravity.
func TestSignals(t *testing.T) {
	var got []string
	mildestFirst := []Signal{Notice, Caution, Warning, Danger}
	for i, s := range mildestFirst {
		got = append(got, s.String())
		if i > 0 && s <= mildestFirst[i-1] {
			t.Errorf("%v is not graver than %v", s, mildestFirst[i-1])
		}
	}
	if diff := cmp.Diff([]string{"notice", "caution", "warning", "danger"}, got); diff != "" {
		t.Error(diff)
	}
}

func TestParseSignal(t *testing.T) {
	for word, want := range map[string]Signal{
		"danger": Danger, "WARNING": Warning, "Caution": Caution, "notice": Notice,
		"": 0, "none": 0, "dangerous": 0, "note": 0,
	} {
		if got, ok := ParseSignal(word); got != want || ok != (want != 0) {
			t.Errorf("ParseSignal(%q) = %v, %v, want %v", word, got, ok, want)
		}
	}
	if Signal(0).String() != "none" {
		t.Errorf("no signal reads %q", Signal(0))
	}
}

func TestTiming(t *testing.T) {
	for _, c := range []struct {
		in   Timing
		want string
	}{
		{Timing{At: Step}, "Right before the action."},
		{Timing{Step | Return, "after each run"}, "Right before the action, again on every return: after each run."},
		{
			Timing{At: Before | Step | Return | Close | After},
			"Before the work, right before the action, again on every return, with an action that closes it, and something to do afterwards.",
		},
	} {
		if got := c.in.Sentence(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	if m := Before | Step; !m.has(Step) || !m.has(Before|Step) || m.has(Step|Return) {
		t.Errorf("%v: Has", m)
	}
}

func TestSkillsInWords(t *testing.T) {
	seen := map[string]bool{}
	for s := Anyone; s <= Licensed; s++ {
		if seen[s.String()] || s.String() == Skill(0).String() {
			t.Errorf("skill %d reads %q", s, s)
		}
		seen[s.String()] = true
	}
}
