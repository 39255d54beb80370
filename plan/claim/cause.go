package claim

import "strings"

// consequences reads cause and effect without a word for it: "if it clicks,
// it's the relay", "overtighten it and it strips", "too hot and it warps",
// "heat kills bearings".
func (r *reader) consequences() {
	k := &r.known.classes
	condition := -1
	if r.films() {
		return
	}
	for i := range r.words {
		w := &r.words[i]
		if w.mood == question {
			return
		}
		switch w.text {
		case "if", "whether":
			if i > 0 && r.words[i-1].marks&trying != 0 && r.words[i-1].mood != statement {
				return // "feel if it binds" asks what is to be found out
			}
		}
		switch w.text {
		case "once":
			if condition < 0 && i+2 < len(r.words) && !r.is(i+1, "in") && !r.is(i+1, "a") && !r.is(i+1, "every") && !r.is(i+1, "per") {
				condition = i
			}
		case "so":
			if condition < 0 && i > 0 && i+2 < len(r.words) {
				condition = i // at the head it opens talk, "so up we go", and names no cause
			}
		case "if", "unless", "when", "without", "or", "too", "whenever":
			if condition < 0 && i+2 < len(r.words) {
				condition = i
			}
		case "with":
			if condition < 0 && (r.is(i+1, "no") || r.is(i+1, "too") || r.is(i+1, "less") || r.is(i+1, "more")) {
				condition = i
			}
		case "and":
			if condition < 0 && i > 0 && (r.said(i, k.order) || r.words[i-1].mood == order) {
				condition = i
			}
		}
		if condition < 0 || i <= condition {
			continue
		}
		if w.text == "not" && r.is(condition, "and") && i < condition+refused && r.said(condition, k.order) && r.in(condition+1, k.pronoun|k.det) && w.mood == statement && r.in(i-1, k.modal|k.do) && i+1 < len(r.words) {
			r.add(Causal) // "glue it wet and it won't hold"
			return
		}
		if w.mood == statement && (w.classes&k.harm != 0 && r.happens(i) && r.beyond(condition, i) || r.diagnosed(condition, i)) || r.follows(condition, i) {
			r.add(Causal)
			return
		}
	}
}

// refused bounds the way from "and" to what a thing then does not do, in words.
const refused = 5

// causes reads a noun that makes, stops or means something: "low pressure makes
// it cut out", "the sun has turned the plastic brittle". "That makes it easier"
// and "which means we can" are talk.
func (r *reader) causes() {
	k := &r.known.classes
	for i := 0; i+1 < len(r.words); i++ {
		w := &r.words[i]
		if w.text == "because" && r.gives(i) {
			r.add(Causal)
			return
		}
		if i == 0 || w.marks&causative == 0 || w.mood != statement || r.words[i+1].stopped || w.stopped {
			continue
		}
		j := i - 1
		for j > 0 && r.in(j, k.have|k.modal) && !r.words[j].stopped {
			j--
		}
		before := &r.words[j]
		if before.classes&k.order != 0 && before.classes&k.weak == 0 || before.classes&(k.pronoun|k.person|k.det|k.wh|k.glue|k.modal|k.be|k.have|k.prep|k.lead) != 0 || before.text == "not" || before.text == "to" || before.text == "all" || before.text == "nobody" || before.text == "one" || r.in(i+1, k.particle) || r.is(i+1, "go") {
			continue
		}
		if !r.easy(i) && !r.sounds(i) {
			r.add(Causal)
			return
		}
	}
}

// conditional says whether the sentence tells what to make of what may be seen:
// it opens with a condition, or says what a sight means.
func (r *reader) conditional() bool {
	if len(r.words) == 0 || r.asks {
		return false
	}
	switch first := &r.words[0]; first.text {
	case "if", "when", "where", "unless", "once", "whenever", "no":
		return true
	}
	for i := range r.words {
		means := false
		switch r.words[i].text {
		case "means":
			means = true
		case "mean":
			means = i > 0
		case "tells":
			means = r.is(i+1, "you")
		case "says":
			means = r.is(i+1, "that")
		}
		if means && r.words[i].mood&(own|order) == 0 {
			return true
		}
	}
	return false
}

