package cli

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"fixslate/samples"
)

// Every command keeps to its terminal: no line is left for the terminal to cut
// in two. Code in the pages of explain is printed as it is written, and a place
// in a file is never broken.
func TestLinesFitTheTerminal(t *testing.T) {
	text, _ := samples.Plan("washer-pump")
	plan := filepath.Join(t.TempDir(), "plan.toml")
	if err := os.WriteFile(plan, text, 0o644); err != nil {
		t.Fatal(err)
	}
	t.Chdir(filepath.Dir(plan))
	const edit = "edit.srt"
	captions := ""
	for i := range 40 {
		captions += fmt.Sprintf("%d\n00:%02d:00,000 --> 00:%02d:04,000\npull the plug and look at the drain hose, five newton metres on the marrow of it\n\n", i+1, i, i)
	}
	if err := os.WriteFile(edit, []byte(captions), 0o644); err != nil {
		t.Fatal(err)
	}
	commands := []string{
		"time plan.toml", "day plan.toml", "risks plan.toml", "faults plan.toml", "claims plan.toml", "check plan.toml", "check --fail-on never nothing.toml",
		"match plan.toml edit.srt", "pace plan.toml=edit.srt", "captions edit.srt --profile narrow", "build plan.toml -o out", "new another", "new plan.toml",
		"look", "look thread M8", "look wire", "look hazard mains-shock", "explain", "nonsense", "--help", "check --help", "match --help", "day --help",
	}
	for _, columns := range []int{60, 80, 100} {
		for _, c := range commands {
			var out, complaints bytes.Buffer
			run(context.Background(), streams{in: strings.NewReader(""), out: &out, err: &complaints, columns: columns, errColumns: columns}, strings.Fields(c))
			if out.Len()+complaints.Len() == 0 && !strings.HasPrefix(c, "captions") {
				t.Errorf("%s prints nothing", c)
			}
			for line := range strings.Lines(out.String() + "\n" + complaints.String()) {
				if n := utf8.RuneCountInString(strings.TrimRight(line, " \n")); n > columns {
					t.Errorf("%s: %d columns of %d: %s", c, n, columns, line)
				}
			}
		}
		os.Remove("another.toml")
	}
}

func TestFitting(t *testing.T) {
	for terminal, want := range map[int]int{0: 80, -1: 80, 12: 40, 60: 60, 80: 80, 100: 100, 240: 100} {
		if got := fitting(terminal); got != want {
			t.Errorf("a terminal of %d: %d columns, want %d", terminal, got, want)
		}
	}
}

func TestHanging(t *testing.T) {
	for line, want := range map[string]string{
		"short":                               "short",
		"one two three four five six":         "one two three\n  four five six",
		"  go -a   first second third":        "  go -a   first\n          second\n          third",
		"      --a-long-flag   one two three": "      --a-long-flag\n          one two\n          three",
	} {
		if got := hanging(line, 18); got != want {
			t.Errorf("%q:\n%s\nwant\n%s", line, got, want)
		}
	}
}
