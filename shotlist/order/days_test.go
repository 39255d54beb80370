package order_test

import (
	"math/rand/v2"
	"testing"

	"fixslate/shotlist/order"
)

// A made day: shots over a few set-ups, each either free or in one stage of
// one of the chains of states. The shape is guessed (common practice, no
// source): moving to another place costs 8 to 20 minutes, another light 4 to
// 9, another lens 1 to 3.
type day struct {
	shots, chains, stages int
	free                  float64
}

func (d day) problem(r *rand.Rand) order.Problem {
	setups := 6 + r.IntN(9)
	type setup struct{ place, light, lens int }
	at := make([]setup, setups)
	for i := range at {
		at[i] = setup{r.IntN(4), r.IntN(3), r.IntN(3)}
	}
	var place, light, lens [4][4]int
	for i := range 4 {
		for j := range i {
			place[i][j] = 8 + r.IntN(13)
			light[i][j] = 4 + r.IntN(6)
			lens[i][j] = 1 + r.IntN(3)
			place[j][i], light[j][i], lens[j][i] = place[i][j], light[i][j], lens[i][j]
		}
	}
	in := make([]setup, d.shots)
	chain, stage := make([]int, d.shots), make([]int, d.shots)
	p := order.Problem{Cost: make([][]int, d.shots)}
	for i := range in {
		in[i] = at[r.IntN(setups)]
		chain[i], stage[i] = r.IntN(d.chains), r.IntN(d.stages)
		if r.Float64() < d.free {
			chain[i] = -1
		}
	}
	for i, a := range in {
		p.Cost[i] = make([]int, d.shots)
		for j, b := range in {
			p.Cost[i][j] = place[a.place][b.place] + light[a.light][b.light] + lens[a.lens][b.lens]
			if chain[i] >= 0 && chain[i] == chain[j] && stage[i] < stage[j] {
				p.Before = append(p.Before, [2]int{i, j})
			}
		}
	}
	return p
}

func seeded(n uint64) *rand.Rand { return rand.New(rand.NewPCG(n, 17)) }

// Made days are settled: up to 100 shots in one chain of states, 60 in two.
func TestDays(t *testing.T) {
	for _, d := range []day{{12, 1, 3, 0.1}, {20, 1, 4, 0.1}, {40, 1, 6, 0.1}, {100, 1, 12, 0.05}, {40, 2, 5, 0.1}, {60, 2, 6, 0.05}} {
		for seed := range uint64(3) {
			p := d.problem(seeded(seed))
			r, err := order.Solve(t.Context(), p, order.Budget{Rounds: 60_000, Seed: seed})
			if err != nil {
				t.Fatal(err)
			}
			check(t, p, r)
			if !r.Optimal {
				t.Errorf("%+v, seed %d: cost %d, bound %d", d, seed, r.Cost, r.Bound)
			}
		}
	}
}

// A day of 2,000 shots has an answer and a bound.
func TestLargeDay(t *testing.T) {
	if testing.Short() {
		t.Skip("2,000 shots take a second or more")
	}
	p := day{2000, 2, 40, 0.05}.problem(seeded(1))
	r, err := order.Solve(t.Context(), p, order.Budget{Rounds: 100})
	if err != nil {
		t.Fatal(err)
	}
	check(t, p, r)
}
