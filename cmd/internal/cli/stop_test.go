package cli

import (
	"bytes"
	"context"
	"os"
	"strings"
	"testing"

	"fixslate/samples"
)

// Ctrl-C ends every command that writes with its own code, and nothing is
// written.
func TestStopped(t *testing.T) {
	t.Chdir(t.TempDir())
	text, _ := samples.Plan("washer-pump")
	const cue = "1\n00:00:01,000 --> 00:00:09,000\nyour washer has stopped with a drum full of water\n"
	for name, data := range map[string]string{"plan.toml": string(text), "edit.srt": cue} {
		if err := os.WriteFile(name, []byte(data), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	stopped, stop := context.WithCancel(context.Background())
	stop()
	for _, c := range []string{
		"new other", "build plan.toml", "captions edit.srt --to vtt -o edit.vtt", "match plan.toml edit.srt --force -o out",
		"pace plan.toml=edit.srt -o pace.toml", "check --write-cautions plan.toml",
	} {
		var out, complaints bytes.Buffer
		code := run(stopped, streams{in: strings.NewReader(""), out: &out, err: &complaints}, strings.Fields(c))
		if code != exitStopped || !strings.Contains(complaints.String(), "stopped; nothing was changed") {
			t.Errorf("%s: exit %d: %s", c, code, complaints.String())
		}
	}
	left, err := os.ReadDir(".")
	if err != nil || len(left) != 2 {
		t.Errorf("left behind: %v, %v", left, err)
	}
}
