package trade

import (
	"regexp"
	"sync"
)

// pattern is a regular expression that is compiled when it is first needed:
// there are some fifty here, a run needs few of them, and all of them take
// longer to compile than a plan takes to read.
type pattern func() *regexp.Regexp

func patternOf(text string) pattern {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
}
