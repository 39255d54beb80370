package claim

// mood is what a clause does. Cues name the moods in which they count.
type mood uint8

const (
	statement mood = 1 << iota // says something of a thing
	order                      // tells the viewer what to do: "undo the nut"
	own                        // the speaker's doing: "I'll use the small one"
	viewer                     // says what the viewer does or needs: "you want the long one"
	question
)

var moodLetters = map[rune]mood{'s': statement, 'o': order, 'f': own, 'y': viewer, '*': statement | order | own | viewer}

// moods gives every word the mood of its clause. A clause begins with the
// sentence, behind punctuation, and at a joining word that a verb or a subject
// follows. A piece without a verb of its own ("and 5 mm from the edge") goes
// with the clause before it.
func (r *reader) moods() {
	k := &r.known.classes
	current := mood(0)
	for i := 0; i < len(r.words); {
		end := r.clauseEnd(i)
		m := r.moodOf(i, end)
		if m == 0 {
			if m = current; m == 0 {
				m = statement
			}
		}
		// "if you open it" and "when I turn it" set the scene for a statement.
		for j := i; j < end; j++ {
			r.words[j].mood = m
		}
		if r.words[i].classes&k.glue == 0 || m != viewer {
			current = m
		}
		i = end
	}
}

// longestLead bounds the look for a clause's first word of weight.
const longestLead = 6

// clauseEnd is the word at which the clause that begins at i ends.
func (r *reader) clauseEnd(i int) int {
	k := &r.known.classes
	for j := i + 1; j < len(r.words); j++ {
		w := &r.words[j]
		if w.stopped {
			return j
		}
		if j > i+2 && r.startsAnew(j) {
			return j
		}
		if w.classes&k.glue != 0 && r.words[j-1].classes&(k.glue|k.lead) == 0 && r.opensClause(j) {
			return j
		}
	}
	return len(r.words)
}

// startsAnew says whether a subject of its own and its verb stand at j: captions
// set no comma in "if you skip the washer it will leak".
func (r *reader) startsAnew(j int) bool {
	k := &r.known.classes
	switch r.words[j].text {
	case "it", "they", "there", "that", "you", "i", "we":
	default:
		return false
	}
	next := j + 1
	for r.is(next, "always") || r.is(next, "never") || r.in(next, k.often) || r.is(next, "just") || r.is(next, "only") {
		next++
	}
	if !r.in(next, k.be|k.modal) && !(r.in(next, k.states) && !r.is(j, "that")) {
		return false
	}
	before := &r.words[j-1]
	return before.classes&(k.det|k.prep|k.be|k.modal|k.pronoun|k.wh|k.glue) == 0 || before.classes&k.particle != 0 && before.text != "in"
}

// opensClause says whether a verb or a subject follows the joining word at j.
func (r *reader) opensClause(j int) bool {
	k := &r.known.classes
	w := r.words[j].text
	for n := j + 1; n < len(r.words) && n <= j+longestLead; n++ {
		next := &r.words[n]
		switch {
		case next.classes&k.self != 0, next.text == "you", next.text == "it", next.text == "they", next.text == "that", next.text == "this", next.text == "there", next.text == "he", next.text == "she":
			return true
		case next.classes&(k.lead|k.glue) != 0 || next.text == "not" || next.text == "always" || next.text == "never":
			continue
		case next.classes&k.order != 0 && next.classes&k.weak == 0:
			return true
		case next.classes&k.order != 0:
			return r.hasObject(n)
		case next.classes&(k.states|k.modal) != 0:
			return true
		case next.classes&k.det != 0:
			return w != "or" && w != "and" || r.verbSoon(n)
		}
		return w == "because" || w == "if" || w == "when" || w == "until" || w == "so" || w == "but" || r.verbSoon(n)
	}
	return false
}

// verbSoon says whether a stating verb follows within a few words.
func (r *reader) verbSoon(i int) bool {
	k := &r.known.classes
	for j := i; j < len(r.words) && j < i+longestLead && (j == i || !r.words[j].stopped); j++ {
		if r.words[j].classes&(k.states|k.modal) != 0 {
			return true
		}
	}
	return false
}

// hasObject says whether what follows the word at i makes a verb of it.
func (r *reader) hasObject(i int) bool {
	k := &r.known.classes
	if i+1 >= len(r.words) || r.words[i+1].stopped {
		return true
	}
	next := &r.words[i+1]
	if next.classes&(k.be|k.modal) != 0 {
		return false
	}
	if next.classes&k.states != 0 && next.classes&(k.det|k.particle|k.prep|k.order) == 0 {
		return false
	}
	return next.classes&(k.det|k.particle|k.prep|k.pronoun|k.glue) != 0 || next.number || len(next.text) > 3 && next.text[len(next.text)-2:] == "ly" ||
		next.classes&k.colour != 0 || !r.verbSoon(i+1)
}

// phraseThenVerb says whether a few words without a joining one stand from i on
// and then a verb of what a thing is or does.
func (r *reader) phraseThenVerb(i, end int) bool {
	const longest = 5
	k := &r.known.classes
	for j := i; j < end && j < i+longest; j++ {
		w := &r.words[j]
		if w.stopped || w.classes&(k.glue|k.wh|k.self|k.particle) != 0 || w.text == "you" || w.text == "it" || w.text == "that" {
			return false
		}
		if j > i && w.classes&(k.be|k.states|k.modal) != 0 && w.classes&k.order == 0 && w.text != "'s" {
			return true
		}
	}
	return false
}

// moodOf reads the clause from word i up to end; 0 where it has no verb.
func (r *reader) moodOf(i, end int) mood {
	k := &r.known.classes
	j := i
	negated := false
	for j < end && j < i+2*longestLead {
		w := &r.words[j]
		if w.text == "look" && r.in(j+1, k.prep|k.particle) {
			return order // "look at every one"; "look, it's dead" is a word to the viewer
		}
		if w.text == "always" || w.text == "never" || w.text == "not" || w.text == "do" && j+1 < end && r.words[j+1].text == "not" {
			negated = true
			j++
			continue
		}
		if w.classes&(k.lead|k.glue) == 0 || w.text == "that" || w.text == "which" || w.text == "who" || w.text == "where" {
			break
		}
		j++
	}
	if j >= end {
		return 0
	}
	w := &r.words[j]
	if negated && w.classes&(k.pronoun|k.person|k.det|k.be|k.modal|k.states) == 0 {
		return order // "always point it away from you"
	}
	next := word{}
	if j+1 < end {
		next = r.words[j+1]
	}
	switch {
	case w.text == "let" && next.text == "us":
		return own
	case w.classes&k.self != 0:
		return own
	case w.text == "you":
		return viewer
	case w.classes&k.wh != 0 && w.text != "that" && next.classes&(k.be|k.modal) != 0 && j == 0 && w.text != "which" && w.text != "what":
		return question
	case w.classes&k.weak != 0 && !negated && next.classes&k.prep != 0 && r.phraseThenVerb(j+2, end):
		return statement // "sand in the track is behind it"
	case w.classes&k.order != 0 && (w.classes&k.weak == 0 || negated || r.hasObject(j)) && next.classes&(k.be|k.modal) == 0:
		return order
	case w.classes&k.states != 0, w.classes&k.modal != 0:
		return statement
	}
	for n := j; n < end && n < j+4*longestLead; n++ {
		if r.words[n].classes&(k.states|k.modal) != 0 || r.words[n].classes&k.be != 0 {
			return statement
		}
	}
	if w.classes&k.pronoun != 0 && j+1 < end {
		return statement
	}
	return 0
}
