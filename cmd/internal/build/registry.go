package build

import (
	"fmt"
	"path"
	"slices"
	"strings"
	"sync"

	"fixslate/chapters/captions"
	"fixslate/chapters/marks"
	"fixslate/shotlist"
	"fixslate/templates/blurb"
	"fixslate/templates/book"
	"fixslate/templates/picture"
	"fixslate/templates/sheet"
)

// Output is one file that a build can make. A capability adds its line to
// Outputs; nothing else has to know.
type Output struct {
	Name string
	What string                   // a few words for a list
	Make func(c *Compiled) []byte // nil bytes: there is nothing to write; several are made at once
}

// Outputs are the files of a build, by name.
func Outputs() []Output {
	outputs := []Output{
		{"before.md", "to look up, buy, charge and try; packing list", func(c *Compiled) []byte { return sheet.Before(c.Plan) }},
		{"book.html", "shoot book for the phone", func(c *Compiled) []byte {
			return book.Page(book.Book{Plan: c.Plan, Timeline: c.Timeline, Trees: c.trees(), Shots: c.Shots, Coverage: c.Coverage, Day: &c.Day, Chapters: c.Chapters, Hazards: c.Hazards, Findings: c.Findings})
		}},
		{"comment.txt", "comment to pin", func(c *Compiled) []byte { return blurb.Comment(c.Plan, c.Chapters) }},
		{"day.md", "the shoot in shooting order", func(c *Compiled) []byte { return sheet.Day(c.Plan, c.Shots, &c.Day) }},
		{"description.md", "description, whole", func(c *Compiled) []byte { return c.Description.Markdown }},
		{"description.txt", "description within the limit", func(c *Compiled) []byte { return c.Description.Text }},
		{"edit.md", "notes for the cut", func(c *Compiled) []byte { return sheet.Edit(c.Plan, c.Timeline, toGet(c.Shots)) }},
		{"faults.svg", "which test first, drawn", func(c *Compiled) []byte { return picture.File(c.trees()...) }},
		{"helper.md", "the helper's side", func(c *Compiled) []byte { return sheet.Helper(c.Plan, c.Shots, &c.Day) }},
		{"risks.md", "what can hurt, step by step", func(c *Compiled) []byte { return sheet.Risks(c.Plan, c.Hazards, c.Findings) }},
		{"shots.csv", "shots for a spreadsheet", func(c *Compiled) []byte { return sheet.ShotsCSV(c.Plan, c.Shots) }},
		{"shots.md", "shots in story order", func(c *Compiled) []byte { return sheet.Shots(c.Plan, c.Shots, c.Coverage) }},
		{"voice.md", "lines to record later", func(c *Compiled) []byte { return sheet.Voice(c.Plan, c.Timeline) }},
	}
	for _, f := range marks.Formats() {
		outputs = append(outputs, Output{path.Join("chapters", f.File("planned")), f.What, func(c *Compiled) []byte {
			return f.Write(marks.FilmOf(c.Plan, c.Timeline, c.Chapters))
		}})
	}
	for _, format := range []captions.Format{captions.SRT, captions.WebVTT, captions.TTML} {
		outputs = append(outputs, Output{"captions/planned." + format.String(), "captions", func(c *Compiled) []byte {
			data, err := captions.Write(captions.File{Language: c.Plan.Video.Language, Cues: c.Cues, Whole: true}, format)
			if err != nil {
				panic(err) // these formats are written
			}
			return data
		}})
	}
	slices.SortFunc(outputs, func(a, b Output) int { return strings.Compare(a.Name, b.Name) })
	return outputs
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
	outputs := Outputs()
	for _, name := range only {
		if !slices.ContainsFunc(outputs, func(o Output) bool { return o.is(name) }) {
			var names []string
			for _, o := range outputs {
				names = append(names, o.Name)
			}
			return nil, fmt.Errorf("there is no output %q; the outputs are %s", name, strings.Join(names, ", "))
		}
	}
	c.trees = sync.OnceValue(func() []picture.Picture { return picture.Tests(c.Plan, c.Tests) })
	outputs = slices.DeleteFunc(outputs, func(o Output) bool { return len(only) > 0 && !slices.ContainsFunc(only, o.is) })
	files := make([]File, len(outputs))
	var wg sync.WaitGroup
	for i, o := range outputs {
		wg.Go(func() { files[i] = File{o.Name, o.Make(c)} })
	}
	wg.Wait()
	return slices.DeleteFunc(files, func(f File) bool { return f.Bytes == nil }), nil
}

// is holds where a name means the output.
func (o Output) is(name string) bool {
	name = strings.TrimSuffix(name, "/")
	return name == o.Name || name == path.Dir(o.Name) || name == strings.TrimSuffix(o.Name, path.Ext(o.Name))
}
