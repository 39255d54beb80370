package prose

import (
	"cmp"
	"strings"

	"fixslate/plan/trade"
)

// said gives the words for an expression that is written in digits.
func (s *scanner) said(e *expression) string {
	if e.said != "" || e.kind == noFigure {
		return e.said
	}
	if len(e.amounts) == 1 {
		return e.joint + s.amountWords(e, 0)
	}
	var b strings.Builder
	for i := range e.amounts {
		if i > 0 {
			b.WriteString(cmp.Or(e.joint, s.slice(e.amounts[i-1].until, e.amounts[i].start)))
		}
		b.WriteString(s.amountWords(e, i))
	}
	return b.String()
}

// amountWords says one amount of an expression with its unit.
func (s *scanner) amountWords(e *expression, i int) string {
	a := &e.amounts[i]
	if a.inWords {
		return s.slice(a.start, a.until)
	}
	last := i == len(e.amounts)-1
	alone := len(e.amounts) == 1
	if !a.hasUnit {
		return s.bare(e, a, alone)
	}
	number := a.value
	if e.kind == Range || e.kind == Size {
		number = 2
	}
	attributive := last && s.attributive(a.until)
	if attributive {
		number = 1
	}
	unit := a.of.says(number)
	if a.of.spelled {
		unit = s.slice(a.of.start, a.of.end)
	}
	glue := " "
	if s.mark(a.end) == '-' && a.of.spelled {
		glue = "-"
	}
	switch {
	case a.bottom > 0 && a.whole == "" && alone:
		return s.fractionOf(e, a, unit, attributive, glue)
	case a.of.money && len(a.decimals) == 2 && alone && a.of.unit != "JPY":
		return pounds(&a.numeral, a.of.unit)
	case a.of.unit == trade.Gauge && strings.EqualFold(s.at(a.of.start), "awg"):
		unit = "A W G"
	}
	return a.words() + glue + unit
}

// bare says a number without a unit.
func (s *scanner) bare(e *expression, a *amount, alone bool) string {
	switch {
	case a.bottom > 0 && a.whole == "" && alone:
		if s.isArticle(s.over(a.until)) || s.hasDeterminer(e.start) || s.mark(a.until) == '-' {
			return a.words() // "half a turn", "the half"
		}
		return fractionAlone(&a.numeral)
	case (e.kind == Date || e.kind == Range && isYear(&e.amounts[0].numeral)) && isYear(&a.numeral):
		return year(int(a.value))
	case alone && a.decimals == "" && a.sign == 0 && len(a.whole) > 2 && !a.grouped && digitNouns[s.labelBefore(e.start)]:
		return codeDigits(a.whole)
	}
	return a.words()
}

// labelBefore is the word before token i, also if an abbreviation's stop stands
// between.
func (s *scanner) labelBefore(i int) string {
	at := s.back(i)
	if s.mark(at) == '.' {
		at--
	}
	return s.word(at)
}

// fractionAlone says a fraction that nothing follows: "a third", "half",
// "three quarters".
func fractionAlone(n *numeral) string {
	if n.top != 1 || n.whole != "" || n.sign != 0 || n.bottom == 2 {
		return n.words()
	}
	return article(n.words()) + n.words()
}

// article is "a " or "an ", as it stands before a fraction or a unit.
func article(word string) string {
	if strings.ContainsRune("aeio", rune(word[0])) || strings.HasPrefix(word, "hour") {
		return "an "
	}
	return "a "
}

// fractionOf says a fraction of a unit: "three eighths of an inch", "half a
// turn", and before a noun "three quarter inch union".
func (s *scanner) fractionOf(e *expression, a *amount, unit string, attributive bool, glue string) string {
	one := a.of.says(1)
	if a.of.spelled {
		one = unit
		if a.value < 1 {
			one = a.of.unit.Spoken(1)
		}
	}
	words := a.words()
	switch {
	case s.ofA(s.over(a.end)) != s.over(a.end):
		// "1/2 a turn", "1/4 of an inch": the words stand there.
		lead := ""
		if a.top == 1 && a.bottom > 2 && s.word(s.over(a.end)) == "of" && !s.hasDeterminer(e.start) {
			lead = strings.TrimSuffix(fractionAlone(&a.numeral), words)
		}
		return lead + words + s.slice(a.end, a.of.start) + one
	case attributive || s.hasDeterminer(e.start) || glue == "-":
		if a.bottom == 4 && a.top > 1 {
			words = strings.TrimSuffix(words, "s")
		}
		return words + glue + one
	case a.bottom == 2:
		return words + " " + article(one) + one
	case a.of.unit == "turn" && a.top == 1 && a.bottom == 4:
		return fractionAlone(&a.numeral) + " " + one
	}
	return fractionAlone(&a.numeral) + " of " + article(one) + one
}

// hasDeterminer says whether an article or the like stands before token i.
func (s *scanner) hasDeterminer(i int) bool {
	switch s.word(s.back(i)) {
	case "a", "an", "the", "this", "that", "your", "my", "our", "its", "each", "every", "any", "one", "two", "three", "four", "six", "same", "another":
		return true
	}
	return false
}

// attributive says whether the noun that is measured stands behind token i.
func (s *scanner) attributive(i int) bool {
	if s.mark(i) == '-' && s.kind(i+1) == wordToken {
		return true
	}
	if s.kind(i) != spaceToken || strings.Contains(s.at(i), "\n") {
		return false
	}
	w := s.at(i + 1)
	if s.kind(i+1) != wordToken {
		return false
	}
	if s.capitalAt(i + 1) {
		return s.mark(i) == 0 && len(w) > 2 && !s.startsSentence(i) // "2.5 mm Allen key"
	}
	return !functionWords[w] && !strings.HasSuffix(w, "ly") && len(w) > 1
}

func (s *scanner) startsSentence(i int) bool {
	r := s.mark(i - 1)
	return r == '.' || r == '!' || r == '?'
}
