// Package diag carries what fixslate has to say about a file: a Source (the
// text, read once), a Span in it, and Findings with their places. Faults of a
// plan, lint findings and review findings are all the same value and print the
// same way, as text, JSON or SARIF.
//
// In goes the bytes of a file; out come places in lines and characters and
// printed findings. The package never opens a file and never decides what is
// wrong.
package diag

import (
	"cmp"
	"slices"
)

// Severity says how much a finding weighs. Higher is graver.
type Severity int

// The three severities of the linter; a fault is an Error.
const (
	Note Severity = iota + 1
	Warning
	Error
)

// String is the word printed and read: "note", "warning" or "error".
func (s Severity) String() string {
	switch s {
	case Error:
		return "error"
	case Warning:
		return "warning"
	case Note:
		return "note"
	}
	return "unknown"
}

// Span is a stretch of a Source's text: byte offsets, End not included.
type Span struct{ Start, End int }

// Place is a span in one source. The zero Place is "nowhere in particular".
type Place struct {
	Source *Source
	Span   Span
}

// Position is the place's start for people; the zero Position without a source.
func (p Place) Position() Position {
	if p.Source == nil {
		return Position{}
	}
	return p.Source.Position(p.Span.Start)
}

// File is the name of the place's source, empty without one.
func (p Place) File() string {
	if p.Source == nil {
		return ""
	}
	return p.Source.Name
}

// Position counts lines and characters from 1.
type Position struct{ Line, Column int }

// Finding is one thing worth saying about one place.
type Finding struct {
	Rule     string // the rule's or fault's name, as `explain` takes it
	Severity Severity
	Message  string // what is wrong: lower case, no full stop, thing first
	Hint     string // what to write instead; its own line in print
	At       Place
	Path     string   // "step[2].say"; empty where none fits
	Step     string   // id of the step it belongs to, or empty
	Families []string // hazard families, for safety findings
	Waived   string   // reason of the waiver that covers it, or empty
	Waiver   int      // which of the plan's waivers that is, from 1; 0 for none
}

// Counts are findings by severity, waived ones left out.
type Counts struct {
	Error   int `json:"error"`
	Warning int `json:"warning"`
	Note    int `json:"note"`
}

// Count counts the findings that no waiver covers.
func Count(findings []Finding) Counts {
	var c Counts
	for _, f := range findings {
		if f.Waived != "" {
			continue
		}
		switch f.Severity {
		case Error:
			c.Error++
		case Warning:
			c.Warning++
		case Note:
			c.Note++
		}
	}
	return c
}

// Worst is the gravest severity that no waiver covers, 0 for none.
func Worst(findings []Finding) Severity {
	var worst Severity
	for _, f := range findings {
		if f.Waived == "" {
			worst = max(worst, f.Severity)
		}
	}
	return worst
}

// Sort orders findings by file, place, rule and message: the same set always
// prints in the same order.
func Sort(findings []Finding) {
	slices.SortStableFunc(findings, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(a.At.File(), b.At.File()),
			cmp.Compare(a.At.Span.Start, b.At.Span.Start),
			cmp.Compare(a.At.Span.End, b.At.Span.End),
			cmp.Compare(a.Rule, b.Rule),
			cmp.Compare(a.Message, b.Message),
		)
	})
}
