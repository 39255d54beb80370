package cli

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"fixslate/chapters/pace"
	"fixslate/cmd/internal/build"
	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

type paceOptions struct {
	streams
	edits  []string
	worked []string
	output string
	format choice
}

func newPace(s streams) *cobra.Command {
	o := &paceOptions{streams: s, format: formats("text", "json")}
	cmd := &cobra.Command{
		Use:   "pace PLAN=EDIT…",
		Short: "measure a presenter's pace in finished edits",
		Long: `Pace measures how one presenter talks and works: each plan beside the captions
of its finished edit. It prints what it learned and how sure that is, and with
-o writes a pace file, which build --pace or a plan's [pace] file then uses.

What little is seen moves the usual values only a little; several videos of one
presenter say more than one. How long the work took no edit shows: write it down
on the day, a line for each step (fit-the-pump = "12m"), and name that file with
--worked PLAN=FILE.`,
		Example: "  fixslate pace washer.toml=washer.srt van.toml=van.vtt -o pace.toml\n  fixslate pace washer.toml=washer.srt --worked washer.toml=times.txt",
		Args:    takes(1, anyNumber),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.edits = args
			return runPace(cmd.Context(), o)
		},
	}
	cmd.Flags().StringVarP(&o.output, "output", "o", "", "the pace `FILE` to write")
	cmd.Flags().StringArrayVar(&o.worked, "worked", nil, "how long the steps of a plan took, as `PLAN=FILE`")
	o.format.flag(cmd)
	return cmd
}

func runPace(ctx context.Context, o *paceOptions) error {
	edits, names, err := o.read(ctx)
	if err != nil {
		return err
	}
	learned := pace.Learn(edits)
	w := o.paper()
	if o.format.word == "json" {
		err = paceJSON(w, learned)
	} else {
		o.text(w, learned)
	}
	if err := w.done(err); err != nil || o.output == "" {
		return err
	}
	if err := build.WriteFile(ctx, o.output, learned.Pace.File(), names); err != nil {
		return err
	}
	o.say(fmt.Sprintf("%s written; build --pace %[1]s uses it, or [pace] file in a plan", o.output))
	return nil
}

// read lays every edit beside its plan. names are all files read.
func (o *paceOptions) read(ctx context.Context) (edits []pace.Edit, names []string, err error) {
	var plans []string
	for _, arg := range o.edits {
		if ctx.Err() != nil {
			return nil, nil, ctx.Err()
		}
		files, err := parted(arg, "washer.toml=washer.srt")
		if err != nil {
			return nil, nil, err
		}
		m, err := matchFiles(o.streams, files, nil)
		if err != nil {
			return nil, nil, err
		}
		if !m.Usable() {
			if err := complain(o.streams, m.Findings); err != nil {
				return nil, nil, err
			}
			if m.Planned.Plan == nil {
				return nil, nil, errFaulted
			}
			return nil, nil, fmt.Errorf("%s: nothing can be measured in it; see above, or leave it out", files.edit)
		}
		edits = append(edits, m.Measured())
		plans, names = append(plans, files.plan), append(names, files.plan, files.edit)
	}
	for _, arg := range o.worked {
		files, err := parted(arg, "washer.toml=times.txt")
		if err != nil {
			return nil, nil, err
		}
		at := slices.Index(plans, files.plan)
		if at < 0 {
			return nil, nil, fmt.Errorf("--worked %s: %s is not among the plans measured: %s", arg, files.plan, strings.Join(plans, ", "))
		}
		raw, _, err := slurpUpTo(o.streams, files.edit, workFile, diag.MaxBytes)
		if err != nil {
			return nil, nil, err
		}
		if edits[at].Worked, err = pace.ReadWork(raw, edits[at].Plan); err != nil {
			return nil, nil, fmt.Errorf("%s: %w", files.edit, err)
		}
		names = append(names, files.edit)
	}
	return edits, names, nil
}

