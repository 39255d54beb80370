package prose

import "strings"

// mostDecimals is how many digits are taken behind a point in words.
const mostDecimals = 40

// decimals reads "point six four" and "point sixty four" behind a whole number
// or alone.
func (c *count) decimals(n *numeral) bool {
	at := c.s.link(n.end)
	if n.end == n.start {
		at = n.start
	}
	if c.s.word(at) != "point" || at == n.end && n.end > n.start {
		return false
	}
	digits, end := "", at+1
	for {
		next := c.s.link(end)
		w := c.s.number(next)
		if next == end {
			break
		}
		if w.class.digit() && len(digits) < mostDecimals {
			digits += unitDigit(w)
			end = next + 1
			continue
		}
		if digits == "" && (w.class == tensWord || w.class == teenWord) {
			digits = cardinalDigits(w.value)
			end = next + 1
			if ones := c.s.number(c.s.link(end)); w.class == tensWord && ones.class == oneWord && c.s.link(end) > end {
				digits = cardinalDigits(w.value + ones.value)
				end = c.s.link(end) + 1
			}
		}
		break
	}
	if digits == "" {
		return false
	}
	n.decimals, n.end = digits, end
	whole := "0"
	if n.value > 0 {
		whole = formatWhole(n.value)
	}
	n.value = parseDecimal(whole, digits)
	return true
}

func cardinalDigits(v float64) string {
	return string([]byte{'0' + byte(v)/10, '0' + byte(v)%10})
}

// scaled multiplies "two point five million".
func (s *scanner) scaled(n *numeral) {
	if next := s.link(n.end); next > n.end {
		if w := s.number(next); w.class == scaleWord {
			n.value *= w.value
			n.end = next + 1
		}
	}
}

// fractionWord adds "and a half", "and three quarters", and turns "three" into
// "three eighths".
func (s *scanner) fractionWord(n *numeral) {
	next := s.link(n.end)
	if next == n.end {
		return
	}
	if bottom := s.denominator(next); bottom > 0 && n.value >= 1 && (n.value <= 63 || bottom == 1000 && n.value < 1000) && n.value == float64(int(n.value)) {
		if isPlural := strings.HasSuffix(s.word(s.denominatorEnd(next)-1), "s"); isPlural != (n.value == 1) || bottom == 2 {
			n.setFraction(int(n.value), bottom)
			n.end = s.denominatorEnd(next)
		} else if bottom == 4 {
			s.quarters(n, next)
		}
		return
	}
	if s.word(next) != "and" {
		return
	}
	top, at := 1, s.link(next+1)
	if at == next+1 {
		return
	}
	if v, end := s.underHundred(at); end > at {
		top, at = v, s.link(end)
	} else if s.isArticle(at) {
		at = s.link(at + 1)
	} else if s.word(at) != "half" {
		return
	}
	if bottom := s.denominator(at); bottom > top {
		n.whole = formatWhole(n.value)
		n.setFraction(top, bottom)
		n.end = s.denominatorEnd(at)
	}
}

// quarters reads "three quarter inch" as a fraction and "thirty quarter turns" as
// so many quarters. next is the token of "quarter".
func (s *scanner) quarters(n *numeral, next int) {
	noun := s.word(s.link(next + 1))
	switch {
	case noun == "turns":
		n.value /= 4
		n.end = next + 1
		n.decimals = "25" // no count of turns any more
	case n.value == 3 && !strings.HasSuffix(noun, "s") && noun != "of" && noun != "to" && noun != "past":
		n.setFraction(3, 4)
		n.end = next + 1
	}
}

// underHundred reads 1 to 99 at token i; end is i if there is none.
func (s *scanner) underHundred(i int) (value, end int) {
	switch w := s.number(i); w.class {
	case oneWord, teenWord:
		return int(w.value), i + 1
	case tensWord:
		if s.denominator(i) > 0 {
			return 0, i
		}
		next := s.link(i + 1)
		if ones := s.number(next); next > i+1 && ones.class == oneWord {
			return int(w.value + ones.value), next + 1
		}
		return int(w.value), i + 1
	}
	return 0, i
}

// denominator reads "eighths", "thirty-seconds", "sixty-fourths" at token i.
func (s *scanner) denominator(i int) int {
	if bottom := fractionWords[s.word(i)]; bottom > 0 {
		return bottom
	}
	if w := s.number(i); w.class == tensWord && (w.value == 30 || w.value == 60) && s.link(i+1) == i+2 {
		switch last := s.word(i + 2); strings.TrimSuffix(last, "s") {
		case "second":
			if s.mark(i+1) != '-' && !s.ofInch(i+3) {
				return 0 // "thirty seconds" last
			}
			return int(w.value) + 2
		case "fourth":
			return int(w.value) + 4
		}
	}
	return 0
}

// ofInch says whether "of an inch" or "inch" follows.
func (s *scanner) ofInch(i int) bool {
	at := s.over(i)
	if s.word(at) == "of" {
		at = s.ofA(at)
	}
	return s.word(at) == "inch"
}

func (s *scanner) denominatorEnd(i int) int {
	if fractionWords[s.word(i)] > 0 {
		return i + 1
	}
	return i + 3
}
