package shotlist

import (
	"strings"
	"testing"
)

// A shoot that begins in the evening and has no end goes on past midnight in one
// piece; the clock begins again.
func TestPastMidnight(t *testing.T) {
	const steps = `
[video]
title = "T"
[[step]]
title = "One"
do = "scrape the plate"
work = "50m"
say = "Scrape it."
[[step]]
title = "Two"
do = "oil the plate"
work = "50m"
say = "Oil it."
`
	for _, c := range []struct {
		hours string
		days  int
		last  string
	}{
		{"start = \"23:20\"", 1, "00:"},
		{"start = \"20:00\"", 1, "20:5"},
		{"start = \"23:20\"\nend = \"23:59\"", 2, ""},
	} {
		_, _, day := arrange(t, "[shoot]\n"+c.hours+"\n"+steps)
		if len(day.Sessions) != c.days {
			t.Errorf("%s: %d days, want %d", c.hours, len(day.Sessions), c.days)
			continue
		}
		entries := day.Sessions[len(day.Sessions)-1].Entries
		if last := Clock(entries[len(entries)-1].Start); c.last != "" && !strings.HasPrefix(last, c.last) {
			t.Errorf("%s: the last shot begins at %s, want %s…", c.hours, last, c.last)
		}
	}
}
