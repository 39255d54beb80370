package prose

import (
	"slices"
	"strings"
	"sync"
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
	for len(clause) > 0 && (slices.Contains(leads, clause[0]) || strings.HasSuffix(clause[0], "ly")) {
		now = now || slices.Contains([]string{"now", "next", "first"}, clause[0])
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
	return act(clause[0], clause[1:])
}

// act holds where a verb and what follows it are an act of the hands.
func act(verb string, after []string) bool {
	if handVerbs()[verb] {
		return true
	}
	if !handNouns()[verb] || len(after) == 0 || !slices.Contains(afterVerb, after[0]) {
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

// leads stand before an order without changing it.
var leads = []string{"now", "next", "first", "second", "third", "last", "so", "but", "just", "please", "again", "right", "okay", "ok", "well", "also", "always", "still", "once", "more"}

// afterVerb follow a verb and no noun that opens a clause.
var afterVerb = strings.Fields("a an the this that these those it them its your my our both each every all any some one two three four five six half another what whatever new old off out on in up down back through over along round around away into onto under apart together home tight firmly gently slowly carefully with until before between across against")

// idioms open like an order to the hands and are none.
var idioms = []string{"take a look", "take a second", "take a minute", "take a moment", "take a picture", "take a photo", "take your time", "take the time", "put it another", "put that another", "set a timer", "set your timer", "mark my words", "turn up at", "hold on a", "check out my", "check out the"}

// handVerbs are work of the hands wherever they open a clause; handNouns are it
// where one of afterVerb follows, and may be things otherwise.
var (
	handVerbs = setOnDemand("undo unscrew unbolt unclip unhook unplug unlock unwind untie unfasten unthread unsolder unlatch unpin unwrap unroll unfold unstrap loosen slacken tighten retighten remove detach attach disconnect reconnect connect install reinstall refit reassemble dismantle disassemble pull push lift lower raise slide prise pry insert align realign soak pour degrease lubricate scrub wipe peel scrape strip desolder solder crimp tilt swing rotate squeeze bleed flush tuck snip discharge isolate replace refill reattach regrease swap rinse drain wiggle prop clamp tighten hammer drill stretch feed blow")
	handNouns = setOnDemand("take put set hold place lay turn press fit slip bring get give run work pop spread cut file plug brush oil grease glue tape screw clip bolt wire paint sand spray wash dry clean fill bend mark lock jack strap lever wedge pin tap twist switch roll tie tug pump pack thread hook hang knock drop tip nip mount seat offer open close shut cover check test measure start dab rub coat seal cable route empty vacuum dust heat cool charge wrap bleed break free ease line level trim level shake stir mix chisel saw plane fold flip flick trap wind crank spin")
)

func setOnDemand(words string) func() map[string]bool {
	return sync.OnceValue(func() map[string]bool { return set(strings.Fields(words)...) })
}
