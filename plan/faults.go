package plan

import (
	"embed"
	"path"
	"slices"
	"strings"

	"fixslate/plan/diag"
)

//go:embed faults/*.md
var faultPages embed.FS

// Faults are the names of everything that Decode may report, sorted.
func Faults() []string {
	entries, _ := faultPages.ReadDir("faults") // embedded: it is there
	var names []string
	for _, e := range entries {
		names = append(names, strings.TrimSuffix(e.Name(), ".md"))
	}
	slices.Sort(names)
	return names
}

// FaultPage is the page of one fault, for `explain`.
func FaultPage(name string) (diag.Page, bool) {
	if !slices.Contains(Faults(), name) {
		return diag.Page{}, false
	}
	text, err := faultPages.ReadFile(path.Join("faults", name+".md"))
	if err != nil {
		return diag.Page{}, false
	}
	page, err := diag.ParsePage(string(text))
	return page, err == nil
}
