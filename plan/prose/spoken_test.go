package prose

import (
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"fixslate/plan/diag/outside"
)

// What is said for what is written is common practice, no source, unless a line
// names one.
func TestSpoken(t *testing.T) {
	for _, group := range []struct {
		name  string
		cases [][2]string
	}{
		{"numbers", [][2]string{
			{"0", "zero"}, {"7", "seven"}, {"40", "forty"}, {"99", "ninety-nine"}, {"100", "one hundred"},
			{"101", "one hundred and one"}, {"240", "two hundred and forty"}, {"1200", "one thousand two hundred"},
			{"1,200", "one thousand two hundred"}, {"1005", "one thousand and five"}, {"10 000 km", "ten thousand kilometres"},
			{"1.5", "one point five"}, {"0.75", "zero point seven five"}, {".5", "point five"}, {"1.50", "one point five zero"},
			{"-3", "minus three"}, {"+5", "plus five"}, {"−0.2 V", "minus zero point two volts"},
			{"1,234,567.8", "one million two hundred and thirty-four thousand five hundred and sixty-seven point eight"},
			{"1, 2, 3", "one, two, three"}, {"1,2,3", "one, two, three"}, {"1,5 mm", "one point five millimetres"},
			{"1st", "first"}, {"22nd", "twenty-second"}, {"the 3rd pin", "the third pin"}, {"20th", "twentieth"}, {"12th", "twelfth"},
		}},
		{"fractions", [][2]string{
			{"about 1/3", "about a third"}, {"1/2 turn", "half a turn"}, {"1/2 a turn", "half a turn"}, {"a 1/4 turn", "a quarter turn"},
			{"3/8 in", "three eighths of an inch"}, {"3/8 in deep", "three eighths of an inch deep"}, {"a 3/4 in. union", "a three quarter inch union"},
			{"1 1/2 turns", "one and a half turns"}, {"1½ turns", "one and a half turns"}, {"2 3/4 inches", "two and three quarters inches"},
			{"5/16", "five sixteenths"}, {"¾", "three quarters"}, {"1/4 of an inch", "a quarter of an inch"}, {"1/2-inch drive", "half-inch drive"},
			{"1/8 in", "an eighth of an inch"}, {"a 3/32 in bit", "a three thirty-seconds inch bit"},
		}},
		{"ranges and tolerances", [][2]string{
			{"10..20 Ω", "ten to twenty ohms"}, {"10–20 Ω", "ten to twenty ohms"}, {"10 to 20 Ω", "ten to twenty ohms"},
			{"10-20 Ω", "ten to twenty ohms"}, {"10 Ω..20 Ω", "ten ohms to twenty ohms"}, {"3-4 times", "three to four times"},
			{"12 ± 0.5 V", "twelve plus or minus zero point five volts"}, {"24 Ω ± 10 %", "twenty-four ohms plus or minus ten per cent"},
			{"40 µF, +/-5%", "forty microfarads, plus or minus five per cent"}, {"±2 mm", "plus or minus two millimetres"},
			{"14 V, give or take 0.2", "fourteen volts, give or take zero point two"}, {"1 or 2 turns", "one or two turns"},
			{"12/24 V", "twelve twenty-four volts"}, {"50:1", "fifty to one"}, {"a ratio of 1:50", "a ratio of one to fifty"},
			{"10 x 20 mm", "ten by twenty millimetres"}, {"10x20x5 mm", "ten by twenty by five millimetres"},
		}},
		{"units", [][2]string{
			{"12V", "twelve volts"}, {"1 V", "one volt"}, {"10mm", "ten millimetres"}, {"1.5mm²", "one point five square millimetres"},
			{"25 N·m", "twenty-five newton metres"}, {"18 lb-ft", "eighteen pound feet"}, {"30 psi", "thirty P S I"},
			{"350 °C", "three hundred and fifty degrees C"}, {"90°", "ninety degrees"}, {"5%", "five per cent"}, {"5 percent", "five percent"},
			{"85 dB(A)", "eighty-five decibels A"}, {"450 VAC", "four hundred and fifty volts A C"}, {"12 V DC", "twelve volts D C"},
			{"13 mm nuts", "thirteen millimetre nuts"}, {"40 mm up the hose", "forty millimetres up the hose"}, {"a 5 A fuse", "a five amp fuse"},
			{"20 cm of rope", "twenty centimetres of rope"}, {"8, 10 and 13 mm sockets", "eight, ten and thirteen millimetre sockets"},
			{"10-mm socket", "ten millimetre socket"}, {"12-volt", "twelve-volt"}, {"4-pin", "four-pin"}, {"5 in.", "five inches."},
			{"5 in the box", "five in the box"}, {"2.5 in long", "two point five inches long"}, {`3/4" pipe`, "three quarter inch pipe"},
			{"set to kΩ", "set to kilohms"}, {"five mm", "five millimetres"}, {"in km/h", "in kilometres per hour"}, {"5 a day", "five a day"},
			{"5 min.", "five minutes."}, {"5 min. later", "five minutes later"}, {"90s", "ninety seconds"}, {"16 AWG", "sixteen A W G"},
		}},
		{"times, dates, money", [][2]string{
			{"09:30", "nine thirty"}, {"14:05", "fourteen oh five"}, {"12:00", "twelve o'clock"}, {"3 o'clock", "three o'clock"},
			{"10 a.m. today", "ten A M today"}, {"3 pm", "three P M"}, {"1:05 min", "one minute five seconds"},
			{"1:02:03", "one hour two minutes three seconds"}, {"1h30m", "one hour thirty minutes"},
			{"2026-11-20", "the twentieth of November twenty twenty-six"}, {"3/5/2004", "the third of May two thousand and four"},
			{"on 5 Nov", "on the fifth of November"}, {"May 2014", "May twenty fourteen"}, {"since 2014", "since twenty fourteen"},
			{"1905", "nineteen oh five"}, {"2006", "two thousand and six"}, {"1900", "nineteen hundred"}, {"the 1990s", "the nineteen nineties"},
			{"2000 cycles", "two thousand cycles"}, {"£28.50", "twenty-eight pounds fifty"}, {"€5", "five euros"}, {"28 €", "twenty-eight euros"},
			{"£0.50", "fifty pence"}, {"50p", "fifty pence"}, {"$1 trillion", "one trillion dollars"}, {"$1.2m", "one point two million dollars"}, {"£20-30", "twenty to thirty pounds"},
		}},
		{"codes", [][2]string{
			{"NV-2231", "N V two two three one"}, {"4471-B", "four four seven one B"}, {"CR2032", "C R two zero three two"}, {"T25", "T twenty-five"},
			{"PH2", "P H two"}, {"M8x1.25", "M eight by one point two five"}, {"M10 x 40 mm", "M ten by forty millimetres"}, {"5W-30", "five W thirty"},
			{"AWG 16", "A W G sixteen"}, {"AC/DC", "A C D C"}, {"v2.1", "version two point one"}, {"2.1.3", "two point one point three"},
			{"3/8-16", "three eighths sixteen"}, {"#10-32", "number ten thirty-two"}, {"part no. 4471", "part number four four seven one"},
			{"12345678", "one two three four five six seven eight"}, {"007", "zero zero seven"}, {"reads 0.L", "reads O L"}, {"K6", "K six"},
			{"USB", "U S B"}, {"LEDs", "L E Ds"}, {"ABS", "A B S"}, {"DO NOT OPEN", "DO NOT OPEN"}, {"USB-C", "U S B C"}, {"DOT 5.1", "DOT five point one"},
		}},
		{"short forms and signs", [][2]string{
			{"approx. 5 mm", "approximately five millimetres"}, {"use spirit, e.g. white spirit", "use spirit, for example white spirit"},
			{"i.e. it's dead", "that is it's dead"}, {"hoses etc.", "hoses et cetera."}, {"No. 4", "Number four"}, {"Dry? No.", "Dry? No."},
			{"w/ grease", "with grease"}, {"w/o oil", "without oil"}, {"on/off", "on off"}, {"A & B", "A and B"}, {"2 + 3 = 5", "two plus three equals five"},
			{">25 A", "more than twenty-five amps"}, {"≤ 5 mm", "at most five millimetres"}, {"~10 mm", "about ten millimetres"}, {"fig. B", "figure B"},
			{"max. 5 mm", "maximum five millimetres"}, {"me@x.example", "me at x dot example"}, {"Fit the seal dry - no soap.", "Fit the seal dry - no soap."},
			{"Don't lose it.", "Don't lose it."}, {"", ""}, {"  two\n lines ", "  two\n lines "},
		}},
	} {
		for _, c := range group.cases {
			if got := Spoken(c[0]); got != c[1] {
				t.Errorf("%s: %q is said %q, want %q", group.name, c[0], got, c[1])
			}
			if again := Spoken(c[1]); again != c[1] {
				t.Errorf("%s: %q is said again as %q", group.name, c[1], again)
			}
		}
	}
}

