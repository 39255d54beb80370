// Package chapters cuts a video into chapters that a publisher accepts.
//
// In go a plan (titles and limits) and a Timeline, planned or real; out come
// Chapters: titles with unrounded starts, the steps they hold and what had to
// be joined. The package writes no file (chapters/marks does) and drops no
// step.
package chapters

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"fixslate/plan"
	"fixslate/plan/prose"
	"fixslate/plan/timing"
)

// Chapter is a stretch of the video under one title.
type Chapter struct {
	Title    string        // one line
	Start    float64       // seconds from the video's start, not rounded
	End      float64       // where the next chapter starts, or the video ends
	Begin    timing.Spread // of Start
	Steps    []int         // indexes in the plan's Steps, in the order they are seen
	Joined   []int         // those of Steps that would have begun a chapter of their own but are too short, or make it long enough
	Detour   bool          // all of it is seen only after an outcome of a test
	Variants []string      // ids, where all of it is for the same versions only
}

// Shortest is the shortest chapter where the plan does not say (announced with
// the feature by the largest video site in 2020: first at 0:00, at least three,
// each at least ten seconds).
const Shortest = 10.0

// WholeSecond rounds a time as every output with whole seconds writes it.
func WholeSecond(seconds float64) int { return int(math.Floor(seconds + 0.5)) }

// Millisecond rounds a time as every output with milliseconds writes it.
func Millisecond(seconds float64) int64 { return int64(math.Floor(seconds*1000 + 0.5)) }

// Stamp writes a time as descriptions do: "0:00", "12:34", and "1:02:03" from
// one hour on.
func Stamp(seconds float64) string {
	s := WholeSecond(seconds)
	if s < 3600 {
		return fmt.Sprintf("%d:%02d", s/60, s%60)
	}
	return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
}

// FromTimeline makes the chapters of a video.
//
// Each step begins a chapter under its own title, or under the text of its
// `chapter` key; with `chapter = false` it belongs to the chapter before. The
// first chapter starts at 0:00 whatever comes before its step.
//
// No chapter may be shorter than [publish] chapter_shortest, measured between
// starts in whole seconds, as they will be written. Where some are, neighbours
// are joined so that (1) as many chapters are left as the limit allows, (2) the
// fewest joins put a detour beside the main story or one version beside
// another, (3) the lengths are most even; where that leaves a choice, a short
// step joins the chapter before it. A joined chapter has the title its author
// wrote in a `chapter` key, else the title of its longest step; the others stand
// in Joined. A video shorter than the limit is one chapter, under the title its
// author wrote for one of its steps, else under its own.
//
// Method: dynamic programming over where the last chapter starts. Cost: the
// square of the number of steps.
func FromTimeline(p *plan.Plan, t timing.Timeline) []Chapter {
	openings := open(p, t)
	if len(openings) == 0 {
		return nil
	}
	var chapters []Chapter
	groups := join(openings, WholeSecond(t.End), shortest(p))
	for _, group := range groups {
		c := merge(p, group)
		if len(groups) == 1 && len(group) > 1 && !slices.ContainsFunc(group, opening.byAuthor) {
			c.Title = cmp.Or(OneLine(p.Video.Title.Print), c.Title) // no step's title stands for the whole video
		}
		chapters = append(chapters, c)
	}
	for i := range chapters {
		chapters[i].End = t.End
		if i > 0 {
			chapters[i-1].End = chapters[i].Start
		}
	}
	return chapters
}

// shortest is the plan's limit in whole seconds. Two chapters may never share
// a second.
func shortest(p *plan.Plan) int {
	limit := Shortest
	if d := p.Publish.ChapterShortest; d.Set && !d.Open {
		limit = d.Seconds()
	}
	return max(1, int(math.Ceil(limit)))
}

// opening is a chapter as the plan has it, before anything is too short.
type opening struct {
	title    string
	authored bool // written in a chapter key
	start    float64
	begin    timing.Spread
	steps    []int
	longest  float64 // seconds of its longest step
	detour   bool
	variants []string
}

func open(p *plan.Plan, t timing.Timeline) []opening {
	var all []opening
	for _, s := range t.Steps {
		step := &p.Steps[s.Index]
		if step.Chapter.Joined && len(all) > 0 {
			last := &all[len(all)-1]
			last.steps = append(last.steps, s.Index)
			last.longest = max(last.longest, s.End-s.Start)
			continue
		}
		o := opening{
			title: OneLine(step.Title.Print), start: s.Start, begin: s.Begin, steps: []int{s.Index},
			longest: s.End - s.Start, detour: s.Detour, variants: step.Variants,
		}
		if own := OneLine(step.Chapter.Title.Print); own != "" {
			o.title, o.authored = own, true
		}
		if o.title == "" {
			o.title = step.ID
		}
		if len(all) == 0 {
			o.start, o.begin = 0, timing.Spread{}
		}
		all = append(all, o)
	}
	return all
}

