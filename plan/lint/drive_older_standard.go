package lint

import (
	"fmt"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var driveOlderStandard = Rule{Name: "drive-older-standard", Group: Truth, Severity: diag.Note, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Fasteners {
		f := &p.Plan.Fasteners[i]
		if fit := p.fits[i]; fit.Verdict == trade.FitsOlder {
			report(Report{
				Message: fmt.Sprintf("%s: %s on %s follows an older standard, %s", f.What.Print, f.Drive, f.Thread, fit.Standard),
				Hint:    "right on an older machine: tell viewers that a newer one may differ; " + usualSizes(f.Thread, fit),
				Path:    row(plan.KindFastener, i, "drive"),
			})
		}
	}
}}
