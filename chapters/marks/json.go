package marks

import (
	"bytes"
	"encoding/json"

	"fixslate/chapters"
)

// podcast is a Podcasting 2.0 chapters file (JSON Chapters Format 1.2, media type
// application/json+chapters): seconds as numbers, rising.
func podcast(f Film) []byte {
	type chapter struct {
		StartTime float64 `json:"startTime"`
		EndTime   float64 `json:"endTime"`
		Title     string  `json:"title"`
	}
	file := struct {
		Version  string    `json:"version"`
		Title    string    `json:"title,omitempty"`
		Chapters []chapter `json:"chapters"`
	}{"1.2.0", f.Title, []chapter{}}
	for _, c := range f.Chapters {
		file.Chapters = append(file.Chapters, chapter{
			float64(chapters.Millisecond(c.Start)) / 1000, float64(chapters.Millisecond(c.End)) / 1000, c.Title,
		})
	}
	return indented(file)
}

// indented is a value as JSON for people too: two spaces, `<` as it is.
func indented(value any) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(value); err != nil {
		panic("marks: " + err.Error()) // only finite numbers and strings come here
	}
	return b.Bytes()
}
