package cli

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"fixslate/chapters"
	"fixslate/cmd/internal/build"
	"fixslate/plan"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
	"fixslate/plan/timing"
)

type buildOptions struct {
	streams
	plans  []string
	dir    string
	only   []string
	pace   string
	failOn failOn
}

func newBuild(s streams) *cobra.Command {
	o := &buildOptions{streams: s, failOn: failFrom("error")}
	cmd := &cobra.Command{
		Use:   "build PLAN…",
		Short: "write everything a plan compiles into",
		Long: `Build writes the shoot book, sheets, chapters, captions and description of a
plan into a folder: all of them or, if anything fails, none. The folder is the
plan's name with .out, beside the plan, or the one given with -o. One that
holds other files and no manifest of fixslate is refused.

Several plans go into a folder each below the one given with -o.

It ends with 0, with 1 where findings reach --fail-on (the files are written
all the same), and with 2 where it could not run or the plan has faults.`,
		Example: "  fixslate build washer.toml\n  fixslate build washer.toml -o shoot --only book.html,chapters",
		Args:    takes(1, anyNumber),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.plans = args
			return runBuild(cmd.Context(), o)
		},
	}
	cmd.Flags().StringVarP(&o.dir, "output", "o", "", "the folder `DIR` to write")
	cmd.Flags().StringSliceVar(&o.only, "only", nil, "write only the outputs of these `NAMES`, files or folders, and leave the others")
	cmd.Flags().StringVar(&o.pace, "pace", "", "a `FILE` of measured pace, instead of the plan's own")
	o.failOn.flag(cmd)
	return cmd
}

func runBuild(ctx context.Context, o *buildOptions) error {
	targets, err := o.targets()
	if err != nil {
		return err
	}
	pace, err := o.readPace()
	if err != nil {
		return err
	}
	var result error
	for i, name := range o.plans {
		err := buildOne(ctx, o, buildJob{name, targets[i], pace})
		switch {
		case err == nil:
		case len(o.plans) > 1 && (errors.Is(err, errFaulted) || errors.Is(err, errFound)):
			if result == nil || errors.Is(err, errFaulted) {
				result = err
			}
		default:
			return err
		}
	}
	return result
}

type buildJob struct {
	plan, dir string
	pace      *timing.Pace
}

func buildOne(ctx context.Context, o *buildOptions, job buildJob) error {
	r, err := read(o.streams, job.plan)
	if err != nil {
		return err
	}
	r.Pace = job.pace
	c := build.Compile(r)
	diag.Sort(c.Findings)
	if c.Plan == nil {
		return faulted(o.streams, c.Findings)
	}
	if err := complain(o.streams, c.Findings); err != nil {
		return err
	}
	files, err := c.Make(o.only)
	if err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	target := build.Target{Dir: job.dir, PlanSum: build.Sum(r.Source.Raw), Version: Version, Keep: kept(job.plan, c.Plan.Use)}
	write := build.Write
	if len(o.only) > 0 {
		write = build.WriteOnly
	}
	if err := write(ctx, target, files); err != nil {
		return err
	}
	if err := o.report(job.dir, len(files), &c); err != nil {
		return err
	}
	o.remindOfMatch(target, c.Plan, files)
	return o.failOn.verdict(c.Findings)
}

// report says what was written, and what the description had to leave out.
func (o *buildOptions) report(dir string, files int, c *build.Compiled) error {
	if left := c.Description.LeftOut; len(left) > 0 {
		o.say(leftOut(left, c.Plan.Publish.DescriptionMax))
	}
	run := c.Timeline.Running
	return o.tell(fmt.Sprintf("%s: %s, planned running time %s (%s to %s)", dir, prose.Counted(files, "file"),
		chapters.Stamp(run.Likely), chapters.Stamp(run.Low), chapters.Stamp(run.High)))
}

// remindOfMatch says what a build did to a folder that an edit was matched in:
// which real chapters the plan has left behind, and that description and
// comment have planned times again.
func (o *buildOptions) remindOfMatch(t build.Target, p *plan.Plan, files []build.File) {
	stale, matched, err := build.StaleIn(t.Dir, p, t.PlanSum)
	if err != nil {
		o.say(err.Error())
	}
	if !matched {
		return
	}
	for _, c := range stale.Chapters {
		o.say(fmt.Sprintf("%s: real chapter %s is stale", t.Dir, c))
	}
	for _, title := range stale.New {
		o.say(fmt.Sprintf("%s: step %q is in no real chapter yet", t.Dir, title))
	}
	if slices.ContainsFunc(files, func(f build.File) bool { return f.Name == "description.txt" }) {
		o.say(fmt.Sprintf("%s: description and comment have the planned chapters again; fixslate match puts the real ones back", t.Dir))
	} else if stale.Any() {
		o.say(fmt.Sprintf("%s: fixslate match makes chapters/final.* anew", t.Dir))
	}
}

// leftOut says what a description had no room for.
func leftOut(parts []string, limit int) string {
	return fmt.Sprintf("description.txt leaves out %s to keep within %d bytes; description.md has all of it", strings.Join(parts, ", "), limit)
}

// kept are the files that a build must never replace.
func kept(plan string, use []string) []string {
	if plan == "-" {
		return nil
	}
	files := []string{plan}
	for _, u := range use {
		files = append(files, filepath.Join(filepath.Dir(plan), filepath.FromSlash(u)))
	}
	return files
}

// targets are the folders of the plans, in their order.
func (o *buildOptions) targets() ([]string, error) {
	var dirs []string
	taken := map[string]string{}
	for _, name := range o.plans {
		dir := o.dir
		switch {
		case name == "-" && o.dir == "":
			return nil, errors.New("a plan from standard input needs -o DIR")
		case o.dir == "":
			dir = strings.TrimSuffix(name, ".toml") + ".out"
		case len(o.plans) > 1:
			whole, err := filepath.Abs(name)
			if err != nil {
				return nil, err
			}
			stem := build.Stem(filepath.ToSlash(whole))
			if name == "-" {
				stem = "plan"
			}
			dir = filepath.Join(o.dir, stem)
		}
		key := strings.ToLower(filepath.Clean(dir))
		if other, twice := taken[key]; twice {
			return nil, fmt.Errorf("%s and %s would both be built into %s; give each its own -o", other, name, dir)
		}
		taken[key] = name
		dirs = append(dirs, dir)
	}
	return dirs, nil
}

// readPace reads the file of --pace; nil without one.
func (o *buildOptions) readPace() (*timing.Pace, error) {
	if o.pace == "" {
		return nil, nil
	}
	raw, _, err := slurpUpTo(o.streams, o.pace, paceFile, diag.MaxBytes)
	if err != nil {
		return nil, err
	}
	pace, err := timing.ReadPace(raw)
	if err != nil {
		return nil, fmt.Errorf("%s: is no pace file: %w", o.pace, err)
	}
	return &pace, nil
}
