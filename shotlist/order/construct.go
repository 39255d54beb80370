package order

// greedy goes to the cheapest node that no longer waits, smallest number first
// among equals. Cost: O(n²).
func (in *instance) greedy() []int32 {
	waits := make([]int, in.n)
	ready := make([]int, 0, in.n)
	for i := range in.n {
		if waits[i] = in.pred[i].count(); waits[i] == 0 {
			ready = append(ready, i)
		}
	}
	seq := make([]int32, 0, in.n)
	for at := in.n; len(ready) > 0; {
		best := 0
		for k, j := range ready {
			if c, b := in.arc(at, j), in.arc(at, ready[best]); c < b || c == b && j < ready[best] {
				best = k
			}
		}
		at = ready[best]
		ready[best] = ready[len(ready)-1]
		ready = ready[:len(ready)-1]
		seq = append(seq, int32(at))
		in.succ[at].each(func(j int) {
			if waits[j]--; waits[j] == 0 {
				ready = append(ready, j)
			}
		})
	}
	return seq
}
