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

func isYear(n float64) bool { return n >= 1800 && n < 2200 && n == math.Trunc(n) }
