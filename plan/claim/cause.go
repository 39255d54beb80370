package claim

import "strings"

// consequences reads cause and effect without a word for it: "if it clicks,
// it's the relay", "overtighten it and it strips", "too hot and it warps",
// "heat kills bearings".
func (r *reader) consequences() {
	k := kindsOfWord()
	condition := -1
	for i := range r.words {
		w := &r.words[i]
		if w.mood == question {
			return
		}
		switch w.text {
		case "if", "unless", "when", "without", "so", "or", "too":
			if condition < 0 && i+2 < len(r.words) {
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
		if w.mood == statement && (w.classes&k.harm != 0 && r.happens(i) && r.beyond(condition, i) || r.diagnosed(condition, i)) || r.follows(condition, i) {
			r.add(Causal)
			return
		}
	}
}

// causatives are verbs by which one thing brings about another.
var causatives = map[string]bool{"makes": true, "make": true, "made": true, "causes": true, "caused": true, "stops": true, "prevents": true, "forces": true, "means": true, "lets": true, "leaves": true}

// causes reads a noun that makes, stops or means something: "low pressure makes
// it cut out". "That makes it easier" and "which means we can" are talk.
func (r *reader) causes() {
	const reach = 3
	k := kindsOfWord()
	for i := 1; i+1 < len(r.words); i++ {
		w := &r.words[i]
		if w.classes&k.harmed != 0 && w.mood == statement && !r.in(i-1, k.have|k.be|k.self|k.det) && (r.in(i+1, k.det) || r.is(i+1, "it") || r.is(i+1, "them")) {
			r.add(Causal) // "pulling on the cord broke the strand"
			return
		}
		if !causatives[w.text] || w.mood != statement || r.words[i+1].stopped || w.stopped {
			continue
		}
		before := &r.words[i-1]
		if before.classes&(k.pronoun|k.person|k.det|k.wh|k.glue|k.modal|k.be|k.have|k.order|k.prep|k.lead) != 0 || before.text == "not" || before.text == "to" || before.text == "all" {
			continue
		}
		easy := strings.HasSuffix(r.words[i+1].text, "ing") || r.in(i+1, k.self) || r.is(i+1, "sense") || r.is(i+1, "sure")
		for j := i + 1; j < len(r.words) && j <= i+reach; j++ {
			switch r.words[j].text {
			case "can", "easier", "easy", "simple", "simpler", "possible":
				easy = true
			}
		}
		if !easy {
			r.add(Causal)
			return
		}
	}
}

// follows reads a condition on a thing and what the thing then does: "if the
// light stays on the sensor's had it", "when the belt slips you get a smell".
// What a thing is then ready for, "when it clicks it's home", is no claim.
func (r *reader) follows(condition, i int) bool {
	k := kindsOfWord()
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
	k := kindsOfWord()
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
	k := kindsOfWord()
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
	k := kindsOfWord()
	if i == 0 {
		return false
	}
	before := &r.words[i-1]
	if before.classes&(k.det|k.prep|k.be|k.self|k.order|k.glue) != 0 && before.classes&k.modal == 0 && before.text != "it" && before.text != "they" && before.text != "that" {
		return false
	}
	return before.text != "to" && before.text != "you" && before.text != "not"
}

// diagnosed reads "if it hums, it's the capacitor": a condition, then what it
// is or means.
func (r *reader) diagnosed(condition, i int) bool {
	k := kindsOfWord()
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
	return opens && (r.in(next, k.det) || r.is(next, "because") || r.is(next, "time"))
}
