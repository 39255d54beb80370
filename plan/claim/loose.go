package claim

import (
	"math"
	"strings"

	"fixslate/plan/prose"
)

// isCable says whether millimetres are the section of a conductor: "2.5 mil twin
// and earth", "one point five millimetre flex". The sizes are those of IEC 60228.
func (r *reader) isCable(f *prose.Figure) bool {
	const reach = 3
	for _, v := range f.Values {
		switch v.Number {
		case 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70:
		default:
			return false
		}
	}
	n := r.wordAt(f.End)
	if r.is(n, "off") || r.is(n, "of") || r.is(n, "from") {
		return false // "6 mm off each core"
	}
	if at := r.wordAt(f.Start); n >= len(r.words) || r.words[n].stopped {
		for j := max(0, at-longestDial); j < at; j++ {
			if (r.is(j, "core") || r.is(j, "twin") || r.is(j, "flex") || r.is(j, "spur") || r.is(j, "main") && r.is(j-1, "ring")) && r.words[max(0, n-1)].text != "long" {
				return true // "three core and earth, one mil"
			}
		}
	}
	for j := n; j < len(r.words) && j < n+reach && !r.words[j].stopped; j++ {
		switch r.words[j].text {
		case "twin", "flex", "tails", "core", "three-core", "two-core", "earth", "bonding", "singles", "swa", "conductor", "conductors":
			return true
		case "cable":
			if r.ampere() {
				return true // "thirty two amps on a four mil cable"
			}
			return r.is(n-1, "mil") && f.Values[0].Number != math.Trunc(f.Values[0].Number) || r.is(r.wordAt(f.Start)-1, "core")
		}
	}
	return false
}

// coin is the money that the sentence names, for sums that don't, or what those are
// else.
func (r *reader) coin(otherwise string) string {
	for i := range r.words {
		switch r.words[i].text {
		case "dollar", "dollars", "buck", "bucks", "dime", "usd", "nickel", "american", "stateside", "states":
			return "USD"
		case "euro", "euros":
			return "EUR"
		}
	}
	switch {
	case strings.Contains(r.text, "$"):
		return "USD"
	case r.money != pounds:
		return r.money
	}
	return otherwise
}

// pounds are the money of sums where nothing else is known.
const pounds = "GBP"

// moneyOf is the money of a plan's region.
func moneyOf(region string) string {
	switch strings.ToUpper(region) {
	case "US":
		return "USD"
	case "AT", "BE", "CY", "DE", "EE", "ES", "EU", "FI", "FR", "GR", "HR", "IE", "IT", "LT", "LU", "LV", "MT", "NL", "PT", "SI", "SK":
		return "EUR"
	}
	return pounds
}