// easy says whether what the verb at i brings about is only ease of work.
func (r *reader) easy(i int) bool {
	const reach = 3
	if i+1 >= len(r.words) {
		return false
	}
	if strings.HasSuffix(r.words[i+1].text, "ing") || r.in(i+1, r.known.self) || r.is(i+1, "sense") || r.is(i+1, "sure") || r.is(i+1, "us") {
		return true
	}
	for j := i + 1; j < len(r.words) && j <= i+reach; j++ {
		switch r.words[j].text {
		case "can", "easier", "easy", "simple", "simpler", "possible", "room", "space":
			return true
		}
	}
	return false
}

// sounds says whether the verb at i makes no more than a thing of its own: "the
// pump makes a noise" names no cause.
func (r *reader) sounds(i int) bool {
	return (r.is(i, "makes") || r.is(i, "made") || r.is(i, "make")) && (r.is(i+1, "a") || r.is(i+1, "an") || r.is(i+1, "some") || r.is(i+1, "no"))
}

// films says whether the picture or the sound is spoken of.
func (r *reader) films() bool { return r.about&ofFilm != 0 }

// gives says whether the "because" at i gives a cause in the object. Why the
// speaker does something is talk.
func (r *reader) gives(i int) bool {
	k := &r.known.classes
	if r.words[i].mood&(own|question) != 0 || i > 0 && r.words[i-1].mood == own || r.films() {
		return false
	}
	if i == 0 && (!r.ofThing(1) || !r.leads(0) && r.words[len(r.words)-1].mood != statement) {
		return false // "because we need the room"
	}
	return !r.in(i+1, k.self) && !r.is(i+1, "you")
}

// when reads what befalls a thing and the condition behind it: "the fan stalls
// when the capacitor dries out", "it cuts out once it's warm", "you get a squeal
// if the springs are tired".
func (r *reader) when() {
	const reach, farthest = 8, 7
	k := &r.known.classes
	for i := 2; i+2 < len(r.words); i++ {
		switch r.words[i].text {
		case "when", "if", "once", "whenever", "unless", "after", "until":
		default:
			continue
		}
		befalls, somebody := false, false
		for j := i - 1; j >= 0 && j >= i-reach && !r.words[j+1].stopped; j-- {
			w := &r.words[j]
			befalls = befalls || w.mood == statement && (w.classes&k.harm != 0 && r.happens(j) || r.givesOut(j)) || w.mood == viewer && w.classes&k.symptom != 0 && r.perceived(j)
			somebody = somebody || w.classes&k.self != 0 || w.text == "you" && w.mood != viewer || w.mood == order
		}
		if !befalls || somebody {
			continue
		}
		verb := false
		for j := i + 1; j < len(r.words) && j < i+farthest; j++ {
			w := &r.words[j]
			if w.classes&k.self != 0 || w.text == "you" || w.classes&k.settled != 0 && r.in(j-1, k.be) {
				verb = false
				break
			}
			verb = verb || w.classes&(k.states|k.be|k.modal|k.harm|k.past|k.have) != 0 || isPlural(w.text)
		}
		if verb {
			r.add(Causal)
			return
		}
	}
}

// givesOut reads verbs of failing that are two words: "cuts out", "shuts down".
func (r *reader) givesOut(i int) bool {
	if !r.in(i+1, r.known.particle) {
		return false
	}
	switch r.words[i].text {
	case "cuts", "cut", "drops", "dropped", "dies", "gives", "gave", "shuts", "shut", "packs", "packed", "locks", "locked", "blows", "breaks", "falls", "fell", "dries", "dried", "fades", "goes", "went":
		return r.is(i+1, "out") || r.is(i+1, "off") || r.is(i+1, "down") || r.is(i+1, "up")
	}
	return false
}

// perceived says whether the viewer gets, hears, sees or smells the symptom at i.
func (r *reader) perceived(i int) bool {
	const reach = 4
	found := false
	r.clauseBefore(i, reach, func(j int) bool {
		switch r.words[j].text {
		case "get", "hear", "see", "smell", "notice", "feel", "have":
			found = true
		}
		return !found
	})
	return found
}

