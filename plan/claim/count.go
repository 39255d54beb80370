package claim

import (
	"math"
	"slices"
	"strings"

	"fixslate/plan/prose"
)

// perPiece reads "nine ninety five a litre": pounds and pence for so much of a thing.
func (r *reader) perPiece(f *prose.Figure, n int) bool {
	if !f.Spoken || len(f.Values) != 1 || n+1 >= len(r.words) || r.words[n].stopped || !r.is(n, "a") && !r.is(n, "per") || r.words[n+1].marks&pieces == 0 {
		return false
	}
	v := f.Values[0].Number
	pence := math.Mod(v, 100)
	return v > 100 && v < 10000 && (pence == 99 || pence == 95 || pence == 50 || pence == 49) && !strings.Contains(f.Of(r.text), "hundred")
}

// packed says whether the number at i is how many a pack has.
func (r *reader) packed(i int) bool {
	if !r.is(i-1, "of") || i < 2 {
		return false
	}
	switch r.words[i-2].text {
	case "pack", "packet":
		return true
	}
	return false
}

// sum says whether "twelve fifty" is pounds and pence: what is paid for something.
func (r *reader) sum(f *prose.Figure, at int) bool {
	const most = 10000
	least := 1000.0
	if pence := math.Mod(f.Values[0].Number, 100); pence == 99 || pence == 95 || pence == 49 {
		least = 100 // "eight ninety nine delivered"
	}
	if !f.Spoken || len(f.Values) != 1 || f.Values[0].Number < least || f.Values[0].Number >= most {
		return false
	}
	for w := range strings.FieldsSeq(f.Of(r.text)) {
		if w == "hundred" || w == "thousand" || w == "point" {
			return false
		}
	}
	n := r.wordAt(f.End)
	if pence := math.Mod(f.Values[0].Number, 100); (pence == 99 || pence == 95) && r.isBare(f) && (r.in(at-1, r.known.be) || r.is(at-1, "for") || r.is(at-1, "at")) {
		return true
	}
	return r.priced(at, 4) || r.is(n, "each") || r.is(n, "for") && (r.is(n+1, "the") || r.is(n+1, "a")) && (r.is(n+2, "pair") || r.is(n+2, "lot") || r.is(n+2, "set") || r.is(n+2, "pack"))
}

// catalogued takes a number of four digits or more behind an article for a
// catalogue number: "a 6203 bearing", "it's a 2032".
func (r *reader) catalogued(f *prose.Figure, at, n int) bool {
	const shortest = 4
	text := f.Of(r.text)
	if head := r.capitals(at); head != "" && !f.Spoken {
		start := r.words[at-1].start
		r.value(Value{Part: head + " " + text, Span: prose.Span{Start: start, End: f.End}}, PartNumber)
		return true
	}
	if tail := r.text[f.End:]; !f.Spoken && len(text) > 2 && len(tail) > 1 && tail[0] == '/' && tail[1] >= 'A' && tail[1] <= 'Z' && (len(tail) == 2 || tail[2] == ' ' || tail[2] == '.' || tail[2] == ',') {
		r.value(Value{Part: text + tail[:2], Span: prose.Span{Start: f.Start, End: f.End + 2}}, PartNumber)
		return true
	}
	leading := len(text) > 2 && text[0] == '0' && text[1] != '.'
	if leading && !f.Spoken && strings.Trim(text, "0123456789") == "" {
		r.value(Value{Part: text, Span: f.Span}, PartNumber)
		return true
	}
	if f.Spoken || len(text) < shortest || strings.Trim(text, "0123456789") != "" || !r.is(at-1, "a") && !r.is(at-1, "an") && !(r.announced(at) && r.in(at-1, r.known.be)) {
		return false
	}
	if n < len(r.words) && !r.words[n].stopped && isPlural(r.words[n].text) {
		return false
	}
	r.value(Value{Part: text, Span: f.Span}, PartNumber)
	return true
}

// capitals gives the letters of "it says RX 200 on the back": a few capitals
// before a number in a sentence that has small letters, where a label or the
// like is read out.
func (r *reader) capitals(at int) string {
	const most = 4
	if at < 1 || at >= len(r.words) || r.words[at].stopped {
		return ""
	}
	w := r.words[at-1]
	raw := r.text[w.start:w.end]
	if len(raw) < 2 || len(raw) > most || strings.Trim(raw, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" || w.marks&grades != 0 || strings.ToUpper(r.text) == r.text || w.text == "sku" || w.text == "ref" || w.text == "pn" {
		return ""
	}
	if w.marks&(shorts|standards) != 0 {
		return ""
	}
	if digits := r.text[r.words[at].start:r.words[at].end]; at > 1 && len(digits) > 2 && !r.words[at-1].stopped {
		return raw
	}
	if !r.announced(at) && !r.is(at-2, "says") && !r.is(at-2, "a") && !r.is(at-2, "an") {
		return ""
	}
	return raw
}

