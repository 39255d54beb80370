package claim

import (
	"math"
	"strings"

	"fixslate/plan/prose"
)

// tuned says whether cents are hundredths of a semitone: "eight cents flat".
func (r *reader) tuned(f *prose.Figure) bool {
	const reach = 7
	n := r.wordAt(f.End)
	if r.is(n, "flat") || r.is(n, "sharp") || r.is(n, "out") {
		return true
	}
	for j := max(0, n-reach); j < len(r.words) && j < n+reach; j++ {
		switch r.words[j].text {
		case "tuning", "tuner", "pitch", "octave", "semitone", "tune", "unison":
			return true
		}
	}
	return false
}

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

// isVolume says whether "mil" is a millilitre here: what is poured, topped up or
// drawn in a syringe.
func (r *reader) isVolume(f *prose.Figure, at int) bool {
	const reach = 7
	const glass = 50 // nobody says so many millimetres "of the red stuff"
	k := &r.known.classes
	n := r.wordAt(f.End)
	last := r.words[max(0, n-1)].text
	if !strings.HasPrefix(last, "mil") || strings.HasPrefix(last, "millim") || last == "mm" {
		return false
	}
	if r.is(n, "of") && (r.in(n+1, k.fluid) || r.is(n+1, "two") && r.is(n+2, "stroke") || r.is(n+1, "two-stroke")) {
		return true
	}
	if (r.is(n, "per") || r.is(n, "to") || r.is(n, "in")) && (r.is(n+1, "litre") || r.is(n+1, "gallon") || r.in(n+1, k.det) && (r.is(n+2, "litre") || r.is(n+2, "gallon") || r.is(n+2, "tank"))) {
		return true // "thirty mil to the litre"
	}
	if r.spaced(n) {
		return false
	}
	if r.is(n, "of") && f.Values[0].Number >= glass {
		for j := n + 1; j < len(r.words) && j < n+5; j++ {
			if r.in(j, k.measured|k.long|k.where) || r.is(j, "travel") {
				return false
			}
		}
		return true
	}
	if n < len(r.words) && !r.words[n].stopped && r.words[n].classes&(k.prep|k.glue|k.poured|k.be|k.det|k.lead|k.particle|k.pronoun|k.maybe) == 0 && r.words[n].marks&filler == 0 {
		return false // "it takes a ten mil shaft"
	}
	return r.near(at, reach, k.poured) && !r.near(at, reach, k.long)
}

// isPrice says whether pounds are money, as they are where grams, bars and newton
// metres are spoken, unless the words around are of weight, force or pressure, or an
// order handles them.
func (r *reader) isPrice(at, n int) bool {
	const reach = 9
	k := &r.known.classes
	if r.is(n, "of") || r.money != pounds {
		return false
	}
	if at == 0 && n < len(r.words) && (r.words[n].stopped || r.is(n, "for")) {
		return true // "thirty-five pounds, the suspension spring"
	}
	if r.near(at, reach, k.heavy) || n < len(r.words) && !r.words[n].stopped && r.words[n].marks&weights != 0 && strings.HasSuffix(r.words[max(n-1, 0)].text, "pound") {
		return false // "a seven pound test line"
	}
	pays := false
	for j := max(0, at-reach); j < len(r.words) && j < at+reach; j++ {
		if r.words[j].marks&weighty != 0 {
			return false
		}
		switch r.words[j].text {
		case "pay", "budget", "spend", "expect", "allow", "offer", "save", "worth", "each":
			pays = true
		}
	}
	return pays || r.words[min(at, len(r.words)-1)].mood != order
}

// spaced says whether what stands behind a length makes it one: "twenty mil below
// the filler", "eighty mil of fall", "three mil clear".
func (r *reader) spaced(n int) bool {
	switch {
	case n >= len(r.words):
		return false
	case r.is(n, "of"):
		return r.words[min(n+1, len(r.words)-1)].marks&solids != 0
	case r.is(n, "from"), r.is(n, "short"), r.is(n, "down") && r.is(n+1, "from"), r.is(n, "up") && r.is(n+1, "from"), r.is(n, "off"):
		return true
	case r.is(n, "below"), r.is(n, "above"), r.is(n, "under"), r.is(n, "beneath"), r.is(n, "inside"), r.is(n, "proud"), r.is(n, "past"), r.is(n, "clear"), r.is(n, "beyond"), r.is(n, "either"), r.is(n, "gap"):
		return !r.words[n].stopped
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
