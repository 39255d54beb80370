package chapters

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"fixslate/plan"
	"fixslate/plan/timing"
)

// film is a plan and a timeline of steps of the given lengths, titled by
// letters.
func film(lengths ...float64) (*plan.Plan, timing.Timeline) {
	p, t := &plan.Plan{}, timing.Timeline{}
	for i, l := range lengths {
		id := string(rune('a' + i%26))
		p.Steps = append(p.Steps, plan.Step{ID: id, Title: text(strings.ToUpper(id))})
		t.Steps = append(t.Steps, timing.Step{Index: i, ID: id, Start: t.End, End: t.End + l, Begin: timing.Exactly(t.End)})
		t.End += l
	}
	return p, t
}

func text(s string) plan.Text { return plan.Text{Source: s, Print: s} }

// outline is a row of chapters as "0:00 A=ab" (start, title, steps).
func outline(chapters []Chapter) string {
	var parts []string
	for _, c := range chapters {
		steps := ""
		for _, i := range c.Steps {
			steps += string(rune('a' + i%26))
		}
		parts = append(parts, fmt.Sprintf("%s %s=%s", Stamp(c.Start), c.Title, steps))
	}
	return strings.Join(parts, ", ")
}

func TestShortStepsAreJoined(t *testing.T) {
	for _, c := range []struct {
		lengths []float64
		want    string
		why     string
	}{
		{[]float64{30, 40, 50}, "0:00 A=a, 0:30 B=b, 1:10 C=c", "nothing is short"},
		{[]float64{60, 6, 60}, "0:00 A=ab, 1:06 C=c", "a short step joins the one before"},
		{[]float64{6, 60, 60}, "0:00 B=ab, 1:06 C=c", "the first can only join the next, whose title is longer"},
		{[]float64{60, 30, 6}, "0:00 A=a, 1:00 B=bc", "the last joins the one before"},
		{[]float64{60, 6, 30}, "0:00 A=a, 1:00 C=bc", "the shorter neighbour makes the lengths more even"},
		{[]float64{6, 6, 60, 6, 6}, "0:00 A=ab, 0:12 C=c, 1:12 D=de", "two short ones make one chapter"},
		{[]float64{9, 2, 9, 9, 9}, "0:00 A=abc, 0:20 D=de", "two chapters are the most the limit allows, these the most even"},
		{[]float64{4, 3}, "0:00 A=ab", "shorter than the limit altogether"},
		{[]float64{9.6, 30}, "0:00 A=a, 0:10 B=b", "9.6 s is ten whole seconds"},
		{[]float64{10.4, 10.4, 10.4}, "0:00 A=a, 0:10 B=b, 0:21 C=c", "10.4 s each, whole seconds apart 10, 11, 10"},
		{[]float64{20.4, 10.2, 20}, "0:00 A=a, 0:20 B=b, 0:31 C=c", "10.2 s that are 11 whole seconds"},
		{[]float64{20.6, 9.8, 20}, "0:00 A=a, 0:21 C=bc", "9.8 s that are nine whole seconds"},
		{[]float64{0, 30, 0, 30}, "0:00 B=abc, 0:30 D=d", "steps without length"},
		{nil, "", "no step"},
		{[]float64{0}, "0:00 A=a", "nothing said"},
	} {
		p, line := film(c.lengths...)
		if got := outline(FromTimeline(p, line)); got != c.want {
			t.Errorf("%v: %s\nwant %s: %s", c.lengths, got, c.want, c.why)
		}
	}
}

// A video that is one chapter is not called after one of its steps.
func TestOneChapterIsTheVideo(t *testing.T) {
	p, line := film(4, 3)
	p.Video.Title = plan.Text{Print: "Oil a chain"}
	if got := outline(FromTimeline(p, line)); got != "0:00 Oil a chain=ab" {
		t.Error(got)
	}
	p.Steps[0].Chapter.Title = plan.Text{Print: "Own"}
	if got := outline(FromTimeline(p, line)); got != "0:00 Own=ab" {
		t.Error("a title of the author's stays:", got)
	}
	p, line = film(7)
	p.Video.Title = plan.Text{Print: "Oil a chain"}
	if got := outline(FromTimeline(p, line)); got != "0:00 A=a" {
		t.Error("one step is one chapter of its own:", got)
	}
}

