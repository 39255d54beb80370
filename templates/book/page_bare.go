//go:build bare

package book

// book is missing while page.go is written: an old one may not fit the view any
// more.
func (o *out) book(*view) {}
