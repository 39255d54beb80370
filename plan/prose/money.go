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
		if scale == "million" || scale == "thousand" || scale == "billion" {
			end++
		}
	}
	switch scale {
	case "k", "thousand":
		p.Number *= 1e3
		p.bare += " thousand"
		end++
	case "m", "mn", "million":
		p.Number *= 1e6
		p.bare += " million"
		end++
	case "bn", "billion":
		p.Number *= 1e9
		p.bare += " billion"
		end++
	default:
		if len(n.decimals) == 2 {
			p.said = pounds(&n, unit)
			return p, end, true
		}
	}
	p.said = p.bare + " " + moneySaid(unit, p.Number)
	return p, end, true
}

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
	for i, words := after.start-1, 0; i >= 0 && words < 6; i-- {
		if s.kind(i) == wordToken {
			words++
			if priceWords[s.word(i)] {
				return true
			}
		}
	}
	for i, words := end, 0; i < len(s.tokens) && words < 4; i++ {
		if s.kind(i) == wordToken {
			words++
			if priceWords[s.word(i)] {
				return true
			}
		}
	}
	next := s.over(end) // "eighteen pounds fifty"
	return next > end && (s.number(next).class == tensWord || s.number(next).class == teenWord || s.kind(next) == digitToken)
}

var priceWords = map[string]bool{
	"cost": true, "costs": true, "costing": true, "paid": true, "pay": true, "price": true, "priced": true, "prices": true, "worth": true,
	"charge": true, "charges": true, "charged": true, "spend": true, "spent": true, "bill": true, "cheap": true, "cheaper": true,
	"expensive": true, "buy": true, "bought": true, "sell": true, "sold": true, "save": true, "saves": true, "saved": true,
	"delivered": true, "postage": true, "quote": true, "quoted": true, "refund": true, "budget": true, "money": true, "each": true,
	"hour": false, "new": false, "vat": true, "labour": true, "online": true, "retail": true, "price-wise": true,
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
	one, many := "", ""
	switch unit {
	case "GBP":
		one, many = "pound", "pounds"
	case "EUR":
		one, many = "euro", "euros"
	case "USD":
		one, many = "dollar", "dollars"
	case "JPY":
		return "yen"
	case "p":
		return "pence"
	case "c":
		one, many = "cent", "cents"
	}
	if number == 1 {
		return one
	}
	return many
}

// moneyWords are currencies written as words.
var moneyWords = map[string]trade.Unit{
	"quid": "GBP", "sterling": "GBP", "gbp": "GBP", "pence": "p", "euro": "EUR", "euros": "EUR", "eur": "EUR",
	"dollar": "USD", "dollars": "USD", "bucks": "USD", "usd": "USD", "cents": "c", "cent": "c",
	"pound": "GBP", "pounds": "GBP", "yen": "JPY",
}

// coiners tell whose money is meant.
var coiners = map[string]bool{"american": true, "australian": true, "canadian": true, "us": true, "british": true, "irish": true}

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
