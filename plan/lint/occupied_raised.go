package lint

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"fixslate/plan/diag"
	"fixslate/plan/hazard/class"
)

var occupiedRaised = Rule{Name: "occupied-raised", Group: Safety, Severity: diag.Error, Check: func(p *Pass, report func(Report)) {
	told := p.raisedByWords()
	for i := range p.Plan.Steps {
		s := &p.Plan.Steps[i]
		if (!p.inForce(i, "raised") || p.inForce(i, "on-stands")) && !told[i] {
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
			if path == "" && (says(p.words[i], goingUnder...) || told[i]) {
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

// raisedByWords are the steps of a plan that declares no raised state in which
// somebody goes under what was jacked up, with no stands named before that.
func (p *Pass) raisedByWords() map[int]bool {
	under := map[int]bool{}
	up := false
	for i := range p.Plan.Steps {
		if slices.ContainsFunc(p.Plan.Steps[i].Starts, isRaised) || slices.ContainsFunc(p.Plan.Steps[i].During, isRaised) {
			return nil
		}
		for sentence := range strings.SplitSeq(p.words[i], " . ") {
			if !up && !strings.Contains(sentence, "jack") && !strings.Contains(sentence, "rais") && !strings.Contains(sentence, "lift") {
				continue // what is not up nobody can go under
			}
			for _, act := range raisingActs().FindAllString(" "+sentence+" ", -1) {
				switch act = strings.TrimSpace(act); {
				case says(" "+act+" ", "stand", "stands", "ramps", "cribbing", "lower", "down"):
					up = false
				case strings.HasPrefix(act, "jack") || strings.HasPrefix(act, "raise") || strings.HasPrefix(act, "lift"):
					up = true
				case up:
					under[i] = true
				}
			}
		}
	}
	return under
}

func isRaised(state string) bool { return class.CanonicalState(state) == "raised" }

// raisingActs finds in folded words, in the order they are told, what is jacked up,
// what is set on stands or let down, and who goes under it.
var raisingActs = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\bjack (?:[^ .]+ ){0,4}up\b|\bjack(?:s|ed)? up\b|\b(?:raise|lift) (?:[^ .]+ ){1,4}(?:with|on) (?:[^ .]+ ){1,3}jack\b` +
		`|\b(?:axle |jack )?stands?\b|\bramps\b|\bcribbing\b|\blower\b|\blet (?:it|her|him|[^ .]+ [^ .]+) down\b` +
		`|\b(?:lie|crawl|slide|get|climb|roll|scoot|work|wriggle|go) (?:[^ .]+ ){0,3}(?:under|underneath|beneath)\b`)
})

var (
	inOrUnder  = []string{"seat", "in the car", "in the van", "inside", "in the cab", "at the wheel", "behind the wheel", "under", "underneath", "beneath", "pedal", "pedals"}
	goingUnder = []string{"get under", "slide under", "crawl under", "lie under", "slide underneath", "get underneath", "from underneath", "from below", "under the car", "under the van", "underneath the car", "underneath the van", "beneath it", "underneath it"}
)
