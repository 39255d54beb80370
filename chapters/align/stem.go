package align

import "strings"

// stem brings the forms of an English word to one: lower case, no plural, no
// -ing and -ed, British and American endings alike. It need not be a word, only
// the same for both sides.
func stem(w string) string {
	w = strings.ToLower(w)
	if i := strings.IndexByte(w, '\''); i >= 0 {
		if i == 0 || w[i+1:] == "s" {
			w = strings.ReplaceAll(strings.TrimSuffix(w, "'s"), "'", "")
		} else {
			w = strings.ReplaceAll(w, "'", "")
		}
	}
	switch {
	case len(w) > 4 && strings.HasSuffix(w, "ies"):
		w = w[:len(w)-3] + "y"
	case len(w) > 4 && (strings.HasSuffix(w, "sses") || strings.HasSuffix(w, "xes") || strings.HasSuffix(w, "ches") || strings.HasSuffix(w, "shes")):
		w = w[:len(w)-2]
	case len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss") && !strings.HasSuffix(w, "us"):
		w = w[:len(w)-1]
	}
	switch {
	case len(w) > 5 && strings.HasSuffix(w, "ing"):
		w = undouble(w[:len(w)-3])
	case len(w) > 4 && strings.HasSuffix(w, "ed") && !strings.HasSuffix(w, "eed"):
		w = undouble(w[:len(w)-2])
	case len(w) > 5 && strings.HasSuffix(w, "ly"):
		w = w[:len(w)-2]
	}
	switch {
	case len(w) > 4 && strings.HasSuffix(w, "tre"):
		w = w[:len(w)-2] + "er"
	case len(w) > 5 && strings.HasSuffix(w, "our"):
		w = w[:len(w)-2] + "r"
	case len(w) > 5 && strings.HasSuffix(w, "ise"):
		w = w[:len(w)-2] + "z"
	}
	if len(w) > 3 && strings.HasSuffix(w, "e") {
		w = w[:len(w)-1]
	}
	return w
}

// undouble takes back the doubled letter of "clipping" and "clipped".
func undouble(w string) string {
	n := len(w)
	if n > 3 && w[n-1] == w[n-2] && !strings.ContainsRune("lsaeiou", rune(w[n-1])) {
		return w[:n-1]
	}
	return w
}

// stems reads a list of words into a set of their stems.
func stems(words string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(words) {
		set[stem(w)] = true
	}
	return set
}
