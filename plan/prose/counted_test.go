package prose

import "testing"

func TestMinutes(t *testing.T) {
	for minutes, want := range map[float64]string{0: "0 min", 0.2: "under 1 min", 59.4: "59 min", 60: "1 h", 99: "1 h 39 min"} {
		if got := Minutes(minutes); got != want {
			t.Errorf("%v is %q, not %q", minutes, got, want)
		}
	}
}

func TestCapital(t *testing.T) {
	for text, want := range map[string]string{"": "", "pump off": "Pump off", "öl kalt": "Öl kalt", "3 V": "3 V", "ß": "ß"} {
		if got := Capital(text); got != want {
			t.Errorf("%q becomes %q, not %q", text, got, want)
		}
	}
}
