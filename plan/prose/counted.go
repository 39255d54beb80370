package prose

import (
	"fmt"
	"strconv"
	"unicode"
	"unicode/utf8"
)

// Counted prints a number of things, 0 or more, with their noun in the singular:
// "1 step", "3 steps". The noun takes an s.
func Counted(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return strconv.Itoa(n) + " " + noun
}

// Capital is a text that begins with a capital.
func Capital(text string) string {
	if text == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

// Minutes prints a length known to the minute: "9 min", "1 h 39 min", and
// "under 1 min" for what is less but not nothing.
func Minutes(minutes float64) string {
	n := int(minutes + 0.5)
	switch {
	case n == 0 && minutes > 0:
		return "under 1 min"
	case n < 60:
		return strconv.Itoa(n) + " min"
	case n%60 == 0:
		return fmt.Sprintf("%d h", n/60)
	}
	return fmt.Sprintf("%d h %d min", n/60, n%60)
}
