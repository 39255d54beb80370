package claim

import "strings"

// comparisons reads "-er than", "more ... than", "a lot quieter", "as strong
// as", and superlatives that a thing is said to be.
func (r *reader) comparisons() {
	for i := range r.words {
		w := &r.words[i]
		if w.mood == question || w.classes&(r.known.better|r.known.best) == 0 && w.text != "than" && w.text != "as" && w.text != "most" {
			continue
		}
		if r.comparedWith(i) || r.merely(i) || r.equal(i) || r.superlative(i) {
			r.add(Comparison)
			return
		}
	}
}

// comparedWith reads a comparative up to its "than". More or less than a number
// is a limit, and an order that compares tells only how: "tighter than that".
func (r *reader) comparedWith(i int) bool {
	const reach = 5
	if r.words[i].text != "than" || i == 0 || r.words[i].mood == order {
		return false
	}
	if i+1 < len(r.words) && (r.words[i+1].number && !r.is(i+1, "one") || r.is(i+1, "that") && i+2 == len(r.words)) {
		return false
	}
	if (r.is(i+1, "it") || r.is(i+1, "they")) && r.in(i+2, r.known.be|r.known.states) || r.is(i+1, "sorry") || r.is(i+1, "never") {
		return false // "it looks worse than it is"
	}
	if r.in(i+1, r.known.self) || r.is(i+1, "you") || r.is(i+1, "before") || r.is(i+1, "usual") || r.is(i+1, "done") || r.is(i+1, "likely") {
		return false // "easier than I thought"
	}
	if r.is(i-1, "more") && r.is(i-2, "no") {
		return false // "no more than it needs": a limit
	}
	if (r.is(i-1, "more") || r.is(i-1, "less") || r.is(i-1, "no")) && (r.is(i+1, "a") || r.is(i+1, "an") || r.is(i+1, "half")) {
		return false // "less than a litre"
	}
	if r.is(i-2, "no") && (r.is(i+1, "a") || r.is(i+1, "an")) {
		return false // "no bigger than a coin": a size
	}
	found := false
	r.clauseBefore(i, reach, func(j int) bool {
		w := r.words[j].text
		if w == "rather" || w == "other" || w == "often" {
			return false
		}
		found = isComparative(w, r.words[j].classes&r.known.better != 0)
		return !found
	})
	return found
}

func isComparative(w string, listed bool) bool {
	return listed || strings.HasSuffix(w, "ier") || strings.HasSuffix(w, "er") && len(w) > 4
}

// merely reads a comparative without "than" that a measure of difference shows:
// "a lot quieter", "much stronger", "lasts longer".
func (r *reader) merely(i int) bool {
	k := &r.known.classes
	if !r.in(i, k.better) || r.words[i].mood != statement {
		return false
	}
	if r.conditioned(i) || r.is(i, "easier") && (r.is(i+1, "to") || r.is(i+1, "if") && r.is(i+2, "you")) {
		return false
	}
	for j := i - 1; j > 0 && j > i-4; j-- {
		if (r.is(j, "sounds") || r.is(j, "looks") || r.is(j, "feels")) && r.in(j-1, k.pronoun) {
			return false // "that sounds much better"
		}
	}
	last := i+1 >= len(r.words) || r.words[i+1].stopped
	if r.is(i, "more") || r.is(i, "less") && !last || r.is(i, "sooner") || r.is(i, "later") || r.is(i, "lower") && r.is(i-1, "the") {
		return false
	}
	j := i - 1
	if r.is(j, "bit") || r.is(j, "little") || r.is(j, "slightly") {
		for r.in(j, k.much) || r.is(j, "a") || r.in(j, k.be) {
			j--
		}
		return j >= 0 && !r.is(j, "it") && !r.is(j, "that") && !r.in(j, k.det) // "it's a bit warmer in here"
	}
	if r.in(j, k.much) && !r.is(j, "no") && !r.is(j, "any") {
		for r.in(j, k.much) || r.is(j, "a") {
			j--
		}
		return j < 0 || !r.in(j, k.det)
	}
	if j < 0 {
		return false
	}
	if (r.is(j, "is") || r.is(j, "are")) && (r.is(j-1, "that") || r.is(j-1, "this")) {
		return false // "that's better"
	}
	switch r.words[j].text {
	case "lasts", "last", "runs", "works", "work", "holds", "is", "are", "was", "were":
		next := i + 1
		return next >= len(r.words) || r.words[next].stopped || r.in(next, k.prep) || r.in(next, k.glue) || r.is(next, "now") || r.is(next, "too")
	}
	return false
}

