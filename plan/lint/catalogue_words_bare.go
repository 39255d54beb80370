//go:build bare

package lint

// catalogueWords is missing while catalogue_words.go is written: an old one may
// not fit its type any more.
var catalogueWords wordTable
