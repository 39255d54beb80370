package prose

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

func sentences(text string) []string {
	var out []string
	for _, s := range Sentences(text) {
		out = append(out, s.Of(text))
	}
	return out
}

func TestSentences(t *testing.T) {
	// Each case is written with "|" where a sentence ends; the white space
	// around it is not part of the sentences.
	for _, marked := range []string{
		"Turn the impeller. |Then set the meter to ohms.",
		"The gap is 1.5 mm wide. |Use No. 4 wire.",
		"It takes approx. 5 minutes. |Wait.",
		"Use a solvent, e.g. white spirit, and wipe. |Done.",
		"Use a solvent, i.e. White spirit.",
		"Start at 10 a.m. and stop at noon.",
		"Start at 10 a.m. |Then stop at noon.",
		"3. Undo the screw. |4. Lift the lid.",
		"Repeat from step 4. |Then go on.",
		"Is it dry? |Good. |Power on.",
		"What?! |Stop!",
		"Wait for it... |There it goes.",
		"Wait for it... and there it goes.",
		"Wait … and lift.",
		"“Stop.” |He let go.",
		"\"Why?\" he said.",
		"(See the note.) |Then lift.",
		"Lift (carefully!) and turn.",
		"See fig. 2 on p. 12. |Then turn.",
		"Is that right? |No. |It is not.",
		"No. |That is wrong.",
		"The answer is no. |That is it.",
		"Undo the 3/4 in. union with pliers.",
		"It is 3/4 in. |The other one is longer.",
		"Push it in. |The clip snaps.",
		"Wait 10 min. |Then open it.",
		"Max. 5 mm. |Less is fine.",
		"Hoses, clips, etc. are in the box.",
		"Bring hoses, clips, etc. |The rest is here.",
		"Set it to position A. |Then turn.",
		"One line\nand the next one. |And more.",
		"A heading\n\n|A paragraph.",
		"No stop at the end",
		"turn it off. |then lift it",
		"Made in the U.S. Army depot.",
		"Made in the U.S. |The rest is not.",
		"Rated 12 V. |30 A is too much.",
		"Version 2.1.3 works. |See example.com/a.b for more.",
		"Use 8.8 bolts. |Not 10.9.",
		"Mr. Green knows.",
		"Don't! |You'll strip it.",
		"Tight? good.",
		"It's 0.7 mm… |Next.",
		"Fit part no. 4471-B. |It fits.",
	} {
		text := strings.ReplaceAll(marked, "|", "")
		var want []string
		for _, s := range strings.Split(marked, "|") {
			want = append(want, strings.TrimSpace(s))
		}
		if marked == "Tight? good." {
			want = []string{"Tight?", "good."}
		}
		if diff := cmp.Diff(want, sentences(text)); diff != "" {
			t.Errorf("%q:\n%s", text, diff)
		}
	}
	if got := Sentences(" \n\t "); got != nil {
		t.Errorf("white space has sentences %v", got)
	}
}

func FuzzSentences(f *testing.F) {
	for _, s := range []string{"", "a. b", "No. 4. Then", "…", "3. x", "\xff. A", "a\n\nb", "(x.) Y", "…………", "1.5 mm. 2"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		last := 0
		for _, s := range Sentences(text) {
			if s.Start < last || s.End <= s.Start || s.End > len(text) {
				t.Fatalf("span %v after %d in %d bytes", s, last, len(text))
			}
			if utf8.ValidString(text) && !utf8.ValidString(s.Of(text)) {
				t.Fatalf("span %v cuts a rune", s)
			}
			if s.Of(text) != strings.TrimSpace(s.Of(text)) {
				t.Fatalf("%q has white space around it", s.Of(text))
			}
			if strings.TrimSpace(text[last:s.Start]) != "" {
				t.Fatalf("words lost: %q", text[last:s.Start])
			}
			last = s.End
		}
		if strings.TrimSpace(text[last:]) != "" {
			t.Fatalf("words lost: %q", text[last:])
		}
	})
}

func BenchmarkSentences(b *testing.B) {
	for name, text := range map[string]string{
		"Prose":  strings.Repeat("Turn the impeller, approx. 1.5 mm deep. Then set the meter to No. 4? Good. ", 1300),
		"NoStop": strings.Repeat("turn it ", 12500),
		"Stops":  strings.Repeat(".", 100000),
	} {
		b.Run(name, func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				Sentences(text)
			}
		})
	}
}
