package prose

import (
	"bytes"
	"html"
	"testing"
	"unicode"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
)

// Literal text comes out of a Markdown reader of others as it went in, and
// carries no stroke that it does not need.
func TestLiteral(t *testing.T) {
	md := goldmark.New(goldmark.WithExtensions(extension.GFM))
	for text, want := range map[string]string{
		"0.5 L of petrol":      "0.5 L of petrol",
		"23. insert":           `23\. insert`,
		"7)":                   `7\)`,
		"12.":                  `12\.`,
		"5.x":                  "5.x",
		"# no heading":         `\# no heading`,
		"- no list":            `\- no list`,
		"a *b* _c_ `d` [e](f)": "a \\*b\\* \\_c\\_ \\`d\\` \\[e\\](f)",
		"a & b; &amp; c":       `a \& b; \&amp; c`,
		"a\n# b":               "a # b",
	} {
		got := Literal(text)
		if got != want {
			t.Errorf("%q: %q, not %q", text, got, want)
		}
		var b bytes.Buffer
		if err := md.Convert([]byte(got), &b); err != nil {
			t.Fatal(err)
		}
		plain := html.EscapeString(oneLine(text))
		if out := b.String(); out != "<p>"+plain+"</p>\n" {
			t.Errorf("%q reads as %q", text, out)
		}
	}
}

func oneLine(text string) string { return string(bytes.Join(bytes.Fields([]byte(text)), []byte(" "))) }

// Harmful names its ranges itself: they are those of unicode's tables.
func TestHarmful(t *testing.T) {
	for r := range unicode.MaxRune {
		if want := unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r); Harmful(r) != want {
			t.Errorf("Harmful(%U) is %v", r, !want)
		}
	}
}
