package align

import "strings"

// The sound of a word, roughly: spelling is read into classes of sounds, and two
// words are as far apart as the cheapest way of turning the sounds of one into
// those of the other (Levenshtein 1966, weighted). The rules of spelling are
// ours. Cost: the product of two lengths, at most soundMax each.

const soundMax = 24

// sounds reads the spelling of an English word. Vowels are a e i o u, S and C
// are "sh" and "ch", T is "th", N is "ng".
func sounds(word string) string {
	w := strings.Map(func(r rune) rune {
		if r < 'a' || r > 'z' {
			return -1
		}
		return r
	}, strings.ToLower(word))
	out := make([]byte, 0, len(w))
	add := func(s byte) {
		if n := len(out); n == 0 || out[n-1] != s {
			out = append(out, s)
		}
	}
	for i := 0; i < len(w) && len(out) < soundMax; {
		n, s := sound(w, i)
		for j := 0; j < len(s); j++ {
			add(s[j])
		}
		i += n
	}
	return string(out)
}

// clusters are letters that are one sound or two; the longest come first.
var clusters = [...]struct{ letters, sound string }{
	{"tion", "San"}, {"sion", "San"}, {"ough", "o"}, {"augh", "o"}, {"eigh", "e"},
	{"tch", "C"}, {"sch", "S"}, {"dge", "J"}, {"igh", "i"},
	{"ph", "f"}, {"ck", "k"}, {"ch", "C"}, {"sh", "S"}, {"th", "T"}, {"gh", ""},
	{"qu", "kw"}, {"wh", "w"}, {"ng", "N"},
	{"ee", "i"}, {"ea", "i"}, {"ie", "i"}, {"oo", "u"}, {"ou", "u"}, {"ow", "o"},
	{"ai", "e"}, {"ay", "e"}, {"ei", "e"}, {"ey", "i"}, {"oa", "o"}, {"au", "o"},
	{"aw", "o"}, {"oi", "o"}, {"oy", "o"}, {"ue", "u"}, {"ew", "u"}, {"ui", "u"},
}

// sound reads the letters of w from i on: how many, and what they sound like.
func sound(w string, i int) (int, string) {
	rest := w[i:]
	if i == 0 {
		for _, silent := range [...]string{"kn", "wr", "gn", "ps", "pn"} {
			if strings.HasPrefix(rest, silent) {
				return 2, rest[1:2]
			}
		}
	}
	for _, c := range clusters {
		if strings.HasPrefix(rest, c.letters) {
			return len(c.letters), c.sound
		}
	}
	soft := len(rest) > 1 && strings.IndexByte("eiy", rest[1]) >= 0
	switch c := rest[0]; {
	case c == 'e' && len(rest) == 1 && i > 1:
		return 1, "" // silent at the end
	case c == 'c' && soft:
		return 1, "s"
	case c == 'c' || c == 'q':
		return 1, "k"
	case c == 'x':
		return 1, "ks"
	case c == 'g' && soft && i > 0, c == 'j':
		return 1, "J"
	case c == 'y':
		return 1, "i"
	case c == 'h' && i > 0 && vowel(w[i-1]):
		return 1, ""
	}
	return 1, rest[:1]
}

func vowel(s byte) bool { return strings.IndexByte("aeiou", s) >= 0 }

// kin are classes of consonants that are taken for each other.
var kin = [...]string{"pbfvw", "tdT", "kgN", "szSCJ", "mnN", "lrw", "sT"}

// costs of sounds, in halves of a hundredth.
const (
	costVowel  = 40 // a vowel for another
	costKin    = 40 // a consonant for one of its kin
	costOther  = 100
	costSlip   = 50  // a vowel more or less
	costLoss   = 100 // a consonant more or less
	costWeak   = 50  // a weak one: h, w, r, and t or d after n
	costMatter = 60  // a vowel for a consonant makes it worse still
)

// distances are the cost of each sound for each, and of each more or less, made once.
type distances struct {
	other [128][128]uint8
	alone [128]uint8
}

func newDistances() *distances {
	var d distances
	for a := range d.other {
		for b := range d.other[a] {
			d.other[a][b] = substitute(byte(a), byte(b))
		}
		d.alone[a] = uint8(slip(byte(a)))
	}
	return &d
}

func substitute(a, b byte) uint8 {
	switch {
	case a == b:
		return 0
	case vowel(a) && vowel(b):
		return costVowel
	case vowel(a) || vowel(b):
		return costOther + costMatter
	}
	for _, class := range kin {
		if strings.IndexByte(class, a) >= 0 && strings.IndexByte(class, b) >= 0 {
			return costKin
		}
	}
	return costOther
}

func slip(s byte) int {
	switch {
	case vowel(s):
		return costSlip
	case s == 'h' || s == 'w' || s == 'r':
		return costWeak
	}
	return costLoss
}

// weight is what a word's sounds would cost to leave out.
func weight(sounds string) int {
	sum := 0
	for i := 0; i < len(sounds); i++ {
		sum += slip(sounds[i])
	}
	return sum
}

// apart is the distance of two words' sounds over the weight of the longer:
// 0 for the same, 1 for nothing in common.
func (d *distances) apart(a, b string) float64 {
	if len(a) > soundMax {
		a = a[:soundMax]
	}
	if len(b) > soundMax {
		b = b[:soundMax]
	}
	var row [soundMax + 1]int
	for j := 0; j < len(b); j++ {
		row[j+1] = row[j] + int(d.alone[b[j]&127])
	}
	whole := row[len(b)]
	other := 0
	for i := 0; i < len(a); i++ {
		corner, drop := row[0], int(d.alone[a[i]&127])
		other += drop
		row[0] = corner + drop
		others := &d.other[a[i]&127]
		for j := 0; j < len(b); j++ {
			best := min(corner+int(others[b[j]&127]), row[j+1]+drop, row[j]+int(d.alone[b[j]&127]))
			corner, row[j+1] = row[j+1], best
		}
	}
	if whole = max(whole, other); whole == 0 {
		return 1
	}
	return float64(row[len(b)]) / float64(whole)
}
