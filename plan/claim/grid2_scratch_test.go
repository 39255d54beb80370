package claim

import (
	"fmt"
	"math/rand"
	"os"
	"strings"
	"testing"
)

func TestParts(t *testing.T) {
	if os.Getenv("GRID") == "" {
		t.Skip()
	}
	rnd := rand.New(rand.NewSource(7))
	digit := []string{"oh", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"}
	zero := []string{"oh", "zero", "nought"}
	tens := []string{"", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}
	teens := []string{"ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"}
	sayDigits := func(ds []int) string {
		var w []string
		for i := 0; i < len(ds); i++ {
			switch {
			case i+1 < len(ds) && ds[i] == ds[i+1] && rnd.Intn(2) == 0:
				d := digit[ds[i]]
				w = append(w, "double", d)
				i++
			case i+1 < len(ds) && ds[i] > 1 && ds[i+1] > 0 && rnd.Intn(4) == 0:
				w = append(w, tens[ds[i]], digit[ds[i+1]])
				i++
			case i+1 < len(ds) && ds[i] == 1 && rnd.Intn(4) == 0:
				w = append(w, teens[ds[i+1]])
				i++
			case ds[i] == 0:
				w = append(w, zero[rnd.Intn(2)])
			default:
				w = append(w, digit[ds[i]])
			}
		}
		return strings.Join(w, " ")
	}
	frames := []string{"the part number is %s", "order %s from the dealer", "it's marked %s", "ask for the %s", "it's a %s", "%s is the one you want", "you need the %s pump", "Look for %s on the label.", "The code's %s.", "it says %s on the side", "that's a %s you've got there", "fit a %s instead", "the old number was %s", "%s, that's the relay", "they replaced it with the %s", "mine's the %s"}
	fails := map[string]int{}
	tot := map[string]int{}
	ex := map[string]string{}
	for k := 0; k < 4000; k++ {
		var parts []string
		var said []string
		shape := rnd.Intn(8)
		name := ""
		letters := func(n int, upper bool) {
			s := ""
			var w []string
			for range n {
				l := string(rune('b' + rnd.Intn(24)))
				for l == "i" || l == "o" || l == "m" && n == 1 {
					l = string(rune('b' + rnd.Intn(24)))
				}
				s += strings.ToUpper(l)
				if upper {
					w = append(w, strings.ToUpper(l))
				} else {
					w = append(w, l)
				}
			}
			parts = append(parts, s)
			said = append(said, strings.Join(w, " "))
		}
		digits := func(n int) {
			var ds []int
			s := ""
			for i := range n {
				d := rnd.Intn(10)
				if i == 0 && d == 0 {
					d = 4
				}
				ds = append(ds, d)
				s += fmt.Sprint(d)
			}
			parts = append(parts, s)
			said = append(said, sayDigits(ds))
		}
		dash := func() { parts = append(parts, "-"); said = append(said, []string{"dash", "hyphen"}[rnd.Intn(2)]) }
		up := rnd.Intn(2) == 0
		switch shape {
		case 0:
			name = "LL9999"
			letters(2, up)
			digits(4)
		case 1:
			name = "L999"
			letters(1, up)
			digits(3)
		case 2:
			name = "99-999"
			digits(2)
			dash()
			digits(3)
		case 3:
			name = "9999L"
			digits(4)
			letters(1, up)
		case 4:
			name = "LLL-99"
			letters(3, up)
			dash()
			digits(2)
		case 5:
			name = "999999"
			digits(6)
		case 6:
			name = "9L9"
			digits(1)
			letters(1, up)
			digits(2)
		case 7:
			name = "99-L"
			digits(2)
			dash()
			letters(1, up)
		}
		code := strings.Join(parts, "")
		f := frames[rnd.Intn(len(frames))]
		text := fmt.Sprintf(f, strings.Join(said, " "))
		c := Sentence(text)
		got := stated(c)
		for _, key := range []string{"shape " + name + fmt.Sprint(up), "frame " + f} {
			tot[key]++
			if got != code {
				fails[key]++
				if fails[key] < 4 {
					ex[key] += fmt.Sprintf("\n      %s (%s) → %s", text, code, got)
				}
			}
		}
	}
	for k, n := range tot {
		fmt.Printf("%.2f %s%s\n", 1-float64(fails[k])/float64(n), k, ex[k])
	}
}
