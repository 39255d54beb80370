package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"fixslate/cmd/internal/build"
	"fixslate/plan/diag"
	"fixslate/plan/hazard"
	"fixslate/templates/sheet"
)

func newRisks(s streams) *cobra.Command {
	return printing(s, &cobra.Command{
		Use:   "risks PLAN",
		Short: "list what can hurt in each step, and what is done about it",
		Long: `Risks reads what can hurt in each step, and prints a job hazard sheet: the step,
its hazards with what shows them, whether the viewer is told in time, and then
the control of each hazard with gear, who may do the work, and source.

It finds what its words know, in English. It never proves that a plan is safe:
local law and code, the maker's instructions and licensed practice come first.`,
		Example: "  fixslate risks washer.toml",
	},
		product{"text", func(w *paper, c *build.Compiled) error {
			risksText(w, sheet.HazardsOf(c.Plan, c.Hazards, c.Findings))
			return nil
		}},
		product{"json", func(w *paper, c *build.Compiled) error { return risksJSON(w, c) }})
}

// risksText prints the sheet.
func risksText(w *paper, h sheet.Hazards) {
	paragraph(w, "", "what can hurt: "+h.Title)
	for _, words := range h.Head {
		fmt.Fprintln(w)
		paragraph(w, "", words)
	}
	for _, s := range h.Steps {
		fmt.Fprintln(w)
		paragraph(w, fmt.Sprintf("%2d  ", s.Number), s.Title)
		for _, r := range s.Rows {
			margined(w, "    "+r.Signal, r.Name+" ("+r.Class+")", 13)
			margined(w, "", "shown by "+r.Shown, 15)
			margined(w, "", "viewer: "+r.Told, 15)
			if r.Held != "" {
				margined(w, "", "in force: "+r.Held, 15)
			}
		}
		if len(s.Rows) == 0 {
			paragraph(w, "    ", "no word of this step shows a hazard")
		}
		for _, c := range s.Spoken {
			margined(w, "    says", c.Words+" ("+c.Caution+")", 13)
		}
		if len(s.Lasting) > 0 {
			paragraph(w, "    ", "spoken before, and it still holds: "+strings.Join(s.Lasting, "; "))
		}
		if len(s.Named) > 0 {
			paragraph(w, "    ", "named, not done here: "+strings.Join(s.Named, "; "))
		}
	}
	if len(h.Controls) > 0 {
		fmt.Fprintln(w, "\ncontrols")
	}
	for _, c := range h.Controls {
		fmt.Fprintln(w)
		paragraph(w, "    ", c.Name+" ("+c.Class+"), "+c.Signal+also(c.Stronger))
		paragraph(w, "      ", c.Text)
		for _, row := range [...][2]string{{"wear", c.Gear}, {"ready", c.Kit}, {"who", c.Who}, {"say it", c.When}, {"source", c.Source}} {
			if row[1] != "" {
				margined(w, "      "+row[0], row[1], 14)
			}
		}
	}
	if len(h.Aside) > 0 {
		fmt.Fprintln(w, "\nset aside by the author")
		for _, a := range h.Aside {
			paragraph(w, "    ", a.Waiver)
			for _, words := range a.Findings {
				paragraph(w, "      ", words)
			}
		}
	}
	if len(h.Idle) > 0 {
		fmt.Fprintln(w, "\nwaivers that set nothing aside")
		for _, words := range h.Idle {
			paragraph(w, "    ", words)
		}
	}
}

func also(words string) string {
	if words == "" {
		return ""
	}
	return "; " + words
}

func risksJSON(w *paper, c *build.Compiled) error {
	type place struct {
		Kind  string `json:"kind"`
		Words string `json:"words"`
		Path  string `json:"path"`
	}
	type row struct {
		Class    string   `json:"class"`
		Family   string   `json:"family"`
		Signal   string   `json:"signal"`
		Evidence string   `json:"evidence"`
		Places   []place  `json:"places"`
		Caution  string   `json:"caution"`
		Covered  bool     `json:"covered"`
		Cover    string   `json:"cover"`
		Answered []string `json:"answered_by"`
	}
	type step struct {
		ID       string `json:"id"`
		Title    string `json:"title"`
		Hazards  []row  `json:"hazards"`
		Mentions []row  `json:"mentions"`
	}
	rows := func(list []hazard.Hazard) []row {
		out := []row{}
		for _, h := range list {
			o := row{h.Class, h.Family, h.Signal.String(), h.Shown(), []place{}, h.Caution, h.Covered(), h.Cover.String(), some(h.Answered)}
			for _, e := range h.Evidence {
				o.Places = append(o.Places, place{e.Kind, e.Words, e.Path})
			}
			out = append(out, o)
		}
		return out
	}
	type waiver struct {
		Rule      string   `json:"rule"`
		At        string   `json:"at"`
		Why       string   `json:"why"`
		By        string   `json:"by"`
		SetsAside []string `json:"sets_aside"`
	}
	out := struct {
		Steps   []step   `json:"steps"`
		Waivers []waiver `json:"waivers"`
	}{[]step{}, []waiver{}}
	for i, w := range c.Plan.Waivers {
		row := waiver{w.Rule, w.At, w.Why, w.By, []string{}}
		for _, f := range c.Findings {
			if f.Waiver == i+1 && f.Waived != "" {
				row.SetsAside = append(row.SetsAside, f.Message)
			}
		}
		out.Waivers = append(out.Waivers, row)
	}
	for _, s := range c.Hazards.Steps {
		out.Steps = append(out.Steps, step{s.ID, s.Title, rows(s.Hazards), rows(s.Mentions)})
	}
	return diag.PrintJSON(w, out)
}
