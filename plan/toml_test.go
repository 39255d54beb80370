package plan_test

import (
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"fixslate/plan"
	"fixslate/plan/diag"
)

// The language-neutral corpus of TOML parsers, toml-test, travels inside the
// BurntSushi/toml module: each of its invalid files is refused with a place,
// none of its valid ones is called TOML that is wrong.
func TestTOMLCorpus(t *testing.T) {
	out, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/BurntSushi/toml").Output()
	root := filepath.Join(strings.TrimSpace(string(out)), "internal", "toml-test", "tests")
	if _, statErr := os.Stat(root); err != nil || statErr != nil {
		t.Skip("the module's own copy of toml-test is not at hand")
	}
	valid, invalid := 0, 0
	err = filepath.WalkDir(root, func(full string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(full) != ".toml" || filepath.Base(full) == "version.toml" {
			return err
		}
		rel, err := filepath.Rel(root, full)
		if err != nil {
			return err
		}
		name := filepath.ToSlash(rel)
		raw, err := os.ReadFile(full)
		if err != nil {
			return err
		}
		src, findings := diag.NewSource(name, raw)
		if len(findings) == 0 {
			var p *plan.Plan
			if p, _, findings = plan.Decode(src, nil); p != nil {
				t.Errorf("%s is taken for a plan", name)
			}
		}
		switch {
		case strings.HasPrefix(name, "invalid/"):
			invalid++
			if diag.Worst(findings) != diag.Error || findings[0].At.Position().Line < 1 {
				t.Errorf("%s is not refused with a place:\n%s", name, print(findings))
			}
		default:
			valid++
			for _, f := range findings {
				if f.Severity == diag.Error && (f.Rule == "syntax" || f.Rule == "encoding") {
					t.Errorf("%s is TOML:\n%s", name, print([]diag.Finding{f}))
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if valid < 150 || invalid < 300 {
		t.Errorf("only %d valid and %d invalid files", valid, invalid)
	}
	t.Logf("%d valid, %d invalid files", valid, invalid)
}
