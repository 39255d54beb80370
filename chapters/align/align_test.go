package align

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"fixslate/chapters"
	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/timing"
)

const heaterPlan = `
tool = [{ id = "driver", name = "crosshead screwdriver" }, { id = "meter", name = "multimeter" }]
part = [{ id = "link", name = "thermal link" }]
term = [{ id = "impeller", text = "impeller", misheard = ["in pillar"] }]
caution = [{ id = "live", hazard = "mains-isolation", say = "Mains can kill. Pull the plug before a cover comes off.", card = "Plug out" }]
[video]
title = "Fan heater that stays cold"
[[step]]
id = "intro"
title = "Cold air"
say = "The heater blows cold air on every setting. We find out whether the thermal link has opened."
[[step]]
id = "open"
title = "Open the case"
cautions = ["live"]
tools = ["driver"]
say = "Undo seven screws with the crosshead screwdriver and lift the front grille away."
[[step]]
id = "dust"
title = "Clear the dust"
say = "Brush the lint off the impeller and blow the duct clear from behind."
[[step]]
id = "measure"
title = "Measure the link"
tools = ["meter"]
parts = ["link"]
say = "Set the multimeter to ohms. Across the thermal link you want less than 2 ohms."
[[step]]
id = "close"
title = "Close it"
tools = ["driver"]
say = "Grille on, seven screws, and tighten them to 1.5 newton metres."
`

// cuesOf makes a cue of each line; a line "+ 5" is a silence of 5 s.
func cuesOf(lines ...string) []captions.Cue {
	var cues []captions.Cue
	now := time.Second
	for _, l := range lines {
		if wait, ok := strings.CutPrefix(l, "+ "); ok {
			var s float64
			fmt.Sscan(wait, &s)
			now += time.Duration(s * float64(time.Second))
			continue
		}
		length := time.Duration(len(l)) * time.Second / 14
		cues = append(cues, captions.Cue{Start: now, End: now + length, Text: l})
		now += length
	}
	return cues
}

var heaterEdit = []string{
	"the heater blows cold air on every", "setting we find out whether the", "thermal link has opened",
	"+ 3", "mains can kill pull the plug before", "a cover comes off",
	"undo six screws with the crosshead", "screwdriver and lift the front grille", "away",
	"+ 2", "my neighbour asked me yesterday why", "i never throw these things away",
	"+ 2", "okay set the multimeter to ohms", "across the thermal sink you want less", "than two ohms",
	"+ 4", "brush the lint off the in pillar and", "blow the duct clear from behind",
	"+ 2", "so grille on seven screws and tighten", "them to 1.5 newton metres",
	"+ 1", "sorry again", "+ 1", "grille on seven screws and tighten them", "to 1.5 newton metres",
}

func step(t *testing.T, m Match, id string) Step {
	t.Helper()
	for _, s := range m.Steps {
		if s.ID == id {
			return s
		}
	}
	t.Fatalf("no step %s", id)
	return Step{}
}

// One edit with everything in it: a step moved, one taken again, talk beside
// the work, a wrong number, a term mis-heard.
func TestRead(t *testing.T) {
	p, planned := decodePlan(t, heaterPlan)
	m := Read(p, planned, cuesOf(heaterEdit...))
	for _, want := range []struct {
		id     string
		status Status
		cue    int
	}{{"intro", Found, 0}, {"open", Found, 3}, {"dust", Moved, 13}, {"measure", Found, 10}, {"close", Found, 15}} {
		s := step(t, m, want.id)
		start := cuesOf(heaterEdit...)[want.cue].Start.Seconds()
		// Which of two turned steps has moved is a matter of view.
		if moved := s.Status == Moved; s.Status == Missing || moved && want.id != "dust" && want.id != "measure" {
			t.Errorf("%s is %v, want %v", s.ID, s.Status, want.status)
		}
		if d := s.Start - start; d < -0.5 || d > 0.5 {
			t.Errorf("%s starts at %.2f, want %.2f", s.ID, s.Start, start)
		}
		if s.Confidence < 0.5 || s.Confidence > 1 {
			t.Errorf("%s has confidence %.2f", s.ID, s.Confidence)
		}
	}
	if a, b := step(t, m, "dust").Status, step(t, m, "measure").Status; (a == Moved) == (b == Moved) {
		t.Errorf("dust is %v and measure %v: one of them has moved", a, b)
	}
	if len(m.Repeats) != 1 || m.Repeats[0].ID != "close" {
		t.Errorf("repeats %+v, want one of close", m.Repeats)
	}
	if len(m.Added) == 0 || len(m.Added) > 2 || !strings.Contains(m.Added[0].Text, "neighbour asked me yesterday") {
		t.Errorf("added %+v, want the neighbour", m.Added)
	}
	if len(m.Numbers) != 1 || m.Numbers[0].Said != "six" {
		t.Errorf("numbers %+v, want six", m.Numbers)
	}
	heard := map[string]string{}
	for _, term := range m.Terms {
		heard[term.Heard] = term.Term
		if got := term.Span.Of(cuesOf(heaterEdit...)[term.Cue].Text); got != term.Heard {
			t.Errorf("term %q spans %q", term.Heard, got)
		}
	}
	if heard["in pillar"] != "impeller" || heard["sink"] != "link" {
		t.Errorf("terms %v, want impeller for in pillar and link for sink", heard)
	}
	if !m.Trusted() {
		t.Errorf("troubles %+v", m.Troubles)
	}
	for _, l := range m.Lines {
		if !l.Found {
			t.Errorf("line %q of %s not found (share %.2f)", l.Print, l.ID, l.Share)
		}
	}
}

