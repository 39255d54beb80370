package diag

import (
	"io"
	"net/url"
	"path/filepath"
	"slices"
	"strings"
)

// SARIF 2.1.0 (OASIS Standard, 27 March 2020): the part of it that findings
// need. Paths are relative URIs, columns are counted in Unicode code points.

type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool       sarifTool     `json:"tool"`
	ColumnKind string        `json:"columnKind"`
	Results    []sarifResult `json:"results"`
}

type sarifTool struct {
	Driver sarifDriver `json:"driver"`
}

type sarifDriver struct {
	Name    string      `json:"name"`
	Version string      `json:"version,omitempty"`
	Rules   []sarifRule `json:"rules"`
}

type sarifRule struct {
	ID    string    `json:"id"`
	Short sarifText `json:"shortDescription"`
	Help  sarifHelp `json:"help"`
}

type sarifText struct {
	Text string `json:"text"`
}

type sarifHelp struct {
	Text     string `json:"text"`
	Markdown string `json:"markdown"`
}

type sarifResult struct {
	RuleID       string          `json:"ruleId"`
	RuleIndex    int             `json:"ruleIndex"`
	Level        string          `json:"level"`
	Message      sarifText       `json:"message"`
	Locations    []sarifLocation `json:"locations"`
	Suppressions []sarifWaiver   `json:"suppressions,omitempty"`
	Properties   map[string]any  `json:"properties,omitempty"`
}

type sarifWaiver struct {
	Kind          string `json:"kind"`
	Justification string `json:"justification"`
}

type sarifLocation struct {
	Physical sarifPhysical `json:"physicalLocation"`
}

type sarifPhysical struct {
	Artifact sarifArtifact `json:"artifactLocation"`
	Region   *sarifRegion  `json:"region,omitempty"`
}

type sarifArtifact struct {
	URI string `json:"uri"`
}

type sarifRegion struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndLine     int `json:"endLine"`
	EndColumn   int `json:"endColumn"`
}

// SARIF writes the findings with the help of their rules. page gives the page
// of a rule, as `explain` prints it.
func SARIF(w io.Writer, findings []Finding, version string, page func(rule string) (Page, bool)) error {
	run := sarifRun{
		Tool:       sarifTool{sarifDriver{Name: "fixslate", Version: version, Rules: []sarifRule{}}},
		ColumnKind: "unicodeCodePoints",
		Results:    []sarifResult{},
	}
	index := map[string]int{}
	for _, name := range ruleNames(findings) {
		index[name] = len(index)
		run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, sarifRuleOf(name, page))
	}
	for _, f := range findings {
		run.Results = append(run.Results, sarifResultOf(f, index[f.Rule]))
	}
	return PrintJSON(w, sarifLog{
		Schema:  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
		Version: "2.1.0", Runs: []sarifRun{run},
	})
}

func ruleNames(findings []Finding) []string {
	var names []string
	for _, f := range findings {
		names = append(names, f.Rule)
	}
	slices.Sort(names)
	return slices.Compact(names)
}

func sarifRuleOf(name string, page func(string) (Page, bool)) sarifRule {
	r := sarifRule{ID: name, Short: sarifText{name}, Help: sarifHelp{name, name}}
	if p, ok := page(name); ok {
		r.Short.Text = p.Summary
		r.Help.Text = p.Summary + "\n\n" + p.Text
		r.Help.Markdown = r.Help.Text + "\n\nSource: " + p.Source
	}
	return r
}

func sarifResultOf(f Finding, rule int) sarifResult {
	text := f.Message
	if f.Hint != "" {
		text += "; " + strings.ReplaceAll(f.Hint, "\n", " ")
	}
	r := sarifResult{RuleID: f.Rule, RuleIndex: rule, Level: f.Severity.String(), Message: sarifText{text}, Locations: []sarifLocation{}}
	if f.At.Source != nil {
		loc := sarifPhysical{Artifact: sarifArtifact{relativeURI(f.At.File())}}
		start := f.At.Position()
		end := f.At.Source.Position(max(f.At.Span.Start, f.At.Span.End))
		loc.Region = &sarifRegion{start.Line, start.Column, end.Line, end.Column}
		r.Locations = append(r.Locations, sarifLocation{loc})
	}
	if f.Waived != "" {
		r.Suppressions = []sarifWaiver{{"inSource", f.Waived}} // it stands in the plan itself (3.35.2)
	}
	if f.Path != "" {
		r.Properties = map[string]any{"path": f.Path}
	}
	return r
}

// relativeURI writes a path as SARIF wants it: with slashes, escaped, and
// never absolute; a file outside the working folder keeps its last part.
func relativeURI(name string) string {
	name = filepath.ToSlash(name)
	if filepath.IsAbs(name) {
		name = name[strings.LastIndexByte(name, '/')+1:]
	}
	return (&url.URL{Path: name}).String()
}
