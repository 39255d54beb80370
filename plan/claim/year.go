package claim

import (
	"math"
	"strings"

	"fixslate/plan/prose"
)

// year takes the year from which or to which something of the object holds:
// "built after 2012", "2009 to 2014 cars". The speaker's own dates are none.
func (r *reader) year(f *prose.Figure, at int) {
	at = min(at, len(r.words)-1)
	if len(f.Values) == 0 || r.words[at].mood != statement || strings.ContainsAny(f.Of(r.text), "/") {
		return
	}
	const reach = 8
	mine := false
	r.clauseBefore(at, reach, func(j int) bool {
		mine = mine || r.in(j, r.known.self) || r.is(j, "my")
		return true
	})
	if mine {
		return
	}
	for _, v := range f.Values {
		if isYear(v.Number) {
			r.value(Value{Number: v.Number, Unit: "year", Span: f.Span}, Spec)
		}
	}
}

// shortYear is the year that "pre ninety five" and "before eighty-eight" name, 0 for
// none: what is told apart by its year was mostly made in the last century.
func (r *reader) shortYear(f *prose.Figure, at int) float64 {
	const first, last = 50, 99
	v := f.Values[0].Number
	if !f.Spoken || len(f.Values) != 1 || v < first || v > last || v != math.Trunc(v) || r.words[min(at, len(r.words)-1)].mood != statement {
		return 0
	}
	switch n := r.wordAt(f.End); {
	case (r.is(at-1, "a") || r.is(at-1, "the") || r.is(at-1, "an")) && n > at && (r.is(n, "model") || r.is(n, "vintage") || r.is(n, "reg") || r.is(n, "edition")):
		return 1900 + v
	case !r.isBare(f) && !r.in(n, r.known.be):
		return 0
	}
	switch r.words[max(at-1, 0)].text {
	case "pre", "before", "since", "post":
		if at > 0 {
			return 1900 + v
		}
	}
	return 0
}

func isYear(n float64) bool { return n >= 1800 && n < 2200 && n == math.Trunc(n) }
