package claim

import "fixslate/plan/prose"

// spans of time by their noun, as many of a unit; those that trade knows stand
// for themselves.
var spansOfTime = map[string]struct {
	number float64
	unit   string
}{
	"minute": {1, "min"}, "hour": {1, "h"}, "day": {1, "day"}, "week": {1, "week"}, "fortnight": {2, "week"}, "month": {1, "month"}, "year": {1, "year"},
	"decade": {10, "year"}, "century": {100, "year"}, "second": {1, "s"},
}

// notes are sums by their name.
var notes = map[string]float64{"tenner": 10, "fiver": 5, "tenners": 10, "fivers": 5}

// articles reads lengths of time and sums behind an article, which are no
// figures for prose: "within a year", "a good hour", "leave it a fortnight", "a
// tenner". "Wait a minute" is an idiom and "a day" alone no length.
func (r *reader) articles() {
	k := kindsOfWord()
	taken := r.values
	for i := 0; i+1 < len(r.words); i++ {
		if !r.is(i, "a") && !r.is(i, "an") && !r.is(i, "another") {
			continue
		}
		at := i + 1
		full := filler[r.words[at].text]
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
		if n, ok := notes[noun]; ok {
			r.value(Value{Number: n, Unit: "GBP", Span: span}, Cost)
			continue
		}
		length, ok := spansOfTime[noun]
		if !ok || r.words[at].stopped || !full && !r.lasting(i) {
			continue
		}
		if small := noun == "minute" || noun == "second"; small && (!full && r.words[i].mood != order || r.chats(i) || r.is(i-1, "wait") || r.is(i-1, "in")) || r.chats(i) || r.is(at+1, "ago") {
			continue
		}
		r.value(Value{Number: length.number, Unit: length.unit, Span: span}, Duration)
		if r.words[i].mood == order {
			r.add(Spec)
		}
		if r.near(i, 4, k.self) {
			r.add(Measurement)
		}
	}
}

// lasting says whether the word before the article at i makes a length of the
// noun: "within a year", "takes an hour".
func (r *reader) lasting(i int) bool {
	switch r.words[max(0, i-1)].text {
	case "within", "for", "after", "about", "around", "under", "over", "almost", "nearly", "takes", "took", "take", "lasts", "lasted", "last", "than", "least", "roughly", "every", "whole":
		return i > 0
	case "it", "them", "that":
		return i > 0 && r.words[i].mood == order
	}
	return false
}
