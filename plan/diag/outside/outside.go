// Package outside finds what tests want beside Go: programs of others, modules
// of npm, data that does not belong to the project.
//
// In goes a name; out comes a path. Where there is none the test says what it
// skipped; with FIXSLATE_OUTSIDE set, as in continuous integration, the absence
// of a program is a failure. Only tests import it.
package outside

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// Program is the path of a program of this machine.
func Program(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		Absent(t, name+" is not installed")
	}
	return path
}

// Modules is the folder that FIXSLATE_NODE_MODULES names, with these files of
// npm modules in it.
func Modules(t testing.TB, files ...string) string {
	t.Helper()
	dir := os.Getenv("FIXSLATE_NODE_MODULES")
	if dir == "" {
		Absent(t, "FIXSLATE_NODE_MODULES names no folder of npm modules")
	}
	for _, name := range files {
		if _, err := os.Stat(filepath.Join(dir, filepath.FromSlash(name))); err != nil {
			Absent(t, name+" is not in FIXSLATE_NODE_MODULES")
		}
	}
	return dir
}

// Absent skips a test for what is not there, or fails it where that is asked
// for.
func Absent(t testing.TB, what string) {
	t.Helper()
	if os.Getenv("FIXSLATE_OUTSIDE") != "" {
		t.Fatalf("%s, and FIXSLATE_OUTSIDE asks for it", what)
	}
	t.Skipf("%s: nothing was compared with others", what)
}

// Data is a path in the folder that FIXSLATE_DATA names.
func Data(t testing.TB, parts ...string) string {
	t.Helper()
	dir := os.Getenv("FIXSLATE_DATA")
	if dir == "" {
		t.Skip("FIXSLATE_DATA is not set: nothing was measured on data of others")
	}
	return filepath.Join(append([]string{dir}, parts...)...)
}
