package align

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/timing"
)

// truth is what was really said in a case.
type truth struct {
	starts  map[string]float64 // of the steps said, by id
	dropped []string
	added   [][2]float64

	retakes  []retake
	misheard []misheard
}

// retake is a second take left in.
type retake struct {
	id    string
	start float64
}

// misheard is a word that the captions have otherwise than it was said.
type misheard struct {
	meant, heard string
	start        float64
}

// trial is a case: a plan, captions, and the truth about them.
type trial struct {
	name  string
	plan  *plan.Plan
	timed timing.Timeline
	cues  []captions.Cue
	truth truth
}

// decodePlan reads a plan that has no faults.
func decodePlan(t testing.TB, src string) (*plan.Plan, timing.Timeline) {
	t.Helper()
	source, faults := diag.NewSource("plan.toml", []byte(src))
	p, _, more := plan.Decode(source, os.DirFS("."))
	for _, f := range append(faults, more...) {
		if f.Severity == diag.Error {
			t.Fatalf("plan: %v\n%s", f.Message, src)
		}
	}
	return p, timing.Estimate(p, timing.DefaultPace())
}

// kept reads the cases of one plan that belong to the shared data.
func kept(t testing.TB, prefix string) []trial {
	t.Helper()
	root := os.Getenv("FIXSLATE_DATA")
	if root == "" {
		t.Skip("figures on the kept edits not measured: FIXSLATE_DATA is not set")
	}
	dirs, err := filepath.Glob(filepath.Join(root, "align", prefix+"*"))
	if err != nil || len(dirs) == 0 {
		t.Fatalf("no cases %s* in FIXSLATE_DATA", prefix)
	}
	slices.Sort(dirs)
	var all []trial
	for _, dir := range dirs {
		var steps struct {
			Title string
			Steps []struct{ ID, Title, Narration string }
		}
		var said struct {
			Steps []struct {
				ID     string
				Start  *float64 `json:"start_s"`
				Retake *float64 `json:"retake_s"`
			}
			Dropped []string
			Added   []struct {
				Start float64 `json:"start_s"`
				End   float64 `json:"end_s"`
			}
		}
		readJSON(t, filepath.Join(dir, "steps.json"), &steps)
		readJSON(t, filepath.Join(dir, "truth.json"), &said)
		var src strings.Builder
		fmt.Fprintf(&src, "[video]\ntitle = %q\n", steps.Title)
		for _, s := range steps.Steps {
			fmt.Fprintf(&src, "[[step]]\nid = %q\ntitle = %q\nsay = %q\n", s.ID, s.Title, s.Narration)
		}
		p, timed := decodePlan(t, src.String())
		raw, err := os.ReadFile(filepath.Join(dir, "transcript.srt"))
		if err != nil {
			t.Fatal(err)
		}
		file, _ := captions.Read(raw, "transcript.srt")
		c := trial{filepath.Base(dir), p, timed, file.Cues, truth{starts: map[string]float64{}, dropped: said.Dropped}}
		for _, s := range said.Steps {
			if s.Start != nil {
				c.truth.starts[s.ID] = *s.Start
			}
			if s.Retake != nil {
				c.truth.retakes = append(c.truth.retakes, retake{s.ID, *s.Retake})
			}
		}
		for _, a := range said.Added {
			c.truth.added = append(c.truth.added, [2]float64{a.Start, a.End})
		}
		all = append(all, c)
	}
	return all
}

func readJSON(t testing.TB, name string, to any) {
	t.Helper()
	raw, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(raw, to); err != nil {
		t.Fatal(err)
	}
}

// tally adds up how well matches agree with the truth.
type tally struct {
	steps, within1, within2, within5, falseSkips int
	dropped, missedDrops                         int
	pairs, pairsFound, pairsFalse                int
	words, addedTrue, addedSaid, addedBoth       float64
	errors                                       []float64
	sure, sureRight                              int // of confidence over 0.9
	retakes, repeatsFound, repeatsFalse          int
}

func (y *tally) add(c trial, m Match) {
	starts := map[string]float64{}
	for _, s := range m.Steps {
		want, said := c.truth.starts[s.ID]
		if s.Status != Missing {
			starts[s.ID] = s.Start
		}
		switch {
		case !said:
			y.dropped++
			if s.Status != Missing {
				y.missedDrops++
				if s.Confidence > 0.9 {
					y.sure++
				}
			}
			continue
		case s.Status == Missing:
			y.falseSkips++
		default:
			d := math.Abs(s.Start - want)
			y.errors = append(y.errors, d)
			within(d, 1, &y.within1)
			within(d, 2, &y.within2)
			within(d, 5, &y.within5)
			if s.Confidence > 0.9 {
				y.sure++
				within(d, 2, &y.sureRight)
			}
		}
		y.steps++
	}
	y.order(m, c.truth.starts, starts)
	y.retakes += len(c.truth.retakes)
	for _, r := range m.Repeats {
		if slices.ContainsFunc(c.truth.retakes, func(t retake) bool { return t.id == r.ID && math.Abs(t.start-r.Start) <= 5 }) {
			y.repeatsFound++
		} else {
			y.repeatsFalse++
		}
	}
	for _, w := range m.Words {
		mid := (w.Start + w.End) / 2
		is := slices.ContainsFunc(c.truth.added, func(a [2]float64) bool { return mid >= a[0]-0.2 && mid <= a[1]+0.2 })
		said := w.Step < 0
		y.words++
		if is {
			y.addedTrue++
		}
		if said {
			y.addedSaid++
		}
		if is && said {
			y.addedBoth++
		}
	}
}

