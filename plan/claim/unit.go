package claim

import (
	"strings"
	"unicode/utf8"

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

// degrees says of what a bare degree is one: a temperature unless the words
// around turn, tilt or bend something. A right angle and its multiples are
// angles unless the words speak of heat.
func (r *reader) degrees(i int, number float64) string {
	const reach = 9
	k := &r.known.classes
	if r.is(i-1, "by") && (r.is(i-2, "off") || r.is(i-2, "out")) {
		return "deg"
	}
	hot, turned := r.near(i, reach, k.heat), r.near(i, reach, k.angle)
	if hot != turned {
		if turned {
			return "deg"
		}
		return "degC"
	}
	for j := max(0, i-reach); j < i && j < len(r.words); j++ {
		if r.is(j, "gas") || r.is(j, "fan") {
			return "degC" // "gas mark four is a hundred and eighty degrees"
		}
	}
	if r.is(i-1, "above") || r.is(i-1, "below") || r.is(i-1, "of") && (r.is(i-2, "north") || r.is(i-2, "south")) {
		return "degC"
	}
	if number == 45 || number > 0 && int(number)%90 == 0 && number == float64(int(number)) {
		return "deg"
	}
	return "degC"
}

// singular is a counted noun in the form that names the count.
func singular(w string) string {
	switch {
	case w == "teeth":
		return "tooth"
	case w == "feet":
		return "foot"
	case w == "halves" || w == "shelves":
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
	return w == "teeth" || w == "feet" || len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") && !strings.HasSuffix(w, "us")
}
