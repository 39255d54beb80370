package build

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"golang.org/x/sys/unix"
)

// mount gives a small file system in memory, on a folder of the test's.
func mount(t *testing.T, options string) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "disk")
	noError(t, os.Mkdir(dir, 0o755))
	if err := unix.Mount("tmpfs", dir, "tmpfs", 0, options); err != nil {
		t.Skipf("mounting a small file system takes more rights than this run has: %v", err)
	}
	t.Cleanup(func() { noError(t, unix.Unmount(dir, 0)) })
	return dir
}

// A full disk, full of bytes or of files, with the target a folder on it or
// the whole of it.
func TestFullDisk(t *testing.T) {
	for _, options := range []string{"size=120k", "nr_inodes=30"} {
		for _, name := range []string{"out", "."} {
			t.Run(options+" "+name, func(t *testing.T) {
				disk := mount(t, options)
				ta := target(filepath.Join(disk, name))
				noError(t, Write(t.Context(), ta, someSet("a")))
				runTask(t, "full", ta.Dir)
				checkTree(t, ta.Dir, wantTree(ta, someSet("a"), nil))
				if name == "out" {
					checkAlone(t, disk, "out")
				}
				checkAlone(t, filepath.Dir(disk), "disk")
			})
		}
	}
}

func TestMountPoint(t *testing.T) {
	disk := mount(t, "size=1m")
	top := t.TempDir()
	bound := filepath.Join(top, "bound")
	noError(t, os.MkdirAll(filepath.Join(top, "real"), 0o755))
	noError(t, os.Mkdir(bound, 0o755))
	noError(t, unix.Mount(filepath.Join(top, "real"), bound, "", unix.MS_BIND, ""))
	t.Cleanup(func() { noError(t, unix.Unmount(bound, 0)) })
	for _, dir := range []string{disk, bound} {
		users := map[string]string{"notes.txt": "mine"}
		ta := target(dir)
		noError(t, Write(t.Context(), ta, someSet("a")))
		putFiles(t, dir, users)
		noError(t, os.Chmod(dir, 0o700))
		noError(t, Write(t.Context(), ta, someSet("bb")))
		checkTree(t, dir, wantTree(ta, someSet("bb"), users))
		noError(t, os.MkdirAll(filepath.Join(dir, ".fixslate-new", "tree"), 0o755)) // left by a kill
		noError(t, os.WriteFile(filepath.Join(dir, ".fixslate-lock"), nil, 0o644))
		noError(t, Write(t.Context(), ta, someSet("a")))
		checkTree(t, dir, wantTree(ta, someSet("a"), users))
	}
	checkAlone(t, filepath.Dir(disk), "disk")
	checkAlone(t, top, "bound", "real")
}

// What a swap can't reproduce is moved into instead, and keeps what it has.
func TestSwapGivesWay(t *testing.T) {
	inode := func(dir string) uint64 {
		var st unix.Stat_t
		noError(t, unix.Stat(dir, &st))
		return st.Ino
	}
	cases := map[string]func(t *testing.T, dir string){
		"extended attribute": func(t *testing.T, dir string) {
			if err := unix.Setxattr(dir, "user.colour", []byte("grey"), 0); err != nil {
				t.Skipf("no extended attributes here: %v", err)
			}
		},
		"owner": func(t *testing.T, dir string) {
			if os.Getuid() != 0 {
				t.Skip("giving a folder away takes more rights than this run has")
			}
			noError(t, os.Chown(filepath.Join(dir, "captions"), 65534, 65534))
		},
		"many files": func(t *testing.T, dir string) {
			for i := range carryMax + 1 {
				putFiles(t, dir, map[string]string{fmt.Sprint("user", i): "mine"})
			}
		},
		"somebody in it": func(t *testing.T, dir string) { t.Chdir(filepath.Join(dir, "chapters")) },
	}
	for name, prepare := range cases {
		t.Run(name, func(t *testing.T) {
			ta := target(filepath.Join(t.TempDir(), "out"))
			noError(t, Write(t.Context(), ta, someSet("a")))
			old := inode(ta.Dir)
			noError(t, Write(t.Context(), ta, someSet("bb")))
			if swaps(t) && inode(ta.Dir) == old {
				t.Error("a plain folder was not swapped")
			}
			prepare(t, ta.Dir)
			all := readTree(t, ta.Dir)
			for file, text := range wantTree(ta, someSet("a"), nil) {
				all[file] = text
			}
			old = inode(ta.Dir)
			noError(t, Write(t.Context(), ta, someSet("a")))
			if inode(ta.Dir) != old {
				t.Error("the folder is another one now")
			}
			checkTree(t, ta.Dir, all)
		})
	}
}
