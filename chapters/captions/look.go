package captions

import (
	"strings"
	"unicode/utf8"
)

// list is a list of words of one kind; a set of lists has a bit for each.
type list uint16

const (
	conjunction list = 1 << iota
	relative
	preposition
	adverbial
	particle
	leaning
	article
	auxiliary
	being
	pronoun
	numbered
	numberWord
)

func (l list) has(any list) bool { return l&any != 0 }

// listed are the lists that a word is in, folded. One table of all lists: to
// ask a dozen of them about each word was a third of cutting captions.
var listed = listings(map[list]string{
	conjunction: `and but or nor so because if when while until unless
		though although since whereas then than that which who where`,
	// Of those: what may stand behind a preposition.
	relative: `that who which where whereas`,
	preposition: `at by for from with without into onto of over under
		through across against behind before after between during inside
		outside towards toward near along around beside below above on in to
		about as past via per till except`,
	// Of those: what also stands alone, behind a verb.
	adverbial: `in on over through under by`,
	particle:  `up off out down away back apart together`,
	// Words that lean on what follows them: articles and the like, possessives,
	// prepositions (above), subject pronouns, auxiliaries, negations.
	leaning: `a an the this these those each every some any no its his
		her their our your my another both which whose what
		i you he she it we they there
		am is are was were be been being have has had do does did can could
		will would shall should may might must not never don't doesn't didn't
		can't won't isn't aren't wasn't it's that's you're we're they're i'm
		you'll we'll i'll you've we've i've let's very too more most less
		mr mrs ms dr prof st no. nos. fig. mr. mrs. ms. dr. prof. st.`,
	// Of those: what a noun follows, what a verb is made with, and what stands
	// after a verb as its object.
	article: `a an the this these those each every some any no its his
		her their our your my another`,
	auxiliary: `am is are was were can could will
		would shall should may might must isn't wasn't won't can't`,
	being:   `am is are was were be been`,
	pronoun: `it them him me us you`,
	// Nouns with a number of their own. "Lower case noun and digit" is the form
	// of the DCMP Captioning Key, "Numbers".
	numbered: `step steps part page pin pins fuse fuses size grade class
		type figure table number line lines point no nos cylinder terminal
		connector relay position stage gear bank`,
	numberWord: `one two three four five six seven eight nine ten eleven
		twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen
		twenty thirty forty fifty sixty seventy eighty ninety hundred thousand
		million half quarter zero`,
})

func listings(texts map[list]string) map[string]list {
	all := map[string]list{}
	for l, text := range texts {
		for _, word := range strings.Fields(text) {
			all[word] |= l
		}
	}
	return all
}

// look is what a word shows to the rules of parting, each word looked at once.
type look struct {
	folded  string
	lists   list
	end     rune // see ending
	counted bool // it may be a number or have one in it; most words can't
}

func lookAt(text string) look {
	folded := fold(text)
	l := look{folded: folded, lists: listed[folded], end: ending(text)}
	l.counted = l.in(numberWord)
	for i := 0; i < len(text) && !l.counted; i++ {
		// With "twenty-five", "~ten", "½" and figures of other scripts.
		l.counted = isDigit(text[i]) || text[i] == '-' || text[i] == '~' || text[i] >= utf8.RuneSelf
	}
	return l
}

// in holds for a word of one of the lists.
func (l look) in(lists list) bool { return l.lists.has(lists) }

// adverb holds for a word that leans on nothing here: before a conjunction or
// another preposition no object of it follows, nor the rest of a verb.
func (l look) adverb(next look) bool {
	if l.in(adverbial) {
		return next.in(conjunction) && !next.in(relative) || next.in(preposition) && next.folded != "to"
	}
	return l.in(being) && next.in(conjunction)
}

// owns holds for a possessive: "the driver's". What is short for "is" leans on
// what follows all the same.
func (l look) owns() bool {
	return strings.HasSuffix(l.folded, "'s") || strings.HasSuffix(l.folded, "s'")
}

// counts holds for a number of things.
func (l look) counts() bool { return l.in(numberWord) || l.counted && isNumber(l.folded) }

// content holds for a word that means something by itself.
func (l look) content() bool { return !l.in(leaning | conjunction | preposition | particle | pronoun) }

func isNumberWord(s string) bool { return listed[fold(s)].has(numberWord) }

// fold brings a word to the form in the lists: lower case, no punctuation at
// its ends.
func fold(s string) string {
	if s == "" || !isLetter(s[0]) || !isLetter(s[len(s)-1]) {
		s = strings.Trim(s, ".,;:!?\"'“”‘’()[]…")
	}
	for i := 0; i < len(s); i++ {
		if c := s[i]; c >= 'A' && c <= 'Z' || c >= utf8.RuneSelf {
			return strings.ToLower(strings.ReplaceAll(s, "’", "'"))
		}
	}
	return s
}
