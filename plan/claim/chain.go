package claim

import "strings"

// chains reads two clauses of which one follows from the other and one tells of
// a fault: "there's air in it so the pedal's soft", "when the bias drifts, the
// valves glow red", "it shudders where the belt has dried out".
func (r *reader) chains() {
	if r.about&chaining == 0 || r.found.has(Causal) || r.films() {
		return
	}
	for i := range r.words {
		if r.words[i].marks&chaining == 0 {
			continue
		}
		holds := false
		switch r.words[i].text {
		case "so":
			holds = r.thus(i)
		case "when", "if", "once", "whenever", "where", "as", "until", "unless", "because":
			holds = r.opens(i) && r.leads(i) || r.dependsOn(i)
		}
		if holds {
			r.add(Causal)
			return
		}
	}
}

// longestClause bounds the look over one clause, in words.
const longestClause = 14

// troubled says whether words from i up to end tell of a fault: of what is worn,
// leaks, gets where it should not, or does not do its work.
func (r *reader) troubled(i, end int) bool {
	k := &r.known.classes
	for j := i; j < end; j++ {
		w := &r.words[j]
		switch {
		case w.classes&(k.harm|k.symptom) != 0, w.classes&k.damage != 0 && !r.in(j-1, k.det), r.second(j, r.known.faulty):
			return true
		case w.text == "not" && j > i && r.in(j-1, k.do|k.modal|k.be|k.have):
			return true
		case r.seeps(j):
			return true
		}
	}
	return false
}

// seeps says whether water, air or the like gets somewhere at word i, or is there.
func (r *reader) seeps(i int) bool {
	if !r.second(i, r.known.seepage) {
		return false
	}
	for j := i + 1; j < len(r.words) && j < i+4 && !r.words[j].stopped; j++ {
		switch r.words[j].text {
		case "gets", "get", "got", "getting", "comes", "come", "came", "goes", "runs", "ran", "finds", "escapes", "escaped", "leaks", "past", "in", "into", "through", "under", "inside", "trapped", "out":
			return true
		}
	}
	return false
}

// clauseFrom is the end of the clause that word i stands in, by punctuation,
// joining words and moods, at most longestClause words on.
func (r *reader) clauseFrom(i int) int {
	k := &r.known.classes
	j := i + 1
	for j < len(r.words) && j < i+longestClause && !r.words[j].stopped && !(r.in(j, k.glue) && !r.is(j, "as") && !r.is(j, "than")) {
		j++
	}
	return j
}

// ofThing says whether a clause that begins at i says something of a thing: no
// order, nobody's doing, no question.
func (r *reader) ofThing(i int) bool {
	k := &r.known.classes
	if i >= len(r.words) || r.words[i].mood != statement {
		return false
	}
	for r.in(i, k.lead) && i+1 < len(r.words) {
		i++
	}
	return !r.in(i, k.self|k.wh) && !r.is(i, "you") && !r.is(i, "let") && !r.is(i, "far") && !r.is(i, "much") && !r.is(i, "many")
}

// finished says whether the clause from i up to end says that something is
// ready, in its place or done.
func (r *reader) finished(i, end int) bool {
	k := &r.known.classes
	for j := i; j < end; j++ {
		if r.in(j, k.settled) && (r.in(j-1, k.be) || r.in(j-2, k.be)) || r.is(j, "ready") {
			return true
		}
	}
	return false
}

// verbIn says whether a verb stands between i and end.
func (r *reader) verbIn(i, end int) bool {
	k := &r.known.classes
	for j := i; j < end; j++ {
		w := &r.words[j]
		if w.classes&(k.states|k.be|k.modal|k.have|k.past|k.harm|k.damage) != 0 || r.second(j, r.known.ail) || j > i && isPlural(w.text) && !r.in(j-1, k.det|k.prep) || isPast(w.text) {
			return true
		}
	}
	return false
}

