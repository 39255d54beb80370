package shotlist

import (
	"slices"
	"testing"
)

// What the filmed object is not, can't be filmed on it: its shots are apart, and
// its steps take no time of the day.
func TestShootVersions(t *testing.T) {
	const rest = `
[[variant]]
id = "lever"
name = "the lever"
[[variant]]
id = "knob"
name = "the knob"
[video]
title = "T"
[[step]]
id = "both"
title = "Both"
do = "scrape the plate"
say = "Scrape it."
[[step]]
id = "lever-off"
title = "Lever"
variants = ["lever"]
starts = ["lever-off"]
ends = ["lever-off"]
do = "undo the lever"
work = "20m"
say = "Undo it."
[[step]]
id = "knob-off"
title = "Knob"
variants = ["knob"]
do = "pull the knob"
say = "Pull it."
`
	for shoot, want := range map[string][]string{
		"[shoot]\nvariants = [\"lever\"]\n": {"both-wide", "lever-off-wide"},
		"[shoot]\nvariants = [\"knob\"]\n":  {"both-wide", "knob-off-wide"},
		"":                                  {"both-wide", "lever-off-wide", "knob-off-wide"},
	} {
		_, shots, day := arrange(t, shoot+rest)
		var got []string
		minutes := 0
		for _, s := range day.Sessions {
			minutes += (s.Wrap - s.Start) / 60
			for _, e := range s.Entries {
				if e.Kind == Filming {
					got = append(got, shots[e.Shot].ID)
				}
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%q: filmed %v, want %v", shoot, got, want)
		}
		if long := slices.Contains(want, "lever-off-wide"); long != (minutes >= 20) {
			t.Errorf("%q: the day takes %d min", shoot, minutes)
		}
	}
}
