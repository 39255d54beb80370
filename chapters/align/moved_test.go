package align

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
)

// Tellings to be read with a row of one to three steps told elsewhere. What going
// back costs was chosen on them, with other noise.
func TestQualityMovedRows(t *testing.T) {
	tune, held := readMakings(t)
	vocab := append(tune.vocab, held.vocab...)
	out, all := tallyHeading(), tally{}
	for size := 1; size <= 3; size++ {
		r := rand.New(rand.NewPCG(21, uint64(size)))
		var sum tally
		for _, c := range readTolds(t, "read") {
			for k, telling := range c.tellings {
				moved, ok := moveRow(telling, size, r)
				if !ok {
					continue
				}
				x := c
				x.tellings = [][]utterance{moved}
				seed := 70000 + uint64(100*k+size)
				edit := x.make(0, seed, anyManner(rand.New(rand.NewPCG(seed, 6))), vocab)
				m := Read(edit.plan, edit.timed, edit.cues)
				sum.add(edit, m)
				all.add(edit, m)
			}
		}
		out += sum.line(fmt.Sprintf("%d moved", size))
	}
	t.Log("\n" + out + all.line("all"))
	all.hold(t, floors{within2: 83.5, within5: 91, skips: 5, missed: 13, turned: 0.78, turnedTrue: 0.94, added: 0.78, addedFound: 0.74, sure: 96})
}

// moveRow tells so many steps of a telling in a row elsewhere, never before the first.
func moveRow(telling []utterance, size int, r *rand.Rand) ([]utterance, bool) {
	var visits [][]utterance // what is said from the beginning of a step to that of the next
	last := -1
	for _, u := range telling {
		if len(visits) == 0 || u.step >= 0 && u.step != last {
			visits = append(visits, nil)
		}
		if u.step >= 0 {
			last = u.step
		}
		visits[len(visits)-1] = append(visits[len(visits)-1], u)
	}
	if len(visits) < size+4 {
		return nil, false
	}
	from := 1 + r.IntN(len(visits)-size)
	row := slices.Clone(visits[from : from+size])
	visits = slices.Delete(visits, from, from+size)
	to := 1 + r.IntN(len(visits)-1)
	if to >= from {
		to++
	}
	return slices.Concat(slices.Insert(visits, to, row...)...), true
}
