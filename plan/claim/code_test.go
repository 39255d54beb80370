package claim

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
)

// Part numbers made at random and said in as many ways as there are at a counter
// must come back as they were made.
func TestSpokenCodes(t *testing.T) {
	const many, least = 3000, 0.95
	dice := rand.New(rand.NewPCG(1, 2))
	right := 0
	for range many {
		shape := codeShapes[dice.IntN(len(codeShapes))]
		printed, said := makeCode(dice, shape)
		text := fmt.Sprintf(codeFrames[dice.IntN(len(codeFrames))], said)
		if stated(Sentence(text)) == printed {
			right++
		}
	}
	if share := float64(right) / many; share < least {
		t.Errorf("%.3f of the codes are read, want %.2f", share, least)
	} else {
		t.Logf("%.3f of the codes are read", share)
	}
}

// In a shape L is a letter and 9 a digit.
var codeShapes = []string{"LL9999", "L999", "99-999", "9999L", "LLL-99", "999999", "9L99", "99-L"}

var codeFrames = []string{"the part number is %s", "order %s from the dealer", "it's marked %s", "ask for the %s", "it's a %s", "you need the %s pump",
	"Look for %s on the label.", "The code's %s.", "it says %s on the side", "fit a %s instead", "the old number was %s", "they replaced it with the %s", "mine's the %s"}

// makeCode gives a code as it is printed and as it is said.
func makeCode(dice *rand.Rand, shape string) (printed, said string) {
	const letters = "BCDEFGHJKLNPQRSTUVWXYZ"
	capitals := dice.IntN(2) == 0
	var words []string
	for i := 0; i < len(shape); {
		switch shape[i] {
		case 'L':
			l := string(letters[dice.IntN(len(letters))])
			printed += l
			if !capitals {
				l = strings.ToLower(l)
			}
			words = append(words, l)
			i++
		case '9':
			run := 0
			for i < len(shape) && shape[i] == '9' {
				run++
				i++
			}
			digits := make([]int, run)
			for d := range digits {
				digits[d] = dice.IntN(10)
			}
			digits[0] = max(digits[0], 1)
			printed += strings.Trim(fmt.Sprint(digits), "[]")
			words = append(words, sayDigits(dice, digits)...)
		default:
			printed += "-"
			words = append(words, []string{"dash", "hyphen"}[dice.IntN(2)])
			i++
		}
	}
	return strings.ReplaceAll(printed, " ", ""), strings.Join(words, " ")
}

// sayDigits says digits one by one, by "double", or two at a time.
func sayDigits(dice *rand.Rand, digits []int) []string {
	ones := []string{"oh", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"}
	teens := []string{"ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"}
	tens := []string{"", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}
	var words []string
	for i := 0; i < len(digits); i++ {
		d, next := digits[i], -1
		if i+1 < len(digits) {
			next = digits[i+1]
		}
		switch way := dice.IntN(4); {
		case d == next && way < 2:
			words = append(words, "double", ones[d])
			i++
		case d > 1 && next > 0 && way == 2:
			words = append(words, tens[d], ones[next])
			i++
		case d == 1 && next >= 0 && way == 2:
			words = append(words, teens[next])
			i++
		default:
			words = append(words, ones[d])
		}
	}
	return words
}
