package claim

import (
	"fixslate/plan/prose"
)

// countOf finds the noun of "tooth count is thirty-two", also of a second
// number of the same clause.
func (r *reader) countOf(i int) (string, bool) {
	const reach = 12
	noun := ""
	for j := i - 1; j > 0 && j >= i-reach; j-- {
		if r.is(j, "count") && !r.words[j].stopped && !r.is(j+1, "to") && !r.is(j+1, "the") && !r.in(j-1, r.known.glue|r.known.lead|r.known.modal|r.known.person|r.known.particle) {
			noun = singular(r.words[j-1].text)
			break
		}
	}
	return noun, noun != "" && noun != "the"
}

// has says whether the number at i is what a thing has, takes or needs.
func (r *reader) has(i int) bool {
	k := &r.known.classes
	j := i - 1
	if r.in(j, k.about) || r.is(j, "exactly") || r.is(j, "only") || r.is(j, "got") {
		j--
	}
	if j < 1 || r.words[j+1].stopped {
		return false
	}
	switch r.words[j].text {
	case "has", "have", "takes", "holds", "carries", "needs", "contains", "uses", "with", "wants", "runs", "counts":
	case "be":
		return r.is(j-1, "should") && r.is(j-2, "there")
	case "on":
		switch r.words[j-1].text {
		case "runs", "sits", "rides", "stands", "hangs", "rests", "carried", "mounted":
		default:
			return false
		}
	case "by":
		switch r.words[j-1].text {
		case "held", "carried", "driven", "supported", "fed", "secured", "located":
		default:
			return false
		}
	case "at":
		if !r.is(j-1, "rated") {
			return false
		}
	case "for":
		if !r.is(j-1, "good") && !r.is(j-1, "rated") && !r.is(j-1, "tested") {
			return false
		}
	case "of", "from":
		switch r.words[j-1].text {
		case "made", "built", "consists", "assembled", "up":
		default:
			return false
		}
	default:
		return false
	}
	return !r.in(j-1, k.self) && !r.is(j-1, "you")
}

// coordinated says whether "and" joins a count to one that was taken for what a
// thing has: "four springs and two dampers".
func (r *reader) coordinated(f *prose.Figure) bool {
	const longest = 4
	if len(r.values) == 0 {
		return false
	}
	last := r.values[len(r.values)-1]
	from, to := r.wordAt(last.End), r.wordAt(f.Start)
	if to-from > longest || to-from < 2 || last.Unit == "" || !isPlural(r.words[to-2].text) && !isPlural(r.words[to-1].text) {
		return false
	}
	if r.known.of(last.Unit) == 0 && singular(r.words[from].text) != last.Unit {
		return false
	}
	return r.is(to-1, "and") || r.is(to-1, "plus")
}

// left holds behind a count of what remains: "two links to go".
func (r *reader) left(n int) bool {
	for j := n; j < len(r.words) && j < n+3; j++ {
		if r.is(j, "left") || r.is(j, "to") && (r.is(j+1, "go") || r.is(j+1, "do")) {
			return true
		}
	}
	return false
}
