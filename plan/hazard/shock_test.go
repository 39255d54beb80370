package hazard

import (
	"fmt"
	"testing"

	"fixslate/plan/given"
)

// What a test should read tells of shock where no word does.
func TestReadingsTellOfShock(t *testing.T) {
	for _, c := range []struct {
		subject, setting, expect string
		class                    string // empty: neither class
	}{
		{"panel heater", "V AC", "230 V AC", "live-test"},
		{"panel heater", "", "about 230 V", "live-test"},
		{"bench supply", "V DC", "320 to 340 V", "live-test"},
		{"bench supply", "V DC", "110 V", ""},
		{"bench supply", "V AC", "110 V", "live-test"},
		{"bench supply", "V AC", "50 V", ""},
		{"bench supply", "V DC", "-150 V", "live-test"},
		{"bench supply", "V DC", "0.33 kV", "live-test"},
		{"bench supply", "V DC", "12 ± 0.5 V", ""},
		{"panel heater", "V AC", "at most 60 V", ""},
		{"panel heater", "ohms", "at least 500 kΩ", ""},
		{"fence energiser", "kV", "at least 5 kV", ""},
		{"electric van", "V DC", "at least 350 V", "hv-vehicle"},
		{"electric van", "V DC", "at least 13.5 V", ""},
		{"motorcycle", "V AC", "at least 60 V", ""},
	} {
		text := fmt.Sprintf(`tool = [{ id = "meter", name = "multimeter" }]
test = [{ id = "rail", question = "Is it up?", instrument = "meter", setting = %q, at = "terminal 3", expect = %q }]
step = [{ title = "Read it", tests = ["rail"] }]
[video]
title = "Repair"
subject = %q
`, c.setting, c.expect, c.subject)
		s := Read(given.Plan(t, text)).Steps[0]
		for _, class := range [...]string{"live-test", "hv-vehicle"} {
			h, found := find(s, class)
			if shown := found && h.Evidence[len(h.Evidence)-1].Kind == "test" && acted(s, class); shown != (class == c.class) {
				t.Errorf("%s, %s, %s: %s shown %v; %v", c.subject, c.setting, c.expect, class, shown, s.Hazards)
			}
		}
	}
}
