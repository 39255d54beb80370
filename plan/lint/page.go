package lint

import (
	"embed"

	"fixslate/plan/diag"
)

//go:embed *.md
var pages embed.FS

// Page is the page of one rule, for `explain`.
func Page(name string) (diag.Page, bool) {
	text, err := pages.ReadFile(name + ".md")
	if err != nil {
		return diag.Page{}, false
	}
	page, err := diag.ParsePage(string(text))
	return page, err == nil && page.Rule == name
}
