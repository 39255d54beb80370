package cli

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"fixslate/chapters"
	"fixslate/chapters/align"
	"fixslate/cmd/internal/build"
	"fixslate/plan/diag"
)

// columns is the width that text output keeps to.
const columns = 80

// matchText prints a match but for its findings: steps by the plan's order,
// what is said twice or outside the plan, the terms proposed.
func matchText(b *bytes.Buffer, m *build.Matched) {
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
	fmt.Fprintf(b, "%s found in place, %d moved, %d missing; the edit runs %s, planned %s\n\n",
		count(found, "step"), moved, missing, chapters.Stamp(m.Match.End), chapters.Stamp(m.Planned.Timeline.End))
	if _, foreign := m.Match.Foreign(); foreign || found+moved == 0 {
		return // a table of what is not there would say nothing
	}
	fmt.Fprintf(b, "%7s %7s %5s  %s\n", "start", "end", "sure", "step")
	for _, s := range m.Match.Steps {
		start, end, status := chapters.Stamp(s.Start), chapters.Stamp(s.End), ""
		switch s.Status {
		case align.Missing:
			start, end, status = "–", "–", "missing: "
		case align.Moved:
			status = "moved: "
		}
		fmt.Fprintf(b, "%7s %7s %4.0f%%  %s%s\n", start, end, 100*s.Confidence, status, clip(diag.Visible(p.Steps[s.Index].Title.Print), columns-25-len(status)))
	}
	if len(m.Match.Repeats) > 0 {
		fmt.Fprintln(b, "\nsaid twice")
		for _, r := range m.Match.Repeats {
			fmt.Fprintf(b, "%7s %7s  %s\n", chapters.Stamp(r.Start), chapters.Stamp(r.End), clip(diag.Visible(p.Steps[r.Index].Title.Print), columns-18))
		}
	}
	added := slices.DeleteFunc(slices.Clone(m.Match.Added), align.Added.Slight)
	if len(added) > 0 {
		fmt.Fprintln(b, "\ntalk in no step")
		for _, a := range added {
			fmt.Fprintf(b, "%7s %7s  %s\n", chapters.Stamp(a.Start), chapters.Stamp(a.End), clip(diag.Visible(strings.Join(strings.Fields(a.Text), " ")), columns-18))
		}
	}
	termsText(b, m)
	if len(m.Findings) > 0 {
		b.WriteByte('\n')
	}
}

func termsText(b *bytes.Buffer, m *build.Matched) {
	if len(m.Match.Terms) == 0 {
		return
	}
	open := ""
	fmt.Fprintln(b, "\nwords that may be misheard")
	for i, t := range m.Match.Terms {
		state := ""
		if m.Accepted[i] {
			state = ", put in"
		} else if open == "" {
			open = t.Term
		}
		words := fmt.Sprintf("%q: perhaps %q%s", strings.Join(strings.Fields(t.Heard), " "), t.Term, state)
		fmt.Fprintf(b, "%7s %6.0f%%  %s\n", chapters.Stamp(t.Start), 100*t.Confidence, clip(diag.Visible(words), columns-18))
	}
	if open != "" {
		fmt.Fprintf(b, "  to put them into captions/final.*: --accept all, or some: --accept %q\n", diag.Visible(open))
	}
	fmt.Fprintln(b, "  to have them known next time, in the plan:")
	for line := range strings.Lines(m.Snippet()) {
		fmt.Fprintf(b, "    %s\n", diag.Visible(strings.TrimSuffix(line, "\n")))
	}
}