// thus reads "so" between a fault and what comes of it.
func (r *reader) thus(i int) bool {
	if i < 2 || r.words[i-1].mood != statement || r.is(i+1, "that") && !r.in(i+2, r.known.be) || r.is(i+1, "it") && r.is(i+2, "will") {
		return false
	}
	if r.is(i+1, "you") {
		end := r.clauseFrom(i + 1)
		return r.meets(i+1, end) && r.troubled(i+3, end)
	}
	if !r.ofThing(i + 1) {
		return false
	}
	from := i - 1
	for from > 0 && from > i-longestClause && !r.words[from].stopped && !(r.in(from, r.known.glue) && !r.is(from, "because")) {
		from--
	}
	end := r.clauseFrom(i + 1)
	if !r.ofThing(from) || !r.verbIn(i+2, end) || !r.verbIn(from, i) && !r.is(from, "no") && !r.is(from, "too") || r.finished(i+1, end) {
		return false
	}
	return r.troubled(from, i) || r.troubled(i+1, end) && !r.denied(i+1, end) || r.ails(from, i) && r.ails(i+1, end)
}

// denied says whether a clause says what can not happen: what something is made
// for, "so it can't slip".
func (r *reader) denied(i, end int) bool {
	for j := i; j < end; j++ {
		if r.is(j, "not") {
			return true
		}
	}
	return false
}

// opens says whether the word at i opens a condition: at the head of the
// sentence or of a clause.
func (r *reader) opens(i int) bool {
	k := &r.known.classes
	if r.is(i, "as") && !(r.is(i+1, "soon") && r.is(i+2, "as")) || r.is(i, "until") || r.is(i, "because") && i > 0 {
		return false
	}
	return i == 0 || r.words[i].stopped || r.in(i-1, k.lead|k.glue) || r.second(i-1, r.known.ail)
}

// leads reads a condition of a thing at i and what the thing then does.
func (r *reader) leads(i int) bool {
	k := &r.known.classes
	from := i + 1
	if r.is(i, "as") {
		from = i + 3
	}
	if !r.ofThing(from) || r.in(from, k.lead) && !r.in(from, k.det) {
		return false
	}
	next := from + 2
	for next < len(r.words) && next < from+longestClause && !r.words[next].stopped && !r.startsAnew(next) && !(r.in(next, k.det) && !r.in(next-1, k.prep|k.det|k.be|k.glue) && !r.in(next-1, k.modal|k.have) && r.verbIn(from+1, next)) {
		next++
	}
	if next >= len(r.words) || next >= from+longestClause || !r.verbIn(from+1, next) {
		return false
	}
	if r.is(next, "then") {
		next++
	}
	end := r.clauseFrom(next)
	if r.is(next, "you") {
		return r.meets(next, end)
	}
	if !r.ofThing(next) || !r.verbIn(next+1, end) || r.finished(next, end) || r.assembled(next, end) {
		return false
	}
	return r.troubled(from, next) || r.troubled(next, end) || r.ails(next, end)
}

// assembled says whether a thing goes to its place: "it goes back in the box".
func (r *reader) assembled(i, end int) bool {
	k := &r.known.classes
	for j := i + 1; j < end; j++ {
		if (r.is(j, "goes") || r.is(j, "go") || r.is(j, "comes")) && r.in(j+1, k.particle|k.prep) {
			return true
		}
	}
	return false
}

// meets says whether the viewer only meets what comes: "you'll get that smell",
// "you lose the prime".
func (r *reader) meets(i, end int) bool {
	for j := i + 1; j < end && j < i+4; j++ {
		switch r.words[j].text {
		case "get", "hear", "smell", "lose", "notice", "end":
			return !r.is(j+1, "to") && !r.is(j+1, "it") && !r.is(j+1, "the")
		}
	}
	return false
}

// ails says whether a thing does in the clause what shows a fault.
func (r *reader) ails(i, end int) bool {
	for j := i + 1; j < end; j++ {
		if r.second(j, r.known.ail) && r.words[j].mood == statement && !r.in(j-1, r.known.det|r.known.prep) {
			return true
		}
	}
	return false
}

