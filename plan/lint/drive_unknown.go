package lint

import (
	"fmt"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var driveUnknown = Rule{Name: "drive-unknown", Group: Truth, Severity: diag.Warning, Check: func(p *Pass) []Report {
	var found []Report
	for i := range p.Plan.Fasteners {
		f := &p.Plan.Fasteners[i]
		if f.Drive == "" || f.Drive == "?" {
			continue
		}
		path := row(plan.KindFastener, i, "drive")
		drives := p.drives[i]
		if len(drives) == 0 {
			found = append(found, Report{
				Message: fmt.Sprintf("%s: %q is no drive the tables know", f.What.Print, f.Drive),
				Hint:    `write a size or a name: "8 mm", "1/2 in", "T25", "PH2", "5 mm hex key", "slotted"`,
				Path:    path,
			})
			continue
		}
		fits := p.fits[i]
		switch fits.Verdict {
		case trade.NoSuchSize:
			found = append(found, Report{
				Message: fmt.Sprintf("%s: no standard gives %s a drive of %s", f.What.Print, f.Thread, f.Drive),
				Hint:    usualSizes(f.Thread, fits),
				Path:    path,
			})
		case trade.OtherHead:
			found = append(found, Report{
				Message:  fmt.Sprintf("%s: %s on %s is a %s's, by %s", f.What.Print, f.Drive, f.Thread, fits.Head, fits.Standard),
				Hint:     usualSizes(f.Thread, fits),
				Path:     path,
				Severity: diag.Note,
			})
		}
	}
	return found
}}

// fitsOf is the best answer of the tables for a head that several drives turn.
func fitsOf(f *plan.Fastener, drives []trade.Drive) trade.Fit {
	var best trade.Fit
	if trade.Special(f.What.Print) {
		return best
	}
	for i, d := range drives {
		fit := trade.DriveFits(f.Thread, f.Head, d)
		if i == 0 || fit.Verdict < best.Verdict {
			best = fit
		}
	}
	return best
}

// usualSizes says which sizes a thread has by the standards in force.
func usualSizes(thread string, fit trade.Fit) string {
	if len(fit.Usual) == 0 {
		return "measure it, or check the thread"
	}
	var sizes []string
	for _, d := range fit.Usual {
		sizes = append(sizes, d.String())
	}
	return fmt.Sprintf("usual for %s: %s; measure it, or check the thread (fixslate look thread %s)", thread, strings.Join(sizes, ", "), thread)
}
