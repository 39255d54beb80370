package prose

import (
	"slices"
	"strings"
	"unicode"
)

// Orders counts what a sentence gives the hands to do: clauses that open with a
// verb of the bench in the imperative ("undo both nuts, and lift it out"), or
// that say what the speaker does now ("I'm pulling the lead off"). Questions,
// prohibitions, plans for later ("today we'll take it apart") and orders to look,
// listen, wait or write ask nothing of the hands.
//
// The verbs are common practice, no source. What they miss goes uncounted: the
// count is for guesses where a plan says nothing else.
func Orders(sentence string) int {
	if strings.HasSuffix(sentence, "?") {
		return 0
	}
	n := 0
	clause := make([]string, 0, 16)
	end := func() {
		if orders(clause) {
			n++
		}
		clause = clause[:0]
	}
	for _, word := range strings.Fields(sentence) {
		bare := Fold(strings.TrimFunc(word, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }))
		switch bare {
		case "today", "tomorrow", "later":
			return n
		case "and", "then", "or", "":
			end()
		default:
			clause = append(clause, bare)
		}
		if strings.ContainsAny(word[len(word)-1:], ",;:.!)") {
			end()
		}
	}
	end()
	return n
}

// orders holds for a clause that gives the hands something to do.
func orders(clause []string) bool {
	now := false // what is said of the speaker's next act is done next, not some day
	for len(clause) > 0 && (leads[clause[0]] || strings.HasSuffix(clause[0], "ly")) {
		now = now || clause[0] == "now" || clause[0] == "next" || clause[0] == "first"
		clause = clause[1:]
	}
	if len(clause) == 0 {
		return false
	}
	switch clause[0] {
	case "i'm", "we're":
		return len(clause) > 1 && act(fromIng(clause[1]), clause[2:])
	case "i'll", "we'll", "you":
		return now && len(clause) > 1 && act(clause[1], clause[2:])
	case "i", "we", "let's":
		return len(clause) > 1 && act(clause[1], clause[2:])
	}
	return act(clause[0], clause[1:]) || short(clause)
}

// short holds for an act without its verb, as the bench says it: "new one in",
// "both screws out", "lid off". What a thing does by itself has a verb: "the light
// comes on".
func short(clause []string) bool {
	const longest = 5
	last := slices.IndexFunc(clause, func(w string) bool { return homeward[w] })
	if last < 1 || last >= longest || last+1 < len(clause) && !onward[clause[last+1]] || noThing[clause[0]] {
		return false
	}
	return !slices.ContainsFunc(clause[:last], func(w string) bool {
		return byItself[w] || strings.HasSuffix(w, "ed") || strings.HasSuffix(w, "ing") || strings.Contains(w, "'")
	})
}

// homeward are particles that say where a part goes.
var homeward = set("in off out on back up down apart")

// onward are words that go on with where it goes to.
var onward = set("from with first again against by")

// noThing are words that begin no part's name: pronouns, verbs of talk, adverbs.
var noThing = set(`i you he she it we they this that there here what which who how why when where if because so now later early
	right straight come hang carry hold go move read stay keep log sign tune be is are was were do does did can could
	will would not no never nobody nothing just far way much and or but from into to for with of at by as than`)

// byItself are verbs of what a thing does or is, not of hands.
var byItself = set(`is are was were be been has have had comes come came goes go went gone pops pulls lifts slides falls fell drops
	turns runs ran stays starts kicks springs swings hangs sticks flies will would can could may might should must does did not
	you it he she they we me us him them`)

// act holds where a verb and what follows it are an act of the hands.
func act(verb string, after []string) bool {
	if handVerbs()[verb] {
		return true
	}
	if !handNouns()[verb] || len(after) == 0 || !afterVerb[after[0]] {
		return false
	}
	return len(after) < 2 || !slices.Contains(idioms, verb+" "+after[0]+" "+after[1])
}

// fromIng gives the verb of an -ing form: undoing, taking, cutting.
func fromIng(word string) string {
	stem, ok := strings.CutSuffix(word, "ing")
	if !ok || len(stem) < 2 {
		return word
	}
	known := func(verb string) bool { return handVerbs()[verb] || handNouns()[verb] }
	if doubled := len(stem) - 1; stem[doubled] == stem[doubled-1] && known(stem[:doubled]) {
		return stem[:doubled]
	}
	if known(stem + "e") {
		return stem + "e"
	}
	return stem
}
