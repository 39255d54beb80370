package claim

import (
	"math"
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// figured turns the figures of the sentence into values and kinds.
func (r *reader) figured() {
	for i := 0; i < len(r.figures); i++ {
		if i+1 < len(r.figures) && r.share(&r.figures[i], &r.figures[i+1]) {
			i++
			continue
		}
		r.figure(&r.figures[i])
	}
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
	switch n := len(between); {
	case n > 6 || n == 0:
		return false
	case between[n-1].text == "of" && n > 1 && between[n-2].text == "out",
		between[n-1].text == "in" && n == 1 && x < y,
		between[n-1].text == "every" && n > 1 && between[n-2].text == "in":
		r.value(Value{Number: percent(x / y), Unit: "%", Span: whole}, Frequency)
		return true
	case between[0].text == "parts" && between[n-1].text == "to" && (y == 1 || r.is(r.wordAt(b.End), "part") || r.is(r.wordAt(b.End), "parts")):
		r.value(Value{Number: x / y, Span: whole}, Spec)
		return true
	}
	return false
}

func percent(share float64) float64 { return math.Round(share*1e6) / 1e4 }

func (r *reader) value(v Value, k Kind) {
	r.values = append(r.values, v)
	r.add(k)
}

// figure reads one figure by its kind.
func (r *reader) figure(f *prose.Figure) {
	at := r.wordAt(f.Start)
	switch f.Kind {
	case prose.StepNumber, prose.Ordinal, prose.Time, prose.Date, prose.Label:
	case prose.PartNumber:
		r.part(f)
	case prose.Money:
		r.take(f)
		r.add(Cost)
		if r.paid(at) {
			r.add(Measurement)
		}
	case prose.Percent:
		if r.is(r.wordAt(f.End), "sure") || r.is(r.wordAt(f.End), "certain") {
			return
		}
		r.take(f)
		if r.ofMany(f.End) || r.is(r.wordAt(f.End), "of") && r.is(r.wordAt(f.End)+2, "time") {
			r.add(Frequency)
			return
		}
		r.stated(at)
	case prose.Fraction:
		if r.ofMany(f.End) && len(f.Values) > 0 {
			r.value(Value{Number: percent(f.Values[0].Number), Unit: "%", Span: f.Span}, Frequency)
		} else if r.halves(f) {
			r.value(Value{Number: f.Values[0].Number, Span: f.Span}, Comparison)
		}
	case prose.Ratio, prose.Size:
		r.take(f)
		r.stated(at)
	default:
		r.amount(f, at)
	}
}

// paid says whether money was paid by the speaker: a receipt, no price.
func (r *reader) paid(i int) bool {
	const reach = 8
	k := kindsOfWord()
	for j := max(0, i-reach); j < i; j++ {
		w := r.words[j].text
		if w == "paid" || w == "cost" && r.is(j+1, "me") || w == "came" && r.is(j+1, "to") || r.in(j, k.self) && r.words[i].mood == own {
			return true
		}
	}
	return false
}

// ofMany holds where "of them", "of these" or "of the ones" follows.
func (r *reader) ofMany(end int) bool {
	n := r.wordAt(end)
	if !r.is(n, "of") {
		return false
	}
	switch {
	case r.is(n+1, "them"), r.is(n+1, "these"), r.is(n+1, "those"):
		return true
	}
	return (r.is(n+1, "the") || r.is(n+1, "all") || r.in(n+1, kindsOfWord().poss)) && n+2 < len(r.words) && isPlural(r.words[n+2].text) && r.words[n+1].mood == statement
}

// halves reads "half the price" and "a third of the weight": a comparison.
func (r *reader) halves(f *prose.Figure) bool {
	n := r.wordAt(f.End)
	if r.is(n, "of") {
		n++
	}
	for ; n < len(r.words) && (r.is(n, "the") || r.is(n, "as")); n++ {
		if r.in(n+1, kindsOfWord().dimension) {
			return len(f.Values) > 0
		}
	}
	return false
}

// amount reads a quantity, range, tolerance, limit or count.
func (r *reader) amount(f *prose.Figure, at int) {
	if len(f.Values) == 0 {
		return
	}
	unit := f.Values[0].Unit
	switch {
	case unit == "":
		r.count(f, at)
	case isMoney(unit):
		r.take(f)
		r.add(Cost)
	case isTime(unit):
		r.time(f, at)
	case unit == trade.Percent:
		r.take(f)
		if r.ofMany(f.End) {
			r.add(Frequency)
			return
		}
		r.stated(at)
	default:
		r.take(f)
		r.stated(at)
	}
}

func isMoney(u trade.Unit) bool {
	switch u {
	case "GBP", "EUR", "USD", "JPY", "p", "c":
		return true
	}
	return false
}

// time reads a length of time: how long a job, a wait or a part lasts. The
// clock of the conversation ("back in five minutes", "a minute ago") is none.
func (r *reader) time(f *prose.Figure, at int) {
	n := r.wordAt(f.End)
	if r.is(n, "ago") || r.is(n, "earlier") || r.is(n, "later") && r.is(n-1, "seconds") || r.is(n, "in") && r.is(n+1, "the") && r.is(n+2, "video") {
		return
	}
	if r.is(at-1, "in") && r.words[at-1].mood == own {
		return
	}
	if r.is(at-1, "every") || r.is(at-1, "per") {
		r.add(Frequency)
	}
	r.take(f)
	r.add(Duration)
	k := kindsOfWord()
	if at < len(r.words) && r.words[at].mood == order || r.orderedBefore(at) {
		r.add(Spec)
	}
	if r.near(at, 4, k.self) || r.is(at-1, "me") || r.is(at-2, "me") {
		r.add(Measurement)
	}
}

// orderedBefore says whether the clause of word i is an order.
func (r *reader) orderedBefore(i int) bool {
	return i > 0 && r.words[min(i, len(r.words)-1)].mood == order
}

// stated says whether a value was read on this object or is what it should be:
// an instrument or the speaker gives a reading; a label, a sheet and an order
// give a value.
func (r *reader) stated(i int) {
	const reach = 9
	k := kindsOfWord()
	i = min(i, len(r.words)-1)
	if r.words[i].mood != order {
		read := false
		r.clauseBefore(i, reach, func(j int) bool {
			read = read || r.in(j, k.reading) && !r.in(j-1, k.modal)
			return !read
		})
		if read {
			r.add(Measurement)
			return
		}
	}
	r.add(Spec)
}

// take takes all numbers of a figure.
func (r *reader) take(f *prose.Figure) {
	for _, v := range f.Values {
		unit := unitName(v.Unit)
		if v.Unit == trade.Degree {
			unit = r.degrees(r.wordAt(f.Start), v.Number)
		}
		r.values = append(r.values, Value{Number: v.Number, Unit: unit, Span: f.Span})
	}
}

// part takes a part number. Sizes of tools and drives are none.
func (r *reader) part(f *prose.Figure) {
	text := f.Of(r.text)
	if _, ok := trade.ParseDrive(text); ok {
		return
	}
	if f.Spoken {
		text, f = r.spelled(f)
		if text == "" {
			return
		}
	}
	r.value(Value{Part: text, Span: f.Span}, PartNumber)
}

// longestSpelling bounds the letters said one by one before the digits.
const longestSpelling = 8

// spelled writes a part number that was said letter by letter and digit by
// digit, "k r seven one nine zero", as it is printed: "KR7190".
func (r *reader) spelled(f *prose.Figure) (string, *prose.Figure) {
	out := *f
	digits := ""
	for i := r.wordAt(f.Start); i < len(r.words) && r.words[i].start < f.End; i++ {
		w := r.words[i].text
		if n, used := prose.ParseNumber(w); used == len(w) && n >= 0 {
			digits += digitsOf(n)
		} else if w == "double" && r.words[i+1].start < f.End {
			if n, used := prose.ParseNumber(r.words[i+1].text); used > 0 && n < 10 {
				digits += digitsOf(n)
			}
		} else if len(w) == 1 {
			digits += strings.ToUpper(w)
		}
	}
	at := r.wordAt(f.Start)
	for n := 0; n < longestSpelling && at > 0; n++ {
		w := r.words[at-1]
		if len(w.text) != 1 || w.text[0] < 'a' || w.text[0] > 'z' || w.text == "a" && at > 1 && !oneLetter(r.words[at-2].text) {
			break
		}
		digits = strings.ToUpper(w.text) + digits
		at--
		out.Start = w.start
	}
	if len(digits) < 2 {
		return "", f
	}
	return digits, &out
}

func oneLetter(w string) bool { return len(w) == 1 && w[0] >= 'a' && w[0] <= 'z' }

func digitsOf(n float64) string {
	if n >= 100 || n != math.Trunc(n) {
		return ""
	}
	if n < 10 {
		return string(rune('0' + int(n)))
	}
	return string(rune('0'+int(n)/10)) + string(rune('0'+int(n)%10))
}
