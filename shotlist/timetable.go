package shotlist

import "slices"

// takeOver is what each take needs beside its own length: to call it, look at
// it and set back (common practice, no source).
const takeOver = 30

// recording is the length of a shot's takes in seconds.
func recording(s *Shot) int { return int(s.Seconds*float64(s.Takes) + 0.5) }

// filming is how long a shot keeps everybody, in seconds, without the work.
func filming(s *Shot) int { return recording(s) + takeOver*s.Takes }

// timetable lays a sequence over the clock.
//
// Before a shot stands its change-over; then its takes; then what is left of
// its step's hands-on work, which the first shot of each step brings along.
// Change-overs and work are interrupted by a break, takes are not: they begin
// after it. A shot whose helper has not come waits; one that would end after
// the day's end begins the next day, unless it is the day's first.
type timetable struct {
	board  *board
	day    hours
	breaks []span
	work   []int // seconds of hands-on work per step
	bare   []int // steps that change the object and have no shot of the day, in story order
	turns  []Turn
	hours  map[string]span // of the helpers that have some

	// of one laying
	sessions []Session
	now      int
	rest     int            // index of the next break
	idle     int            // seconds waited, and that helpers stay beyond their hours
	off      int            // seconds of breaks, in which the camera is off
	late     map[string]int // of today, per helper: seconds beyond
	card     float64        // minutes on the card in the camera
	empty    bool           // a later day's first shot goes on a card of its own
	battery  int
	cards    int
}

type span struct{ from, to int }

func newTimetable(b *board) *timetable {
	shoot := &b.plan.Shoot
	t := &timetable{board: b, day: hoursOf(shoot), work: make([]int, len(b.plan.Steps)), hours: map[string]span{}}
	for _, s := range b.call.Timeline.Steps {
		if s.Index < len(t.work) {
			t.work[s.Index] = int(s.HandsOn.Mean() + 0.5)
		}
	}
	for _, pause := range shoot.Breaks {
		from := pause.At.Minutes * 60
		if to := from + int(pause.Length.Seconds()+0.5); to > from && to > t.day.start && from < t.day.end {
			t.breaks = append(t.breaks, span{from, to})
		}
	}
	slices.SortFunc(t.breaks, func(x, y span) int { return x.from - y.from })
	for i := range shoot.People {
		if p := &shoot.People[i]; p.From.Set || p.Until.Set {
			from, to := Presence(shoot, p)
			t.hours[p.ID] = span{from, to}
		}
	}
	t.bareSteps()
	t.turns = b.story.lastChances(b.shots, b.windows)
	return t
}

// bareSteps finds the steps whose work is done on the day though nothing of
// them is filmed.
func (t *timetable) bareSteps() {
	b := t.board
	filmed := map[int]bool{}
	for _, c := range b.cards {
		if b.shots[c.shot].Bound == ByStep {
			filmed[b.shots[c.shot].Step] = true
		}
	}
	for i := range b.plan.Steps {
		if !filmed[i] && !b.done[i] && onObject(b.plan, b.plan.Steps[i].Variants) && b.story.changes(i) && momentOf(i) >= b.now && t.work[i] > 0 {
			t.bare = append(t.bare, i)
		}
	}
}

// lay gives the sessions of a sequence of cards, and notes the idle time.
func (t *timetable) lay(sequence []int) []Session {
	t.sessions, t.idle, t.off, t.cards, t.card = nil, 0, 0, 1, 0
	if len(sequence) == 0 {
		return nil
	}
	t.open()
	b := t.board
	w := walk{bare: t.bare, turns: t.turns, again: b.reenter, stop: -1, begun: map[int]bool{}, called: map[string]bool{}}
	for k, i := range sequence {
		c := &b.cards[i]
		turns := w.pass(t, c)
		e := Entry{Kind: Filming, Shot: c.shot, Step: b.shots[c.shot].Step, Setup: c.setup, Assumed: b.shots[c.shot].Setup == "", Turns: turns}
		from := rig{}
		if k > 0 {
			from = b.rigs[b.cards[sequence[k-1]].rig]
			e.Changes = b.rates.costs(from, b.rigs[c.rig])
		} else {
			e.Changes = b.rates.calls(from, b.rigs[c.rig])
		}
		e.Changes = w.firstCalls(e.Changes)
		back := w.returns(b, c)
		e.Changes = append(e.Changes, back...)
		if s := &b.shots[c.shot]; s.Bound == ByStep && !c.again && !w.begun[s.Step] && !b.done[s.Step] {
			w.begun[s.Step] = true
			e.Work = max(0, t.work[s.Step]-total(back)) // the step is what brings it back
		}
		t.place(e, filming(&b.shots[c.shot]))
	}
	return t.sessions
}

