package cli

import (
	"fmt"
	"slices"
	"strings"

	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/cmd/internal/build"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

// matchText prints a match but for its findings: steps by the plan's order,
// what is said twice or outside the plan, the terms proposed.
func matchText(w *paper, m *build.Matched) {
	p := m.Planned.Plan
	found, moved, missing := 0, 0, 0
	for _, s := range m.Match.Steps {
		switch s.Status {
		case align.Found:
			found++
		case align.Moved:
			moved++
		default:
			missing++
		}
	}
	paragraph(w, "", fmt.Sprintf("%s found in place, %d moved, %d missing; the edit runs %s, planned %s",
		prose.Counted(found, "step"), moved, missing, chapters.Stamp(m.Match.End), chapters.Stamp(m.Planned.Timeline.End)))
	fmt.Fprintln(w)
	if _, foreign := m.Match.Foreign(); foreign || found+moved == 0 {
		return // a table of what is not there would say nothing
	}
	fmt.Fprintf(w, "%7s %7s %5s  %s\n", "start", "end", "sure", "step")
	for _, s := range m.Match.Steps {
		start, end, status := chapters.Stamp(s.Start), chapters.Stamp(s.End), ""
		switch s.Status {
		case align.Missing:
			start, end, status = "–", "–", "missing: "
		case align.Moved:
			status = "moved: "
		}
		fmt.Fprintf(w, "%7s %7s %4d%%  %s%s\n", start, end, align.Percent(s.Confidence), status, clip(p.Steps[s.Index].Title.Print, w.columns-25-len(status)))
	}
	if len(m.Match.Repeats) > 0 {
		fmt.Fprintln(w, "\nsaid twice")
		for _, r := range m.Match.Repeats {
			stretch(w, r.Start, r.End, p.Steps[r.Index].Title.Print)
		}
	}
	added := slices.DeleteFunc(slices.Clone(m.Match.Added), align.Added.Slight)
	if len(added) > 0 {
		fmt.Fprintln(w, "\ntalk in no step")
		for _, a := range added {
			stretch(w, a.Start, a.End, strings.Join(strings.Fields(a.Text), " "))
		}
	}
	termsText(w, m)
	if len(m.Findings) > 0 {
		fmt.Fprintln(w)
	}
}

// stretch prints from where to where in the edit something is heard.
func stretch(w *paper, start, end float64, words string) {
	fmt.Fprintf(w, "%7s %7s  %s\n", chapters.Stamp(start), chapters.Stamp(end), clip(words, w.columns-18))
}

func termsText(w *paper, m *build.Matched) {
	if len(m.Match.Terms) == 0 {
		return
	}
	open := ""
	fmt.Fprintln(w, "\nwords that may be misheard")
	for i, t := range m.Match.Terms {
		state := ""
		if m.Accepted[i] {
			state = ", put in"
		} else if open == "" {
			open = t.Term
		}
		words := fmt.Sprintf("%q: perhaps %q%s", strings.Join(strings.Fields(t.Heard), " "), t.Term, state)
		fmt.Fprintf(w, "%7s %6d%%  %s\n", chapters.Stamp(t.Start), align.Percent(t.Confidence), clip(words, w.columns-18))
	}
	if open != "" {
		paragraph(w, "  ", fmt.Sprintf("to put them into captions/final.*: --accept all, or some: --accept %q", open))
	}
	snippet := m.Snippet()
	if snippet != "" {
		fmt.Fprintln(w, "  to have them known next time, in the plan:")
	}
	for line := range strings.Lines(snippet) {
		fmt.Fprintf(w, "    %s\n", diag.Visible(strings.TrimSuffix(line, "\n")))
	}
}
