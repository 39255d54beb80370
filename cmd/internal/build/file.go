package build

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"time"
)

// WriteFile makes path, a single file, hold data: it is made, or replaced at
// one moment with its permissions kept. The folder it stands in must exist.
// keep lists files that must not be replaced, compared by identity.
//
// A device, a pipe or anything under /dev is written straight, as there is
// nothing to replace. Any other link is refused: to follow it could overwrite
// a file that was not named, to replace it would lose the link.
//
// Errors are as for Write.
func WriteFile(ctx context.Context, path string, data []byte, keep []string) error {
	return writeFile(ctx, path, data, func(info fs.FileInfo) error {
		for _, k := range keep {
			kept, err := os.Stat(k)
			if err == nil && info != nil && os.SameFile(kept, info) {
				return &Refusal{path, "is " + k + " itself, which was read", "name another file with -o"}
			}
		}
		return nil
	})
}

// CreateFile is WriteFile for a file that must not exist yet.
func CreateFile(ctx context.Context, path string, data []byte) error {
	return writeFile(ctx, path, data, func(info fs.FileInfo) error {
		if info != nil {
			return &Refusal{path, "exists already, and is not overwritten", "name another file, or move this one"}
		}
		return nil
	})
}

// writeFile asks allow about what stands at path (nil: nothing), at first and
// again under the lock.
func writeFile(ctx context.Context, path string, data []byte, allow func(fs.FileInfo) error) error {
	abs, info, err := lookAt(path)
	if err != nil {
		return err
	}
	if err := allow(info); err != nil {
		return err
	}
	if info != nil && !info.Mode().IsRegular() || onDevice(abs) {
		return writeStraight(ctx, path, data)
	}
	parent, err := filepath.EvalSymlinks(filepath.Dir(abs))
	if errors.Is(err, fs.ErrNotExist) {
		return &Refusal{path, "can't be made: the folder " + filepath.Dir(path) + " is missing", "make it first, or name another file"}
	}
	if err != nil {
		return unreachable(path, err)
	}
	if !writable(parent) {
		return &Refusal{path, "can't be written: the folder " + filepath.Dir(path) + " is read-only", "change its permissions, or name another file"}
	}
	p := &place{shown: path}
	if _, err := p.open(parent, filepath.Base(abs)); err != nil {
		return err
	}
	defer p.close()
	release, err := lock(ctx, p.root, p.lock)
	if err != nil {
		return p.failed("lock it", err)
	}
	defer release()
	if err := p.putFile(ctx, data, allow); err != nil {
		return p.failed("write it", err)
	}
	return nil
}

func (p *place) putFile(ctx context.Context, data []byte, allow func(fs.FileInfo) error) error {
	info, err := p.there(p.dir)
	if err != nil {
		return err
	}
	if err := allow(info); err != nil {
		return err
	}
	if left, err := p.root.Lstat(p.stage); err == nil { // by a killed run
		if !left.Mode().IsRegular() {
			return &Refusal{p.stagePath(), "stands where fixslate keeps its temporary", "move it elsewhere"}
		}
		if err := p.root.Remove(p.stage); err != nil {
			return err
		}
	}
	defer p.root.Remove(p.stage)
	staged, err := create(p.root, p.stage, data, info)
	if staged != nil {
		err = errors.Join(err, syncAll([]*os.File{staged}))
	}
	if err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	if info == nil {
		// A link fails where a name has come up meanwhile; a rename would not.
		err = p.root.Link(p.stage, p.dir)
		if errors.Is(err, fs.ErrExist) {
			return &Refusal{p.shown, "has just come up, and is not overwritten", "run the same command again"}
		}
	}
	if info != nil || err != nil {
		err = p.root.Rename(p.stage, p.dir)
	}
	if err == nil {
		syncFolder(p.root, ".") // the data is synced; a late error changes nothing
	}
	return err
}

// lookAt finds what stands at path: nil for nothing. Links are followed only
// to devices and pipes.
func lookAt(path string) (abs string, info fs.FileInfo, err error) {
	if path == "" {
		return "", nil, &Refusal{"-o", "names no file", "name a file"}
	}
	isFolder := &Refusal{path, "is a folder, not a file", "name a file in it"}
	if os.IsPathSeparator(path[len(path)-1]) {
		return "", nil, isFolder
	}
	if abs, err = filepath.Abs(path); err != nil {
		return "", nil, &Refusal{path, "cannot be found from here: " + cause(err).Error(), "name it by its whole path"}
	}
	info, err = os.Lstat(abs)
	if errors.Is(err, fs.ErrNotExist) {
		return abs, nil, nil
	}
	if err == nil && info.Mode()&fs.ModeSymlink != 0 {
		info, err = os.Stat(abs)
		if err == nil && info.Mode().IsRegular() && !onDevice(abs) {
			to, _ := filepath.EvalSymlinks(abs)
			return "", nil, &Refusal{path, "is a link to " + to, "name that file itself, or remove the link"}
		}
	}
	if err != nil {
		return "", nil, unreachable(path, err)
	}
	if info.IsDir() {
		return "", nil, isFolder
	}
	return abs, info, nil
}

// onDevice holds for the names by which a process reaches its own streams;
// behind them may be a plain file, but the name itself must not be replaced.
func onDevice(abs string) bool {
	return strings.HasPrefix(abs, "/dev/") || strings.HasPrefix(abs, "/proc/")
}

// writeStraight writes to a device, a pipe or a stream of this process. A pipe
// that nobody reads is refused, where a plain open would wait for ever.
func writeStraight(ctx context.Context, path string, data []byte) error {
	// Append: behind /dev/stdout may be a file that the shell appends to.
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_APPEND|syscall.O_NONBLOCK, 0)
	if errors.Is(err, syscall.ENXIO) {
		return &Refusal{path, "is a pipe that nobody reads", "start its reader first, or name another file"}
	}
	if err != nil {
		return inWords(path, "open it", err)
	}
	stop := context.AfterFunc(ctx, func() { f.SetWriteDeadline(time.Unix(1, 0)) })
	defer stop()
	_, err = f.Write(data)
	err = errors.Join(err, f.Close())
	if ctx.Err() != nil {
		err = ctx.Err()
	}
	if err != nil {
		return inWords(path, "write it", err)
	}
	return nil
}