// OneLine makes a title fit on a line of any format: white space of every kind
// is one space, control characters and those that turn the direction of text
// are gone.
func OneLine(title string) string {
	unseen := func(r rune) bool {
		return !unicode.IsSpace(r) && prose.Harmful(r) || r == unicode.ReplacementChar || r == '\ufeff'
	}
	if strings.ContainsFunc(title, unseen) {
		title = strings.Map(func(r rune) rune {
			if unseen(r) {
				return -1
			}
			return r
		}, title)
	}
	return prose.SingleSpaces(title)
}

// rank orders ways of joining: more chapters first, then fewer mixed joins,
// then more even lengths.
type rank struct {
	chapters int
	mixed    int
	squares  float64
}

func (a rank) better(b rank) bool {
	if a.chapters != b.chapters {
		return a.chapters > b.chapters
	}
	if a.mixed != b.mixed {
		return a.mixed < b.mixed
	}
	return a.squares < b.squares
}

// join groups openings that follow each other so that no group is shorter than
// limit seconds; all of them in one group where nothing else is possible.
func join(openings []opening, end, limit int) [][]opening {
	n := len(openings)
	at := make([]int, n+1)
	for i, o := range openings {
		at[i] = WholeSecond(o.start)
	}
	at[n] = end
	best := make([]rank, n+1) // of the first j openings
	from := make([]int, n+1)  // where their last group starts; -1: impossible
	for j := 1; j <= n; j++ {
		from[j] = -1
		mixed := 0
		for i := j - 1; i >= 0; i-- {
			if i+1 < j && !openings[i].like(openings[i+1]) {
				mixed++
			}
			length := at[j] - at[i]
			if length < limit || from[i] < 0 {
				continue
			}
			if from[j] >= 0 && best[i].chapters+1 < best[j].chapters {
				break // earlier openings give no more chapters: their last one could go on to here
			}
			r := rank{best[i].chapters + 1, best[i].mixed + mixed, best[i].squares + float64(length)*float64(length)}
			if from[j] < 0 || r.better(best[j]) {
				best[j], from[j] = r, i
			}
		}
	}
	if from[n] < 0 {
		return [][]opening{openings}
	}
	var groups [][]opening
	for j := n; j > 0; j = from[j] {
		groups = append(groups, openings[from[j]:j])
	}
	slices.Reverse(groups)
	return groups
}

func (o opening) byAuthor() bool { return o.authored }

// like holds for openings that the same viewers see.
func (o opening) like(other opening) bool {
	return o.detour == other.detour && slices.Equal(o.variants, other.variants)
}

// merge makes one chapter of a group.
func merge(p *plan.Plan, group []opening) Chapter {
	first := group[0]
	c := Chapter{Start: first.start, Begin: first.begin, Detour: true, Variants: slices.Clone(first.variants)}
	title := first
	for _, o := range group[1:] {
		if o.authored && !title.authored || o.authored == title.authored && o.longest > title.longest {
			title = o
		}
	}
	c.Title = title.title
	for _, o := range group {
		c.Steps = append(c.Steps, o.steps...)
		if o.steps[0] != title.steps[0] {
			c.Joined = append(c.Joined, o.steps[0])
		}
	}
	for _, i := range c.Steps {
		c.Detour = c.Detour && p.Steps[i].OnlyIf.Test != ""
		if !slices.Equal(p.Steps[i].Variants, first.variants) {
			c.Variants = nil
		}
	}
	return c
}

// ReadStamp reads a time as people write it, "3:20" or "1:02:03", in seconds.
// It reads back what Stamp writes.
func ReadStamp(text string) (seconds float64, ok bool) {
	parts := strings.Split(strings.TrimSpace(text), ":")
	if len(parts) != 2 && len(parts) != 3 {
		return 0, false
	}
	for i, part := range parts {
		n, err := strconv.ParseUint(part, 10, 64) // takes no sign
		if err != nil || n > 9999 || i > 0 && (n > 59 || len(part) != 2) {
			return 0, false
		}
		seconds = seconds*60 + float64(n)
	}
	return seconds, true
}

// At is the chapter that a time falls into, as whole seconds show it: a time
// that is a chapter's own stamp is in that chapter. False beyond both ends.
func At(all []Chapter, seconds float64) (Chapter, bool) {
	at := WholeSecond(seconds)
	for i := len(all) - 1; i >= 0; i-- {
		if at >= WholeSecond(all[i].Start) {
			return all[i], at <= WholeSecond(all[i].End)
		}
	}
	return Chapter{}, false
}

// Of is the chapter that holds a step, by its index in the plan.
func Of(all []Chapter, step int) (Chapter, bool) {
	for _, c := range all {
		if slices.Contains(c.Steps, step) {
			return c, true
		}
	}
	return Chapter{}, false
}
