package cli

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"sync"

	"github.com/schollz/progressbar/v3"
	"github.com/spf13/cobra"

	"fixslate/cmd/internal/build"
	"fixslate/plan/diag"
	"fixslate/plan/lint"
	"fixslate/plan/prose"
)

type checkOptions struct {
	streams
	plans  []string
	format choice
	failOn failOn
	stage  choice
	write  bool // the missing cautions into the plans
}

func newCheck(s streams) *cobra.Command {
	o := &checkOptions{streams: s, format: formats("text", "json", "sarif"), failOn: failFrom("warning"), stage: choose("stage", lint.Stages()...)}
	cmd := &cobra.Command{
		Use:   "check PLAN…",
		Short: "find what is wrong with plans",
		Long: `Check reads plans and prints what it finds, on standard output: faults,
missing cautions, claims that nothing shows, values that can't be, gaps, and what
does not fit where it is published, each with file, line, column and what to
write instead. fixslate explain prints what stands behind a finding. What it can
not read it says; finding nothing proves no plan safe.

It ends with 0 where nothing reaches --fail-on, with 1 where something does,
and with 2 where a file could not be read.`,
		Example: "  fixslate check washer.toml\n  fixslate check --format json plans/*.toml",
		Args:    takes(1, anyNumber),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.plans = args
			return runCheck(cmd.Context(), o)
		},
	}
	o.format.flag(cmd)
	o.failOn.flag(cmd)
	cmd.Flags().BoolVar(&o.write, "write-cautions", false, "write the missing cautions into the plan first, for you to edit; the old plan is kept beside it")
	cmd.Flags().Var(&o.stage, "stage", "how far the work is: plan, shoot or publish; a \"?\" is then a note, a warning, an error")
	return cmd
}

func runCheck(ctx context.Context, o *checkOptions) error {
	results := make([][]diag.Finding, len(o.plans))
	errs := make([]error, len(o.plans))
	done := o.progress()
	each(ctx, len(o.plans), func(i int) {
		results[i], errs[i] = checkOne(ctx, o, o.plans[i])
		done()
	})
	if err := ctx.Err(); err != nil {
		return err
	}
	findings := slices.Concat(results...)
	if err := printFindings(o.streams, findings, o.format.word); err != nil {
		return err
	}
	var unread error
	for _, err := range errs {
		if err != nil {
			o.say(err.Error())
			unread = errFaulted
		}
	}
	if unread != nil {
		return unread
	}
	if o.format.word == "text" {
		summarise(o, findings)
	}
	return o.failOn.verdict(findings)
}

func checkOne(ctx context.Context, o *checkOptions, name string) ([]diag.Finding, error) {
	r, err := read(o.streams, name)
	if err != nil {
		return nil, err
	}
	r.Stage = lint.Stage(o.stage.index())
	if o.write {
		if err := writeCautions(ctx, o, name, &r); err != nil {
			return nil, err
		}
	}
	findings := build.Check(r)
	diag.Sort(findings)
	return findings, nil
}

// writeCautions writes the missing cautions into a plan, with the old one kept
// beside it, and puts the new text into the request.
func writeCautions(ctx context.Context, o *checkOptions, name string, r *build.Request) error {
	if name == "-" {
		return errors.New("--write-cautions needs a file: standard input can't be written")
	}
	amended, n, err := build.AddCautions(*r)
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	if n == 0 {
		return nil
	}
	kept, err := keepCopy(ctx, name, r.Source.Raw)
	if err != nil {
		return err
	}
	if err := build.WriteFile(ctx, name, amended, nil); err != nil {
		return err
	}
	o.say(fmt.Sprintf("%s: %s written; the plan as it was is %s", name, prose.Counted(n, "caution"), kept))
	r.Source, r.Faults = diag.NewSource(r.Source.Name, amended)
	return nil
}

// keepCopy writes a copy beside a file under a name that is free.
func keepCopy(ctx context.Context, name string, data []byte) (string, error) {
	for i := 1; ; i++ {
		kept := name + ".before"
		if i > 1 {
			kept = fmt.Sprintf("%s.before-%d", name, i)
		}
		err := build.CreateFile(ctx, kept, data)
		if err == nil || !exists(kept) || i == 99 {
			return kept, err
		}
	}
}

// summarise says on standard error what was checked. It never says "safe".
func summarise(o *checkOptions, findings []diag.Finding) {
	c := diag.Count(findings)
	fmt.Fprintf(o.err, "%s checked: %s, %s, %s\n", prose.Counted(len(o.plans), "plan"), prose.Counted(c.Error, "error"), prose.Counted(c.Warning, "warning"), prose.Counted(c.Note, "note"))
}

// each runs work for 0 to n-1 on all cores, in no order.
func each(ctx context.Context, n int, work func(i int)) {
	next := make(chan int)
	var wg sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		wg.Go(func() {
			for i := range next {
				work(i)
			}
		})
	}
	for i := range n {
		if ctx.Err() != nil {
			break
		}
		next <- i
	}
	close(next)
	wg.Wait()
}

// progress is a bar for long runs, only where somebody sees it.
func (o *checkOptions) progress() func() {
	if !o.watched || len(o.plans) < 200 {
		return func() {}
	}
	bar := progressbar.NewOptions(len(o.plans), progressbar.OptionSetWriter(o.err),
		progressbar.OptionSetDescription("checking"), progressbar.OptionClearOnFinish())
	return func() { _ = bar.Add(1) }
}
