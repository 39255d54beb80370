package shotlist

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"fixslate/plan/diag"
	"fixslate/plan/given"
	"fixslate/samples"
)

const head = "[video]\ntitle = \"T\"\n[shoot]\n"

// step is a step with one own shot a set-up; keys stand as written.
func step(id, keys string, setups ...string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "[[step]]\nid = %q\ntitle = \"S\"\nsay = \"Words.\"\ndrop = [\"to-camera\", \"wide\"]\n%s\n", id, keys)
	for _, s := range setups {
		of, needs, _ := strings.Cut(s, " needs ")
		fmt.Fprintf(&b, "[[step.shot]]\nsize = \"close-up\"\nof = \"it\"\nsetup = %q\n", of)
		if needs != "" {
			fmt.Fprintf(&b, "needs = [%s]\n", strings.Trim(needs, "-"))
		}
	}
	return b.String()
}

func TestOrderOfTheDay(t *testing.T) {
	for _, c := range []struct{ name, plan, want string }{
		{"nothing binds: one visit to each place, in the story's order",
			head + step("a", "", "hall") + step("b", "", "yard") + step("c", "", "hall") + step("d", "", "yard"),
			"a-1 c-1 b-1 d-1"},
		{"equal costs keep the story's order",
			head + step("a", "", "hall") + step("b", "", "hall") + step("c", "", "hall"),
			"a-1 b-1 c-1"},
		{"a state is a wall between what comes before and after",
			head + step("a", "", "hall") + step("b", `starts = ["lid-up"]`, "yard") + step("c", "", "hall") + step("d", `ends = ["lid-up"]`, "yard"),
			"a-1 b-1 c-1 d-1"},
		{"a shot that needs nothing floats to its place",
			head + step("a", "", "hall") + step("b", `starts = ["lid-up"]`, "yard") + step("c", "", "hall needs -") + step("d", `ends = ["lid-up"]`, "yard"),
			"a-1 c-1 b-1 d-1"},
		{"not: before the state begins, whatever its step",
			head + step("a", "", "hall") + step("b", `starts = ["lid-up"]`, `yard needs "not lid-up"`, "yard") + step("c", `ends = ["lid-up"]`, "yard"),
			"a-1 b-1 b-2 c-1"},
		{"not: after the state has ended, in the step that ends it",
			head + step("a", `starts = ["lid-up"]`, "hall") + step("b", `ends = ["lid-up"]`, `hall needs "not lid-up"`, "hall"),
			"a-1 b-2 b-1"},
		{"a state of one step alone can be had again: no wall",
			head + step("a", `during = ["running"]`, "hall") + step("b", "", "yard") + step("c", `during = ["running"]`, "hall"),
			"a-1 c-1 b-1"},
		{"the same part is handled in the story's order",
			"part = [{ id = \"pump\", name = \"pump\" }]\n" + head +
				step("a", "parts = [\"pump\"]\ndo = \"out\"", "hall") + step("b", "", "yard") + step("c", "parts = [\"pump\"]\ndo = \"in\"", "hall"),
			"a-pump-before a-1 c-pump-fitted c-1 b-1"},
		{"a detour after the test that leads into it",
			"test = [{ id = \"look\", question = \"Q\", instrument = \"eyes\" }]\n" + head +
				step("a", "", "hall") + step("b", "tests = [\"look\"]", "yard") + step("c", "only_if = \"test:look fails\"", "hall") + step("d", "", "hall"),
			"b-look-look b-1 a-1 d-1 c-1"},
		{"apart stays out of the day",
			head + step("a", "", "hall") + "[[step.shot]]\nof = \"it\"\nsetup = \"hall\"\napart = true\n",
			"a-1"},
		{"talk to the camera floats",
			head + step("a", "", "hall") + step("b", `starts = ["lid-up"]`, "yard") +
				"[[step]]\nid = \"c\"\ntitle = \"S\"\nsay = \"Words.\"\n[[step.shot]]\nsize = \"medium\"\nof = \"presenter to the camera\"\nsetup = \"hall\"\n" +
				step("d", `ends = ["lid-up"]`, "yard"),
			"a-1 c-1 b-1 d-1"},
		{"a shot without a set-up is made where the story's camera stands",
			head + step("a", "", "hall") + "[[step]]\nid = \"b\"\ntitle = \"S\"\nsay = \"Words.\"\nshot = [{ of = \"it\" }]\n" + step("c", "", "yard") + step("d", "", "hall"),
			"a-1 b-1 d-1 c-1"},
		{"before all that name one at the plan's first",
			"setup = [{ id = \"room\", place = \"room\" }]\n" + head + "[[step]]\nid = \"a\"\ntitle = \"S\"\nsay = \"Words.\"\nshot = [{ of = \"it\" }]\n" + step("b", "", "yard") + step("c", "", "room"),
			"a-1 c-1 b-1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, shots, d := arrange(t, c.plan)
			if got := strings.Join(sequence(shots, &d), " "); got != c.want {
				t.Errorf("%s, not %s\n%s", got, c.want, c.plan)
			}
			if !d.Optimal || d.Bound != d.Change {
				t.Errorf("not proved: %v of %v", d.Bound, d.Change)
			}
			if d.Change > d.StoryChange {
				t.Errorf("%v min of changes, %v in story order", d.Change, d.StoryChange)
			}
		})
	}
}

// The clock to the minute, by hand: a take of 30 s stands for a minute with
// its half minute around it.
func TestTimetable(t *testing.T) {
	oneMinute := func(id, keys, setup string) string {
		return step(id, "work = \"0m\"\n"+keys, setup) + "length = \"30s\"\n"
	}
	for _, c := range []struct{ name, plan, want string }{
		{"change-overs between shots",
			head + "start = \"10:00\"\nchange = { place = \"12m\", light = \"5m\" }\n" + oneMinute("a", "", "hall") + "light = \"daylight\"\n" + oneMinute("b", "", "yard") + "light = \"lamp\"\n",
			"10:00-10:01 a-1, 10:18-10:19 b-1"},
		{"a break is kept to the minute, and a change-over goes on behind it",
			head + "start = \"10:00\"\nbreaks = [\"10:05 30m\"]\n" + oneMinute("a", "", "hall") + oneMinute("b", "", "yard"),
			"10:00-10:01 a-1, 10:05-10:35 rest, 10:43-10:44 b-1"},
		{"takes do not begin before a break that falls into them",
			head + "start = \"10:00\"\nbreaks = [\"10:02 10m\"]\n" + step("a", "work = \"0m\"", "hall") + "length = \"90s\"\n" + step("b", "work = \"0m\"", "hall") + "length = \"90s\"\n",
			"10:00-10:02 a-1, 10:02-10:12 rest, 10:12-10:14 b-1"},
		{"work is interrupted by a break",
			head + "start = \"10:00\"\nbreaks = [\"10:05 10m\"]\n" + step("a", "work = \"10m\"", "hall") + "length = \"30s\"\n",
			"10:00-10:20 a-1, 10:05-10:15 rest"},
		{"over the end: another day, with its change-over in the morning",
			head + "start = \"10:00\"\nend = \"10:10\"\n" + oneMinute("a", "", "hall") + oneMinute("b", "", "yard"),
			"10:00-10:01 a-1 | 10:12-10:13 b-1"},
		{"a shot longer than the day runs over",
			head + "start = \"10:00\"\nend = \"10:01\"\n" + step("a", "work = \"0m\"", "hall") + "length = \"9m30s\"\n",
			"10:00-10:10 a-1"},
		{"the helper has hours: what can come before does",
			head + "start = \"10:00\"\npeople = [{ id = \"presenter\" }, { id = \"helper\", from = \"10:02\" }]\n" +
				oneMinute("a", "", "hall") + "who = \"helper\"\n" + oneMinute("b", "", "hall") + oneMinute("c", "", "hall"),
			"10:00-10:01 b-1, 10:01-10:02 c-1, 10:02-10:03 a-1"},
		{"and what can't waits",
			head + "start = \"10:00\"\npeople = [{ id = \"presenter\" }, { id = \"helper\", from = \"10:30\" }]\n" + oneMinute("a", "", "hall") + "who = \"helper\"\n",
			"10:00-10:30 wait, 10:30-10:31 a-1"},
		{"a step without a shot takes its time",
			head + "start = \"10:00\"\n" + oneMinute("a", "", "hall") + step("b", "starts = [\"lid-up\"]\nwork = \"5m\"") + oneMinute("c", "ends = [\"lid-up\"]", "hall"),
			"10:00-10:01 a-1, 10:01-10:06 work, 10:06-10:07 c-1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, shots, d := arrange(t, c.plan)
			if got := clocked(shots, &d); got != c.want {
				t.Errorf("%s\nnot %s\n%s", got, c.want, c.plan)
			}
		})
	}
}

// clocked prints a day; entries are parted by commas, days by bars.
func clocked(shots []Shot, d *Day) string {
	var days []string
	for _, s := range d.Sessions {
		var entries []string
		for _, e := range s.Entries {
			name := map[EntryKind]string{Rest: "rest", Wait: "wait", Working: "work"}[e.Kind]
			if e.Kind == Filming {
				name = shots[e.Shot].ID
			}
			entries = append(entries, Clock(e.Start)+"-"+Clock(e.End)+" "+name)
		}
		days = append(days, strings.Join(entries, ", "))
	}
	return strings.Join(days, " | ")
}

// Times of day are ISO 8601-1:2019, 5.3.1.2 (extended format, hours and
// minutes): a reader of others takes them.
func TestClockIsISO(t *testing.T) {
	for seconds := 0; seconds < midnight; seconds += 59 {
		at, err := time.Parse("15:04", Clock(seconds))
		if err != nil || at.Hour()*60+at.Minute() != seconds/60 {
			t.Fatalf("%d is %q: %v", seconds, Clock(seconds), err)
		}
	}
}

func TestCardsAndBatteries(t *testing.T) {
	text := head + "start = \"10:00\"\ncard_minutes = 2\nbattery = \"10m\"\nchange = { place = \"9m\" }\n"
	for i, place := range []string{"hall", "hall", "hall", "yard", "yard", "yard"} {
		text += step(fmt.Sprintf("s%d", i), "work = \"0m\"", place) + "length = \"1m\"\n"
	}
	_, shots, d := arrange(t, text)
	var cards, fresh []string
	for _, e := range d.Sessions[0].Entries {
		if e.Card > 0 {
			cards = append(cards, fmt.Sprint(shots[e.Shot].ID, " ", e.Card))
		}
		if e.Battery {
			fresh = append(fresh, shots[e.Shot].ID)
		}
	}
	// 90 s a shot, and 9 min of change-over before the fourth: 4:30, then 15 min
	if diff := cmp.Diff([]string{"s2-1 2", "s4-1 3"}, cards); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{"s3-1", "s4-1"}, fresh); diff != "" {
		t.Error(diff)
	}
	if d.Cards != 3 || d.Fresh != 2 || d.Recorded != 6 || d.Setups != 2 {
		t.Errorf("%+v", d)
	}
}

// The last chance stands before the change, with every shot whose states end
// with it, and each of those comes earlier in the day.
func TestLastChances(t *testing.T) {
	p, shots, d := arrange(t, head+
		step("a", "", "hall", "yard")+
		step("b", `starts = ["unplugged", "lid-up"]`, "hall", `yard needs "not lid-up"`)+
		step("c", "", "yard needs -")+
		step("d", `ends = ["lid-up"]`, "hall")+
		step("e", `ends = ["unplugged"]`, "hall"))
	var got []string
	for _, session := range d.Sessions {
		for _, e := range session.Entries {
			for _, turn := range e.Turns {
				got = append(got, strings.Join(names(shots, turn.Shots), " ")+": "+turn.Words(p))
			}
		}
	}
	want := []string{
		"a-1 a-2 b-2: from here on unplugged, lid-up",
		"b-1 d-1: no longer lid-up",
		"e-1: no longer unplugged",
	}
	// after the last change nothing is filmed: it needs no line
	if diff := cmp.Diff(want[:2], got); diff != "" {
		t.Error(diff)
	}
	var all []string
	for _, turn := range LastChances(p, shots) {
		all = append(all, strings.Join(names(shots, turn.Shots), " ")+": "+turn.Words(p))
	}
	if diff := cmp.Diff(want, all); diff != "" {
		t.Error(diff)
	}
}

func names(shots []Shot, list []int) []string {
	var ids []string
	for _, i := range list {
		ids = append(ids, shots[i].ID)
	}
	return ids
}

// In every sample, what must be in the can before a change is, and each
// session's clock runs forward.
func TestSamplesHold(t *testing.T) {
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		_, shots, d := arrange(t, string(text))
		filmed := map[int]bool{}
		for _, s := range d.Sessions {
			clock := s.Start
			for _, e := range s.Entries {
				for _, turn := range e.Turns {
					for _, i := range turn.Shots {
						if !filmed[i] {
							t.Errorf("%s: %s is not in the can before step %d", name, shots[i].ID, turn.Step)
						}
					}
				}
				if e.Start < clock || e.End < e.Start {
					t.Errorf("%s: %s after %s", name, Clock(e.Start), Clock(clock))
				}
				clock = e.Start
				if e.Kind == Filming {
					filmed[e.Shot] = true
				}
			}
		}
		left := len(d.Out) + len(d.Barred) + len(filmed)
		if left != len(shots) {
			t.Errorf("%s: %d of %d shots accounted for", name, left, len(shots))
		}
		if d.Bound > d.Change || d.Change > d.StoryChange {
			t.Errorf("%s: bound %v, change-overs %v, story %v", name, d.Bound, d.Change, d.StoryChange)
		}
	}
}

// With a list of what is made, the rest is planned from where the object is;
// what it has left comes last, once it has been brought back.
func TestGot(t *testing.T) {
	text := head + "change = { state = \"20m\" }\n" + step("a", "", "hall", "hall") + step("b", `starts = ["lid-up"]`, "hall", "hall") + step("c", "", "hall") + step("d", `ends = ["lid-up"]`, "hall")
	_, shots, d := arrange(t, text, "a-1", "b-1", "b-2")
	if diff := cmp.Diff([]string{"c-1", "d-1", "a-2"}, sequence(shots, &d)); diff != "" {
		t.Error(diff)
	}
	if d.Change != 20 || !d.Optimal || len(d.Got) != 3 {
		t.Errorf("%+v", d)
	}
	last := d.Sessions[0].Entries[2]
	if last.Words() != "bringing it back to how it was before the work" || last.ChangeSeconds() != 20*60 {
		t.Errorf("%q, %d s", last.Words(), last.ChangeSeconds())
	}
	_, _, d = arrange(t, text, ids(shots)...)
	if len(d.Sessions) != 0 || d.Summary()[0] != "Every shot of the day is in the can." {
		t.Errorf("%+v", d)
	}
}

func TestReadGot(t *testing.T) {
	_, shots, _ := arrange(t, head+step("a", "", "hall", "hall"))
	list, _ := diag.NewSource("ticked.txt", []byte("\ufeffa-1\r\n\r\n# the second was out of focus\r\na-1 # again\r\n  a-9\r\na-2"))
	got, findings := ReadGot(list, shots)
	if diff := cmp.Diff([]string{"a-1", "a-2"}, got); diff != "" {
		t.Error(diff)
	}
	if len(findings) != 1 || findings[0].Rule != "id-unknown" || findings[0].At.Position() != (diag.Position{Line: 5, Column: 3}) {
		t.Errorf("%+v", findings)
	}
	list, _ = diag.NewSource("film.mp4.txt", []byte(strings.Repeat("no shot\n", 10_000)))
	if _, findings = ReadGot(list, shots); len(findings) != mostUnknown+1 {
		t.Errorf("%d findings", len(findings))
	}
}

