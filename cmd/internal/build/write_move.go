package build

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
)

// move brings the staged files into the target one by one: first backups of
// what they replace, then the mark from which a later run would go on, then
// renames, the manifest last. A failure on the way is rolled back.
func (p *place) move(c *change) error {
	names := movedNames(c)
	if err := p.backUp(names, c); err != nil {
		return err
	}
	if err := writeNew(p.root, p.mark(markMoving), nil, nil); err != nil {
		return err
	}
	moved, err := p.moveAll(names, c.drop)
	if err == nil {
		// The target is new. A failure to tidy up is the next run's to mend.
		syncFolder(p.root, p.dir)
		p.clear()
		return nil
	}
	if backErr := p.moveBack(moved); backErr != nil {
		return &halfway{dir: p.shown, err: cause(err), back: cause(backErr)}
	}
	return err
}

// halfway is a move that could be neither finished nor undone.
type halfway struct {
	dir       string
	err, back error
}

func (h *halfway) Error() string {
	return fmt.Sprintf("%s: writing stopped halfway (%v) and could not be undone (%v); mend that and run the same command again, which finishes it", h.dir, h.err, h.back)
}

func (h *halfway) Unwrap() []error { return []error{h.err, h.back} }

// movedNames are the files of a change in the order of a move.
func movedNames(c *change) []string {
	names := namesOf(c.files)
	slices.SortFunc(names, manifestLast)
	return names
}

// manifestLast orders names, with the manifest after all others.
func manifestLast(a, b string) int {
	switch {
	case a == b:
		return 0
	case a == manifestName:
		return 1
	case b == manifestName || a < b:
		return -1
	}
	return 1
}

// backUp keeps what a move will replace: by a hard link, or by a copy where
// there are none.
func (p *place) backUp(names []string, c *change) error {
	if err := p.root.Mkdir(p.old("."), 0o700); err != nil {
		return err
	}
	for _, dir := range folders(append(slices.Clone(names), c.drop...)) {
		if err := p.root.Mkdir(p.old(dir), 0o700); err != nil {
			return err
		}
	}
	for _, name := range names {
		info, there := c.held.outputs[name]
		if !there || p.root.Link(p.at(name), p.old(name)) == nil {
			continue
		}
		if err := p.copyOld(name, info); err != nil {
			return err
		}
	}
	return nil
}

func (p *place) copyOld(name string, info fs.FileInfo) error {
	if info.Mode()&fs.ModeSymlink != 0 {
		to, err := p.root.Readlink(p.at(name))
		if err != nil {
			return err
		}
		return p.root.Symlink(to, p.old(name))
	}
	data, err := readPlain(p.root, p.at(name), info.Size())
	if err != nil {
		return err
	}
	return writeNew(p.root, p.old(name), data, info)
}

// step is one thing done by a move: a folder made, a file put in, a file of an
// earlier run taken out.
type step struct {
	kind stepKind
	name string
}

type stepKind int

const (
	stepMade stepKind = iota
	stepPut
	stepTaken
)

// moveAll does the steps and reports how far it came.
func (p *place) moveAll(names, drop []string) (done []step, err error) {
	for _, dir := range folders(names) {
		err := p.root.Mkdir(p.at(dir), 0o755)
		if err == nil {
			done = append(done, step{stepMade, dir})
		} else if !errors.Is(err, fs.ErrExist) {
			return done, err
		}
	}
	for _, name := range names {
		if name == manifestName {
			if done, err = p.dropAll(done, drop); err != nil {
				return done, err
			}
		}
		if err := p.root.Rename(p.tree(name), p.at(name)); err != nil {
			return done, err
		}
		done = append(done, step{stepPut, name})
	}
	// Folders that the drops have left empty; the others won't go.
	dirs := folders(drop)
	slices.Reverse(dirs)
	for _, dir := range dirs {
		p.root.Remove(p.at(dir))
	}
	return done, nil
}

// dropAll takes files no longer produced out of the target.
func (p *place) dropAll(done []step, drop []string) ([]step, error) {
	for _, name := range drop {
		if err := p.root.Rename(p.at(name), p.old(name)); err != nil {
			return done, err
		}
		done = append(done, step{stepTaken, name})
	}
	return done, nil
}

// moveBack undoes steps, the last first. Each step back leaves the name either
// moved or not yet moved, so that a kill in here is like a kill in moveAll.
func (p *place) moveBack(done []step) error {
	for _, s := range slices.Backward(done) {
		var err error
		switch s.kind {
		case stepMade:
			err = p.root.Remove(p.at(s.name))
		case stepTaken:
			err = p.root.Rename(p.old(s.name), p.at(s.name))
		case stepPut:
			err = p.putBack(s.name)
		}
		if err != nil {
			return err
		}
	}
	return p.root.Remove(p.mark(markMoving))
}

func (p *place) putBack(name string) error {
	if err := p.root.Rename(p.at(name), p.tree(name)); err != nil {
		return err
	}
	old, err := p.there(p.old(name))
	if old == nil || err != nil { // nil: it was new
		return err
	}
	return p.root.Rename(p.old(name), p.at(name))
}

// finishMove goes on with a move that was killed. The staged manifest says
// what belongs to it.
func (p *place) finishMove() error {
	data, err := readPlain(p.root, p.tree(manifestName), manifestMax)
	if err != nil {
		return err
	}
	next, err := readManifest(data)
	if err != nil {
		return err
	}
	last, _, err := p.manifest()
	if err != nil {
		return err
	}
	var names, drop []string
	for _, e := range next.Files {
		staged, err := p.there(p.tree(e.Name))
		if err != nil {
			return err
		}
		if staged != nil {
			names = append(names, e.Name)
		}
	}
	for _, e := range last.Files {
		if slices.ContainsFunc(next.Files, func(n entry) bool { return n.Name == e.Name }) {
			continue
		}
		same, err := p.unchanged(e)
		if err != nil {
			return err
		}
		if same {
			drop = append(drop, e.Name)
		}
	}
	_, err = p.moveAll(append(names, manifestName), drop)
	return err
}
