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
const perhapsMax = 6

var cautionPerhaps = Rule{Name: "caution-perhaps", Group: Safety, Severity: diag.Note, Check: func(p *Pass) []Report {
	dangers := p.dangersIf(hazard.Missing, hazard.Hazard.Perhaps)
	if len(dangers) == 0 {
		return nil
	}
	slices.SortStableFunc(dangers, func(a, b danger) int { return cmp.Compare(b.Odds, a.Odds) })
	rest := ""
	if n := len(dangers) - perhapsMax; n > 0 {
		dangers, rest = dangers[:perhapsMax], fmt.Sprintf(" and %d more", n)
	}
	var named []string
	for _, d := range dangers {
		named = append(named, fmt.Sprintf("%s in %q", d.name(), p.Plan.Steps[d.step].Title.Print))
	}
	return []Report{{
		Path:    "video.title",
		Message: "by the words of the plan there may also be " + strings.Join(named, ", ") + rest + ", and no caution comes before",
		Hint:    "fixslate risks shows which words say so; add the cautions that are due",
	}}
}}
