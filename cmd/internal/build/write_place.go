package build

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"syscall"
)

// place is where a target stands: the folder opened as an os.Root that holds
// target, stage and lock, and their names in it. Every file is reached through
// the root, so that a link swapped in during the run leads nowhere outside.
type place struct {
	root   *os.Root
	real   string // the target's path without links
	shown  string // the target as the user named it
	dir    string // the target in root; "." when root is the target itself
	lock   string // the lock file in root
	stage  string // the folder of temporaries in root
	parent string // a parent made for this run, removed again if nothing is written
}

// inside holds where there is no place beside the target and the temporaries
// stand in it.
func (p *place) inside() bool { return p.dir == "." }

// at is an output's path in root.
func (p *place) at(name string) string { return path.Join(p.dir, name) }

// show is an output's path as the user would write it.
func (p *place) show(name string) string { return filepath.Join(p.shown, filepath.FromSlash(name)) }

func (p *place) close() {
	p.root.Close()
	if p.parent != "" {
		os.Remove(p.parent) // only if still empty
	}
}

// keepParent lets a parent made for this run stay: something stands in it.
func (p *place) keepParent() { p.parent = "" }

const elsewhere = "name another folder with -o"

// openPlace finds the place of the folder dir. It changes nothing on disk but
// may make one missing parent.
func openPlace(dir string) (*place, error) {
	if dir == "" {
		return nil, &Refusal{"-o", "names no folder", elsewhere}
	}
	abs, err := filepath.Abs(dir)
	if err != nil {
		return nil, &Refusal{dir, "cannot be found from here: " + cause(err).Error(), "name the output folder by its whole path"}
	}
	p := &place{shown: dir}
	if _, err := os.Lstat(abs); errors.Is(err, fs.ErrNotExist) {
		parent, err := p.realParent(filepath.Dir(abs))
		if err != nil {
			return nil, err
		}
		p.real = filepath.Join(parent, filepath.Base(abs))
		return p.open(parent, filepath.Base(abs))
	}
	info, err := os.Stat(abs)
	if err != nil {
		return nil, unreachable(dir, err)
	}
	if !info.IsDir() {
		return nil, &Refusal{dir, "is a file, not a folder", elsewhere}
	}
	if p.real, err = filepath.EvalSymlinks(abs); err != nil {
		return nil, unreachable(dir, err)
	}
	parent := filepath.Dir(p.real)
	if !writable(p.real) {
		return nil, &Refusal{dir, "is a folder that can't be written", "change its permissions, or " + elsewhere}
	}
	if mountPoint(p.real) || !writable(parent) {
		return p.open(p.real, "")
	}
	return p.open(parent, filepath.Base(p.real))
}

// realParent resolves the parent of an absent target, making it if only it is
// missing.
func (p *place) realParent(dir string) (string, error) {
	real, err := filepath.EvalSymlinks(dir)
	if errors.Is(err, fs.ErrNotExist) {
		switch err := os.Mkdir(dir, 0o755); {
		case err == nil:
			p.parent = dir
		case errors.Is(err, fs.ErrNotExist):
			return "", &Refusal{p.shown, "can't be made: the folder above " + filepath.Dir(p.shown) + " is missing", "make it first, or " + elsewhere}
		case !errors.Is(err, fs.ErrExist):
			return "", &Refusal{p.shown, "can't be made, nor the folder above it: " + cause(err).Error(), elsewhere}
		}
		real, err = filepath.EvalSymlinks(dir)
	}
	if err != nil {
		return "", unreachable(p.shown, err)
	}
	if !writable(real) {
		p.dropParent()
		return "", &Refusal{p.shown, "can't be made: the folder above it can't be written", "change its permissions, or " + elsewhere}
	}
	return real, nil
}

func (p *place) dropParent() {
	if p.parent != "" {
		os.Remove(p.parent)
	}
}

// open opens root; base is the target in it, empty for root itself.
func (p *place) open(root, base string) (*place, error) {
	r, err := os.OpenRoot(root)
	if err != nil {
		p.dropParent()
		return nil, unreachable(p.shown, err)
	}
	p.root = r
	p.dir = base
	if base == "" {
		p.dir = "."
	}
	p.lock, p.stage = beside(base, "lock"), beside(base, "new")
	return p, nil
}

// beside is the name of a temporary of ours beside base. It is derived from
// the name alone: a leftover is found without a search, and on a file system
// that folds case two spellings of one target meet in one lock.
func beside(base, kind string) string {
	if base == "" {
		return ".fixslate-" + kind
	}
	// File systems take 255 bytes (or UTF-16 units) a name.
	if len(base) > 200 {
		s := sha256.Sum256([]byte(strings.ToLower(base)))
		base = hex.EncodeToString(s[:8])
	}
	return "." + base + ".fixslate-" + kind
}

// unreachable puts an error on the way to a path into words.
func unreachable(shown string, err error) error {
	reason := "can't be reached: " + cause(err).Error()
	switch {
	case errors.Is(err, syscall.ELOOP) || strings.Contains(err.Error(), "too many links"):
		reason = "is a link that leads back to itself"
	case errors.Is(err, fs.ErrNotExist):
		reason = "is a link to something that is missing"
	case errors.Is(err, syscall.ENOTDIR):
		reason = "can't be reached: a part of the path is a file"
	case errors.Is(err, syscall.ENAMETOOLONG):
		reason = "is too long a name"
	}
	return &Refusal{shown, reason, elsewhere}
}
