package shotlist

import "slices"

// tidying exchanges neighbouring stretches of a sequence of nodes.
type tidying struct {
	board    *board
	nodes    []node
	sequence []int
}

// longest bounds the stretches that are exchanged, so that a pass stays cheap:
// all of them up to 80 nodes, shorter ones beyond.
func (t *tidying) longest() int {
	n := len(t.sequence)
	switch {
	case n <= 80:
		return n
	case n <= 300:
		return 20
	}
	return 4
}

// exchange is the swap of sequence[from:mid] with sequence[mid:to].
type exchange struct{ from, mid, to int }

// exchanges calls each allowed exchange until one is taken, which starts it
// again, or none is. passes bounds how many are taken.
func (t *tidying) exchanges(passes int, take func(exchange) bool) {
	for range passes {
		if !t.pass(take) {
			return
		}
	}
}

// pass tries each exchange once and applies those that are taken. It holds
// where one was.
func (t *tidying) pass(take func(exchange) bool) bool {
	taken := false
	longest := t.longest()
	n := len(t.sequence)
	for from := 0; from < n; from++ {
		for mid := from + 1; mid < min(n, from+1+longest); mid++ {
			for to := mid + 1; to <= min(n, mid+longest); to++ {
				if !t.allowed(from, mid, t.sequence[to-1]) {
					break // a longer right side holds the same node
				}
				if x := (exchange{from, mid, to}); take(x) {
					t.apply(x)
					taken = true
					break // the stretches are others now, and not checked
				}
			}
		}
	}
	return taken
}

// allowed holds where the node may come before sequence[from:mid].
func (t *tidying) allowed(from, mid, n int) bool {
	return !slices.ContainsFunc(t.sequence[from:mid], func(left int) bool {
		return t.board.precedes(&t.nodes[left], &t.nodes[n])
	})
}

func (t *tidying) apply(x exchange) {
	left := slices.Clone(t.sequence[x.from:x.mid])
	copy(t.sequence[x.from:], t.sequence[x.mid:x.to])
	copy(t.sequence[x.from+x.to-x.mid:], left)
}

// dearer is what an exchange adds to the change-over time, in seconds.
func (t *tidying) dearer(x exchange) int {
	s := t.sequence
	arc := func(a, b int) int { return t.board.between(t.nodes[a].rig, t.nodes[b].rig) }
	into := func(n int) int {
		if x.from == 0 {
			return total(t.board.rates.calls(rig{}, t.board.rigs[t.nodes[n].rig]))
		}
		return arc(s[x.from-1], n)
	}
	more := into(s[x.mid]) + arc(s[x.to-1], s[x.from]) - into(s[x.from]) - arc(s[x.mid-1], s[x.mid])
	if x.to < len(s) {
		more += arc(s[x.mid-1], s[x.to]) - arc(s[x.to-1], s[x.to])
	}
	return more
}

// nearer is how many more pairs of nodes stand in the story's order after an
// exchange. Nodes are numbered in the order of their first shots.
func (t *tidying) nearer(x exchange) int {
	more := 0
	for _, l := range t.sequence[x.from:x.mid] {
		for _, r := range t.sequence[x.mid:x.to] {
			if r < l {
				more++
			} else {
				more--
			}
		}
	}
	return more
}

// towardsStory takes exchanges that cost nothing and bring the sequence nearer
// to the story.
func (t *tidying) towardsStory() {
	t.exchanges(8, func(x exchange) bool {
		more := t.dearer(x)
		return more < 0 || more == 0 && t.better(x)
	})
}

// better holds for an exchange after which more pairs stand in the story's
// order, or as many and an earlier node comes first.
func (t *tidying) better(x exchange) bool {
	more := t.nearer(x)
	return more > 0 || more == 0 && t.sequence[x.mid] < t.sequence[x.from]
}

// cards are the cards in the order of the nodes.
func (t *tidying) cards() []int {
	var cards []int
	for _, n := range t.sequence {
		cards = append(cards, t.nodes[n].cards...)
	}
	return cards
}