func TestParseNumber(t *testing.T) {
	for words, want := range map[string]struct {
		value float64
		rest  string
	}{
		"":                              {0, ""},
		"the pump":                      {0, "the pump"},
		"two hundred and forty volts":   {240, " volts"},
		"twelve and a half":             {12.5, ""},
		"one hundred and a bit":         {100, " and a bit"},
		"a hundred":                     {100, ""},
		"a dozen screws":                {12, " screws"},
		"half a dozen":                  {6, ""},
		"fifteen hundred":               {1500, ""},
		"twenty-five":                   {25, ""},
		"twenty fourteen":               {2014, ""},
		"nineteen oh five":              {1905, ""},
		"nought point seven five amps":  {0.75, " amps"},
		"point sixty four":              {0.64, ""},
		"three and five eighths inches": {3.625, " inches"},
		"ten mil":                       {10, " mil"},
		"ten and twenty":                {10, " and twenty"},
		"two two three one":             {2231, ""},
		"two million":                   {2e6, ""},
		"two point five million":        {2.5e6, ""},
		"1,200 rpm":                     {1200, " rpm"},
		"-3/8":                          {-0.375, ""},
		"minus ten":                     {-10, ""},
		"negative":                      {0, "negative"},
		"one":                           {1, ""},
		"Twenty Two":                    {22, ""},
		"  six":                         {6, ""},
	} {
		value, n := ParseNumber(words)
		if value != want.value || words[n:] != want.rest {
			t.Errorf("%q: %v, rest %q, want %v, rest %q", words, value, words[n:], want.value, want.rest)
		}
	}
}

