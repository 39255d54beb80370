//go:build unix

package build

import (
	"os"
	"path/filepath"
	"testing"
)

// faulty runs a task on a target that holds set a, in both ways, and checks
// that nothing has changed and nothing is left beside it.
func faulty(t *testing.T, task string) {
	t.Helper()
	for way, users := range ways {
		t.Run(way, func(t *testing.T) {
			top := t.TempDir()
			ta := target(filepath.Join(top, "out"))
			noError(t, Write(t.Context(), ta, someSet("a")))
			putFiles(t, ta.Dir, users)
			runTask(t, task, ta.Dir)
			checkTree(t, ta.Dir, wantTree(ta, someSet("a"), users))
			checkAlone(t, top, "out")
			runTask(t, task, filepath.Join(top, "new"))
			checkAlone(t, top, "out")
		})
	}
}

func TestFileSizeLimit(t *testing.T) { faulty(t, "small files") }

func TestFewHandles(t *testing.T) {
	top := t.TempDir()
	ta := target(filepath.Join(top, "out"))
	noError(t, Write(t.Context(), ta, someSet("a")))
	runTask(t, "few files", ta.Dir)
	if oneOf(t, ta.Dir, nil) == "" {
		t.Error("a mix")
	}
	noError(t, Write(t.Context(), ta, someSet("bb")))
	checkTree(t, ta.Dir, wantTree(ta, someSet("bb"), nil))
	checkAlone(t, top, "out")
}

func TestUmask(t *testing.T) {
	for task, modes := range map[string][2]os.FileMode{
		"umask 000": {0o644, 0o755},
		"umask 077": {0o600, 0o700},
	} {
		dir := filepath.Join(t.TempDir(), "out")
		runTask(t, task, dir)
		for name, want := range map[string]os.FileMode{"shots.md": modes[0], manifestName: modes[0], "chapters": modes[1], ".": modes[1]} {
			info, err := os.Stat(filepath.Join(dir, name))
			noError(t, err)
			if got := info.Mode().Perm(); got != want {
				t.Errorf("%s: %s has mode %o, want %o", task, name, got, want)
			}
		}
	}
}

// open lets any user reach a test's folder.
func open(t *testing.T) string {
	t.Helper()
	top := t.TempDir()
	noError(t, os.Chmod(filepath.Dir(top), 0o755))
	noError(t, os.Chmod(top, 0o755))
	return top
}

// A folder that can't be written is refused before any work. Root ignores
// permissions, so the task gives that up first.
func TestReadOnlyFolder(t *testing.T) {
	for _, readOnly := range []string{"out", "out/chapters"} {
		top := open(t)
		ta := target(filepath.Join(top, "out"))
		noError(t, Write(t.Context(), ta, someSet("a")))
		giveAway(t, top)
		noError(t, os.Chmod(filepath.Join(top, readOnly), 0o555))
		runTask(t, "nobody", ta.Dir)
		noError(t, os.Chmod(filepath.Join(top, readOnly), 0o755))
		checkTree(t, ta.Dir, wantTree(ta, someSet("a"), nil))
		checkAlone(t, top, "out")
	}
	top := open(t)
	noError(t, os.Chmod(top, 0o555))
	runTask(t, "nobody", filepath.Join(top, "out"))
	runTask(t, "nobody", filepath.Join(top, "outs", "washer"))
	checkAlone(t, top)
	noError(t, os.Chmod(top, 0o755))
}

// giveAway makes everything in top belong to the user that the tasks become.
func giveAway(t *testing.T, top string) {
	t.Helper()
	if os.Getuid() != 0 {
		return
	}
	noError(t, filepath.WalkDir(top, func(path string, _ os.DirEntry, err error) error {
		if err == nil {
			err = os.Lchown(path, 65534, 65534)
		}
		return err
	}))
}

// Where the target can be written and the folder above can't, the temporaries
// stand in the target.
func TestReadOnlyParent(t *testing.T) {
	top := open(t)
	noError(t, os.Mkdir(filepath.Join(top, "out"), 0o755))
	giveAway(t, top)
	noError(t, os.Chmod(top, 0o555))
	ta := target(filepath.Join(top, "out"))
	runTask(t, "nobody inside", ta.Dir)
	noError(t, os.Chmod(top, 0o755))
	checkTree(t, ta.Dir, wantTree(ta, someSet("bb"), nil))
	checkAlone(t, top, "out")
}
