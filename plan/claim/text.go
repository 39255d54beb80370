package claim

import "strings"

// Text reads plain text: every line that is not blank is one Claim.
func Text(src string) []Claim {
	var all []Claim
	n := 0
	for line := range strings.Lines(src) {
		n++
		line = strings.TrimSpace(line)
		if line == "" {
			continue
		}
		c := Sentence(line)
		c.Line = n
		all = append(all, c)
	}
	return all
}