// parted takes PLAN=FILE apart: at the = that leaves two files that are there,
// else at the first.
func parted(arg, like string) (pair, error) {
	plan, file, ok := strings.Cut(arg, "=")
	if !ok || plan == "" || file == "" {
		return pair{}, fmt.Errorf("%q is no pair of files; write PLAN=FILE, like %s", arg, like)
	}
	for i := range arg {
		if arg[i] == '=' && exists(arg[:i]) && exists(arg[i+1:]) {
			return pair{arg[:i], arg[i+1:]}, nil
		}
	}
	return pair{plan, file}, nil
}

// figure is one line of what was learned.
type figure struct {
	key, words string
	pace.Estimate
	what string // what it rests on
}

func figures(l pace.Learned) []figure {
	return []figure{
		{"characters_per_second", "characters a second", l.Speech, "line"},
		{"comma_pause", "pause after a phrase, seconds", l.Comma, "line"},
		{"sentence_pause", "pause after a sentence, seconds", l.Sentence, "line"},
		{"screen_share", "seconds in the cut a second of work", l.ScreenShare, "step"},
		{"hands_on_factor", "work as it was over work as planned", l.HandsOn, "step"},
	}
}

func (o *paceOptions) text(w *paper, l pace.Learned) {
	c := l.Pace.Counts
	paragraph(w, "", fmt.Sprintf("measured in %s: %s, %s on screen, %s of work", prose.Counted(len(o.edits), "video"), prose.Counted(c.Lines, "line"), prose.Counted(c.Steps, "step"), prose.Counted(c.Works, "step")))
	room := 35 // of the words; without it they stand above their figures
	if w.narrow() {
		room = 6
	}
	fmt.Fprintf(w, "\n  %-*s %7s %7s  %-15s %8s\n", room, "", "usual", "learned", "8 in 10 between", "measured")
	var little []string
	for _, f := range figures(l) {
		words := f.words
		if w.narrow() {
			paragraph(w, "  ", words)
			words = ""
		}
		fmt.Fprintf(w, "  %-*s %7.2f %7.2f  %-15s %6.0f %%\n", room, words, f.Default, f.Value, fmt.Sprintf("%.2f and %.2f", f.Low, f.High), 100*f.Measured)
		if f.Measured < pace.Enough {
			little = append(little, fmt.Sprintf("%s (%s)", f.words, prose.Counted(f.Count, f.what)))
		}
	}
	if len(little) > 0 {
		fmt.Fprintln(w, "\ntoo little to say more than the usual value:")
		for _, l := range little {
			paragraph(w, "  ", l)
		}
	}
	switch {
	case c.Works > 0:
	case len(o.worked) > 0:
		fmt.Fprintln(w)
		paragraph(w, "", "the plan has no work of its own for the steps that --worked times, so there is nothing to compare: write what you plan, work = \"4m\"")
	default:
		fmt.Fprintln(w)
		paragraph(w, "", "no edit shows how long the work took; --worked PLAN=FILE tells it")
	}
	if o.output == "" {
		fmt.Fprintln(w)
		paragraph(w, "", "-o pace.toml writes it for build --pace, or [pace] file in a plan")
	}
}

func paceJSON(w *paper, l pace.Learned) error {
	type entry struct {
		Default  float64 `json:"default"`
		Value    float64 `json:"value"`
		Low      float64 `json:"low"`
		High     float64 `json:"high"`
		Count    int     `json:"count"`
		Measured float64 `json:"measured"`
	}
	out := map[string]any{
		"videos": l.Pace.Counts.Videos, "lines": l.Pace.Counts.Lines, "steps": l.Pace.Counts.Steps, "works": l.Pace.Counts.Works,
	}
	little := []string{}
	for _, f := range figures(l) {
		out[f.key] = entry{f.Default, f.Value, f.Low, f.High, f.Count, f.Measured}
		if f.Measured < pace.Enough {
			little = append(little, f.key)
		}
	}
	out["too_little"] = little
	return diag.PrintJSON(w, out)
}
