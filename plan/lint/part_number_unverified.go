package lint

import (
	"fmt"
	"strings"
	"unicode"

	"fixslate/plan/diag"
)

var partNumberUnverified = Rule{Name: "part-number-unverified", Group: Truth, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	for _, s := range p.said {
		for _, v := range s.Values {
			if v.Part == "" || v.Quoted || len(s.Evidence) > 0 || p.knownNumber(v.Part) {
				continue
			}
			r := s.report(v.Start, v.End)
			r.Message = fmt.Sprintf("the part number %q stands in no [[part]] of the plan", s.printed(v))
			r.Hint = "declare the part with its number and source, and quote it: {id.number}"
			found = append(found, r)
		}
	}
	return found
}}

// knownNumber holds where a part of the plan has the number, or where it is the
// name of the object, of a version or of a document: a model is no part. Marks
// between letters and digits don't count.
func (p *Pass) knownNumber(number string) bool {
	bare := func(text string) string {
		return strings.Map(func(r rune) rune {
			if unicode.IsLetter(r) || unicode.IsDigit(r) {
				return unicode.ToLower(r)
			}
			return -1
		}, text)
	}
	want := bare(number)
	for _, w := range p.Plan.Parts {
		if bare(w.Number) == want || bare(w.Replaces.Print) == want {
			return true
		}
	}
	v, shoot := &p.Plan.Video, &p.Plan.Shoot
	names := []string{v.Title.Print, v.Subject.Print, v.Fits.Print, shoot.Object.Print}
	for i := range p.Plan.Variants {
		names = append(names, p.Plan.Variants[i].Name.Print, p.Plan.Variants[i].Tell.Print)
	}
	for i := range p.Plan.Sources {
		names = append(names, p.Plan.Sources[i].Title.Print)
	}
	for _, name := range names {
		words := strings.Fields(name)
		for i, w := range words {
			if bare(w) == want || i > 0 && bare(words[i-1]+w) == want {
				return true
			}
		}
	}
	return false
}
