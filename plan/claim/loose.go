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
	if at := r.wordAt(f.Start); n >= len(r.words) || r.words[n].stopped {
		for j := max(0, at-longestDial); j < at; j++ {
			if (r.is(j, "core") || r.is(j, "twin") || r.is(j, "flex")) && r.words[max(0, n-1)].text != "long" {
				return true // "three core and earth, one mil"
			}
		}
	}
	for j := n; j < len(r.words) && j < n+reach && !r.words[j].stopped; j++ {
		switch r.words[j].text {
		case "twin", "flex", "tails", "core", "three-core", "two-core", "earth", "bonding", "singles", "swa", "conductor", "conductors":
			return true
		case "cable":
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
	if r.is(n, "of") && r.in(n+1, k.fluid) {
		return true
	}
	if r.is(n, "of") && f.Values[0].Number >= glass {
		for j := n + 1; j < len(r.words) && j < n+5; j++ {
			if r.in(j, k.measured|k.long) || r.is(j, "travel") {
				return false
			}
		}
		return true
	}
	if r.is(at-1, "a") && n < len(r.words) && !r.words[n].stopped && r.words[n].classes&(k.prep|k.glue|k.poured) == 0 {
		return false // "it takes a ten mil shaft"
	}
	return r.near(at, reach, k.poured) && !r.near(at, reach, k.long)
}

// isPrice says whether pounds are money: the words around speak of buying and
// not of weight, force or pressure.
func (r *reader) isPrice(at, n int) bool {
	const reach = 9
	k := &r.known.classes
	if n+1 < len(r.words) && (r.is(n, "a") || r.is(n, "per")) && !r.in(n+1, k.period) && !r.near(at, reach, k.heavy) {
		return true // "two pounds a litre"
	}
	if n < len(r.words) && (at == 0 && (r.words[n].stopped || r.is(n, "for")) || r.is(n, "plus")) {
		return true // "thirty five pounds, the pair"
	}
	return r.near(at, reach, k.bought) && !r.near(at, reach, k.heavy)
}
