package claim

import (
	"math"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// What the words beside a number make of it. Common practice, no source.

// refersBack says whether the word before a number makes it one that was told
// before.
func (r *reader) refersBack(at int) bool {
	return r.is(at-1, "the") || r.is(at-1, "these") || r.is(at-1, "those") || r.is(at-1, "all") || r.is(at-1, "both") || r.is(at-1, "that") || r.is(at-1, "this") || r.in(at-1, r.known.poss)
}

// abraded says whether a number is a grade of abrasive: rubbing is spoken of, and
// the number ends its piece or stands behind "with" or the like.
func (r *reader) abraded(at, n int, v float64) bool {
	const coarsest, finest, reach = 36, 5000, 8
	if v < coarsest || v > finest {
		return false
	}
	if n < len(r.words) && !r.words[n].stopped && r.words[n].classes&(r.known.prep|r.known.glue) == 0 && r.words[n].marks&rubbed == 0 {
		return false
	}
	if last := len(r.values) - 1; last >= 0 && r.values[last].Unit == "grit" {
		return true // "eighty grit to shape it and one twenty to finish"
	}
	if !r.in(at-1, r.known.prep) && !r.is(at-1, "then") && !r.is(at-1, "a") {
		return false
	}
	for j := max(0, at-reach); j < len(r.words) && j < n+3; j++ {
		if r.words[j].marks&rubbed != 0 {
			return true
		}
	}
	return false
}

// tenths reads "twelve six" as 12.6: a number in the teens with a digit behind it
// is no other number. It holds before volts and the like, or where a battery is
// spoken of; "nineteen two inch screws" are nineteen.
func (r *reader) tenths(a, b *prose.Figure) bool {
	const least, most = 10, 19
	if !a.Spoken || !b.Spoken || a.Kind != prose.Count && a.Kind != prose.Limit && a.Kind != prose.Label || len(a.Values) != 1 || len(b.Values) != 1 || a.Values[0].Unit != "" || r.text[a.End:b.Start] != " " {
		return false
	}
	x, y := a.Values[0].Number, b.Values[0].Number
	if class := math.Round(10*x+y) / 10; b.Values[0].Unit == "" && isBoltClass(class) {
		told := prose.Figure{Span: prose.Span{Start: a.Start, End: b.End}, Kind: prose.Count, Values: []prose.Value{{Number: class}}, Spoken: true}
		if r.graded(&told, r.wordAt(a.Start)) { // "grade ten nine"
			*b = told
			return true
		}
	}
	if x < least || x > most || x != math.Trunc(x) || y < 1 || y > 9 || y != math.Trunc(y) || r.wordAt(b.Start) != r.wordAt(a.End) || r.wordAt(a.End)-r.wordAt(a.Start) != 1 {
		return false
	}
	n := r.wordAt(b.End)
	noun := n < len(r.words) && !r.words[n].stopped && isPlural(r.words[n].text)
	switch u := b.Values[0].Unit; {
	case b.Kind != prose.Count && b.Kind != prose.Quantity || noun:
		return false
	case u == "V" || u == "kV" || u == "A" || u == "bar":
	case u != "" || !r.isBare(b):
		return false
	case r.electric():
		b.Values[0].Unit = "V"
	case !r.inTeens():
		return false
	}
	b.Values[0].Number = math.Round(10*x+y) / 10
	if b.Start, b.Kind = a.Start, prose.Quantity; b.Values[0].Unit == "" {
		b.Kind = prose.Count
	}
	return true
}

// inTeens says whether a decimal in the teens is told in the sentence: what "ten
// nine" is beside "eleven point two".
func (r *reader) inTeens() bool {
	for i := range r.figures {
		if g := &r.figures[i]; len(g.Values) == 1 && g.Values[0].Number > 9 && g.Values[0].Number < 20 && g.Values[0].Number != math.Trunc(g.Values[0].Number) {
			return true
		}
	}
	return false
}

// electric says whether the sentence speaks of a battery.
func (r *reader) electric() bool { return r.about&charged != 0 }

// suffixed takes "4408-J" for a part number though J is a unit, too: a long
// number without a point before one or two capitals.
func (r *reader) suffixed(f *prose.Figure) bool {
	const shortest = 4
	text := f.Of(r.text)
	digits := 0
	for digits < len(text) && text[digits] >= '0' && text[digits] <= '9' {
		digits++
	}
	tail := text[digits:]
	if f.Spoken || len(f.Values) != 1 || digits < shortest && !(r.found.has(PartNumber) && digits > 1) || len(tail) < 2 || len(tail) > 3 || tail[0] != '-' {
		return false
	}
	for i := 1; i < len(tail); i++ {
		if tail[i] < 'A' || tail[i] > 'Z' {
			return false
		}
	}
	if u := f.Values[0].Unit; (u == "V" || u == trade.Unit("W") || u == "A") && !r.found.has(PartNumber) {
		return false // "a 1200-W heater"
	}
	r.value(Value{Part: text, Span: f.Span}, PartNumber)
	return true
}
