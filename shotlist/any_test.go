package shotlist

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"fixslate/plan/given"
)

// anyPlan is a made plan with all that bears on a day: states of every kind,
// needs of shots, hours, breaks, rates, parts and tests.
func anyPlan(r *rand.Rand) string {
	pick := func(words ...string) string { return words[r.IntN(len(words))] }
	var b strings.Builder
	b.WriteString("part = [{ id = \"pump\", name = \"pump\" }]\nfastener = [{ id = \"nut\", what = \"nut\" }]\ntest = [{ id = \"hum\", question = \"Q\", instrument = \"ears\" }]\n" + head)
	fmt.Fprintf(&b, "start = \"%02d:%02d\"\n", r.IntN(24), r.IntN(60))
	if r.IntN(2) == 0 {
		fmt.Fprintf(&b, "end = \"%02d:%02d\"\n", r.IntN(24), r.IntN(60))
	}
	fmt.Fprintf(&b, "breaks = [\"%02d:10 %dm\", \"%02d:20 %dm\"]\n", r.IntN(24), 1+r.IntN(90), r.IntN(24), 1+r.IntN(90))
	fmt.Fprintf(&b, "people = [{ id = \"presenter\" }, { id = \"helper\", from = \"%02d:00\", until = \"%02d:30\" }]\n", r.IntN(24), r.IntN(24))
	fmt.Fprintf(&b, "change = { place = \"%s\", view = \"%s\", state = \"%s\" }\ncard_minutes = %d\nbattery = \"%dm\"\n", pick("0s", "7s", "12m", "?"), pick("0s", "4m", "3h"), pick("0s", "9m"), 1+r.IntN(3), 1+r.IntN(30))
	b.WriteString(pick("", "begins = [\"lid-up\"]\n", "stays = [\"lid-up\"]\n", "begins = [\"wet\"]\nstays = [\"lid-up\"]\n"))
	for i := range 1 + r.IntN(9) {
		fmt.Fprintf(&b, "[[step]]\nid = \"s%d\"\ntitle = \"S\"\nsay = \"Words.\"\n", i)
		for _, key := range []string{"starts", "ends", "during"} {
			if r.IntN(3) == 0 {
				fmt.Fprintf(&b, "%s = [%q]\n", key, pick("lid-up", "wet", "cooled"))
			}
		}
		b.WriteString(pick("", "do = \"turn it\"\n", "parts = [\"pump\"]\n", "fasteners = [\"nut\"]\n", "tests = [\"hum\"]\n", "only_if = \"test:hum fails\"\n"))
		b.WriteString(pick("", "work = \"3h\"\n", "work = \"2m\"\n"))
		for range r.IntN(4) {
			fmt.Fprintf(&b, "[[step.shot]]\nof = \"it\"\nsetup = %q\ntakes = %d\nneeds = [%s]\n", pick("hall, low", "hall, high", "yard", "roof"), 1+r.IntN(3), pick("", "\"not lid-up\"", "\"not wet\", \"not cooled\""))
			b.WriteString(pick("", "who = \"helper\"\n", "apart = true\n", "kind = \"still\"\n", "light = \"lamp\"\n"))
		}
	}
	return b.String()
}

// Whatever the plan, every shot is accounted for once, the clock runs forward,
// nothing is filmed in a break, and the object is led through its moments once;
// then what it has left is brought back.
func TestAnyPlanIsLaidOut(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 2026))
	for range 300 {
		text := anyPlan(r)
		p := given.Plan(t, text)
		shots := FromPlan(p)
		var got []string
		for _, s := range shots {
			if r.IntN(6) == 0 {
				got = append(got, s.ID)
			}
		}
		_, _, d := arrange(t, text, got...)
		checkDay(t, shots, &d, text)
		checkOrder(t, newBoard(Call{Plan: p, Shots: shots, Got: got}), sequence(shots, &d), text)
		windows := readStory(p).windowsOf(shots)
		moment, again := 0, false
		for _, s := range d.Sessions {
			for _, e := range s.Entries {
				if e.Kind != Filming || windows[e.Shot].Floats {
					continue
				}
				w := windows[e.Shot]
				moment = max(moment, w.From)
				again = again || len(got) > 0 && w.To < moment
				if w.To < moment && !again {
					t.Fatalf("%s is filmed at moment %d, after %d\n%s", shots[e.Shot].ID, moment, w.To, text)
				}
			}
		}
	}
}

func checkDay(t *testing.T, shots []Shot, d *Day, text string) {
	t.Helper()
	seen := map[int]int{}
	for _, list := range [][]int{d.Got, d.Out} {
		for _, i := range list {
			seen[i]++
		}
	}
	for _, b := range d.Barred {
		if seen[b.Shot] == 0 {
			seen[b.Shot]++
		}
	}
	change := 0
	for _, s := range d.Sessions {
		clock := s.Start
		for _, e := range s.Entries {
			change += e.ChangeSeconds()
			switch e.Kind {
			case Filming:
				seen[e.Shot]++
				if e.Start < clock || e.End < e.Start {
					t.Fatalf("%s to %s after %s\n%s", Clock(e.Start), Clock(e.End), Clock(clock), text)
				}
				clock = e.Start + filming(&shots[e.Shot])
			case Rest:
				if e.Start < clock {
					t.Fatalf("a break at %s in takes that end at %s\n%s", Clock(e.Start), Clock(clock), text)
				}
				clock = e.End
			}
		}
	}
	for i := range shots {
		if seen[i] != 1 {
			t.Fatalf("%s is accounted for %d times\n%s", shots[i].ID, seen[i], text)
		}
	}
	if n := float64(change) / 60; n != d.Change || d.Bound > d.Change || d.Change > d.StoryChange {
		t.Fatalf("change-overs %v, added up %v, bound %v, story %v\n%s", d.Change, n, d.Bound, d.StoryChange, text)
	}
	if len(d.Summary()) == 0 || d.verdict() == "" {
		t.Fatal("no words")
	}
}

// checkOrder holds every pair of shots to the rules, one by one.
func checkOrder(t *testing.T, b *board, ids []string, text string) {
	t.Helper()
	at := map[string]int{}
	for k, id := range ids {
		at[id] = k
	}
	for _, x := range b.cards {
		for _, y := range b.cards {
			before := b.precedes(&node{window: x.window, keeps: x.keeps, turn: x.turn, side: x.side}, &node{window: y.window, keeps: y.keeps, turn: y.turn, side: y.side})
			if before && at[b.shots[x.shot].ID] > at[b.shots[y.shot].ID] {
				t.Fatalf("%s comes after %s\n%s", b.shots[x.shot].ID, b.shots[y.shot].ID, text)
			}
		}
	}
}
