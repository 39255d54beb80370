package build

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"strings"
)

// carryMax is how many files a swap links into the new folder; a target with
// more of the user's is moved into file by file, which does not touch them.
const carryMax = 500

// swap completes the staged tree with what stays and exchanges it with the
// target. It reports false, with the target untouched, where that can't be
// done without disturbing something; the tree can still be moved then.
func (p *place) swap(c *change) bool {
	if p.inside() || len(c.held.folders) > 0 || len(c.carry) > carryMax || occupied(p.real) {
		return false
	}
	for _, name := range c.carry {
		if p.root.Link(p.at(name), p.tree(name)) != nil {
			return false
		}
	}
	for _, dir := range append([]string{"."}, c.dirs...) {
		if !p.dress(dir) {
			return false
		}
	}
	if p.root.Link(p.tree(manifestName), p.mark(markSwapping)) != nil {
		return false
	}
	if exchange(p.root, p.tree("."), p.dir) != nil {
		// Nothing has happened, but a move must not be taken for a swap.
		p.root.Remove(p.mark(markSwapping))
		return false
	}
	// The new folder stands. What remains is tidying up; if it fails, the
	// next run does it, so it is no failure of this one.
	if syncFolder(p.root, ".") == nil {
		if err := p.retire(); err == nil {
			p.clear()
		}
	}
	return true
}

// dress gives a staged folder the looks of the one it replaces, if there is
// one; false where that can't be done.
func (p *place) dress(dir string) bool {
	was, err := p.there(p.at(dir))
	if was == nil || err != nil {
		return err == nil
	}
	const bits = fs.ModePerm | fs.ModeSetgid | fs.ModeSetuid | fs.ModeSticky
	now, err := p.root.Lstat(p.tree(dir))
	if err != nil {
		return false
	}
	if now.Mode()&bits != was.Mode()&bits && p.root.Chmod(p.tree(dir), was.Mode()&bits) != nil {
		return false
	}
	return sameOwner(was, now) && plainAttributes(path.Join(p.real, dir))
}

// retire empties the old target, which stands in the stage after a swap. Its
// outputs go. Of the user's files the target has links, except for what was
// put there between the linking and the exchange: that is brought over.
func (p *place) retire() error {
	if tree, err := p.there(p.tree(".")); tree == nil || err != nil {
		return err
	}
	var ours []string
	data, err := readPlain(p.root, p.tree(manifestName), manifestMax)
	if err == nil {
		m, err := readManifest(data)
		if err != nil {
			return err
		}
		for _, e := range m.Files {
			ours = append(ours, e.Name)
		}
	} else if !errors.Is(err, fs.ErrNotExist) { // there is none where the old target was empty
		return err
	}
	r := retiring{p, spellings(ours), spellings(folders(ours))}
	if err := r.folder("."); err != nil {
		return err
	}
	// The manifest last: until then it says which files are ours.
	if err := p.root.Remove(p.tree(manifestName)); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return p.root.Remove(p.tree("."))
}

// retiring is one walk through an old target; the maps are as in look.
type retiring struct {
	*place
	outputs, dirs map[string]string
}

func (r *retiring) folder(dir string) error {
	entries, err := readFolder(r.root, r.tree(dir))
	if err != nil {
		return err
	}
	for _, e := range entries {
		name := path.Join(dir, e.Name())
		info, err := e.Info()
		if err != nil {
			return err
		}
		there, err := r.there(r.at(name))
		if err != nil {
			return err
		}
		ours := func(names map[string]string) bool { return r.spelled(r.tree, names, name, info) != "" }
		switch {
		case name == manifestName:
		case info.IsDir() && (ours(r.dirs) || there != nil):
			if err = r.folder(name); err == nil {
				err = r.root.Remove(r.tree(name))
			}
		case ours(r.outputs):
			err = r.root.Remove(r.tree(name))
		default:
			err = r.bringOver(name)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// bringOver moves something of the user's from the old target to the new one.
// Where the new one has it already nothing is to do; where the two differ both
// stay, the one from the old target under a name of its own.
func (p *place) bringOver(name string) error {
	mine, err := p.root.Lstat(p.tree(name))
	if err != nil {
		return err
	}
	free := name
	for n := 1; ; n++ {
		there, err := p.there(p.at(free))
		if err != nil {
			return err
		}
		if there == nil {
			break
		}
		if os.SameFile(mine, there) {
			return p.root.Remove(p.tree(name))
		}
		ext := path.Ext(name)
		free = fmt.Sprintf("%s.kept-%d%s", strings.TrimSuffix(name, ext), n, ext)
	}
	if err := p.root.MkdirAll(p.at(path.Dir(free)), 0o755); err != nil {
		return err
	}
	return p.root.Rename(p.tree(name), p.at(free))
}
