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
	r.later, r.united = r.later[:0], 0
	for i := range r.figures {
		if v := r.figures[i].Values; len(v) > 0 && v[0].Unit != "" {
			r.united++
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
		r.figure(i)
		if i+1 < len(r.figures) && (r.isRate(&r.figures[i], &r.figures[i+1]) || r.isReckoned(i)) {
			i++
		}
		if len(r.later) > mostLater {
			r.bare()
		}
	}
	r.bare()
	slices.SortStableFunc(r.values, func(a, b Value) int { return a.Start - b.Start })
	r.articles()
	slices.SortStableFunc(r.values, func(a, b Value) int { return a.Start - b.Start })
	r.corrected()
}

// mostLater is how many numbers without a unit wait for those with one.
const mostLater = 8

// bare decides about the numbers without a unit, which may share one with others.
func (r *reader) bare() {
	for _, i := range r.later {
		c := r.numberOf(i)
		if !r.told(c.Span) {
			r.offers = r.offers[:0]
			r.offerBare(&c)
			r.decide(&c)
		}
	}
	r.later = r.later[:0]
}

// isReckoned says whether a number without a unit is reckoned by the figure behind it:
// "forty gallons an hour".
func (r *reader) isReckoned(i int) bool {
	f := &r.figures[i]
	if len(f.Values) == 0 || f.Values[0].Unit != "" {
		return false
	}
	_, end := r.rate(r.wordAt(f.End))
	return end > 0 && r.figures[i+1].Start < r.words[end-1].end && r.figures[i+1].Kind == prose.Quantity
}

// told says whether a stretch is part of the last value: the hour of "forty
// beats an hour".
func (r *reader) told(s prose.Span) bool {
	late := r.values[max(0, len(r.values)-4*mostLater):]
	return slices.ContainsFunc(late, func(v Value) bool { return v.Start <= s.Start && s.End <= v.End })
}

func (r *reader) value(v Value, k Kind) {
	r.values = append(r.values, v)
	r.add(k)
}

// inParts holds for the "a millimetre" of "in hundredths of a millimetre": what
// something is told in, and no length.
func (r *reader) inParts(at int) bool {
	if !r.is(at, "a") && !r.is(at, "an") || !r.is(at-1, "of") || at < 3 || r.words[at-3].number {
		return false
	}
	switch r.words[at-2].text {
	case "tenths", "hundredths", "thousandths", "fractions", "halves", "quarters", "eighths", "sixteenths":
		return true
	}
	return false
}

// figure reads one figure by its kind; what has no unit waits for those that have.
func (r *reader) figure(i int) {
	f := &r.figures[i]
	at := r.wordAt(f.Start)
	if r.inParts(at) {
		return
	}
	c := r.numberOf(i)
	r.offers = r.offers[:0]
	switch f.Kind {
	case prose.StepNumber, prose.Ordinal:
		return
	case prose.Time:
		r.atHour(at)
		return
	case prose.Label:
		if r.known.terms[r.known.find(prose.Fold(f.Word))].marks&grades != 0 && r.words[at].mood&(statement|viewer) != 0 {
			r.add(Spec)
		}
		return
	case prose.Date:
		if n := r.wordAt(f.End); r.capitals(at) != "" && r.catalogued(f, at, n) || len(f.Values) == 0 {
			return
		}
		for _, v := range f.Values {
			if !isYear(v.Number) {
				return
			}
		}
		r.offer("year", ofYear).kinds = bitOf(Spec)
	case prose.PartNumber:
		r.part(i)
		return
	case prose.Fraction:
		if len(f.Values) == 0 {
			return
		}
		if r.ofMany(f.End) {
			r.value(Value{Number: percent(f.Values[0].Number), Unit: "%", Span: f.Span}, Frequency)
			return
		}
		if n := c.n; r.is(n, "of") && (r.is(n+1, "a") || r.is(n+1, "an")) && n+2 < len(r.words) && r.unitOfNoun(r.words[n+2].text) != "" {
			return // "three tenths of a gallon"
		}
		r.offerPart(&c)
	case prose.Ratio, prose.Size:
		if text := f.Of(r.text); len(f.Values) == 1 && f.Values[0].Number >= thickest && !f.Spoken && text[0] == 'M' {
			r.value(Value{Part: text, Span: f.Span}, PartNumber) // "order M4471"
			return
		}
		r.offerSizes(&c)
	default:
		if len(f.Values) == 0 || r.formed(f, at) {
			return
		}
		if f.Values[0].Unit == "" {
			r.later = append(r.later, i)
			return
		}
		r.offerSaid(&c)
	}
	r.decide(&c)
}

