package claim

import (
	"slices"
	"strings"
)

// absolutes reads "always" and "never" where they say something of a thing:
// "it never leaks", "you'll never get it back". "Always wear glasses" is an
// order and "I always start here" a habit.
func (r *reader) absolutes() {
	k := &r.known.classes
	for i := range r.words {
		w := &r.words[i]
		if w.text != "always" && w.text != "never" && w.text != "ever" {
			continue
		}
		switch {
		case w.text == "never" && (i == 0 || r.words[i].stopped || r.in(i-1, k.glue)) && r.warnsOff(i+1):
			continue // "never a bigger one, and never foil"
		case i == 0 && w.text == "always" && r.is(1, "a") && !r.in(3, k.states|k.be):
			continue // "always a pleasure"
		case r.is(i+1, "gets") && (r.is(i+2, "old") || r.is(i+2, "boring")):
			continue
		case w.text == "ever" && !r.is(i-1, "not"), r.is(i-1, "almost"), r.is(i-1, "nearly"), r.is(i-1, "as"):
			continue
		case w.mood == statement:
			if !r.said(i, k.self) {
				r.add(Universal)
			}
		case w.mood == viewer:
			if r.conditioned(i) || r.is(i-1, "have") {
				continue // "if you have never done this"
			}
			if r.in(i-1, k.modal) && !r.is(i-1, "should") && !r.is(i-1, "must") || w.text == "never" && (!r.in(i+1, k.order) || r.is(i-1, "you") && (i < 2 || !r.conditioned(i-1))) || r.is(i+1, "get") {
				r.add(Universal)
			}
		}
	}
}

// warnsOff says whether a clause that goes on at i has no verb and names what not
// to take: a bigger one, or a thing without an article. "Never a leak" says
// something of a thing.
func (r *reader) warnsOff(i int) bool {
	k := &r.known.classes
	end := i
	for end < len(r.words) && (end == i || !r.words[end].stopped) {
		end++
	}
	if i >= end || r.verbIn(i, end) {
		return false
	}
	if r.in(i, k.det) {
		return r.in(i+1, k.better)
	}
	return r.words[i].classes&(k.states|k.prep|k.pronoun) == 0
}

// beliefs reads "I think it's the seal" and "perhaps the relay": what is
// believed of a thing. "I think we should start" and "maybe I'll put the kettle
// on" speak of what somebody will do.
func (r *reader) beliefs() {
	k := &r.known.classes
	for i := range r.words {
		w := &r.words[i]
		if w.mood == question {
			continue
		}
		believes := w.classes&k.believe != 0 && r.self(i)
		if !believes && (w.classes&k.maybe == 0 || w.mood == order || len(r.words) < 3) {
			continue
		}
		if !believes && r.ofViewer(i) {
			continue // "you've probably blamed the tension"
		}
		next := i + 1
		if r.is(next, "that") && !r.in(next+1, k.be) {
			next++
		}
		if !believes && i == 0 && r.is(next, "should") && (r.in(next+3, k.poss) || r.in(next+4, k.poss) || r.in(next+2, k.poss)) {
			continue // "probably should have had my glasses on"
		}
		if believes && r.filmed(next) {
			continue // "I think the light's better from this side"
		}
		if believes && (r.is(next, "about") || r.is(next, "of") || r.is(next, "it") && r.is(next+1, "over")) || r.planned(next) || !believes && r.planned(i-2) {
			continue
		}
		r.add(Hedge)
	}
}

// ofViewer says whether what the viewer did, does or thinks is what the word at i
// holds likely.
func (r *reader) ofViewer(i int) bool {
	return (r.is(i-1, "you") || r.is(i-2, "you") && r.in(i-1, r.known.have|r.known.be|r.known.modal)) && !r.in(i+1, r.known.seeing)
}

// filmed says whether the film is what is spoken of from word i on.
func (r *reader) filmed(i int) bool {
	k := &r.known.classes
	for r.in(i, k.det) {
		i++
	}
	return r.in(i, k.filming) && (!r.is(i, "light") && !r.is(i, "screen") && !r.is(i, "focus") || r.in(i+1, k.be) && r.in(i+2, k.better))
}

