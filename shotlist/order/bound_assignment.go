package order

import "slices"

// potentials are dual prices of an assignment of nodes to followers:
// cost(i,j) - row[i] - col[j] is never negative on an arc, so the sum of all
// prices is a lower bound, and the differences order arcs by promise.
type potentials struct {
	row, col []int
	bound    int
}

// assign solves the assignment relaxation: every node gets one follower, every
// node one node before it, cycles allowed.
//
// Method: shortest augmenting paths on a dense matrix after a column reduction
// and two passes of row reduction (Jonker and Volgenant, A shortest augmenting
// path algorithm for dense and sparse linear assignment problems, Computing 38,
// 1987). Cost: O(n³), a few milliseconds at n = 200. It gives up when stop says
// so or scans entries have been looked at: any column prices make a valid bound
// once the row prices are the smallest reduced cost of each row, so an
// unfinished run only gives a weaker one.
func assign(in *instance, scans int, stop func() bool) potentials {
	m := in.n + 1
	a := &assignment{m: m, cost: in.cost, col: make([]int, m), of: fill(m, -1), to: fill(m, -1)}
	a.reduceColumns()
	free := a.reduceRows(2)
	a.dist, a.from, a.scan = make([]int, m), make([]int, m), make([]int, m)
	for _, i := range free {
		if stop() || a.scans > scans {
			break
		}
		a.augment(i)
	}
	p := potentials{row: make([]int, m), col: a.col}
	for i := range m {
		p.row[i] = blocked
		for j, c := range a.cost[i*m : (i+1)*m] {
			if c != blocked {
				p.row[i] = min(p.row[i], c-a.col[j])
			}
		}
		p.bound += p.row[i] + p.col[i]
	}
	return p
}

func fill(n, v int) []int { return slices.Repeat([]int{v}, n) }

type assignment struct {
	m     int
	cost  []int
	col   []int // column prices
	of    []int // row that has column j, -1 if free
	to    []int // column that row i has, -1 if free
	dist  []int
	from  []int
	scan  []int
	scans int // entries looked at
}

func (a *assignment) reduceColumns() {
	for j := a.m - 1; j >= 0; j-- {
		best := 0
		for i := range a.m {
			if a.cost[i*a.m+j] < a.cost[best*a.m+j] {
				best = i
			}
		}
		a.col[j] = a.cost[best*a.m+j]
		if a.to[best] < 0 {
			a.to[best], a.of[j] = j, best
		}
	}
}

// reduceRows lets rows without a column take their cheapest one and lowers its
// price to the second cheapest; it returns the rows still without.
func (a *assignment) reduceRows(passes int) []int {
	var free []int
	for i, j := range a.to {
		if j < 0 {
			free = append(free, i)
		}
	}
	for range passes {
		work := free
		free = nil
		for k, steps := 0, 0; k < len(work); steps++ {
			i := work[k]
			k++
			row := a.cost[i*a.m : (i+1)*a.m]
			first, second, j1, j2 := blocked, blocked, -1, -1
			for j, c := range row {
				if c == blocked {
					continue
				}
				if c -= a.col[j]; c < second {
					if c < first {
						second, j2, first, j1 = first, j1, c, j
					} else {
						second, j2 = c, j
					}
				}
			}
			if j2 < 0 {
				second = first
			}
			loser := a.of[j1]
			if first < second {
				a.col[j1] -= second - first
			} else if loser >= 0 && j2 >= 0 {
				j1 = j2
				loser = a.of[j1]
			}
			a.to[i], a.of[j1] = j1, i
			if loser >= 0 {
				a.to[loser] = -1
				if first < second && steps < 4*a.m {
					k--
					work[k] = loser
				} else {
					free = append(free, loser)
				}
			}
		}
	}
	return free
}

// augment grows a shortest path tree from row i to the nearest free column and
// shifts the assignment along the path.
func (a *assignment) augment(i int) {
	row := a.cost[i*a.m : (i+1)*a.m]
	for j := range a.m {
		a.scan[j] = j
		a.from[j] = i
		a.dist[j] = blocked
		if row[j] != blocked {
			a.dist[j] = row[j] - a.col[j]
		}
	}
	// scan[:ready] are settled, scan[ready:seen] lie at the current distance.
	ready, seen, last, end, reach := 0, 0, 0, -1, 0
	for end < 0 {
		if ready == seen {
			last = ready
			reach = a.dist[a.scan[seen]]
			for k := seen; k < a.m; k++ {
				j := a.scan[k]
				if d := a.dist[j]; d <= reach {
					if d < reach {
						seen, reach = ready, d
					}
					a.scan[k], a.scan[seen] = a.scan[seen], j
					seen++
				}
			}
			for _, j := range a.scan[ready:seen] {
				if a.of[j] < 0 {
					end = j
					break
				}
			}
			if end >= 0 {
				break
			}
		}
		j := a.scan[ready]
		ready++
		end = a.relax(j, reach, &seen)
	}
	for _, j := range a.scan[:last] {
		a.col[j] += a.dist[j] - reach
	}
	for j := end; ; {
		k := a.from[j]
		a.of[j] = k
		j, a.to[k] = a.to[k], j
		if k == i {
			return
		}
	}
}

// relax shortens distances through the row that has column j; it returns a
// free column found at the current distance, or -1.
func (a *assignment) relax(j, reach int, seen *int) int {
	i := a.of[j]
	row := a.cost[i*a.m : (i+1)*a.m]
	h := row[j] - a.col[j] - reach
	a.scans += a.m - *seen
	for k := *seen; k < a.m; k++ {
		j2 := a.scan[k]
		if row[j2] == blocked {
			continue
		}
		d := row[j2] - a.col[j2] - h
		if d >= a.dist[j2] {
			continue
		}
		a.dist[j2], a.from[j2] = d, i
		if d == reach {
			if a.of[j2] < 0 {
				return j2
			}
			a.scan[k], a.scan[*seen] = a.scan[*seen], j2
			*seen++
		}
	}
	return -1
}
