package plan

import (
	"embed"

	"fixslate/plan/diag"
)

//go:embed faults/*.md
var faultPages embed.FS

// Faults are the names of everything that Decode may report, sorted.
func Faults() []string { return diag.PageNames(faultPages, "faults") }

// FaultPage is the page of one fault, for `explain`.
func FaultPage(name string) (diag.Page, bool) { return diag.PageNamed(faultPages, "faults", name) }
