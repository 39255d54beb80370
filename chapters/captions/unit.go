package captions

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode"

	"github.com/rivo/uniseg"

	"fixslate/plan/diag"
)

// Unit is a stretch of words with its place in time: a spoken line, a sound, a
// card.
type Unit struct {
	Kind    UnitKind
	Text    string
	Start   float64   // seconds from the video's start, of the first word
	End     float64   // of the last word's end, pauses after it not counted
	Speaker string    // who speaks; another speaker begins another cue
	At      diag.Span // where the words stand in their file, if they come from one
}

// UnitKind says how a unit's words may share a cue with others.
type UnitKind int

// The kinds of Unit.
const (
	Speech UnitKind = iota // flows on from one unit to the next
	Sound                  // a label on a line of its own
	Card                   // a cue of its own
)

// word is what is never parted: the letters between two spaces, or a piece of
// them that fits a line. Times are milliseconds.
type word struct {
	text       string
	start, end int64
	unit       int32 // index of its unit
	width      int32
	part       int32 // cost of parting a line after the word; never, for no parting
	edge       edge  // what must follow the word
	stop       bool  // a sentence ends with the word
	cut        bool  // the word is a piece, and the rest follows
}

// edge is a break that the text itself asks for.
type edge uint8

const (
	flow    edge = iota
	newLine      // the next word begins a line
	newCue       // the next word begins a cue
)

// words is the text of all units, ready to be cut into cues.
type words struct {
	list  []word
	units []Unit
}

// wordsOf lays the words of units, which are in order of start, out in one
// row. A unit that overlaps the next ends where that starts.
func wordsOf(units []Unit, p Profile) words {
	n := 0
	for i := range units {
		n += strings.Count(units[i].Text, " ") + strings.Count(units[i].Text, "\n") + 1
	}
	w := words{list: make([]word, 0, n), units: units}
	before := -1 // the last unit that had words
	for i, u := range units {
		from := len(w.list)
		start := toMillisecond(u.Start)
		end := max(toMillisecond(u.End), start)
		if i+1 < len(units) {
			end = min(end, toMillisecond(units[i+1].Start))
		}
		w.add(u, start, end, p)
		if len(w.list) == from {
			continue
		}
		for k := from; k < len(w.list); k++ {
			w.list[k].unit = int32(i)
		}
		if before >= 0 {
			last := &w.list[from-1]
			last.edge = max(last.edge, between(units[before], u, start-last.end, p))
		}
		before = i
	}
	w.cost()
	w.release(p.Width)
	return w
}

// between is the break that the change from one unit to the next asks for.
func between(a, b Unit, pause int64, p Profile) edge {
	switch {
	case a.Speaker != b.Speaker, a.Kind == Card, b.Kind == Card, pause >= p.Pause.Milliseconds():
		return newCue
	case a.Kind == Sound, b.Kind == Sound:
		return newLine
	}
	return flow
}

// add appends the words of one unit, its time shared out by characters. Line
// breaks in the text stay only before a new speaker's dash or a note sign.
func (w *words) add(u Unit, start, end int64, p Profile) {
	first := len(w.list)
	at, total := 0, 0
	for line := range strings.SplitSeq(Plain(u.Text), "\n") {
		begun := len(w.list)
		for line != "" {
			line = strings.TrimLeftFunc(line, breaksLine)
			stop := strings.IndexFunc(line, breaksLine)
			if stop < 0 {
				stop = len(line)
			}
			if stop > 0 {
				w.addWord(line[:stop], p.Width)
			}
			line = line[stop:]
		}
		if begun > first && begun < len(w.list) && opensLine(w.list[begun].text) {
			w.list[begun-1].edge = newLine
		}
	}
	added := w.list[first:]
	for i := range added {
		total += int(added[i].width) + 1
	}
	share := func(at int) int64 {
		return start + int64(math.Round(float64(end-start)*float64(at)/float64(max(total-1, 1))))
	}
	for i := range added {
		added[i].start, added[i].end = share(at), share(at+int(added[i].width))
		at += int(added[i].width) + 1
	}
	if len(added) > 0 && u.Kind != Speech {
		added[len(added)-1].stop = true
	}
}

// addWord appends a word, cut between grapheme clusters where it is wider than
// a line.
func (w *words) addWord(text string, width int) {
	n := Characters(text)
	for n > width {
		piece, rest, state := "", text, -1
		for range width {
			var cluster string
			cluster, rest, _, state = uniseg.FirstGraphemeClusterInString(rest, state)
			piece = text[:len(piece)+len(cluster)]
		}
		w.list = append(w.list, word{text: piece, width: int32(width), cut: true})
		text, n = rest, n-width
	}
	w.list = append(w.list, word{text: text, width: int32(n)})
}

// breaksLine holds for white space at which a line may be parted: not for the
// no-break spaces.
func breaksLine(r rune) bool {
	switch r {
	case '\u00a0', '\u2007', '\u202f':
		return false
	}
	return unicode.IsSpace(r)
}

// opensLine holds for a word that a line break belongs before: the dash of
// another speaker, a note of music.
func opensLine(word string) bool {
	for _, sign := range [...]string{"-", "–", "—", "♪", "♫", "#", "[", "("} {
		if strings.HasPrefix(word, sign) {
			return true
		}
	}
	return false
}

// sorted returns the units by start, those with the same start as given.
func sorted(units []Unit) []Unit {
	byStart := func(a, b Unit) int { return cmp.Compare(a.Start, b.Start) }
	if slices.IsSortedFunc(units, byStart) {
		return units
	}
	units = slices.Clone(units)
	slices.SortStableFunc(units, byStart)
	return units
}

// toMillisecond rounds seconds; what is no time (NaN, below zero) is 0.
func toMillisecond(seconds float64) int64 {
	const most = 9e9 // seconds that a time.Duration holds
	if !(seconds > 0) {
		return 0
	}
	return int64(math.Round(min(seconds, most) * 1000))
}
