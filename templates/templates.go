// Package templates holds the texts of everything fixslate prints: the sheets,
// the shoot book, the description. Only embedded files; the packages below it
// fill them.
package templates

import "embed"

// Files are the templates: sheet/*.md.tmpl are Markdown, book/* the page, its
// style and its script, blurb/* the description and comment.
//
//go:embed sheet/*.tmpl
var Files embed.FS
