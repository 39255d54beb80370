package prose

import (
	"encoding/json"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

func TestInline(t *testing.T) {
	run := func(text string, start, end int, style Style) Run {
		return Run{Text: text, Span: Span{start, end}, Style: style}
	}
	for md, want := range map[string][]Run{
		"":                       nil,
		"plain words":            {run("plain words", 0, 11, 0)},
		"1. Undo":                {run("1. Undo", 0, 7, 0)},
		"# 4":                    {run("# 4", 0, 3, 0)},
		"- x\n> y *z*":           {run("- x\n> y ", 0, 8, 0), run("z", 9, 10, Emphasis)},
		"a *b* c":                {run("a ", 0, 2, 0), run("b", 3, 4, Emphasis), run(" c", 5, 7, 0)},
		"**a**\n*b*":             {run("a", 2, 3, Strong), run("\n", 5, 6, 0), run("b", 7, 8, Emphasis)},
		"***a***":                {run("a", 3, 4, Emphasis|Strong)},
		"5 * 3 * 2 and a _ b _":  {run("5 * 3 * 2 and a _ b _", 0, 21, 0)},
		"say {wire.from_pin} on": {run("say {wire.from_pin} on", 0, 22, 0)},
		"{a.b_c} *{d.e_f}*":      {run("{a.b_c} ", 0, 8, 0), run("{d.e_f}", 9, 16, Emphasis)},
		`5 \* 3`:                 {run("5 ", 0, 2, 0), run("*", 2, 4, Escape), run(" 3", 4, 6, 0)},
		"a &amp; b":              {run("a ", 0, 2, 0), run("&", 2, 7, Escape), run(" b", 7, 9, 0)},
		"&#937; &nope; & &#0;":   {run("Ω", 0, 6, Escape), run(" &nope; & ", 6, 16, 0), run("\uFFFD", 16, 20, Escape)},
		"&#0065;&#x41;":          {run("A", 0, 7, Escape), run("A", 7, 13, Escape)},
		"`a*b` c":                {run("a*b", 1, 4, Code), run(" c", 5, 7, 0)},
		"`` a` ``":               {run("a`", 3, 5, Code)},
		"<b>x</b> *y*":           {run("<b>x</b> ", 0, 9, 0), run("y", 10, 11, Emphasis)},
		"![alt *x*](i.png)":      {run("alt ", 2, 6, 0), run("x", 7, 8, Emphasis)},
		"  *a*  ":                {run("  ", 0, 2, 0), run("a", 3, 4, Emphasis), run("  ", 5, 7, 0)},
		"a\\\n*b*":               {run("a", 0, 1, 0), run("\n", 1, 3, Escape), run("b", 4, 5, Emphasis)},
		"a  \n  *b*\n\n*c*":      {run("a  \n  ", 0, 6, 0), run("b", 7, 8, Emphasis), run("\n\n", 9, 11, 0), run("c", 12, 13, Emphasis)},
		"*a\n\nb*":               {run("*a\n\nb*", 0, 6, 0)},
		"*a\n b*":                {run("a\n b", 1, 5, Emphasis)},
		"[a](https://x.example/?q=1&r=2) b": {
			{Text: "a", Span: Span{1, 2}, Style: Link, Link: "https://x.example/?q=1&r=2"}, run(" b", 31, 33, 0)},
		"[a](javascript:x)":                         {run("a", 1, 2, Link)},
		"<https://x.example>":                       {{Text: "https://x.example", Span: Span{1, 18}, Style: Link, Link: "https://x.example"}},
		"<me@x.example> z":                          {{Text: "me@x.example", Span: Span{1, 13}, Style: Link, Link: "mailto:me@x.example"}, run(" z", 14, 16, 0)},
		"[x]: https://a.example *b*":                {run("[x]: https://a.example ", 0, 23, 0), run("b", 24, 25, Emphasis)},
		strings.Repeat("*", MaxMarkdown) + "a*b* c": {run(strings.Repeat("*", MaxMarkdown)+"a*b* c", 0, MaxMarkdown+6, 0)},
	} {
		if diff := cmp.Diff(want, Inline(md)); diff != "" {
			t.Errorf("%.60q:\n%s", md, diff)
		}
	}
}

func TestPlain(t *testing.T) {
	upper := strings.ToUpper
	for _, c := range []struct {
		md, want string
		fill     func(string) string
	}{
		{"", "", nil},
		{"one\ntwo\n\nthree", "one two\n\nthree", nil},
		{"a *b* \\* &amp; `c`", "a b * & c", nil},
		{"a  \nb\\\nc", "a\nb\nc", nil},
		{"# Head\ntext", "Head\n\ntext", nil},
		{"* a\n* b\n  1. c\n  2. d\n\nend", "- a\n- b\n  1. c\n  2. d\n\nend", nil},
		{"7. a\n8. b", "7. a\n8. b", nil},
		{"- a\n\n- b", "- a\n\n- b", nil},
		{"> quoted\n> on\n>\n> more", "> quoted on\n>\n> more", nil},
		{"```\na  *b*\n\nc\n```", "a  *b*\n\nc", nil},
		{"    indented\n    lines", "indented lines", nil},
		{"see [the sheet](https://x.example/a) now", "see the sheet (https://x.example/a) now", nil},
		{"<https://x.example/a> [b](nope:x)", "https://x.example/a b", nil},
		{"<b>bold</b>", "<b>bold</b>", nil},
		{"x *{a_b}* `{c}`", "X {A_B} {C}", upper},
		{`\{x\}`, "{X}", upper}, // the braces are not handed on
		{"*q*", "*a* <b>", func(string) string { return "*a* <b>" }},
		{"- \n- b", "-\n- b", nil},
	} {
		if got := Plain(c.md, c.fill); got != c.want {
			t.Errorf("%q: %q, want %q", c.md, got, c.want)
		}
	}
	seen := []string{}
	Plain(`say {w.from_pin} \* then *{x}*`, func(s string) string { seen = append(seen, s); return s })
	if diff := cmp.Diff([]string{"say {w.from_pin} ", " then ", "{x}"}, seen); diff != "" {
		t.Error(diff)
	}
}

func TestHTML(t *testing.T) {
	for md, want := range map[string]string{
		"a *b* **c** `d`":                      "<p>a <em>b</em> <strong>c</strong> <code>d</code></p>\n",
		"**a *b***":                            "<p><strong>a <em>b</em></strong></p>\n",
		"# H\n\n- a\n- b":                      "<h1>H</h1>\n<ul>\n<li>a</li>\n<li>b</li>\n</ul>\n",
		"3. a\n4. b":                           "<ol start=\"3\">\n<li>a</li>\n<li>b</li>\n</ol>\n",
		"> q":                                  "<blockquote>\n<p>q</p>\n</blockquote>\n",
		"```js\n<x>\n```":                      "<pre><code>&lt;x&gt;\n</code></pre>\n",
		"a  \nb":                               "<p>a<br>\nb</p>\n",
		"***":                                  "<hr>\n",
		"<script>x</script>":                   "<p>&lt;script&gt;x&lt;/script&gt;</p>\n",
		"a <img src=x onerror=y>":              "<p>a &lt;img src=x onerror=y&gt;</p>\n",
		"![alt](https://x.example/i.png)":      "<p>alt</p>\n",
		"[a](https://x.example \"t\")":         "<p><a href=\"https://x.example\">a</a></p>\n",
		"[a](HTTP://x.example)":                "<p><a href=\"HTTP://x.example\">a</a></p>\n",
		"[a](mailto:b@x.example)":              "<p><a href=\"mailto:b@x.example\">a</a></p>\n",
		"[a](#b)":                              "<p><a href=\"#b\">a</a></p>\n",
		"[a](javascript:b) [c](//d) [e](../f)": "<p>a c e</p>\n",
		"[a](JaVaScRiPt&colon;b)":              "<p>a</p>\n",
		"[a](&#x6A;avascript:b)":               "<p>a</p>\n",
		"[a](data:image/png;base64,x)":         "<p>a</p>\n",
		"[a](feed:javascript:b) [c](blob:d)":   "<p>a c</p>\n",
		"[a](https://x.example/\"><b>)":        "<p><a href=\"https://x.example/%22%3E%3Cb%3E\">a</a></p>\n",
		"[a]\n\n[a]: javascript:b":             "<p>a</p>\n",
		"[a]\n\n[a]: https://x.example":        "<p><a href=\"https://x.example\">a</a></p>\n",
		"<javascript:alert(1)>":                "<p>javascript:alert(1)</p>\n",
		"&lt;b&gt; &quot;":                     "<p>&lt;b&gt; &#34;</p>\n",
		"a\x00b\x1b[1m\xff":                    "<p>a\uFFFDb\uFFFD[1m\uFFFD</p>\n",
		"    indented":                         "<p>indented</p>\n",
	} {
		if got := HTML(md, nil); got != want {
			t.Errorf("%q:\n got %q\nwant %q", md, got, want)
		}
	}
	if got := HTML("*x*", func(string) string { return "<i>*y*" }); got != "<p><em>&lt;i&gt;*y*</em></p>\n" {
		t.Errorf("a filled value is read as markup: %q", got)
	}
	long := strings.Repeat("[a](", MaxMarkdown/4) + "x\n\n<b>"
	if got := HTML(long, nil); !strings.HasSuffix(got, "x</p>\n<p>&lt;b&gt;</p>\n") {
		t.Errorf("a long text is not given as plain paragraphs: …%q", got[len(got)-60:])
	}
}

// TestCommonMark compares HTML with the examples of the CommonMark
// specification (spec.json, CommonMark 0.31, as goldmark carries it), except
// for those that use what Markdown of a plan leaves out.
func TestCommonMark(t *testing.T) {
	dir, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/yuin/goldmark").Output()
	if err != nil {
		t.Skip("go list failed: the examples of the CommonMark specification were not run")
	}
	file, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(dir)), "_test", "spec.json"))
	if err != nil {
		t.Skip("goldmark's source holds no spec.json: the examples of the CommonMark specification were not run")
	}
	var examples []struct {
		Markdown, HTML, Section string
		Example                 int
	}
	if err := json.Unmarshal(file, &examples); err != nil {
		t.Fatal(err)
	}
	left := regexp.MustCompile(`<|!\[|(?m)^ {4}|^> {5}`)                                 // raw HTML, autolinks, images, indented code
	relative := regexp.MustCompile(`<a href="([^hm#]|http:[^/]|heading|hello|made|my_)`) // links that lead elsewhere
	run, failed := 0, 0
	for _, e := range examples {
		switch e.Section {
		case "HTML blocks", "Raw HTML", "Indented code blocks", "Images", "Tabs":
			continue
		}
		if left.MatchString(e.Markdown) || relative.MatchString(e.HTML) {
			continue
		}
		run++
		if got := HTML(e.Markdown, nil); flat(got) != flat(e.HTML) {
			failed++
			t.Errorf("example %d (%s) %q:\n got %q\nwant %q", e.Example, e.Section, e.Markdown, got, e.HTML)
		}
	}
	t.Logf("%d of %d examples run, %d differ", run, len(examples), failed)
}