func within(d, limit float64, n *int) {
	if d <= limit {
		*n++
	}
}

// order counts pairs of steps said in another order than planned.
func (y *tally) order(m Match, want, got map[string]float64) {
	for i := range m.Steps {
		for j := i + 1; j < len(m.Steps); j++ {
			a, b := m.Steps[i].ID, m.Steps[j].ID
			turned := func(starts map[string]float64) bool {
				x, ok := starts[a]
				z, too := starts[b]
				return ok && too && x > z
			}
			switch was, is := turned(want), turned(got); {
			case was && is:
				y.pairs++
				y.pairsFound++
			case was:
				y.pairs++
			case is:
				y.pairsFalse++
			}
		}
	}
}

func percent(a, b int) float64 { return 100 * float64(a) / math.Max(1, float64(b)) }

func (y *tally) precision() float64 { return y.addedBoth / math.Max(1, y.addedSaid) }
func (y *tally) recall() float64    { return y.addedBoth / math.Max(1, y.addedTrue) }

const tallyHead = "%-22s %5s %6s %6s %6s %7s %7s %6s %7s %11s %11s %11s %12s\n"

func tallyHeading() string {
	return fmt.Sprintf(tallyHead, "", "steps", "<=1 s", "<=2 s", "<=5 s", "median", "90 %", "skips", "missed", "order r/p", "added p/r", "takes r/p", ">0.9: <=2 s")
}

func (y *tally) line(name string) string {
	slices.Sort(y.errors)
	at := func(q float64) float64 {
		if len(y.errors) == 0 {
			return math.NaN()
		}
		return y.errors[int(q*float64(len(y.errors)-1))]
	}
	return fmt.Sprintf("%-22s %5d %5.1f%% %5.1f%% %5.1f%% %6.2fs %6.2fs %5.1f%% %3d/%3d %5.2f/%5.2f %5.2f/%5.2f %5.2f/%5.2f %5.1f%% of %d\n", name, y.steps,
		percent(y.within1, y.steps), percent(y.within2, y.steps), percent(y.within5, y.steps), at(0.5), at(0.9), percent(y.falseSkips, y.steps),
		y.missedDrops, y.dropped, percent(y.pairsFound, y.pairs)/100, percent(y.pairsFound, y.pairsFound+y.pairsFalse)/100, y.precision(), y.recall(),
		percent(y.repeatsFound, y.retakes)/100, percent(y.repeatsFound, y.repeatsFound+y.repeatsFalse)/100, percent(y.sureRight, y.sure), y.sure)
}

// floors are what a tally must reach: shares in per cent, recall and precision
// from 0 to 1.
type floors struct {
	within2, within5, skips, missed, sure float64
	turned, turnedTrue                    float64 // recall and precision of pairs out of order
	added, addedFound                     float64 // precision and recall of words beside the work
}

func (y *tally) hold(t *testing.T, f floors) {
	t.Helper()
	for _, c := range []struct {
		name         string
		got, atLeast float64
	}{
		{"starts within 2 s", percent(y.within2, y.steps), f.within2},
		{"starts within 5 s", percent(y.within5, y.steps), f.within5},
		{"steps not skipped falsely", 100 - percent(y.falseSkips, y.steps), 100 - f.skips},
		{"drops noticed", 100 - percent(y.missedDrops, y.dropped), 100 - f.missed},
		{"pairs out of order found", percent(y.pairsFound, y.pairs), 100 * f.turned},
		{"pairs out of order true", percent(y.pairsFound, y.pairsFound+y.pairsFalse), 100 * f.turnedTrue},
		{"added words true", 100 * y.precision(), 100 * f.added},
		{"added words found", 100 * y.recall(), 100 * f.addedFound},
		{"sure starts within 2 s", percent(y.sureRight, y.sure), f.sure},
	} {
		if c.got < c.atLeast {
			t.Errorf("%s: %.1f %%, floor %.1f %%", c.name, c.got, c.atLeast)
		}
	}
}

