package cli

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"fixslate/plan"
	"fixslate/plan/diag"
)

// decodeOnly is a program that reads a plan and does nothing with it.
func decodeOnly() {
	raw, err := os.ReadFile(os.Args[1])
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(exitFailed)
	}
	src, _ := diag.NewSource(os.Args[1], raw)
	if p, _, _ := plan.Decode(src, nil); p == nil {
		os.Exit(exitFailed)
	}
}

// BenchmarkProcess is what whole processes on the largest sample take, start
// included, of which a benchmark of a function shows nothing: one that only
// decodes, a check, a build. On a busy machine their ratios mean more than they.
func BenchmarkProcess(b *testing.B) {
	sample := filepath.Join("..", "..", "..", "samples", "van-blower", "plan.toml")
	for _, run := range []struct {
		name string
		args []string
	}{
		{"decode", []string{"decode-only", sample}},
		{"check", []string{"fixslate", "check", sample}},
		{"build", []string{"fixslate", "build", sample, "-o", filepath.Join(b.TempDir(), "out")}},
	} {
		b.Run(run.name, func(b *testing.B) {
			var user, system time.Duration
			for b.Loop() {
				cmd := exec.Command(run.args[0], run.args[1:]...)
				if out, err := cmd.CombinedOutput(); err != nil {
					b.Fatalf("%v: %s", err, out)
				}
				user += cmd.ProcessState.UserTime()
				system += cmd.ProcessState.SystemTime()
			}
			each := func(of time.Duration) float64 { return of.Seconds() * 1e3 / float64(b.N) }
			b.ReportMetric(each(user), "user-ms/op")
			b.ReportMetric(each(system), "system-ms/op")
		})
	}
}
