package claim

import (
	"slices"
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// spanOfTime is a length of time by its noun: so many of a unit, 0 for none.
func spanOfTime(noun string) (number float64, unit string) {
	switch noun {
	case "minute":
		return 1, "min"
	case "hour":
		return 1, "h"
	case "second":
		return 1, "s"
	case "day", "week", "month", "year":
		return 1, noun
	case "fortnight":
		return 2, "week"
	case "decade":
		return 10, "year"
	case "century":
		return 100, "year"
	}
	return 0, ""
}

// note is a sum by its name, 0 for none.
func note(noun string) float64 {
	switch noun {
	case "grand":
		return 1000
	case "tenner", "tenners":
		return 10
	case "fiver", "fivers":
		return 5
	}
	return 0
}

// articles reads what an article says one of, which is no figure for prose: "within a
// year", "a good hour", "one full turn", "a tenner", "once a week".
func (r *reader) articles() {
	if last := len(r.words) - 1; last > 1 && len(r.values) > 0 && r.values[len(r.values)-1].Unit == "inch" && r.values[len(r.values)-1].End <= r.words[last-1].start && r.is(last-1, "a") && r.in(last-2, r.known.be|r.known.glue) {
		r.halfInch(last)
	}
	taken := r.values
	for i := range r.words {
		if i+1 < len(r.words) && r.words[i].marks&figure != 0 && (r.halfOfThem(i) || r.halfOf(i)) {
			continue
		}
		period, times := adverbial(r.words[i].text), multiplied(r.words[i].text)
		if period != "" || times != 0 || r.elliptic(i) {
			c := number{Span: prose.Span{Start: r.words[i].start, End: r.words[i].end}, i: -1, at: i, n: i + 1, v: 1, whole: true, spoken: true}
			r.offers = r.offers[:0]
			switch {
			case period != "":
				r.offer("per "+period, over).kinds = bitOf(Frequency)
			case times != 0:
				c.v, c.whole = times, times > 1
				r.offer("", plain, is(joint, 79)).kinds = bitOf(Comparison)
			default:
				c.f = &prose.Figure{Span: c.Span, Kind: prose.Count, Values: []prose.Value{{Number: 1}}, Spoken: true}
				r.offerBare(&c)
			}
			if !r.told(c.Span) {
				r.decide(&c)
			}
			continue
		}
		if !r.is(i, "a") && !r.is(i, "an") && !r.is(i, "another") && !r.is(i, "one") {
			continue
		}
		at := i + 1
		if at >= len(r.words) {
			break
		}
		if r.words[at].marks&filler != 0 && at+1 < len(r.words) {
			at++
		}
		c := number{Span: prose.Span{Start: r.words[i].start, End: r.words[at].end}, i: -1, at: i, n: at + 1, v: 1, whole: true, spoken: true}
		for len(taken) > 0 && taken[0].End <= c.Start {
			taken = taken[1:]
		}
		if r.words[at].stopped || len(taken) > 0 && taken[0].Start < c.End {
			continue
		}
		r.offers = r.offers[:0]
		r.offerOne(&c, at)
		r.decide(&c)
	}
}

// adverbial is the period of an adverb that says how often, empty for none.
func adverbial(w string) string {
	switch w {
	case "hourly":
		return "hour"
	case "daily":
		return "day"
	case "weekly":
		return "week"
	case "monthly":
		return "month"
	case "yearly", "annually", "annual":
		return "year"
	}
	return ""
}

// multiplied is by what a verb says that something is multiplied, 0 for others.
func multiplied(w string) float64 {
	switch w {
	case "doubles", "doubled":
		return 2
	case "trebles", "trebled", "triples", "tripled":
		return 3
	case "quadruples", "quadrupled":
		return 4
	case "halves", "halved":
		return 0.5
	}
	return 0
}

// elliptic says whether "one" at i leaves out the unit of another number: "backwash
// for three minutes, rinse for one".
func (r *reader) elliptic(i int) bool {
	k := &r.known.classes
	return r.is(i, "one") && len(r.values) > 0 && r.in(i-1, k.be|k.prep|k.reading) && !r.is(i-1, "of") &&
		(i+1 >= len(r.words) || r.words[i+1].stopped || r.in(i+1, k.glue|k.prep) && !r.is(i+1, "of"))
}

// offerOne offers what one of the noun at a word may be.
func (r *reader) offerOne(c *number, at int) {
	i, noun, k := c.at, r.words[at].text, &r.known.classes
	one := oneIf(r.is(i, "one"))
	period := at
	switch {
	case one == 1 && (r.is(at, "a") || r.is(at, "per")):
		period++ // "one a day"
	case one == 1 && r.is(at, "of") && r.in(i+2, k.pronoun) && (r.is(i+3, "a") || r.is(i+3, "every")):
		period = i + 4 // "breaks one of these a month"
	}
	if (period > at || r.is(i-1, "once")) && r.in(period, k.period) {
		o := r.offer("per "+r.words[period].text, over)
		o.kinds = bitOf(Frequency)
		if o.end = r.words[period].end; r.is(i-1, "once") {
			c.Start = r.words[i-1].start
		}
		return
	}
	part := r.partOf(i)
	if part == 0 {
		part = 1
	}
	said := is(unitWord, hashOf(noun))
	how := is(hold, one|oneIf(at > i+1)<<1|oneIf(part < 1)<<2)
	if n := note(noun); n > 0 {
		if r.is(at+1, "and") && r.is(at+2, "a") && r.is(at+3, "half") {
			c.End, n = r.words[at+3].end, n*1.5
		}
		r.offerScaled(r.coin("GBP"), n, single, said)
		return
	}
	if number, unit := spanOfTime(noun); number > 0 {
		r.offerScaled(unit, number*part, single, said, how, is(hold, 64|oneIf(r.worth(at))), is(hold, 128|oneIf(r.lasting(i))))
		return
	}
	unit := r.unitOfNoun(noun)
	if unit == "" || noun == "meter" && one == 0 && !r.spans(at+1) {
		return
	}
	if r.is(at+1, "and") && r.is(at+2, "a") && (r.is(at+3, "half") || r.is(at+3, "quarter")) && !r.in(at+4, k.making) {
		c.End, part = r.words[at+3].end, 1.5
		if r.is(at+3, "quarter") {
			part = 1.25
		}
	}
	if measureUnit(noun) != "" && one == 0 && at == i+1 && part == 1 && !r.is(at+1, "of") {
		return // "a cup", "with a click"
	}
	r.offerScaled(unit, part, single, said, how, is(hold, 256|oneIf(r.is(at+1, "of"))))
}

// spans says whether the word at i makes a length of "a good meter": without one a
// meter is what one measures with.
func (r *reader) spans(i int) bool {
	switch r.words[min(i, len(r.words)-1)].text {
	case "of", "long", "wide", "deep", "high", "tall", "thick", "away", "apart", "from", "above", "below", "across", "more", "less", "each", "further", "longer", "back", "up", "down":
		return i < len(r.words)
	}
	return false
}

// unitOfNoun is the unit that a noun is, empty for none; those of time are none here.
func (r *reader) unitOfNoun(noun string) string {
	if unit := measureUnit(noun); unit != "" {
		return unit
	}
	if u, known := trade.LookupUnit(noun); known && len(noun) > 2 && !isTime(u) {
		return unitName(u)
	}
	return ""
}

// worth says whether work or waiting is what a length of time is of: "an hour's
// work", "half a day's soaking".
func (r *reader) worth(at int) bool {
	if !r.is(at+1, "'s") || at+2 >= len(r.words) {
		return false
	}
	switch w := r.words[at+2].text; w {
	case "work", "job", "labour", "wait", "drive", "charge", "use", "worth", "notice", "graft", "lead", "warranty", "guarantee", "life", "rest":
		return true
	default:
		return strings.HasSuffix(w, "ing")
	}
}

// halfOfThem reads "half of the ones I see": so many in a hundred, as other parts
// are.
func (r *reader) halfOfThem(i int) bool {
	if !r.is(i, "half") || r.in(i-1, r.known.det) || !r.ofMany(r.words[i].end) || r.words[i].mood != statement {
		return false
	}
	r.value(Value{Number: 50, Unit: "%", Span: prose.Span{Start: r.words[i].start, End: r.words[i].end}}, Frequency)
	return true
}

// halfInch reads "a half" that ends its piece beside another size in inches: "the
// inlet's three quarter and the outlet's a half".
func (r *reader) halfInch(i int) bool {
	if !r.is(i, "half") {
		return false
	}
	r.values = append(r.values, Value{Number: 0.5, Unit: "inch", Span: prose.Span{Start: r.words[i].start, End: r.words[i].end}})
	r.stated(i)
	return true
}

// halfOf reads "half ton", "quarter pint": a part of what prose has no unit for.
func (r *reader) halfOf(i int) bool {
	part := 0.5
	switch r.words[i].text {
	case "quarter":
		part = 0.25
	case "half":
	default:
		return false
	}
	if n := len(r.values); n > 0 && r.values[n-1].Unit == "inch" && r.values[n-1].End < r.words[i].start && r.is(i-1, "a") && r.in(i-2, r.known.be|r.known.glue) && r.words[i+1].stopped {
		return r.halfInch(i)
	}
	if n := len(r.values); part == 0.5 && n > 0 && r.values[n-1].Unit == "inch" && r.values[n-1].End < r.words[i].start && r.words[i].stopped && r.in(i+1, r.known.prep) && !r.is(i+1, "of") {
		return r.halfInch(i) // "three eighths on the pump, half on the valve"
	}
	for _, v := range r.values {
		if v.Start <= r.words[i].start && r.words[i].start < v.End {
			return false // "two and a half pints"
		}
	}
	unit := measureUnit(r.words[i+1].text)
	if unit == "" || r.words[i+1].stopped || r.words[i].mood == question || unit == "stroke" || unit == "mm" || unit == "mm2" || unit == "weight" || unit == "cup" ||
		r.is(i-1, "and") || r.is(i-1, "a") && r.is(i-2, "and") && r.in(i-3, r.known.making) || len(r.words[i+1].text) < 3 {
		return false
	}
	r.values = append(r.values, Value{Number: part, Unit: unit, Span: prose.Span{Start: r.words[i].start, End: r.words[i+1].end}})
	r.stated(i)
	return true
}

// partOf reads "half a", "a quarter of a", "three tenths of a" up to the article
// at i; 0 for none.
func (r *reader) partOf(i int) float64 {
	switch {
	case r.is(i-1, "half"):
		return 0.5
	case !r.is(i-1, "of") || i < 2:
		return 0
	}
	n, _ := slices.BinarySearchFunc(r.figures, r.words[i-2].end, func(f prose.Figure, at int) int { return f.End - at })
	if n < len(r.figures) && r.figures[n].End == r.words[i-2].end && r.figures[n].Kind == prose.Fraction && len(r.figures[n].Values) == 1 {
		return r.figures[n].Values[0].Number
	}
	if r.is(i-2, "quarter") {
		return 0.25
	}
	return 0
}

// lasting says whether the word before the article at i makes a length of the
// noun: "within a year", "takes an hour".
func (r *reader) lasting(i int) bool {
	switch r.words[max(0, i-1)].text {
	case "within", "for", "after", "about", "around", "under", "over", "almost", "nearly", "takes", "took", "take", "lasts", "lasted", "last", "than", "least", "roughly", "every", "whole":
		return i > 0
	case "of":
		return r.is(i-2, "part") && (r.is(i-3, "best") || r.is(i-3, "better"))
	case "was", "is", "be":
		return r.is(i+2, "before") || r.is(i+2, "until")
	case "it", "them", "that":
		return i > 0 && r.words[i].mood == order
	}
	return i+3 < len(r.words) && r.is(i+2, "or") && r.is(i+3, "so") // "a week or so"
}
