package book

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"fixslate/plan/diag"
	"fixslate/samples"
)

// parsed is a page read by the HTML standard's own algorithm.
func parsed(t *testing.T, page []byte) []*html.Node {
	t.Helper()
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	return slices.Collect(root.Descendants())
}

func attribute(n *html.Node, key string) (string, bool) {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val, true
		}
	}
	return "", false
}

// labelled holds where a field stands inside its label.
func labelled(n *html.Node) bool {
	for a := range n.Ancestors() {
		if a.Data == "label" {
			return true
		}
	}
	return false
}

func text(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			b.WriteString(d.Data)
		}
	}
	return b.String()
}

// Every page has one main, one h1, no heading that skips a level, no id twice,
// a label for every field, no style or handler in an attribute, nothing to load.
func TestPageIsSound(t *testing.T) {
	for _, name := range samples.Names() {
		b := sample(t, name)
		count, ids, labels, level := map[string]int{}, map[string]int{}, map[string]bool{}, 0
		nodes := parsed(t, Page(b))
		for _, n := range nodes {
			if n.Type != html.ElementNode {
				continue
			}
			count[n.Data]++
			if id, ok := attribute(n, "id"); ok {
				ids[id]++
			}
			if of, ok := attribute(n, "for"); ok {
				labels[of] = true
			}
			if len(n.Data) == 2 && n.Data[0] == 'h' && '1' <= n.Data[1] && n.Data[1] <= '6' {
				if at := int(n.Data[1] - '0'); at > level+1 {
					t.Errorf("%s: %q is an %s after an h%d", name, text(n), n.Data, level)
				} else {
					level = at
				}
			}
			for _, a := range n.Attr {
				if a.Key == "style" || strings.HasPrefix(a.Key, "on") || a.Key == "src" || a.Key == "href" && !strings.HasPrefix(a.Val, "#") {
					t.Errorf("%s: <%s %s=%q>", name, n.Data, a.Key, a.Val)
				}
			}
		}
		for _, n := range nodes {
			if id, _ := attribute(n, "id"); slices.Contains([]string{"input", "select", "textarea"}, n.Data) && !labels[id] && !labelled(n) {
				t.Errorf("%s: <%s id=%q> has no label", name, n.Data, id)
			}
			for _, key := range []string{"aria-labelledby", "for", "href"} {
				if to, ok := attribute(n, key); ok && n.Type == html.ElementNode {
					for _, id := range strings.Fields(to) {
						if ids[strings.TrimPrefix(id, "#")] != 1 {
							t.Errorf("%s: %s=%q leads nowhere", name, key, id)
						}
					}
				}
			}
		}
		for _, one := range []string{"main", "nav", "header", "h1", "title"} {
			if got := count[one]; got != 1 && (one != "title" || got != 1+count["svg"]) { // each picture has a title too
				t.Errorf("%s: %d <%s>", name, got, one)
			}
		}
		for id, n := range ids {
			if n > 1 {
				t.Errorf("%s: id %q stands %d times", name, id, n)
			}
		}
		for _, s := range b.Shots {
			if ids["shot-"+s.ID] != 1 {
				t.Errorf("%s: shot %q stands %d times", name, s.ID, ids["shot-"+s.ID])
			}
		}
	}
}

// What a plan says in HTML stays words, in every field that reaches the page.
func TestPageOfAHostilePlan(t *testing.T) {
	const evil = `\"><img src=x onerror=a()><script>a()</script></style></textarea>${{a()}} \u2028\u202e\u001b]0;x\u0007`
	src := "[video]\nlanguage = \"en\\\" onload=\\\"a()\"\n"
	for _, key := range []string{"title", "subject", "fits", "symptom", "outcome", "audience"} {
		src += key + " = \"" + evil + "\"\n"
	}
	src += "[shoot]\nobject = \"" + evil + "\"\n[[step]]\nid = \"one\"\ntitle = \"" + evil + "\"\nsay = \"" + evil + "\"\ndo = \"" + evil + "\"\nnote = \"" + evil + "\"\nshot = [ { id = \"a\", of = \"" + evil + "\", card = \"" + evil + "\" } ]\n"
	b := bookOf(t, "hostile", []byte(src))
	b.Findings = append(b.Findings, diag.Finding{Rule: "r", Severity: diag.Error, Message: `"><script>a()</script>`, Waived: `<img src=x onerror=a()>`})
	page := Page(b)
	scripts := 0
	for _, n := range parsed(t, page) {
		if n.Type != html.ElementNode {
			continue
		}
		switch n.Data {
		case "script":
			scripts++
		case "img", "iframe", "object", "embed", "link", "base":
			t.Errorf("the plan made a <%s>", n.Data)
		}
		for _, a := range n.Attr {
			if strings.HasPrefix(a.Key, "on") || strings.HasPrefix(strings.ToLower(a.Val), "javascript:") {
				t.Errorf("the plan made %s=%q", a.Key, a.Val)
			}
		}
	}
	if scripts != 1 {
		t.Errorf("%d scripts", scripts)
	}
	if bad := regexp.MustCompile("[\x00-\x08\x0b-\x1f\x7f\u0080-\u009f\u202a-\u202e\u2066-\u2069]").Find(page); bad != nil {
		t.Errorf("%q stands raw in the page", bad)
	}
	if !bytes.Contains(page, []byte("[U+202E]")) || !bytes.Contains(page, []byte("&lt;script&gt;")) {
		t.Error("the plan's words are not there to be read")
	}
}

// A finding set aside is an exception with its reason; an open value is listed.
func TestPageSaysWhatIsOpenAndSetAside(t *testing.T) {
	b := sample(t, "van-blower")
	b.Findings = []diag.Finding{
		{Rule: "number-loose", Severity: diag.Warning, Message: "a number of nobody's"},
		{Rule: "always-never", Severity: diag.Note, Message: "an always", Waived: "it is always so"},
	}
	words := map[string]string{}
	for _, n := range parsed(t, Page(b)) {
		if by, ok := attribute(n, "aria-labelledby"); ok && n.Data == "section" {
			words[by] = text(n)
		}
	}
	open, excepted, _ := strings.Cut(words["findings"], "Exceptions")
	if !strings.Contains(open, "a number of nobody's") || strings.Contains(open, "an always") {
		t.Errorf("findings: %s", open)
	}
	if !strings.Contains(excepted, "an always") || !strings.Contains(excepted, "it is always so") {
		t.Errorf("exceptions: %s", excepted)
	}
	if len(b.Plan.Open) == 0 || !strings.Contains(words["open"], b.Plan.Open[0].What) {
		t.Errorf("to be found: %s", words["open"])
	}
}

// A correction stands in the book with the chapter that its time falls into.
func TestCorrectionsInTheBook(t *testing.T) {
	page := string(Page(bookOf(t, "corrected", []byte(`[video]
title = "T"
[[step]]
id = "a"
title = "First"
say = "Look at the pump."
on_screen = "40s"
[[step]]
id = "b"
title = "Second"
say = "Look at the hose."
on_screen = "40s"
[[correction]]
at = "0:50"
was = "5 N·m"
now = "3 N·m"
`))))
	if want := `<a href="#step-b">0:50 Second: not 5 N·m but 3 N·m</a>`; !strings.Contains(page, want) {
		t.Errorf("the book has no %s", want)
	}
}
