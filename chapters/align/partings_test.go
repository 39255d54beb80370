package align

import (
	"strings"
	"testing"
	"time"

	"fixslate/chapters/captions"
)

// heardOf reads words as one cue.
func heardOf(text string) *heard {
	h, _ := listen([]captions.Cue{{End: 10 * time.Second, Text: text}})
	return &h
}

// A sentence seems to end where one may: before "now we", not after "the".
func TestBreaksAreWhereSentencesEnd(t *testing.T) {
	h := heardOf("so take the lid off and put it over there now we turn the key")
	b := english().phrases.breaks
	end := map[string]float64{}
	for i := 1; i < len(h.words); i++ {
		end[h.words[i-1].Text+" "+h.words[i].Text] = h.breaks(i, b)
	}
	best := ""
	for pair, w := range end {
		if best == "" || w > end[best] {
			best = pair
		}
	}
	if best != "there now" {
		t.Errorf("a sentence ends most likely at %q, not at \"there now\"", best)
	}
	for _, inside := range []string{"the lid", "take the", "the key"} {
		if end[inside] >= 0 {
			t.Errorf("%q is weighed %+.1f, as a sentence's end", inside, end[inside])
		}
	}
}

// Full stops say where sentences end; where captions have them, words do not.
func TestFullStopsGoBeforeWords(t *testing.T) {
	words := "take the lid off and put it over there okay now we turn the key"
	bare, full := heardOf(words), heardOf(strings.Replace(words, "there okay", "there. Okay", 1)+".")
	for i := range bare.words {
		if s := full.signs(i, english().phrases); s[signBreak] != 0 {
			t.Errorf("%q: words are weighed beside full stops", full.words[i].Text)
		}
	}
	if s := full.signs(9, english().phrases); s[signSentence] != 1 {
		t.Errorf("no sentence ends before %q", full.words[9].Text)
	}
}

// A silence says less where captions show one after every few words.
func TestSilencesAreWeighedByHowCommonTheyAre(t *testing.T) {
	film := func(every int) *heard {
		var cues []captions.Cue
		at := time.Duration(0)
		for i := range 200 {
			if i%every == 0 {
				at += 500 * time.Millisecond
			}
			cues = append(cues, captions.Cue{Start: at, End: at + 300*time.Millisecond, Text: string(rune('a'+i%26)) + "word" + string(rune('a'+i/26))})
			at += 300 * time.Millisecond
		}
		h, _ := listen(cues)
		return &h
	}
	often, seldom := film(4).commoner(0.45), film(40).commoner(0.45)
	if often < 1 || seldom > 0.3 {
		t.Errorf("every fourth word: %+.2f, every fortieth: %+.2f", often, seldom)
	}
}

// Pairs of words tell talk that their words alone do not.
func TestChatIsToldByPairs(t *testing.T) {
	chat := map[string]float64{"used_to": 0.5, "sorry": 0.4}
	h := heardOf("I used to sorry")
	for i, want := range []float64{0, 0, 0.5, 0.4} {
		if got := h.chat(i, chat); got != want {
			t.Errorf("%q: %g, want %g", h.words[i].Text, got, want)
		}
	}
}

// Every weighed word is a stem, or a pair of them: any other would never be met.
func TestWeighedWordsAreStems(t *testing.T) {
	p := english().phrases
	for name, list := range map[string]map[string]float64{
		"chat": p.chat, "before": p.breaks.before, "before2": p.breaks.before2, "after": p.breaks.after,
		"after2": p.breaks.after2, "across": p.breaks.across, "upto": p.breaks.upto, "onward": p.breaks.onward,
	} {
		if len(list) == 0 {
			t.Errorf("%s is empty", name)
		}
		for words := range list {
			parts := strings.Split(words, "_")
			if pair := name == "across" || name == "upto" || name == "onward"; pair && len(parts) != 2 || !pair && name != "chat" && len(parts) != 1 || len(parts) > 2 {
				t.Errorf("%s: %q is of %d words", name, words, len(parts))
			}
		}
	}
}
