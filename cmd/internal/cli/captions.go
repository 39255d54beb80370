package cli

import (
	"context"
	"errors"
	"io"

	"github.com/spf13/cobra"

	"fixslate/chapters/captions"
	"fixslate/cmd/internal/build"
	"fixslate/plan/diag"
)

type captionsOptions struct {
	streams
	file    string
	to      captionFormat
	profile choice // no word: only the clock is checked
	output  string
	format  choice
	failOn  failOn
}

// captionFormat is the value of --to.
type captionFormat struct{ captions.Format }

func (f *captionFormat) String() string {
	if f.Format == captions.Unknown {
		return ""
	}
	return f.Format.String()
}

func (f *captionFormat) Type() string { return "FORMAT" }

func (f *captionFormat) Set(word string) error {
	f.Format = captions.FormatNamed(word)
	if !f.Writable() {
		return errors.New("write srt, vtt or ttml")
	}
	return nil
}

func newCaptions(s streams) *cobra.Command {
	o := &captionsOptions{streams: s, profile: choice{what: "profile", known: profileNames()}, format: formats("text", "json"), failOn: failFrom("error")}
	cmd := &cobra.Command{
		Use:   "captions FILE",
		Short: "read, check and convert a caption file",
		Long: `Captions reads a caption file (SRT, WebVTT, TTML, SSA, STL), says on standard
error what is wrong with it, and with --to writes it in another format, to
standard output or the file given with -o.

It converts cue for cue; with --profile the words are cut into cues anew, and
without --to the file is checked against that profile. A file that can't be
read whole ends with 2 and nothing is written.`,
		Example: "  fixslate captions edit.srt --profile broadcast\n  fixslate captions edit.srt --to vtt -o edit.vtt",
		Args:    takes(1, 1),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.file = args[0]
			return runCaptions(cmd.Context(), o)
		},
	}
	cmd.Flags().Var(&o.to, "to", "write the captions as srt, vtt or ttml")
	cmd.Flags().Var(&o.profile, "profile", "line lengths and reading speed: "+either(profileNames()))
	cmd.Flags().StringVarP(&o.output, "output", "o", "", "the `FILE` to write, instead of standard output")
	o.format.flag(cmd)
	o.failOn.flag(cmd)
	return cmd
}

func profileNames() []string {
	var names []string
	for _, p := range captions.Profiles() {
		names = append(names, p.Name)
	}
	return names
}

func runCaptions(ctx context.Context, o *captionsOptions) error {
	if o.output == "-" {
		o.output = "" // standard output, as in other programs
	}
	if o.to.Format == captions.Unknown && o.output != "" {
		return errors.New("-o needs --to srt, vtt or ttml")
	}
	if o.to.Format != captions.Unknown && o.output == "" && o.format.word == "json" {
		return errors.New("--format json takes standard output; give the captions a file with -o")
	}
	raw, shown, err := slurpUpTo(o.streams, o.file, captionFile, captions.MaxBytes)
	if err != nil {
		return err
	}
	file, findings := captions.Read(raw, shown)
	var profile captions.Profile
	if o.profile.word != "" {
		profile, _ = captions.ProfileNamed(o.profile.word)
	}
	if o.profile.word != "" && o.to.Format != captions.Unknown {
		file = captions.Resegment(file, profile)
	}
	findings = append(findings, captions.Check(file, profile)...)
	if o.format.word == "json" {
		err = captionsJSON(o.out, file, findings)
	} else {
		err = complain(o.streams, findings)
	}
	if err != nil {
		return err
	}
	if !file.Whole {
		return errFaulted
	}
	if err := o.write(ctx, file); err != nil {
		return err
	}
	return o.failOn.verdict(findings)
}

// write writes the captions in the format asked for, if any.
func (o *captionsOptions) write(ctx context.Context, file captions.File) error {
	if o.to.Format == captions.Unknown {
		return nil
	}
	data, err := captions.Write(file, o.to.Format)
	if err != nil {
		return err
	}
	if o.output == "" {
		_, err = o.out.Write(data)
	} else {
		err = build.WriteFile(ctx, o.output, data, kept(o.file, nil))
	}
	return err
}

func captionsJSON(w io.Writer, file captions.File, findings []diag.Finding) error {
	type cue struct {
		Start float64 `json:"start_seconds"`
		End   float64 `json:"end_seconds"`
		Text  string  `json:"text"`
	}
	cues := []cue{}
	for _, c := range file.Cues {
		cues = append(cues, cue{c.Start.Seconds(), c.End.Seconds(), c.Text})
	}
	return diag.PrintJSON(w, map[string]any{"format": file.Format.String(), "cues": cues, "findings": diag.Entries(findings)})
}
