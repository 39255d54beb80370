package shotlist

import (
	"slices"
	"strings"
	"testing"

	"fixslate/samples"
)

const pump = "part = [{ id = \"pump\", name = \"pump\" }]\n"

// hands is a step in which a part is taken, with a wide for each of its places.
func hands(id, keys string, setups ...string) string {
	return strings.Replace(step(id, keys+"\nparts = [\"pump\"]\ndo = \"take the pump\"", setups...), ", \"wide\"", "", 1)
}

const twoPlaces = "[[setup]]\nid = \"hall\"\nplace = \"hall\"\n[[setup]]\nid = \"yard\"\nplace = \"yard\"\n"

// How a part sits is filmed before it comes off: with the states that the step
// finds, not those that it leaves, and before anything that shows its action.
func TestAsItSits(t *testing.T) {
	for _, c := range []struct {
		name, plan string
		window     Window
		states     string
	}{
		{"before the state that the step starts",
			pump + head + step("a", `starts = ["lid-up"]`, "hall") + step("b", "", "hall") + hands("c", `starts = ["pump-out"]`, "hall"),
			Window{From: 2, To: 4}, "lid-up not pump-out"},
		{"before the action of a step that starts none",
			pump + head + step("a", `starts = ["lid-up"]`, "hall") + hands("b", "", "hall") + step("c", `ends = ["lid-up"]`, "hall"),
			Window{From: 2, To: 2}, "lid-up"},
		{"in the first step",
			pump + head + hands("a", `starts = ["pump-out"]`, "hall") + step("b", `ends = ["pump-out"]`, "hall"),
			Window{From: 0, To: 0}, "not pump-out"},
		{"within the step that opens what hides it",
			pump + head + hands("a", `starts = ["lid-up"]`, "hall") + step("b", `ends = ["lid-up"]`, "hall"),
			Window{From: 1, To: 1, Change: true}, "lid-up"},
		{"a supply that is off hides nothing, and the part's own state is no opening",
			pump + head + hands("a", `starts = ["unplugged", "old-pump-off"]`, "hall") + step("b", `ends = ["unplugged", "old-pump-off"]`, "hall"),
			Window{From: 0, To: 0}, "not power-off not old-pump-off"},
		{"a state of the step alone is not found by it",
			pump + head + hands("a", `during = ["key-on"]`, "hall"),
			Window{From: 0, To: 0}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, shots, _ := arrange(t, c.plan)
			i := slices.IndexFunc(shots, func(s Shot) bool { return strings.HasSuffix(s.ID, "-pump-before") })
			if got := readStory(p).windowsOf(shots)[i]; got != c.window {
				t.Errorf("%+v, not %+v", got, c.window)
			}
			states := strings.Join(shots[i].States(p), " ")
			for _, s := range shots[i].Without {
				states = strings.TrimSpace(states + " not " + s)
			}
			if states != c.states {
				t.Errorf("%q, not %q", states, c.states)
			}
		})
	}
}

// Coming from the yard the yard's wide is nearer, but it shows the pump being
// taken.
func TestAsItSitsComesFirst(t *testing.T) {
	_, shots, d := arrange(t, pump+head+twoPlaces+step("a", "", "yard")+hands("b", "", "hall", "yard")+step("c", "", "hall"))
	got := strings.Join(sequence(shots, &d), " ")
	before, wide := strings.Index(got, "b-pump-before"), strings.Index(got, "b-wide-yard")
	if before < 0 || wide < 0 || before > wide {
		t.Error(got)
	}
	if !d.Optimal {
		t.Errorf("not proved: %v of %v", d.Bound, d.Change)
	}
}

func TestAsItSitsInSamples(t *testing.T) {
	seen := 0
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		_, shots, d := arrange(t, string(text))
		acted := map[int]bool{}
		for _, s := range d.Sessions {
			for _, e := range s.Entries {
				if e.Kind != Filming {
					continue
				}
				switch shot := &shots[e.Shot]; shot.Bound {
				case ByStep:
					acted[shot.Step] = true
				case Before:
					seen++
					if acted[shot.Step] {
						t.Errorf("%s: %s comes too late", name, shot.ID)
					}
				}
			}
		}
	}
	if seen == 0 {
		t.Error("no sample has such a shot")
	}
}

// A step's cautions stand once where its shots follow each other, and again
// where another step's shot comes between.
func TestCautionsOfAsItSits(t *testing.T) {
	hot := "[[caution]]\nid = \"hot\"\nhazard = \"hot-surface\"\nsay = \"It burns. Wait.\"\ncard = \"Hot\"\n"
	p, shots, d := arrange(t, pump+hot+head+hands("a", "cautions = [\"hot\"]\nstarts = [\"pump-out\"]", "hall")+step("b", "ends = [\"pump-out\"]", "hall"))
	count := func(d *Day) int {
		n := 0
		for _, l := range d.Lines(0, p, shots) {
			if l.Kind == Care {
				n++
			}
		}
		return n
	}
	if n := count(&d); n != 1 {
		t.Errorf("given %d times", n)
	}
	e := d.Sessions[0].Entries
	between := slices.IndexFunc(e, func(e Entry) bool { return shots[e.Shot].Step == 1 })
	d.Sessions[0].Entries = slices.Insert(slices.Clone(e), 1, e[between])
	if n := count(&d); n != 2 {
		t.Errorf("given %d times with another step between", n)
	}
	d.Sessions[0].Entries = append(slices.Clone(e), e[1])
	if n := count(&d); n != 1 {
		t.Errorf("given %d times with its action taken up again", n)
	}
}
