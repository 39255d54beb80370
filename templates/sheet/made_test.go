package sheet

import (
	"bytes"
	"os"
	"testing"
	"text/template"

	"fixslate/templates/press"
)

// sheets.go is what press makes of the sheets' templates. FIXSLATE_UPDATE=1
// writes it anew.
func TestSheetsAreMadeOfTheirTemplates(t *testing.T) {
	functions := template.FuncMap{"md": md[any], "cell": cell[any], "clock": clock, "secs": secs, "tenths": tenths, "after": after, "semicolons": semicolons}
	sheets := template.Must(template.New("").Funcs(functions).ParseGlob("*.tmpl"))
	var all []press.Template
	for _, s := range []struct {
		name string
		on   any
	}{
		{"before", beforeView{}},
		{"day", dayView{}},
		{"edit", editView{}},
		{"helper", helpersView{}},
		{"review", reviewView{}},
		{"risks", Hazards{}},
		{"shots", shotsView{}},
		{"voice", voiceView{}},
	} {
		all = append(all, press.Template{Tree: sheets.Lookup(s.name + ".md.tmpl").Tree, On: s.on})
	}
	code, err := press.Make("sheet", all, functions)
	if err != nil {
		t.Fatal(err)
	}
	if os.Getenv("FIXSLATE_UPDATE") != "" {
		if err := os.WriteFile("sheets.go", code, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if kept, err := os.ReadFile("sheets.go"); err != nil || !bytes.Equal(kept, code) {
		t.Fatal("sheets.go is not what the templates say; go generate ./templates/sheet writes it anew")
	}
}
