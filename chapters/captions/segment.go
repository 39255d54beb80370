package captions

import (
	"slices"
	"strings"
	"time"
)

// Segment cuts speech into cues and lines.
//
// Problem: every word must be shown, in lines and cues that the profile allows,
// parted at good places, near the time it is spoken and long enough to be
// read. Method: dynamic programming over the words gives the cheapest cut
// under cost.go (optimal line breaking: Knuth and Plass, "Breaking Paragraphs
// into Lines", 1981, with cues in place of paragraphs); schedule then shifts
// the cues that are too short for their words. Time and memory grow with the
// number of words; for each word the work is bounded by what fits one cue.
//
// Width and number of lines always hold. Reading speed and durations hold
// wherever speech and pauses leave room within the profile's Shift; Check
// finds the rest. A word wider than a line is cut between grapheme clusters
// and its cues say so. Units are taken by their start; those that overlap
// follow each other. Markup in Text is text. A profile without width or lines
// gives no cues.
func Segment(units []Unit, p Profile) []Cue {
	if p.Width < 1 || p.Lines < 1 {
		return nil
	}
	w := wordsOf(sorted(units), p)
	if len(w.list) == 0 {
		return nil
	}
	c := newCosts(w, p)
	ends, _ := c.cut()
	cues := make([]Cue, len(ends))
	slots := make([]slot, len(ends))
	var l layout
	i := 0
	for n, j := range ends {
		text, cut := c.text(&l, i, j)
		unit := w.units[w.list[i].unit]
		cues[n] = Cue{Text: text, Speaker: unit.Speaker, Cut: cut, At: unit.At}
		characters := Characters(text)
		slots[n] = slot{
			start: w.list[i].start, end: w.list[j-1].end,
			need: p.reading(characters), wish: p.comfort(p.reading(characters), j-i),
		}
		i = j
	}
	schedule(slots, p)
	for n, s := range slots {
		cues[n].Start = time.Duration(s.start) * time.Millisecond
		cues[n].End = time.Duration(s.end) * time.Millisecond
	}
	return cues
}

// cut finds the cheapest way to part the words into cues: the word after each
// cue's last one, and the total cost.
func (c *costs) cut() (ends []int, total int64) {
	n := len(c.list)
	best := make([]int64, n+1)
	from := make([]int32, n+1)
	for j := 1; j <= n; j++ {
		best[j] = unpayable
	}
	var l layout
	for i := 0; i < n; i++ {
		if best[i] >= unpayable {
			continue
		}
		l.fill(c, i, n)
		for j := i + 1; j < i+l.width; j++ {
			if best[i]+costCue-c.gain >= best[j] || !c.mayEnd(j) {
				continue // it is dearer than what is found, whatever it costs
			}
			if sum := best[i] + c.cue(i, j); sum-c.gain < best[j] {
				if _, cost := c.set(&l, i, j); sum+cost < best[j] {
					best[j], from[j] = sum+cost, int32(i)
				}
			}
		}
	}
	for j := n; j > 0; j = int(from[j]) {
		ends = append(ends, j)
	}
	slices.Reverse(ends)
	return ends, best[n]
}

// set is the number of lines in which the words i to j stand best, and what the
// lines cost.
func (c *costs) set(l *layout, i, j int) (lines int, least int64) {
	least = unpayable
	for n := 1; n <= c.profile.Lines; n++ {
		cost := l.cost[n-1][j-i]
		if cost >= unpayable {
			continue
		}
		if cost += c.lines(i, j, n); cost < least {
			lines, least = n, cost
		}
	}
	return lines, least
}

// layout is the cheapest way to set the words from i on in lines: for every
// number of lines and every end, the cost of lines and partings.
type layout struct {
	width int       // entries in a row: one more than the words that fit a cue
	cost  [][]int64 // by lines-1, then end-i
	back  [][]int32 // where the last line begins, less i
}

func (l *layout) row(lines int) []int64 { return l.cost[lines-1][:l.width] }

// fill sets the words from i on, none at or after stop.
func (l *layout) fill(c *costs, i, stop int) {
	l.size(c, i, stop)
	for lines := 1; lines <= c.profile.Lines; lines++ {
		row := l.row(lines)
		for e := range row {
			row[e] = unpayable
		}
		if lines == 1 {
			l.extend(c, i, 0, 1, 0)
			continue
		}
		for k, cost := range l.row(lines - 1) {
			if cost < unpayable && i+k < stop && c.mayPart(i+k) {
				l.extend(c, i, k, lines, cost+c.parting(i+k-1))
			}
		}
	}
}

// extend sets a line from word i+k on after others that cost so much, for every
// end it can have.
func (l *layout) extend(c *costs, i, k, lines int, before int64) {
	row, back := l.row(lines)[k+1:], l.back[lines-1][k+1:]
	ends := c.row(i + k)
	for e, cost := range ends[:min(len(ends), len(row))] {
		if sum := before + int64(cost); sum < row[e] {
			row[e], back[e] = sum, int32(k)
		}
	}
}

// size makes room for as many words as can stand in one cue.
func (l *layout) size(c *costs, i, stop int) {
	most := (c.profile.Width + 1) * c.profile.Lines
	j := i
	for j < stop && c.characters(i, j+1) < most {
		j++
	}
	l.width = max(j, i+1) - i + 1
	if len(l.cost) < c.profile.Lines {
		l.cost = make([][]int64, c.profile.Lines)
		l.back = make([][]int32, c.profile.Lines)
	}
	if len(l.cost[0]) < l.width {
		for n := range l.cost {
			l.cost[n] = make([]int64, 2*l.width)
			l.back[n] = make([]int32, 2*l.width)
		}
	}
}

// text sets the words i to j in their lines, and says whether a word is cut.
func (c *costs) text(l *layout, i, j int) (text string, cut bool) {
	l.fill(c, i, j)
	lines, _ := c.set(l, i, j)
	begins := make([]int, 0, 4) // of each line, from the last
	for n, e := lines, j-i; n > 0; n-- {
		e = int(l.back[n-1][e])
		begins = append(begins, i+e)
	}
	var b strings.Builder
	for k := i; k < j; k++ {
		if last := len(begins) - 1; last >= 0 && k == begins[last] {
			begins = begins[:last]
			if k > i {
				b.WriteByte('\n')
			}
		} else {
			b.WriteByte(' ')
		}
		b.WriteString(c.list[k].text)
		cut = cut || c.list[k].cut
	}
	return b.String(), cut
}
