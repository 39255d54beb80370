package cli

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// saved is a file that somebody saves in place while it is read.
type saved struct {
	*os.File
	t     *testing.T
	texts []string // what is written after the next reads
}

func (s *saved) Read(b []byte) (int, error) {
	n, err := s.File.Read(b[:min(len(b), 16)])
	if len(s.texts) > 0 {
		if err := os.WriteFile(s.Name(), []byte(s.texts[0]), 0o600); err != nil {
			s.t.Fatal(err)
		}
		s.texts = s.texts[1:]
	}
	return n, err
}

func TestAFileIsReadWhole(t *testing.T) {
	open := func(texts ...string) *saved {
		name := filepath.Join(t.TempDir(), "plan.toml")
		if err := os.WriteFile(name, []byte("the old text"), 0o600); err != nil {
			t.Fatal(err)
		}
		f, err := os.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { f.Close() })
		return &saved{File: f, t: t, texts: texts}
	}
	if raw, err := whole(open("", "then a new and longer one"), 100); err != nil || string(raw) != "then a new and longer one" {
		t.Errorf("saved once: %q, %v", raw, err)
	}
	if raw, err := whole(open(), 100); err != nil || string(raw) != "the old text" {
		t.Errorf("never saved: %q, %v", raw, err)
	}
	var texts []string
	for n := range 2000 {
		texts = append(texts, string(bytes.Repeat([]byte("x"), 50+n)))
	}
	if raw, err := whole(open(texts...), 1000); err == nil {
		t.Errorf("saved all the time: %d bytes and no error", len(raw))
	}
}