func FuzzReadGot(f *testing.F) {
	f.Add([]byte("a-1\n\n# no\na-2 # yes\nb"))
	shots := []Shot{{ID: "a-1"}, {ID: "a-2"}, {ID: "long-name-of-a-shot"}}
	f.Fuzz(func(t *testing.T, raw []byte) {
		list, faults := diag.NewSource("list", raw)
		if len(faults) > 0 {
			return
		}
		got, findings := ReadGot(list, shots)
		if len(got) > len(shots) || slices.Compare(got, slices.Compact(slices.Clone(got))) != 0 {
			t.Errorf("%q", got)
		}
		for _, at := range findings {
			if p := at.At.Position(); p.Line < 1 || p.Column < 1 {
				t.Errorf("%+v", at)
			}
		}
	})
}

// Zero and huge change-over costs, a rate that is not known, a view dearer
// than a place, hours that can't be meant, a day without shots.
func TestOddDays(t *testing.T) {
	shots := step("a", "", "hall, low") + step("b", "", "yard, low") + step("c", "", "hall, high") + step("d", "", "hall, low")
	for _, c := range []struct {
		name, shoot string
		change      float64
	}{
		{"nothing costs anything", `change = { place = "0s", view = "0s" }`, 0},
		{"everything costs a hundred hours", `change = { place = "100h", view = "100h", lens = "100h", light = "100h", state = "100h", helper = "100h" }`, 12000},
		{"not known: the usual rates", `change = { place = "?", view = "?" }`, 12 + 4},
		{"a view dearer than a place", `change = { place = "1m", view = "10m" }`, 2},
		{"seconds that divide by nothing", `change = { place = "61s", view = "7s" }`, 68.0 / 60},
		{"an end before the start", "start = \"18:00\"\nend = \"09:00\"", 16},
		{"no minute between start and end", "start = \"09:00\"\nend = \"09:00\"", 16},
		{"breaks all day", "breaks = [\"00:00 24h\", \"09:00 100h\", \"08:00 1m\"]", 16},
		{"a start at the last minute", "start = \"23:59\"", 16},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, list, d := arrange(t, head+c.shoot+"\n"+shots)
			if d.Change != c.change || d.Filmed() != len(list) || !d.Optimal {
				t.Errorf("%v min, %d of %d shots, %v to %v: %v", d.Change, d.Filmed(), len(list), d.Bound, d.Change, sequence(list, &d))
			}
			if len(d.Summary()) < 2 {
				t.Error(d.Summary())
			}
		})
	}
	_, _, d := arrange(t, head+step("a", ""))
	if d.Summary()[0] != "No shot needs the camera on the day." || !d.Optimal {
		t.Errorf("%+v", d)
	}
}

func TestHours(t *testing.T) {
	for _, c := range []struct{ shoot, path, message string }{
		{"start = \"18:00\"\nend = \"09:00\"", "shoot.end", "ends at 09:00, before it starts at 18:00"},
		{`breaks = ["07:00 30m"]`, "shoot.breaks[0]", "the break at 07:00 is outside"},
		{"end = \"12:00\"\nbreaks = [\"11:00 5m\", \"12:30 30m\"]", "shoot.breaks[1]", "the break at 12:30 is outside"},
		{"end = \"12:00\"\npeople = [{ id = \"pat\", from = \"12:00\" }]", "shoot.people[0].from", `"pat" comes at 12:00, when the day is over`},
		{`people = [{ id = "pat", until = "08:00" }]`, "shoot.people[0].until", `"pat" goes at 08:00, before the day starts`},
		{`people = [{ id = "pat", from = "12:00", until = "10:00" }]`, "shoot.people[0].until", `"pat" goes at 10:00, before coming at 12:00`},
	} {
		found := Hours(given.Plan(t, head+c.shoot+"\n"+step("a", "", "hall")))
		if len(found) != 1 || found[0].Path != c.path || !strings.Contains(found[0].Message, c.message) || found[0].Hint == "" {
			t.Errorf("%s: %+v", c.shoot, found)
		}
	}
	if found := Hours(given.Plan(t, head+"end = \"17:00\"\nbreaks = [\"12:00 30m\", \"13:00 ?\"]\npeople = [{ id = \"pat\", from = \"10:00\", until = \"11:00\" }]\n"+step("a", "", "hall"))); len(found) > 0 {
		t.Errorf("%+v", found)
	}
}

