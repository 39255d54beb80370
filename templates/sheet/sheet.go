// Package sheet prints the paper of a shoot: what to do before the day, the
// shots, the helper's side, the lines recorded later, the notes for the cut.
//
// In go finished values (plan, shots, timeline, findings); out come Markdown and
// CSV as bytes. The package looks nothing up and decides nothing: what a sheet
// says was decided by the packages below.
package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"fixslate/chapters"
	"fixslate/plan/prose"
)

//go:generate env FIXSLATE_UPDATE=1 go test -tags bare -run TestSheetsAreMadeOfTheirTemplates .

// out is a sheet as it is written by the code that press makes of its template.
type out struct{ sheet []byte }

func (o *out) raw(text string) { o.sheet = append(o.sheet, text...) }
func (o *out) number(n int)    { o.sheet = strconv.AppendInt(o.sheet, int64(n), 10) }

// write fills one of our templates.
func write[View any](template func(*out, *View), view *View) []byte {
	o := out{make([]byte, 0, 16<<10)} // most sheets are smaller
	template(&o, view)
	return o.sheet
}

// What the templates call.

// md takes what a template has: text of the plan in any of its types.
func md[T any](words T) string {
	if text, ok := any(words).(string); ok {
		return prose.Literal(text)
	}
	return prose.Literal(fmt.Sprint(words))
}

// cell is md for a table, never empty.
func cell[T any](words T) string {
	if text := md(words); text != "" {
		return text
	}
	return "–"
}

func after(i int) int { return i + 1 }

// semicolons part what has commas of its own.
func semicolons(words []string) string { return strings.Join(words, "; ") }

func clock(seconds float64) string { return chapters.Stamp(seconds) }

// secs prints a short length: "12 s".
func secs(seconds float64) string { return fmt.Sprintf("%.0f s", seconds) }

// tenths prints seconds to one place.
func tenths(seconds float64) string { return strconv.FormatFloat(seconds, 'f', 1, 64) }
