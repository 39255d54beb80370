package claim

import (
	"strings"

	"fixslate/plan/prose"
	"fixslate/plan/trade"
)

// time reads a length of time: how long a job, a wait or a part lasts. The
// clock of the conversation ("back in five minutes", "a minute ago") is none.
func (r *reader) time(f *prose.Figure, at int) {
	n := r.wordAt(f.End)
	if (r.is(n, "ago") || r.is(n, "earlier")) && (f.Values[0].Unit != "year" && f.Values[0].Unit != "month" || (r.said(at, r.known.self) || r.in(n+1, r.known.self))) || r.is(n, "later") && r.is(n-1, "seconds") || r.is(n, "in") && r.is(n+1, "the") && r.is(n+2, "video") {
		return
	}
	if at == 0 && n < len(r.words) && r.words[n].stopped && (r.is(n, "i") || r.is(n, "we")) && (r.is(n+1, "need") || r.is(n+1, "have") || r.is(n+1, "will") || r.is(n+1, "just") || r.is(n+1, "am")) {
		return // "two minutes, I'll find the light"
	}
	if r.waits(at, n) {
		r.take(f) // a number to compare with the plan's, and no claim
		return
	}
	if r.chats(at) || r.meanwhile(n) || r.ordinals(at, n) || r.is(n, "mark") || r.is(n, "later") && (r.said(at, r.known.self) || r.words[min(at, len(r.words)-1)].mood == own) || r.career(at) {
		return
	}
	if r.is(at-1, "every") || r.is(at-1, "per") {
		r.add(Frequency)
	}
	r.take(f)
	r.add(Duration)
	k := &r.known.classes
	if at < len(r.words) && r.words[at].mood == order {
		r.add(Spec)
	}
	if r.near(at, 4, k.self) || r.is(at-1, "gained") || r.is(at-1, "lost") || r.is(at-1, "losing") || r.is(at-1, "gaining") || r.is(at-1, "me") || r.is(at-2, "me") {
		r.add(Measurement)
	}
}

// chats says whether the speaker only says how long he himself will be: "back in
// five minutes", "we'll take a minute to tidy up".
func (r *reader) chats(at int) bool {
	const reach = 7
	k := &r.known.classes
	if r.words[min(at, len(r.words)-1)].mood == order && r.is(at-1, "me") {
		return true // "give me two minutes"
	}
	ahead, mine, idle := false, false, false
	r.clauseBefore(at, reach, func(j int) bool {
		w := r.words[j].text
		ahead = ahead || w == "will" || w == "going" || w == "let"
		mine = mine || r.in(j, k.self) || w == "us"
		idle = idle || w == "back" || w == "take" || w == "be" || w == "see" || w == "spend" || w == "have" || w == "need"
		return true
	})
	return ahead && mine && idle || mine && r.is(at-1, "for") && (r.is(at-2, "this") || r.is(at-2, "it")) && r.is(at-3, "at") || r.is(at-2, "back") && r.is(at-1, "in")
}

// meanwhile says whether the speaker fills the time: "give it a couple of
// minutes while I find my glasses".
func (r *reader) meanwhile(n int) bool {
	return r.is(n, "while") && (r.in(n+1, r.known.self) || r.is(n+1, "you"))
}

// ordinals says whether "one second" is two of a row: "first one second one".
func (r *reader) ordinals(at, n int) bool {
	return r.is(n-1, "second") && (r.is(at-1, "first") || r.is(n, "one") || r.in(n, r.known.det))
}

// vague holds for "a turn or two" in an order: some, no number.
func (r *reader) vague(f *prose.Figure, at int) bool {
	at = min(at, len(r.words)-1)
	if r.nudged(f, at) {
		return true
	}
	return f.Kind == prose.Range && !isTime(f.Values[0].Unit) && r.words[at].mood == order && (r.is(at, "a") || r.is(at, "an")) && strings.HasSuffix(f.Of(r.text), " or two")
}

// nudged says whether something is only to be moved by an inch or so: "lift it up an
// inch so I can see".
func (r *reader) nudged(f *prose.Figure, at int) bool {
	const reach = 4
	if f.Kind != prose.Quantity || f.Values[0].Number != 1 || f.Values[0].Unit.Dimension() != trade.Length || !r.is(at, "a") && !r.is(at, "an") || r.words[at].mood != order {
		return false
	}
	for j := max(0, at-reach); j < at; j++ {
		switch r.words[j].text {
		case "lift", "raise", "move", "slide", "shift", "nudge", "budge", "scoot", "back", "bring":
			return true
		}
	}
	return false
}

// waits says whether "wait five minutes" is all that is said: a pause of the work,
// not how long something takes.
func (r *reader) waits(at, n int) bool {
	if n < len(r.words) && !r.words[n].stopped {
		return false
	}
	j := at - 1
	if r.is(j, "for") || r.is(j, "about") || r.is(j, "just") || r.is(j, "another") {
		j--
	}
	return (r.is(j, "wait") || r.is(j, "pause")) && r.words[j].mood == order
}

// career says whether the speaker tells how long he has done the work: "I've been
// doing this thirty years".
func (r *reader) career(at int) bool {
	j := at - 1
	if r.is(j, "for") || r.in(j, r.known.about) {
		j--
	}
	switch r.words[max(j, 0)].text {
	case "this", "it", "these":
		return (r.is(j-1, "doing") || r.is(j-1, "at") || r.is(j-1, "fixing") || r.is(j-1, "mending")) && r.words[min(at, len(r.words)-1)].mood == own
	}
	return false
}
