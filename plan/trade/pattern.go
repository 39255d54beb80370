package trade

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// pattern is a regular expression that is compiled when it is first needed:
// there are some fifty here, a run needs few of them, and all of them take
// longer to compile than a plan takes to read.
type pattern struct {
	form  func() *regexp.Regexp
	stems []string
}

// patternOf has stems behind the expression, one of which stands in every text
// that fits, in lower case: a text without them is not looked at. A 0 at the end
// of a stem is a number ("t0" stands in "t25", "t 25" and "t-25"), at its head a
// digit.
func patternOf(text string, stems ...string) pattern {
	return pattern{sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) }), stems}
}

// may says whether the pattern may fit somewhere in the text.
func (p pattern) may(text string) bool {
	return len(p.stems) == 0 || slices.ContainsFunc(p.stems, func(stem string) bool { return standsIn(stem, text) })
}

func (p pattern) in(text string) bool { return p.may(text) && p.form().MatchString(text) }

// all are the places that fit, with their groups.
func (p pattern) all(text string) [][]string {
	if !p.may(text) {
		return nil
	}
	return p.form().FindAllStringSubmatch(text, -1)
}

// first is the first of them.
func (p pattern) first(text string) []string {
	if !p.may(text) {
		return nil
	}
	return p.form().FindStringSubmatch(text)
}

// replaced is the text with another in each place that fits.
func (p pattern) replaced(text, by string) string {
	if !p.may(text) {
		return text
	}
	return p.form().ReplaceAllString(text, by)
}

func standsIn(stem, text string) bool {
	stem, ends := strings.CutSuffix(stem, "0")
	stem, begins := strings.CutPrefix(stem, "0")
	for {
		before, rest, found := strings.Cut(text, stem)
		if !found {
			return false
		}
		if (!begins || isDigit(last(before))) && (!ends || isDigit(first(strings.TrimLeft(rest, " -#")))) {
			return true
		}
		text = rest
	}
}

// first and last are the bytes at the ends of a text, 0 where it has none.
func first(text string) byte {
	if text == "" {
		return 0
	}
	return text[0]
}

func last(text string) byte {
	if text == "" {
		return 0
	}
	return text[len(text)-1]
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }
