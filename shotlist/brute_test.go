package shotlist

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"fixslate/plan"
	"fixslate/plan/given"
	"fixslate/plan/timing"
)

func arrange(t testing.TB, text string, got ...string) (*plan.Plan, []Shot, Day) {
	t.Helper()
	p := given.Plan(t, text)
	shots := FromPlan(p)
	return p, shots, Arrange(context.Background(), Call{Plan: p, Timeline: timing.Estimate(p, timing.DefaultPace()), Shots: shots, Got: got})
}

// sequence are the ids of a day's shots in its order.
func sequence(shots []Shot, d *Day) []string {
	var ids []string
	for _, s := range d.Sessions {
		for _, e := range s.Entries {
			if e.Kind == Filming {
				ids = append(ids, shots[e.Shot].ID)
			}
		}
	}
	return ids
}

// madeShot is a shot of a made plan, as the text below says it.
type madeShot struct {
	place, view, light string
	helper             bool
	needs              string // "", "x" or "not x"
	floats             bool
}

type madeStep struct {
	starts, ends string
	shots        []madeShot
}

type madePlan struct {
	rates [6]int // minutes: place, view, lens, light, state, helper
	steps []madeStep
}

func (m madePlan) toml() string {
	var b strings.Builder
	b.WriteString("[video]\ntitle = \"T\"\n[shoot]\npeople = [{ id = \"presenter\" }, { id = \"helper\" }]\n")
	fmt.Fprintf(&b, "change = { place = \"%dm\", view = \"%dm\", lens = \"%dm\", light = \"%dm\", state = \"%dm\", helper = \"%dm\" }\n", m.rates[0], m.rates[1], m.rates[2], m.rates[3], m.rates[4], m.rates[5])
	list := func(key, state string) {
		if state != "" {
			fmt.Fprintf(&b, "%s = [%q]\n", key, state)
		}
	}
	for i, s := range m.steps {
		fmt.Fprintf(&b, "[[step]]\nid = \"s%d\"\ntitle = \"S\"\nsay = \"Words.\"\ndrop = [\"to-camera\"]\n", i)
		list("starts", s.starts)
		list("ends", s.ends)
		for j, shot := range s.shots {
			fmt.Fprintf(&b, "[[step.shot]]\nid = \"c%d\"\nsize = \"close-up\"\nof = \"it\"\nsetup = \"%s, %s\"\nlight = %q\n", j, shot.place, shot.view, shot.light)
			if shot.helper {
				b.WriteString("who = \"helper\"\n")
			}
			switch {
			case shot.floats:
				b.WriteString("needs = []\n")
			case shot.needs != "":
				fmt.Fprintf(&b, "needs = [%q]\n", shot.needs)
			}
		}
	}
	return b.String()
}

// Places, views and lights; short words, so that none is taken for a slip of
// another's id.
var madePlaces, madeViews, madeLights = []string{"kitchen", "workshop", "garden"}, []string{"low", "overhead"}, []string{"lamp", "daylight"}

func randomPlan(r *rand.Rand, most int) madePlan {
	m := madePlan{rates: [6]int{10 + r.IntN(5), 1 + r.IntN(6), 3, 1 + r.IntN(6), 7, 1 + r.IntN(6)}}
	open := map[string]bool{}
	left := most
	for range 3 + r.IntN(3) {
		var s madeStep
		state := []string{"lid-up", "belt-free"}[r.IntN(2)]
		switch {
		case r.IntN(2) == 0:
		case open[state]:
			s.ends, open[state] = state, false
		default:
			s.starts, open[state] = state, true
		}
		for range 1 + r.IntN(2) {
			if left == 0 {
				break
			}
			left--
			shot := madeShot{
				place: madePlaces[r.IntN(3)], view: madeViews[r.IntN(2)], light: madeLights[r.IntN(2)],
				helper: r.IntN(4) == 0, floats: r.IntN(6) == 0,
			}
			if !shot.floats && r.IntN(4) == 0 {
				shot.needs = []string{"not lid-up", "not belt-free", s.starts}[r.IntN(3)]
			}
			s.shots = append(s.shots, shot)
		}
		m.steps = append(m.steps, s)
	}
	return m
}

// bruteShot is a shot with the moments in which it may be made.
type bruteShot struct {
	madeShot
	id      string
	moments []bool
	inTurn  int // of a step that changes the object: its number, else -1
}

// brute follows the rules as the README tells them, in another way than the
// package: it replays the story, marks every moment of every shot, and tries
// all sequences.
func (m madePlan) brute() (best int, feasible bool, shots []bruteShot) {
	held := m.replay()
	for i, step := range m.steps {
		changes := step.starts+step.ends != ""
		for j, s := range step.shots {
			b := bruteShot{madeShot: s, id: fmt.Sprintf("s%d-c%d", i, j), moments: make([]bool, len(held)), inTurn: -1}
			home := 2*i + 1
			fits := func(at int) bool { return held[at] == held[home] }
			switch {
			case s.floats:
				fits = func(int) bool { return true }
			case strings.HasPrefix(s.needs, "not "):
				fits = func(at int) bool { return !strings.Contains(held[at], strings.TrimPrefix(s.needs, "not ")) }
			case s.needs != "":
				fits = func(at int) bool { return strings.Contains(held[at], s.needs) }
			case changes:
				fits = func(at int) bool { return at == home }
				b.inTurn = i
			}
			m.mark(&b, held, home, fits)
			shots = append(shots, b)
		}
	}
	for _, s := range shots {
		if !slices.Contains(s.moments, true) {
			return 0, false, shots
		}
	}
	best = -1
	m.try(shots, nil, make([]bool, len(shots)), 0, &best)
	return best, true, shots
}

// replay gives the states of each moment: between steps and inside them.
func (m madePlan) replay() []string {
	now := map[string]bool{}
	say := func() string {
		var words []string
		for state, on := range now {
			if on {
				words = append(words, state)
			}
		}
		slices.Sort(words)
		return strings.Join(words, " ")
	}
	held := []string{say()}
	for _, s := range m.steps {
		if s.starts != "" {
			now[s.starts] = true
		}
		held = append(held, say())
		if s.ends != "" {
			now[s.ends] = false
		}
		held = append(held, say())
	}
	return held
}

// mark fills in the run of moments around home, or the nearest, and leaves the
// ends of it that are other steps' changes to those.
func (m madePlan) mark(b *bruteShot, held []string, home int, fits func(int) bool) {
	at := -1
	for i := range held {
		if fits(i) && (at < 0 || gap(i, home) < gap(at, home)) {
			at = i
		}
	}
	if at < 0 {
		return
	}
	from, to := at, at
	for from > 0 && fits(from-1) {
		from--
	}
	for to+1 < len(held) && fits(to+1) {
		to++
	}
	foreign := func(i int) bool { return i%2 == 1 && i != home && m.steps[i/2].starts+m.steps[i/2].ends != "" }
	if !b.floats && from < to && foreign(from) {
		from++
	}
	if !b.floats && from < to && foreign(to) {
		to--
	}
	for i := from; i <= to; i++ {
		b.moments[i] = true
	}
}

func gap(a, b int) int { return max(a-b, b-a) }

// try extends a sequence in every way that leads the object forward.
func (m madePlan) try(shots []bruteShot, made []int, done []bool, moment int, best *int) {
	if len(made) == len(shots) {
		if cost := m.price(shots, made); *best < 0 || cost < *best {
			*best = cost
		}
		return
	}
	for i, s := range shots {
		if done[i] || s.inTurn >= 0 && slices.ContainsFunc(shots[:i], func(o bruteShot) bool {
			return o.inTurn == s.inTurn && !done[slices.IndexFunc(shots, func(x bruteShot) bool { return x.id == o.id })]
		}) {
			continue
		}
		at := moment
		for at < len(s.moments) && !s.moments[at] {
			at++
		}
		if at == len(s.moments) {
			continue
		}
		done[i] = true
		m.try(shots, append(made, i), done, at, best)
		done[i] = false
	}
}

// price is the change-over time of a sequence, in minutes.
func (m madePlan) price(shots []bruteShot, made []int) int {
	cost, came := 0, false
	for k, i := range made {
		s := shots[i]
		var before *bruteShot
		if k > 0 {
			before = &shots[made[k-1]]
		}
		if before != nil {
			switch {
			case s.place != before.place:
				cost += m.rates[0]
			case s.view != before.view:
				cost += m.rates[1]
			}
			if s.light != before.light {
				cost += m.rates[3]
			}
		}
		if s.helper && (before == nil || !before.helper) {
			if came {
				cost += m.rates[5]
			}
			came = true
		}
	}
	held := m.replay()
	return cost + m.rates[4]*again(held, shots)
}

// again counts the moments in which a state comes back that had gone, with
// something still to be filmed that waits for it or for a later moment.
func again(held []string, shots []bruteShot) int {
	n := 0
	gone := map[string]bool{}
	for at := 1; at < len(held); at++ {
		back := false
		for _, state := range []string{"lid-up", "belt-free"} {
			was, is := strings.Contains(held[at-1], state), strings.Contains(held[at], state)
			if was && !is {
				gone[state] = true
			}
			back = back || !was && is && gone[state]
		}
		if back && slices.ContainsFunc(shots, func(s bruteShot) bool { return !s.floats && slices.Index(s.moments, true) >= at }) {
			n++
		}
	}
	return n
}

// On small made plans the day's objective is the least of all sequences that
// the rules allow, tried one by one, and its bound is never above that.
func TestDayAgainstBruteForce(t *testing.T) {
	plans, solved, optimal := 200, 0, 0
	if testing.Short() {
		plans = 60
	}
	r := rand.New(rand.NewPCG(5, 2026))
	for n := range plans {
		m := randomPlan(r, 7)
		best, feasible, made := m.brute()
		_, shots, d := arrange(t, m.toml())
		if !feasible {
			if len(d.Barred) == 0 {
				t.Errorf("plan %d: a shot that no moment allows is not barred\n%s", n, m.toml())
			}
			continue
		}
		solved++
		if d.Optimal {
			optimal++
		}
		if d.Change != float64(best) || d.Bound > float64(best) {
			t.Fatalf("plan %d: objective %v, bound %v, brute force %d: %v\n%s", n, d.Change, d.Bound, best, sequence(shots, &d), m.toml())
		}
		if d.Optimal != (d.Bound == d.Change) {
			t.Errorf("plan %d: optimal %v with %v of %v", n, d.Optimal, d.Bound, d.Change)
		}
		if got := sequence(shots, &d); len(got) != len(made) {
			t.Errorf("plan %d: %d of %d shots", n, len(got), len(made))
		} else if !m.follows(made, got) {
			t.Errorf("plan %d: %v can't be filmed so\n%s", n, got, m.toml())
		}
	}
	if solved < plans/2 || optimal < solved/2 {
		t.Errorf("%d of %d plans tried, %d proved: the test says little", solved, plans, optimal)
	}
}

// follows holds where a sequence leads the object through its moments once.
func (m madePlan) follows(shots []bruteShot, ids []string) bool {
	moment := 0
	for _, id := range ids {
		at := slices.IndexFunc(shots, func(s bruteShot) bool { return s.id == id })
		for moment < len(shots[at].moments) && !shots[at].moments[moment] {
			moment++
		}
		if moment == len(shots[at].moments) {
			return false
		}
	}
	return true
}