// self says whether the speaker is the subject of the verb at i.
func (r *reader) self(i int) bool {
	const reach = 4
	k := &r.known.classes
	for j := i - 1; j >= 0 && j >= i-reach && !r.words[j+1].stopped; j-- {
		w := &r.words[j]
		if w.classes&k.self != 0 {
			return true
		}
		if w.classes&(k.modal|k.do) == 0 && w.text != "not" && w.text != "just" && w.text != "really" && w.text != "still" && w.text != "always" && w.text != "also" && w.text != "honestly" && w.text != "am" {
			return false
		}
	}
	return false
}

// planned says whether somebody's doing follows: "we should", "I'll", "you can",
// "you could".
func (r *reader) planned(i int) bool {
	k := &r.known.classes
	if i < 0 || !r.in(i, k.self) && !r.is(i, "you") && !r.is(i, "that") {
		return false
	}
	if r.is(i, "that") && r.in(i+1, k.be) {
		switch end := i + 2; {
		case r.is(end, "it"), r.is(end, "all"), r.is(end, "everything"), r.is(end, "enough"), r.is(end, "us"), r.is(end, "me"):
			return end+1 >= len(r.words) || r.words[end+1].stopped
		}
	}
	if r.in(i, k.self) && i+1 < len(r.words) && strings.HasSuffix(r.words[i+1].text, "ed") && !r.words[i+1].stopped {
		return true // "I think I dropped one"
	}
	if r.in(i, k.self) && r.in(i+1, k.be) {
		return true // "I think we're done"
	}
	if r.in(i+1, k.modal) {
		return r.is(i+1, "should") || r.is(i+1, "can") && r.is(i+2, "see") || !r.is(i+2, "find") && !r.is(i+2, "see") && !r.is(i+2, "get")
	}
	if r.is(i, "that") {
		return false
	}
	return r.is(i+1, "need") || r.is(i+1, "am") || r.is(i+1, "are") && r.is(i+2, "going") || r.is(i+1, "want")
}

// nobodies reads "nobody makes this any more"; what nobody did to the speaker
// is no claim.
func (r *reader) nobodies() {
	k := &r.known.classes
	for i := range r.words {
		if !r.is(i, "nobody") && !r.is(i, "no-one") && !(r.is(i, "no") && r.is(i+1, "one")) || r.words[i].mood != statement {
			continue
		}
		if r.is(i-1, "where") || (r.is(i-1, "so") || r.is(i-1, "that") && r.is(i-2, "so")) && (r.is(i-1, "that") || r.in(i+1, k.modal) || r.words[0].mood == order) {
			continue // "where nobody can step on it", "so nobody can pull it": what for
		}
		if r.in(i+1, k.prep) && !r.verbIn(i+1, r.clauseEnd(i)) {
			continue // "nobody near the blade": how it is to be
		}
		if r.happened(i + 1) {
			continue
		}
		mine := r.is(i-2, "now") || r.is(i-1, "now") // "from now on nobody pulls it"
		for j := i + 1; j < len(r.words) && j < i+5; j++ {
			mine = mine || r.in(j, k.self) || r.is(j, "me") || r.is(j, "us")
		}
		if !mine {
			r.add(Universal)
		}
	}
}

// happened says whether what people did once follows: "nobody told the neighbours",
// "nobody had opened it".
func (r *reader) happened(i int) bool {
	for r.is(i, "ever") || r.is(i, "really") || r.is(i, "else") || r.is(i, "had") && i+1 < len(r.words) {
		i++
	}
	switch {
	case i >= len(r.words):
		return false
	case r.is(i-1, "had"):
		return true
	}
	switch w := r.words[i].text; w {
	case "told", "knew", "saw", "said", "heard", "thought", "came", "went":
		return true
	case "made", "produced", "designed", "rated", "tested", "used", "bothered":
		return false // "nobody made spares for it"
	default:
		return isPast(w)
	}
}

