package lint

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
)

var languageUnread = Rule{Name: "language-unread", Group: Safety, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	lang := strings.ToLower(p.Plan.Video.Language)
	path := "video.language"
	if !p.Spans.Has(path) {
		path = "video"
	}
	if lang == "english" {
		report(Report{
			Message: `the language "english" is no tag of a language, so hazards and claims are not read`,
			Hint:    `write language = "en"`,
			Path:    path,
		})
		return
	}
	if lang != "" && lang != "en" && !strings.HasPrefix(lang, "en-") {
		report(Report{
			Message: fmt.Sprintf("the narration is in %q, and hazards and claims are read in English only", p.Plan.Video.Language),
			Hint:    "have somebody who knows the trade read it for danger; silence here means nothing",
			Path:    path,
		})
		return
	}
	said := p.spoken()
	if readsEnglish(p.words) && readsEnglish(said) {
		for i, text := range said {
			if readsForeign(text) {
				report(Report{
					Message: fmt.Sprintf("step %q is not told in English, and hazards and claims are read in English only", p.Plan.Steps[i].Title.Print),
					Hint:    "tell it in the video's language, or have somebody who knows the trade read it for danger; silence here means nothing",
					Path:    stepPath(i, "say"),
				})
				return
			}
		}
		return
	}
	report(Report{
		Message: "the narration does not read like English, and hazards and claims are read in English only",
		Hint:    "have somebody who knows the trade read it for danger, and set [video] language; silence here means nothing",
		Path:    path,
	})
}}

// spoken are the words of each step's narration alone: notes of what the hands
// do may stand in English beside it.
func (p *Pass) spoken() []string {
	said := make([]string, len(p.Plan.Steps))
	for i := range p.Plan.Steps {
		for _, l := range p.Plan.Steps[i].Lines {
			if l.Kind == plan.Spoken {
				said[i] += fold(unquoted(l.Print, l.Quotes))
			}
		}
	}
	return said
}

// readsEnglish holds for folded texts with enough of the commonest words, and for
// those too short to say.
func readsEnglish(texts []string) bool {
	known, all := 0, 0
	for _, text := range texts {
		for w := range strings.SplitSeq(text, " ") {
			if w == "" || w == "." {
				continue
			}
			all++
			if english(w) {
				known++
			}
		}
	}
	return all < 20 || float64(known) >= englishShare*float64(all)
}

// english holds for the commonest words of English; about a third of running
// text is made of them, even in terse notes a tenth.
func english(word string) bool {
	switch word {
	case "the", "of", "and", "to", "a", "in", "is", "it", "you", "that", "with", "for", "on", "are", "be", "this", "or", "at", "from", "by", "not", "off", "out", "up", "your", "until", "then", "now", "one", "two", "new", "no", "so", "if",
		"will", "can", "back", "into", "over", "under", "before", "after", "its", "them", "they", "but", "all", "we", "i", "don't", "there", "here", "what", "when", "undo", "pull", "turn", "check", "clean", "fit", "put", "take", "hold", "keep", "down", "first", "both":
		return true
	}
	return false
}

// readsForeign holds for a folded text in which the small words of another language
// outnumber those of English threefold: a name or a quoted sign does not.
func readsForeign(text string) bool {
	const enough = 3
	known, other := 0, 0
	for w := range strings.SplitSeq(text, " ") {
		if english(w) {
			known++
		} else if slices.Contains(smallWords, w) {
			other++
		}
	}
	return other >= enough && other >= 3*known
}

// smallWords are articles, prepositions and pronouns of German, French, Spanish,
// Italian, Portuguese, Dutch, Swedish and Polish that are no English words; from
// memory.
var smallWords = []string{
	"der", "das", "den", "dem", "des", "und", "ist", "ein", "eine", "einen", "mit", "nicht", "auf", "aus", "von", "vom", "zum", "zur", "sie", "wir", "ihr", "dann", "jetzt", "dein", "deinen",
	"le", "la", "les", "un", "une", "du", "de", "et", "est", "avec", "dans", "pour", "sur", "pas", "que", "puis", "vous", "nous", "votre", "aux", "ce", "cette",
	"el", "los", "las", "una", "y", "con", "por", "del", "se", "lo", "su", "como", "entonces", "il", "di", "che", "della", "dal", "dalla", "gli", "sul", "poi", "da", "em", "uma", "com", "nao", "depois",
	"het", "een", "en", "niet", "met", "op", "uit", "je", "ett", "och", "att", "av", "som", "med", "till", "det", "nie", "jest", "na", "oraz",
}

// englishShare is the share of them below which a text is taken for another
// language. Common practice, no source.
const englishShare = 0.12