// What the plan declares as a mis-hearing is offered in a step whose text does
// not have the term, and in talk; what only sounds like it is not.
func TestDeclaredMishearingAnywhere(t *testing.T) {
	p, planned := decodePlan(t, heaterPlan)
	for line, want := range map[string]int{"your in pillar was worse than mine": 1, "your impella was worse than mine": 0} {
		for at, after := range map[string]int{"a step": 8, "talk": 11} {
			edit := slices.Insert(slices.Clone(heaterEdit), after, line)
			n := 0
			for _, term := range Read(p, planned, cuesOf(edit...)).Terms {
				if term.Term == "impeller" && term.Cue == cueAt(edit, after) {
					n++
				}
			}
			if n != want {
				t.Errorf("%q in %s: %d proposals, want %d", line, at, n, want)
			}
		}
	}
}

// cueAt is the cue that a line of an edit becomes.
func cueAt(edit []string, line int) int {
	cues := 0
	for _, l := range edit[:line] {
		if !strings.HasPrefix(l, "+ ") {
			cues++
		}
	}
	return cues
}

// A caution that is said after its step's action starts after it.
func TestLateCaution(t *testing.T) {
	p, planned := decodePlan(t, heaterPlan)
	m := Read(p, planned, cuesOf(heaterEdit[0], heaterEdit[1], heaterEdit[2], "+ 3",
		"undo seven screws with the crosshead", "screwdriver and lift the front grille", "away",
		"+ 1", "oh and mains can kill pull the plug", "before a cover comes off"))
	var caution, action Line
	for _, l := range m.Lines {
		switch {
		case l.Kind == timing.Caution && strings.Contains(l.Print, "Pull the plug"):
			caution = l
		case l.ID == "open" && l.Kind == timing.Narration:
			action = l
		}
	}
	if !caution.Found || !action.Found || caution.Start < action.End {
		t.Errorf("caution %+v and action %+v: want both, and the caution after", caution, action)
	}
}

// The match gives the same timeline that chapters, marks and descriptions are
// made of.
func TestTimeline(t *testing.T) {
	p, planned := decodePlan(t, heaterPlan)
	m := Read(p, planned, cuesOf(heaterEdit[:9]...))
	line := m.Timeline(p)
	if !line.Real || len(line.Steps) != 2 || line.End != m.End {
		t.Fatalf("timeline %+v", line)
	}
	if s := line.Steps[0]; s.ID != "intro" || s.End != line.Steps[1].Start || len(s.Beats) == 0 {
		t.Errorf("first step %+v", s)
	}
	if c := chapters.FromTimeline(p, line); len(c) == 0 || c[len(c)-1].End != m.End {
		t.Errorf("chapters %+v", c)
	}
}