// open begins the next day.
func (t *timetable) open() {
	t.now, t.rest, t.battery, t.late = t.day.start, 0, 0, map[string]int{}
	t.empty = len(t.sessions) > 0
	t.sessions = append(t.sessions, Session{Start: t.day.start, Wrap: t.day.start})
}

// place puts an entry at the end, of the next day if this one is too short:
// change-over, wait, takes, the rest of its work.
func (t *timetable) place(e Entry, takes int) {
	fresh := len(t.today().Entries) == 0
	before, rest, idle, off := t.now, t.rest, t.idle, t.off
	kept := len(t.today().Entries)
	t.flow(e.ChangeSeconds())
	t.await(&e, takes)
	e.Start = t.now
	t.now += takes
	resting := len(t.today().Entries)
	t.flow(max(0, e.Work-takes))
	e.End = t.now
	for _, r := range t.today().Entries[resting:] {
		e.Rests = append(e.Rests, [2]int{r.Start, r.End})
	}
	if e.End > t.day.end && !fresh {
		t.now, t.rest, t.idle, t.off = before, rest, idle, off
		t.today().Entries = t.today().Entries[:kept]
		t.open()
		t.place(e, takes)
		return
	}
	t.supply(&e, t.now-before-(t.off-off))
	t.overstay(&e)
	today := t.today()
	today.Entries = slices.Insert(today.Entries, resting, e) // before the breaks that interrupt it
	today.Wrap = e.End
	today.Over = max(0, e.End-t.day.end)
}

// overstay notes helpers who are still needed when their hours are over.
func (t *timetable) overstay(e *Entry) {
	for _, who := range t.helpers(e) {
		h, set := t.hours[who]
		if beyond := e.End - h.to; set && beyond > 0 {
			e.Late = max(e.Late, beyond)
			t.idle += max(0, beyond-t.late[who])
			t.late[who] = max(t.late[who], beyond)
		}
	}
}

// helpers are those whom an entry's shot needs.
func (t *timetable) helpers(e *Entry) []string {
	if e.Shot < 0 {
		return nil
	}
	return Helpers(t.board.plan, &t.board.shots[e.Shot])
}

func (t *timetable) today() *Session { return &t.sessions[len(t.sessions)-1] }

// flow lets time pass that a break may interrupt.
func (t *timetable) flow(seconds int) {
	for t.rest < len(t.breaks) && t.now+seconds > t.breaks[t.rest].from {
		pause := t.breaks[t.rest]
		seconds -= max(0, pause.from-t.now)
		t.pause(pause)
	}
	t.now += seconds
}

// pause takes a break.
func (t *timetable) pause(b span) {
	t.rest++
	if b.to <= t.now {
		return
	}
	from := max(t.now, b.from)
	today := t.today()
	today.Entries = append(today.Entries, Entry{Kind: Rest, Start: from, End: b.to, Shot: -1, Step: -1})
	t.off += b.to - from
	t.now = b.to
}

// await lets the takes begin when their helpers are there and no break falls
// into them.
func (t *timetable) await(e *Entry, takes int) {
	for e.Shot >= 0 {
		from, who := t.now, ""
		for _, helper := range t.helpers(e) {
			if h, set := t.hours[helper]; set && h.from > from {
				from, who = h.from, helper
			}
		}
		if who != "" {
			t.idle += from - t.now
			today := t.today()
			today.Entries = append(today.Entries, Entry{Kind: Wait, Start: t.now, End: from, Shot: -1, Step: -1, Who: who})
			t.now = from
		}
		if t.rest == len(t.breaks) || t.now+takes <= t.breaks[t.rest].from {
			return
		}
		t.pause(t.breaks[t.rest])
	}
}

// supply counts memory card and battery; on is how many seconds the camera has
// been on for the entry.
func (t *timetable) supply(e *Entry, on int) {
	shoot := &t.board.plan.Shoot
	if e.Shot >= 0 && shoot.CardMinutes > 0 {
		minutes := float64(recording(&t.board.shots[e.Shot])) / 60
		if t.empty || t.card > 0 && t.card+minutes > shoot.CardMinutes {
			t.cards++
			e.Card, t.card, t.empty = t.cards, 0, false
		}
		t.card += minutes
	}
	if full := int(shoot.Battery.Seconds()); full > 0 {
		if t.battery > 0 && t.battery+on > full {
			e.Battery, t.battery = true, 0
		}
		t.battery += on
	}
}
