package claim

import "strings"

// effects reads what one thing does to another to its hurt or its cure: "grit
// scored the barrel", "a stretched chain will chew up your cassette", "the bush
// was worn by sand", "cleaning the contacts cured the dropout". The subject is a
// thing or a doing; what the speaker or the viewer does is told as a story or as
// an order, and is no claim.
func (r *reader) effects() {
	k := &r.known.classes
	for i := 1; i < len(r.words); i++ {
		w := &r.words[i]
		if r.in(i-1, k.be) && !isPast(w.text) && !strings.HasSuffix(w.text, "ing") {
			continue // "it's thin"
		}
		if w.classes&(k.damage|k.mend) == 0 || w.stopped || w.mood&(statement|viewer) == 0 {
			continue
		}
		if r.suffered(i) {
			r.add(Causal)
			return
		}
		if w.mood == statement && r.object(i) && r.agent(i) || w.mood == viewer && w.classes&k.damage != 0 && r.object(i) && r.warned(i) {
			r.add(Causal)
			return
		}
	}
}

// suffered reads "was eaten away by salt" and "got burnt through by the arc".
func (r *reader) suffered(i int) bool {
	const reach = 3
	k := &r.known.classes
	if r.words[i].mood != statement || !r.in(i-1, k.be) && !r.is(i-1, "got") && !r.is(i-1, "get") && !r.is(i-1, "gets") {
		return false
	}
	for j := i + 1; j < len(r.words) && j < i+reach && !r.words[j].stopped; j++ {
		if r.is(j, "by") || r.is(j, "from") && r.in(i, k.damage) {
			return !r.in(j+1, k.self) && j+1 < len(r.words)
		}
	}
	return false
}

// object says whether the verb at i has one: "melts the coating", "chew up your
// cassette", "stains clothes".
func (r *reader) object(i int) bool {
	k := &r.known.classes
	next := i + 1
	for next < len(r.words) && !r.words[next].stopped && next < i+3 {
		switch r.words[next].text {
		case "up", "off", "out", "away", "down", "apart", "right", "straight", "clean":
			next++
			continue
		}
		break
	}
	if next >= len(r.words) || r.words[next].stopped {
		return false
	}
	switch r.words[next].text {
	case "it", "them", "itself", "themselves", "things", "everything", "anything", "both":
		return true
	}
	if r.in(next, k.det) {
		return (!r.is(next, "that") || r.in(i, k.mend)) && !r.in(next+1, k.period)
	}
	// a bare plural, where the verb can't be the noun before it: "kills bearings"
	return next == i+1 && isPlural(r.words[next].text) && r.words[next].classes&(k.prep|k.glue|k.be|k.modal|k.states|k.pronoun) == 0 && isPlural(r.words[i].text)
}

// agent says whether a thing or a doing is the subject of the verb at i. Over
// auxiliaries and adverbs it goes back to a noun.
func (r *reader) agent(i int) bool {
	const reach = 5
	k := &r.known.classes
	progressive, helped := false, false
	j := i - 1
	for ; j >= 0 && j >= i-reach && !r.words[j+1].stopped; j-- {
		w := &r.words[j]
		switch {
		case w.classes&k.be != 0 && w.text != "'s":
			progressive = true
		case w.classes&(k.modal|k.have|k.do) != 0 && w.text != "'s":
			helped = true
		case w.text == "not" || w.text == "never":
			return false
		case w.classes&(k.often|k.maybe) != 0, isAdverb(w.text), w.text == "just", w.text == "only", w.text == "always", w.text == "soon", w.text == "also", w.text == "then", w.text == "eventually":
		default:
			return r.acts(j, i, progressive || helped)
		}
	}
	return false
}

// acts says whether the word at j, the last before the verb phrase that ends at
// i, is the end of a subject that may do harm or good.
func (r *reader) acts(j, i int, helped bool) bool {
	k := &r.known.classes
	w := &r.words[j]
	verb := r.words[i].text
	if w.classes&(k.self|k.det|k.prep|k.glue|k.wh|k.lead) != 0 && w.classes&k.pronoun == 0 && w.classes&k.particle == 0 || w.text == "you" || w.text == "to" || w.text == "who" {
		return w.text == "and" && isPast(verb) && r.pastBefore(j)
	}
	if w.text == "one" && j == 0 || w.classes&k.person != 0 && w.text != "somebody" && w.text != "someone" {
		return false
	}
	if r.who(j) {
		return false
	}
	if w.classes&k.pronoun != 0 && w.text != "one" && w.text != "ones" {
		// "this breaks the seal and off it comes" is what one does; "it's been
		// draining the battery" and "that cured it" are said of a thing
		return helped && !r.is(i-1, "to") || j == 1 && strings.HasSuffix(r.words[0].text, "ing") || r.in(i, k.mend) || isPast(verb) && w.text != "that" && w.text != "this" || w.text == "which" || w.text == "that" && j > 0 && !r.words[j].stopped
	}
	return helped || isPast(verb) || isPlural(verb) || isPlural(w.text)
}

