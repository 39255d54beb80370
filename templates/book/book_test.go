package book

import (
	"bytes"
	"context"
	"testing"

	"fixslate/chapters"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/diagnose"
	"fixslate/plan/timing"
	"fixslate/samples"
	"fixslate/shotlist"
	"fixslate/templates/picture"
)

// bookOf compiles a plan far enough for a book.
func bookOf(t testing.TB, name string, text []byte) Book {
	t.Helper()
	source, faults := diag.NewSource(name, text)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	p, _, faults := plan.Decode(source, nil)
	for _, f := range faults {
		if f.Severity == diag.Error {
			t.Fatalf("%s: %s: %s", name, f.Path, f.Message)
		}
	}
	timeline := timing.Estimate(p, timing.DefaultPace())
	shots := shotlist.FromPlan(p)
	day := shotlist.Arrange(context.Background(), shotlist.Call{Plan: p, Timeline: timeline, Shots: shots})
	return Book{
		Plan: p, Timeline: timeline, Trees: picture.Tests(p, diagnose.Best(p, timing.TestMinutes)), Shots: shots, Coverage: shotlist.Coverage(p, shots), Day: &day,
		Chapters: chapters.FromTimeline(p, timeline), Findings: faults,
	}
}

func sample(t testing.TB, name string) Book {
	t.Helper()
	text, ok := samples.Plan(name)
	if !ok {
		t.Fatalf("there is no sample %q", name)
	}
	return bookOf(t, name, text)
}

func TestPageIsTheSameEachTime(t *testing.T) {
	b := sample(t, "van-blower")
	first := Page(b)
	if !bytes.Equal(first, Page(sample(t, "van-blower"))) {
		t.Error("two pages of one plan differ")
	}
	if len(first) > 300_000 {
		t.Errorf("the page has %d bytes", len(first))
	}
}

func BenchmarkPage(b *testing.B) {
	book := sample(b, "van-blower")
	for b.Loop() {
		Page(book)
	}
}
