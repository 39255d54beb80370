package lint

import (
	"fmt"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/trade"
)

var driveUnknown = Rule{Name: "drive-unknown", Group: Truth, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Fasteners {
		f := &p.Plan.Fasteners[i]
		if f.Drive == "" || f.Drive == "?" {
			continue
		}
		path := row(plan.KindFastener, i, "drive")
		drives := p.drives[i]
		if len(drives) == 0 {
			report(Report{
				Message: fmt.Sprintf("%s: %q is no drive the tables know", f.What.Print, f.Drive),
				Hint:    `write a size or a name: "8 mm", "1/2 in", "T25", "PH2", "5 mm hex key", "slotted"`,
				Path:    path,
			})
			continue
		}
		if f.Thread == "" {
			unsold(f.What.Print, drives, path, report)
		}
		fits := p.fits[i]
		switch fits.Verdict {
		case trade.NoSuchSize:
			report(Report{
				Message: fmt.Sprintf("%s: no standard gives %s a drive of %s", f.What.Print, f.Thread, f.Drive),
				Hint:    usualSizes(f.Thread, fits),
				Path:    path,
			})
		case trade.OtherHead:
			report(Report{
				Message:  fmt.Sprintf("%s: %s on %s is a %s's, by %s", f.What.Print, f.Drive, f.Thread, fits.Head, fits.Standard),
				Hint:     usualSizes(f.Thread, fits),
				Path:     path,
				Severity: diag.Note,
			})
		}
	}
	for i := range p.Plan.Tools {
		t := &p.Plan.Tools[i]
		path := row(plan.KindTool, i, "drives")
		if !p.Spans.Has(path) {
			path = row(plan.KindTool, i, "name")
		}
		unsold(t.Name.Print, t.Drives, path, report)
	}
}}

// unsold names the sizes that no driver is sold in: slips of a finger.
func unsold(of string, drives []trade.Drive, path string, report func(Report)) {
	for _, d := range drives {
		if near, ok := d.Sold(); !ok {
			report(Report{
				Message: fmt.Sprintf("%s: no driver is sold in the size %s", of, d),
				Hint:    "write the size that is meant: " + sizes(near, " or "),
				Path:    path,
			})
		}
	}
}

// sizes are drives in one line.
func sizes(drives []trade.Drive, joint string) string {
	var all []string
	for _, d := range drives {
		all = append(all, d.String())
	}
	return strings.Join(all, joint)
}

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
	return fmt.Sprintf("usual for %s: %s; measure it, or check the thread (fixslate look thread %s)", thread, sizes(fit.Usual, ", "), thread)
}
