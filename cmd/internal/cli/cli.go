// Package cli is fixslate's command line: one file a command. Each has an
// options struct, a constructor and a run function that takes only that
// struct. It reads files and flags, prints, and turns results into exit codes;
// the work is done below.
package cli

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/signal"
	"runtime/debug"
	"strings"
	"syscall"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"fixslate/plan/diag"
	"fixslate/plan/prose"
)

// Version is fixslate's version; it stands in the manifest of every build.
const Version = "0.1.0"

// Exit codes, the only place where they are chosen.
const (
	exitFine     = 0
	exitFindings = 1 // faults or findings at or above --fail-on
	exitFailed   = 2 // could not run: bad flag, unreadable or unwritable file, faults for every command but check
	exitStopped  = 130
)

// streams are where a command reads and prints.
type streams struct {
	in       io.Reader
	out, err io.Writer
	colour   bool // out is a terminal that wants colour
	watched  bool // err is a terminal: a progress bar is seen

	columns, errColumns int // of the terminals that out and err are, else 0
}

// misuse is an error of the command line itself: a bad flag, command or number
// of arguments. Its message is followed by where to read more.
type misuse struct {
	error
	of *cobra.Command
}

// help says where the command that was misused is explained.
func (m misuse) help() string {
	lists := "the commands"
	if m.of.HasParent() {
		lists = "its options"
	}
	return m.of.CommandPath() + " --help lists " + lists
}

// errFound ends a command with exit code 1; what was found is printed already.
var errFound = errors.New("findings")

// errFaulted ends a command with exit code 2; the faults are printed already.
var errFaulted = errors.New("faults")

// Main runs fixslate with the process's own streams and gives the exit code.
func Main(args []string) int {
	// A run lives for milliseconds to seconds and a plan takes a few MB: letting
	// the heap grow five-fold instead of two-fold saves a fifth of the time of
	// checking a thousand plans, for some 20 MB.
	debug.SetGCPercent(400)
	// Large caption files are the exception: near this the heap is kept small at
	// the cost of time (200,000 cues: 335 MB instead of 465, a tenth slower).
	debug.SetMemoryLimit(320 << 20)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second Ctrl-C ends it at once, whatever it waits for
	s := streams{
		in: os.Stdin, out: os.Stdout, err: os.Stderr,
		colour:  term.IsTerminal(int(os.Stdout.Fd())) && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb",
		watched: term.IsTerminal(int(os.Stderr.Fd())),
		columns: terminalWidth(os.Stdout), errColumns: terminalWidth(os.Stderr),
	}
	return run(ctx, s, args)
}

// terminalWidth is in columns, 0 for anything else.
func terminalWidth(f *os.File) int {
	width, _, err := term.GetSize(int(f.Fd()))
	if err != nil {
		return 0
	}
	return width
}

// sink remembers that printing failed: cobra's help does not look.
type sink struct {
	io.Writer
	err error
}

func (s *sink) Write(p []byte) (int, error) {
	n, err := s.Writer.Write(p)
	if err != nil {
		s.err = err
	}
	return n, err
}

func run(ctx context.Context, s streams, args []string) int {
	out := &sink{Writer: s.out}
	s.out = out
	root := newRoot(s)
	root.SetArgs(args)
	root.SetIn(s.in)
	root.SetOut(s.out)
	root.SetErr(s.err)
	err := root.ExecuteContext(ctx)
	switch {
	case err == nil && out.err == nil:
		return exitFine
	case err == nil:
		err = out.err
	case errors.Is(err, context.Canceled):
		s.say("stopped; nothing was changed")
		return exitStopped
	case errors.Is(err, errFound):
		return exitFindings
	case errors.Is(err, errFaulted):
		return exitFailed
	}
	s.say(err.Error())
	if m, ok := errors.AsType[misuse](err); ok {
		fmt.Fprintln(s.err, hanging("  "+m.help(), fitting(s.errColumns)-1))
	}
	return exitFailed
}

// say prints one line about the run itself. Text of files and flags goes
// through Visible: the last-resort printer must not be the one that lets an
// escape through.
func (s streams) say(message string) {
	message = "fixslate: " + diag.Visible(message)
	if s.errColumns > 0 {
		message = strings.ReplaceAll(wrap(message, max(s.errColumns, narrowestColumns)-2), "\n", "\n  ")
	}
	fmt.Fprintln(s.err, message)
}

func newRoot(s streams) *cobra.Command {
	root := &cobra.Command{
		Use:   "fixslate",
		Short: "plan a repair video, and check the plan",
		Long: `fixslate compiles a repair plan, one TOML file a video, into shot lists,
chapters, captions, a description and a shoot book, and checks it.

It shows the usual cautions and defers to local codes, the maker's instructions
and licensed practice. It never proves that a repair is safe.`,
		Version:       Version,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return unknownCommand(cmd, args[0])
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error { return cmd.Help() },
	}
	root.CompletionOptions.DisableDefaultCmd = true
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error { return misuse{err, cmd} })
	root.SetVersionTemplate("fixslate {{.Version}}\n")
	fittedHelp(root, s.paper())
	root.SetHelpCommand(&cobra.Command{Use: "help [COMMAND]", Short: "print what a command does", RunE: func(_ *cobra.Command, args []string) error {
		of, rest, err := root.Find(args)
		if err != nil || len(rest) > 0 {
			return unknownCommand(root, strings.Join(args, " "))
		}
		return of.Help()
	}})
	root.AddCommand(newNew(s), newCheck(s), newBuild(s), newRisks(s), newClaims(s), newTime(s), newDay(s), newFaults(s), newCaptions(s), newMatch(s), newPace(s), newLook(s), newExplain(s), newSchema(s))
	return root
}

// unknownCommand says that there is no such command, and which was meant.
func unknownCommand(root *cobra.Command, name string) error {
	var known []string
	for _, c := range root.Commands() {
		known = append(known, c.Name())
	}
	return misuse{fmt.Errorf("unknown command %q%s", name, didYouMean(name, known)), root}
}

// anyNumber is a bound of takes that binds nothing.
const anyNumber = math.MaxInt

// takes refuses other numbers of arguments, and says how the command is used.
func takes(least, most int) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) >= least && len(args) <= most {
			return nil
		}
		return misuse{fmt.Errorf("%s is given %s; write %s", cmd.Name(), prose.Counted(len(args), "argument"), strings.TrimSuffix(cmd.UseLine(), " [flags]")), cmd}
	}
}

// fittedHelp has help keep to the columns of the paper: its texts are laid out
// anew, its lists and examples hang where they are too long.
func fittedHelp(root *cobra.Command, w *paper) {
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) {
		for para := range strings.SplitSeq(cmp.Or(cmd.Long, cmd.Short), "\n\n") {
			paragraph(w, "", para)
			fmt.Fprintln(w)
		}
		for line := range strings.Lines(cmd.UsageString()) {
			fmt.Fprintln(w, hanging(strings.TrimSuffix(line, "\n"), w.columns-1))
		}
		w.Flush() // that it failed is seen by the sink below
	})
}
