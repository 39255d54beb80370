package prose

import (
	"strings"

	"fixslate/plan/trade"
)

// price reads "£28.50", "€5", "$1.2m", "£20-30".
func (s *scanner) price(i int) (expression, bool) {
	first, end, ok := s.priceAt(i)
	if !ok {
		return expression{}, false
	}
	e := expression{kind: Money, start: i, end: end, said: first.said, values: []Value{first.Value}}
	at := s.over(end)
	word := s.word(at) == "to" && at > end
	if word || s.mark(at) == '-' || s.mark(at) == '–' {
		next := s.over(at + 1)
		second, until, ok := s.priceAt(next)
		if !ok {
			second, until, ok = s.priceOf(next, first.Unit)
			first.said = first.bare
		}
		if ok && s.closed(until) && second.Number > first.Number {
			e.kind, e.end, e.said = Range, until, first.said+" to "+second.said
			e.values = append(e.values, second.Value)
			return e, true
		}
	}
	return e, s.closed(end)
}

type pricing struct {
	Value
	said string
	bare string // without the currency
}

func (s *scanner) priceAt(i int) (pricing, int, bool) {
	unit, ok := moneySigns[s.mark(i)]
	if !ok {
		return pricing{}, i, false
	}
	return s.priceOf(s.over(i+1), unit)
}

func (s *scanner) priceOf(i int, unit trade.Unit) (pricing, int, bool) {
	n, ok := s.digits(i)
	if !ok || n.bottom > 0 {
		return pricing{}, i, false
	}
	p := pricing{Value: Value{n.value, unit}, bare: n.words()}
	end := n.end
	scale := strings.ToLower(s.at(end))
	if s.kind(end) == spaceToken {
		scale = s.word(end + 1)
		if numberWords[scale].class == scaleWord {
			end++
		}
	}
	if full, ok := moneyScales[scale]; ok {
		p.Number *= numberWords[full].value
		p.bare += " " + full
		end++
	} else if len(n.decimals) == 2 {
		p.said = pounds(&n, unit)
		return p, end, true
	}
	p.said = p.bare + " " + moneySaid(unit, p.Number)
	return p, end, true
}

// moneyScales are what may stand behind a price for thousands and more.
var moneyScales = map[string]string{"k": "thousand", "thousand": "thousand", "m": "million", "mn": "million", "million": "million",
	"bn": "billion", "billion": "billion", "trillion": "trillion"}

// pounds says an amount with its hundredths: "twenty-eight pounds fifty".
func pounds(n *numeral, unit trade.Unit) string {
	hundredths := strings.TrimLeft(n.decimals, "0")
	small := moneySaid("c", 2)
	if unit == "GBP" {
		small = moneySaid("p", 2)
	}
	switch {
	case hundredths == "":
		return cardinal(n.whole) + " " + moneySaid(unit, n.value)
	case strings.Trim(n.whole, "0") == "":
		return cardinal(hundredths) + " " + small
	}
	return cardinal(n.whole) + " " + moneySaid(unit, parseDecimal(n.whole, "")) + " " + cardinal(hundredths)
}

// isPrice judges "pounds" behind a number: money if the words around speak of
// it.
func (s *scanner) isPrice(after *numeral, end int) bool {
	near := func(i, way, most int) bool {
		for ; s.kind(i) != noToken && most > 0; i += way {
			if s.kind(i) == wordToken {
				most--
			}
			if priceWords[s.word(i)] {
				return true
			}
		}
		return false
	}
	if near(after.start-1, -1, 6) || near(end, 1, 4) {
		return true
	}
	next := s.over(end) // "eighteen pounds fifty"
	return next > end && (s.number(next).class == tensWord || s.number(next).class == teenWord || s.kind(next) == digitToken)
}

// currency reads money written as a word.
func (s *scanner) currency(i int, after *numeral) (measure, bool) {
	w := s.word(i)
	if coiners[w] && s.kind(i+1) == spaceToken && moneyWords[s.word(i+2)] != "" {
		i += 2 // "american dollars"
		w = s.word(i)
	}
	unit, ok := moneyWords[strings.TrimSuffix(w, "'s")]
	if w == "p" && (!after.inWords && s.kind(i-1) == digitToken || after.inWords && after.value >= 5 && after.value < 100 && s.isSum(i+1)) {
		unit, ok = "p", true
	}
	if !ok || s.isGlued(i+1) {
		return measure{}, false
	}
	return measure{unit: unit, start: i, end: i + 1, spelled: len(w) > 3 && w != "euro", money: true}, true
}

func moneySaid(unit trade.Unit, number float64) string {
	name := coins[unit]
	if number == 1 || unit == "JPY" || unit == "p" {
		return name
	}
	return name + "s"
}

// coins are the names of one of each currency, of "p" of any number.
var coins = map[trade.Unit]string{"GBP": "pound", "EUR": "euro", "USD": "dollar", "JPY": "yen", "p": "pence", "c": "cent"}

// moneyWords are currencies written as words.
var moneyWords = map[string]trade.Unit{
	"quid": "GBP", "sterling": "GBP", "gbp": "GBP", "pence": "p", "euro": "EUR", "euros": "EUR", "eur": "EUR",
	"dollar": "USD", "dollars": "USD", "bucks": "USD", "usd": "USD", "cents": "c", "cent": "c",
	"pound": "GBP", "pounds": "GBP", "yen": "JPY",
}

// moneySigns are currencies written as signs.
var moneySigns = map[rune]trade.Unit{'£': "GBP", '€': "EUR", '$': "USD", '¥': "JPY"}

// isSum says whether what stands at token i lets "fifty p" be pence: the end of its
// piece, or what they are paid for.
func (s *scanner) isSum(i int) bool {
	at := s.over(i)
	switch s.word(at) {
	case "", "each", "a", "for", "apiece", "per", "more", "less", "worth":
		return s.kind(at) != digitToken
	}
	return false
}
