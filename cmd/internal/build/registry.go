package build

import (
	"fmt"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"fixslate/chapters/captions"
	"fixslate/chapters/marks"
	"fixslate/shotlist"
	"fixslate/templates/blurb"
	"fixslate/templates/book"
	"fixslate/templates/picture"
	"fixslate/templates/sheet"
)

// output is one file that can be made of a Compiled or a Matched. A capability
// adds its line to outputs or matchOutputs; nothing else has to know.
type output[T any] struct {
	name string
	make func(T) []byte // nil bytes: there is nothing to write; several are made at once
}

// outputs are the files of a build, by name.
func outputs() []output[*Compiled] {
	all := []output[*Compiled]{
		{"before.md", func(c *Compiled) []byte { return sheet.Before(c.Plan) }},
		{"book.html", func(c *Compiled) []byte {
			return book.Page(book.Book{Plan: c.Plan, Timeline: c.Timeline, Trees: c.Trees, Shots: c.Shots, Coverage: c.Coverage, Day: &c.Day, Chapters: c.Chapters, Hazards: c.Hazards, Findings: c.Findings})
		}},
		{"comment.txt", func(c *Compiled) []byte { return blurb.Comment(c.Plan, c.Chapters) }},
		{"day.md", func(c *Compiled) []byte { return sheet.Day(c.Plan, c.Shots, &c.Day) }},
		{"description.md", func(c *Compiled) []byte { return c.Description.Markdown }},
		{"description.txt", func(c *Compiled) []byte { return c.Description.Text }},
		{"edit.md", func(c *Compiled) []byte { return sheet.Edit(c.Plan, c.Timeline, c.Chapters, toGet(c.Shots)) }},
		{"faults.svg", func(c *Compiled) []byte { return picture.File(c.Trees...) }},
		{"helper.md", func(c *Compiled) []byte { return sheet.Helper(c.Plan, c.Shots, &c.Day, c.Findings) }},
		{"risks.md", func(c *Compiled) []byte { return sheet.Risks(c.Plan, c.Hazards, c.Findings) }},
		{"shots.csv", func(c *Compiled) []byte { return sheet.ShotsCSV(c.Plan, c.Shots) }},
		{"shots.md", func(c *Compiled) []byte { return sheet.Shots(c.Plan, c.Shots, c.Coverage) }},
		{"voice.md", func(c *Compiled) []byte { return sheet.Voice(c.Plan, c.Timeline) }},
	}
	return withTimes(all, "planned",
		func(c *Compiled, f marks.Format) []byte { return f.Write(marks.FilmOf(c.Plan, c.Timeline, c.Chapters)) },
		func(c *Compiled) captions.File {
			return captions.File{Language: c.Plan.Video.Language, Cues: c.Cues, Whole: true}
		})
}

// withTimes adds what a planned cut and a finished one have alike, the chapters in
// every format and the captions in those that are written, and sorts all by name.
func withTimes[T any](all []output[T], name string, chapters func(T, marks.Format) []byte, cues func(T) captions.File) []output[T] {
	for _, f := range marks.Formats() {
		all = append(all, output[T]{path.Join("chapters", f.File(name)), func(of T) []byte { return chapters(of, f) }})
	}
	for _, format := range []captions.Format{captions.SRT, captions.WebVTT, captions.TTML} {
		all = append(all, output[T]{"captions/" + name + "." + format.String(), func(of T) []byte {
			data, err := captions.Write(cues(of), format)
			if err != nil {
				panic(err) // these formats are written
			}
			return data
		}})
	}
	slices.SortFunc(all, func(a, b output[T]) int { return strings.Compare(a.name, b.name) })
	return all
}

// toGet are the pictures that no camera makes on the day, but for the cards of
// cautions: those are words, and the notes have their own list of them.
func toGet(shots []shotlist.Shot) []sheet.ShotNote {
	var notes []sheet.ShotNote
	for _, s := range shots {
		if (s.Kind != shotlist.Camera || s.Apart) && s.Covers[0].Why != shotlist.CautionCard {
			kind := s.Kind
			if kind == shotlist.Camera {
				kind = "filmed apart"
			}
			notes = append(notes, sheet.ShotNote{Step: s.Step, Kind: kind, Of: s.Of, File: s.File, Card: s.Card})
		}
	}
	return notes
}

// Make makes the outputs that only names, or all where it is empty. A name is
// a file's, with or without its ending, or a folder's. An unknown name is an
// error that lists the names.
func (c *Compiled) Make(only []string) ([]File, error) {
	wanted := outputs()
	for _, name := range only {
		if !slices.ContainsFunc(wanted, func(o output[*Compiled]) bool { return o.is(name) }) {
			var names []string
			for _, o := range wanted {
				names = append(names, o.name)
			}
			return nil, fmt.Errorf("there is no output %q; the outputs are %s", name, strings.Join(names, ", "))
		}
	}
	return filesOf(c, slices.DeleteFunc(wanted, func(o output[*Compiled]) bool { return len(only) > 0 && !slices.ContainsFunc(only, o.is) })), nil
}

// filesOf makes outputs, but for those that there is nothing to write of.
func filesOf[T any](of T, wanted []output[T]) []File {
	files := make([]File, len(wanted))
	var next atomic.Int32
	work := func() { // no more at once than there are processors: each has its stack to grow
		for i := int(next.Add(1)) - 1; i < len(wanted); i = int(next.Add(1)) - 1 {
			files[i] = File{wanted[i].name, wanted[i].make(of)}
		}
	}
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) - 1 {
		wg.Go(work)
	}
	work()
	wg.Wait()
	return slices.DeleteFunc(files, func(f File) bool { return f.Bytes == nil })
}

// is holds where a name means the output.
func (o output[T]) is(name string) bool {
	name = strings.TrimSuffix(name, "/")
	return name == o.name || name == path.Dir(o.name) || name == strings.TrimSuffix(o.name, path.Ext(o.name))
}
