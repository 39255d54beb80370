// Package given, for tests alone, reads the plans that they are about.
//
// In goes a plan's text, which uses no other file; out comes the plan. A fault in
// it ends the test: plans with faults are the business of package plan.
package given

import (
	"strings"
	"testing"

	"fixslate/plan"
	"fixslate/plan/diag"
)

// Plan reads a text.
func Plan[T string | []byte](t testing.TB, text T) *plan.Plan {
	t.Helper()
	p, _ := Spans(t, text)
	return p
}

// Spans reads a text and keeps where everything stands in it.
func Spans[T string | []byte](t testing.TB, text T) (*plan.Plan, *plan.Spans) {
	t.Helper()
	src, faults := diag.NewSource("plan.toml", []byte(text))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	p, spans, faults := plan.Decode(src, nil)
	if p == nil {
		var b strings.Builder
		_ = diag.Text(&b, faults, diag.Style{Excerpt: true})
		t.Fatalf("the plan has faults:\n%s", b.String())
	}
	return p, spans
}