func TestAuthorsWordOnChapters(t *testing.T) {
	p, line := film(30, 30, 30, 30)
	p.Steps[1].Chapter.Joined = true
	p.Steps[2].Chapter.Title = text("Another\n title")
	if got, want := outline(FromTimeline(p, line)), "0:00 A=ab, 1:00 Another title=c, 1:30 D=d"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	p, line = film(30, 30)
	p.Steps[0].Chapter.Joined = true
	if got, want := outline(FromTimeline(p, line)), "0:00 A=a, 0:30 B=b"; got != want {
		t.Errorf("%s, want %s: nothing comes before the first step", got, want)
	}
	p, line = film(60, 6)
	p.Steps[1].Chapter.Title = text("Kept")
	chapters := FromTimeline(p, line)
	if got, want := outline(chapters), "0:00 Kept=ab"; got != want {
		t.Errorf("%s, want %s: a title written for chapters wins", got, want)
	}
	if !slices.Equal(chapters[0].Joined, []int{0}) {
		t.Errorf("joined %v, want the first step", chapters[0].Joined)
	}
}

func TestDetoursStayApart(t *testing.T) {
	p, line := film(30, 6, 30)
	for _, i := range []int{1, 2} {
		p.Steps[i].OnlyIf = plan.Condition{Test: "ohms", Outcome: "fails"}
		line.Steps[i].Detour = true
	}
	chapters := FromTimeline(p, line)
	if got, want := outline(chapters), "0:00 A=a, 0:30 C=bc"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	if chapters[0].Detour || !chapters[1].Detour {
		t.Errorf("detours %v and %v, want only the second", chapters[0].Detour, chapters[1].Detour)
	}
	p, line = film(30, 6, 30)
	p.Steps[1].Variants, p.Steps[2].Variants = []string{"old"}, []string{"old"}
	chapters = FromTimeline(p, line)
	if got, want := outline(chapters), "0:00 A=a, 0:30 C=bc"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	if !slices.Equal(chapters[1].Variants, []string{"old"}) || chapters[0].Variants != nil {
		t.Errorf("versions %v and %v, want none and old", chapters[0].Variants, chapters[1].Variants)
	}
}

// A real edit may start with talk of its own, leave steps out and swap them.
func TestRealTimeline(t *testing.T) {
	p, _ := film(1, 1, 1)
	line := timing.Timeline{Real: true, End: 100, Steps: []timing.Step{
		{Index: 2, ID: "c", Start: 12, End: 50, Begin: timing.Exactly(12)},
		{Index: 0, ID: "a", Start: 55, End: 90, Begin: timing.Exactly(55)},
	}}
	chapters := FromTimeline(p, line)
	if got, want := outline(chapters), "0:00 C=c, 0:55 A=a"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	if chapters[0].End != 55 || chapters[1].End != 100 {
		t.Errorf("ends %v and %v, want 55 and 100", chapters[0].End, chapters[1].End)
	}
}

// Every way of cutting a few steps into chapters, tried one by one.
func TestJoinAgainstBruteForce(t *testing.T) {
	state := uint32(7)
	next := func(n int) int { state = state*1664525 + 1013904223; return int(state>>8) % n }
	for round := range 400 {
		n := 1 + next(9)
		lengths := make([]float64, n)
		for i := range lengths {
			lengths[i] = float64(next(250)) / 10
		}
		p, line := film(lengths...)
		for i := range n {
			line.Steps[i].Detour = next(4) == 0
		}
		openings := open(p, line)
		got := rankOf(openings, join(openings, WholeSecond(line.End), 10), WholeSecond(line.End))
		best, found := rank{}, false
		for cuts := range 1 << (n - 1) {
			var groups [][]opening
			last := 0
			for i := 1; i <= n; i++ {
				if i == n || cuts>>(i-1)&1 == 1 {
					groups = append(groups, openings[last:i])
					last = i
				}
			}
			if !long(groups, WholeSecond(line.End), 10) {
				continue
			}
			if r := rankOf(openings, groups, WholeSecond(line.End)); !found || r.better(best) {
				best, found = r, true
			}
		}
		if found && got != best {
			t.Fatalf("round %d, %v: %+v, want %+v", round, lengths, got, best)
		}
		if !found && got.chapters != 1 {
			t.Fatalf("round %d, %v: %d chapters, want one", round, lengths, got.chapters)
		}
	}
}

func long(groups [][]opening, end, limit int) bool {
	for i, g := range groups {
		stop := end
		if i+1 < len(groups) {
			stop = WholeSecond(groups[i+1][0].start)
		}
		if stop-WholeSecond(g[0].start) < limit {
			return false
		}
	}
	return true
}

func rankOf(_ []opening, groups [][]opening, end int) rank {
	r := rank{chapters: len(groups)}
	for i, g := range groups {
		stop := end
		if i+1 < len(groups) {
			stop = WholeSecond(groups[i+1][0].start)
		}
		length := float64(stop - WholeSecond(g[0].start))
		r.squares += length * length
		for j := 1; j < len(g); j++ {
			if g[j].detour != g[j-1].detour {
				r.mixed++
			}
		}
	}
	return r
}

