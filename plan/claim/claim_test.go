package claim

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// What is no line of the vocabulary's files is refused; TestTables reads them.
func TestLexiconAndCues(t *testing.T) {
	words, cues, dials := files(t)
	for _, text := range []string{"nosuch * word", "hedge * #nosuch", "hedge q word", "hedge *", "hedge * [open"} {
		if _, err := made(words, text, dials); err == nil {
			t.Errorf("%q was read as a cue", text)
		}
	}
	for _, text := range []string{"mm 0: gap", "mm 5 1: gap", "mm a b: gap"} {
		if _, err := made(words, cues, text); err == nil {
			t.Errorf("%q was read as a dial", text)
		}
	}
	if _, err := made(words+"\nnonsense\n", cues, dials); err == nil {
		t.Error("a line that is no list was read")
	}
}

func TestText(t *testing.T) {
	got := Text("Set it to 5 N·m. Then 2 mm.\n\n  put the lid on\n")
	if len(got) != 2 || got[0].Line != 1 || got[1].Line != 3 || len(got[0].Values) != 2 || got[1].NeedsEvidence {
		t.Errorf("got %+v", got)
	}
}

func FuzzSentence(f *testing.F) {
	f.Add("nine times out of ten it's 5 to 6 V\x00")
	f.Add("k r seven one nine")
	f.Add("it takes 9" + strings.Repeat("0", 400) + " k volts a minute, zero in zero of them")
	f.Add("twice a week, three parts to one; a third of them \u202e12 V")
	f.Fuzz(func(t *testing.T, text string) {
		for _, v := range Sentence(text).Values {
			if v.Start < 0 || v.End > len(text) || v.Start >= v.End {
				t.Fatalf("value %v outside %q", v, text)
			}
			if math.IsNaN(v.Number) || math.IsInf(v.Number, 0) {
				t.Fatalf("value %v of %q is no number", v, text)
			}
		}
	})
}

func BenchmarkSentence(b *testing.B) {
	lines := []string{"Undo the collar nut and lift the drum away.", "The post shows 3.7 to 4.1 volts.", "these belts always snap at the join because the pulley is too small"}
	for i := 0; b.Loop(); i++ {
		Sentence(lines[i%len(lines)])
	}
}

func BenchmarkLongSentence(b *testing.B) {
	for _, n := range []int{10_000, 100_000, 1_000_000} {
		text := strings.Repeat("the nut is never about ten mil ", n/31)
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				Sentence(text)
			}
		})
	}
}
