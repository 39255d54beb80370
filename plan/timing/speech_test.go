package timing

import (
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fixslate/plan/diag/outside"
	"fixslate/plan/prose"
)

// ordinaryProse is plain description in whole paragraphs, written for this
// test, with as many characters a word (5.8, spaces and punctuation counted)
// as the LJ Speech texts have.
var ordinaryProse = []string{
	`The old market stood at the lower end of the town, where the river bends towards the harbour and the ground is never entirely dry. Every Thursday the farmers arrived before sunrise, unloaded their carts beneath the iron roof, and arranged vegetables in careful pyramids along the wooden benches. By noon the building was crowded. Children wandered between the stalls, dogs slept under the tables, and an accordion player, whose name nobody could remember afterwards, repeated the same three melodies until the evening.`,
	`Most people who keep bees will tell you that the first winter is the hardest. The colony must be heavy enough in autumn to survive several months without flowers, the entrance should be narrow enough to discourage mice, and the roof has to be weighted against December storms. After that there is remarkably little to do. You listen beside the hive on a freezing morning, hear a faint and steady murmuring, and return to the house satisfied.`,
	`When the railway company announced that the branch line would be closed, the village council protested, as councils generally do, and nothing came of it. The last train carried more passengers than any other in the history of the station. Some of them had travelled a considerable distance in order to ride for eleven minutes through a landscape they could have seen from the road. Within a year the rails had been lifted, the platform had disappeared under brambles, and the stationmaster's garden was the only sign that anybody had worked there.`,
	`Good paper is made from long fibres. The pulp is beaten until every strand is frayed, diluted with a great quantity of water, and poured over a fine wire mesh which is shaken from side to side so that the fibres settle across one another. What remains afterwards is a wet and extremely fragile sheet. It is pressed between felts, hung in a warm room, and finally sized with gelatine, because ink would otherwise spread along the fibres and every letter would grow a beard.`,
	`My grandmother measured distance by the time it took to walk, and she was seldom wrong. The church was a quarter of an hour away, her sister's farm an hour and a half, the nearest beach a whole summer morning with a rest at the inn. Printed maps interested her very little. She maintained that they show what a bird would find important, whereas somebody with a basket on each arm would rather know where the path is steep, where the gate sticks, and which of the neighbours usually offers a cup of tea.`,
	`A lighthouse is a simple machine that must never fail. In the early days the keeper trimmed the wicks, polished the reflectors, and wound the clockwork which turned the lantern, and he wrote down in a ledger every vessel that passed within sight. The work was monotonous rather than difficult. Visitors often supposed that loneliness would be the chief hardship, but the keepers themselves complained far more frequently about damp bedding, about the quality of the coffee, and about the inspectors.`,
}

// Source: LJ Speech dataset, README, table "Statistics": 225,715 words and
// 1,308,674 characters in 23:55:17, so 157.3 words a minute and 5.80
// characters a word.
func TestProseRate(t *testing.T) {
	words, characters, seconds := 0, 0, 0.0
	for _, paragraph := range ordinaryProse {
		spoken := prose.Spoken(paragraph)
		n := len(strings.Fields(paragraph))
		s := Seconds(spoken, DefaultRate())
		words, characters, seconds = words+n, characters+len(paragraph), seconds+s
		if cps := float64(len(paragraph)) / s; math.Abs(cps-1308674.0/86117) > 0.3 {
			t.Errorf("a paragraph alone runs at %.2f characters a second, pauses included, want 15.20: %.40s…", cps, paragraph)
		}
	}
	if ratio := float64(characters) / float64(words); math.Abs(ratio-1308674.0/225715) > 0.1 {
		t.Errorf("the prose has %.2f characters a word, LJ Speech 5.80: it is not ordinary enough", ratio)
	}
	if wpm := float64(words) / seconds * 60; math.Abs(wpm-157.3) > 0.8 {
		t.Errorf("ordinary prose runs at %.1f words a minute, want 157.3", wpm)
	}
	t.Logf("%d words, %.2f characters a word, %.1f words a minute", words, float64(characters)/float64(words), float64(words)/seconds*60)
}

func TestAtWPM(t *testing.T) {
	text := prose.Spoken(ordinaryProse[0])
	usual := Seconds(text, DefaultRate())
	for _, wpm := range []float64{80, 120, 157, 200} {
		got := Seconds(text, DefaultRate().AtWPM(wpm))
		if want := usual * proseWPM / wpm; math.Abs(got-want) > 1e-9 {
			t.Errorf("at %v wpm %v s, want %v: pauses must scale too", wpm, got, want)
		}
	}
	if DefaultRate().AtWPM(0) != DefaultRate() {
		t.Error("an unset wpm changes the rate")
	}
}

