package diag

import (
	"encoding/json"
	"io"
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
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(struct {
		Findings []Entry `json:"findings"`
		Counts   Counts  `json:"counts"`
	}{Entries(findings), Count(findings)})
}
