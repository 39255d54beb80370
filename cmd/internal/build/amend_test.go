package build_test

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"fixslate/cmd/internal/build"
	"fixslate/plan/diag"
	"fixslate/samples"
)

// Cautions are written into plans of all manners, with nothing else changed,
// whatever their line ends, their mark and their last line.
func TestAddCautionsToManyPlans(t *testing.T) {
	manners := map[string]func(string) string{
		"as it is":      func(s string) string { return s },
		"no last line":  func(s string) string { return strings.TrimRight(s, "\n") },
		"mark and CRLF": func(s string) string { return "\xef\xbb\xbf" + strings.ReplaceAll(s, "\n", "\r\n") },
	}
	lists := regexp.MustCompile(`(?m)^cautions *= *\[[^\n]*\n`)
	written := 0
	for name, text := range manyPlans(t) {
		for how, manner := range manners {
			old := []byte(manner(lists.ReplaceAllString(text, "")))
			src, faults := diag.NewSource("plan.toml", old)
			got, n, err := build.AddCautions(build.Request{Source: src, Faults: faults})
			switch {
			case err != nil:
				t.Errorf("%s, %s: %v", name, how, err)
			case n == 0:
			case !without(got, old):
				t.Errorf("%s, %s: more than the cautions changed", name, how)
			case strings.Contains(how, "CRLF") && bytes.Count(got, []byte("\n")) != bytes.Count(got, []byte("\r\n")):
				t.Errorf("%s, %s: line ends are mixed", name, how)
			}
			written += n
		}
	}
	if written < 100 {
		t.Errorf("only %d cautions were written: the test shows little", written)
	}
}

// manyPlans are the samples and the plans of other trades that the linter is
// tried on.
func manyPlans(t *testing.T) map[string]string {
	t.Helper()
	plans := map[string]string{}
	for _, name := range samples.Names() {
		text, _ := samples.Plan(name)
		plans[name] = string(text)
	}
	files, err := filepath.Glob("../../../plan/lint/testdata/clean/*.toml")
	if err != nil || len(files) < 30 {
		t.Fatal(len(files), err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		plans[filepath.Base(f)] = string(text)
	}
	return plans
}

// without holds where the old bytes stand in the new in their order.
func without(got, old []byte) bool {
	for _, c := range got {
		if len(old) > 0 && old[0] == c {
			old = old[1:]
		}
	}
	return len(old) == 0
}

// A step's caution may have its words in a used file; they are listed, and the
// file is not touched.
func TestAddCautionsWithUsedFile(t *testing.T) {
	const plan = "use = [\"shop.toml\"]\n[video]\ntitle = \"Oven\"\nsubject = \"mains-powered oven\"\n[[step]]\ntitle = \"Back off\"\ndo = \"undo the back panel of the oven and pull the wires off the element\"\nsay = \"The panel comes off.\"\n"
	files := fstest.MapFS{"shop.toml": {Data: []byte("caution = [{ id = \"mains-isolation\", hazard = \"mains-isolation\", say = \"Mains kills. Pull the plug first.\" }]\n")}}
	src, _ := diag.NewSource("plan.toml", []byte(plan))
	got, n, err := build.AddCautions(build.Request{Source: src, Files: files})
	if err != nil || n == 0 || !without(got, []byte(plan)) {
		t.Fatalf("%d written, %v\n%s", n, err, got)
	}
	if !strings.Contains(string(got), "\"mains-isolation\"") || strings.Contains(string(got), "A mains shock can kill") {
		t.Errorf("the words of the used file are written anew:\n%s", got)
	}
}