func TestSecondsAddsUp(t *testing.T) {
	r := DefaultRate()
	parts := []string{
		"Pull the plug.", "Dry?", "Good!", "Set the meter to ohms, the lowest range; wait.",
		"He said: \"stop here.\"", "Wait…", "The tap (the blue one) stays shut.", "Ours reads O L, so the winding is open.",
	}
	sum := 0.0
	for _, part := range parts {
		sum += Seconds(part, r)
	}
	if got := Seconds(strings.Join(parts, " "), r); math.Abs(got-sum) > 1e-9 {
		t.Errorf("together %v s, one by one %v s", got, sum)
	}
	if got := Seconds(strings.Join(parts, "\n\n  "), r); math.Abs(got-sum) > 1e-9 {
		t.Errorf("white space costs time: %v s, want %v", got, sum)
	}
}

func TestSecondsByHand(t *testing.T) {
	r := Rate{CharactersPerSecond: 10, Comma: 0.4, Sentence: 1}
	for _, c := range []struct {
		speak string
		want  float64
		why   string
	}{
		{"", 0, "nothing is said"},
		{"   ", 0, "nothing is said"},
		{"Stop", 0.4 + 0.5 + 4/60.0, "4 characters, then half of 1 s plus 4/30 of the other half"},
		{"Stop.", 0.5 + 0.5 + 5/60.0, "the full stop counts as a character"},
		{"Look, stop.", 0.5 + 0.4*(0.5+5/60.0) + 0.5 + 0.5 + 5/60.0, "the space at a pause is the pause"},
		{"Go - stop.", 0.4 + 0.4*(0.5+4/60.0) + 0.5 + 0.5 + 5/60.0, "a dash standing alone is a comma"},
		{"C R.", 0.4 + 0.6 + 0.5 + 4/60.0, "two names of letters, three characters more each"},
		{"I see a C.", 1.0 + 0.3 + 0.5 + 10/60.0, "I and a are words"},
		{"A C.", 0.4 + 0.6 + 0.5 + 4/60.0, "A beside a letter is one"},
		{"twenty-two", 1.0 + 0.2 + 0.5 + 10/60.0, "two number words"},
		{strings.Repeat("x", 30), 3 + 1, "a full pause after thirty characters"},
		{strings.Repeat("x", 400), 40 + 1, "and never a longer one"},
	} {
		if got := Seconds(c.speak, r); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%q takes %v s, want %v: %s", c.speak, got, c.want, c.why)
		}
		if rest := Rest(c.speak, r); rest > Seconds(c.speak, r) || c.want > 0 && rest <= 0 {
			t.Errorf("%q: a pause of %v s at its end", c.speak, rest)
		}
	}
}

func TestSpeechData(t *testing.T) {
	file, err := os.ReadFile(outside.Data(t, "speech", "dev.tsv"))
	if err != nil {
		t.Fatal(err)
	}
	var rows [][]string
	for line := range strings.Lines(string(file)) {
		if !strings.HasPrefix(line, "#") {
			rows = append(rows, strings.Split(strings.TrimRight(line, "\r\n"), "\t"))
		}
	}
	head, rows := rows[0], rows[1:]
	estimate := make([]float64, len(rows))
	for i, row := range rows {
		estimate[i] = Seconds(prose.Spoken(row[0]), DefaultRate())
	}
	for _, voice := range []string{"espeak_spoken_trim_s", "flite_spoken_trim_s", "espeak_spoken_s", "flite_spoken_s", "flite_rms_spoken_s"} {
		column := slices.Index(head, voice)
		if column < 0 {
			t.Fatalf("dev.tsv has no column %s", voice)
		}
		real := make([]float64, len(rows))
		for i, row := range rows {
			if real[i], err = strconv.ParseFloat(row[column], 64); err != nil {
				t.Fatal(err)
			}
		}
		mean, high := relativeError(estimate, real)
		t.Logf("%-22s mean absolute error %.2f %%, 90th percentile %.2f %%", voice, mean, high)
		if mean > 6 || high > 13 {
			t.Errorf("%s: mean absolute error %.2f %% (at most 6), 90th percentile %.2f %% (at most 13)", voice, mean, high)
		}
	}
}

// relativeError fits one rate factor (least squares of the relative error) and
// gives the mean and the 90th percentile of what is left, in per cent.
func relativeError(estimate, real []float64) (mean, high float64) {
	top, bottom := 0.0, 0.0
	for i := range real {
		q := estimate[i] / real[i]
		top, bottom = top+q, bottom+q*q
	}
	errs := make([]float64, len(real))
	for i := range real {
		errs[i] = 100 * math.Abs(top/bottom*estimate[i]-real[i]) / real[i]
		mean += errs[i] / float64(len(real))
	}
	slices.Sort(errs)
	return mean, errs[len(errs)*9/10-1]
}

func BenchmarkSeconds(b *testing.B) {
	text := strings.Join(ordinaryProse, " ")
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		Seconds(text, DefaultRate())
	}
}
