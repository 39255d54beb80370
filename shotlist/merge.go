package shotlist

import (
	"slices"

	"fixslate/shotlist/order"
)

// node is a set of cards that are filmed one after the other.
type node struct {
	cards  []int // in story order
	window Window
	rig    int
	keeps  int
	turn   turn
	side   side
}

// merge puts cards that can stand for each other into one node: equal rig,
// equal window, the same step and turn to keep order with.
//
// Some best sequence keeps them together. Take one that does not, with x and
// later y of one node: nothing between them must come before y, for it would
// have to come before x too. So y may move next to x. That costs nothing there,
// and where y stood the way gets no longer, because going straight is never
// dearer than by way of y. Where the plan's rates break that (see merges),
// every card is a node of its own.
func (b *board) merge() []node {
	type key struct {
		from, to, rig, keeps, alone int
		turn                        turn
		side                        side
	}
	var nodes []node
	at := map[key]int{}
	for i, c := range b.cards {
		k := key{c.window.From, c.window.To, c.rig, c.keeps, 0, c.turn, c.side}
		if !b.rates.merges() {
			k.alone = i
		}
		n, known := at[k]
		if !known {
			n = len(nodes)
			at[k] = n
			nodes = append(nodes, node{window: c.window, rig: c.rig, keeps: c.keeps, turn: c.turn, side: c.side})
		}
		nodes[n].cards = append(nodes[n].cards, i)
	}
	return nodes
}

// problem puts the nodes to the solver: node 0 is the start of the day, from
// which only helpers have to be called; node n+1 is the board's n. Costs count
// in the unit.
func (b *board) problem(nodes []node) (order.Problem, int) {
	unit := b.rates.unit()
	rows := make([][]int, len(b.rigs)) // nodes of one rig share a row
	for r := range rows {
		row := make([]int, len(nodes)+1)
		for j, n := range nodes {
			row[j+1] = b.cost[r][n.rig] / unit
		}
		rows[r] = row
	}
	start := make([]int, len(nodes)+1)
	p := order.Problem{Cost: [][]int{start}}
	for j, n := range nodes {
		start[j+1] = total(b.rates.calls(rig{}, b.rigs[n.rig])) / unit
		p.Cost = append(p.Cost, rows[n.rig])
		p.Before = append(p.Before, [2]int{0, j + 1})
	}
	p.Before = append(p.Before, b.pairs(nodes)...)
	return p, unit
}

// pairs are the pairs of nodes that keep an order, without those that follow
// from others: x before z is left out where some y opens after x closes and
// closes before z opens.
func (b *board) pairs(nodes []node) [][2]int {
	opens := make([]int, len(nodes)) // nodes by when they open
	for i := range opens {
		opens[i] = i
	}
	slices.SortStableFunc(opens, func(x, y int) int { return nodes[x].window.From - nodes[y].window.From })
	var pairs [][2]int
	for x := range nodes {
		first, _ := slices.BinarySearchFunc(opens, nodes[x].window.To+1, func(y, m int) int { return nodes[y].window.From - m })
		closes := -1
		for _, y := range opens[first:] {
			if closes >= 0 && nodes[y].window.From > closes {
				break
			}
			pairs = append(pairs, [2]int{x + 1, y + 1})
			if closes < 0 || nodes[y].window.To < closes {
				closes = nodes[y].window.To
			}
		}
	}
	for x := range nodes {
		for y := range nodes {
			if nodes[x].window.To >= nodes[y].window.From && b.precedes(&nodes[x], &nodes[y]) {
				pairs = append(pairs, [2]int{x + 1, y + 1})
			}
		}
	}
	return pairs
}
