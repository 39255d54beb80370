package captions

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"
	"unicode"
)

// bruteForce finds the least cost by trying every way to part the words into
// cues and lines. It shares what a line and a cue cost with the program, and
// nothing of how the least sum is found.
func bruteForce(c *costs) int64 {
	least := unpayable
	n := len(c.list)
	// Each gap between words is one of: same line, new line, new cue.
	choice := make([]int, n)
	var try func(int)
	try = func(at int) {
		if at < n {
			for choice[at] = 0; choice[at] < 3; choice[at]++ {
				try(at + 1)
			}
			return
		}
		if cost, ok := costOf(c, choice); ok && cost < least {
			least = cost
		}
	}
	choice[0] = 2
	try(1)
	return least
}

// costOf adds up one way to part the words; choice[i] says what comes before
// word i.
func costOf(c *costs, choice []int) (cost int64, ok bool) {
	n := len(choice)
	cueStart, lineStart, lines := 0, 0, 1
	for i := 1; i <= n; i++ {
		last := i == n
		if !last && choice[i] == 0 {
			if c.list[i-1].edge != flow {
				return 0, false
			}
			continue
		}
		if c.characters(lineStart, i) > c.profile.Width {
			return 0, false
		}
		if !last && c.list[i-1].part == partNever {
			return 0, false
		}
		cost += c.line(lineStart, i)
		lineStart = i
		if !last && choice[i] == 1 {
			if c.list[i-1].edge == newCue {
				return 0, false
			}
			cost += c.parting(i - 1)
			lines++
			continue
		}
		if lines > c.profile.Lines {
			return 0, false
		}
		cost += c.cue(cueStart, i) + c.lines(cueStart, i, lines)
		cueStart, lines = i, 1
	}
	return cost, true
}

var someWords = strings.Fields(`the a pump turn off 12 V 3 N·m screw. bracket, and then with
	NV-2231 washer; it doesn't move of to 10 mm winding meter Nora Vik! slowly (carefully) 0.5 Ω`)

func randomUnits(r *rand.Rand, count, length int) []Unit {
	var units []Unit
	at := 0.0
	for range count {
		var text []string
		for range 1 + r.IntN(length) {
			text = append(text, someWords[r.IntN(len(someWords))])
		}
		u := Unit{Text: strings.Join(text, " "), Start: at}
		u.End = at + float64(Characters(u.Text))/(10+10*r.Float64())
		switch r.IntN(8) {
		case 0:
			u.Kind, u.End = Sound, at
		case 1:
			u.Speaker = "helper"
		case 2:
			u.Kind = Card
		}
		at = u.End + r.Float64()*1.2
		units = append(units, u)
	}
	return units
}

func TestCutIsCheapest(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	profiles := append(Profiles(), Profile{Name: "tight", Width: 9, Lines: 2, Speed: 12, Shortest: time.Second, Longest: 3 * time.Second, Pause: time.Second})
	for n := range 600 {
		p := profiles[n%len(profiles)]
		w := wordsOf(randomUnits(r, 1+r.IntN(4), 4), p)
		if len(w.list) > 11 {
			w.list = w.list[:11]
		}
		c := newCosts(w, p)
		_, got := c.cut()
		if want := bruteForce(&c); got != want {
			t.Fatalf("case %d, %s: cost %d, brute force %d for %v", n, p.Name, got, want, w.list)
		}
	}
}

// sentences makes sentences as a how-to has them, none of them twice the same.
func sentences(r *rand.Rand, count int) []string {
	pick := func(list ...string) string { return list[r.IntN(len(list))] }
	var made []string
	for range count {
		number := pick("3", "12", "0.5", "11.64", "10 to 20", "1 500", "1/2", "eleven")
		unit := pick("V", "N·m", "mm", "Ω", "kΩ", "°C", "bar", "%", "volts", "millimetres", "psi")
		thing := pick("pump", "relay", "thermostat housing", "bracket", "door seal", "crankshaft position sensor", "fuse 12, 15 A", "drain pump (NV-2231)", "violet-blue wire")
		made = append(made, pick(
			"Turn the "+thing+" until you read "+number+" "+unit+".",
			"Undo three 8 mm screws, lift the "+thing+" off its seat, and lay it where it can't roll away.",
			"Across the two terminals you want "+number+" "+unit+"; anything else means the "+thing+" is open and has to go.",
			"Good.", "Now measure.", "Wait "+number+" minutes.",
			"Part number A 204 820 "+fmt.Sprint(1000+r.IntN(9000))+" fits both, but the older one with the grey lever needs the longer screw and a washer under its head?",
			"If it hums and the "+thing+" still won't move, it is stuck, not dead!",
			"Set the meter to "+unit+" and keep your fingers behind the guards while the "+thing+" is live because "+number+" "+unit+" is more than enough to hurt you.",
		))
	}
	return made
}

