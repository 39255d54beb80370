package captions

import (
	"embed"

	"fixslate/plan/diag"
)

//go:embed findings/*.md
var findingPages embed.FS

// Findings are the names of everything that Read and Check may report, sorted.
func Findings() []string { return diag.PageNames(findingPages, "findings") }

// FindingPage is the page of one finding, for `explain`. Its examples are
// caption files.
func FindingPage(name string) (diag.Page, bool) {
	return diag.PageNamed(findingPages, "findings", name)
}
