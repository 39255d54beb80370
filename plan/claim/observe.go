package claim

import (
	"slices"
	"strings"

	"fixslate/plan/prose"
)

// stated says of a value at word i whether it was found on this object or is
// what the object should have: a measurement or a spec.
func (r *reader) stated(i int) {
	i = min(i, len(r.words)-1)
	if r.observed(i) {
		r.add(Measurement)
		return
	}
	r.add(Spec)
}

// observed reads by the verb: an instrument or the speaker gives a reading; the
// past tense and "is drawing" tell of one time, as do "now" and "too short"; a
// label, a sheet, an order and "should" give what is meant to be. What a thing
// has or takes in the present is so always, and no reading.
func (r *reader) observed(i int) bool {
	const reach = 9
	k := &r.known.classes
	mood := r.words[i].mood
	if mood&(order|question) != 0 {
		return false
	}
	found, meant := false, false
	r.clauseBefore(i, reach, func(j int) bool {
		w := &r.words[j]
		switch {
		case w.classes&k.modal != 0 && w.text != "can", w.text == "needs", w.text == "need", w.text == "wants", w.text == "want", w.text == "meant", w.text == "supposed", w.text == "rated", w.text == "requires":
			meant = true
		case w.text == "says" && !r.metered(j):
		case w.text == "see" && mood == own:
			found = true
		case w.classes&k.reading != 0, w.classes&k.past != 0 && !r.in(j-1, k.modal|k.be):
			found = true
		case r.in(j-1, k.have) && !r.is(j-1, "having") && (w.classes&(k.past|k.harm) != 0 || isPast(w.text) && !r.is(j-1, "'s")) && !r.is(j, "got"):
			found = true // "it's crept up", "has lost"
		case strings.HasSuffix(w.text, "ing") && len(w.text) > 4 && w.text != "during" && w.text != "spring" && w.text != "bearing" && w.text != "ring" && r.in(j-1, k.be):
			found = true
		}
		return true
	})
	switch {
	case meant:
		return false
	case found:
		return true
	case mood == own:
		return r.has(i) || r.in(i-1, k.have) || r.is(i-1, "to") && r.is(i-2, "down") || r.is(i-1, "to") && r.is(i-2, "up")
	}
	return r.standsAt(i) || r.thisOnce(i) || r.astray(i) || r.onPlace(i)
}

// astray reads how far something is from what it should be: "two mil out of
// square", "off by a degree".
func (r *reader) astray(i int) bool {
	const reach = 7
	if r.is(i-1, "by") && (r.is(i-2, "off") || r.is(i-2, "out") || r.is(i-2, "down") || r.is(i-2, "up")) {
		return true
	}
	for j := i + 1; j < len(r.words) && j < i+reach && !r.words[j].stopped; j++ {
		switch r.words[j].text {
		case "out":
			if r.is(j+1, "of") {
				switch r.words[min(j+2, len(r.words)-1)].text {
				case "true", "square", "line", "round", "level", "plumb", "parallel", "centre":
					return true
				}
			}
		case "lost", "missing", "adrift", "away":
			return r.words[i].mood == statement
		}
	}
	return false
}

// idles says whether word i ends "at rest", "on standby", "in sleep": how a thing
// was when something was read.
func (r *reader) idles(i int) bool {
	switch r.words[i].text {
	case "idle", "rest", "standby", "sleep":
		return r.is(i-1, "at") || r.is(i-1, "on") || r.is(i-1, "in")
	}
	return false
}

// onPlace reads a value without a verb and where it was taken: "nought point four
// of an ohm end to end", "on the scales it's 1.9 kilos".
func (r *reader) onPlace(i int) bool {
	const reach = 8
	k := &r.known.classes
	for j := i + 1; j < len(r.words) && j < i+reach && !r.words[j].stopped; j++ {
		switch r.words[j].text {
		case "end":
			if r.is(j+1, "to") && r.is(j+2, "end") {
				return true
			}
		case "me", "standing", "stood", "overnight":
			return true
		case "idle", "rest", "standby", "sleep":
			if r.idles(j) {
				return true
			}
		case "so":
			return (r.is(j+1, "that") || r.is(j+1, "it")) && r.in(j+2, k.be)
		}
	}
	on := false
	r.clauseBefore(i, reach, func(j int) bool {
		on = on || r.idles(j) && j+1 < i || r.in(j, k.meter) && (r.is(j-1, "the") || r.is(j-1, "my")) && r.in(j-2, k.prep)
		return !on
	})
	return on
}

// standsAt reads "the flue is at 140", "it's only 38 at the tap", "the disc is
// down to eight mil", "there's 12 V on that terminal".
func (r *reader) standsAt(i int) bool {
	const reach = 4
	k := &r.known.classes
	if r.in(i-1, k.settling) {
		return false
	}
	if r.is(i-1, "at") && (r.is(i-2, "sits") || r.is(i-2, "hovers") || r.is(i-2, "settles") || r.in(i-2, k.be)) {
		return true
	}
	j := i - 1
	for j > 0 && (r.is(j, "at") || r.is(j, "down") || r.is(j, "up") || r.is(j, "to") || r.is(j, "only") || r.is(j, "still") || r.is(j, "just") || r.is(j, "already") || r.in(j, k.about)) {
		j--
	}
	if j < i-1 && r.in(j, k.be) && !r.in(i-1, k.about) {
		return true
	}
	if r.attributive(i) {
		return false
	}
	there := false
	r.clauseBefore(i, reach, func(j int) bool {
		there = there || r.in(j, k.be) && r.is(j-1, "there")
		return !there
	})
	return there
}

// metered says whether an instrument says what stands behind word i: a label says
// what a thing is.
func (r *reader) metered(i int) bool {
	const reach = 4
	found := false
	r.clauseBefore(i, reach, func(j int) bool {
		found = found || r.in(j, r.known.meter|r.known.thermal)
		return !found
	})
	return found
}

// attributive says whether the value at i only says which thing is meant: "a 13
// amp fuse".
func (r *reader) attributive(i int) bool {
	k := &r.known.classes
	n, found := slices.BinarySearchFunc(r.figures, r.words[i].start, func(f prose.Figure, at int) int { return f.Start - at })
	if !found {
		return false
	}
	next := r.wordAt(r.figures[n].End)
	return next < len(r.words) && !r.words[next].stopped && r.words[next].classes&(k.prep|k.glue|k.be|k.det|k.pronoun|k.lead) == 0
}

// thisOnce says whether words behind the value tell of now, here, and this one:
// "twelve volts now", "two millimetres too short", "half a mil out".
func (r *reader) thisOnce(i int) bool {
	const reach = 6
	for j := i + 1; j < len(r.words) && j < i+reach && !r.words[j].stopped; j++ {
		switch r.words[j].text {
		case "now", "today", "already", "currently":
			return true
		case "too":
			return j+1 < len(r.words)
		case "on", "with":
			for n := j + 1; n < len(r.words) && n < j+4; n++ {
				if r.in(n, r.known.meter) {
					return true // "three mil on the tread gauge"
				}
			}
		case "here":
			return r.is(j-1, "in")
		case "flat", "sharp", "short", "out", "slow":
			return (j+1 >= len(r.words) || r.words[j+1].stopped) && !r.is(j-1, "the")
		}
	}
	return false
}
