package claim

import (
	"strings"
	"unicode/utf8"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// unitName spells a unit in ASCII, so that a script can compare it.
func unitName(u trade.Unit) string {
	switch u {
	case "in":
		return "inch"
	case "L":
		return "l"
	case "mL":
		return "ml"
	case "cL":
		return "cl"
	case "°":
		return "deg"
	}
	for i := range len(u) {
		if u[i] >= utf8.RuneSelf {
			return ascii.Replace(string(u))
		}
	}
	return string(u)
}

var ascii = strings.NewReplacer("Ω", "ohm", "µ", "u", "·", "", "°", "deg", "²", "2", "³", "3", "₂", "2")

// isTime holds for units of time.
func isTime(u trade.Unit) bool { return u.Dimension() == trade.Minute.Dimension() }

// singular is a counted noun in the form that names the count.
func singular(w string) string {
	switch {
	case w == "teeth":
		return "tooth"
	case w == "feet":
		return "foot"
	case w == "halves" || w == "shelves" || w == "leaves":
		return w[:len(w)-3] + "f"
	case strings.HasSuffix(w, "ies") && len(w) > 4:
		return w[:len(w)-3] + "y"
	case strings.HasSuffix(w, "ches"), strings.HasSuffix(w, "shes"), strings.HasSuffix(w, "xes"), strings.HasSuffix(w, "sses"):
		return w[:len(w)-2]
	case strings.HasSuffix(w, "ss"), strings.HasSuffix(w, "us"), len(w) < 4:
		return w
	}
	return strings.TrimSuffix(w, "s")
}

// isPlural holds for words that look like the plural of a noun.
func isPlural(w string) bool {
	switch w {
	case "this", "does", "always", "perhaps", "across", "towards", "besides", "sometimes", "upwards", "downwards":
		return false
	}
	return w == "teeth" || w == "feet" || len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") && !strings.HasSuffix(w, "us")
}

// stands says whether inches of water stand somewhere, "two inches of water in it",
// and are no pressure.
func (r *reader) stands(f *prose.Figure) bool {
	n := r.wordAt(f.End)
	return !r.in(n, r.known.glue) && (r.is(n, "in") || r.is(n, "on") || r.is(n, "at") || r.is(n, "over") || r.is(n, "sat") || r.is(n, "sitting") || r.is(n, "standing") || r.is(n, "lying")) &&
		!r.is(n+1, "gauge") && !r.is(n+2, "gauge") && !r.is(n+2, "manometer")
}

// inTyre says whether pounds are those of a tyre's pressure.
func (r *reader) inTyre(at int) bool {
	const reach = 8
	for j := max(0, at-reach); j < len(r.words) && j < at+reach; j++ {
		switch r.words[j].text {
		case "tyre", "tyres", "tire", "tires", "pressure":
			return true
		case "weigh", "weighs", "force", "pull", "spring", "quid", "cost", "costs", "each":
			return false
		}
	}
	return false
}

// piped says whether a bare part is the size of a pipe or of what goes on one: "the
// inlet's three quarter", "a half and a three quarter".
func (r *reader) piped(f *prose.Figure, n int) bool {
	const reach = 5
	if n < len(r.words) && !r.words[n].stopped && (r.words[n].classes&(r.known.glue|r.known.prep) == 0 || r.is(n, "of")) || f.Values[0].Number >= 1 {
		return false
	}
	at := r.wordAt(f.Start)
	if !r.in(at-1, r.known.be) && !r.is(at-1, "a") && !r.is(at, "a") {
		return false
	}
	for j := max(0, at-reach); j < at; j++ {
		switch r.words[j].text {
		case "inlet", "outlet", "pipe", "tap", "valve", "tail", "union", "nipple", "bsp", "hose", "elbow", "port", "ports", "thread", "connection", "connections", "supply", "waste", "stub", "coupling":
			return r.words[at].mood != order
		}
	}
	return false
}