// conditioned says whether the clause of word i is an "if".
func (r *reader) conditioned(i int) bool {
	const reach = 8
	found := false
	r.clauseBefore(i, reach, func(j int) bool {
		found = r.is(j, "if")
		return !found
	})
	return found
}

// equal reads "as strong as the original" and "twice as long as".
func (r *reader) equal(i int) bool {
	k := &r.known.classes
	if !r.is(i, "as") || !r.in(i+1, k.asadj) || !r.is(i+2, "as") || r.words[i].mood != statement {
		return false
	}
	switch {
	case r.is(i+1, "long"), r.is(i+1, "well"), r.is(i+1, "far"):
		return r.in(i-1, k.be) || r.is(i-1, "twice") || r.is(i-1, "times") || r.is(i-1, "just") || r.is(i-1, "last") || r.is(i-1, "lasts")
	}
	return !r.figurative(i) && !r.is(i+3, "you") && !r.is(i+3, "possible")
}

// figurative says whether a figure of speech stands at word i or a little behind it: "as
// soft as a biscuit", "thin as paper". What is so many times another is measured.
func (r *reader) figurative(i int) bool {
	const reach = 6
	for j := i; j+2 < len(r.words) && j < i+reach; j++ {
		if !r.is(j+2, "as") || r.is(j-1, "twice") || r.is(j-1, "half") || r.is(j-1, "times") || r.is(j, "twice") || r.is(j, "half") || r.is(j, "times") {
			continue
		}
		switch next := j + 3; {
		case r.is(next, "a"), r.is(next, "an"):
			return !r.is(next+1, "new") && !r.is(next+1, "good") && !r.is(next+1, "proper")
		case r.isStuff(next) && (next+1 == len(r.words) || r.words[next+1].stopped || r.in(next+1, r.known.prep|r.known.glue) || r.is(next+1, "now")):
			return true
		}
	}
	return false
}

// isStuff says whether a word by itself is what a figure of speech likens to: "butter",
// "toffee". What things are made of is none: "as hard as steel" compares.
func (r *reader) isStuff(i int) bool {
	k := &r.known.classes
	if i >= len(r.words) || r.words[i].number || r.words[i].classes&(k.det|k.pronoun|k.self|k.poss|k.better|k.best|k.be|k.modal|k.prep|k.glue|k.often|k.property|k.making|k.asadj) != 0 {
		return false
	}
	switch w := r.words[i].text; w {
	case "new", "ever", "before", "usual", "possible", "normal", "original", "standard", "stock", "planned", "you", "mine", "yours", "any", "always", "advertised", "promised",
		"steel", "iron", "brass", "copper", "aluminium", "aluminum", "glass", "diamond", "oak", "concrete", "titanium", "wood", "nylon", "plastic", "cast", "lead":
		return false
	default:
		return !isPast(w) && !strings.HasSuffix(w, "ly")
	}
}

// superlative reads "it's the strongest joint", "the best way is".
func (r *reader) superlative(i int) bool {
	k := &r.known.classes
	best := r.in(i, k.best) || r.is(i, "most") && i+1 < len(r.words) && !isPlural(r.words[i+1].text) && !r.is(i+1, "of") && !r.is(i+1, "common") && len(r.words[i+1].text) > 4
	if r.in(i+1, k.idle) && !r.is(i, "weakest") && !r.is(i, "strongest") && !r.is(i, "thinnest") || !best || !r.is(i-1, "the") || r.words[i].mood&(statement|viewer) == 0 {
		return false
	}
	for j := i - 2; j >= 0 && j >= i-5 && !r.words[j+1].stopped; j-- {
		if r.in(j, k.be) {
			return true
		}
	}
	for j := i + 1; j < len(r.words) && j < i+5 && !r.words[j].stopped; j++ {
		if r.in(j, k.be) || r.is(j, "you") || r.is(j, "to") && r.is(j-1, "way") {
			return true
		}
	}
	return false
}
