// Package marks writes chapters as files for players, editors and publishers,
// one format a file.
//
// In goes a Film: a title, chapters and clips with unrounded times; out come
// bytes. Times are rounded where a format has units, each from the same
// unrounded number, so that no two files drift apart. The package never opens a
// file and cuts no title.
package marks

import (
	"fixslate/chapters"
	"fixslate/plan"
	"fixslate/plan/timing"
)

// Film is what the files tell about a video.
type Film struct {
	Title    string
	Language string // BCP 47
	FPS      float64
	End      float64 // seconds
	Chapters []chapters.Chapter
	Clips    []Clip // one for each step, in the order they are seen
}

// Clip is one step's stretch of the video, in seconds from its start.
type Clip struct {
	Name       string
	Start, End float64
}

// FilmOf gathers what the files need.
func FilmOf(p *plan.Plan, t timing.Timeline, c []chapters.Chapter) Film {
	f := Film{Title: chapters.OneLine(p.Video.Title.Print), Language: p.Video.Language, FPS: p.Publish.FPS, End: t.End, Chapters: c}
	for _, s := range t.Steps {
		f.Clips = append(f.Clips, Clip{Name: s.ID, Start: s.Start, End: s.End})
	}
	return f
}

// Format is one kind of chapter file.
type Format struct {
	Ending string // "txt", "tc.txt"
	Write  func(Film) []byte
}

// File is the format's file name: "planned" gives "planned.txt".
func (f Format) File(stem string) string { return stem + "." + f.Ending }

// Formats are all kinds of chapter file, in the order they are listed.
func Formats() []Format {
	return []Format{
		{"txt", description},
		{"vtt", webVTT},
		{"ffmeta", ffMetadata},
		{"xml", matroska},
		{"json", podcast},
		{"tc.txt", timecodes},
		{"otio", otio},
	}
}
