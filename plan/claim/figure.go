package claim

import (
	"math"
	"slices"
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// figured turns the figures of the sentence into values and kinds.
func (r *reader) figured() {
	r.codes()
	for i := 0; i+1 < len(r.figures); i++ {
		if r.tenths(&r.figures[i], &r.figures[i+1]) {
			r.figures = slices.Delete(r.figures, i, i+1)
		}
	}
	for i := 0; i < len(r.figures); i++ {
		if r.coded(r.figures[i].Span) || r.told(r.figures[i].Span) {
			continue
		}
		if i+1 < len(r.figures) && (r.share(&r.figures[i], &r.figures[i+1]) || r.spokenThread(&r.figures[i], &r.figures[i+1])) {
			i++
			continue
		}
		if r.oneIn(&r.figures[i]) {
			continue
		}
		r.inherit(i, 0)
		r.figure(&r.figures[i])
		if i+1 < len(r.figures) && r.isRate(&r.figures[i], &r.figures[i+1]) {
			i++
		}
	}
	r.articles()
	slices.SortStableFunc(r.values, func(a, b Value) int { return a.Start - b.Start })
	r.corrected()
}

// told says whether a stretch is part of the last value: the hour of "forty
// beats an hour".
func (r *reader) told(s prose.Span) bool {
	n := len(r.values)
	return n > 0 && r.values[n-1].Start <= s.Start && s.End <= r.values[n-1].End
}

func (r *reader) value(v Value, k Kind) {
	r.values = append(r.values, v)
	r.add(k)
}

// figure reads one figure by its kind.
func (r *reader) figure(f *prose.Figure) {
	at := r.wordAt(f.Start)
	switch f.Kind {
	case prose.StepNumber, prose.Ordinal:
	case prose.Time:
		r.atHour(at)
	case prose.Label:
		if r.known.terms[r.known.find(prose.Fold(f.Word))].marks&grades != 0 && r.words[at].mood&(statement|viewer) != 0 {
			r.add(Spec)
		}
	case prose.Date:
		if n := r.wordAt(f.End); r.capitals(at) != "" && r.catalogued(f, at, n) {
			return
		}
		r.year(f, at)
	case prose.PartNumber:
		r.part(f)
	case prose.Money:
		r.take(f)
		if r.values[len(r.values)-1].Unit == "cent" {
			r.stated(at)
			return
		}
		if r.paid(at) {
			r.add(Measurement)
		}
	case prose.Percent:
		if next := r.wordAt(f.End); r.is(next, "sure") || r.is(next, "certain") || r.is(next, "agree") || r.is(next, "with") && r.in(next+1, r.known.person) {
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
		} else if len(f.Values) > 0 && !r.is(r.wordAt(f.End), "square") && r.inWorkshop(f, at, r.wordAt(f.End)) {
			return
		} else if r.halves(f) {
			r.value(Value{Number: f.Values[0].Number, Span: f.Span}, Comparison)
		} else if len(f.Values) > 0 && isHundredths(f.Of(r.text)) && r.words[at].mood == statement && (!strings.Contains(f.Of(r.text), "ten") || r.near(at, longestDial, r.known.measured)) {
			r.value(Value{Number: f.Values[0].Number, Unit: "mm", Span: f.Span}, Measurement)
		} else if r.inchTool(f) {
			r.value(Value{Number: f.Values[0].Number, Unit: "inch", Span: f.Span}, Spec)
		}
	case prose.Ratio, prose.Size:
		if f.Spoken && len(f.Values) == 2 && f.Values[0] == f.Values[1] && f.Values[0].Unit == "" && f.Values[0].Number < 13 {
			return // "one by one"
		}
		if text := f.Of(r.text); len(f.Values) == 1 && f.Values[0].Number >= thickest && !f.Spoken && text[0] == 'M' {
			r.value(Value{Part: text, Span: f.Span}, PartNumber) // "order M4471"
			return
		}
		r.threaded(f, at)
		r.sized(f, at)
		r.take(f)
		r.stated(at)
	default:
		r.amount(f, at)
	}
}

// paid says whether money was paid by the speaker: a receipt, no price.
func (r *reader) paid(i int) bool {
	const reach = 8
	k := &r.known.classes
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
	return (r.is(n+1, "the") || r.is(n+1, "all") || r.in(n+1, r.known.poss)) && n+2 < len(r.words) && isPlural(r.words[n+2].text) && r.words[n+1].mood == statement
}

// halves reads "half the price" and "a third of the weight": a comparison.
func (r *reader) halves(f *prose.Figure) bool {
	n := r.wordAt(f.End)
	if r.is(n, "of") {
		n++
	}
	for ; n < len(r.words) && (r.is(n, "the") || r.is(n, "as")); n++ {
		if r.in(n+1, r.known.dimension) {
			return len(f.Values) > 0
		}
	}
	return false
}

// inchTool holds for a fraction before what is sized in inches: "a five eighths
// spanner", "three eighths drive". Common practice, no source.
func (r *reader) inchTool(f *prose.Figure) bool {
	if len(f.Values) != 1 {
		return false
	}
	n := r.wordAt(f.End)
	if strings.HasSuffix(strings.ToLower(f.Of(r.text)), "thousandths") {
		return true
	}
	if f.Values[0].Number*64 != math.Trunc(f.Values[0].Number*64) {
		return false
	}
	if r.piped(f, n) {
		return true
	}
	if v := f.Values[0].Number * 4; v != math.Trunc(v) && !r.is(n, "of") && r.words[min(n, len(r.words)-1)].mood != own {
		return true // eighths and finer are said of inches alone
	}
	return n < len(r.words) && !r.words[n].stopped && r.in(n, r.known.inched)
}

// amount reads a quantity, range, tolerance, limit or count.
func (r *reader) amount(f *prose.Figure, at int) {
	if len(f.Values) == 0 {
		return
	}
	if n := r.wordAt(f.End) + 1; f.Values[0].Unit == trade.Degree && (r.is(n, "zero") || r.is(n, "freezing")) && r.belowZero(f) {
		f.Values[0].Unit = "°C"
	}
	unit := f.Values[0].Unit
	if r.vague(f, at) || r.handed(f, at) {
		return
	}
	switch {
	case unit != "" && r.suffixed(f):
	case (unit == "" || r.found.has(PartNumber)) && r.dashed(f, at):
	case unit == "" && isYear(f.Values[0].Number) && isYear(f.Values[len(f.Values)-1].Number) && len(f.Values) > 1:
		r.year(f, at)
	case unit == "lb" && r.isPrice(at, r.wordAt(f.End)):
		for i := range f.Values {
			f.Values[i].Unit = "GBP"
		}
		r.take(f)
	case unit == "":
		r.count(f, at)
	case isMoney(unit):
		r.take(f)
	case !isMoney(unit) && r.perTime(f, at):
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

// perTime reads a quantity "a minute" or "per hour": "nine litres a minute".
func (r *reader) perTime(f *prose.Figure, at int) bool {
	n := r.wordAt(f.End)
	if next := r.after(f); next != nil && len(next.Values) > 0 && next.Values[0].Unit == f.Values[0].Unit && (r.listed(f, next) || r.eased(f, next)) {
		n = r.wordAt(next.End) // "two, maybe three litres a minute"
	}
	if !r.in(n+1, r.known.period) {
		return false
	}
	switch r.words[n].text {
	case "a", "an", "per", "every", "each":
	default:
		return false
	}
	period := r.words[n+1].text
	if next := r.after(f); next != nil && len(next.Values) == 1 && next.Values[0].Unit == "" && next.Kind == prose.Count && r.isBare(next) && r.joinedBy(n+2, next, "to", "and", "or") {
		// "from six litres a minute to eleven"
		r.rated(next, unitOver(f.Values[0].Unit, period))
		next.Kind = prose.Ordinal // it is told
	}
	over := unitOver(f.Values[0].Unit, period)
	if f.Values[0].Unit == trade.Degree {
		over = r.degrees(at, f.Values[0].Number) + " per " + period
	}
	r.rated(f, over)
	r.stated(at)
	return true
}

// unitOver is a unit reckoned by a period.
func unitOver(u trade.Unit, period string) string {
	if known, ok := trade.LookupUnit(u.Spoken(2) + " per " + period); ok {
		return unitName(known)
	}
	return unitName(u) + " per " + period
}

func (r *reader) rated(f *prose.Figure, unit string) {
	for _, v := range f.Values {
		r.values = append(r.values, Value{Number: v.Number, Unit: unit, Span: f.Span})
	}
}

// after is the figure behind f, nil for none.
func (r *reader) after(f *prose.Figure) *prose.Figure {
	n, _ := slices.BinarySearchFunc(r.figures, f.End, func(g prose.Figure, at int) int { return g.Start - at })
	if n < len(r.figures) {
		return &r.figures[n]
	}
	return nil
}

// joinedBy says whether a figure follows word i directly or behind one of the
// joining words.
func (r *reader) joinedBy(i int, f *prose.Figure, joints ...string) bool {
	at := r.wordAt(f.Start)
	return at == i+1 && slices.Contains(joints, r.words[i].text)
}

// take takes all numbers of a figure.
func (r *reader) take(f *prose.Figure) {
	at := r.wordAt(f.Start)
	for _, v := range f.Values {
		number, unit := v.Number, unitName(v.Unit)
		switch {
		case v.Unit == "h" && number < 1 && number*4 == math.Trunc(number*4) && number != 0.5:
			number, unit = number*60, "min" // nobody writes a quarter of an hour as 0.25 h
		case unit == "inH2O" && r.stands(f):
			unit = "inch"
		case v.Unit == "kg" && r.is(r.wordAt(f.End), "force"):
			unit = "kgf"
		case v.Unit == "lb" && r.is(r.wordAt(f.End), "of") && r.words[min(r.wordAt(f.End)+1, len(r.words)-1)].marks&forced != 0:
			unit = "lbf"
		case v.Unit == "K" && number < 1000 && !strings.HasSuffix(f.Of(r.text), "kelvin"):
			unit = "kohm" // no workshop is that cold
		case v.Unit == "mi" && r.is(r.wordAt(f.End)+2, "gallon"):
			unit = "mpg"
		case v.Unit == "lb" && (r.inTyre(at) || r.is(r.wordAt(f.End), "of") && (r.is(r.wordAt(f.End)+1, "boost") || r.is(r.wordAt(f.End)+1, "air") || r.is(r.wordAt(f.End)+1, "steam"))):
			unit = "psi"
		case v.Unit == trade.Degree:
			unit = r.degrees(at, number)
		case v.Unit == trade.Millimetre && r.isVolume(f, at):
			unit = "ml"
		case v.Unit == "GBP" && strings.HasSuffix(f.Of(r.text), "grand"):
			unit = r.coin("GBP")
		case v.Unit == "p":
			number, unit = number/100, "GBP"
		case v.Unit == "c" && r.tuned(f):
			r.values = append(r.values, Value{Number: number, Unit: "cent", Span: f.Span})
			continue
		case v.Unit == "c":
			number, unit = number/100, r.coin("EUR")
		case v.Unit == trade.Millimetre && r.isCable(f):
			unit = "mm2"
		}
		if isMoney(v.Unit) {
			r.add(Cost)
		}
		r.values = append(r.values, Value{Number: number, Unit: unit, Span: f.Span})
	}
}
