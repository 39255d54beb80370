//go:build unix

package build

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"golang.org/x/sys/unix"
)

// tryLock takes an flock(2) on the file; a nil release without an error says
// that another holds it. The file is removed while the lock is held, so a lock
// counts only if the name still leads to the file that was locked.
func tryLock(root *os.Root, name string) (release func(), err error) {
	f, err := root.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o644)
	if errors.Is(err, fs.ErrPermission) {
		f, err = root.Open(name) // left by another user; reading is enough to lock
	}
	if err != nil {
		return nil, err
	}
	err = unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB)
	for err == unix.EINTR {
		err = unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB)
	}
	switch err {
	case nil:
	case unix.EWOULDBLOCK:
		f.Close()
		return nil, nil
	case unix.ENOLCK, unix.ENOTSUP, unix.ENOSYS:
		// A file system without locks: two builds at once are not kept apart
		// there; refusing every build would help nobody.
	default:
		f.Close()
		return nil, err
	}
	locked, err := f.Stat()
	if err != nil {
		f.Close()
		return nil, err
	}
	named, err := root.Lstat(name)
	if err == nil && named.Mode()&fs.ModeSymlink != 0 {
		f.Close()
		return nil, &Refusal{filepath.Join(root.Name(), name), "is a link where fixslate keeps its lock", "remove it"}
	}
	if err != nil || !os.SameFile(locked, named) {
		f.Close()
		return nil, nil // removed meanwhile: try again
	}
	return func() {
		root.Remove(name)
		f.Close()
	}, nil
}
