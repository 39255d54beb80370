package cli

import (
	"bytes"
	"context"
	"fmt"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"fixslate/cmd/internal/build"
	"fixslate/plan/prose"
	"fixslate/samples"
)

type newOptions struct {
	streams
	name string
	like string
}

func newNew(s streams) *cobra.Command {
	o := &newOptions{streams: s}
	cmd := &cobra.Command{
		Use:   "new NAME",
		Short: "write a plan to start from",
		Long: `New writes NAME.toml: a short plan with comments that teach the language, or a
copy of one of the samples. It never overwrites a file.`,
		Example: "  fixslate new gearbox\n  fixslate new gearbox --like van-blower",
		Args:    takes(1, 1),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.name = args[0]
			return runNew(cmd.Context(), o)
		},
	}
	cmd.Flags().StringVar(&o.like, "like", "", "copy a `SAMPLE`: "+strings.Join(samples.Names(), ", "))
	return cmd
}

func runNew(ctx context.Context, o *newOptions) error {
	name := o.name
	if !strings.HasSuffix(name, ".toml") {
		name += ".toml"
	}
	stem := strings.TrimSuffix(filepath.Base(name), ".toml")
	if strings.Trim(stem, ". ") == "" {
		return fmt.Errorf("%q is no name for a plan; write something like gearbox", o.name)
	}
	text := bytes.Replace(samples.Starter(), []byte(samples.StarterTitle), []byte(strconv.Quote(title(stem))), 1)
	if o.like != "" {
		var ok bool
		if text, ok = samples.Plan(o.like); !ok {
			return fmt.Errorf("there is no sample %q; the samples are %s", o.like, strings.Join(samples.Names(), ", "))
		}
	}
	if err := build.CreateFile(ctx, name, text); err != nil {
		return err
	}
	shown := name
	if strings.ContainsAny(name, " \t'&;()$") {
		shown = strconv.Quote(name) // for a shell, which would take it apart
	}
	return o.tell(fmt.Sprintf("%s written; next: fixslate check %s, then fixslate build %[2]s", name, shown))
}

// title makes a first title of a file's name.
func title(stem string) string {
	words := strings.Join(strings.FieldsFunc(stem, func(r rune) bool { return strings.ContainsRune("-_. ", r) }), " ")
	if words == "" {
		return stem
	}
	return prose.Capital(words)
}
