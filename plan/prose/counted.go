package prose

import "strconv"

// Counted prints a number of things, 0 or more, with their noun in the singular:
// "1 step", "3 steps". The noun takes an s.
func Counted(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return strconv.Itoa(n) + " " + noun
}
