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
	"regexp"
	"strings"
	"text/template"

	"fixslate/plan"
	"fixslate/templates"
)

// print fills one of our templates. A template that fails is a defect of
// ours, never of the plan: the tests run them all.
func print(name string, view any) []byte {
	t, err := template.New(name).Funcs(functions).ParseFS(templates.Files, "sheet/"+name)
	if err != nil {
		panic(err)
	}
	var b bytes.Buffer
	if err := t.Execute(&b, view); err != nil {
		panic(err)
	}
	return b.Bytes()
}

// orderedStart is "1." or "1)" at the head of a line, which would begin a list.
var orderedStart = regexp.MustCompile(`^(\d+)([.)])`)

var functions = template.FuncMap{
	"md":    Escape,
	"cell":  cell,
	"clock": clock,
	"secs":  seconds,
	"join":  func(words []string) string { return strings.Join(words, ", ") },
}

// Escape makes words of a plan plain in Markdown: what would be markup is
// escaped, line ends become spaces (CommonMark 0.31, "Backslash escapes").
func Escape(words any) string {
	text := strings.Join(strings.Fields(fmt.Sprint(words)), " ")
	var b strings.Builder
	for i, r := range text {
		switch {
		case strings.ContainsRune("\\`*_[]<>|#", r), r == '~' && strings.HasPrefix(text[i:], "~~"), r == '&' && strings.ContainsRune(text[i:], ';'):
			b.WriteByte('\\')
		case i == 0 && (r == '-' || r == '+' || r == '='):
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return orderedStart.ReplaceAllString(b.String(), `$1\$2`)
}

// cell is Escape for a table, never empty.
func cell(words any) string {
	if text := Escape(words); text != "" {
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

// versions names the versions that something is for, empty for all.
func versions(p *plan.Plan, ids []string) string {
	var names []string
	for _, id := range ids {
		for _, v := range p.Variant(id) {
			if v.Short.Print != "" {
				names = append(names, v.Short.Print)
			} else {
				names = append(names, v.Name.Print)
			}
		}
	}
	return strings.Join(names, ", ")
}
