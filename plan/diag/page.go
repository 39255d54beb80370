package diag

import (
	"fmt"
	"io/fs"
	"path"
	"strings"
)

// Page is what `explain` prints of one rule or fault. It is written as a
// Markdown file that stands beside the rule:
//
//	# caution-missing
//
//	A hazard in a step, and no caution for it before the action.
//
//	Why it matters …
//
//	Source: …
//
//	## Wrong
//	```toml
//	…
//	```
//	## Right
//	```toml
//	…
//	```
type Page struct {
	Rule         string
	Summary      string // the first paragraph
	Text         string // what follows it, Markdown
	Source       string // what the rule rests on
	Wrong, Right string // TOML; Wrong is empty where no text can show it
	// The captions of a finished edit, as SRT, for the rules that read one:
	// a second block after the plan's, or the only one.
	WrongEdit, RightEdit string
}

// PageNames are the rules that have a page in a folder of embedded files, sorted.
func PageNames(files fs.FS, folder string) []string {
	paths, _ := fs.Glob(files, path.Join(folder, "*.md")) // the pattern is ours and good
	for i, name := range paths {
		paths[i] = strings.TrimSuffix(path.Base(name), ".md")
	}
	return paths
}

// PageNamed is the page of one rule in a folder of embedded files.
func PageNamed(files fs.FS, folder, rule string) (Page, bool) {
	text, err := fs.ReadFile(files, path.Join(folder, rule+".md"))
	if err != nil {
		return Page{}, false
	}
	page, err := ParsePage(string(text))
	return page, err == nil && page.Rule == rule
}

// ParsePage reads a page. Errors name what is missing: a page is part of the
// program, so they are for its tests.
func ParsePage(markdown string) (Page, error) {
	var p Page
	head, rest, _ := strings.Cut(strings.TrimSpace(markdown), "\n")
	name, ok := strings.CutPrefix(head, "# ")
	if !ok {
		return p, fmt.Errorf("a page begins with # and the rule's name, not %q", head)
	}
	p.Rule = strings.TrimSpace(name)
	body, examples, _ := strings.Cut(rest, "\n## ")
	var kept []string
	for _, para := range strings.Split(strings.TrimSpace(body), "\n\n") {
		para = strings.TrimSpace(para)
		switch {
		case strings.HasPrefix(para, "Source:"):
			p.Source = strings.TrimSpace(strings.TrimPrefix(para, "Source:"))
		case p.Summary == "":
			p.Summary = para
		default:
			kept = append(kept, para)
		}
	}
	p.Text = strings.Join(kept, "\n\n")
	for _, part := range strings.Split("\n"+examples, "\n## ") {
		title, block, _ := strings.Cut(strings.TrimSpace(part), "\n")
		switch strings.TrimSpace(title) {
		case "Wrong":
			p.Wrong, p.WrongEdit = fenced(block, "toml"), fenced(block, "srt")
		case "Right":
			p.Right, p.RightEdit = fenced(block, "toml"), fenced(block, "srt")
		}
	}
	switch {
	case p.Summary == "":
		return p, fmt.Errorf("page %s says nothing", p.Rule)
	case p.Source == "":
		return p, fmt.Errorf("page %s names no source", p.Rule)
	case p.Right == "" && p.RightEdit == "":
		return p, fmt.Errorf("page %s shows no right example", p.Rule)
	}
	return p, nil
}

// fenced is the first block of a language, empty for none.
func fenced(text, language string) string {
	_, code, _ := strings.Cut(text, "```"+language+"\n")
	code, _, _ = strings.Cut(code, "```")
	return code
}
