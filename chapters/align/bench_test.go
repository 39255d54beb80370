package align

import (
	"fmt"
	"math/rand/v2"
	"runtime"
	"strings"
	"testing"
	"time"

	"fixslate/chapters/captions"
)

// longEdit is an edit of so many hours of a plan with 300 steps, each told in a
// few words and then talked about.
func longEdit(t testing.TB, hours float64) trial {
	t.Helper()
	tune, held := readMakings(t)
	nouns := append(tune.vocab[:len(tune.vocab):len(tune.vocab)], held.vocab...)
	r := rand.New(rand.NewPCG(9, 9))
	words := func(n int) string {
		var b strings.Builder
		for range n {
			b.WriteString(nouns[r.IntN(len(nouns))] + " ")
		}
		return b.String()
	}
	var src strings.Builder
	src.WriteString("[video]\ntitle = \"long\"\n")
	c := trial{name: fmt.Sprintf("%v h", hours)}
	now := time.Duration(0)
	say := func(text string) {
		fields := strings.Fields(text)
		for len(fields) > 0 {
			n := min(9, len(fields))
			c.cues = append(c.cues, captions.Cue{Start: now, End: now + 3*time.Second, Text: strings.Join(fields[:n], " ")})
			now += 3 * time.Second
			fields = fields[n:]
		}
		now += time.Second
	}
	share := time.Duration(hours * float64(time.Hour) / 300)
	for i := range 300 {
		text := words(24)
		fmt.Fprintf(&src, "[[step]]\nid = \"s%d\"\ntitle = %q\nsay = %q\n", i, words(3), text)
		end := now + share
		say(text)
		for now+4*time.Second < end {
			say(words(12))
		}
	}
	c.plan, c.timed = decodePlan(t, src.String())
	return c
}

// Near linear: the time for each word stays level from ten minutes to ten
// hours.
func BenchmarkRead300Steps(b *testing.B) {
	for _, hours := range []float64{1.0 / 6, 1, 10} {
		c := longEdit(b, hours)
		b.Run(fmt.Sprintf("%.2fh", hours), func(b *testing.B) {
			words := 0
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			for range b.N {
				words = len(Read(c.plan, c.timed, c.cues).Words)
			}
			runtime.ReadMemStats(&after)
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(words), "ns/word")
			b.ReportMetric(float64(after.Sys)/1e6, "MB-sys")
		})
	}
}
