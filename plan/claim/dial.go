package claim

import (
	"math"

	"fixslate/plan/prose"
)

// celsius is the unit that a sentence names for all its figures: "bed at sixty,
// nozzle at two ten, both Celsius".
func (r *reader) celsius() string {
	switch {
	case r.about&ofCelsius != 0:
		return "degC"
	case r.about&ofFahrenheit != 0:
		return "degF"
	}
	return ""
}

// onDial reads "a hundred and fifty on the gauge".
func (r *reader) onDial(f *prose.Figure) bool {
	n := r.wordAt(f.End)
	if !r.is(n, "on") || r.words[n].stopped {
		return false
	}
	for j := n + 1; j < len(r.words) && j < n+4; j++ {
		if r.in(j, r.known.meter) {
			return true
		}
	}
	return false
}

// onRevs reads "three thousand on the tach".
func (r *reader) onRevs(f *prose.Figure) bool {
	n := r.wordAt(f.End)
	if f.Values[0].Number < slowest {
		return false
	}
	for j := n; j < len(r.words) && j < n+4; j++ {
		if r.is(j, "tach") || r.is(j, "tacho") || r.is(j, "tachometer") || r.is(j, "strobe") || r.is(j, "rev") && r.is(j+1, "counter") {
			return true
		}
	}
	return false
}

// slowest is from how many turns a minute on a bare number near "idle" is one.
const slowest = 300

// dialUnit is the unit of a bare reading by what gave it or by what was measured: a
// caliper reads millimetres, a battery stands at volts. The nearest word decides.
func (r *reader) dialUnit(at int, number float64, whole bool) string {
	if n := r.wordAt(r.words[min(at, len(r.words)-1)].end); r.is(n, "of") && n+1 < len(r.words) {
		if unit := r.dialled(&r.words[n+1], number, whole); unit != "" {
			return unit // "point seven of gap"
		}
	}
	if n := r.wordAt(r.words[min(at, len(r.words)-1)].end); true {
		for j := n; j < len(r.words) && j < n+4; j++ {
			if (r.is(j, "on") || r.is(j, "across") || r.is(j, "through")) && r.in(j+1, r.known.det) {
				for m := j + 2; m < len(r.words) && m < j+4; m++ {
					if unit := r.dialled(&r.words[m], number, whole); unit != "" {
						return unit // "one oh two on the dB meter"
					}
				}
			}
		}
	}
	for j := at - 1; j >= max(0, at-longestDial); j-- {
		if r.words[j].mood == order && r.in(j, r.known.order) && (j == 0 || r.words[j].stopped || r.in(j-1, r.known.glue)) && r.words[j].marks&sizing == 0 {
			continue // "coil it", "seat it"
		}
		if unit := r.dialled(&r.words[j], number, whole); unit != "" {
			return unit
		}
	}
	return ""
}

// dialled is the unit that a word gives to a number, empty for none.
func (r *reader) dialled(w *word, number float64, whole bool) string {
	for _, d := range r.known.dials[r.known.terms[w.id].dials] {
		if number >= d.least && number <= d.most && !(whole && d.parts) {
			return d.unit
		}
	}
	return ""
}

// dial says in what unit a number near a word is, between which bounds, and whether
// for numbers with parts alone; dials.txt has them.
type dial struct {
	unit        string
	least, most float64
	parts       bool
}

// longestDial bounds the way from a reading to what shows it, in words.
const longestDial = 8

// hotSide says whether the thing at the number is named by its heat: "the hot tap's
// at fifty". Cold tyres stand at a pressure.
func (r *reader) hotSide(f *prose.Figure, at int) bool {
	const coldest, hottest = 2, 400
	if v := f.Values[0].Number; v < coldest || v > hottest {
		return false
	}
	hot := false
	for j := max(0, at-longestDial); j < at; j++ {
		switch r.words[j].text {
		case "hot", "cold", "warm":
			hot = hot || r.words[j+1].marks&sides != 0
		case "rinse", "wash", "bed", "hotend", "kiln", "oven", "grill":
			hot = hot || r.is(at-1, "at") && j+2 >= at-1 && f.Values[0].Number > 20
		case "water":
			hot = hot || r.is(at-1, "at") && j+1 == at-1 && f.Values[0].Number > 20
		case "room", "workshop", "shed", "loft", "plate", "chamber", "cabinet", "fridge", "incubator", "vent", "greenhouse":
			hot = hot || r.is(at-1, "at") && j+1 < at && r.in(j+1, r.known.be)
		case "flow", "return", "coolant", "bath", "ambient", "mash", "brine":
			hot = hot || j+1 < at && r.in(j+1, r.known.be)
		case "pressure", "psi", "tyre", "tyres", "gauge", "ohms", "resistance":
			return false
		}
	}
	return hot
}

// frost says whether a negative number without a unit is a temperature: "down to
// minus ten", "it's rated from minus five to plus forty". It is none beside
// another quantity.
func (r *reader) frost(f *prose.Figure, at int) bool {
	for i := range r.figures {
		g := &r.figures[i]
		if len(g.Values) > 0 && g.Values[0].Unit != "" && g.Start != f.Start && !isTime(g.Values[0].Unit) && g.Kind != prose.Percent {
			return false
		}
	}
	if f.Values[0].Number != math.Trunc(f.Values[0].Number) {
		return false
	}
	switch r.words[max(at-1, 0)].text {
	case "to", "at", "below", "from", "under", "between", "is", "was", "read", "reads", "of", "reading", "showing", "shows", "says", "got", "getting", "about", "hit", "hits", "holding", "holds", "sitting", "sits", "stays", "reached", "reaches", "'s":
		return true
	}
	return at == 0 || r.words[at].stopped || f.Kind == prose.Range
}

// onHeat reads "a hundred and forty on the hotplate".
func (r *reader) onHeat(f *prose.Figure) bool {
	const coolest = 30
	n := r.wordAt(f.End)
	if !r.is(n, "on") || r.words[n].stopped || f.Values[0].Number < coolest {
		return false
	}
	for j := n + 1; j < len(r.words) && j < n+4; j++ {
		if r.in(j, r.known.thermal) {
			return true
		}
	}
	return false
}

// ofAcid says whether pH is spoken of just before the number at i.
func (r *reader) ofAcid(i int) bool {
	const reach = 4
	for j := max(0, i-reach); j < i; j++ {
		if r.is(j, "ph") {
			return true
		}
	}
	return false
}

// jawed says whether a bare number is what jaws open to or a saw cuts: millimetres.
func (r *reader) jawed(f *prose.Figure, at int) bool {
	const least, most, reach = 3, 500, 7
	if v := f.Values[0].Number; v < least || v > most || !r.isBare(f) {
		return false
	}
	for j := max(0, at-reach); j < at; j++ {
		switch r.words[j].text {
		case "jaw", "jaws", "vice", "hole-saw", "tread", "treads":
			return true
		case "saw":
			return r.is(j-1, "hole")
		}
	}
	return false
}

// atHeat says whether a number behind a resistance is the temperature at which it
// holds: "ten k at twenty five".
func (r *reader) atHeat(f *prose.Figure, at int) bool {
	const hottest = 150
	if len(r.values) == 0 || !r.is(at-1, "at") || f.Values[0].Number > hottest || !r.isBare(f) {
		return false
	}
	last := r.values[len(r.values)-1]
	return (last.Unit == "ohm" || last.Unit == "kohm") && last.End == r.words[max(at-2, 0)].end
}