// TestParseNumberReadsSpoken is the round trip over plain numbers: all up to
// 12,000, and a seeded choice of longer ones, decimals, fractions and signs.
func TestParseNumberReadsSpoken(t *testing.T) {
	check := func(written string, want float64) {
		t.Helper()
		words := Spoken(written)
		got, n := ParseNumber(words)
		if math.Abs(got-want) > 1e-12*math.Abs(want) || n != len(words) {
			t.Errorf("%q is said %q and read back as %v (%d of %d bytes)", written, words, got, n, len(words))
		}
	}
	for i := range 12000 {
		check(strconv.Itoa(i), float64(i))
	}
	random := rand.New(rand.NewPCG(1, 2))
	for range 5000 {
		n := random.Int64N(int64(math.Pow(10, 1+random.Float64()*14)))
		check(strconv.FormatInt(n, 10), float64(n))
		check("-"+strconv.FormatInt(n, 10), -float64(n))
		decimal := strconv.FormatInt(n%100000, 10) + "." + strconv.FormatInt(random.Int64N(100000), 10)
		value, _ := strconv.ParseFloat(decimal, 64)
		check(decimal, value)
		bottom := []int{2, 3, 4, 5, 6, 8, 10, 16, 32, 64}[random.IntN(10)]
		top := 1 + random.IntN(bottom-1)
		check(strconv.Itoa(top)+"/"+strconv.Itoa(bottom), float64(top)/float64(bottom))
		whole := 1 + random.IntN(200)
		check(strconv.Itoa(whole)+" "+strconv.Itoa(top)+"/"+strconv.Itoa(bottom), float64(whole)+float64(top)/float64(bottom))
	}
}