// noneOfThem reads a subject with "no": "no boiler of this age is without
// sludge"; and "everything" as what a thing does something to: "sticks to
// anything". "No problem" and "that's everything" are talk.
func (r *reader) noneOfThem() {
	const reach = 7
	k := &r.known.classes
	for i := range r.words {
		if r.words[i].mood != statement {
			continue
		}
		switch r.words[i].text {
		case "no":
			if i > 0 && (!r.words[i].stopped && !r.in(i-1, k.glue|k.lead) || r.is(i-1, "that") || r.is(i-1, "so")) || !r.deniable(i+1) {
				continue
			}
			if r.is(i-1, "and") && (r.is(0, "it") || r.words[0].mood == order || !r.verbIn(0, i-1)) {
				continue // "it comes back, and no crack opens", "full sun, and no water comes": what is seen
			}
			for j := i + 2; j < len(r.words) && j < i+reach && !r.words[j].stopped; j++ {
				if r.in(j, k.states|k.modal|k.harm) && !r.in(j-1, k.prep|k.det) {
					if r.words[j].marks&causative != 0 {
						return // "no flash means the coil is dead"
					}
					if r.is(j, "may") {
						return // an order: "no cable may be trapped"
					}
					r.add(Universal)
					return
				}
			}
		case "anything", "everything", "anywhere", "everywhere", "anyone", "anybody":
			if i > 1 && (r.in(i-1, k.prep) || r.is(i-1, "absolutely") || isPlural(r.words[i-1].text)) && !r.in(i-1, k.be) && !r.said(i, k.self|k.be) && !r.is(i+1, "else") && r.verbal(i) {
				r.add(Universal)
				return
			}
		}
	}
}

// deniable says whether a noun that "no" may deny stands at i.
func (r *reader) deniable(i int) bool {
	k := &r.known.classes
	if i >= len(r.words) || r.words[i].classes&(k.self|k.pronoun|k.det|k.prep|k.be|k.modal|k.glue|k.lead|k.better) != 0 {
		return false
	}
	switch r.words[i].text {
	case "problem", "problems", "need", "worries", "idea", "rush", "matter", "point", "sense", "hurry", "use", "doubt", "wonder", "luck", "good", "way", "thanks", "chance", "sign":
		return false
	}
	return true
}

// verbal says whether a verb of a thing stands within a few words before i.
func (r *reader) verbal(i int) bool {
	found := false
	r.clauseBefore(i, 4, func(j int) bool {
		found = found || r.in(j, r.known.states|r.known.modal)
		return !found
	})
	return found
}

// said says whether a word of a class stands in the few words before i.
func (r *reader) said(i int, c class) bool {
	const reach = 3
	found := false
	r.clauseBefore(i, reach, func(j int) bool {
		found = found || r.in(j, c)
		return !found
	})
	return found
}

// modals reads "it might be the relay", "that should be about 25", "it must be
// the seal": of a thing. "You should", "we could" are instruction; "the fan
// could start" and "it may be hot" are how a caution is worded; "should"
// without a figure states what is expected.
func (r *reader) modals() {
	k := &r.known.classes
	for i := range r.words {
		w := &r.words[i]
		if w.classes&k.modal == 0 {
			r.inference(i)
			continue
		}
		switch w.text {
		case "might", "may", "could", "should", "ought", "would":
		default:
			r.inference(i)
			continue
		}
		if w.mood&(statement|order) == 0 || r.said(i, k.self) || r.is(i-1, "you") || r.is(i-2, "you") || w.text == "may" && (r.month(i) || r.forbids(i)) || r.cautions(i) {
			continue
		}
		if i == 0 && !r.in(1, k.order|k.be|k.have|k.lead) || r.in(i-1, k.det) && !r.in(i-1, k.pronoun) {
			continue // "could you", "the might"
		}
		if w.text == "could" && !r.is(i+1, "have") && !r.is(i+2, "have") && r.bygone() {
			continue
		}
		switch w.text {
		case "should", "ought", "would":
			if !r.valueFrom(i) {
				continue
			}
			if w.text == "would" && !r.is(i+1, "be") {
				continue
			}
		}
		r.add(Hedge)
	}
}

// bygone says whether the sentence tells of a time that is over: "it couldn't do that
// yesterday" is what was seen.
func (r *reader) bygone() bool {
	for i := range r.words {
		switch r.words[i].text {
		case "yesterday", "ago":
			return true
		case "morning", "night", "week", "month", "year", "time":
			if r.is(i-1, "last") || r.is(i-1, "this") && r.is(i, "morning") {
				return true
			}
		}
	}
	return false
}

// forbids says whether "may" at i denies leave: "no cable may be trapped".
func (r *reader) forbids(i int) bool {
	found := false
	r.clauseBefore(i, 5, func(j int) bool {
		found = found || r.is(j, "no") || r.is(j, "nothing") || r.is(j, "nobody") || r.is(j, "none")
		return !found
	})
	return found
}