// follows reads a condition on a thing and what the thing then does: "if the
// light stays on the sensor's had it", "when the belt slips you get a smell".
// What a thing is then ready for, "when it clicks it's home", is no claim.
func (r *reader) follows(condition, i int) bool {
	k := &r.known.classes
	if !r.is(condition, "if") && !r.is(condition, "when") && !r.is(condition, "without") || i < condition+3 {
		return false
	}
	if r.words[condition].mood != statement && !r.is(condition, "without") || r.in(condition+1, k.self) || r.is(condition+1, "you") || r.is(condition+1, "necessary") || r.is(condition+1, "possible") {
		return false
	}
	if r.words[i].mood == viewer && r.is(i-1, "you") && (r.is(i, "get") || r.is(i, "hear") || r.is(i, "smell")) {
		return true
	}
	verb := r.words[i].mood == statement && r.in(i, k.states|k.modal) && !r.in(i-1, k.self)
	if !verb || !r.newSubject(condition, i) {
		return false
	}
	if (r.is(i, "goes") || r.is(i, "go") || r.is(i, "comes")) && r.in(i+1, k.particle|k.prep) || r.easy(i) {
		return false // "when it's dry it goes back in"
	}
	if (r.is(i, "has") || r.is(i, "have") || r.is(i, "needs") || r.is(i, "wants")) && r.is(i+1, "to") {
		return false
	}
	for j := i + 1; j < len(r.words) && j < i+3; j++ {
		if r.in(j, k.settled) {
			return false
		}
	}
	return !r.is(i+1, "you") && !r.in(i, k.modal) || r.is(i, "will")
}

// newSubject says whether the verb at i has a subject of its own behind the
// condition's clause.
func (r *reader) newSubject(condition, i int) bool {
	const reach = 5
	k := &r.known.classes
	for j := i - 1; j > condition+1 && j >= i-reach; j-- {
		if r.words[j].stopped {
			return !r.in(j, k.glue)
		}
		if r.in(j, k.states|k.modal) {
			return false
		}
		if (r.in(j, k.det) || r.is(j, "it") || r.is(j, "they") || r.is(j, "there")) && j > condition+2 {
			if r.in(j-1, k.glue) {
				return false // "if it fades, or if there is a smell"
			}
			return r.verbBetween(condition+1, j) || r.is(condition, "without")
		}
	}
	return false
}

func (r *reader) verbBetween(i, end int) bool {
	k := &r.known.classes
	for j := i; j < end; j++ {
		if r.in(j, k.states|k.modal|k.be) {
			return true
		}
	}
	return false
}

// beyond says whether word i stands in another clause than the condition: in "if
// it sticks, clean it" nothing is said to follow.
func (r *reader) beyond(condition, i int) bool {
	switch r.words[condition].text {
	case "if", "when", "unless":
		return r.words[condition].mood != statement || r.newSubject(condition, i)
	}
	return true
}

// happens says whether a verb of failure is what a thing does: behind a
// subject, not behind an article or "to".
func (r *reader) happens(i int) bool {
	k := &r.known.classes
	if i == 0 {
		return false
	}
	before := &r.words[i-1]
	if before.classes&(k.det|k.prep|k.be|k.self|k.order|k.glue) != 0 && before.classes&k.modal == 0 && before.text != "it" && before.text != "they" && before.text != "that" {
		return false
	}
	return before.text != "to" && before.text != "you" && before.text != "not" && before.text != "too" && before.text != "very" && before.text != "no"
}

// diagnosed reads "if it hums, it's the capacitor": a condition, then what it
// is or means.
func (r *reader) diagnosed(condition, i int) bool {
	k := &r.known.classes
	if !r.is(condition, "if") && !r.is(condition, "when") || !r.in(i, k.be) || r.said(i, k.self) || i < condition+4 {
		return false
	}
	subject := r.is(i-1, "it") || r.is(i-1, "that") || r.is(i-1, "problem") || r.is(i-1, "fault")
	if !subject || r.words[i-1].mood != statement {
		return false
	}
	// the subject opens a clause of its own, behind the condition
	opens := r.words[i-1].stopped || r.is(i-2, "then") || r.is(i-1, "problem") || r.is(i-1, "fault")
	next := i + 1
	for r.in(next, k.lead) || r.is(next, "probably") || r.in(next, k.often) || r.is(next, "not") {
		next++
	}
	return opens && !r.is(next, "this") && (r.in(next, k.det) || r.is(next, "because") || r.is(next, "time"))
}
