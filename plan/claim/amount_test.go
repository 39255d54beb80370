package claim

import (
	"strings"
	"testing"
)

// The ways to say an amount, with its numbers, times the units and the sentences in
// which it stands: what a grammar of amounts must read whatever the words around.
var sayings = []struct {
	text string
	want []float64
}{
	{"two", []float64{2}}, {"twenty five", []float64{25}}, {"twenty-five", []float64{25}}, {"a hundred", []float64{100}}, {"a hundred and ten", []float64{110}},
	{"a hundred and ten point three", []float64{110.3}}, {"one hundred five", []float64{105}}, {"two fifty", []float64{250}}, {"one twenty", []float64{120}},
	{"one oh five", []float64{105}}, {"twelve hundred", []float64{1200}}, {"two and a half thousand", []float64{2500}}, {"a good hundred", []float64{100}},
	{"three point five", []float64{3.5}}, {"nought point four", []float64{0.4}}, {"point six", []float64{0.6}}, {"oh point eight", []float64{0.8}},
	{"eleven point oh five", []float64{11.05}}, {"two and a half", []float64{2.5}}, {"three and a quarter", []float64{3.25}}, {"six and three quarters", []float64{6.75}},
	{"five to six", []float64{5, 6}}, {"five or six", []float64{5, 6}}, {"between five and seven", []float64{5, 7}}, {"anywhere from ten to fifteen", []float64{10, 15}},
	{"two to three hundred", []float64{200, 300}}, {"one and a half to two", []float64{1.5, 2}}, {"point five to one", []float64{0.5, 1}},
	{"two, maybe three", []float64{2, 3}}, {"four, five", []float64{4, 5}}, {"ten, possibly twelve", []float64{10, 12}},
	{"just over ten", []float64{10}}, {"nearly ten", []float64{10}}, {"ten or so", []float64{10}}, {"ten odd", []float64{10}}, {"ten-ish", []float64{10}},
	{"getting on for ten", []float64{10}}, {"ten and a bit", []float64{10}}, {"no more than ten", []float64{10}}, {"a couple of", []float64{2}},
	{"a couple of hundred", []float64{200}}, {"12", []float64{12}}, {"3.5", []float64{3.5}}, {"10-12", []float64{10, 12}}, {"1,200", []float64{1200}}, {"2½", []float64{2.5}}, {"~10", []float64{10}},
}

var unitsSaid = map[string]string{"volts": "V", "milliamps": "mA", "ohms": "ohm", "millimetres": "mm", "inches": "inch", "bar": "bar", "psi": "psi", "newton metres": "Nm",
	"foot pounds": "ft-lb", "degrees C": "degC", "litres": "l", "grams": "g", "kilos": "kg", "minutes": "min", "hours": "h", "turns": "turn", "percent": "%", "kilowatts": "kW",
	"hertz": "Hz", "revs": "rpm", "thou": "thou", "metres": "m", "quid": "GBP", "dollars": "USD", "years": "year", "decibels": "dB", "microfarads": "uF", "pints": "pint",
	"miles": "mi", "litres a minute": "L/min", "amp hours": "Ah", "ounces": "oz"}

func TestAmounts(t *testing.T) {
	const least = 0.99
	frames := []string{"the book says %", "it should be %", "it takes %", "% is what you want", "the old one was % and it ran fine", "so % across there"}
	all, right := 0, 0
	for _, s := range sayings {
		for many, unit := range unitsSaid {
			for _, frame := range frames {
				all++
				c := Sentence(strings.Replace(frame, "%", s.text+" "+many, 1))
				ok := len(c.Values) == len(s.want)
				for i := 0; ok && i < len(s.want); i++ {
					ok = same(s.want[i], unit, c.Values[i])
				}
				if ok {
					right++
				} else if testing.Verbose() {
					t.Logf("%q states %s", c.Text, stated(c))
				}
			}
		}
	}
	if share := float64(right) / float64(all); share < least {
		t.Errorf("%.3f of %d amounts are read, want %.2f", share, all, least)
	}
}
