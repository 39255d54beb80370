package build

import (
	"fixslate/chapters/captions"
	"fixslate/chapters/marks"
	"fixslate/templates/blurb"
	"fixslate/templates/book"
	"fixslate/templates/sheet"
)

// MatchSet is the name of the files of a match in a folder that it shares with
// those of a build.
const MatchSet = "match"

// matchOutputs are the files of a match, by name. Description and comment take
// the place of the planned ones: what is published has the real chapters.
func matchOutputs() []output[*Matched] {
	all := []output[*Matched]{
		{"comment.txt", func(m *Matched) []byte { return blurb.Comment(m.Planned.Plan, m.Chapters) }},
		{"description.md", func(m *Matched) []byte { return m.Description.Markdown }},
		{"description.txt", func(m *Matched) []byte { return m.Description.Text }},
		{"review.html", func(m *Matched) []byte { return book.ReviewPage(m.review()) }},
		{"review.json", (*Matched).JSON},
		{"review.md", func(m *Matched) []byte { return sheet.Review(m.review()) }},
	}
	return withTimes(all, "final", func(m *Matched, f marks.Format) []byte {
		if len(m.Chapters) == 0 {
			return nil // where no step was found, only the forms of files would be left
		}
		return f.Write(marks.FilmOf(m.Planned.Plan, m.Timeline, m.Chapters))
	}, func(m *Matched) captions.File { return m.Final })
}

// Files makes all outputs of a match.
func (m *Matched) Files() []File { return filesOf(m, matchOutputs()) }