// TestQualitySpoken measures the length of our spoken form against the
// hand-checked one of the speech data, as narration seconds follow from it.
func TestQualitySpoken(t *testing.T) {
	file, err := os.ReadFile(outside.Data(t, "speech", "dev.tsv"))
	if err != nil {
		t.Fatal(err)
	}
	lines, same, worst := 0, 0, 0.0
	var text, spoken = -1, -1
	for line := range strings.Lines(string(file)) {
		fields := strings.Split(strings.TrimRight(line, "\r\n"), "\t")
		if strings.HasPrefix(line, "#") {
			continue
		}
		if text < 0 {
			text, spoken = slices.Index(fields, "text"), slices.Index(fields, "spoken")
			continue
		}
		lines++
		got, want := Spoken(fields[text]), fields[spoken]
		off := math.Abs(float64(utf8.RuneCountInString(got))/float64(utf8.RuneCountInString(want)) - 1)
		worst = max(worst, off)
		if strings.ReplaceAll(got, "-", " ") == strings.ReplaceAll(want, "-", " ") {
			same++
		} else {
			t.Logf("said    %s\nchecked %s", got, want)
		}
	}
	t.Logf("%d of %d lines as checked by hand, lengths at most %.1f %% apart", same, lines, 100*worst)
	if same < lines*95/100 || worst > 0.05 {
		t.Errorf("%d of %d lines as checked by hand (at least 95 %%), lengths up to %.1f %% apart (at most 5)", same, lines, 100*worst)
	}
}

func FuzzSpoken(f *testing.F) {
	for _, s := range []string{"", "10..20 Ω", "3/8 in. deep", "£28.50", "NV-2231", "e.g. 5", "10:30 a.m.", "2026-11-20", "w/o", "A&B", "1,2,3", "USB-C", "5\" x 6'", "\xff5V", "±5%", "#4", "http://x.y/1", "M8x1.25", "0.L", "5 mm. Then", "kΩ/V", "U.S.A.", "1½", "x²", "twenty 5", "No.4", "00000000\"++++++++"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		once := Spoken(text)
		if twice := Spoken(once); twice != once {
			t.Fatalf("%q is said %q and then %q", text, once, twice)
		}
		if strings.ContainsAny(once, "0123456789") {
			t.Fatalf("%q is said with digits: %q", text, once)
		}
		if utf8.ValidString(text) && !utf8.ValidString(once) {
			t.Fatalf("%q is said as no text: %q", text, once)
		}
	})
}

func BenchmarkSpoken(b *testing.B) {
	for name, text := range longTexts {
		b.Run(name, func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				Spoken(text)
			}
		})
	}
}

func BenchmarkFigures(b *testing.B) {
	for name, text := range longTexts {
		b.Run(name, func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				Figures(text)
			}
		})
	}
}

// longTexts are 100 kB each: ordinary ones, and ones made to be slow.
var longTexts = map[string]string{
	"Narration": strings.Repeat("Undo the two 5.5 mm screws, then measure 10..20 Ω across pins 1 and 2. ", 1400),
	"Captions":  strings.Repeat("you want eleven point six four volts across the two terminals ", 1600),
	"Prose":     strings.Repeat("Turn the impeller with a finger and listen for the magnets. ", 1700),
	"Digits":    strings.Repeat("7", 100000),
	"Spaced":    strings.Repeat("7 ", 50000),
	"Words":     strings.Repeat("seven ", 17000),
	"Code":      strings.Repeat("A1-", 33000),
	"Points":    strings.Repeat("1.", 50000),
	"Commas":    strings.Repeat("100,", 25000),
	"Quotes":    strings.Repeat("5\"", 50000),
	"Strokes":   strings.Repeat("1/2", 33000),
	"Hyphens":   strings.Repeat("two-", 25000),
	"Address":   "http://" + strings.Repeat("a.", 50000),
	"Stops":     strings.Repeat("e.g.", 25000),
	"Times":     strings.Repeat("2x", 50000),
}