// What a publisher asks for holds for whatever timeline.
func TestChaptersKeepTheRules(t *testing.T) {
	state := uint32(11)
	next := func(n int) int { state = state*1664525 + 1013904223; return int(state>>8) % n }
	for range 300 {
		lengths := make([]float64, 1+next(40))
		for i := range lengths {
			lengths[i] = float64(next(40000)) / 1000
		}
		p, line := film(lengths...)
		p.Publish.ChapterShortest = plan.Duration{Likely: time.Duration(5+next(20)) * time.Second, Set: true}
		chapters := FromTimeline(p, line)
		var steps []int
		last := -1
		for i, c := range chapters {
			start, end := WholeSecond(c.Start), WholeSecond(c.End)
			if i == 0 && start != 0 || start <= last || math.Abs(c.End-c.Start) > line.End {
				t.Fatalf("%v: chapter %d at %d after %d", lengths, i, start, last)
			}
			if len(chapters) > 1 && end-start < int(p.Publish.ChapterShortest.Seconds()) {
				t.Fatalf("%v: chapter %d has %d s", lengths, i, end-start)
			}
			last = start
			steps = append(steps, c.Steps...)
			if len(c.Joined)+1 != len(c.Steps) {
				t.Fatalf("%v: chapter %d holds %v and says it joined %v", lengths, i, c.Steps, c.Joined)
			}
		}
		for i, s := range steps {
			if s != i {
				t.Fatalf("%v: steps %v, one is dropped or moved", lengths, steps)
			}
		}
		if len(steps) != len(lengths) {
			t.Fatalf("%v: %d steps of %d are in a chapter", lengths, len(steps), len(lengths))
		}
	}
}

func TestStamp(t *testing.T) {
	for seconds, want := range map[float64]string{
		0: "0:00", 0.49: "0:00", 0.5: "0:01", 59.4999: "0:59", 59.5: "1:00", 599.9995: "10:00",
		3599.4: "59:59", 3599.5: "1:00:00", 3723: "1:02:03", 360000: "100:00:00",
	} {
		if got := Stamp(seconds); got != want {
			t.Errorf("%v s is %s, want %s", seconds, got, want)
		}
	}
}

func TestTitlesAreOneLine(t *testing.T) {
	for title, want := range map[string]string{
		"  Make\r\n it\tsafe ":       "Make it safe",
		"a\x00b\x1b[31mc\u202e":      "ab[31mc",
		"naïve – Überwurfmutter 3/4": "naïve – Überwurfmutter 3/4",
		"line\u2028two\u0085three":   "line two three",
	} {
		if got := OneLine(title); got != want {
			t.Errorf("%q becomes %q, want %q", title, got, want)
		}
	}
}

func BenchmarkFromTimeline300(b *testing.B) {
	lengths := make([]float64, 300)
	for i := range lengths {
		lengths[i] = float64(3 + i%29)
	}
	p, line := film(lengths...)
	for b.Loop() {
		FromTimeline(p, line)
	}
}

// A time lands in the chapter whose stamp it is at or after.
func TestAt(t *testing.T) {
	all := []Chapter{{Title: "a", End: 59.6}, {Title: "b", Start: 59.6, End: 120.2, Steps: []int{3, 4}}, {Title: "c", Start: 120.2, End: 180}}
	for text, want := range map[string]string{"0:00": "a", "0:59": "a", "1:00": "b", "1:59": "b", "2:00": "c", "3:00": "c", "3:01": "", "1:00:00": "", "0:5": "?", "x": "?", "5": "?", "-1:00": "?", "-0:30": "?", "+1:00": "?", "1:-0": "?", "1:60": "?", "0:00:61": "?"} {
		seconds, ok := ReadStamp(text)
		if ok != (want != "?") {
			t.Errorf("%q reads as %v, %v", text, seconds, ok)
			continue
		}
		if c, in := At(all, seconds); ok && (in != (want != "") || in && c.Title != want) {
			t.Errorf("%s is in %q, %v", text, c.Title, in)
		}
	}
	for _, s := range []float64{0, 59, 61.4, 3599.6, 7384} {
		if back, ok := ReadStamp(Stamp(s)); !ok || WholeSecond(s) != int(back) {
			t.Errorf("%v is stamped %s and read as %v", s, Stamp(s), back)
		}
	}
	if c, ok := Of(all, 4); !ok || c.Title != "b" {
		t.Errorf("step 4 is in %q", c.Title)
	}
}