// offerSizes offers what sizes one by another, a thread or a ratio may be.
func (r *reader) offerSizes(c *number) {
	f := c.f
	r.threaded(f, c.at)
	if f.Kind != prose.Size || f.Values[0].Unit != "" {
		r.offerSaid(c)
		return
	}
	r.sized(f, c.at)
	told := f.Values[0].Unit
	for k := range f.Values {
		f.Values[k].Unit = ""
	}
	r.offer("", plain)
	r.offer("mm", usual, is(agree, oneIf(told == trade.Millimetre)))
	r.offer("inch", usual, is(agree, oneIf(told == trade.Inch)))
}

// offerPart offers what a fraction may be.
func (r *reader) offerPart(c *number) {
	f := c.f
	if unit, scale, ok := r.colloquial(f, c.at, c.n); ok {
		r.offerScaled(unit, 1/scale, asSaid, is(unitWord, 1))
	}
	r.offer("", plain, is(agree, oneIf(r.halves(f)))).kinds = bitOf(Comparison)
	if isHundredths(f.Of(r.text)) {
		r.offer("mm", usual, is(agree, 1))
	}
	fine := c.v*4 != math.Trunc(c.v*4)
	r.offer("inch", usual, is(agree, oneIf(r.inchTool(f))|oneIf(fine)<<1))
	if !isEighths(f.Of(r.text)) { // which are of inches alone
		r.offerShared(c, r.bareness(c))
	}
}

// formed takes what its form alone shows: the class of a bolt, an hour, a part number.
func (r *reader) formed(f *prose.Figure, at int) bool {
	unit := f.Values[0].Unit
	if unit != "" && r.suffixed(f) || (unit == "" || r.found.has(PartNumber)) && r.dashed(f, at) {
		return true
	}
	if unit == "" && (r.elided(f) || r.belowZero(f)) {
		return false
	}
	if unit != "" {
		if n := r.wordAt(f.End) + 1; unit == trade.Degree && (r.is(n, "zero") || r.is(n, "freezing")) && r.belowZero(f) {
			f.Values[0].Unit = "°C"
		}
		return false
	}
	n := r.wordAt(f.End)
	if n == at {
		n++
	}
	return r.toldOtherwise(f, at, n) || r.recurs(f, at, n) || r.catalogued(f, at, n)
}

// elided gives its century to a year of which an apostrophe leaves it out: "'81".
func (r *reader) elided(f *prose.Figure) bool {
	const turn = 30
	v := f.Values[0].Number
	if f.Start == 0 || f.End-f.Start != 2 || len(f.Values) != 1 || !strings.HasSuffix(r.text[:f.Start], "'") && !strings.HasSuffix(r.text[:f.Start], "’") {
		return false
	}
	if v < turn {
		v += 100
	}
	f.Values[0].Number = 1900 + v
	return true
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

func isMoney(u trade.Unit) bool {
	switch u {
	case "GBP", "EUR", "USD", "JPY", "p", "c":
		return true
	}
	return false
}

// unitOver is a unit reckoned by a period.
func unitOver(u trade.Unit, period string) string {
	if u == "turn" && period == "minute" {
		return "rpm"
	}
	if known, ok := trade.LookupUnit(u.Spoken(2) + " per " + period); ok {
		return unitName(known)
	}
	return unitName(u) + overPeriod(period)
}

// overPeriod is how a unit goes on that is reckoned by a period: "/min", " per week".
func overPeriod(period string) string {
	switch _, unit := spanOfTime(period); unit {
	case "s", "min", "h":
		return "/" + unit
	}
	return " per " + period
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
