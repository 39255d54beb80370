package claim

import (
	"strings"

	"fixslate/plan/prose"
)

// word is one word of a sentence, contractions opened: "it's" is two.
type word struct {
	text       string
	start, end int   // bytes of the sentence; parts of a contraction share theirs
	id         int32 // in the lexicon, 0 for a word it does not know
	classes    class
	marks      marks
	mood       mood
	stopped    bool // punctuation that ends a clause stands before it
	number     bool // digits, or a word for a number
}

// unwritten are contractions and slurred words as captions spell them.
var unwritten = map[string]string{
	"dont": "do not", "doesnt": "does not", "didnt": "did not", "isnt": "is not", "arent": "are not", "wasnt": "was not", "werent": "were not",
	"wont": "will not", "cant": "can not", "cannot": "can not", "couldnt": "could not", "shouldnt": "should not", "wouldnt": "would not",
	"havent": "have not", "hasnt": "has not", "hadnt": "had not", "thats": "that is", "ive": "i have", "im": "i am", "youre": "you are",
	"theyre": "they are", "theres": "there is", "whats": "what is", "heres": "here is", "youll": "you will", "itll": "it will",
	"thatll": "that will", "theyll": "they will", "youve": "you have", "weve": "we have", "theyve": "they have", "lets": "let us",
	"gonna": "going to", "wanna": "want to", "gotta": "got to", "dunno": "do not know", "cos": "because", "cuz": "because", "'cause": "because",
	"coz": "because", "'em": "them", "em": "them", "cause": "cause", "reckons": "reckons", "ain't": "is not", "won't": "will not",
	"can't": "can not", "shan't": "shall not", "let's": "let us", "y'all": "you all", "it'd": "it would", "nothing's": "nothing is",
}

// afterPronoun says that "'s" behind the word is "is".
var afterPronoun = map[string]bool{"it": true, "that": true, "there": true, "what": true, "here": true, "he": true, "she": true, "who": true,
	"where": true, "how": true, "this": true, "everything": true, "one": true, "something": true, "nobody": true, "everyone": true, "which": true}

var tails = []struct{ tail, word string }{
	{"n't", "not"}, {"'ll", "will"}, {"'ve", "have"}, {"'m", "am"}, {"'re", "are"}, {"'d", "would"},
}

// cut cuts a sentence into its words and puts them behind others.
func (v *lexicon) cut(list []word, text string, spans []prose.Span) []word {
	last := 0
	for _, span := range spans {
		first := len(list)
		s := v.spell(span.Of(text))
		t := &v.terms[s.id]
		// "what lets the air in" is no "let us"
		lets := s.folded == "lets" && first > 0 && list[first-1].classes&(v.lead|v.glue) == 0
		number := s.digits || t.marks&figure != 0 || s.marks && v.isNumber(s.folded)
		add := func(part string, id int32) {
			t := &v.terms[id]
			list = append(list, word{text: part, start: span.Start, end: span.End, id: id, classes: t.classes, marks: t.marks, number: number})
		}
		if t.whole == "" && !s.marks || lets {
			add(s.folded, s.id)
		} else {
			v.open(s.folded, t.whole, func(part string) { add(part, v.find(part)) })
		}
		if between := text[last:span.Start]; between != " " {
			list[first].stopped = len(between) > 1 && strings.ContainsAny(between, ",;:()?!—–…\"“”") || strings.Contains(between, " - ") || strings.Contains(between, "..")
		}
		last = span.End
	}
	return list
}

// open gives the words of a contraction, or the word itself; whole is what the
// lexicon has for it.
func (v *lexicon) open(folded, whole string, add func(string)) {
	if whole != "" {
		for part := range strings.FieldsSeq(whole) {
			add(part)
		}
		return
	}
	if at := strings.IndexByte(folded, '\''); at > 0 {
		for _, t := range tails {
			if stem, ok := strings.CutSuffix(folded, t.tail); ok && stem != "" {
				add(stem)
				add(t.word)
				return
			}
		}
		if stem, ok := strings.CutSuffix(folded, "'s"); ok && stem != "" {
			add(stem)
			if afterPronoun[stem] {
				add("is")
			} else {
				add("'s")
			}
			return
		}
	}
	add(folded)
}

// isNumber holds for words that make a figure, or may.
func (v *lexicon) isNumber(w string) bool {
	if strings.ContainsAny(w, "0123456789") || v.terms[v.find(w)].marks&figure != 0 {
		return true
	}
	head, _, hyphened := strings.Cut(w, "-")
	return hyphened && v.terms[v.find(head)].marks&figure != 0
}

// figureWords make a figure, or may.
const figureWords = `one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen
		eighteen nineteen twenty thirty forty fourty fifty sixty seventy eighty ninety hundred thousand million zero nought naught oh point half
		quarter third thirds quarters fifth fifths tenth tenths eighth eighths sixteenth sixteenths dozen couple once twice double treble triple
		percent pct minus plus`

// articled are nouns that an article makes a figure of: "an hour", "every
// third winter", "m eight".
const articled = `hour litre liter metre meter millimetre millimeter centimetre centimeter inch kilo kilogram gram volt amp ohm
		kilohm milliamp millivolt minute second day week month year bar turn degree mile foot yard pound quid euro dollar newton mil watt gallon
		pint grand thou every o'clock`
