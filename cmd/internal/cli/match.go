package cli

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"fixslate/chapters/captions"
	"fixslate/cmd/internal/build"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

type matchOptions struct {
	streams
	plan, edit string
	dir        string
	accept     []string
	force      bool
	format     choice
	failOn     failOn
}

func newMatch(s streams) *cobra.Command {
	o := &matchOptions{streams: s, format: formats("text", "json", "sarif"), failOn: failFrom("warning")}
	cmd := &cobra.Command{
		Use:   "match PLAN EDIT",
		Short: "lay a finished edit beside its plan",
		Long: `Match reads the captions of a finished edit (SRT, WebVTT, TTML, SSA, STL;
automatic ones will do) and finds each step of the plan in them: where it starts, what is
missing, moved, said twice or added, which cautions and numbers were not said as
planned, and which words may be misheard. It prints that on standard output.

With -o it writes chapters and captions of the edit, the description and comment
with the real chapters, and the review, all or none, beside what a build left in
that folder. Nothing is written where the captions are not the plan's or their
times can't be trusted, but with --force.

Words are put right in the captions only where --accept says so: all, or a list
of terms.

It ends with 0 where nothing reaches --fail-on, with 1 where something does, and
with 2 where it could not run, the plan has faults, or -o wrote nothing.`,
		Example: "  fixslate match washer.toml edit.srt\n  fixslate match washer.toml edit.srt -o washer.out --accept impeller,standpipe",
		Args:    takes(2, 2),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.plan, o.edit = args[0], args[1]
			return runMatch(cmd.Context(), o)
		},
	}
	cmd.Flags().StringVarP(&o.dir, "output", "o", "", "the folder `DIR` to write, mostly the one of the build")
	cmd.Flags().StringSliceVar(&o.accept, "accept", nil, "put terms into the captions: all, or a `LIST` of them by their words or ids")
	cmd.Flags().BoolVar(&o.force, "force", false, "write also what can't be trusted")
	o.format.flag(cmd)
	o.failOn.flag(cmd)
	return cmd
}

func runMatch(ctx context.Context, o *matchOptions) error {
	m, err := matchFiles(o.streams, pair{o.plan, o.edit}, o.accept)
	if err != nil {
		return err
	}
	if m.Planned.Plan == nil {
		return faulted(o.streams, m.Findings)
	}
	if err := o.print(&m); err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	doubt := m.Doubt()
	refused := o.dir != "" && doubt != "" && !o.force
	if refused {
		o.say(fmt.Sprintf("%s: nothing was written: %s; --force writes all the same", o.dir, doubt))
	} else if err := o.write(ctx, &m); err != nil {
		return err
	}
	if !m.Edit.Whole && !o.force {
		return errFaulted
	}
	err = o.failOn.verdict(m.Findings)
	if err == nil && refused { // what was asked for is not there, whatever findings may count
		err = errFaulted
	}
	return err
}

// pair is a plan and its edit, by name.
type pair struct{ plan, edit string }

// matchFiles reads both files and lays one beside the other.
func matchFiles(s streams, files pair, accept []string) (build.Matched, error) {
	if files.plan == "-" && files.edit == "-" {
		return build.Matched{}, errors.New("only one of plan and edit can come from standard input; name a file for the other")
	}
	r, err := read(s, files.plan)
	if err != nil {
		return build.Matched{}, err
	}
	raw, shown, err := slurpUpTo(s, files.edit, captionFile, captions.MaxBytes)
	if err != nil {
		return build.Matched{}, err
	}
	m, err := build.Match(r, build.Edit{Captions: raw, Name: shown, Accept: accept})
	if err != nil {
		return m, err
	}
	diag.Sort(m.Findings)
	return m, nil
}

func (o *matchOptions) print(m *build.Matched) error {
	switch o.format.word {
	case "json":
		_, err := o.out.Write(m.JSON())
		return err
	case "sarif":
		return printFindings(o.streams, m.Findings, "sarif")
	}
	w := o.paper()
	matchText(w, m)
	if err := w.Flush(); err != nil {
		return err
	}
	return printFindings(o.streams, m.Findings, "text")
}

// write writes the files of the match where a folder is named.
func (o *matchOptions) write(ctx context.Context, m *build.Matched) error {
	if o.dir == "" {
		return nil
	}
	target := build.Target{
		Dir: o.dir, PlanSum: build.Sum(m.Source.Raw), Version: Version, Set: build.MatchSet,
		Keep: append(kept(o.plan, m.Planned.Plan.Use), kept(o.edit, nil)...),
	}
	files := m.Files()
	if err := build.Write(ctx, target, files); err != nil {
		return err
	}
	where := "the real chapters in chapters/final.*"
	if len(m.Chapters) == 0 {
		where = "no chapters, since no step was found"
	}
	o.say(fmt.Sprintf("%s: %s written, %s, the review in review.html", o.dir, prose.Counted(len(files), "file"), where))
	if left := m.Description.LeftOut; len(left) > 0 {
		o.say(leftOut(left, m.Planned.Plan.Publish.DescriptionMax))
	}
	return nil
}
