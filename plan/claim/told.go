package claim

import (
	"math"
	"slices"

	"fixslate/plan/prose"
)

// What a number is told as and is no value: the class of a bolt, an hour of the
// day, what the speaker takes back.

// toldOtherwise takes numbers that measure or count nothing, or by their form alone.
func (r *reader) toldOtherwise(f *prose.Figure, at, n int) bool {
	if r.graded(f, at) {
		r.add(Spec)
		return true
	}
	if r.atClock(f, at, n) {
		r.atHour(at)
		return true
	}
	if text := prose.Fold(f.Of(r.text)); text == "fifty fifty" || text == "fifty-fifty" {
		r.rated(&prose.Figure{Span: f.Span, Values: []prose.Value{{Number: 50}}}, "%")
		r.stated(at)
		return true
	}
	if r.packed(at) && n == r.wordAt(f.End) && (n >= len(r.words) || r.words[n].stopped || r.words[n].classes&(r.known.prep|r.known.glue) != 0) {
		r.counted(f, r.words[at-2].text) // "a pack of ten"
		return true
	}
	if len(f.Values) == 2 && f.Kind == prose.Range && f.Values[0].Number >= 100 && isMains(f.Values[0].Number) && isMains(f.Values[1].Number) {
		r.counted(f, "V") // "one ten or two thirty"
		r.stated(at)
		return true
	}
	return false
}

// isBoltClass holds for the property classes of bolts (ISO 898-1), as they are said.
func isBoltClass(v float64) bool {
	switch v {
	case 4.6, 4.8, 5.6, 5.8, 6.8, 8.8, 9.8, 10.9, 12.9:
		return true
	}
	return false
}

// graded says whether a number is the property class of a bolt: "eight point eight
// bolts".
func (r *reader) graded(f *prose.Figure, at int) bool {
	const reach = 5
	if len(f.Values) != 1 || !isBoltClass(f.Values[0].Number) {
		return false
	}
	for j := max(0, at-reach); j < len(r.words) && j < r.wordAt(f.End)+reach; j++ {
		switch r.words[j].text {
		case "bolt", "bolts", "screw", "screws", "stud", "studs", "grade", "class", "cap", "heads", "nuts", "fixings", "fasteners":
			return true
		}
	}
	return false
}

// atClock says whether a number is an hour of the day: "at eleven-thirty at night",
// "from ten at night till six".
func (r *reader) atClock(f *prose.Figure, at, n int) bool {
	v := f.Values[0].Number
	if len(f.Values) != 1 || v != math.Trunc(v) || v > 24 && (v < 100 || v >= 1300 || math.Mod(v, 100) >= 60) {
		return false
	}
	if r.is(n, "at") && r.is(n+1, "night") || r.is(n, "in") && r.is(n+1, "the") && (r.is(n+2, "morning") || r.is(n+2, "afternoon") || r.is(n+2, "evening")) || r.is(n, "tonight") {
		return true
	}
	if !r.is(at-1, "till") && !r.is(at-1, "until") {
		return false
	}
	for j := range r.words {
		if r.is(j, "night") || r.is(j, "morning") || r.is(j, "afternoon") || r.is(j, "evening") {
			return r.isBare(f)
		}
	}
	return false
}

// atHour takes what a thing does or did at an hour for a claim: "it regenerates at
// two", "it tripped at three in the morning". What hour it is is talk.
func (r *reader) atHour(at int) {
	k := &r.known.classes
	at = min(at, len(r.words)-1)
	if r.words[at].mood != statement {
		return
	}
	acts := false
	r.clauseBefore(at, longestDial, func(j int) bool {
		acts = acts || r.is(j, "set") || r.in(j, k.harm|k.past) || isPast(r.words[j].text) || r.in(j, k.states) && !r.in(j, k.be|k.have|k.modal) || isPlural(r.words[j].text) && r.is(j+1, "at")
		return !r.in(j, k.self)
	})
	if acts {
		r.stated(at)
	}
}

// corrected drops a value that the speaker takes back: "nine nine two, no sorry, nine
// nine four".
func (r *reader) corrected() {
	for i := 0; i+1 < len(r.values); i++ {
		a, b := &r.values[i], &r.values[i+1]
		if a.Span == b.Span || (a.Part == "") != (b.Part == "") || a.Unit != b.Unit && a.Unit != "" || !r.takesBack(r.wordAt(a.End), r.wordAt(b.Start)) {
			continue
		}
		end := i + 1
		for i > 0 && r.values[i-1].Span == a.Span {
			i--
		}
		r.values = slices.Delete(r.values, i, end)
		i--
	}
}

// takesBack says whether the words from one value to the next take the first back.
func (r *reader) takesBack(from, to int) bool {
	const longest = 6
	for j := from; j < to && to-from <= longest; j++ {
		switch r.words[j].text {
		case "sorry", "correction":
			return true
		case "mean":
			return r.is(j-1, "i")
		case "that":
			return r.is(j-1, "make") || r.is(j-1, "scratch")
		case "rather":
			return r.is(j-1, "or")
		case "no":
			if j+1 == to && r.words[j].stopped && r.words[to].stopped || r.is(j+1, "wait") || r.is(j+1, "hang") {
				return true
			}
		}
	}
	return false
}
