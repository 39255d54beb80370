package class

import "strings"

// Moment is a set of times at which a caution is due.
type Moment uint8

// The five moments. A message before a whole procedure and one right before
// the action are told apart by ANSI Z535.6 and EN 82079-1; the rest is common
// practice, no source.
const (
	Before Moment = 1 << iota // once, before the work in that state starts
	Step                      // right before the action, never after or over it
	Return                    // again when the dangerous state is entered again
	Close                     // a closing action must leave the state
	After                     // afterwards: check, dispose, watch for fire
)

// has says whether every moment of m is in the set.
func (m Moment) has(of Moment) bool { return m&of == of }

// String is the set in words: "before the work, right before the action".
func (m Moment) String() string {
	var words []string
	for _, w := range [...]struct {
		m    Moment
		word string
	}{
		{Before, "before the work"},
		{Step, "right before the action"},
		{Return, "again on every return"},
		{Close, "with an action that closes it"},
		{After, "and something to do afterwards"},
	} {
		if m.has(w.m) {
			words = append(words, w.word)
		}
	}
	return strings.Join(words, ", ")
}

// Timing is when a caution is due.
type Timing struct {
	At     Moment
	Detail string // what that means for this class; empty: nothing more
}

// Sentence says the timing in full: "Before the work, right before the action:
// before the first trim part comes off."
func (t Timing) Sentence() string {
	s := t.At.String()
	if s == "" {
		return ""
	}
	s = strings.ToUpper(s[:1]) + s[1:]
	if t.Detail != "" {
		s += ": " + t.Detail
	}
	return s + "."
}