func TestImpossible(t *testing.T) {
	for _, c := range []struct{ plan, shot, path, message string }{
		{head + step("a", `starts = ["lid-up"]`, `hall needs "lid-up", "not lid-up"`), "a-1", "step[0].shot[0].needs", `needs "lid-up" and not "lid-up"`},
		{head + "stays = [\"unplugged\"]\n" + step("a", "", `hall needs "not power-off"`), "a-1", "step[0].shot[0].needs", `the filmed one always is`},
		{head + step("a", "starts = [\"x-off\"]\nends = [\"x-off\"]", "hall") + step("b", "starts = [\"y-off\"]\nends = [\"y-off\"]", "hall", `hall needs "x-off", "y-off"`), "b-2", "step[1].shot[1].needs", "no moment of the story is x-off, y-off at once"},
		{head + "begins = [\"raised\"]\n[[step]]\ntitle = \"Raise it\"\ndo = \"jack it up\"\nstarts = [\"raised\"]\n[[step]]\ntitle = \"Down\"\ndo = \"let it down\"\nends = [\"raised\"]\n", "raise-it-wide", "step[0].starts", "the filmed object is already raised"},
		{head + "stays = [\"raised\"]\n[[step]]\ntitle = \"Down\"\ndo = \"let it down\"\nends = [\"raised\"]\n", "down-wide", "step[0].ends", "the filmed object stays raised"},
	} {
		_, shots, d := arrange(t, c.plan)
		if len(d.Barred) != 1 || shots[d.Barred[0].Shot].ID != c.shot || d.Barred[0].Path != c.path || !strings.Contains(d.Barred[0].Message, c.message) || d.Barred[0].Answered {
			t.Errorf("%+v\n%s", d.Barred, c.plan)
		}
		if slices.Contains(sequence(shots, &d), c.shot) {
			t.Errorf("%s is in the day", c.shot)
		}
	}
	_, _, d := arrange(t, head+"begins = [\"raised\"]\n[[step]]\ntitle = \"Raise it\"\ndo = \"jack it up\"\nstarts = [\"raised\"]\nshot = [{ of = \"jack\", kind = \"still\" }]\n")
	if len(d.Barred) != 1 || !d.Barred[0].Answered {
		t.Errorf("a still answers for it: %+v", d.Barred)
	}
}

// A number of the sheets is no id, but the answer says what it stands for.
func TestGotByNumber(t *testing.T) {
	shots := []Shot{{ID: "open-wide"}, {ID: "open-screws"}}
	list, _ := diag.NewSource("ticked.txt", []byte("2\n1.\n3\n0\n"))
	got, findings := ReadGot(list, shots)
	if len(got) != 0 || len(findings) != 4 {
		t.Fatal(got, findings)
	}
	for i, want := range []string{`: 2 is now "open-screws"`, `: 1 is now "open-wide"`, "shots.csv", "shots.csv"} {
		if !strings.HasSuffix(findings[i].Hint, want) {
			t.Errorf("line %d: hint %q, want ...%q", i+1, findings[i].Hint, want)
		}
	}
}

// A later day begins on a card of its own, which is put in and counted.
func TestCardsOfLaterDays(t *testing.T) {
	text := head + "start = \"10:00\"\nend = \"10:04\"\ncard_minutes = 2\n"
	for i := range 5 {
		text += step(fmt.Sprintf("s%d", i), "work = \"0m\"", "hall") + "length = \"50s\"\n"
	}
	_, shots, d := arrange(t, text)
	var cards []string
	for _, s := range d.Sessions {
		for _, e := range s.Entries {
			if e.Card > 0 {
				cards = append(cards, fmt.Sprint(shots[e.Shot].ID, " ", e.Card))
			}
		}
	}
	// 80 s a shot: three on the first day
	if diff := cmp.Diff([]string{"s2-1 2", "s3-1 3"}, cards); diff != "" || d.Cards != 3 || len(d.Sessions) != 2 {
		t.Error(d.Cards, diff)
	}
}