// flat writes a page in a form in which the order and depth of inline elements
// does not count: each piece of text with the set of styles around it.
func flat(page string) string {
	var b strings.Builder
	depth := map[string]int{}
	style := func() (s string) {
		for _, tag := range []string{"code", "em", "strong"} {
			if depth[tag] > 0 {
				s += tag
			}
		}
		return s
	}
	before := ""
	page = regexp.MustCompile(` title="[^"]*"| class="[^"]*"| /`).ReplaceAllString(page, "")
	for _, piece := range regexp.MustCompile(`<[^>]*>|[^<]+`).FindAllString(page, -1) {
		name := strings.Trim(piece, "</>")
		switch {
		case name == "em" || name == "strong" || name == "code":
			if strings.HasPrefix(piece, "</") {
				depth[name]--
			} else {
				depth[name]++
			}
		case piece[0] == '<':
			b.WriteString(piece)
			before = ""
		default:
			if now := style(); now != before {
				b.WriteString("{" + now + "}")
				before = now
			}
			b.WriteString(strings.ReplaceAll(html.UnescapeString(piece), "\n", " "))
		}
	}
	return b.String()
}

var tagPattern = regexp.MustCompile(`<[^>]*>?`)

// allowedTag matches every tag HTML may write, whole.
var allowedTag = regexp.MustCompile(`^<(/?(p|h[1-6]|ul|ol|li|blockquote|pre|code|em|strong)|br|hr|/a|ol start="[0-9]+"|a href="((?i:https?://|mailto:)|#)[^"<>]*")>$`)