func (r *reader) counted(f *prose.Figure, unit string) {
	for _, v := range f.Values {
		r.values = append(r.values, Value{Number: v.Number, Unit: unit, Span: f.Span})
	}
}

// parts holds for "three parts resin to one part hardener" and "one part bleach
// to ten parts water".
func (r *reader) parts(at, n int) bool {
	const reach = 6
	if !r.is(n, "parts") {
		return false
	}
	for j := n + 1; j < len(r.words) && j < n+reach; j++ {
		if r.is(j, "to") && r.is(j+1, "one") {
			return true
		}
	}
	for j := at - 2; j > 0 && j > at-2-reach; j-- {
		if r.is(j, "part") && r.is(j-1, "one") && r.is(at-1, "to") {
			return true
		}
	}
	return false
}

// multiple holds for "twice as much as" and "three times the price".
func (r *reader) multiple(f *prose.Figure, n int) bool {
	k := &r.known.classes
	if r.is(n, "times") {
		n++
	} else if f.Word != "times" {
		return false
	}
	if r.is(n, "as") {
		return r.in(n+1, k.asadj)
	}
	if r.is(n, "more") && (n+1 == len(r.words) || r.words[n].stopped || r.in(n+1, k.glue)) {
		return slices.ContainsFunc(r.words[:n], func(w word) bool { return w.classes&k.states != 0 && w.mood != order }) // "a dozen times more": how often to do it
	}
	if r.in(n, k.better) {
		return true
	}
	return r.is(n, "what") || r.is(n, "the") && (r.in(n+1, k.dimension) || n+1 < len(r.words))
}

// head finds the plural that a number counts, over a word or two before it:
// "four AA cells".
func (r *reader) head(n int) (int, bool) {
	const reach = 4
	k := &r.known.classes
	for j := n; j < len(r.words) && j < n+reach; j++ {
		if (r.is(j, "double") || r.is(j, "triple")) && j+1 < len(r.words) && len(r.words[j+1].text) == 1 {
			j++ // "four double a batteries"
			continue
		}
		if j > n && r.words[j].stopped || r.words[j].classes&(k.prep|k.glue|k.be|k.det) != 0 {
			return 0, false
		}
		if isPlural(r.words[j].text) {
			return j, true
		}
	}
	return 0, false
}

// compounded reads what a number makes with a noun in the singular: "a six pole
// connector", "24-tooth sprocket", "two-part epoxy".
func (r *reader) compounded(f *prose.Figure, at, n int) (string, bool) {
	k := &r.known.classes
	if len(f.Values) != 1 || f.Values[0].Number < 2 || f.Values[0].Number != float64(int(f.Values[0].Number)) {
		return "", false
	}
	if tail, last := r.text[f.End:], r.wordAt(f.End); strings.HasPrefix(tail, "-") && last < len(r.words) {
		// "24-tooth" and "a hundred and twenty-tooth" end inside a word
		_, noun, ok := strings.Cut(prose.Fold(r.text[f.End:r.words[last].end]), "-")
		if noun == "to-one" {
			return "", true
		}
		if ok && noun != "" && noun != "ish" && noun != "odd" && noun != "plus" && !isPlural(noun) && !r.known.isNumber(noun) && r.known.of(noun)&(k.prep|k.particle) == 0 {
			return noun, true
		}
	}
	if word := r.words[min(at, len(r.words)-1)].text; strings.Contains(word, "-") {
		// the number is the head of the word: "two-pin"
		if i := strings.LastIndexByte(word, '-'); n == at+1 && i > 0 && r.known.of(word[i+1:])&k.making != 0 {
			return word[i+1:], true
		}
	}
	if n >= len(r.words) || r.words[n].stopped {
		return "", false
	}
	w := &r.words[n]
	if w.classes&k.making == 0 || isPlural(w.text) {
		return "", false
	}
	head := n + 1
	if head >= len(r.words) || r.words[head].stopped || r.words[head].classes&(k.be|k.states|k.prep|k.glue) != 0 {
		return w.text, true
	}
	return w.text, !isPlural(r.words[head].text) || w.classes&k.fitting == 0
}
