package lint

import (
	"fmt"

	"fixslate/plan/diag"
)

var occupiedRaised = Rule{Name: "occupied-raised", Group: Safety, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if !p.inForce(i, "raised") || p.inForce(i, "on-stands") {
			continue
		}
		path, who := "", ""
		switch {
		case p.inForce(i, "under"):
			path, who = stepPath(i, "during"), "somebody is under it"
		default:
			for j, c := range s.Cues {
				if says(fold(c.Where.Print+" . "+c.Does.Print), inOrUnder...) {
					path, who = stepPath(i, fmt.Sprintf("cue[%d].where", j)), c.Who+" is in it or under it"
				}
			}
			if path == "" && says(p.words[i], goingUnder...) {
				path, who = stepPath(i, "say"), "somebody goes under it"
			}
		}
		if path == "" {
			continue
		}
		report(Report{
			Message: fmt.Sprintf("in step %q the object is raised without stands, and %s", s.Title.Print, who),
			Hint:    `nobody in or under it until it stands on rated stands: starts = ["on-stands"] before this`,
			Path:    path, Families: []string{"raised-load"},
		})
	}
}}

var (
	inOrUnder  = []string{"seat", "in the car", "in the van", "inside", "in the cab", "at the wheel", "behind the wheel", "under", "underneath", "beneath", "pedal", "pedals"}
	goingUnder = []string{"get under", "slide under", "crawl under", "lie under", "slide underneath", "get underneath", "from underneath", "from below", "under the car", "under the van", "underneath the car", "underneath the van", "beneath it", "underneath it"}
)
