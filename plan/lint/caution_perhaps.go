package lint

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fixslate/plan/diag"
	"fixslate/plan/hazard"
)

// perhapsMax is how many steps caution-perhaps names.
const perhapsMax = 2

var cautionPerhaps = Rule{Name: "caution-perhaps", Group: Safety, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	dangers := p.dangersIf(hazard.Missing, func(h hazard.Hazard) bool { return h.Perhaps() })
	if len(dangers) == 0 {
		return
	}
	slices.SortStableFunc(dangers, func(a, b danger) int { return cmp.Compare(b.Odds, a.Odds) })
	var named []string
	for i, d := range dangers[:min(len(dangers), perhapsMax)] {
		where := fmt.Sprintf("%q", shorten(p.Plan.Steps[d.step].Title.Print))
		if i == 0 || d.Family != dangers[i-1].Family {
			where = d.name() + " in " + where
		}
		named = append(named, where)
	}
	if n := len(dangers) - perhapsMax; n > 0 {
		named = append(named, fmt.Sprintf("%d more", n))
	}
	report(Report{
		Path:    "video.title",
		Message: "no caution comes before what may be " + listed(named),
		Hint:    "fixslate risks shows the words that say so: add the cautions that are due",
	})
}}

// listed joins words as a sentence has them.
func listed(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}
