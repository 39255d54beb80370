package claim

import (
	"slices"
	"strings"

	"fixslate/plan/prose"
)

// isEighths holds for parts that are said of inches alone: eighths and finer.
func isEighths(text string) bool {
	text = strings.ReplaceAll(strings.TrimSuffix(strings.ToLower(text), "s"), "-", " ")
	return strings.HasSuffix(text, "eighth") || strings.HasSuffix(text, "sixteenth") || strings.HasSuffix(text, "thirty second") || strings.HasSuffix(text, "sixty fourth")
}

// isHundredths holds for parts that are said of millimetres; inches have thousandths.
// Common practice, no source.
func isHundredths(text string) bool {
	text = strings.ToLower(text)
	return strings.HasSuffix(text, "hundredths") || strings.HasSuffix(text, "tenths")
}

// hasParts says whether a text tells halves, quarters or finer parts of an inch.
func hasParts(text string) bool {
	for w := range strings.FieldsFuncSeq(strings.ToLower(text), func(c rune) bool { return c == ' ' || c == '-' }) {
		switch strings.TrimSuffix(w, "s") {
		case "half", "quarter", "eighth", "sixteenth":
			return true
		}
	}
	return false
}

// priced says whether paying is spoken of near word i; a battery is charged, too.
func (r *reader) priced(i, reach int) bool {
	k := &r.known.classes
	for j := max(0, i-reach); j < len(r.words) && j <= i+reach; j++ {
		if (r.is(j, "plus") || r.is(j, "including") || r.is(j, "included")) && (r.words[min(j+1, len(r.words)-1)].marks&extras != 0 || r.in(j+1, k.det) && r.words[min(j+2, len(r.words)-1)].marks&extras != 0) {
			return true
		}
		if j < i && r.words[j].marks&asks != 0 && (r.is(j-1, "they") || r.is(j-1, "he") || r.is(j-1, "she")) && slices.ContainsFunc(r.words[i:], func(w word) bool { return w.text == "for" }) {
			return true
		}
		if r.in(j, k.priced) && (!strings.HasPrefix(r.words[j].text, "charge") || r.is(j+1, "me") || r.is(j+1, "you") || r.is(j+1, "us") || r.is(j+1, "about") || r.is(j-1, "they") || r.is(j-1, "garages") || r.is(j-1, "shops")) {
			return true
		}
	}
	return false
}

// belowZero reads "twenty-five below" and makes the number negative.
func (r *reader) belowZero(f *prose.Figure) bool {
	n := r.wordAt(f.End)
	if len(f.Values) != 1 || f.Values[0].Number < 2 || !r.is(n, "below") || r.words[n].stopped || n+1 < len(r.words) && !r.words[n+1].stopped && !r.is(n+1, "zero") && !r.is(n+1, "freezing") {
		return false
	}
	f.Values[0].Number = -f.Values[0].Number
	if f.Values[0].Unit == "" {
		f.Values[0].Unit = "°C"
		if r.about&ofFahrenheit != 0 {
			f.Values[0].Unit = "°F"
		}
	}
	return true
}

// tops holds where "max" or "minimum" stands behind a number.
func (r *reader) tops(f *prose.Figure) bool {
	switch n := r.wordAt(f.End); {
	case r.is(n, "max"), r.is(n, "maximum"), r.is(n, "min"), r.is(n, "minimum"), r.is(n, "tops"):
		return n+1 >= len(r.words) || r.words[n+1].stopped || r.words[n+1].classes&(r.known.prep|r.known.glue) != 0
	}
	return false
}
