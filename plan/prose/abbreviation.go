package prose

import "strings"

// abbreviation says what a full stop after a shortened word means for the end
// of a sentence.
type abbreviation int

const (
	plainWord    abbreviation = iota
	neverEnds                 // something always follows: "approx."
	mayEnd                    // ends a sentence before a capital: "etc."
	beforeNumber              // shortened before a number, else a word: "No. 4"
	unitShort                 // a unit after a number: "10 min."
)

// abbreviations are lower case and without their last stop.
var abbreviations = classed(map[abbreviation]string{
	neverEnds: `approx appr ca e.g eg i.e ie viz cf vs incl excl esp resp mr mrs ms dr prof dia diam adj temp
		std orig sim nom aux resist vers ver qty tel w.r.t st mt alt abbr misc`,
	mayEnd: `etc a.m p.m ltd inc co corp a.c d.c o.d i.d assy jr sr`,
	beforeNumber: `vol no nos nr fig figs p pp pg ch sect art para cl eq tab rev pt ref cat ser jan feb mar apr jun
		jul aug sep sept oct nov dec`,
	unitShort: `in ins ft yd yds mi oz lb lbs gal qt sq cu min mins max sec secs hr hrs deg pct wk wks yr yrs ga
		rpm v c pcs pc`,
})

func classed(lists map[abbreviation]string) map[string]abbreviation {
	all := make(map[string]abbreviation, 128)
	for class, list := range lists {
		for _, word := range strings.Fields(list) {
			all[word] = class
		}
	}
	return all
}

// openers are the words with which sentences begin.
var openers = set(strings.Fields(`the this that these those then there they if it it's its in i you your we our he she and but so
	or now next when where while once after before until as at on for with from to do don't never
	always no not yes check turn take put set use make keep what why how who which an all both each
	every some most here let let's that's remove undo pull push stop wait watch look also only still
	anything any`)...)
