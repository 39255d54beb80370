package claim

import (
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// measureUnit is the unit that a word is which is counted like one and is none of
// trade's, empty for none.
func measureUnit(w string) string { return tables.terms[tables.find(w)].unit }

// isMains holds for the voltages that a supply is named by.
func isMains(v float64) bool {
	switch v {
	case 12, 24, 48, 110, 115, 120, 208, 220, 230, 240, 400, 415:
		return true
	}
	return false
}

// smallestPitch is from where on "centres" without a unit are in millimetres: "at
// six hundred centres".
const smallestPitch = 50

// colloquial reads units that are none of trade's tables and units behind a
// word that fills: "240 grit", "two full turns", "four point seven k". scale is
// what the numbers are to be divided by.
func (r *reader) colloquial(f *prose.Figure, at, n int) (unit string, scale float64, ok bool) {
	k := &r.known.classes
	text := strings.ToLower(f.Of(r.text))
	if strings.HasSuffix(text, "k") && n < len(r.words) && !r.words[n].stopped {
		if u, ok := trade.LookupUnit(r.words[n].text); ok && len(r.words[n].text) > 2 {
			return unitName(u), 1, true // "10k miles"
		}
	}
	if v := f.Values[0].Number; f.Spoken && strings.HasSuffix(text, " k") && v >= 1e6 && len(f.Values) == 1 {
		return "km", 1000, true // "a hundred thousand k"
	}
	if (strings.HasSuffix(text, "k") || f.Spoken && strings.Contains(text, " k ")) && (r.near(at, farthestUnit, k.resistive) || r.is(n, "in") && r.is(n+1, "circuit")) {
		return "kohm", 1000, true
	}
	if n >= len(r.words) || r.words[n].stopped {
		return "", 1, false
	}
	switch {
	case r.is(n, "or") && r.is(n+1, "so") && n+2 < len(r.words):
		n += 2
	case r.is(n, "and") && r.is(n+1, "a") && r.is(n+2, "bit") && n+3 < len(r.words):
		n += 3
	case r.is(n, "ish") && n+1 < len(r.words):
		n++
	}
	for skipped := 0; skipped < 2 && r.words[n].marks&filler != 0 && n+1 < len(r.words) && !r.words[n+1].stopped; skipped++ {
		n++
		if u, ok := trade.LookupUnit(r.words[n].text); ok && len(r.words[n].text) > 2 {
			return unitName(u), 1, true
		}
	}
	w := r.words[n].text
	if (w == "threads" || w == "thread" || w == "teeth" || w == "tooth") && (r.is(n+1, "per") && r.is(n+2, "inch")) {
		return "tpi", 1, true
	}
	if w == "b" && r.is(n+1, "t") && r.is(n+2, "u") {
		return "BTU", 1, true
	}
	if w == "wet" && r.is(n+1, "and") && r.is(n+2, "dry") {
		return "grit", 1, true
	}
	if w == "fluid" && (r.is(n+1, "ounces") || r.is(n+1, "ounce")) {
		return "fl oz", 1, true
	}
	return r.workshopUnit(f, n)
}

// workshopUnit is the unit that the word at n is which is counted like one.
func (r *reader) workshopUnit(f *prose.Figure, n int) (unit string, scale float64, ok bool) {
	w, k := r.words[n].text, &r.known.classes
	if unit = measureUnit(w); unit == "" {
		unit = measureUnit(singular(w))
	}
	ok = unit != ""
	if w == "square" && r.is(n+1, "drive") {
		return "", 1, false // the end of a ratchet
	}
	if ok && unit == "MB" && strings.HasPrefix(w, "meg") && (r.near(n, 6, k.resistive) || r.near(n, 4, k.role) || r.is(n+1, "insulation")) {
		return "Mohm", 1, true // "one point one megs to earth"
	}
	if unit == "drop" && !r.is(n+1, "of") {
		return "", 1, false // "three drops down the hole"
	}
	if ok && unit == "mm2" && !r.near(n, 4, k.conductor) && !r.ampere() && f.Values[0].Number == float64(int(f.Values[0].Number)) {
		return "", 1, false
	}
	if !ok && isMains(f.Values[0].Number) && (w == "supply" || w == "mains" || w == "outlet" || (w == "three" || w == "single") && r.is(n+1, "phase")) {
		return "V", 1, true
	}
	if ok && (w == "centres" || w == "centers") && f.Values[0].Number < smallestPitch || w == "centre" || w == "center" {
		return "", 1, false
	}
	if ok && unit == "weight" && !r.near(n, 6, k.fluid) || unit == "stroke" && n+1 < len(r.words) && !r.words[n+1].stopped && !isPlural(w) {
		return "", 1, false
	}
	return unit, 1, ok
}

// ampere says whether a current is told in the sentence.
func (r *reader) ampere() bool {
	for i := range r.figures {
		if g := &r.figures[i]; len(g.Values) > 0 && g.Values[0].Unit == "A" {
			return true
		}
	}
	return false
}
