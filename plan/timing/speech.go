package timing

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Rate is how fast someone speaks.
type Rate struct {
	CharactersPerSecond float64 // of the spoken form, pauses apart
	Comma               float64 // seconds of a full pause at a comma, colon, dash or bracket
	Sentence            float64 // seconds of a full pause at a sentence's end
}

// proseWPM is the rate of ordinary prose read aloud, pauses included: 225,715
// words in 23 h 55 min 17 s (LJ Speech dataset, README, table "Statistics";
// the division is ours: 157.3). [voice] wpm is measured against it.
const proseWPM = 225715.0 / (86117.0 / 60)

// DefaultRate is the presenter nobody has measured yet.
//
// LJ Speech's 1,308,674 characters give 15.2 characters a second with the
// pauses inside. Here pauses stand apart, so the rate between them is higher:
// it was raised until ordinary prose comes out at proseWPM again
// (TestProseRate). Sentence: 0.6 s was judged the most natural pause at
// punctuation (Liu et al. 2022, Front. Psychol. 13:778018). Comma: 0.2 to
// 0.4 s is common practice, no source.
func DefaultRate() Rate {
	return Rate{CharactersPerSecond: 17.1, Comma: 0.3, Sentence: 0.6}
}

// AtWPM is the rate slowed or sped up, pauses too, so that ordinary prose
// comes out at wpm where r gives proseWPM. A wpm of zero or less changes
// nothing.
func (r Rate) AtWPM(wpm float64) Rate {
	if wpm <= 0 {
		return r
	}
	f := wpm / proseWPM
	return Rate{r.CharactersPerSecond * f, r.Comma / f, r.Sentence / f}
}

// Seconds is how long it takes to say a text given in its spoken form, the
// pause after its last word included, so that lines add up:
// Seconds("One. Two.") is Seconds("One.") + Seconds("Two.").
//
// Method: characters, spaces and punctuation included, divided by the rate,
// plus pauses. Counting characters of the spoken form halves the error of
// counting words; syllables did no better and want a dictionary. Two words are
// longer than they are spelled: the name of a letter and a number word (see
// weight). A pause is shorter after a short phrase (see Rate.after). Cost:
// linear. On the 100 dev lines of FIXSLATE_DATA the mean error is 4.9 to
// 5.7 % for three synthetic voices (TestSpeechData); people vary more.
func Seconds(speak string, r Rate) float64 {
	seconds, _ := r.speech(speak)
	return seconds
}

// Rest is the part of Seconds that is the pause after the last word.
func Rest(speak string, r Rate) float64 {
	_, rest := r.speech(speak)
	return rest
}

// speech is Seconds and Rest.
func (r Rate) speech(speak string) (seconds, rest float64) {
	for _, p := range phrases(speak) {
		rest = r.after(p)
		seconds += p.weight/r.CharactersPerSecond + rest
	}
	return seconds, rest
}

// phrase is a stretch of speech up to a pause.
type phrase struct {
	characters int     // as spelled
	weight     float64 // characters it takes as long as
	sentence   bool    // the pause after it is a sentence's, else a comma's
}

// fullPhrase is the length in characters from which a phrase is followed by a
// full pause. Pauses under 0.3 s get much likelier where phrases have ten
// syllables or fewer (Zvonik and Cummins, Eurospeech 2003), the phrase before
// the pause counting more (Kentner, Interspeech 2007). Ten syllables are about
// 40 characters; on the dev lines 30 to 50 did about equally well, 30 best.
const fullPhrase = 30

// after is the pause after a phrase: half of the full one after the shortest
// phrase, all of it from fullPhrase characters on.
func (r Rate) after(p phrase) float64 {
	full := r.Comma
	if p.sentence {
		full = r.Sentence
	}
	return full * (0.5 + float64(0.5*min(1, float64(p.characters)/fullPhrase)))
}

// phrases cuts a text at its pauses. A line's end is a sentence's end unless a
// comma stands there. White space between phrases is the pause and is not
// counted again.
func phrases(speak string) []phrase {
	words := strings.Fields(strings.ReplaceAll(speak, "—", " — "))
	var all []phrase
	var now phrase
	end := func(sentence bool) {
		if now.characters > 0 {
			now.sentence = sentence
			all = append(all, now)
		}
		now = phrase{}
	}
	for i, word := range words {
		if strings.HasPrefix(word, "(") {
			end(false)
		}
		if now.characters > 0 {
			now.characters++ // the space before
			now.weight++
		}
		now.characters += utf8.RuneCountInString(word)
		now.weight += weight(words, i)
		switch pauseAfter(word) {
		case '.':
			end(true)
		case ',':
			end(false)
		}
	}
	end(true)
	return all
}

// pauseAfter is '.' for a word at a sentence's end, ',' for one before a
// shorter pause, 0 for neither.
func pauseAfter(word string) rune {
	if word == "-" || word == "–" || word == "—" {
		return ','
	}
	bare := strings.TrimRight(word, "\"'”’»")
	switch {
	case strings.HasSuffix(bare, ")"):
		if inner := pauseAfter(strings.TrimRight(bare, ")")); inner == '.' {
			return '.'
		}
		return ','
	case strings.HasSuffix(bare, "."), strings.HasSuffix(bare, "!"), strings.HasSuffix(bare, "?"), strings.HasSuffix(bare, "…"):
		return '.'
	case strings.HasSuffix(bare, ","), strings.HasSuffix(bare, ";"), strings.HasSuffix(bare, ":"):
		return ','
	}
	return 0
}

// weight is how many characters a word takes as long as.
//
// The name of a letter ("see", "ell", "double u") is about three characters
// longer than the letter. A number word takes about one character more than it
// is spelled with: it is all content and said in full, where most words as
// short are "the" and "of". Both were measured on the dev lines.
func weight(words []string, i int) float64 {
	w := float64(utf8.RuneCountInString(words[i]))
	bare := strings.TrimFunc(words[i], unicode.IsPunct)
	if isLetterName(words, i, bare) {
		return w + 3
	}
	for part := range strings.SplitSeq(strings.ToLower(bare), "-") {
		if numberWord(part) {
			w++
		}
	}
	return w
}

// isLetterName holds for a capital standing alone. "I" is the pronoun; "A" is
// the article unless the word beside it is a letter's name.
func isLetterName(words []string, i int, bare string) bool {
	lone := func(s string) bool {
		return len(s) == 1 && s[0] >= 'A' && s[0] <= 'Z' && s != "I"
	}
	if !lone(bare) || bare != "A" {
		return lone(bare)
	}
	beside := func(j int) bool {
		if j < 0 || j >= len(words) {
			return false
		}
		s := strings.TrimFunc(words[j], unicode.IsPunct)
		return s != "A" && lone(s)
	}
	return beside(i-1) || beside(i+1)
}

func numberWord(word string) bool {
	switch word {
	case "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
		"eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
		"twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety",
		"hundred", "thousand", "million", "point", "half", "quarter":
		return true
	}
	return false
}
