package shotlist

import (
	"cmp"
	"slices"
	"strings"

	"fixslate/plan"
)

// Change is one thing that changes between two shots.
type Change struct {
	Kind    ChangeKind
	To      string // the new place, view, lens or light; the state; the person
	Seconds int
}

// ChangeKind says what changes.
type ChangeKind int

// The kinds of change, named as [shoot] change names them.
const (
	ToPlace ChangeKind = iota
	ToView
	ToLens
	ToLight
	ToState // bringing the object back to a state that it had left
	ToHelper
)

// String is the kind's key in [shoot] change.
func (k ChangeKind) String() string {
	return [...]string{"place", "view", "lens", "light", "state", "helper"}[k]
}

// usualChange are the minutes of each kind where the plan has "?": the
// defaults of the language.
var usualChange = [...]int{12, 4, 3, 5, 10, 5}

// rates are the seconds that a change of each kind takes.
type rates [6]int

// ratesOf reads [shoot] change, to the whole second.
func ratesOf(c *plan.Change) rates {
	var r rates
	for i, d := range []plan.Duration{c.Place, c.View, c.Lens, c.Light, c.State, c.Helper} {
		r[i] = int(d.Seconds() + 0.5)
		if d.Open {
			r[i] = usualChange[i] * 60
		}
	}
	return r
}

// unit is the greatest number of seconds that divides every rate: the costs of
// the ordering problem count in it, so that they are whole, small and exact.
func (r rates) unit() int {
	unit := 0
	for _, n := range r {
		for n != 0 {
			unit, n = n, unit%n
		}
	}
	return max(1, unit)
}

// merges holds where going from one rig to a second by way of a third is never
// cheaper than going straight. Light, lens and people each add up on their own
// and can't break it. A view can: if it costs more than a place, moving away
// and back would give it for less.
func (r rates) merges() bool { return r[ToView] <= r[ToPlace] }

// rig is what stands around the camera for a shot. What is not named asks for
// nothing, so it costs nothing to come to.
type rig struct {
	place, view, lens, light string
	helpers                  string // ids between spaces, sorted
}

// costs are the changes from one rig to the next:
//
//	another place    place; its view comes with it
//	the same place   view, where that differs
//	a lens or light  lens, light, wherever it differs
//	people           helper, for each who was not in the shot before
func (r rates) costs(from, to rig) []Change {
	var changes []Change
	add := func(kind ChangeKind, word string) { changes = append(changes, Change{kind, word, r[kind]}) }
	differs := func(a, b string) bool { return b != "" && !strings.EqualFold(a, b) }
	switch {
	case differs(from.place, to.place):
		add(ToPlace, to.place)
	case differs(from.view, to.view):
		add(ToView, to.view)
	}
	if differs(from.lens, to.lens) {
		add(ToLens, to.lens)
	}
	if differs(from.light, to.light) {
		add(ToLight, to.light)
	}
	return append(changes, r.calls(from, to)...)
}

// calls are the helpers that come into the shot.
func (r rates) calls(from, to rig) []Change {
	var changes []Change
	there := strings.Fields(from.helpers)
	for _, who := range strings.Fields(to.helpers) {
		if !slices.Contains(there, who) {
			changes = append(changes, Change{ToHelper, who, r[ToHelper]})
		}
	}
	return changes
}

func total(changes []Change) int {
	sum := 0
	for _, c := range changes {
		sum += c.Seconds
	}
	return sum
}

// settle gives each shot of the day a set-up. One that names none is made from
// where the story's camera stands: the set-up of the last shot before it that
// has one, and before all of those the plan's first.
func settle(p *plan.Plan, shots []Shot) []string {
	setups := make([]string, len(shots))
	last := ""
	if len(p.Setups) > 0 {
		last = p.Setups[0].ID
	}
	for i := range shots {
		if shots[i].onTheDay() && shots[i].Setup != "" {
			last = shots[i].Setup
		}
		setups[i] = last
	}
	return setups
}

// rigOf is what a shot needs around the camera.
func rigOf(p *plan.Plan, shot *Shot, setup string) rig {
	var r rig
	if rows := p.Setup(setup); len(rows) > 0 {
		s := rows[0]
		r = rig{place: words(s.Place), view: words(s.View), lens: words(s.Lens), light: words(s.Light)}
	}
	r.light = cmp.Or(strings.TrimSpace(shot.Light), r.light)
	r.helpers = strings.Join(Helpers(p, shot), " ")
	return r
}

func words(t plan.Text) string { return strings.TrimSpace(t.Print) }

// Helpers are the people of a shot but for the presenter, who is always there.
func Helpers(p *plan.Plan, shot *Shot) []string {
	var helpers []string
	for _, who := range shot.Who {
		if who != p.Presenter && !slices.Contains(helpers, who) {
			helpers = append(helpers, who)
		}
	}
	slices.Sort(helpers)
	return helpers
}
