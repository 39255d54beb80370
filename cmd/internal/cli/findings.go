package cli

import (
	"errors"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"fixslate/chapters/captions"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/lint"
)

// failOn is the value of --fail-on: from which severity on a command ends
// with 1.
type failOn struct{ choice }

// failFrom is the --fail-on of a command, with what it is where none is written.
func failFrom(word string) failOn {
	return failOn{choice{"severity", word, []string{"error", "warning", "note", "never"}}}
}

// verdict ends a command with 1 where findings reach the severity.
func (f *failOn) verdict(findings []diag.Finding) error {
	if f.word != "never" && diag.Worst(findings) >= diag.Error-diag.Severity(f.index()) {
		return errFound
	}
	return nil
}

func (f *failOn) flag(cmd *cobra.Command) {
	cmd.Flags().Var(f, "fail-on", "end with 1 from this severity on: "+either(f.known))
}

// choice is the value of a flag that takes one of a few words.
type choice struct {
	what  string // what the words are
	word  string
	known []string
}

// choose is a choice of some words, the first one where none is written.
func choose(what string, words ...string) choice { return choice{what, words[0], words} }

func (c *choice) String() string { return c.word }
func (c *choice) Type() string   { return strings.ToUpper(c.what) }

func (c *choice) Set(word string) error {
	if !slices.Contains(c.known, word) {
		return errors.New("write " + either(c.known))
	}
	c.word = word
	return nil
}

// index is the place of the chosen word among the words.
func (c *choice) index() int { return slices.Index(c.known, c.word) }

// formats are the ways to print.
func formats(words ...string) choice { return choose("format", words...) }

// flag adds --format.
func (c *choice) flag(cmd *cobra.Command) {
	cmd.Flags().Var(c, "format", "how to print: "+either(c.known))
}

// either lists words of which one is to be written: "text, json or sarif".
func either(words []string) string {
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// didYouMean offers the word that a slip most likely meant; it is empty where
// none is near.
func didYouMean(written string, words []string) string {
	if near, ok := plan.Nearest(written, words); ok {
		return "; did you mean " + near
	}
	return ""
}

// printFindings prints findings as the product of a command.
func printFindings(s streams, findings []diag.Finding, how string) error {
	switch how {
	case "json":
		return diag.JSON(s.out, findings)
	case "sarif":
		return diag.SARIF(s.out, findings, Version, page)
	}
	return diag.Text(s.out, findings, diag.Style{Colour: s.colour, Excerpt: true, Width: s.columns})
}

// complain prints findings beside a command's product: what a careful author
// would stop at.
func complain(s streams, findings []diag.Finding) error {
	return diag.Text(s.err, grave(findings), diag.Style{Excerpt: true, Width: s.errColumns})
}

// mention names a plan's findings in a line each, where the command is about
// something else and its answer is not to be looked for below them. What stands
// in another file, check would not show.
func mention(s streams, findings []diag.Finding, plan *diag.Source) error {
	findings = grave(findings)
	elsewhere := func(f diag.Finding) bool { return f.At.Source != nil && f.At.Source != plan }
	own := slices.DeleteFunc(slices.Clone(findings), elsewhere)
	if len(own) > 0 {
		if err := diag.Text(s.err, own, diag.Style{Brief: true, Width: s.errColumns}); err != nil {
			return err
		}
		end := "  fixslate check says what to write instead\n"
		if s.watched { // the answer follows on the same screen
			end += "\n"
		}
		if _, err := io.WriteString(s.err, end); err != nil {
			return err
		}
	}
	return complain(s, slices.DeleteFunc(findings, func(f diag.Finding) bool { return !elsewhere(f) }))
}

// grave are findings but for notes and what is waived: those are check's to show.
func grave(findings []diag.Finding) []diag.Finding {
	return slices.DeleteFunc(slices.Clone(findings), func(f diag.Finding) bool { return f.Waived != "" || f.Severity < diag.Warning })
}

// page is the page of any rule or fault.
func page(rule string) (diag.Page, bool) {
	if p, ok := plan.FaultPage(rule); ok {
		return p, true
	}
	if p, ok := lint.Page(rule); ok {
		return p, true
	}
	return captions.FindingPage(rule)
}
