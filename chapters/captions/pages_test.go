package captions

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// Every finding has a page with a source; its wrong example raises the finding,
// and its right one raises none at all.
func TestFindingPages(t *testing.T) {
	for _, name := range Findings() {
		page, ok := FindingPage(name)
		if !ok {
			t.Errorf("%s: no page, or it can't be read", name)
			continue
		}
		raised := func(example string) (rules []string) {
			f, found := Read([]byte(example), "example.srt")
			for _, one := range append(found, Check(f, Profiles()[0])...) {
				rules = append(rules, one.Rule)
			}
			return rules
		}
		if got := raised(page.WrongEdit); page.WrongEdit == "" || !slices.Contains(got, name) {
			t.Errorf("%s: the wrong example raises %v", name, got)
		}
		if got := raised(page.RightEdit); len(got) > 0 {
			t.Errorf("%s: the right example raises %v", name, got)
		}
	}
}

// What the code reports and what has a page are the same names.
func TestEveryFindingHasAPage(t *testing.T) {
	named := regexp.MustCompile(`"(caption-[a-z]+)"`)
	var reported []string
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range named.FindAllStringSubmatch(string(source), -1) {
			reported = append(reported, m[1])
		}
	}
	slices.Sort(reported)
	if reported = slices.Compact(reported); !slices.Equal(reported, Findings()) {
		t.Errorf("reported %v\npages    %v", reported, Findings())
	}
	if _, ok := FindingPage("caption-unheard-of"); ok {
		t.Error("a page for a finding that there is not")
	}
}
