//go:build bare

package claim

// tables is missing while tables.go is written: an old one may not fit the
// lexicon's types any more.
var tables lexicon
