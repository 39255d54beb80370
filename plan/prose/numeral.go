package prose

import (
	"strconv"
	"strings"
)

// numeral is one number as it stands in a text.
type numeral struct {
	start, end  int // tokens, sign included
	value       float64
	sign        rune   // '-', '+' or 0
	whole       string // digits, separators left out; empty for ".5" and "1/2"
	decimals    string // digits behind the point
	top, bottom int    // fraction, bottom 0 for none
	inWords     bool
	digitRun    bool // written as single digits in words: "two two three one"
	grouped     bool // had thousands separators
	yearly      bool // a year in words: "twenty fourteen"
}

// signed applies the sign.
func (n *numeral) signed(sign rune) {
	if n.sign = sign; sign == '-' {
		n.value = -n.value
	}
}

// digits reads a number that begins with a digit, a decimal point or a fraction
// character at token i: "12", "1,200", "10 000", "1.5", ".5", "1/2", "1 1/2",
// "1½". The token after it may be anything; callers judge the boundary.
func (s *scanner) digits(i int) (numeral, bool) {
	n := numeral{start: i, end: i + 1}
	if top, bottom := vulgar(s.mark(i)); bottom > 0 {
		n.setFraction(top, bottom)
		return n, true
	}
	if s.mark(i) == '.' {
		if s.kind(i+1) != digitToken || s.kind(i-1).solid() || s.mark(i-1) == '.' {
			return n, false
		}
		n.decimals, n.end = s.at(i+1), i+2
		n.value = parseDecimal("0", n.decimals)
		return n, true
	}
	if s.kind(i) != digitToken {
		return n, false
	}
	n.whole = s.at(i)
	s.thousands(&n)
	s.decimalPart(&n)
	n.value = parseDecimal(n.whole, n.decimals)
	if n.decimals == "" && !n.grouped {
		s.fractionPart(&n)
		if n.bottom == 0 && s.word(s.link(n.end)) == "and" {
			s.fractionWord(&n) // "22 and a half"
		}
	}
	return n, true
}

func parseDecimal(whole, decimals string) float64 {
	const enough = 400 // digits; more change no float64
	whole = whole[:min(len(whole), enough)]
	decimals = decimals[:min(len(decimals), enough)]
	const largest = 1e200 // beyond any figure; a product of two units' worth stays finite, as JSON needs it
	v, _ := strconv.ParseFloat(whole+"."+decimals, 64)
	return min(v, largest)
}

// mostGroups is how many groups of three a number has at most; more are a list.
const mostGroups = 5

// thousands adds groups of three: "1,200", "10 000". An ordinary space groups
// only where "000" follows, because "4 100 mm screws" are four screws.
func (s *scanner) thousands(n *numeral) {
	if len(n.whole) > 3 || n.whole[0] == '0' {
		return
	}
	end, whole := n.end, n.whole
	separator := s.at(end)
	for groups := 0; groups < mostGroups; groups++ {
		if s.at(end) != separator || s.kind(end+1) != digitToken || len(s.at(end+1)) != 3 {
			break
		}
		switch separator {
		case ",", "\u00a0", "\u2009", "\u202f":
		case " ":
			if s.at(end+1) != "000" {
				return
			}
		default:
			return
		}
		whole += s.at(end + 1)
		end += 2
	}
	if end > n.end && !(s.mark(end) == ',' && s.kind(end+1) == digitToken) {
		n.whole, n.end, n.grouped = whole, end, true
	}
}

// decimalPart adds ".5"; and ",5" where it can't be a list or thousands.
func (s *scanner) decimalPart(n *numeral) {
	if s.kind(n.end+1) != digitToken {
		return
	}
	after := s.mark(n.end + 2)
	more := s.kind(n.end+3) == digitToken
	switch s.mark(n.end) {
	case '.':
		if after == '.' && more {
			return // a version, a date
		}
	case ',':
		list := s.mark(n.start-1) == ',' && s.kind(n.start-2) == digitToken
		if n.grouped || len(s.at(n.end+1)) > 2 || list || after == ',' && more {
			return
		}
	default:
		return
	}
	n.decimals = s.at(n.end + 1)
	n.end += 2
}

