package captions

import (
	"embed"
	"path"
	"slices"
	"strings"

	"fixslate/plan/diag"
)

//go:embed findings/*.md
var findingPages embed.FS

// Findings are the names of everything that Read and Check may report, sorted.
func Findings() []string {
	entries, _ := findingPages.ReadDir("findings") // embedded: it is there
	var names []string
	for _, e := range entries {
		names = append(names, strings.TrimSuffix(e.Name(), ".md"))
	}
	slices.Sort(names)
	return names
}

// FindingPage is the page of one finding, for `explain`. Its examples are
// caption files.
func FindingPage(name string) (diag.Page, bool) {
	if !slices.Contains(Findings(), name) {
		return diag.Page{}, false
	}
	text, err := findingPages.ReadFile(path.Join("findings", name+".md"))
	if err != nil {
		return diag.Page{}, false
	}
	page, err := diag.ParsePage(string(text))
	return page, err == nil && page.Rule == name
}
