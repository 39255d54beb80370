package prose

import (
	"strconv"
	"strings"
)

var unitWords = [...]string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine",
	"ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"}

var tensWords = [...]string{"", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}

var scaleWords = [...]string{"", " thousand", " million", " billion", " trillion"}

// longestCardinal is how many digits are said as one number; more are said one
// by one.
const longestCardinal = 15

// cardinal says a whole number as in British English: "two hundred and forty",
// "one thousand and five". Leading zeros are said.
func cardinal(digits string) string {
	switch {
	case digits == "":
		return ""
	case len(digits) > longestCardinal || digits[0] == '0' && len(digits) > 1:
		return eachDigit(digits)
	}
	n, _ := strconv.ParseUint(digits, 10, 64)
	return cardinalOf(n)
}

func cardinalOf(n uint64) string {
	if n == 0 {
		return unitWords[0]
	}
	var groups [len(scaleWords)]int
	top := 0
	for i := 0; n > 0 && i < len(groups); i++ {
		groups[i] = int(n % 1000)
		n /= 1000
		top = i
	}
	var b strings.Builder
	for i := top; i >= 0; i-- {
		if groups[i] == 0 {
			continue
		}
		if b.Len() > 0 {
			b.WriteByte(' ')
			if i == 0 && groups[0] < 100 {
				b.WriteString("and ")
			}
		}
		b.WriteString(underThousand(groups[i]))
		b.WriteString(scaleWords[i])
	}
	return b.String()
}

func underThousand(n int) string {
	if n < 100 {
		return underHundred(n)
	}
	words := unitWords[n/100] + " hundred"
	if n%100 > 0 {
		words += " and " + underHundred(n%100)
	}
	return words
}

func underHundred(n int) string {
	switch {
	case n < 20:
		return unitWords[n]
	case n%10 == 0:
		return tensWords[n/10]
	}
	return tensWords[n/10] + "-" + unitWords[n%10]
}

// eachDigit says digits one by one.
func eachDigit(digits string) string {
	words := make([]string, len(digits))
	for i := range words {
		words[i] = unitWords[digits[i]-'0']
	}
	return strings.Join(words, " ")
}

// ordinal says "first", "twenty-second", "hundred and tenth".
func ordinal(digits string) string {
	words := cardinal(digits)
	cut := strings.LastIndexAny(words, " -") + 1
	return words[:cut] + ordinalWord(words[cut:])
}

func ordinalWord(last string) string {
	if word, ok := ordinalWords[last]; ok {
		return word
	}
	if stem, ok := strings.CutSuffix(last, "y"); ok {
		return stem + "ieth"
	}
	return last + "th"
}

var ordinalWords = map[string]string{"one": "first", "two": "second", "three": "third", "five": "fifth", "eight": "eighth", "nine": "ninth",
	"twelve": "twelfth"}

// year says "twenty fourteen", "two thousand and six", "nineteen oh five".
func year(n int) string {
	high, low := n/100, n%100
	switch {
	case n/10 == 200 || n%1000 == 0:
		return cardinalOf(uint64(n))
	case low == 0:
		return underHundred(high) + " hundred"
	case low < 10:
		return underHundred(high) + " oh " + unitWords[low]
	}
	return underHundred(high) + " " + underHundred(low)
}

// part says the denominator of a fraction: "half", "thirds", "thirty-seconds".
func part(denominator, numerator int) string {
	word := ""
	switch denominator {
	case 2:
		return "half" // the one proper fraction of two
	case 4:
		word = "quarter"
	case 100, 1000:
		word = strings.TrimPrefix(ordinal(strconv.Itoa(denominator)), "one ")
	default:
		word = ordinal(strconv.Itoa(denominator))
	}
	if numerator > 1 {
		word += "s"
	}
	return word
}
