package claim

import "fixslate/plan/prose"

// recurs reads "every third winter", "every other service" and "every eight hundred
// pages".
func (r *reader) recurs(f *prose.Figure, at, n int) bool {
	if r.is(at, "every") && r.in(n, r.known.period) {
		r.counted(f, yearOf(r.words[n].text)) // "every third winter"
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

// yearOf is a period, a year for what comes once in it.
func yearOf(period string) string {
	switch period {
	case "winter", "spring", "summer", "autumn", "season":
		return "year"
	}
	return period
}

// rateUnit is the unit of what comes so often in a period.
func rateUnit(of, period string) string {
	switch of + " " + period {
	case "beat hour":
		return "bph"
	case "beat minute":
		return "bpm"
	case "frame second":
		return "fps"
	}
	return of + overPeriod(period)
}

// rate finds the period in "twice a week", "four times per year", "a dozen of
// these in every winter", and the word behind it; 0 for none.
func (r *reader) rate(n int) (period string, end int) {
	const reach = 6
	k := &r.known.classes
	if n < len(r.words) && !r.words[n].stopped {
		if period := adverbial(r.words[n].text); period != "" {
			return period, n + 1
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
