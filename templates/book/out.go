package book

import (
	"strconv"
	"strings"
)

// out is the page as it is written by the code that press makes of its
// templates.
type out struct{ page []byte }

// raw writes what is safe as it is: the template's own text, markup that was
// made safe before.
func (o *out) raw(text string) { o.page = append(o.page, text...) }

// text writes a text for an element or an attribute in quotes, as html/template
// escapes it.
func (o *out) text(text string) {
	from := 0
	for i := range len(text) {
		if safe := escaped[text[i]]; safe != "" {
			o.page = append(append(o.page, text[from:i]...), safe...)
			from = i + 1
		}
	}
	o.page = append(o.page, text[from:]...)
}

// escaped are the characters that markup is made of.
var escaped = [256]string{0: "\uFFFD", '"': "&#34;", '&': "&amp;", '\'': "&#39;", '+': "&#43;", '<': "&lt;", '>': "&gt;"}

// link writes a text for the end of a URL: all but letters, digits and "-._~" by
// their codes (RFC 3986, 2.3).
func (o *out) link(text string) {
	const hex = "0123456789abcdef"
	for i := range len(text) {
		b := text[i]
		if 'a' <= b && b <= 'z' || 'A' <= b && b <= 'Z' || '0' <= b && b <= '9' || strings.IndexByte("-._~", b) >= 0 {
			o.page = append(o.page, b)
		} else {
			o.page = append(o.page, '%', hex[b>>4], hex[b&15])
		}
	}
}

func (o *out) number(n int) { o.page = strconv.AppendInt(o.page, int64(n), 10) }
