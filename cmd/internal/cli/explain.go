package cli

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/lint"
	"fixslate/plan/prose"
)

type explainOptions struct {
	streams
	rule   string
	format choice
}

func newExplain(s streams) *cobra.Command {
	o := &explainOptions{streams: s, format: formats("text", "json")}
	cmd := &cobra.Command{
		Use:     "explain [RULE]",
		Short:   "print the page of a rule or fault, or the list of them",
		Example: "  fixslate explain\n  fixslate explain quote-unknown",
		Args:    takes(0, 1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 1 {
				o.rule = args[0]
			}
			return runExplain(o)
		},
	}
	o.format.flag(cmd)
	return cmd
}

// group is a list of rules under a heading.
type group struct {
	Name  string
	Rules []string
}

func groups() []group {
	all := []group{{"Faults: what stops a plan", plan.Faults()}}
	for _, r := range lint.Rules() {
		if last := &all[len(all)-1]; last.Name == r.Group.String() {
			last.Rules = append(last.Rules, r.Name)
			continue
		}
		all = append(all, group{r.Group.String(), []string{r.Name}})
	}
	files := slices.DeleteFunc(captions.Findings(), func(rule string) bool {
		return slices.ContainsFunc(lint.Rules(), func(r lint.Rule) bool { return r.Name == rule })
	})
	return append(all, group{"Caption files", files})
}

func runExplain(o *explainOptions) error {
	var pages []diag.Page
	for _, g := range groups() {
		for _, rule := range g.Rules {
			if p, ok := page(rule); ok && (o.rule == "" || o.rule == rule) {
				pages = append(pages, p)
			}
		}
	}
	if len(pages) == 0 {
		var rules []string
		for _, g := range groups() {
			rules = append(rules, g.Rules...)
		}
		return fmt.Errorf("there is no rule %q%s; fixslate explain lists them", o.rule, didYouMean(o.rule, rules))
	}
	w := o.paper()
	var err error
	switch {
	case o.format.word == "json":
		err = explainJSON(w, pages)
	case o.rule == "":
		for i, g := range groups() {
			if i > 0 {
				fmt.Fprintln(w)
			}
			fmt.Fprintf(w, "%s\n\n", g.Name)
			for _, rule := range g.Rules {
				p, _ := page(rule)
				indent := strings.Repeat(" ", 23)
				fmt.Fprintf(w, "  %-20s %s\n", rule, strings.ReplaceAll(wrap(p.Summary, w.columns-2-len(indent)), "\n", "\n"+indent))
			}
		}
	default:
		explainText(w, pages[0])
	}
	return w.done(err)
}

func explainText(w *paper, p diag.Page) {
	fmt.Fprintf(w, "%s\n\n%s\n", p.Rule, wrap(p.Summary, w.columns-2))
	for _, para := range strings.Split(p.Text, "\n\n") {
		if para != "" {
			fmt.Fprintf(w, "\n%s\n", wrap(prose.Plain(para, nil), w.columns-2))
		}
	}
	fmt.Fprintf(w, "\n%s\n", wrap("Source: "+p.Source, w.columns-2))
	inCaptions := ", as the edit's captions have it"
	if p.Right == "" {
		inCaptions = "" // the page of a caption file
	}
	examples := []struct{ title, code string }{
		{"Wrong", p.Wrong}, {"Wrong" + inCaptions, p.WrongEdit},
		{"Right", p.Right}, {"Right" + inCaptions, p.RightEdit},
	}
	for _, example := range examples {
		if example.code == "" {
			continue
		}
		fmt.Fprintf(w, "\n%s\n\n", example.title)
		for line := range strings.Lines(example.code) {
			fmt.Fprintf(w, "    %s", line)
		}
	}
}

func explainJSON(w *paper, pages []diag.Page) error {
	type entry struct {
		Rule    string `json:"rule"`
		Summary string `json:"summary"`
		Text    string `json:"text"`
		Source  string `json:"source"`
		Wrong   string `json:"wrong"`
		Right   string `json:"right"`

		WrongEdit string `json:"wrong_edit"`
		RightEdit string `json:"right_edit"`
	}
	entries := []entry{}
	for _, p := range pages {
		entries = append(entries, entry(p))
	}
	return diag.PrintJSON(w, map[string]any{"rules": entries})
}
