package class

import "strings"

// Signal is the signal word of a caution; higher is graver. Zero is no word.
//
// The four words and what they mean are those of ANSI Z535.4-2007, 4.14.1 to
// 4.14.4: danger, death or serious injury will follow; warning, it could;
// caution, minor or moderate injury could; notice, damage but no injury.
type Signal int

// The signal words.
const (
	Notice Signal = iota + 1
	Caution
	Warning
	Danger
)

// String is the word as plans and JSON have it: "danger".
func (s Signal) String() string {
	if s < Notice || s > Danger {
		return "none"
	}
	return [...]string{"notice", "caution", "warning", "danger"}[s-Notice]
}

// ParseSignal reads a signal word in any case.
func ParseSignal(word string) (Signal, bool) {
	for s := Notice; s <= Danger; s++ {
		if strings.EqualFold(word, s.String()) {
			return s, true
		}
	}
	return 0, false
}
