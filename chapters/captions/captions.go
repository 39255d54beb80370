// Package captions makes, reads, checks and writes caption files.
//
// In goes either stretches of speech with their times (Segment) or the bytes
// of somebody's caption file (Read); out come Cues, findings with their places
// and the bytes of SRT, WebVTT and TTML files (Write). SSA and EBU STL are
// read, never written. Styling inside a cue is read down to plain text; what a
// conversion within one format must keep (identifiers, settings, markup, the
// blocks between cues) stays beside it.
//
// The package opens no file, never drops a cue without a finding and never
// lets the text of a cue become structure of a file.
package captions

import (
	"strings"
	"time"

	"fixslate/plan/diag"
)

// Cue is one caption: words on the screen from Start until End.
type Cue struct {
	Start, End time.Duration
	Text       string // plain text, lines parted by \n, no line blank
	Speaker    string // who speaks, where all of the cue is one voice
	ID         string // the cue's name in its file, empty for none
	Settings   string // where it stands on the screen, as its format writes it
	Markup     string // Text as its format writes it, where that says more
	Cut        bool   // a word too long for a line was cut inside the word
	At         diag.Span
}

// Duration is how long the cue is shown, zero or less for one that never is.
func (c Cue) Duration() time.Duration { return c.End - c.Start }

// File is a caption file's content.
type File struct {
	Format   Format
	Language string       // BCP 47, as xml:lang has it; empty for unknown
	Header   string       // WebVTT: what follows the signature, up to the first blank line
	Blocks   []Block      // WebVTT: notes, style sheets and regions
	Cues     []Cue        // in the file's order
	Source   *diag.Source // nil for a file that was not read
	Whole    bool         // nothing in the file was left unread
}

// Block is a stretch of a WebVTT file that is no cue: a note, a style sheet, a
// region.
type Block struct {
	Before int // index of the cue it stands before
	Text   string
}

// Format is a kind of caption file.
type Format int

// The formats that Read knows. Write makes the first three.
const (
	Unknown Format = iota
	SRT            // SubRip; no standard, common practice
	WebVTT         // W3C WebVTT
	TTML           // W3C Timed Text Markup Language
	SSA            // SubStation Alpha and its later dialect
	STL            // EBU Tech 3264
)

var formatNames = [...]string{"unknown", "srt", "vtt", "ttml", "ssa", "stl"}

// String is the format's name on the command line, which is also the usual
// ending of its files.
func (f Format) String() string {
	if f < 0 || int(f) >= len(formatNames) {
		return formatNames[Unknown]
	}
	return formatNames[f]
}

// Writable holds for the formats that Write makes.
func (f Format) Writable() bool { return f == SRT || f == WebVTT || f == TTML }

// FormatNamed finds a format by a name or a file's ending without its dot, in
// any letter case: "vtt", "webvtt", "ass". Unknown for any other.
func FormatNamed(name string) Format {
	switch strings.ToLower(name) {
	case "srt":
		return SRT
	case "vtt", "webvtt":
		return WebVTT
	case "ttml", "dfxp", "xml":
		return TTML
	case "ssa", "ass":
		return SSA
	case "stl":
		return STL
	}
	return Unknown
}