// who says whether the speaker or the viewer is the subject of the clause that
// word j stands in.
func (r *reader) who(j int) bool {
	const reach = 4
	k := &r.known.classes
	found := false
	r.clauseBefore(j+1, reach, func(n int) bool {
		w := &r.words[n]
		found = found || w.classes&k.self != 0 || w.text == "you"
		return !found && w.classes&k.glue == 0
	})
	return found
}

// pastBefore says whether a verb of what happened stands before "and": "water
// got in and rusted the race".
func (r *reader) pastBefore(i int) bool {
	const reach = 8
	k := &r.known.classes
	found, mine := false, false
	r.clauseBefore(i, reach, func(j int) bool {
		found = found || r.in(j, k.past) || isPast(r.words[j].text) || r.is(j, "had") || r.is(j, "has")
		mine = mine || r.in(j, k.self) || r.is(j, "you")
		return true
	})
	return found && !mine
}

// warned reads "turn it too far and you'll shear the pin", "if you force it you
// could crack the lens": a condition before the viewer's mishap.
func (r *reader) warned(i int) bool {
	const reach, farthest = 3, 16
	k := &r.known.classes
	helped, you := false, -1
	r.clauseBefore(i, reach, func(j int) bool {
		helped = helped || r.is(j, "will") || r.is(j, "would") || r.is(j, "can") || r.is(j, "could") || r.is(j, "might") || r.is(j, "may") || r.is(j, "risk")
		if r.is(j, "you") {
			you = j
		}
		return you < 0
	})
	if helped && you >= 0 && !r.conditioned(i) {
		for j := i + 1; j < len(r.words) && j < i+8; j++ {
			if (r.is(j, "if") || r.is(j, "unless")) && (r.is(j+1, "you") || r.is(j+1, "it")) {
				return true // "you'll strip it if you lean on it"
			}
		}
	}
	if !helped || you < 1 {
		return false
	}
	if r.is(you-1, "and") {
		return true
	}
	for j := you - 1; j >= 0 && j > you-farthest; j-- {
		if r.in(j, k.wh|k.self) && !r.is(j, "when") {
			return false
		}
		if r.is(j, "if") || r.is(j, "when") || r.is(j, "without") {
			return true
		}
	}
	return false
}

// named reads "the relay was our culprit" and "there's your problem, a broken
// wire". "There's your problem" alone points at what is seen.
func (r *reader) named() {
	k := &r.known.classes
	for i := 2; i < len(r.words); i++ {
		switch r.words[i].text {
		case "problem", "culprit", "fault", "trouble", "cause":
		default:
			continue
		}
		be := i - 1
		for be > 0 && be > i-4 && !r.in(be, k.be) {
			be--
		}
		if be < 1 || !r.in(be, k.be) || be == i-1 || r.words[be].mood == question || !r.in(be+1, k.poss) && !r.is(be+1, "the") {
			continue
		}
		points := r.is(be-1, "there") || r.is(be-1, "here") || r.is(be-1, "that") || r.is(be-1, "this")
		told := i+2 < len(r.words) && (r.in(i+1, k.det) || r.words[i+1].stopped && !r.in(i+1, k.glue|k.lead|k.self))
		if !points && !r.in(be-1, k.wh|k.self|k.pronoun) || points && told {
			r.add(Causal)
			return
		}
	}
}

func isAdverb(w string) bool { return len(w) > 4 && w[len(w)-2:] == "ly" }

// isPast holds for what looks like a past form of a regular verb, and the
// irregular ones of damage.
func isPast(w string) bool {
	if len(w) > 3 && w[len(w)-2:] == "ed" {
		return true
	}
	switch w {
	case "broke", "broken", "ate", "eaten", "burnt", "wore", "worn", "swollen", "split", "tore", "torn", "bent", "blew", "blown", "upset", "shook", "shaken", "froze", "frozen", "threw", "thrown":
		return true
	}
	return false
}
