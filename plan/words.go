package plan

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"

	"fixslate/plan/hazard/class"
	"fixslate/plan/trade"
)

// typeOf names the type of a decoded TOML value in a plan author's words.
func typeOf(value any) string {
	switch value.(type) {
	case string:
		return "text"
	case int64:
		return "a whole number"
	case float64:
		return "a number"
	case bool:
		return "true or false"
	case time.Time:
		return "a date or time"
	case map[string]any:
		return "a table"
	case []any, []map[string]any:
		return "a list"
	}
	return "something else"
}

// typeName names the type of a field for readers of the language.
func typeName(k Key, field any) string {
	switch field.(type) {
	case *string:
		if k.Name == "id" || len(k.Refs) > 0 {
			return idOr(k, "id")
		}
		return "text"
	case *Text, *Note, narration:
		return "text"
	case *Value:
		return "value or words"
	case *[]string:
		if len(k.Refs) > 0 {
			return idOr(k, "list of ids")
		}
		return "list"
	case *bool:
		return "true or false"
	case *int:
		return "whole number"
	case *float64:
		return "number"
	case *Duration:
		return "duration"
	case *Clock:
		return "time of day"
	case *Date:
		return "date"
	case *trade.Measure:
		return "quantity or words"
	case *Share:
		return "word or number"
	case *ChapterMark:
		return "false or text"
	case *[]StepCaution:
		return "list of ids or tables"
	case *[]Ref:
		return "list of ids"
	case *[]Break, *[]trade.Drive, *[]ShotNeed:
		return "list"
	}
	return "text"
}

func idOr(k Key, what string) string {
	if k.Names {
		return what + " or names"
	}
	return what
}

func joinWords(texts ...string) string {
	var kept []string
	for _, t := range texts {
		if t != "" {
			kept = append(kept, t)
		}
	}
	return strings.Join(kept, " ")
}

func lastName(dotted string) string { return dotted[strings.LastIndexByte(dotted, '.')+1:] }

// child is the element of a table inside another; index -1 is no list.
func child(at *element, kind Kind, name string, index int) *element {
	e := &element{path: name, kind: kind, parent: at, step: -1}
	if at != nil {
		e.step = at.step
		if at.path != "" {
			e.path = at.path + "." + name
		}
	}
	if index >= 0 {
		e.path = nth(e.path, index)
		if kind == KindStep {
			e.step = index
		}
	}
	return e
}

// otherWords are keys by the words that people write for them: of several the
// first that the table has is meant.
var otherWords = [][2]string{
	{"name title what text question label heading", "name what title text question"},
	{"qty quantity amount number pieces pcs how_many", "count amount number"},
	{"duration time minutes takes_time", "work length"},
	{"description narration script speech voiceover voice_over spoken words", "say"},
	{"action actions instruction instructions", "do does"},
	{"warning warnings hazard hazards danger dangers safety", "cautions hazard"},
	{"comment comments remark remarks", "note"},
	{"size dimension", "thread drives section"},
	{"reference ref citation", "source"},
	{"part_number part_no pn sku", "number"},
	{"url href web", "link"},
	{"value reading result", "expect value"},
	{"location position place", "at place where"},
	{"person helper actor", "who people"},
}

// otherWord is the key that a word which is none most likely means: one a few
// letters away, or one that is often called so.
func otherWord(written string, known []string) (string, bool) {
	written = strings.ToLower(written)
	for _, row := range otherWords {
		if slices.Contains(strings.Fields(row[0]), written) {
			for _, key := range strings.Fields(row[1]) {
				if slices.Contains(known, key) {
					return key, true
				}
			}
		}
	}
	return Nearest(written, known)
}

// quoted lists words as "a", "b" or "c".
func quoted(words []string) string {
	var b strings.Builder
	for i, w := range words {
		switch {
		case i == 0:
		case i == len(words)-1:
			b.WriteString(" or ")
		default:
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, "%q", w)
	}
	return b.String()
}

// choices offers the nearest word, or all of a few.
func choices(words []string, written string) string {
	if near, ok := Nearest(written, words); ok {
		return fmt.Sprintf("%q", near)
	}
	return quoted(words)
}

// Nearest finds the word that a slip of the finger most likely meant: at most
// a third of its letters wrong, two at the least. Ties go to the earlier word.
func Nearest(written string, words []string) (string, bool) {
	best, at := "", 1<<30
	for _, w := range words {
		limit := max(2, len(w)/3)
		if d := class.Slips(strings.ToLower(written), strings.ToLower(w), limit); d <= limit && d < at && d < len(w) {
			best, at = w, d
		}
	}
	return best, best != ""
}

// slug makes an id of words: lower-case letters and digits, hyphens between,
// at most five words. Accents are dropped; letters beyond Latin are too.
func slug(text string) string {
	var words []string
	for _, w := range strings.FieldsFunc(fold(text), func(r rune) bool { return !('a' <= r && r <= 'z' || '0' <= r && r <= '9') }) {
		if words = append(words, w); len(words) == 5 {
			break
		}
	}
	return strings.Join(words, "-")
}

// fold lower-cases text, drops apostrophes and the accents of Latin letters.
func fold(text string) string {
	var b strings.Builder
	for _, r := range text {
		r = unicode.ToLower(r)
		switch r {
		case '\'', '’':
			continue
		case 'ä', 'à', 'á', 'â', 'ã', 'å':
			r = 'a'
		case 'ç':
			r = 'c'
		case 'è', 'é', 'ê', 'ë':
			r = 'e'
		case 'ì', 'í', 'î', 'ï':
			r = 'i'
		case 'ñ':
			r = 'n'
		case 'ò', 'ó', 'ô', 'õ', 'ö', 'ø':
			r = 'o'
		case 'ù', 'ú', 'û', 'ü':
			r = 'u'
		case 'ß':
			b.WriteByte('s')
			r = 's'
		}
		b.WriteRune(r)
	}
	return b.String()
}

// longestFirst sorts words so that a regular expression of them prefers the
// longest.
func longestFirst(words []string) []string {
	slices.SortStableFunc(words, func(a, b string) int {
		return cmp.Or(cmp.Compare(len(b), len(a)), cmp.Compare(a, b))
	})
	return words
}
