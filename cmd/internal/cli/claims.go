package cli

import (
	"fmt"
	"path"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"fixslate/chapters/captions"
	"fixslate/cmd/internal/build"
	"fixslate/plan/claim"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

func newClaims(s streams) *cobra.Command {
	o := newOnePlan(s, "text", "json")
	return o.command(&cobra.Command{
		Use:   "claims FILE",
		Short: "find what narration claims, and the values in it",
		Long: `Claims reads a plan, a caption file (SRT, WebVTT, TTML, SSA, STL) or plain text
(.txt, a line a sentence) and lists what it asserts: values, hedges, "always"
and "never", causes, comparisons, what fits what. In a plan it says what stands
behind each: a source, a test, an opinion owned up to. Standard input, "-", is
any of the three and told by what it holds.

It says what wants evidence, and never whether a claim is true. It reads English.`,
		Example: "  fixslate claims washer.toml\n  fixslate claims edit.srt --format json\n  fixslate claims - < narration.txt",
	}, func() error { return runClaims(&o) })
}

func runClaims(o *onePlan) error {
	claims, findings, err := claimsOf(o)
	if err != nil {
		return err
	}
	w := o.paper()
	if o.format.word == "json" {
		err = claimsJSON(w, claims)
	} else {
		claimsText(w, claims)
	}
	if err := w.done(err); err != nil {
		return err
	}
	return o.failOn.verdict(findings)
}

// claimsOf reads the file by its name: .toml is a plan, .txt is text, another
// ending captions. Standard input and a file without an ending are read by what
// they hold.
func claimsOf(o *onePlan) ([]claim.Claim, []diag.Finding, error) {
	limit := int64(captions.MaxBytes)
	kind := strings.ToLower(path.Ext(o.plan))
	if kind == ".txt" || kind == ".toml" {
		limit = diag.MaxBytes
	}
	raw, shown, err := slurpUpTo(o.streams, o.plan, "a plan (.toml), captions or plain text (.txt)", limit)
	if err != nil {
		return nil, nil, err
	}
	if kind == "" {
		kind = kindOfText(raw)
	}
	switch kind {
	case ".txt":
		return claimsOfText(o, raw, shown)
	case ".toml":
		return claimsOfPlan(o, raw, shown)
	}
	return claimsOfCaptions(o, raw, shown)
}

// kindOfText tells captions, a plan and narration apart by their content and
// gives the ending of the file's name that they would have. Tables in double
// brackets, [video] and keys with a quoted or bracketed value make a plan: a
// broken one is still no narration.
func kindOfText(raw []byte) string {
	if captions.FormatOf(raw) != captions.Unknown {
		return ".srt"
	}
	for line := range strings.Lines(string(raw)) {
		line = strings.TrimSpace(line)
		if strings.HasPrefix(line, "[[") || strings.HasPrefix(line, "[video") {
			return ".toml"
		}
		key, value, ok := strings.Cut(line, "=")
		key, value = strings.TrimSpace(key), strings.TrimSpace(value)
		if ok && key != "" && !strings.ContainsAny(key, " \t") && value != "" && strings.ContainsRune("\"'[{", rune(value[0])) {
			return ".toml"
		}
	}
	return ".txt"
}

func claimsOfText(o *onePlan, raw []byte, shown string) ([]claim.Claim, []diag.Finding, error) {
	src, faults := diag.NewSource(shown, raw)
	if err := complain(o.streams, faults); err != nil {
		return nil, nil, err
	}
	if diag.Worst(faults) == diag.Error {
		return nil, nil, errFaulted
	}
	return claim.Text(src.Text), faults, nil
}

func claimsOfPlan(o *onePlan, raw []byte, shown string) ([]claim.Claim, []diag.Finding, error) {
	c, err := finished(o.streams, build.Read(request(raw, shown, o.plan)))
	if err != nil {
		return nil, nil, err
	}
	claims := make([]claim.Claim, len(c.Claims))
	for i, found := range c.Claims {
		found.Line = c.Spans.Word(found.Path, found.Start, found.End).Position().Line
		claims[i] = found
	}
	return claims, c.Findings, nil
}

func claimsOfCaptions(o *onePlan, raw []byte, shown string) ([]claim.Claim, []diag.Finding, error) {
	file, findings := captions.Read(raw, shown)
	if err := complain(o.streams, findings); err != nil {
		return nil, nil, err
	}
	if !file.Whole {
		return nil, nil, errFaulted
	}
	lines := make([]claim.Line, len(file.Cues))
	for i, c := range file.Cues {
		lines[i] = claim.Line{Number: file.Source.Position(c.At.Start).Line, Text: c.Text}
	}
	return claim.Captions(lines), findings, nil
}

// claimsText lists the sentences that claim something, with their values and
// what stands behind them.
func claimsText(w *paper, claims []claim.Claim) {
	asserting, bare := 0, 0
	for _, c := range claims {
		if !c.NeedsEvidence {
			continue
		}
		asserting++
		paragraph(w, fmt.Sprintf("%4d  ", c.Line), c.Text)
		note := kindWords(c.Kinds)
		if len(c.Values) > 0 {
			note += ": " + valueWords(c.Values)
		}
		if len(c.Evidence) > 0 {
			note += "; behind it: " + strings.Join(c.Evidence, ", ")
		} else {
			bare++
		}
		paragraph(w, "        ", note)
	}
	if asserting > 0 {
		fmt.Fprintln(w)
	}
	paragraph(w, "", fmt.Sprintf("%s, claims in %d, nothing behind %d of those", prose.Counted(len(claims), "sentence"), asserting, bare))
}

func kindWords(kinds []claim.Kind) string {
	words := make([]string, len(kinds))
	for i, k := range kinds {
		words[i] = string(k)
	}
	return strings.Join(words, ", ")
}

func valueWords(values []claim.Value) string {
	words := make([]string, len(values))
	for i, v := range values {
		words[i] = v.Part
		if v.Part == "" {
			words[i] = strings.TrimSpace(strconv.FormatFloat(v.Number, 'g', 10, 64) + " " + v.Unit)
		}
	}
	return strings.Join(words, ", ")
}

func claimsJSON(w *paper, claims []claim.Claim) error {
	type value struct {
		Value any    `json:"value"`
		Unit  string `json:"unit"`
	}
	type entry struct {
		Line     int          `json:"line"`
		Path     string       `json:"path"`
		Text     string       `json:"text"`
		Kinds    []claim.Kind `json:"kinds"`
		Values   []value      `json:"values"`
		Needs    bool         `json:"needs_evidence"`
		Evidence []string     `json:"evidence"`
	}
	entries := make([]entry, len(claims))
	for i, c := range claims {
		e := entry{Line: c.Line, Path: c.Path, Text: c.Text, Kinds: some(c.Kinds), Values: []value{}, Needs: c.NeedsEvidence, Evidence: some(c.Evidence)}
		for _, v := range c.Values {
			if v.Part != "" {
				e.Values = append(e.Values, value{v.Part, ""})
			} else {
				e.Values = append(e.Values, value{v.Number, v.Unit})
			}
		}
		entries[i] = e
	}
	return diag.PrintJSON(w, map[string]any{"claims": entries})
}
