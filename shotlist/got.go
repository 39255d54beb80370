package shotlist

import (
	"fmt"
	"strconv"
	"strings"

	"fixslate/plan/diag"
)

// mostUnknown bounds what is said about a list that is none.
const mostUnknown = 50

// ReadGot reads a list of shots that are made already: ids, one a line, as the
// book copies them out. Blank lines and what follows a # count for nothing. An
// id that is no shot of the plan is a finding with its place, and is left out;
// so the list survives a change of the plan.
func ReadGot(list *diag.Source, shots []Shot) (got []string, findings []diag.Finding) {
	known, listed := map[string]bool{}, map[string]bool{}
	for i := range shots {
		known[shots[i].ID] = true
	}
	offset := 0
	for line := range strings.Lines(list.Text) {
		word, _, _ := strings.Cut(line, "#")
		id := strings.TrimSpace(word)
		at := offset + strings.Index(line, id)
		offset += len(line)
		if id == "" || listed[id] {
			continue
		}
		if known[id] {
			got, listed[id] = append(got, id), true
			continue
		}
		f := diag.Finding{
			Rule: "id-unknown", Severity: diag.Warning, At: diag.Place{Source: list, Span: diag.Span{Start: at, End: at + len(id)}},
			Message: "more lines are no shots of this plan; the rest of the list is passed over", Hint: "is this the list of another plan",
		}
		if len(findings) == mostUnknown {
			return got, append(findings, f)
		}
		f.Message = fmt.Sprintf("there is no shot %q; the line is passed over", id)
		f.Hint = "take the ids from the book's ticked list or from shots.csv" + perhaps(id, shots)
		findings = append(findings, f)
	}
	return got, findings
}

// perhaps offers the shot that was perhaps meant. The sheets number their shots,
// but the numbers change with the plan: a list of them would tick off others
// after the next change, so what one stands for is only said.
func perhaps(id string, shots []Shot) string {
	if n, err := strconv.Atoi(strings.TrimSuffix(id, ".")); err == nil && n > 0 && n <= len(shots) {
		return fmt.Sprintf("; numbers change with the plan: %d is now %q", n, shots[n-1].ID)
	}
	return closest(id, shots)
}

// closest offers the shot whose id begins most like a wrong one, of several the
// shortest.
func closest(id string, shots []Shot) string {
	best, length := "", 3
	for i := range shots {
		n := 0
		for n < min(len(id), len(shots[i].ID)) && id[n] == shots[i].ID[n] {
			n++
		}
		if n > length || n == length && len(shots[i].ID) < len(best) {
			best, length = shots[i].ID, n
		}
	}
	if best == "" {
		return ""
	}
	return fmt.Sprintf("; did you mean %q", best)
}