func FuzzMarkdown(f *testing.F) {
	for _, s := range []string{"", "*a*", "1. a\n2. b", "[a](b)", "`x`", "&amp;", "> - 1. x", "<b>", "![a](b)", "a  \nb", "\\*", "[a]: b\n[a]", "\xff*a*", "***a** b*", "- \n-", "<a@b.c>", "\tx\n\ty"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, md string) {
		last := 0
		for _, r := range Inline(md) {
			if r.Start < last || r.End <= r.Start || r.End > len(md) {
				t.Fatalf("run %+v after %d in %d bytes", r, last, len(md))
			}
			if r.Style&Escape == 0 && r.Text != md[r.Start:r.End] {
				t.Fatalf("run %+v stands for %q", r, md[r.Start:r.End])
			}
			if utf8.ValidString(md) && !utf8.ValidString(r.Text) {
				t.Fatalf("run %+v cuts a rune", r)
			}
			last = r.End
		}
		Plain(md, nil)
		out := HTML(md, func(s string) string { return s + `<b a="'>` })
		for _, tag := range tagPattern.FindAllString(out, -1) {
			if !allowedTag.MatchString(tag) {
				t.Fatalf("%q in %q", tag, out)
			}
		}
	})
}

func BenchmarkMarkdown(b *testing.B) {
	for name, md := range map[string]string{
		"Plain":    strings.Repeat("Turn the impeller with a finger. ", 20),
		"Emphasis": strings.Repeat("Turn the *impeller* with a `finger`. ", 20),
		"Brackets": strings.Repeat("[a](", MaxMarkdown/4),
		"Quotes":   strings.Repeat(">", MaxMarkdown),
	} {
		b.Run(name, func(b *testing.B) {
			b.SetBytes(int64(len(md)))
			for b.Loop() {
				HTML(md, nil)
			}
		})
		b.Run(name+"Inline", func(b *testing.B) {
			b.SetBytes(int64(len(md)))
			for b.Loop() {
				Inline(md)
			}
		})
	}
}
