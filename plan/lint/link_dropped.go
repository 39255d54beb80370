package lint

import (
	"fmt"
	"strings"

	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

var linkDropped = Rule{Name: "link-dropped", Group: Publish, Severity: diag.Warning, Check: func(p *Pass, report func(Report)) {
	look := func(path, text string, offset int) {
		if !strings.Contains(text, "]") {
			return
		}
		for _, r := range prose.Inline(text) {
			if r.Style&prose.Link == 0 || r.Link != "" {
				continue
			}
			report(Report{
				Message: fmt.Sprintf("the link of %q leads nowhere that can be printed, so only its words are left", r.Text),
				Hint:    `write its whole address: https://…, http://… or mailto:…`,
				Path:    path, Span: [2]int{offset + r.Start, offset + r.End},
			})
		}
	}
	for key, note := range map[string]plan.Note{"publish.footer": p.Plan.Publish.Footer, "publish.disclosure": p.Plan.Publish.Disclosure} {
		look(key, note.Source, 0)
	}
	for _, w := range p.texts {
		if published(w.Path) {
			look(w.Path, w.Source, w.Offset)
		}
	}
}}