// The weights were tuned on the edits of one plan; those of the other were only
// scored.
func TestQualityKept(t *testing.T) {
	out := tallyHeading()
	for _, half := range []struct{ name, plan string }{{"tuned on", "dish-valve"}, {"held out", "saw-clutch"}} {
		var sum tally
		for _, c := range kept(t, half.plan) {
			sum.add(c, Read(c.plan, c.timed, c.cues))
		}
		out += sum.line(half.name + " " + half.plan)
		if half.plan == "saw-clutch" {
			defer sum.hold(t, floors{within2: 74, within5: 79, skips: 9, missed: 20, turned: 0.5, turnedTrue: 0.5, added: 0.7, addedFound: 0.85, sure: 92})
		}
	}
	t.Log("\n" + out)
}

// Mis-heard terms: how many of those in the captions are offered, and how many
// other words are. The mis-hearings are ours: letters that sound alike, words
// cut in two.
func TestQualityTerms(t *testing.T) {
	tune, held := readMakings(t)
	// Some 35 cases each: one more or less is three points.
	for _, half := range []struct {
		name   string
		made   makings
		recall float64
	}{{"tuned on", tune, 0.55}, {"held out", held, 0.6}} {
		c := half.made.tales[len(half.made.tales)-1]
		due, right, wrong, words := 0, 0, 0, 0
		for i := range uint64(12) {
			m := manner{errors: 0.2, talk: 0.2, asIs: 1, drops: 1, moves: 1, letters: 60, drift: 1, together: 1, bySound: true}
			edit := c.make(half.made.seed+7000+i, m, half.made.talk, half.made.vocab)
			s := locate(edit.plan, edit.timed, edit.cues, usualWeights())
			got := Read(edit.plan, edit.timed, edit.cues)
			words += len(got.Words)
			used := make([]bool, len(got.Terms))
			for _, x := range edit.truth.misheard {
				step, ok := stepAt(got, x.start)
				if !ok || !s.isTerm(edit.plan, step, x) {
					continue
				}
				due++
				for k, o := range got.Terms {
					if !used[k] && math.Abs(o.Start-x.start) < 1.5 && slices.Contains(split(strings.ToLower(o.Term)), stem(x.meant)) {
						used[k] = true
						right++
						break
					}
				}
			}
			for k, o := range got.Terms {
				truly := slices.ContainsFunc(edit.truth.misheard, func(x misheard) bool {
					return math.Abs(o.Start-x.start) < 1.5 && slices.Contains(split(strings.ToLower(o.Term)), stem(x.meant))
				})
				if !used[k] && !truly {
					wrong++
				}
			}
		}
		recall, bad := float64(right)/float64(due), float64(wrong)/float64(words)
		t.Logf("%s %s: %d of %d mis-heard terms offered (%.2f), %d of %d words wrongly (%.2f %%)", half.name, c.name, right, due, recall, wrong, words, 100*bad)
		if recall < half.recall || bad > 0.01 {
			t.Errorf("worse than the floor")
		}
	}
}

// stepAt is the step of the word that starts nearest to a time.
func stepAt(m Match, at float64) (int, bool) {
	best, near := -1, 1.0
	for _, w := range m.Words {
		if d := math.Abs(w.Start - at); d < near {
			best, near = w.Step, d
		}
	}
	return best, best >= 0
}

// isTerm holds for a mis-heard word that is a term, tool or part of a step and
// is heard as something that may be one mis-heard.
func (s *settler) isTerm(p *plan.Plan, step int, x misheard) bool {
	own := s.ownWords(p, step)
	heard := split(strings.ToLower(x.heard))
	if len(heard) == 0 || len(heard) == 1 && own[heard[0]] {
		return false
	}
	return slices.ContainsFunc(s.names(p, step), func(n name) bool {
		return len(n.sounds) >= termSounds && slices.Contains(n.words, stem(x.meant))
	})
}

// Numbers of edits that say what is planned, and of edits where one is another.
func TestQualityNumbers(t *testing.T) {
	_, held := readMakings(t)
	c := held.tales[len(held.tales)-1]
	faithful := manner{talk: 0.2, asIs: 1, letters: 60, drift: 1, together: 1}
	wrong, changed, found := 0, 0, 0
	for i := range uint64(4) {
		edit := c.make(held.seed+8000+i, faithful, held.talk, held.vocab)
		wrong += len(Read(edit.plan, edit.timed, edit.cues).Numbers)
		for k := range edit.cues {
			if text := strings.Replace(edit.cues[k].Text, "three newton", "nine newton", 1); text != edit.cues[k].Text {
				edit.cues[k].Text = text
				changed++
			}
		}
		for _, n := range Read(edit.plan, edit.timed, edit.cues).Numbers {
			if strings.Contains(n.Said, "nine newton") {
				found++
			}
		}
	}
	t.Logf("%d numbers reported in 4 edits that say what is planned; %d of %d changed ones found", wrong, found, changed)
	if wrong > 4 || changed == 0 || found < changed {
		t.Errorf("worse than the floor")
	}
}
