package shotlist

import (
	"context"
	"slices"
	"strings"

	"fixslate/plan"
	"fixslate/shotlist/order"
)

// Arrange puts the shots of a plan into the order of the day.
//
// Problem: the sequence with the least change-over time in which every shot
// falls into its Window (see there). Some shots with equal windows keep the
// order of the story as well: those of steps that handle the same part or
// fastener, a test and the detours it leads into, and in a step that changes
// the object the suggested shots, and the plan's own, each among themselves.
// That is the Sequential Ordering Problem.
//
// Method: shots with one window and one rig are one node (see merge); the nodes
// go to order.Solve, whose costs are whole multiples of the greatest common
// divisor of the plan's rates. Of orders as good as each other the one nearest
// to the story is wanted: the story's own where it is as cheap, else the
// solver's after exchanges of neighbouring stretches that cost nothing. Where
// a helper has hours, further exchanges trade change-overs against waiting.
// Then the clock is laid over the sequence.
//
// Cost: the square of the number of nodes, and the solver's default rounds.
//
// Gives up: over mostNodes nodes, which no shoot has, the story's order is kept.
// Short of a proof Bound stays below Change. Waiting is not known to the solver
// and no part of the bound.
func Arrange(ctx context.Context, c Call) Day {
	b := newBoard(c)
	d := Day{Got: b.got, Out: b.out, Barred: b.barred, Troubles: Hours(c.Plan), Loose: b.loose()}
	clock := newTimetable(b)
	story := b.inStoryOrder()
	sequence, bound := story, 0
	if len(b.cards) > 0 {
		sequence, bound = clock.search(ctx, story)
	}
	d.Sessions = clock.lay(sequence)
	minutes := func(seconds int) float64 { return float64(seconds) / 60 }
	change := b.length(sequence) + b.returns(sequence)
	bound += b.returns(sequence)
	d.Change, d.StoryChange = minutes(change), minutes(b.length(story)+b.returns(story))
	d.Idle, d.Bound = minutes(clock.idle), minutes(bound)
	d.Optimal = change == bound
	d.count(b)
	return d
}

// mostNodes bounds what is put in order: the solver's memory grows with the
// square of it (4,000 nodes: about 300 MB).
const mostNodes = 4000

// count fills in what follows from the sessions.
func (d *Day) count(b *board) {
	setups := map[string]bool{}
	recorded := 0
	cards := 0
	for i := range d.Sessions {
		for _, e := range d.Sessions[i].Entries {
			if e.Kind != Filming {
				continue
			}
			setups[e.Setup] = true
			recorded += recording(&b.shots[e.Shot])
			cards = max(cards, e.Card)
			if e.Battery {
				d.Fresh++
			}
		}
	}
	delete(setups, "")
	d.Setups, d.Recorded = len(setups), float64(recorded)/60
	if b.plan.Shoot.CardMinutes > 0 && recorded > 0 {
		d.Cards = max(1, cards)
	}
}

// loose holds where several steps do something to the object and the plan names
// no state of it.
func (b *board) loose() bool {
	steps := map[int]bool{}
	for _, c := range b.cards {
		if s := &b.shots[c.shot]; s.Bound == ByStep && b.plan.Steps[s.Step].HandsOn() {
			steps[s.Step] = true
		}
	}
	return len(b.story.runs) == 0 && len(steps) > 1
}

// card is a shot of the day on the board: what the sequence is made of.
type card struct {
	shot   int // index in the shots
	window Window
	setup  string
	rig    int  // index in the board's rigs
	keeps  int  // the step whose order it keeps beyond its window; -1: none
	turn   turn // its place among the shots of a step that changes the object
	side   side // of its step's action, where that matters beyond its window
	again  bool // the object has left its state and must be brought back
}

// board holds the shots of a day before they are in order.
type board struct {
	plan    *plan.Plan
	shots   []Shot
	call    Call
	story   *story
	windows []Window
	rates   rates
	rigs    []rig
	cost    [][]int // seconds from rig to rig; nil for more than mostNodes
	calls   int     // seconds of the first coming of each helper
	cards   []card  // in story order
	after   map[[2]int]bool
	now     int // the moment the object has reached; 0 before the shoot
	done    map[int]bool
	reenter []int // moments in which a state begins again, ascending
	got     []int
	out     []int
	barred  []Barred
}

func newBoard(c Call) *board {
	b := &board{
		plan: c.Plan, shots: c.Shots, call: c, story: readStory(c.Plan),
		rates: ratesOf(&c.Plan.Shoot.Change), after: map[[2]int]bool{}, done: map[int]bool{},
	}
	b.windows = b.story.windowsOf(b.shots)
	b.barred = b.story.impossible(b.shots, b.windows)
	made := map[string]bool{}
	for _, id := range c.Got {
		made[id] = true
	}
	for i := range b.shots {
		if made[b.shots[i].ID] {
			b.got = append(b.got, i)
			b.reach(i)
		}
	}
	setups := settle(b.plan, b.shots)
	rigs := map[rig]int{}
	barred := map[int]bool{}
	for _, x := range b.barred {
		barred[x.Shot] = true
	}
	for i := range b.shots {
		shot := &b.shots[i]
		switch {
		case made[shot.ID] || barred[i]:
			continue
		case !shot.onTheDay():
			b.out = append(b.out, i)
			continue
		}
		r := rigOf(b.plan, shot, setups[i])
		at, known := rigs[r]
		if !known {
			at = len(b.rigs)
			rigs[r] = at
			b.rigs = append(b.rigs, r)
		}
		b.cards = append(b.cards, card{shot: i, window: b.windows[i], setup: setups[i], rig: at, keeps: -1})
	}
	b.price()
	b.goOn()
	b.keepOrder()
	b.keepTurns()
	b.keepSides()
	b.findReturns()
	return b
}

