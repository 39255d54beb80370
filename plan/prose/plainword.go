package prose

import (
	"maps"
	"slices"
	"strings"
)

// Most words of a text are neither of a number nor short for anything. These
// tests say so by a word's length and first letter, before anybody brings it to
// lower case and asks one list after another.

// lookout is a list of words in lower case, with the lengths that its words
// have, a bit each, by their first letter.
type lookout struct {
	words   map[string]bool
	lengths ['z' + 1]uint64
}

func newLookout(lists ...[]string) *lookout {
	l := &lookout{words: map[string]bool{}}
	for _, w := range slices.Concat(lists...) {
		l.words[w] = true
		if first := w[0]; len(w) < 64 && first <= 'z' {
			l.lengths[first] |= 1 << len(w)
		}
	}
	return l
}

// misses says that a word is not in the list, however it is written. It may
// miss saying so of words that are not plain.
func (l *lookout) misses(word string) bool {
	first := word[0] | 0x20 // in lower case, if it is a letter
	if len(word) >= 64 || first < 'a' || first > 'z' || !isSmall(word[1:]) {
		return false
	}
	if l.lengths[first]&(1<<len(word)) == 0 {
		return true
	}
	if first != word[0] {
		word = strings.ToLower(word)
	}
	return !l.words[word]
}

// isSmall holds for small letters with apostrophes.
func isSmall(rest string) bool {
	for i := range len(rest) {
		if b := rest[i]; (b < 'a' || b > 'z') && b != '\'' {
			return false
		}
	}
	return true
}

// starters begin an expression.
var starters = newLookout(slices.Collect(maps.Keys(numberWords)), slices.Collect(maps.Keys(leadsNumber)), months(),
	[]string{"twice", "plus", "a", "an", "m", "half", "quarter", "every", "double", "treble", "triple"}, bareNouns) // of idiom and bareUnit

func months() []string {
	list := []string{"sept"}
	for _, name := range monthNames {
		name = strings.ToLower(name)
		list = append(list, name, name[:3])
	}
	return list
}

// startsNone says that no expression begins at word i, nothing else being glued
// to it.
func (s *scanner) startsNone(i int) bool {
	w := s.at(i)
	return len(w) > 1 && starters.misses(w)
}

// otherwise are words that are said otherwise than they are written, or may be.
var otherwise = newLookout(slices.Collect(maps.Keys(shortForms)), lowered(lowerSpelled), lowered(loneUnits), []string{"ok"})

func lowered(words map[string]bool) []string {
	var list []string
	for w := range words {
		list = append(list, strings.ToLower(w))
	}
	return list
}

// saidAsWritten says that a word is no abbreviation, no capitals to spell and no
// unit.
func saidAsWritten(word string) bool { return len(word) > 1 && otherwise.misses(word) }
