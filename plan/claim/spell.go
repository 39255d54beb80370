package claim

import (
	"strconv"
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// numbered is what the said of a term that names a number is more than the number.
const numbered = 128

// digitWord is the number under a hundred that a word is in a code.
func (l *lexicon) digitWord(w string) (n int, ok bool) {
	said := l.terms[l.find(w)].said
	return int(said) - numbered, said >= numbered
}

// letterName is the letter that a word names, empty for none.
func (l *lexicon) letterName(w string) string {
	if said := l.terms[l.find(w)].said; said >= 'A' && said <= 'Z' {
		return string(rune(said))
	}
	return ""
}

// repeats is how often a word makes the next letter or digit: "double four"; 0 for others.
func repeats(w string) int {
	switch w {
	case "double":
		return 2
	case "triple", "treble":
		return 3
	}
	return 0
}

// spelled reads the run of spelled letters and digits at word i.
func (r *reader) spelled(i int, c *code) int {
	at := i
	for at < len(r.words) && at < i+longestCode && (at == i || !r.words[at].stopped || r.words[at].marks&stroked != 0 || r.grouped(i, at, c)) {
		next := r.spelledItem(at, c)
		if next == at {
			break
		}
		at = next
	}
	for at > i && r.words[at-1].marks&stroked != 0 {
		at--
		c.text = c.text[:len(c.text)-1]
	}
	return at
}

// grouped says whether a run goes on behind a comma, as numbers are read out in
// groups: "nine one seven, four four oh, two". "Part number nine one seven, two of
// them" ends at its comma.
func (r *reader) grouped(i, at int, c *code) bool {
	const told = 3
	raw := r.text[r.words[i].start:r.words[i].end]
	headed := c.letters == 1 && i > 0 && len(raw) == 1 && raw >= "B" && raw <= "Z" && c.singles == c.items-1 // "C, four, seven"
	dictated := c.singles == c.items && c.items >= told || headed
	if c.items < 2 && !r.is(i-1, "letter") && !headed || !r.announced(i) && !dictated || strings.TrimSpace(r.text[r.words[at-1].end:r.words[at].start]) != "," {
		return false
	}
	next := code{items: c.items, letters: c.letters}
	end := r.spelledItem(at, &next)
	for n := end; n < len(r.words) && !r.words[n].stopped; {
		if n = r.spelledItem(end, &next); n == end {
			return r.words[n].classes&(r.known.be|r.known.prep) != 0 && !r.is(n, "of")
		}
		end = n
	}
	return end > at
}

// likeLetter is a letter as captions spell it by a word of the same sound, empty for
// none; it is one only between letters and digits.
func (r *reader) likeLetter(i int) string {
	said := r.known.terms[r.words[i].id].said
	switch {
	case said >= 'a' && said <= 'z':
		said -= 'a' - 'A'
	case said < 'A' || said > 'Z' || r.words[i].text != "jay":
		return ""
	}
	return string(rune(said))
}

// homophone is the letter of such a word inside a run: letters before it and a
// letter, a digit or a stroke behind it.
func (r *reader) homophone(i int, c *code) string {
	if c.letters == 0 {
		return ""
	}
	letter := r.likeLetter(i)
	if letter == "" || i+1 >= len(r.words) || r.words[i+1].stopped || !r.isSpelled(i+1) && r.words[i+1].marks&stroked == 0 || r.is(i+1, "a") || r.is(i+1, "i") {
		return ""
	}
	return letter
}

// likened is the word behind "e as in echo" and "d for delta", i where none is.
func (r *reader) likened(i int, letter string) int {
	const longest = 3
	for j := i; j < len(r.words) && j < i+longest && !r.words[j].stopped; j++ {
		if j > i && (r.is(j-1, "for") || r.is(j-1, "in") && r.is(j-2, "as")) && strings.HasPrefix(r.words[j].text, strings.ToLower(letter)) {
			return j + 1
		}
	}
	return i
}

// spelledItem reads one letter, digit, number under a hundred or stroke.
func (r *reader) spelledItem(i int, c *code) int {
	w := r.words[i].text
	if r.words[i].marks&stroked != 0 && (c.items > 0 || r.suffixes(i)) {
		if c.items > 0 {
			c.text += string(rune(r.known.terms[r.words[i].id].said))
		}
		return i + 1
	}
	if head, tail, ok := strings.Cut(w, "-"); ok && repeats(head) > 0 {
		if n, digit := r.known.digitWord(tail); digit && n < 10 { // "double-oh"
			many := 2
			if head != "double" {
				many = 3
			}
			c.text += strings.Repeat(strconv.Itoa(n), many)
			c.items += many
			c.doubled = true
			return i + 1
		}
	}
	if letters := r.lettered(i, c); letters != "" {
		c.text += letters
		c.letters += len(letters)
		c.items += len(letters)
		return i + 1
	}
	if repeats(w) > 0 {
		if i+1 >= len(r.words) || r.words[i+1].stopped {
			return i
		}
		twice := code{}
		if end := r.spelledItem(i+1, &twice); end == i+2 && len(twice.text) == 1 {
			n := 2
			if w != "double" {
				n = 3
			}
			c.doubled = true
			c.text += strings.Repeat(twice.text, n)
			c.items += n
			c.letters += n * twice.letters
			return end
		}
		return i
	}
	letter := r.letter(i, c)
	if letter == "" {
		letter = r.homophone(i, c)
	}
	if letter != "" {
		c.text += letter
		c.letters++
		c.items++
		return r.likened(i+1, letter)
	}
	return r.spelledNumber(i, c)
}

// letter is the letter said at word i, empty for none. "a" and "i" are words
// unless the run has begun.
func (r *reader) letter(i int, c *code) string {
	w := r.words[i].text
	if len(w) == 1 && w[0] >= 'a' && w[0] <= 'z' {
		if r.is(i-1, "letter") {
			return strings.ToUpper(w)
		}
		if w == "a" && i > 0 && c.items == 0 && r.text[r.words[i].start] == 'A' && i+1 < len(r.words) && !r.words[i+1].stopped && (len(r.words[i+1].text) == 1 || r.is(i-1, "an") && r.words[i+1].number) {
			return "A"
		}
		if (w == "a" || w == "i" || w == "o" || w == "x" && i > 0 && r.words[i-1].number) && c.items == 0 {
			return ""
		}
		if w == "a" && i+1 < len(r.words) && !r.words[i+1].stopped && r.words[i+1].classes&(r.known.glue|r.known.be|r.known.prep) == 0 && !r.isSpelled(i+1) {
			return "" // "it takes a one two a day"
		}
		return strings.ToUpper(w)
	}
	if w == "kilo" && c.letters == 0 && (i+1 >= len(r.words) || !r.isSpelled(i+1)) {
		return "" // "two fifty kilo"
	}
	if w == "november" && r.yearAt(i+1) {
		return ""
	}
	return r.known.letterName(w)
}

// yearAt says whether a year in digits stands at i.
func (r *reader) yearAt(i int) bool {
	if i >= len(r.words) || len(r.words[i].text) != 4 {
		return false
	}
	n, used := prose.ParseNumber(r.words[i].text)
	return used == 4 && isYear(n)
}

// lettered gives letters that captions write as one word at the head of a code:
// "marked l m twelve" as "lm twelve".
func (r *reader) lettered(i int, c *code) string {
	w := &r.words[i]
	if letters := r.capitalised(i, c); letters != "" {
		return letters
	}
	if c.items > 0 || w.id > 0 && w.classes != 0 || len(w.text) < 2 || len(w.text) > 4 || strings.Trim(w.text, "bcdfghjklmnpqrstvwxz") != "" {
		return ""
	}
	if i+1 >= len(r.words) || r.words[i+1].stopped || !r.words[i+1].number || r.words[i+1].text[0] < 'a' || !r.announced(i) {
		return ""
	}
	return strings.ToUpper(w.text)
}

// capitalised gives letters written together in capitals before a number in words:
// "HX twelve B", "an RK forty". Short names of other things, "AC", are none.
func (r *reader) capitalised(i int, c *code) string {
	const most = 4
	w := &r.words[i]
	if head := r.text[w.start]; head < 'A' || head > 'Z' {
		return ""
	}
	raw := r.text[w.start:w.end]
	if c.items > 0 || len(raw) < 2 || len(raw) > most || strings.Trim(raw, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" || w.marks&(shorts|grades) != 0 {
		return ""
	}
	next := i + 1
	if r.words[min(next, len(r.words)-1)].marks&stroked != 0 {
		next++
	}
	if next >= len(r.words) || r.words[i+1].stopped || !r.words[next].number || r.words[next].text[0] < 'a' || r.words[next].text == "point" || strings.ToUpper(r.text) == r.text {
		return ""
	}
	if _, drive := trade.ParseDrive(raw + "2"); drive {
		return ""
	}
	for f := range r.figures {
		if g := &r.figures[f]; g.Start <= r.words[next].start && r.words[next].start < g.End && (g.Kind == prose.Quantity || g.Kind == prose.Range || g.Kind == prose.Label) {
			return "" // "AF ten mil"
		}
	}
	return raw
}

func (r *reader) isSpelled(i int) bool {
	w := r.words[i].text
	_, digit := r.known.digitWord(w)
	return len(w) == 1 || digit || r.known.letterName(w) != ""
}

// spelledNumber reads "seven", "twelve", "twenty five", "twenty-five" and
// "three hundred" as digits.
func (r *reader) spelledNumber(i int, c *code) int {
	w := r.words[i].text
	n, ok := r.known.digitWord(w)
	if !ok {
		if tens, ones, cut := strings.Cut(w, "-"); cut {
			t, okTens := r.known.digitWord(tens)
			o, okOnes := r.known.digitWord(ones)
			if okTens && okOnes && t >= 20 && o > 0 && o < 10 {
				c.text += strconv.Itoa(t + o)
				c.items += 2
				return i + 1
			}
		}
		if len(w) < 6 && strings.Trim(w, "0123456789") == "" && c.items > 0 {
			c.text += w
			c.items += len(w)
			return i + 1
		}
		return i
	}
	c.items++
	if n < 10 {
		c.singles++
		c.row++
		c.inRow = max(c.row, c.inRow)
	} else {
		c.row = 0
	}
	end := i + 1
	switch {
	case n >= 20 && end < len(r.words) && !r.words[end].stopped:
		if o, ok := r.known.digitWord(r.words[end].text); ok && o > 0 && o < 10 {
			n += o
			end++
		}
	case r.is(end, "hundred") && n > 0 && n < 10 && !r.words[end].stopped:
		n *= 100
		end++
	}
	c.text += strconv.Itoa(n)
	return end
}
