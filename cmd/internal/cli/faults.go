package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"fixslate/cmd/internal/build"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/diagnose"
	"fixslate/templates/picture"
)

func newFaults(s streams) *cobra.Command {
	return printing(s, &cobra.Command{
		Use:   "faults PLAN",
		Short: "find the best order of tests",
		Long: `Faults finds the order of the plan's tests that leads to the fault in the least
time on average, and says which causes no test tells apart. It takes one fault
to be present, and knows nothing of safety: cautions, the maker's instructions
and the steps that make the work safe come before any order of time.`,
		Example: "  fixslate faults washer.toml\n  fixslate faults washer.toml --format svg > faults.svg",
	},
		product{"text", func(w *paper, c *build.Compiled) error { faultsText(w, c.Plan, c.Tests); return nil }},
		product{"json", func(w *paper, c *build.Compiled) error { return faultsJSON(w, c.Tests) }},
		product{"svg", faultsSVG})
}

func faultsSVG(w *paper, c *build.Compiled) error {
	return draw(w, c, picture.File(picture.Tests(c.Plan, c.Tests)...), noOrder(c.Plan))
}

// noOrder says why there is no order of tests.
func noOrder(p *plan.Plan) string {
	switch {
	case len(p.Causes) == 0:
		return "the plan names no cause; [[cause]] says what could be wrong"
	case len(p.Tests) == 0:
		return "the plan has no test; [[test]] tells the causes apart"
	case len(p.Causes) == 1:
		return "the plan names one cause, so there is nothing to tell apart"
	}
	return "no test tells the causes apart; the test's \"checks\" names those that a bad reading means"
}

func faultsText(w *paper, p *plan.Plan, all diagnose.Result) {
	results := all.Versions
	if len(results) == 0 {
		results = []diagnose.Result{all}
	}
	for i, r := range results {
		if i > 0 {
			fmt.Fprintln(w)
		}
		if name := picture.VersionName(p, r); name != "" {
			paragraph(w, "", name)
		}
		flow := picture.Flow(p, r)
		if len(flow) == 0 {
			paragraph(w, "", noOrder(p))
		} else {
			paragraph(w, "", picture.Summary(r))
		}
		for _, t := range flow {
			testText(w, t)
		}
		for j, note := range picture.Notes(p, r) {
			if j == 0 {
				fmt.Fprintln(w)
			}
			paragraph(w, "", note)
		}
	}
}

func testText(w *paper, t *picture.Test) {
	fmt.Fprintln(w)
	paragraph(w, fmt.Sprintf("%2d  ", t.Number), fmt.Sprintf("%s (%s)", t.Question, t.Detail))
	for _, way := range t.Ways {
		words := way.Seen
		if way.Chance != "" {
			words += ", " + way.Chance
		}
		if way.Next != nil {
			paragraph(w, "      ", fmt.Sprintf("%s: go on with %d", words, way.Next.Number))
			continue
		}
		paragraph(w, "      ", words+": "+way.Found)
		paragraph(w, "          ", way.Then)
	}
}

func faultsJSON(w *paper, all diagnose.Result) error {
	type deadEnd struct {
		Test    string   `json:"test"`
		Outcome string   `json:"outcome"`
		Causes  []string `json:"causes"`
	}
	type result struct {
		Variant  string     `json:"variant"`
		Order    []string   `json:"order"`
		Minutes  float64    `json:"expected_minutes"`
		Exact    bool       `json:"exact"`
		Written  float64    `json:"story_order_minutes"`
		Unknown  float64    `json:"unknown_share"`
		Same     [][]string `json:"same"`
		Nothing  []string   `json:"tells_nothing"`
		Untested []string   `json:"untested"`
		DeadEnds []deadEnd  `json:"dead_ends"`
	}
	of := func(r diagnose.Result) result {
		out := result{
			r.Variant, some(r.Order), r.Minutes, r.Exact, r.AsWritten, r.Unknown, some(r.Same),
			some(r.TellsNothing), some(r.Untested), []deadEnd{},
		}
		for _, d := range r.DeadEnds {
			if !d.Last && !d.Closing {
				out.DeadEnds = append(out.DeadEnds, deadEnd{d.Test, d.Outcome, some(d.Causes)})
			}
		}
		return out
	}
	out := struct {
		result
		Versions []result `json:"versions"`
	}{of(all), []result{}}
	for _, v := range all.Versions {
		out.Versions = append(out.Versions, of(v))
	}
	return diag.PrintJSON(w, out)
}
