// Package sheet prints the paper of a shoot: what to do before the day, the
// shots, the helper's side, the lines recorded later, the notes for the cut.
//
// In go finished values (plan, shots, timeline, findings); out come Markdown,
// CSV and SVG as bytes. The package looks nothing up and decides nothing: what
// a sheet says was decided by the packages below.
package sheet

import (
	"bytes"
	"fmt"
	"strings"
	"sync"
	"text/template"

	"fixslate/plan/prose"
	"fixslate/templates"
)

// parsed are our templates, read once. A template that fails is a defect of
// ours, never of the plan: the tests run them all.
var parsed = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("").Funcs(functions).ParseFS(templates.Files, "sheet/*.tmpl"))
})

// print fills one of our templates.
func print(name string, view any) []byte {
	b := bytes.NewBuffer(make([]byte, 0, 16<<10)) // most sheets are smaller
	if err := parsed().ExecuteTemplate(b, name, view); err != nil {
		panic(err)
	}
	return b.Bytes()
}

var functions = template.FuncMap{
	"md":    escape,
	"cell":  cell,
	"clock": clock,
	"secs":  seconds,
	"after": func(i int) int { return i + 1 },
	"join":  func(words []string) string { return strings.Join(words, ", ") },
}

// escape takes what a template has: text of the plan in any of its types.
func escape(words any) string {
	if text, ok := words.(string); ok {
		return prose.Literal(text)
	}
	return prose.Literal(fmt.Sprint(words))
}

// cell is escape for a table, never empty.
func cell(words any) string {
	if text := escape(words); text != "" {
		return text
	}
	return "–"
}

// clock prints seconds as 1:05.
func clock(secs float64) string {
	n := int(secs + 0.5)
	if n >= 3600 {
		return fmt.Sprintf("%d:%02d:%02d", n/3600, n/60%60, n%60)
	}
	return fmt.Sprintf("%d:%02d", n/60, n%60)
}

// seconds prints a short length: "12 s".
func seconds(secs float64) string { return fmt.Sprintf("%.0f s", secs) }
