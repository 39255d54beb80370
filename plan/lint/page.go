package lint

import (
	"embed"

	"fixslate/chapters/captions"
	"fixslate/plan/diag"
)

//go:embed *.md
var pages embed.FS

// Page is the page of one rule, for `explain`. Those of captions are the pages
// that caption files have.
func Page(name string) (diag.Page, bool) {
	if p, ok := captions.FindingPage(name); ok {
		return p, true
	}
	return diag.PageNamed(pages, ".", name)
}
