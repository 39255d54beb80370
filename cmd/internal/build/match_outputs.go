package build

import (
	"path"
	"slices"
	"strings"

	"fixslate/chapters/captions"
	"fixslate/chapters/marks"
	"fixslate/templates/blurb"
	"fixslate/templates/book"
	"fixslate/templates/sheet"
)

// MatchSet is the name of the files of a match in a folder that it shares with
// those of a build.
const MatchSet = "match"

// MatchOutput is one file that a match can make.
type MatchOutput struct {
	Name string
	What string
	Make func(m *Matched) []byte
}

// MatchOutputs are the files of a match, by name. Description and comment take
// the place of the planned ones: what is published has the real chapters.
func MatchOutputs() []MatchOutput {
	outputs := []MatchOutput{
		{"comment.txt", "comment to pin", func(m *Matched) []byte { return blurb.Comment(m.Planned.Plan, m.Chapters) }},
		{"description.md", "description, whole", func(m *Matched) []byte { return m.Description.Markdown }},
		{"description.txt", "description within the limit", func(m *Matched) []byte { return m.Description.Text }},
		{"review.html", "edit beside plan, to look at", func(m *Matched) []byte { return book.ReviewPage(m.Review()) }},
		{"review.json", "edit beside plan, for programs", (*Matched).JSON},
		{"review.md", "edit beside plan, to read", func(m *Matched) []byte { return sheet.Review(sheet.Cut(m.Review())) }},
	}
	for _, f := range marks.Formats() {
		outputs = append(outputs, MatchOutput{path.Join("chapters", f.File("final")), f.What, func(m *Matched) []byte {
			if len(m.Chapters) == 0 {
				return nil // where no step was found, only the forms of files would be left
			}
			return f.Write(marks.FilmOf(m.Planned.Plan, m.Timeline, m.Chapters))
		}})
	}
	for _, format := range []captions.Format{captions.SRT, captions.WebVTT, captions.TTML} {
		outputs = append(outputs, MatchOutput{"captions/final." + format.String(), "captions, accepted terms put in", func(m *Matched) []byte {
			data, err := captions.Write(m.Final, format)
			if err != nil {
				panic(err) // these formats are written
			}
			return data
		}})
	}
	slices.SortFunc(outputs, func(a, b MatchOutput) int { return strings.Compare(a.Name, b.Name) })
	return outputs
}

// Files makes all outputs of a match.
func (m *Matched) Files() []File {
	var files []File
	for _, o := range MatchOutputs() {
		if data := o.Make(m); data != nil {
			files = append(files, File{o.Name, data})
		}
	}
	return files
}
