package build

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"
)

func TestWriteFile(t *testing.T) {
	top := t.TempDir()
	path := filepath.Join(top, "a.srt")
	noError(t, WriteFile(t.Context(), path, []byte("one"), nil))
	noError(t, os.Chmod(path, 0o600))
	noError(t, WriteFile(t.Context(), path, []byte("two"), []string{filepath.Join(top, "none")}))
	checkTree(t, top, map[string]string{"a.srt": "two"})
	info, err := os.Stat(path)
	noError(t, err)
	if info.Mode().Perm() != 0o600 {
		t.Errorf("mode %o", info.Mode().Perm())
	}
}

func TestCreateFile(t *testing.T) {
	top := t.TempDir()
	path := filepath.Join(top, "plan.toml")
	noError(t, CreateFile(t.Context(), path, []byte("one")))
	checkRefused(t, CreateFile(t.Context(), path, []byte("two")), "plan.toml", "exists")
	putFiles(t, top, map[string]string{"link.toml": "-> plan.toml", "dangling.toml": "-> none"})
	checkRefused(t, CreateFile(t.Context(), filepath.Join(top, "link.toml"), nil), "link")
	checkRefused(t, CreateFile(t.Context(), filepath.Join(top, "dangling.toml"), nil), "missing")
	checkTree(t, top, map[string]string{"plan.toml": "one", "link.toml": "-> plan.toml", "dangling.toml": "-> none"})
}

func TestWriteFileRefuses(t *testing.T) {
	top := t.TempDir()
	putFiles(t, top, map[string]string{"plan.toml": "plan", "file": "x", "dir/x": "x", "link": "-> file", "loop": "-> loop", ".busy.fixslate-new/x": "x"})
	noError(t, os.Link(filepath.Join(top, "plan.toml"), filepath.Join(top, "twin.toml")))
	before := readTree(t, top)
	keep := []string{filepath.Join(top, "plan.toml")}
	for name, words := range map[string]string{
		"plan.toml": "which was read",
		"twin.toml": "plan.toml itself",
		"dir":       "is a folder",
		"new/":      "is a folder",
		"link":      "is a link to",
		"loop":      "leads back to itself",
		"file/x":    "part of the path is a file",
		"none/x":    "missing",
		"busy":      "stands where",
	} {
		checkRefused(t, WriteFile(t.Context(), top+"/"+name, []byte("new"), keep), words)
	}
	checkRefused(t, WriteFile(t.Context(), "", nil, nil), "names no file")
	checkTree(t, top, before)
}

func TestWriteFileCancelled(t *testing.T) {
	top := t.TempDir()
	putFiles(t, top, map[string]string{"a.srt": "old"})
	for calls := 1; calls < 6; calls++ {
		ctx := &tiring{Context: t.Context(), left: calls, done: make(chan struct{})}
		err := WriteFile(ctx, filepath.Join(top, "a.srt"), []byte("new"), nil)
		if err == nil && calls > 2 {
			checkTree(t, top, map[string]string{"a.srt": "new"})
			return
		}
		if !errors.Is(err, context.Canceled) {
			t.Fatal(err)
		}
		checkTree(t, top, map[string]string{"a.srt": "old"})
	}
	t.Error("never written")
}

// A run that was killed leaves its temporary and its lock file.
func TestWriteFileClearsLeftovers(t *testing.T) {
	top := t.TempDir()
	putFiles(t, top, map[string]string{"a.srt": "old", ".a.srt.fixslate-new": "half", ".a.srt.fixslate-lock": ""})
	noError(t, WriteFile(t.Context(), filepath.Join(top, "a.srt"), []byte("new"), nil))
	checkTree(t, top, map[string]string{"a.srt": "new"})
}
