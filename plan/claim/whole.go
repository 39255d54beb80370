package claim

import (
	"math"

	"fixslate/plan/prose"
)

// How many of how many: both numbers count the thing. A share of a round number, "nine
// out of ten", says how often instead.

// partitive reads "three of the four mounting bolts had", "four teeth out of sixty one"
// and "one roller in the twenty". start is where the first number begins, b the second.
func (r *reader) partitive(first float64, start int, b *prose.Figure) bool {
	k := &r.known.classes
	at, n := r.wordAt(b.Start), r.wordAt(b.End)
	link, from := at-1, r.wordAt(start)+1
	definite := r.in(link, k.det|k.poss) && !r.is(link, "every") && !r.is(link, "each")
	if definite {
		link--
	}
	many := b.Values[0].Number
	out := r.is(link, "of") && r.is(link-1, "out")
	among := definite && (r.is(link, "in") || r.is(link, "among"))
	if first >= many || !among && !r.is(link, "of") || out && !definite && isRound(many) && !r.thingFrom(from, link) || !r.beheld(r.wordAt(start)) {
		return false
	}
	noun, end := r.manyFrom(n)
	if inside, _ := r.manyFrom(from); r.isBare(b) || (among || out) && inside != "" || among && noun == "" {
		switch noun, end = inside, n; {
		case noun != "", !among && !out:
		case from < link && !r.words[from].stopped && r.words[from].classes&(k.prep|k.glue|k.be|k.det) == 0:
			noun = r.words[from].text // "one roller in the twenty"
		}
	}
	if noun == "" && !(out && !definite) || noun != "" && !out && r.isProgress(end) {
		return false
	}
	r.bothCounted(first, many, noun, prose.Span{Start: start, End: b.End})
	return true
}

// wholeFirst reads "of the thirty machines I did, twenty-eight had" and "out of five
// tubes, two glow".
func (r *reader) wholeFirst(a, b *prose.Figure) bool {
	of := r.wordAt(a.Start) - 1
	if r.in(of, r.known.det) {
		of--
	}
	noun, _ := r.manyFrom(r.wordAt(a.End))
	at := r.wordAt(b.Start)
	if head := of == 0 || r.words[max(of, 0)].stopped || r.is(of-1, "out"); !head || !r.is(of, "of") || noun == "" || a.Values[0].Number <= b.Values[0].Number || !r.words[at].stopped {
		return false
	}
	r.bothCounted(b.Values[0].Number, a.Values[0].Number, noun, prose.Span{Start: a.Start, End: b.End})
	return true
}

func (r *reader) bothCounted(part, whole float64, noun string, at prose.Span) {
	r.value(Value{Number: part, Unit: noun, Span: at}, Measurement)
	r.value(Value{Number: whole, Unit: noun, Span: at}, Measurement)
}

// isRound holds for the numbers of which shares are told.
func isRound(v float64) bool {
	return v <= 10 || v == 12 || v == 20 || v >= 50 && math.Mod(v, 50) == 0
}

// thingFrom says whether what is counted stands between a number and the word at end:
// something that is made, or something that has an own word for each.
func (r *reader) thingFrom(i, end int) bool {
	noun, _ := r.manyFrom(i)
	return noun != "" && i < end && r.known.of(noun)&r.known.making != 0
}

// manyFrom is the plural that stands at i or behind a word or two, as what it names is
// counted, and the word behind it.
func (r *reader) manyFrom(i int) (noun string, end int) {
	const reach = 3
	k := &r.known.classes
	for j := i; j < len(r.words) && j < i+reach && (j == i || !r.words[j].stopped) && r.words[j].classes&(k.prep|k.glue|k.be|k.det) == 0; j++ {
		if isPlural(r.words[j].text) && !r.words[j].number && (noun == "" || r.words[j].classes&k.states == 0) {
			noun, end = singular(r.words[j].text), j+1
		}
	}
	return noun, end
}

// beheld says whether a thing is spoken of at i, or what the speaker has or found.
func (r *reader) beheld(i int) bool {
	switch i = min(i, len(r.words)-1); r.words[i].mood {
	case statement:
		return true
	case own:
		found := false
		r.clauseBefore(i, longestDial, func(j int) bool {
			found = found || r.in(j, r.known.reading) || r.is(j, "see") || r.is(j, "count") || r.is(j, "counted")
			return !found
		})
		return found
	}
	return false
}

// isProgress says whether what was counted up to word i is only how far the work is:
// "three of the four screws out", "two of four done".
func (r *reader) isProgress(i int) bool {
	if r.in(i, r.known.be) {
		i++
	}
	if i >= len(r.words) {
		return false
	}
	switch r.words[i].text {
	case "out", "off", "in", "on", "done", "undone", "home", "away", "finished", "through", "left", "goes", "go", "comes":
		return i+1 >= len(r.words) || r.words[i+1].stopped || r.words[i+1].classes&r.known.glue != 0 && !r.in(i+1, r.known.det)
	}
	return false
}
