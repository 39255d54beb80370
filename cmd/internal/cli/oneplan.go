package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"fixslate/cmd/internal/build"
)

// onePlan are the options of a command that reads one plan and prints what
// follows from it.
type onePlan struct {
	streams
	plan   string
	format choice
	failOn failOn
}

func newOnePlan(s streams, words ...string) onePlan {
	return onePlan{streams: s, format: formats(words...), failOn: failFrom("never")}
}

// command finishes a command by its flags and what it runs.
func (o *onePlan) command(cmd *cobra.Command, run func() error) *cobra.Command {
	cmd.Args = takes(1, 1)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		o.plan = args[0]
		return run()
	}
	o.format.flag(cmd)
	o.failOn.flag(cmd)
	return cmd
}

// draw prints a picture of what was compiled; why says in words that there is
// none.
func draw(w *paper, c *build.Compiled, svg []byte, why string) error {
	if svg == nil {
		return fmt.Errorf("%s: there is nothing to draw: %s", c.Source.Name, why)
	}
	_, err := w.Write(svg)
	return err
}

// product is one form of what such a command prints.
type product struct {
	format string
	print  func(w *paper, c *build.Compiled) error
}

// printing finishes a command that compiles its plan and prints one of several
// products.
func printing(s streams, cmd *cobra.Command, products ...product) *cobra.Command {
	var words []string
	for _, p := range products {
		words = append(words, p.format)
	}
	o := newOnePlan(s, words...)
	return o.command(cmd, func() error {
		c, err := compiled(o.streams, o.plan)
		if err != nil {
			return err
		}
		w := o.paper()
		return ended(w, products[o.format.index()].print(w, c), o.failOn, c)
	})
}