// reach notes what a shot that is made says of the object: it has come as far
// as the shot's window, and a step with a shot of its own made is done.
func (b *board) reach(i int) {
	if w := b.windows[i]; b.shots[i].onTheDay() && !w.Floats && !w.Never {
		b.now = max(b.now, w.From)
		if b.shots[i].Bound == ByStep {
			b.done[b.shots[i].Step] = true
		}
	}
}

// price fills the costs from rig to rig.
func (b *board) price() {
	helpers := map[string]bool{}
	for _, r := range b.rigs {
		for who := range strings.FieldsSeq(r.helpers) {
			helpers[who] = true
		}
	}
	b.calls = len(helpers) * b.rates[ToHelper]
	if len(b.rigs) > mostNodes {
		return
	}
	b.cost = make([][]int, len(b.rigs))
	for i := range b.cost {
		b.cost[i] = make([]int, len(b.rigs))
		for j := range b.cost[i] {
			b.cost[i][j] = total(b.rates.costs(b.rigs[i], b.rigs[j]))
		}
	}
}

// between is the cost of changing from one rig to another, in seconds.
func (b *board) between(from, to int) int {
	if b.cost == nil {
		return total(b.rates.costs(b.rigs[from], b.rigs[to]))
	}
	return b.cost[from][to]
}

// goOn takes account of shots that are made. What can still be had opens no
// earlier than now. What the object has left comes after all of that, in the
// order of the story: it is brought back as few times as will do, each time to
// the last moment at which the first shot still missing can be made.
func (b *board) goOn() {
	if b.now == 0 {
		return
	}
	var left []*card
	for i := range b.cards {
		c := &b.cards[i]
		switch {
		case c.window.Floats:
			c.window = Window{From: b.now, To: 2*b.story.last + 1, Floats: true}
		case c.window.To < b.now:
			left = append(left, c)
		default:
			c.window.From = max(c.window.From, b.now)
		}
	}
	slices.SortStableFunc(left, func(x, y *card) int { return x.window.To - y.window.To })
	stop := -1
	for _, c := range left {
		if c.window.From > stop {
			stop = c.window.To
		}
		at := b.story.last + 1 + stop
		c.window, c.again = Window{From: at, To: at}, true
	}
}

// inStoryOrder are the cards as the story has them, put right where they can't
// be filmed so: the first in the story of those that may come next. A card may
// come next if none that is left closes before it opens.
func (b *board) inStoryOrder() []int {
	n := len(b.cards)
	opens, closes := make([]int, n), make([]int, n)
	for i := range n {
		opens[i], closes[i] = i, i
	}
	slices.SortStableFunc(opens, func(x, y int) int { return b.cards[x].window.From - b.cards[y].window.From })
	slices.SortStableFunc(closes, func(x, y int) int { return b.cards[x].window.To - b.cards[y].window.To })
	var ready []int // ascending
	sequence, done := make([]int, 0, n), make([]bool, n)
	for len(sequence) < n {
		for done[closes[0]] {
			closes = closes[1:]
		}
		for len(opens) > 0 && b.cards[opens[0]].window.From <= b.cards[closes[0]].window.To {
			at, _ := slices.BinarySearch(ready, opens[0])
			ready, opens = slices.Insert(ready, at, opens[0]), opens[1:]
		}
		next := ready[0]
		ready, sequence, done[next] = ready[1:], append(sequence, next), true
	}
	return sequence
}

// length is the change-over time of a sequence in seconds. The first coming of
// each helper is no change-over; each further one is.
func (b *board) length(sequence []int) int {
	sum := 0
	for k, i := range sequence {
		if k > 0 {
			sum += b.between(b.cards[sequence[k-1]].rig, b.cards[i].rig)
		} else {
			sum += total(b.rates.calls(rig{}, b.rigs[b.cards[i].rig]))
		}
	}
	return sum - b.calls
}

// search asks the solver, and puts its answer nearer to the story.
func (t *timetable) search(ctx context.Context, story []int) (sequence []int, bound int) {
	b := t.board
	nodes := b.merge()
	if len(nodes) > mostNodes {
		return story, 0
	}
	problem, unit := b.problem(nodes)
	result, err := order.Solve(ctx, problem, order.Budget{})
	if err != nil {
		return story, 0 // no defect of the plan's can get here: the story's order is left, unproved
	}
	found := make([]int, 0, len(nodes))
	for _, n := range result.Sequence {
		if n > 0 {
			found = append(found, n-1)
		}
	}
	bound = max(0, result.Bound*unit-b.calls)
	tidy := &tidying{board: b, nodes: nodes, sequence: found}
	tidy.towardsStory()
	sequence = tidy.cards()
	if b.length(story) <= b.length(sequence) {
		sequence = story
	}
	return t.heedHours(tidy, sequence, story), bound
}
