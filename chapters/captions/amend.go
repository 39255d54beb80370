package captions

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"fixslate/plan/prose"
)

// Amendment puts other words in the place of a stretch of one cue.
type Amendment struct {
	Cue  int        // in the file's Cues
	Span prose.Span // in the cue's Text
	Text string
}

// Amend is the file with words put right; the file given stays as it is. Times,
// lines and everything around the words are kept: a line may grow longer. A
// word that begins a line or sentence in a capital still does. An amendment
// that names no stretch of the file, or one that another has changed already,
// is left out. Markup is amended too where the words stand in it once and
// whole; where they don't, the cue loses its markup, never its words.
func Amend(f File, amendments []Amendment) File {
	out := f
	out.Cues = slices.Clone(f.Cues)
	order := slices.Clone(amendments)
	slices.SortStableFunc(order, func(a, b Amendment) int { // from the end, so that spans stay true
		return cmp.Or(cmp.Compare(a.Cue, b.Cue), cmp.Compare(b.Span.Start, a.Span.Start))
	})
	cue, from := -1, 0 // what is changed already begins there
	for _, a := range order {
		if a.Cue < 0 || a.Cue >= len(out.Cues) {
			continue
		}
		c := &out.Cues[a.Cue]
		if a.Cue != cue {
			cue, from = a.Cue, len(c.Text)
		}
		if a.Span.Start < 0 || a.Span.Start >= a.Span.End || a.Span.End > from {
			continue
		}
		from = a.Span.Start
		was := a.Span.Of(c.Text)
		now := likeCapital(was, strings.Join(strings.Fields(a.Text), " "))
		c.Text = c.Text[:a.Span.Start] + now + c.Text[a.Span.End:]
		if c.Markup != "" {
			if strings.Count(c.Markup, was) == 1 && !strings.ContainsAny(now, "<>&{}\\") {
				c.Markup = strings.Replace(c.Markup, was, now, 1)
			} else {
				c.Markup = ""
			}
		}
	}
	return out
}

// likeCapital gives words the capital that those they stand for begin with.
func likeCapital(was, now string) string {
	first, _ := utf8.DecodeRuneInString(was)
	r, size := utf8.DecodeRuneInString(now)
	if unicode.IsUpper(first) && unicode.IsLower(r) {
		return string(unicode.ToUpper(r)) + now[size:]
	}
	return now
}