// TestProfilesHold sets 2,000 made sentences at the rate of read speech, 15.2
// characters a second with its pauses (LJ Speech), with pauses of 0.6 s after
// a sentence (Liu et al. 2022), and holds the cues to the profile's own
// figures, computed here anew.
func TestProfilesHold(t *testing.T) {
	for _, p := range Profiles() {
		r := rand.New(rand.NewPCG(3, 4))
		var units []Unit
		at := 0.0
		for i, s := range sentences(r, 2000) {
			end := at + float64(len([]rune(s)))/16.5
			units = append(units, Unit{Text: s, Start: at, End: end})
			at = end + 0.6
			if i%50 == 49 {
				units = append(units, Unit{Kind: Sound, Text: "[pump hums]", Start: at, End: at + 1})
				at += 2
			}
		}
		cues := Segment(units, p)
		for i, c := range cues {
			lines := strings.Split(c.Text, "\n")
			if len(lines) > p.Lines {
				t.Errorf("%s: %d lines in %q", p.Name, len(lines), c.Text)
			}
			for k, line := range lines {
				if len([]rune(line)) > p.Width {
					t.Errorf("%s: line too wide: %q", p.Name, line)
				}
				next := ""
				if k+1 < len(lines) {
					next = lines[k+1]
				} else if i+1 < len(cues) {
					next = cues[i+1].Text
				}
				if torn(line, next) {
					t.Errorf("%s: a number or part number is parted: %q | %q", p.Name, line, next)
				}
			}
			long := c.Duration().Seconds()
			if cps := float64(len([]rune(c.Text))) / long; cps > 17 {
				t.Errorf("%s: %.2f characters a second in %q at %v", p.Name, cps, c.Text, c.Start)
			}
			if long < 5.0/6 || long > 7 {
				t.Errorf("%s: %q is shown for %.3f s", p.Name, c.Text, long)
			}
			if i > 0 && c.Start-cues[i-1].End < 83*time.Millisecond {
				t.Errorf("%s: gap of %v before %q", p.Name, c.Start-cues[i-1].End, c.Text)
			}
			if strings.Contains(c.Text, "[pump hums]") != strings.Contains("\n"+c.Text+"\n", "\n[pump hums]\n") {
				t.Errorf("%s: the label is not on its own line in %q", p.Name, c.Text)
			}
		}
		if got := Check(File{Cues: cues}, p); len(got) > 0 {
			t.Errorf("%s: %d findings, the first %v", p.Name, len(got), got[0])
		}
		sameWords(t, units, cues)
		t.Logf("%s: %d cues", p.Name, len(cues))
	}
}

// torn holds where a line ends in a number whose unit begins the next one, or
// in a piece of the part number of sentences.
func torn(line, next string) bool {
	a, b := strings.Fields(line), strings.Fields(next)
	if len(a) == 0 || len(b) == 0 {
		return false
	}
	last, first := a[len(a)-1], strings.TrimRight(b[0], ".,;?!")
	switch first {
	case "V", "N·m", "mm", "Ω", "kΩ", "°C", "bar", "%", "volts", "millimetres", "psi", "A", "minutes":
		return strings.IndexFunc(last, unicode.IsDigit) >= 0 && !strings.HasSuffix(last, ",") || last == "eleven"
	case "204", "820":
		return true
	}
	return last == "820"
}

// sameWords holds the words that went in against those that came out.
func sameWords(t *testing.T, units []Unit, cues []Cue) {
	t.Helper()
	var in, out []string
	for _, u := range units {
		in = append(in, strings.Fields(u.Text)...)
	}
	for _, c := range cues {
		out = append(out, strings.Fields(c.Text)...)
	}
	if a, b := strings.Join(in, " "), strings.Join(out, " "); a != b {
		n := 0
		for n < len(a) && n < len(b) && a[n] == b[n] {
			n++
		}
		t.Errorf("words differ from byte %d: in %.60q, out %.60q", n, a[n:], b[n:])
	}
}

// TestNoRoom sets words that come faster than anybody reads: widths, lines,
// order and words hold all the same, and Check says what can't be read.
func TestNoRoom(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for n := range 200 {
		units := randomUnits(r, 30, 12)
		squeeze := r.Float64() * 0.5
		for i := range units {
			units[i].Start *= squeeze
			units[i].End *= squeeze
		}
		p := Profiles()[n%4]
		cues := Segment(units, p)
		sameWords(t, units, cues)
		for i, c := range cues {
			if c.Duration() <= 0 || c.Start < 0 {
				t.Fatalf("cue %d is never shown: %v", i, c)
			}
			if i > 0 && c.Start < cues[i-1].End {
				t.Fatalf("cues %d and %d overlap", i-1, i)
			}
			for _, line := range strings.Split(c.Text, "\n") {
				if Characters(line) > p.Width {
					t.Fatalf("line too wide: %q", line)
				}
			}
		}
	}
}

// BenchmarkSegment is what a line of twelve words costs, in a video of a hundred.
func BenchmarkSegment(b *testing.B) {
	var units []Unit
	for i := range 100 {
		start := 5 * float64(i)
		units = append(units, Unit{Text: "Set the meter to ohms, and touch the probes to the two terminals.", Start: start, End: start + 4})
	}
	profile, _ := ProfileNamed("")
	b.ReportAllocs()
	for b.Loop() {
		Segment(units, profile)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/100, "ns/line")
}
