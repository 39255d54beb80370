package diag

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// Entry is a finding as JSON prints it; a documented, stable form.
type Entry struct {
	Rule     string   `json:"rule"`
	Severity string   `json:"severity"`
	Message  string   `json:"message"`
	File     string   `json:"file"`
	Line     int      `json:"line"`
	Column   int      `json:"column"`
	Path     string   `json:"path"`
	Step     string   `json:"step"`
	Families []string `json:"families"`
	Help     string   `json:"help"`
	Waived   string   `json:"waived"`
}

// Entries turns findings into their JSON form, never nil.
func Entries(findings []Finding) []Entry {
	entries := make([]Entry, 0, len(findings))
	for _, f := range findings {
		pos := f.At.Position()
		families := f.Families
		if families == nil {
			families = []string{}
		}
		entries = append(entries, Entry{
			Rule: f.Rule, Severity: f.Severity.String(), Message: f.Message,
			File: f.At.File(), Line: pos.Line, Column: pos.Column,
			Path: f.Path, Step: f.Step, Families: families, Help: f.Hint, Waived: f.Waived,
		})
	}
	return entries
}

// JSON writes {"findings": […], "counts": {…}}.
func JSON(w io.Writer, findings []Finding) error {
	return PrintJSON(w, struct {
		Findings []Entry `json:"findings"`
		Counts   Counts  `json:"counts"`
	}{Entries(findings), Count(findings)})
}

// PrintJSON writes a value as JSON for people and programs. It may be shown on a
// terminal: characters that move or hide what stands around them are written as
// \u escapes, which mean the same.
func PrintJSON(w io.Writer, value any) error {
	enc := json.NewEncoder(plainJSON{w})
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(value)
}

// plainJSON escapes what is written. Each Write holds whole characters, as those
// of an Encoder do.
type plainJSON struct{ w io.Writer }

func (p plainJSON) Write(b []byte) (int, error) {
	var out strings.Builder
	from := 0
	for i := 0; i < len(b); {
		if b[i] < 0x7f {
			i++
			continue
		}
		r, size := utf8.DecodeRune(b[i:])
		if r == 0x7f || hidden(r) {
			out.Write(b[from:i])
			for _, unit := range utf16.Encode([]rune{r}) {
				fmt.Fprintf(&out, `\u%04x`, unit)
			}
			from = i + size
		}
		i += size
	}
	if from == 0 {
		return p.w.Write(b)
	}
	out.Write(b[from:])
	_, err := io.WriteString(p.w, out.String())
	return len(b), err
}