// dependsOn reads what befalls a thing and behind it, at i, what of: "it trips as
// soon as the element gets wet", "it shudders where the belt has dried out".
func (r *reader) dependsOn(i int) bool {
	k := &r.known.classes
	after := i + 1
	if r.is(i, "as") {
		if !r.is(i+1, "soon") || !r.is(i+2, "as") {
			return false
		}
		after = i + 3
	}
	if i < 2 || r.words[i].stopped || !r.ofThing(after) {
		return false
	}
	from := i - 1
	for from > 0 && from > i-longestClause && !r.words[from].stopped && !r.in(from, k.glue) {
		from--
	}
	if !r.ofThing(from) || r.in(i-1, k.be|k.prep) && !r.in(i-1, k.particle) || r.finished(from, i) {
		return false
	}
	end := r.clauseFrom(after)
	if !r.verbIn(after+1, end) || r.finished(after, end) {
		return false
	}
	befalls := r.ails(from, i) || r.harmed(from, i) || r.denied(from, i)
	if r.is(i, "where") || r.is(i, "until") {
		return r.harmed(from, i) && (r.troubled(after, end) || r.undergone(after, end))
	}
	return befalls && (r.troubled(after, end) || r.harmed(from, i))
}

// undergone says whether something has happened to a thing in the clause.
func (r *reader) undergone(i, end int) bool {
	for j := i + 1; j < end; j++ {
		if isPast(r.words[j].text) && r.in(j-1, r.known.have|r.known.be) {
			return true
		}
	}
	return false
}

// harmed says whether a verb of failure is what a thing does between i and end.
func (r *reader) harmed(i, end int) bool {
	k := &r.known.classes
	for j := i + 1; j < end; j++ {
		if r.words[j].mood == statement && r.in(j, k.harm) && !r.in(j-1, k.det|k.prep|k.self) && !r.is(j-1, "to") && !r.is(j-1, "not") && !r.is(j-1, "you") {
			return true
		}
	}
	return false
}

// wrought reads what damp, salt, wear and the like do to a thing: "high pH has
// scaled the sheath", "wear in the pin lets the arm flop".
func (r *reader) wrought() {
	if r.about&agent == 0 || r.found.has(Causal) {
		return
	}
	const reach = 7
	k := &r.known.classes
	for i := range r.words {
		if r.words[i].marks&agent == 0 || r.words[i].mood != statement || r.in(i-1, k.prep) && !r.second(i-2, r.known.agency) || r.in(i, k.order) && !r.in(i-1, k.det) && !r.in(i+1, k.prep) || r.is(i-1, "a") {
			continue // "a damp rag"
		}
		for j := i + 1; j < len(r.words) && j < i+reach && !r.words[j].stopped && !r.in(j, k.glue); j++ {
			w := &r.words[j]
			acts := isPast(w.text) && (r.in(j-1, k.have) || j == i+1 || isAdverb(r.words[j-1].text)) || isPlural(w.text) && !r.in(j-1, k.det|k.prep|k.have)
			if acts && w.classes&(k.be|k.have|k.do|k.prep|k.det) == 0 && !neutral[strings.TrimSuffix(w.text, "s")] && r.goal(j) {
				r.add(Causal)
				return
			}
		}
	}
}

// neutral is what water and air do where all is well.
var neutral = map[string]bool{"fill": true, "enter": true, "leave": true, "reache": true, "passe": true, "feed": true, "drive": true, "cool": true, "need": true, "take": true,
	"mean": true, "clean": true, "hold": true, "turn": true, "protect": true, "use": true, "run": true, "meet": true, "come": true, "goe": true, "show": true, "give": true, "cost": true, "want": true, "look": true, "contain": true, "support": true,
	"filled": true, "reached": true, "left": true, "dropped": true, "passed": true, "needed": true, "used": true, "included": true, "supplied": true, "measured": true}

// goal says whether the verb at i has an object: "rots the connector", "works it
// loose".
func (r *reader) goal(i int) bool {
	k := &r.known.classes
	next := i + 1
	if next >= len(r.words) || r.words[next].stopped {
		return false
	}
	switch r.words[next].text {
	case "it", "them", "everything", "things":
		return true
	case "that", "this":
		return next+1 < len(r.words) && !r.in(next+1, k.be|k.modal)
	}
	return r.in(next, k.det) && !r.in(next+1, k.period)
}