// month says whether "may" at i is a month: "on the second of May", "last May".
func (r *reader) month(i int) bool {
	switch {
	case i == 0, i+1 < len(r.words) && r.words[i+1].number:
		return true
	}
	switch r.words[i-1].text {
	case "in", "of", "since", "until", "till", "last", "next", "early", "late", "by", "from", "th", "nd", "st":
		return true
	}
	return r.text[r.words[i].start] == 'M' && i > 0 && !r.words[i].stopped
}

// inference reads "it must be the relay" and "it has to be a bad earth".
func (r *reader) inference(i int) {
	k := &r.known.classes
	be := i + 1
	switch {
	case r.is(i, "must"):
	case (r.is(i, "has") || r.is(i, "got")) && r.is(i+1, "to"):
		be = i + 2
	default:
		return
	}
	if r.is(be, "have") && r.is(i, "must") && r.words[i].mood == statement && !r.felt(be) {
		r.add(Hedge)
		return
	}
	if !r.is(be, "be") || r.words[i].mood != statement || be+1 >= len(r.words) {
		return
	}
	subject := i == 0 || r.is(i-1, "it") || r.is(i-1, "that") || r.is(i-1, "this") || r.is(i-1, "'s")
	if subject && r.in(be+1, k.det) && !r.words[be+1].number {
		r.add(Hedge)
	}
}

// felt says whether what must have been is how it was for somebody: "that must
// have been annoying".
func (r *reader) felt(have int) bool {
	if !r.is(have+1, "been") {
		return false
	}
	return have+2 < len(r.words) && r.words[have+2].marks&feelings != 0
}

// cautions says whether a modal speaks of danger to somebody: the way warnings
// are worded.
func (r *reader) cautions(i int) bool {
	const reach = 6
	k := &r.known.classes
	for j := i + 1; j < len(r.words) && j <= i+reach && !r.words[j].stopped; j++ {
		if r.in(j, k.perilous) && r.in(j-1, k.be) || r.in(j, k.hurt) && (r.in(j+1, k.flesh) || j == i+1) || r.in(j, k.flesh) && !r.is(j, "you") {
			return true
		}
	}
	return false
}

// valueFrom says whether a value stands behind word i in its clause.
func (r *reader) valueFrom(i int) bool {
	const reach = 12
	if i >= len(r.words) {
		return false
	}
	end := len(r.text)
	for j := i + 1; j < len(r.words) && j <= i+reach; j++ {
		end = r.words[j].end
		if r.words[j].stopped {
			break
		}
	}
	first, _ := slices.BinarySearchFunc(r.values, r.words[i].end, func(v Value, at int) int { return v.Start - at })
	return first < len(r.values) && r.values[first].Start < end
}

// approximations reads "about", "around", "a good" before a value: a hedge,
// but in an order ("turn it about a quarter").
func (r *reader) approximations() {
	k := &r.known.classes
	for _, v := range r.values {
		i := r.wordAt(v.Start)
		before := i - 1
		if r.is(before, "a") || r.is(before, "an") || r.is(before, "the") {
			before--
		}
		if before < 0 || r.words[before].mood == order && !r.found.has(Hedge) || r.words[before].mood == own && r.is(1, "did") {
			continue
		}
		vague := r.in(before, k.about) || r.is(before, "good") && r.is(before-1, "a") || r.is(before, "like") && (r.is(before-1, "something") || r.is(before-1, "more")) ||
			r.is(before, "say") || r.is(before, "to") && r.is(before-1, "close") || r.is(before, "near") || r.is(before, "towards")
		if r.in(r.wordAt(v.End), k.better) && v.Part == "" && r.words[i].mood == statement {
			r.add(Comparison) // "six decibels quieter"
		}
		vague = vague || r.is(before, "it") && r.is(before-1, "call")
		if vague || strings.Contains(r.text[v.Start:v.End], "~") || v.Start > 0 && strings.HasSuffix(strings.TrimRight(r.text[:v.Start], " "), "~") || strings.Contains(v.Of(r.text), " odd") ||
			strings.HasPrefix(r.text[v.End:], "-odd") || strings.HasPrefix(r.text[v.End:], "ish") || strings.HasPrefix(r.text[v.End:], "-ish") || r.is(r.wordAt(v.End), "odd") {
			r.add(Hedge)
		}
	}
}
