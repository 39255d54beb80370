package trade

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// number is a number as an author writes it: "3.0", "1 500", "1 1/2", "½".
type number struct {
	value   float64
	written string
	aught   bool // n/0, a wire gauge: 1/0 is 0, 2/0 is -1
}

// errNoNumber says that a text does not start with a number.
var errNoNumber = errors.New("no number")

var vulgar = map[rune]float64{
	'½': 1. / 2, '⅓': 1. / 3, '⅔': 2. / 3, '¼': 1. / 4, '¾': 3. / 4, '⅕': 1. / 5, '⅖': 2. / 5, '⅗': 3. / 5, '⅘': 4. / 5,
	'⅙': 1. / 6, '⅚': 5. / 6, '⅐': 1. / 7, '⅛': 1. / 8, '⅜': 3. / 8, '⅝': 5. / 8, '⅞': 7. / 8, '⅑': 1. / 9, '⅒': 1. / 10,
}

// scanNumber reads the number at the start of s and gives the rest. It reads
// decimals with a full stop, fractions ("1/2", "1 1/2", "1-1/2", "½"), groups
// of three digits set off by a space, and a sign. A decimal comma, "NaN" and
// infinity are errors; no number at all is errNoNumber.
func scanNumber(s string) (n number, rest string, err error) {
	sign, body := scanSign(s)
	if word := leadingWord(body); word == "nan" || word == "inf" || word == "infinity" || strings.HasPrefix(body, "∞") {
		return n, s, fmt.Errorf("%q is no number; write the value, what the meter shows in words (\"over range\"), or \"?\" where it is not known", shorten(s))
	}
	whole, rest := scanDigits(body)
	n, rest, err = scanRest(whole, rest)
	if err != nil {
		return n, s, err
	}
	if math.IsInf(n.value, 0) {
		return n, s, fmt.Errorf("%q is too large a number", shorten(s))
	}
	if sign == "-" {
		n.value, n.written = -n.value, "-"+n.written
	}
	return n, rest, nil
}

func scanSign(s string) (sign, rest string) {
	for _, p := range []string{"-", "−", "+"} {
		if after, ok := strings.CutPrefix(s, p); ok {
			if p == "−" {
				p = "-"
			}
			return p, strings.TrimLeft(after, " ")
		}
	}
	return "", s
}

// leadingWord is the lower-case run of letters at the start of s, at most nine.
func leadingWord(s string) string {
	for i, r := range s {
		if !unicode.IsLetter(r) {
			return strings.ToLower(s[:i])
		}
		if i > 8 {
			return ""
		}
	}
	return strings.ToLower(s)
}

// scanDigits takes the digits at the start of s, "1500" or in groups "1 500".
func scanDigits(s string) (digits, rest string) {
	i := countDigits(s)
	if i == 0 || i > 3 || s[0] == '0' {
		return s[:i], s[i:]
	}
	for {
		r, size := utf8.DecodeRuneInString(s[i:])
		if !isGap(r) || countDigits(s[i+size:]) != 3 || startsFraction(s[i+size:]) {
			return s[:i], s[i:]
		}
		i += size + 3
	}
}

func countDigits(s string) int {
	i := 0
	for i < len(s) && '0' <= s[i] && s[i] <= '9' {
		i++
	}
	return i
}

// isGap holds for the spaces that set off thousands.
func isGap(r rune) bool { return r == ' ' || r == '\u00a0' || r == '\u2009' || r == '\u202f' }

// startsFraction holds for digits, a stroke and digits.
func startsFraction(s string) bool {
	i := countDigits(s)
	return i > 0 && i < len(s) && s[i] == '/' && countDigits(s[i+1:]) > 0
}

// scanRest reads what follows the whole digits of a number.
func scanRest(whole, rest string) (number, string, error) {
	first, size := utf8.DecodeRuneInString(rest)
	switch {
	case whole == "" && vulgar[first] != 0:
		return number{value: vulgar[first], written: string(first)}, rest[size:], nil
	case strings.HasPrefix(rest, ".") && countDigits(rest[1:]) > 0:
		i := 1 + countDigits(rest[1:])
		return plainNumber(whole+rest[:i], rest[i:])
	case whole == "":
		return number{}, rest, errNoNumber
	case strings.HasPrefix(rest, ",") && countDigits(rest[1:]) > 0:
		return number{}, rest, commaError(whole, rest[1:1+countDigits(rest[1:])])
	case strings.HasPrefix(rest, "/") && countDigits(rest[1:]) > 0:
		return fraction(whole, rest)
	case vulgar[first] != 0:
		return mixed(whole, vulgar[first], string(first), rest[size:])
	}
	if strings.HasPrefix(rest, " ") || strings.HasPrefix(rest, "-") {
		next, size := utf8.DecodeRuneInString(rest[1:])
		if vulgar[next] != 0 {
			return mixed(whole, vulgar[next], rest[:1]+string(next), rest[1+size:])
		}
		if startsFraction(rest[1:]) {
			i := 1 + countDigits(rest[1:])
			f, after, err := fraction(rest[1:i], rest[i:])
			if err == nil && !f.aught && f.value < 1 {
				return mixed(whole, f.value, rest[:1]+f.written, after)
			}
		}
	}
	return plainNumber(whole, rest)
}

func plainNumber(digits, rest string) (number, string, error) {
	bare := strings.Map(func(r rune) rune {
		if isGap(r) {
			return -1
		}
		return r
	}, digits)
	v, err := strconv.ParseFloat(bare, 64)
	if err != nil {
		return number{}, rest, fmt.Errorf("%q is too large a number", shorten(digits))
	}
	return number{value: v, written: digits}, rest, nil
}

// fraction reads "1/2" from its numerator and the stroke with what follows.
func fraction(top, stroke string) (number, string, error) {
	i := 1 + countDigits(stroke[1:])
	a, err1 := strconv.ParseFloat(top, 64)
	b, err2 := strconv.ParseFloat(stroke[1:i], 64)
	if err1 != nil || err2 != nil || len(top) > 9 {
		return number{}, stroke, fmt.Errorf("%q is no fraction of a usual size", shorten(top+stroke[:i]))
	}
	n := number{value: a / b, written: top + stroke[:i]}
	if b == 0 {
		n.aught, n.value = true, 1-a
	}
	return n, stroke[i:], nil
}

func mixed(whole string, part float64, written, rest string) (number, string, error) {
	n, rest, err := plainNumber(whole, rest)
	n.value += part
	n.written += written
	return n, rest, err
}

// commaError refuses a decimal comma: "1,500" may be one and a half or fifteen
// hundred, and a reader on the other side of a border takes it the other way.
func commaError(whole, part string) error {
	if len(part) == 3 && whole != "0" {
		return fmt.Errorf("\"%s,%s\" can be read two ways; write %s%s, or %s.%s with a full stop", whole, part, whole, part, whole, part)
	}
	return fmt.Errorf("\"%s,%s\" has a decimal comma; write %s.%s", shorten(whole), shorten(part), shorten(whole), shorten(part))
}

// formatNumber prints a computed number with at most twelve figures, which
// hides the last bits of a conversion.
func formatNumber(v float64) string {
	if v == 0 {
		return "0" // no minus zero
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', 11, 64), 64)
	if err != nil {
		rounded = v
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// same holds for two numbers that differ by no more than a conversion may.
func same(a, b float64) bool {
	return a == b || math.Abs(a-b) <= 1e-9*max(math.Abs(a), math.Abs(b))
}