// Captions that are no good are told from those that are.
func TestTroubles(t *testing.T) {
	p, planned := decodePlan(t, heaterPlan)
	good := cuesOf(heaterEdit...)
	rolling := []captions.Cue{}
	for i, c := range good {
		if i > 0 {
			c.Text = good[i-1].Text + "\n" + c.Text
		}
		rolling = append(rolling, c)
	}
	backwards := append([]captions.Cue{}, good...)
	backwards[3], backwards[9] = backwards[9], backwards[3]
	whole := captions.Cue{End: 3 * time.Hour}
	for _, c := range good {
		whole.Text += c.Text + " "
	}
	for _, c := range []struct {
		name    string
		cues    []captions.Cue
		want    []TroubleKind
		foreign bool
	}{
		{"good", good, nil, false},
		{"none", nil, []TroubleKind{NoWords}, true},
		{"labels only", cuesOf("[music]", "(door closes)", "♪♪"), []TroubleKind{NoWords}, true},
		{"rolling", rolling, []TroubleKind{Rolling}, false},
		{"backwards", backwards, []TroubleKind{Backwards}, false},
		{"one cue", []captions.Cue{whole}, []TroubleKind{LongCue}, false},
		{"another video", cuesOf("welcome to the garden today we plant", "beans along the south wall because the", "soil is warm there and the roots like", "it dig a trench a hand deep and water it", "well before the seeds go in", "then cover them and put a net on top", "the pigeons are quick this year"), []TroubleKind{OtherVideo}, true},
		{"another language", cuesOf("heute zeige ich euch wie man den garten", "im frühling richtig vorbereitet zuerst", "graben wir ein loch und dann kommt der", "kompost hinein danach gießen wir alles", "gründlich und warten eine woche lang"), []TroubleKind{OtherLanguage}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := Read(p, planned, c.cues)
			var got []TroubleKind
			for _, x := range m.Troubles {
				got = append(got, x.Kind)
			}
			if fmt.Sprint(got) != fmt.Sprint(c.want) {
				t.Errorf("troubles %v, want %v", got, c.want)
			}
			if _, foreign := m.Foreign(); foreign != c.foreign {
				t.Errorf("foreign is %v", foreign)
			}
		})
	}
}

// What a rolling cue repeats is heard once.
func TestRollingIsHeardOnce(t *testing.T) {
	c := manner{errors: 0.1, talk: 0.2, asIs: 1, letters: 40, drift: 1, together: 1}
	tune, _ := readMakings(t)
	flat := tune.tales[0].make(7, c, tune.talk, tune.vocab)
	c.rolling = true
	rolled := tune.tales[0].make(7, c, tune.talk, tune.vocab)
	a, b := Read(flat.plan, flat.timed, flat.cues), Read(rolled.plan, rolled.timed, rolled.cues)
	if len(a.Words) != len(b.Words) {
		t.Errorf("%d words flat, %d rolled", len(a.Words), len(b.Words))
	}
}

// Captions of one plan are foreign to every other, and those of the plan are
// not. What tells them apart was weighed on the first set; the second was only
// scored.
func TestQualityForeign(t *testing.T) {
	tune, held := readMakings(t)
	vocab := append(slices.Clone(tune.vocab), held.vocab...)
	for _, set := range []string{"read", "unread"} {
		var edits []trial
		for _, c := range readTolds(t, set) {
			edits = append(edits, c.trials(4000, 1, vocab)...)
		}
		edits = append(edits, readTrials(t, "testdata/spoken/"+set+"-*")...)
		if set == "read" {
			edits = append(edits, tune.trials(20)...)
			edits = append(edits, held.trials(20)...)
		}
		plans := map[string]trial{}
		for _, c := range edits {
			plans[c.plan.Video.Title.Print] = c
		}
		titles := slices.Sorted(maps.Keys(plans))
		own, ownForeign, other, otherForeign := 0, 0, 0, 0
		for i, c := range edits {
			own++
			if _, foreign := Read(c.plan, c.timed, c.cues).Foreign(); foreign {
				ownForeign++
			}
			for k, title := range titles {
				// A third of the pairs, for speed.
				if title == c.plan.Video.Title.Print || (i+k)%3 > 0 {
					continue
				}
				other++
				if _, foreign := Read(plans[title].plan, plans[title].timed, c.cues).Foreign(); foreign {
					otherForeign++
				}
			}
		}
		t.Logf("%s: foreign are %d of %d of the plan's own, %d of %d of another's", set, ownForeign, own, otherForeign, other)
		if ownForeign*100 > own*5 || otherForeign*100 < other*96 {
			t.Errorf("too many taken for what they are not")
		}
	}
}

