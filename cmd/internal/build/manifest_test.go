package build

import (
	"encoding/json"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// manifestOf is the file that Write puts beside files.
func manifestOf(t Target, files []File) []byte { return newManifest(t, files).bytes() }

func TestManifest(t *testing.T) {
	ta := Target{Dir: "not told", PlanSum: strings.Repeat("ab", 32), Version: `1.0 "x"`, Set: "match"}
	got := string(manifestOf(ta, []File{{"b.txt", []byte("abc")}, {"a/c.txt", nil}}))
	// SHA-256 of "abc" and of nothing: FIPS 180-2, appendix B.1, and NIST's
	// SHA256ShortMsg.rsp, Len = 0.
	want := `{
  "fixslate": "1.0 \"x\"",
  "plan_sha256": "abababababababababababababababababababababababababababababababab",
  "files": [
    {"name":"a/c.txt","size":0,"sha256":"e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855","set":"match"},
    {"name":"b.txt","size":3,"sha256":"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad","set":"match"}
  ]
}
`
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if !json.Valid([]byte(got)) {
		t.Error("not JSON")
	}
	m, err := readManifest([]byte(got))
	noError(t, err)
	if diff := cmp.Diff(got, string(m.bytes())); diff != "" {
		t.Errorf("read and written again: %s", diff)
	}
	if _, err := readManifest(manifestOf(ta, nil)); err != nil {
		t.Errorf("a manifest of no files: %v", err)
	}
}

// sha256sum of coreutils agrees with the manifest about the files on disk.
func TestManifestAgainstCoreutils(t *testing.T) {
	tool, err := exec.LookPath("sha256sum")
	if err != nil {
		t.Skip("sha256sum is not installed: sums are not checked from outside")
	}
	ta := target(filepath.Join(t.TempDir(), "out"))
	noError(t, Write(t.Context(), ta, someSet("a")))
	m, err := readManifest([]byte(readTree(t, ta.Dir)[manifestName]))
	noError(t, err)
	var list strings.Builder
	for _, e := range m.Files {
		list.WriteString(e.Sum + "  " + e.Name + "\n")
	}
	cmd := exec.Command(tool, "--check", "--strict", "-")
	cmd.Dir, cmd.Stdin = ta.Dir, strings.NewReader(list.String())
	if out, err := cmd.CombinedOutput(); err != nil || strings.Count(string(out), ": OK") != len(someSet("a")) {
		t.Errorf("%v\n%s", err, out)
	}
}

func FuzzReadManifest(f *testing.F) {
	ta := target("")
	f.Add(manifestOf(ta, someSet("a")))
	f.Add([]byte(`{"fixslate":"1","plan_sha256":"","files":[{"name":"../x","size":0,"sha256":""}]}`))
	f.Add([]byte(`{"fixslate":null,"files":[]}`))
	f.Add([]byte("{"))
	f.Fuzz(func(t *testing.T, data []byte) {
		m, err := readManifest(data)
		if err != nil {
			return
		}
		for _, e := range m.Files {
			if !filepath.IsLocal(filepath.FromSlash(e.Name)) || e.Name == manifestName {
				t.Errorf("names %q", e.Name)
			}
		}
		if _, err := readManifest(m.bytes()); err != nil {
			t.Errorf("can't be read again: %v", err)
		}
	})
}
