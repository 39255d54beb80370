package claim

import (
	"fmt"
	"math"
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// What two figures are together: a share, a ratio, a rate, one unit for both.

// isRate says whether the second figure is only what the first is reckoned by:
// "sixty quid an hour".
func (r *reader) isRate(a, b *prose.Figure) bool {
	at := r.wordAt(b.Start)
	return at == r.wordAt(a.End) && (r.is(at, "a") || r.is(at, "an")) && len(a.Values) > 0 && (a.Values[0].Unit != "" || a.Kind == prose.Money)
}

// farthestUnit bounds the way over which a bare number takes the unit of the
// quantity before it, in words.
const farthestUnit = 12

// eased says whether "maybe" or the like alone joins two figures.
func (r *reader) eased(a, b *prose.Figure) bool {
	from, to := r.wordAt(a.End), r.wordAt(b.Start)
	if to-from != 1 && to-from != 2 {
		return false
	}
	switch r.words[to-1].text {
	case "maybe", "perhaps", "possibly", "even", "or", "say":
		return true
	}
	return false
}

// isBare says that a number counts nothing: its clause ends or goes on with a
// joining word.
func (r *reader) isBare(f *prose.Figure) bool {
	k := &r.known.classes
	n := r.wordAt(f.End)
	if f.Spoken && len(f.Values) == 1 && f.Values[0].Number == 1 {
		return false
	}
	if _, _, ok := r.colloquial(f, r.wordAt(f.Start), n); ok {
		return false // "six hundred and eighty cold cranking amps"
	}
	if at := r.wordAt(f.Start); r.packed(at) || r.is(at-1, "all") || r.is(at-1, "for") && r.is(at, "the") || r.is(at-1, "the") && r.is(at-2, "for") || r.is(at-1, "these") || r.is(at-1, "those") || r.is(at-1, "step") || r.in(at-1, k.poss) {
		return false // "on all four"
	}
	return n >= len(r.words) || r.words[n].stopped || r.is(n, "without") || r.is(n, "now") || r.is(n, "today") || r.is(n, "yesterday") || r.tops(f) || r.is(n, "per") && r.is(n+1, "side") || (r.is(n, "this") || r.is(n, "last")) && (r.is(n+1, "morning") || r.is(n+1, "night") || r.in(n+1, k.period)) || r.words[n].classes&(k.glue|k.prep|k.where|k.maybe) != 0 && !r.is(n, "of")
}

// listed says whether nothing but a comma, or the words for another place, stand
// between two figures: "ten, twelve bar", "front thirty two rear thirty six psi".
func (r *reader) listed(a, b *prose.Figure) bool {
	k := &r.known.classes
	from, to := r.wordAt(a.End), r.wordAt(b.Start)
	for j := from; j < to; j++ {
		if !r.in(j, k.where|k.det) {
			return false
		}
	}
	return to > from || strings.TrimSpace(r.text[a.End:b.Start]) == ","
}

// spokenThread reads "a quarter twenty" and "three eighths sixteen": a diameter
// in inches and its threads, where there is such a thread.
func (r *reader) spokenThread(a, b *prose.Figure) bool {
	inch := a.Kind == prose.Quantity && len(a.Values) == 1 && a.Values[0].Unit == trade.Inch && a.Values[0].Number < 2 // "a half inch twenty"
	if a.Kind != prose.Fraction && !inch || b.Kind != prose.Count || len(a.Values) != 1 || len(b.Values) != 1 || r.wordAt(b.Start) != r.wordAt(a.End) {
		return false
	}
	for bottom := 2.0; bottom <= 16; bottom *= 2 {
		if top := a.Values[0].Number * bottom; top == math.Trunc(top) {
			t, ok := trade.ParseThread(fmt.Sprintf("%g/%g-%g", top, bottom, b.Values[0].Number))
			if ok {
				r.inchThread(t, prose.Span{Start: a.Start, End: b.End})
			}
			return ok
		}
	}
	return false
}

// share reads "nine times out of ten", "four in five" and "one in every eight"
// as per cent, and "three parts resin to one part hardener" as a ratio.
func (r *reader) share(a, b *prose.Figure) bool {
	if a.Kind != prose.Count || b.Kind != prose.Count || len(a.Values) != 1 || len(b.Values) != 1 || b.Values[0].Number <= 0 {
		return false
	}
	x, y := a.Values[0].Number, b.Values[0].Number
	whole := prose.Span{Start: a.Start, End: b.End}
	between := r.words[r.wordAt(a.End):r.wordAt(b.Start)]
	if n := len(between); n > 3 && (between[n-1].text == "last" || between[n-1].text == "past") && between[n-2].text == "the" {
		between = between[:n-2] // "five out of the last six"
	}
	switch n := len(between); {
	case n > 6 || n == 0:
		return false
	case r.partitive(x, a.Start, b), r.wholeFirst(a, b):
		return true
	case between[n-1].text == "of" && n > 1 && between[n-2].text == "out",
		between[n-1].text == "every" && n > 2 && between[n-2].text == "of" && between[n-3].text == "out",
		between[n-1].text == "in" && n == 1 && x < y,
		between[n-1].text == "every" && n > 1 && between[n-2].text == "in":
		r.value(Value{Number: percent(x / y), Unit: "%", Span: whole}, Frequency)
		return true
	case between[0].text == "of" && n == 2 && r.in(r.wordAt(a.End)+1, r.known.det) && x < y && r.in(r.wordAt(b.End), r.known.self):
		// "three of the five I've done"
		r.value(Value{Number: percent(x / y), Unit: "%", Span: whole}, Frequency)
		return true
	}
	return false
}

// oneIn reads "one in ten": a lone "one" is no figure.
func (r *reader) oneIn(f *prose.Figure) bool {
	at := r.wordAt(f.Start) - 1
	if r.is(at, "every") {
		at--
	}
	if f.Kind != prose.Count || len(f.Values) != 1 || f.Values[0].Number < 2 {
		return false
	}
	for j := at; j >= 0 && j > at-4; j-- {
		if r.is(j, "one") && r.partitive(1, r.words[j].start, f) {
			return true // "only one of the three phases is getting through"
		}
	}
	if f.Word != "" && !r.is(r.wordAt(f.End), "of") && isPlural(f.Word) && !r.in(r.wordAt(f.End), r.known.states) && !r.in(r.wordAt(f.End)+1, r.known.states) {
		return false
	}
	if r.is(at, "to") && (r.is(at-1, "one") || r.is(at-1, "part") && r.is(at-2, "one")) && r.mixes(at) {
		r.value(Value{Number: f.Values[0].Number, Span: prose.Span{Start: r.words[at-1].start, End: f.End}}, Spec)
		return true
	}
	one := at - 1
	if r.is(one-1, "one") && !r.words[max(one, 0)].stopped && r.words[max(one, 0)].mood == statement && r.words[one].classes&(r.known.prep|r.known.be) == 0 {
		one-- // "one unit in five"
	}
	if !r.is(at, "in") || !r.is(one, "one") || r.is(one-1, "the") || r.is(one-2, "the") {
		return false // "the good one in seven"
	}
	if r.slopes(at) {
		r.value(Value{Number: f.Values[0].Number, Span: prose.Span{Start: r.words[one].start, End: f.End}}, Spec)
		return true
	}
	r.value(Value{Number: percent(1 / f.Values[0].Number), Unit: "%", Span: prose.Span{Start: r.words[one].start, End: f.End}}, Frequency)
	return true
}

// mixes says whether stuff is mixed near word i: "dilute it one to four".
func (r *reader) mixes(i int) bool {
	const reach = 7
	for j := max(0, i-reach); j < len(r.words) && j < i+reach; j++ {
		switch r.words[j].text {
		case "mix", "mixed", "mixes", "dilute", "diluted", "thin", "thinned", "ratio", "part", "parts", "water", "hardener", "solution":
			return true
		}
	}
	return false
}

// slopes says whether "one in eighty" at i is a gradient.
func (r *reader) slopes(i int) bool {
	const reach = 9
	for j := max(0, i-reach); j < len(r.words) && j < i+reach; j++ {
		switch r.words[j].text {
		case "fall", "falls", "taper", "tapers", "drain", "waste", "gutter", "slope", "slopes", "gradient", "incline", "ramp", "pitch", "pitched", "rises", "drops":
			return true
		}
	}
	return false
}

func percent(share float64) float64 { return math.Round(share*1e6) / 1e4 }
