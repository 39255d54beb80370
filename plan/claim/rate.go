package claim

import (
	"strings"

	"fixslate/plan/prose"
)

// recurs reads "every third winter", "every other service" and "every eight hundred
// pages".
func (r *reader) recurs(f *prose.Figure, at, n int) bool {
	if r.is(at, "every") && r.in(n, r.known.period) {
		r.counted(f, r.words[n].text) // "every third winter"
		r.add(Frequency)
		return true
	}
	if r.is(at, "every") && n < len(r.words) && r.words[n].marks&events != 0 {
		r.counted(f, r.words[n].text) // "every other service"
		r.add(Frequency)
		return true
	}
	if r.is(at-1, "every") && n < len(r.words) && isPlural(r.words[n].text) && f.Values[0].Number > 1 && r.known.of(singular(r.words[n].text))&r.known.fitting == 0 {
		r.counted(f, singular(r.words[n].text)) // "every eight hundred pages"
		r.add(Frequency)
		return true
	}
	return false
}

// shortRate is the short name of a rate, itself where it has none.
func shortRate(of string) string {
	switch of {
	case "beat per hour":
		return "bph"
	case "beat per minute":
		return "bpm"
	case "frame per second":
		return "fps"
	}
	return of
}

// rate finds the period in "twice a week", "four times per year", "a dozen of
// these in every winter", and the word behind it; 0 for none.
func (r *reader) rate(n int) (period string, end int) {
	const reach = 6
	k := &r.known.classes
	if n < len(r.words) && !r.words[n].stopped {
		switch r.words[n].text {
		case "daily", "weekly", "monthly", "yearly", "hourly":
			return strings.Replace(strings.TrimSuffix(r.words[n].text, "ly"), "dai", "day", 1), n + 1
		}
	}
	for j := n; j < len(r.words) && j < n+reach; j++ {
		if j > n && (r.words[j].stopped || r.words[j].number) {
			return "", 0 // "ten stops from fifty kilometres an hour"
		}
		switch r.words[j].text {
		case "half", "for", "within", "after", "over", "under":
			return "", 0 // "at one eighty for half an hour"
		case "a", "an", "per", "every", "each":
			if r.in(j+1, k.period) && (j+2 >= len(r.words) || r.words[j+2].stopped || !isPlural(r.words[j+2].text)) {
				return r.words[j+1].text, j + 2
			}
		}
	}
	return "", 0
}
