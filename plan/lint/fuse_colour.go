package lint

import (
	"cmp"
	"fmt"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var fuseColour = Rule{Name: "fuse-colour", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Fuses {
		f := &p.Plan.Fuses[i]
		amps, known := f.Rating.Exactly(trade.Ampere)
		if f.Colour == "" || f.Colour == "?" || !known {
			continue
		}
		table, ok := trade.FuseColour(f.Form, amps)
		if !ok || table.Weak || table.Is(f.Colour) {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("%s: a %s fuse of %s is %s, not %s", cmp.Or(f.At.Print, "fuse"), table.Form, f.Rating, table.Colour, f.Colour),
			Hint:    otherFuse(f.Colour, table.Form),
			Path:    row(plan.KindFuse, i, "colour"),
		})
	}
}}

// otherFuse says which fuse of the form has the colour.
func otherFuse(colour, form string) string {
	for _, f := range trade.FusesOf(colour) {
		if f.Form == form {
			return fmt.Sprintf("%s is %g A; check the rating, the colour and the form (fixslate look fuse %s)", colour, f.Amps, strings.ReplaceAll(colour, " ", "-"))
		}
	}
	return "check the rating, the colour and the form (fixslate look fuse)"
}
