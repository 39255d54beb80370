package prose

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"fixslate/plan/trade"
)

// Spoken gives the words a presenter says for a text: numbers, units, signs and
// abbreviations in words, British and with a spelling whose length follows the
// time it takes. Letters said by name stand as capitals with spaces between
// ("U S B", "N V two two three one"), because a letter's name is about one
// spoken syllable and plan/timing counts it as one. A number in words, and a
// unit written as a word, stay as the author wrote them.
//
// What a presenter would say is a matter of habit in places; the choices:
// decimals digit by digit ("one point five", "zero point seven"); four digits
// from 1900 to 2099 without a unit as a year; 24-hour times in figures
// ("fourteen thirty"); part numbers digit by digit but for one and two digits
// ("T twenty-five"); temperatures "degrees C"; units in the singular before the
// noun they measure ("thirteen millimetre nuts").
//
// Spoken of its own result is that result: what has been said is read again
// until nothing changes, which takes one more pass for all but mangled texts.
// Linear in the text.
func Spoken(text string) string {
	const enough = 8 // passes; texts made for it by fuzzing took four
	for range enough {
		said := say(text)
		if said == text {
			break
		}
		text = said
	}
	return text
}

// say is one pass of Spoken.
func say(text string) string {
	s := newScanner(text)
	v := voice{scanner: s}
	v.out.Grow(len(text) + len(text)/8)
	at := 0
	for e := range s.expressions() {
		v.plain(at, e.start)
		if e.inWords {
			v.plain(e.start, e.end)
		} else {
			v.say(s.said(e))
			v.tight(e.end)
		}
		at = e.end
	}
	v.plain(at, len(s.tokens))
	return v.out.String()
}

// voice writes the spoken form.
type voice struct {
	*scanner
	out  strings.Builder
	last rune // last rune written
	need bool // a space is due before the next letter or digit
}

func (v *voice) write(s string) {
	if s == "" {
		return
	}
	first, _ := utf8.DecodeRuneInString(s)
	if v.need && (unicode.IsLetter(first) || unicode.IsDigit(first)) {
		v.out.WriteByte(' ')
	}
	v.need = false
	v.out.WriteString(s)
	v.last, _ = utf8.DecodeLastRuneInString(s)
}

// say writes words that replace something, apart from the letters around them.
func (v *voice) say(words string) {
	if words == "" {
		return
	}
	if unicode.IsLetter(v.last) || unicode.IsDigit(v.last) || v.last == '.' || v.last == ')' || v.last == ',' {
		v.need = true
	}
	v.write(words)
}

// tight asks for a space if a word is glued to what was said before token i.
func (v *voice) tight(i int) {
	v.need = v.isGlued(i)
}

// plain writes tokens that are no expression: words, abbreviations, signs.
func (v *voice) plain(i, end int) {
	for i < end {
		switch v.kind(i) {
		case wordToken:
			i = v.word(i, end)
		case markToken:
			i = v.sign(i, end)
		case digitToken:
			v.say(codeDigits(v.at(i)))
			v.tight(i + 1)
			i++
		default:
			v.write(v.at(i))
			i++
		}
	}
}

// word writes one word, or the words it is short for.
func (v *voice) word(i, end int) int {
	if w := v.at(i); saidAsWritten(w) {
		v.write(w)
		return i + 1
	}
	if next, words := v.short(i, end); next > i {
		v.say(words)
		v.tight(next)
		return next
	}
	w := v.at(i)
	switch {
	case w == "OK" || w == "ok" || w == "Ok":
		v.write(matchCase(w, "okay"))
	case romanNumerals[w] > 0 && v.kind(i-1) != noToken:
		v.say(cardinalOf(uint64(romanNumerals[w])))
		v.tight(i + 1)
	case lowerSpelled[w]:
		v.say(letters(strings.ToUpper(w)))
		v.tight(i + 1)
	case isSpelledOut(w) && (v.mark(i-1) != '\'' && v.mark(i-1) != '’'):
		v.say(letters(w))
		v.tight(i + 1)
		if v.mark(i+1) == '-' && v.kind(i+2) == wordToken && (len(v.at(i+2)) == 1 || isSpelledOut(v.at(i+2))) {
			v.write(" ") // "USB-C"
			return i + 2
		}
		if v.mark(i+1) == '.' && v.kind(i+2) == wordToken {
			v.write(" ")
			return i + 2
		}
	case isPluralAcronym(w):
		v.say(letters(strings.TrimSuffix(w, "s")) + "s")
		v.tight(i + 1)
	case w == "Ø" || w == "ø":
		v.say("diameter")
		v.tight(i + 1)
	default:
		if unit, next := v.loneUnit(i, end); next > i {
			v.say(unit)
			v.tight(next)
			return next
		}
		v.write(w)
	}
	return i + 1
}

// loneUnit says a unit that stands without a number and gives the token behind
// it: "set to kΩ", "five mm", "in km/h".
func (v *voice) loneUnit(i, end int) (string, int) {
	w := v.at(i)
	if len(w) < 2 || v.mark(i-1) == '.' || v.mark(i+1) == '.' && v.kind(i+2) == wordToken {
		return "", i
	}
	if !loneUnits[w] && !strings.ContainsAny(w, "ΩΩµμ") {
		return "", i
	}
	next := i + 1
	unit, ok := trade.LookupUnit(w)
	if i+3 <= end && v.mark(i+1) == '/' && v.kind(i+2) == wordToken {
		if per, found := trade.LookupUnit(v.slice(i, i+3)); found {
			unit, ok, next = per, true, i+3
		}
	}
	if !ok {
		return "", i
	}
	number := 2.0
	if v.scanner.word(v.back(i)) == "one" || v.attributive(next) {
		number = 1
	}
	return measure{unit: unit}.says(number), next
}

// isSpelledOut says whether a word in capitals is said letter by letter.
func isSpelledOut(w string) bool {
	if len(w) < 2 || len(w) > 5 {
		return false
	}
	vowels, consonants, longest := 0, 0, 0
	for i := range len(w) {
		b := w[i]
		if b < 'A' || b > 'Z' {
			return false
		}
		if strings.IndexByte("AEIOUY", b) >= 0 {
			vowels++
			consonants = 0
			continue
		}
		consonants++
		longest = max(longest, consonants)
	}
	switch {
	case vowels == 0, spelledWords[w]:
		return true
	case spokenWords[w]:
		return false
	case len(w) <= 3:
		return true
	}
	return len(w) == 4 && longest >= 3
}

// isPluralAcronym holds for "LEDs".
func isPluralAcronym(w string) bool {
	stem, ok := strings.CutSuffix(w, "s")
	return ok && len(stem) >= 2 && isSpelledOut(stem)
}

func matchCase(like, word string) string {
	r, _ := utf8.DecodeRuneInString(like)
	if !unicode.IsUpper(r) {
		return word
	}
	return Capital(word)
}
