package lint

import (
	"fmt"
	"strings"
	"unicode"

	"fixslate/plan/diag"
)

var partNumberUnverified = Rule{Name: "part-number-unverified", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	var known map[string]bool // made when the first number is met
	for _, s := range p.said {
		for _, v := range s.Values {
			if strings.Trim(bareNumber(v.Part), "0") == "" || v.Quoted || len(s.Evidence) > 0 || !p.hasStandardPart() && standardName(v.Part, fold(s.line.Print)) {
				continue
			}
			if known == nil {
				known = p.knownNumbers()
			}
			if known[bareNumber(v.Part)] {
				continue
			}
			r := s.report(v.Start, v.End)
			r.Message = fmt.Sprintf("the part number %q stands in no [[part]] of the plan", s.printed(v))
			r.Hint = "declare the part with its number and source, and quote it: {id.number}"
			report(r)
		}
	}
}}

// bareNumber is a number without the marks between letters and digits.
func bareNumber(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, text)
}

// knownNumbers are the numbers of the plan's parts, and the names of parts and
// supplies, of the object, of its versions and of documents, word by word and two
// words together: a bearing is named by its number, and a model is no part.
func (p *Pass) knownNumbers() map[string]bool {
	known := map[string]bool{}
	v, shoot := &p.Plan.Video, &p.Plan.Shoot
	names := []string{v.Title.Print, v.Subject.Print, v.Fits.Print, shoot.Object.Print}
	for _, w := range p.Plan.Parts {
		known[bareNumber(w.Number)], known[bareNumber(w.Replaces.Print)] = true, true
		names = append(names, w.Name.Print)
	}
	for i := range p.Plan.Supplies {
		names = append(names, p.Plan.Supplies[i].Name.Print)
	}
	for i := range p.Plan.Variants {
		names = append(names, p.Plan.Variants[i].Name.Print, p.Plan.Variants[i].Tell.Print)
	}
	for i := range p.Plan.Sources {
		names = append(names, p.Plan.Sources[i].Title.Print)
	}
	for _, name := range names {
		before := ""
		for w := range strings.FieldsSeq(name) {
			word := bareNumber(w)
			known[word], known[before+word] = true, true
			before = word
		}
	}
	return known
}