// fractionPart turns "1/2" into a fraction and adds "½", " 1/2" and "-1/2".
func (s *scanner) fractionPart(n *numeral) {
	if top, bottom, ok := s.stroke(n.start); ok {
		if s.kind(n.start-1) != markToken || s.mark(n.start-1) != '/' {
			n.whole, n.end = "", n.start+3
			n.setFraction(top, bottom)
		}
		return
	}
	at := n.end
	if s.kind(at) == spaceToken && len(s.at(at)) <= 3 || s.mark(at) == '-' && s.kind(at+1) == digitToken {
		at++
	}
	if top, bottom := vulgar(s.mark(at)); bottom > 0 && s.mark(n.end) != '-' {
		n.end = at + 1
		n.setFraction(top, bottom)
	} else if top, bottom, ok := s.stroke(at); ok && at > n.end {
		n.end = at + 3
		n.setFraction(top, bottom)
	}
}

// stroke reads a proper fraction with a usual denominator: "3/8", "5⁄16".
func (s *scanner) stroke(i int) (top, bottom int, ok bool) {
	r := s.mark(i + 1)
	if s.kind(i) != digitToken || r != '/' && r != '⁄' || s.kind(i+2) != digitToken {
		return 0, 0, false
	}
	if next := s.mark(i + 3); next == '/' || next == '.' && s.kind(i+4) == digitToken {
		return 0, 0, false
	}
	top, _ = strconv.Atoi(s.at(i))
	bottom, _ = strconv.Atoi(s.at(i + 2))
	if top >= bottom || s.at(i)[0] == '0' {
		return 0, 0, false
	}
	switch bottom {
	case 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16, 20, 32, 64, 100, 1000:
		return top, bottom, true
	}
	return 0, 0, false
}

func (n *numeral) setFraction(top, bottom int) {
	n.top, n.bottom = top, bottom
	n.value = parseDecimal("0"+n.whole, "") + float64(top)/float64(bottom)
}

// vulgar gives the fraction a character stands for, bottom 0 for none.
func vulgar(r rune) (top, bottom int) {
	f := vulgars[r]
	return f[0], f[1]
}

var vulgars = map[rune][2]int{'½': {1, 2}, '⅓': {1, 3}, '⅔': {2, 3}, '¼': {1, 4}, '¾': {3, 4}, '⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5},
	'⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8}}

// words says the number, its sign too. A fraction alone has no article: "half",
// "three quarters".
func (n *numeral) words() string {
	var b strings.Builder
	switch n.sign {
	case '-':
		b.WriteString("minus ")
	case '+':
		b.WriteString("plus ")
	}
	switch {
	case n.bottom > 0:
		if n.whole != "" {
			b.WriteString(cardinal(n.whole) + " and ")
		}
		if n.top > 1 {
			b.WriteString(cardinalOf(uint64(n.top)) + " ")
		} else if n.whole != "" {
			b.WriteString("a ")
		}
		b.WriteString(part(n.bottom, n.top))
		return b.String()
	case len(n.whole) >= longNumber && !n.grouped && n.decimals == "" && !strings.HasSuffix(n.whole, "000"):
		b.WriteString(eachDigit(n.whole))
	default:
		b.WriteString(cardinal(n.whole))
	}
	if n.decimals != "" {
		if n.whole != "" {
			b.WriteByte(' ')
		}
		b.WriteString("point " + eachDigit(n.decimals))
	}
	return b.String()
}

// longNumber is the length from which an ungrouped number is taken for a part
// number and said digit by digit.
const longNumber = 7

func formatWhole(v float64) string { return strconv.FormatFloat(v, 'f', 0, 64) }

// ParseNumber reads the number at the head of words, in words or digits, and
// gives it with the bytes it takes, 0 for none. It reads back what Spoken makes
// of a plain number: "minus one point five", "two hundred and forty", "three
// eighths", "one and a half".
func ParseNumber(words string) (float64, int) {
	// Reading a long text for one number would make a loop over it quadratic.
	const enough = 1 << 10
	for size := min(len(words), enough); ; size = len(words) {
		s := newScanner(words[:size])
		n, ok := s.signedNumeral(s.over(0))
		if !ok {
			return 0, 0
		}
		if end := int(s.tokens[n.end-1].end); end < size || size == len(words) {
			return n.value, end
		}
	}
}

// signedNumeral reads a number in digits or words, with its sign, at token i.
func (s *scanner) signedNumeral(i int) (numeral, bool) {
	sign := rune(0)
	switch s.mark(i) {
	case '-', '−', '–':
		sign = '-'
	case '+':
		sign = '+'
	default:
		if n, ok := s.digits(i); ok {
			return n, true
		}
		return s.words(i)
	}
	n, ok := s.digits(i + 1)
	n.start = i
	n.signed(sign)
	return n, ok
}
