package class

import (
	"strings"
	"unicode"
)

// split is the words of a text in lower case: letters, digits and apostrophes.
func split(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '\''
	})
}

func commonPrefix(a, b string) int {
	n := 0
	for n < len(a) && n < len(b) && a[n] == b[n] {
		n++
	}
	return n
}

// Slips is the number of single slips (a letter left out, put in, changed, or
// two changed about) between two words: optimal string alignment, Damerau
// 1964. Over limit it only says limit+1.
func Slips(a, b string, limit int) int {
	x, y := []rune(a), []rune(b)
	if d := len(x) - len(y); d > limit || -d > limit {
		return limit + 1
	}
	before, last, now := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(x); i++ {
		now[0] = i
		least := i
		for j := 1; j <= len(y); j++ {
			change := 1
			if x[i-1] == y[j-1] {
				change = 0
			}
			now[j] = min(last[j]+1, now[j-1]+1, last[j-1]+change)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				now[j] = min(now[j], before[j-2]+1)
			}
			least = min(least, now[j])
		}
		if least > limit {
			return limit + 1
		}
		before, last, now = last, now, before
	}
	return min(last[len(y)], limit+1)
}

// Stem takes the commonest English endings off a word, so that jack, jacks,
// jacked and jacking meet. It is lighter than Porter's (1980): the words are
// few, and too much taken off joins words that differ in the trade.
func Stem(w string) string {
	w = strings.TrimSuffix(strings.Trim(w, "'"), "'s")
	w = strings.ReplaceAll(w, "'", "")
	switch w {
	case "children":
		return "child"
	case "feet":
		return "foot"
	case "teeth":
		return "tooth"
	}
	switch {
	case strings.HasSuffix(w, "ies") && len(w) > 5:
		w = w[:len(w)-3] + "y"
	case strings.HasSuffix(w, "sses"):
		w = w[:len(w)-2]
	case strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") && !strings.HasSuffix(w, "us") && len(w) > 3:
		w = w[:len(w)-1]
	}
	for _, end := range [...]string{"ing", "ed", "er"} {
		if root, ok := strings.CutSuffix(w, end); ok && canStand(root) {
			return undouble(root)
		}
	}
	for _, end := range [...]struct {
		text  string
		least int // letters that must be left
	}{{"ion", 4}, {"or", 4}, {"e", 3}, {"y", 4}} {
		if root, ok := strings.CutSuffix(w, end.text); ok && len(root) >= end.least {
			return root
		}
	}
	return w
}

// canStand says whether what an ending leaves can be a root: three letters or
// more with a vowel among them.
func canStand(root string) bool {
	return len(root) >= 3 && strings.ContainsAny(root, "aeiouy")
}

// undouble turns "jamm" into "jam", "carry" and "carri" alike into "carr", and
// leaves "fall", "press" and "buzz" whole.
func undouble(root string) string {
	n := len(root)
	switch last := root[n-1]; {
	case n > 3 && last == root[n-2] && !strings.ContainsRune("lsz", rune(last)):
		return root[:n-1]
	case n > 4 && (last == 'e' || last == 'y' || last == 'i'):
		return root[:n-1]
	}
	return root
}
