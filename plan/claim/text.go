package claim

import (
	"sort"
	"strings"
	"unicode"

	"fixslate/plan/prose"
)

// Text reads plain text: every line that is not blank is one Claim, though it
// holds two sentences.
func Text(src string) []Claim {
	var all []Claim
	n := 0
	for line := range strings.Lines(src) {
		n++
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		c := Sentence(line)
		c.Line = n
		all = append(all, c)
	}
	return all
}

// Line is the text of one caption and the line of the file it stands in.
type Line struct {
	Number int // from 1
	Text   string
}

// longestSentence is how many words a sentence of captions has at most before
// it is cut where captions end: automatic captions set no marks at all.
const longestSentence = 40

// Captions reads captions: every sentence is one Claim, with the line of the
// caption in which it begins. A sentence runs on over captions up to its mark.
// Where there are no marks a caption ends it, unless a number or a phrase goes
// on in the next one. Sound labels are left out.
func Captions(lines []Line) []Claim {
	text, starts, numbers := joined(lines)
	figures := prose.Figures(text)
	var all []Claim
	for _, span := range prose.Sentences(text) {
		for _, part := range cutAtCaptions(text, span, starts, figures) {
			c := Sentence(part.Of(text))
			at := sort.SearchInts(starts, part.Start+1) - 1
			c.Line = numbers[max(at, 0)]
			all = append(all, c)
		}
	}
	return all
}

// joined puts captions into one text: starts[i] is where caption i begins in
// it, numbers[i] its line.
func joined(lines []Line) (text string, starts, numbers []int) {
	var b strings.Builder
	for _, l := range lines {
		words := strings.Join(strings.Fields(l.Text), " ")
		if words == "" || isLabel(words) {
			continue
		}
		if b.Len() > 0 {
			b.WriteByte(' ')
		}
		starts = append(starts, b.Len())
		numbers = append(numbers, l.Number)
		b.WriteString(words)
	}
	return b.String(), starts, numbers
}

// isLabel holds for captions that are one sound label or music.
func isLabel(text string) bool {
	first, last := text[0], text[len(text)-1]
	return first == '[' && last == ']' || first == '(' && last == ')' || !strings.ContainsFunc(text, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) })
}

// cutAtCaptions cuts a sentence that is too long to be one.
func cutAtCaptions(text string, whole prose.Span, starts []int, figures []prose.Figure) []prose.Span {
	if strings.Count(whole.Of(text), " ") < longestSentence {
		return []prose.Span{whole}
	}
	var parts []prose.Span
	from := whole.Start
	f := 0
	for i := sort.SearchInts(starts, whole.Start+1); i < len(starts) && starts[i] < whole.End; i++ {
		at := starts[i]
		for f < len(figures) && figures[f].End <= at {
			f++
		}
		if f < len(figures) && figures[f].Start < at || goesOn(text[from:at]) && strings.Count(text[from:at], " ") < longestSentence {
			continue
		}
		parts = append(parts, prose.Span{Start: from, End: at - 1})
		from = at
	}
	return append(parts, prose.Span{Start: from, End: whole.End})
}

// goesOn says whether the last word asks for another: "the fuse is a".
func goesOn(text string) bool {
	text = strings.TrimRight(text, " ")
	last := prose.Fold(text[strings.LastIndexByte(text, ' ')+1:])
	k := kindsOfWord()
	return vocabulary().of(last)&(k.det|k.be|k.modal|k.glue|k.about) != 0 && last != "that" && last != "this" && last != "so" || last == "of" || last == "to" || last == "at" || last == "from" || last == "with"
}
