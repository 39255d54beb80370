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

// articles reads lengths of time and sums behind an article, which are no
// figures for prose: "within a year", "a good hour", "leave it a fortnight", "a
// tenner". "Wait a minute" is an idiom and "a day" alone no length.
func (r *reader) articles() {
	k := &r.known.classes
	taken := r.values
	if last := len(r.words) - 1; last > 1 && len(r.values) > 0 && r.values[len(r.values)-1].Unit == "inch" && r.values[len(r.values)-1].End <= r.words[last-1].start && r.is(last-1, "a") && r.in(last-2, k.be|k.glue) {
		r.halfInch(last)
	}
	for i := 0; i+1 < len(r.words); i++ {
		if r.words[i].marks&figure != 0 && (r.halfOfThem(i) || r.halfOf(i)) {
			continue
		}
		one := r.is(i, "one")
		if !r.is(i, "a") && !r.is(i, "an") && !r.is(i, "another") && !one {
			continue
		}
		at := i + 1
		full := r.words[at].marks&filler != 0
		if full && at+1 < len(r.words) {
			at++
		}
		span := prose.Span{Start: r.words[i].start, End: r.words[at].end}
		for len(taken) > 0 && taken[0].End <= span.Start {
			taken = taken[1:]
		}
		if len(taken) > 0 && taken[0].Start < span.End {
			continue
		}
		noun := r.words[at].text
		if r.is(i-1, "once") && r.in(at, k.period) && at == i+1 && !one {
			r.value(Value{Number: 1, Unit: "per " + noun, Span: prose.Span{Start: r.words[i-1].start, End: span.End}}, Frequency)
			continue
		}
		if one && (r.is(at, "a") || r.is(at, "per")) && r.in(at+1, k.period) && r.words[i].mood != order {
			span.End = r.words[at+1].end
			r.value(Value{Number: 1, Unit: "per " + r.words[at+1].text, Span: span}, Frequency)
			continue
		}
		if one && r.is(at, "of") && r.in(i+2, k.pronoun) && (r.is(i+3, "a") || r.is(i+3, "every")) && r.in(i+4, k.period) && r.words[i].mood != order {
			r.value(Value{Number: 1, Unit: "per " + r.words[i+4].text, Span: prose.Span{Start: span.Start, End: r.words[i+4].end}}, Frequency)
			continue // "breaks one of these a month"
		}
		if r.single(i, at, one) {
			continue
		}
		if n := note(noun); n > 0 && !(noun == "grand" && at+1 < len(r.words) && !r.is(at+1, "give") && !r.words[at+1].stopped && r.words[at+1].classes&(k.prep|k.glue) == 0) {
			r.value(Value{Number: n, Unit: r.coin("GBP"), Span: span}, Cost)
			continue
		}
		number, unit := spanOfTime(noun)
		worked := r.worth(at)
		if number == 0 || one && !full || r.words[at].stopped || !full && !r.lasting(i) && !worked {
			continue
		}
		if small := noun == "minute" || noun == "second"; small && (!full && r.words[i].mood != order || r.chats(i) || r.is(i-1, "wait") || r.is(i-1, "in")) || r.chats(i) || r.is(at+1, "ago") {
			continue
		}
		if part := r.partOf(i); part > 0 && worked {
			number *= part
			span.Start = r.words[i-1].start
		}
		r.value(Value{Number: number, Unit: unit, Span: span}, Duration)
		if r.words[i].mood == order {
			r.add(Spec)
		}
	}
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

// single reads one of what prose has no unit for, and one full unit: "a pint and
// a half", "one tablespoon", "one full turn".
func (r *reader) single(i, at int, one bool) bool {
	k := &r.known.classes
	noun := r.words[at].text
	unit := measureUnit(noun)
	ok := unit != ""
	if u, known := trade.LookupUnit(noun); !ok && at > i+1 && known && len(noun) > 2 && !isTime(u) {
		unit, ok = unitName(u), true
	}
	if !ok || r.words[at].stopped || r.words[i].mood == question || r.is(i+1, "more") {
		return false
	}
	v := Value{Number: 1, Unit: unit, Span: prose.Span{Start: r.words[i].start, End: r.words[at].end}}
	if r.is(at+1, "and") && r.is(at+2, "a") && (r.is(at+3, "half") || r.is(at+3, "quarter")) && !r.in(at+4, k.making) {
		v.Number, v.End = 1.5, r.words[at+3].end
		if r.is(at+3, "quarter") {
			v.Number = 1.25
		}
	} else if part := r.partOf(i); part > 0 && at == i+1 {
		v.Number = part
	} else if (noun == "teaspoon" || noun == "tablespoon" || noun == "pint" || noun == "gallon") && r.is(at+1, "of") {
		// "a teaspoon of salt"
	} else if !one && at == i+1 || unit == "drop" || unit == "square" || unit == "click" || unit == "stroke" || unit == "notch" {
		return false // "a cup", "with a click"
	}
	r.values = append(r.values, v)
	r.stated(i)
	return true
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
