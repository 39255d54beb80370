package claim

import "strings"

// inflected gives the forms of verbs: "crack" in four; "break/broke/broken" has
// its past forms written out.
func inflected(verbs string) string {
	var b strings.Builder
	b.Grow(6 * len(verbs))
	put := func(parts ...string) {
		for _, p := range parts {
			b.WriteString(p)
		}
		b.WriteByte(' ')
	}
	for v := range strings.FieldsSeq(verbs) {
		base, past, irregular := strings.Cut(v, "/")
		put(base)
		put(thirdPerson(base))
		put(stem(base), "ing")
		if !irregular {
			put(pastOf(base))
			continue
		}
		for form := range strings.SplitSeq(past, "/") {
			put(form)
		}
	}
	return b.String()
}

func thirdPerson(verb string) string {
	switch {
	case strings.HasSuffix(verb, "s"), strings.HasSuffix(verb, "sh"), strings.HasSuffix(verb, "ch"), strings.HasSuffix(verb, "x"), strings.HasSuffix(verb, "o"), strings.HasSuffix(verb, "z"):
		return verb + "es"
	case yAfterConsonant(verb):
		return verb[:len(verb)-1] + "ies"
	}
	return verb + "s"
}

func pastOf(verb string) string {
	switch {
	case yAfterConsonant(verb):
		return verb[:len(verb)-1] + "ied"
	case strings.HasSuffix(verb, "e"):
		return verb + "d"
	}
	return stem(verb) + "ed"
}

// stem is what "-ing" is put behind: "crush", "chaf", "stripp".
func stem(verb string) string {
	n := len(verb)
	switch {
	case strings.HasSuffix(verb, "ee"), n < 3:
		return verb
	case verb[n-1] == 'e':
		return verb[:n-1]
	case vowel(verb[n-2]) && !vowel(verb[n-3]) && !vowel(verb[n-1]) && !strings.ContainsRune("wxy", rune(verb[n-1])) && !unstressed(verb):
		return verb + verb[n-1:]
	}
	return verb
}

// unstressed holds for verbs of two syllables, which do not double their last
// letter: "loosen", "hammer".
func unstressed(verb string) bool {
	groups := 0
	for i := range len(verb) {
		if vowel(verb[i]) && (i == 0 || !vowel(verb[i-1])) {
			groups++
		}
	}
	return groups > 1 && !strings.HasSuffix(verb, "set")
}

func vowel(c byte) bool { return strings.IndexByte("aeiou", c) >= 0 }

func yAfterConsonant(verb string) bool {
	n := len(verb)
	return n > 1 && verb[n-1] == 'y' && !vowel(verb[n-2])
}