// FuzzRead holds that any captions give a match in which everything points to
// something.
func FuzzRead(f *testing.F) {
	for _, seed := range []string{
		"", "1\n00:00:01,000 --> 00:00:02,000\nset the multimeter to ohms\n",
		"WEBVTT\n\n00:01.000 --> 00:00.500\nundo six screws\n\n00:00.000 --> 99:00:00.000\nundo six screws grille 1/2 mm\n",
		"1\n00:00:05,000 --> 00:00:05,000\n- - -- 3/4 °C\n\n2\n00:00:01,000 --> 03:00:00,000\n\u202e é 5 5 5 mm\n",
	} {
		f.Add([]byte(seed))
	}
	p, planned := decodePlan(f, heaterPlan)
	f.Fuzz(func(t *testing.T, raw []byte) {
		file, _ := captions.Read(raw, "x")
		m := Read(p, planned, file.Cues)
		check(t, p, m, file.Cues)
	})
}

func check(t *testing.T, p *plan.Plan, m Match, cues []captions.Cue) {
	t.Helper()
	if len(m.Steps) != len(p.Steps) {
		t.Fatalf("%d steps of %d", len(m.Steps), len(p.Steps))
	}
	for _, s := range m.Steps {
		if !(s.Confidence >= 0 && s.Confidence <= 1) || s.Status != Missing && (len(s.Takes) == 0 || !(s.Start <= s.End)) || s.Status == Missing && len(s.Takes) > 0 {
			t.Fatalf("step %+v", s)
		}
	}
	for i, w := range m.Words {
		if !(w.Start <= w.End) || w.Cue >= len(cues) || w.Span.Of(cues[w.Cue].Text) != w.Text || w.Step >= len(m.Steps) || w.Line >= len(m.Lines) || i > 0 && w.Start < m.Words[i-1].Start-1e-9 {
			t.Fatalf("word %d %+v", i, w)
		}
	}
	for _, l := range m.Lines {
		if l.Found != (l.First >= 0) || l.Last >= len(m.Words) || l.First > l.Last || !(l.Share >= 0 && l.Share <= 1.0001) {
			t.Fatalf("line %+v", l)
		}
	}
	for _, a := range m.Added {
		if a.First > a.Last || a.Last >= len(m.Words) || !(a.Start <= a.End) {
			t.Fatalf("added %+v", a)
		}
	}
	for _, x := range m.Terms {
		if x.Span.Of(cues[x.Cue].Text) == "" || x.Term == "" {
			t.Fatalf("term %+v", x)
		}
	}
	line := m.Timeline(p)
	for i, s := range line.Steps {
		if s.End < s.Start || i > 0 && s.Start < line.Steps[i-1].Start {
			t.Fatalf("timeline step %+v", s)
		}
	}
}

// A number said wrongly is told as the plan prints it, not as it is read out.
func TestNumberAsPrinted(t *testing.T) {
	p, planned := decodePlan(t, `
[video]
title = "T"
[[step]]
id = "measure"
title = "Measure the battery"
say = "Put the meter across the battery posts. You want at least 12.4 V across the posts."
`)
	m := Read(p, planned, cuesOf("put the meter across the battery posts", "you want at least 11.4 volts across the posts"))
	if len(m.Numbers) != 1 || m.Numbers[0].Print != "12.4 V" {
		t.Errorf("%+v, want 12.4 V", m.Numbers)
	}
}

// A number of another unit, or of a line before, does not stand for one that was
// said wrongly.
func TestNumberIsNoOther(t *testing.T) {
	p, planned := decodePlan(t, `
[video]
title = "T"
[[step]]
id = "open"
title = "Open it"
say = "Lay the pump on its side and undo the three screws."
[[step]]
id = "close"
title = "Close it"
say = "New pump in, the same three back, 3 N·m, snug. Then tighten the lid to 2 N·m."
[[step]]
id = "prove"
title = "Prove it"
say = "Plug it in and run it for two minutes."
`)
	m := Read(p, planned, cuesOf("lay the pump on its side and undo the three screws", "+ 1", "new pump in the same three back five newton metres snug",
		"then tighten the lid to 2 newton metres", "+ 1", "plug it in and run it for ten minutes"))
	var got []string
	for _, n := range m.Numbers {
		got = append(got, n.Print+" as "+n.Said)
	}
	if want := []string{"3 N·m as five newton metres", "two minutes as ten minutes"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
