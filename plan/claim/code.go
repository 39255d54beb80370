package claim

import (
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// code is a part number said letter by letter and digit by digit.
type code struct {
	text           string
	letters, items int
	singles        int  // digits said one by one
	row, inRow     int  // so many of them in a row now, and at most
	doubled        bool // a letter or digit was told by "double"
}

// longestCode bounds the words of a spelled code.
const longestCode = 24

// codes finds part numbers that are spelled out: "k r seven one nine zero", "six
// two oh nine two r s", "double four seven dash bee". A run is a code if it
// mixes letters and digits, three or more in all, or if "part number", "code" or
// the like announces it.
func (r *reader) codes() {
	for i := 0; i < len(r.words); {
		if w := &r.words[i]; !w.number && len(w.text) > 1 && w.marks&spells == 0 && !(len(w.text) < 5 && i+1 < len(r.words) && (r.words[i+1].number || r.words[i+1].marks&stroked != 0)) && !(w.marks&stroked != 0 && r.suffixes(i)) {
			i++
			continue
		}
		var c code
		end := r.spelled(i, &c)
		if end == i {
			i++
			continue
		}
		if r.isCode(i, end, &c) {
			span := prose.Span{Start: r.words[i].start, End: r.words[end-1].end}
			r.value(Value{Part: c.text, Span: span}, PartNumber)
			r.spellings = append(r.spellings, span)
		}
		i = end
	}
}

// isCode judges a run by what it is made of and what announces it.
func (r *reader) isCode(i, end int, c *code) bool {
	announced := r.announced(i)
	digits := strings.ContainsAny(c.text, "0123456789")
	if r.words[i].marks&stroked != 0 {
		return digits
	}
	dashed := false // "sixty dash seven"
	for j := i + 1; j < end-1; j++ {
		dashed = dashed || r.is(j, "dash") || r.is(j, "hyphen")
	}
	if digits && dashed {
		return true
	}
	if digits && !announced && r.dictated(i, end, c) {
		return true
	}
	if !digits || c.items < 3 && !(announced && c.letters > 0) && !r.capitalCode(i, end) {
		return false
	}
	if c.letters == 0 {
		return (announced || c.doubled) && c.items > 3
	}
	if c.items == 2 && r.capitalCode(i, end) {
		return true
	}
	last := r.words[end-1].text
	if c.letters == 1 && !announced && (last == "v" || last == "a" || last == "w" || last == "m" || last == "c" || last == "f" || last == "k") {
		return false // "two three zero v"
	}
	return c.items > 3 || c.letters > 1 || announced
}

// suffixes says whether a stroke at i is said of the end of a number: "the suffix is
// dash seven".
func (r *reader) suffixes(i int) bool {
	const reach = 6
	found := false
	r.clauseBefore(i, reach, func(j int) bool {
		found = found || r.is(j, "suffix") || r.is(j, "ending") || r.is(j, "ends") || r.is(j, "revision")
		return !found
	})
	return found && i+1 < len(r.words) && r.isSpelled(i+1)
}

// dictated judges a run that nothing announces by its form alone: five digits or more
// of which two are given one by one are no number; nor is a letter before three
// digits, or between digits, unless it stands for a unit.
func (r *reader) dictated(i, end int, c *code) bool {
	const longest, most, few = 5, 4, 3
	if end < len(r.words) && !r.words[end].stopped {
		w := r.words[end].text
		if _, unit := trade.LookupUnit(w); unit && len(w) > 1 || measureUnit(singular(w)) != "" || isPlural(w) || r.words[end].marks&fine != 0 {
			return false
		}
	}
	for j := i; j < end; j++ {
		if r.is(j, "hundred") || r.is(j, "by") {
			return false
		}
	}
	digits := len(c.text) - c.letters
	last := c.text[len(c.text)-1]
	lettered := last >= 'A' && last <= 'Z'
	switch {
	case strings.Contains("12345678910", c.text), strings.Contains("10987654321", c.text):
		return false // "three, two, one"
	case c.letters == 0:
		return digits >= longest && c.inRow >= 2 && end-i >= few
	case c.letters > 1 || digits < few:
		return false
	case lettered:
		return digits >= most && c.inRow >= 2 || c.inRow >= most
	}
	at := strings.IndexFunc(c.text, func(b rune) bool { return b >= 'A' && b <= 'Z' })
	if at == 0 {
		return r.in(i-1, r.known.det) || r.in(i-1, r.known.be) || r.is(i-1, "says") || r.is(i-1, "order") || r.is(i-1, "for") || i > 0 && r.text[r.words[i].start] == c.text[0] && strings.ToUpper(r.text) != r.text
	}
	return !strings.ContainsRune("UNRXKWMVAPF", rune(c.text[at])) || strings.ContainsRune(r.text[r.words[i].start:r.words[end-1].end], rune(c.text[at]))
}

// capitalCode reads "the B twenty two": a capital inside a sentence and a number that
// has no unit and is no label.
func (r *reader) capitalCode(i, end int) bool {
	w := &r.words[i]
	raw := r.text[w.start:w.end]
	if i == 0 || len(raw) != 1 || raw < "B" && !r.is(i-1, "an") || raw > "Z" || raw == "I" || raw == "M" || raw == "X" || raw == "O" || strings.ToUpper(r.text) == r.text || end != i+2 && end != i+3 {
		return false
	}
	if _, drive := trade.ParseDrive(raw + "20"); drive {
		return false
	}
	for f := range r.figures {
		if g := &r.figures[f]; g.Start < r.words[end-1].end && g.End > w.start && g.Kind != prose.Count && g.Kind != prose.PartNumber {
			return false
		}
	}
	return r.in(i-1, r.known.det) && !(end < len(r.words) && !r.words[end].stopped && isPlural(r.words[end].text))
}

// announced says whether the words before say that a code follows.
func (r *reader) announced(i int) bool {
	const reach = 5
	found := false
	r.clauseBefore(i, reach, func(j int) bool {
		switch r.words[j].text {
		case "number", "part", "code", "reference", "ref", "serial", "stamped", "marked", "model", "catalogue", "catalog", "sku", "designation", "letter", "sticker", "label", "labelled", "ending":
			found = true
		case "step", "page", "chapter":
			return false
		}
		return !found
	})
	return found
}

// coded says whether a spelled code covers a figure. Both come in the order of
// the text, so passed codes are dropped.
func (r *reader) coded(s prose.Span) bool {
	for len(r.spellings) > 0 && r.spellings[0].End <= s.Start {
		r.spellings = r.spellings[1:]
	}
	return len(r.spellings) > 0 && r.spellings[0].Start < s.End
}

// dashed takes "33-814" for a part number where a code is announced, or where
// the second number is far from the first, as no range is.
func (r *reader) dashed(f *prose.Figure, at int) bool {
	text := f.Of(r.text)
	if f.Spoken || f.Kind != prose.Range || !strings.Contains(text, "-") || strings.ContainsAny(text, " .") || len(f.Values) < 2 {
		return false
	}
	const farthest = 10
	if !r.announced(at) && f.Values[1].Number < farthest*f.Values[0].Number {
		return false
	}
	r.value(Value{Part: text, Span: f.Span}, PartNumber)
	return true
}

// designation takes "the v three" for the number of what is to be had: bought,
// ordered or fitted.
func (r *reader) designation(f *prose.Figure, at int) bool {
	const reach = 8
	if !r.is(at-1, "the") && !r.is(at-1, "a") && !r.is(at-1, "an") {
		return false
	}
	var c code
	if end := r.spelled(at, &c); end != r.wordAt(f.End) || c.letters != 1 {
		return false
	}
	if _, drive := trade.ParseDrive(c.text); drive {
		return false
	}
	for j := max(0, at-reach); j < at; j++ {
		switch r.words[j].text {
		case "get", "buy", "order", "ordered", "fit", "fits", "use", "want", "need", "ask", "replaces", "not", "superseded", "becomes", "is", "called":
			r.value(Value{Part: c.text, Span: f.Span}, PartNumber)
			return true
		}
	}
	return false
}
