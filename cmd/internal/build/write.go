package build

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path"
	"slices"
)

// File is one output, whole in memory. Name is a slash path inside the target
// folder; it comes from the registry of outputs, never from a plan.
type File struct {
	Name  string
	Bytes []byte
}

// Target is the folder that a set of files is written to.
type Target struct {
	// Dir is the folder as the user named it. It is absent, empty, or holds
	// our manifest; everything else is refused. A link to a folder is
	// followed. Of its missing parents at most one is made: that is what
	// DIR/NAME needs, and it still catches a mistyped path.
	Dir string
	// Keep lists files that must never be replaced or removed: the plan and
	// what it uses. They are compared by identity, so that a hard link or
	// another spelling on a file system that folds case is caught too.
	Keep []string
	// PlanSum is the SHA-256 of the plan in hex, Version that of fixslate.
	// Both go into the manifest.
	PlanSum, Version string
	// Set names whose files these are when several commands share a folder
	// ("" for build, "match"): writing one set leaves the others alone.
	Set string
}

// Refusal is an error of the request, not of the machine: the path can't be
// written as asked. Instead says what the user can do.
type Refusal struct {
	Path, Reason, Instead string
}

// Error joins path, reason and advice in one line.
func (r *Refusal) Error() string {
	text := r.Path + ": " + r.Reason
	if r.Instead != "" {
		text += "; " + r.Instead
	}
	return text
}

// Write makes t.Dir hold exactly files and their manifest, and with them what
// the user put there. Either all of it happens or nothing does.
//
// The problem: a folder of some thirty files has no single moment at which it
// changes, and the user may have put own files into it, have a shell standing
// in it, or start a second build.
//
// The method: a lock beside the target lets one writer in at a time. All
// files are written to a stage beside the target and synced. Then one of
//
//   - swap (Linux): the stage is completed with hard links to the user's
//     files and exchanged with the target in one call, renameat2(2) with
//     RENAME_EXCHANGE. A kill at any moment leaves the whole folder old or new.
//   - move (everywhere else, and where a swap would disturb: folders made by
//     the user, a process standing in the target, a mount point, an owner or
//     attributes we can't copy): file by file by rename(2), manifest last. A
//     failure is rolled back; after a kill each file is old or new, and the
//     next run completes the set before it does anything else.
//
// Temporaries stand beside the target under fixed names, so that nothing has
// to be searched for: ".NAME.fixslate-new" and ".NAME.fixslate-lock". Only
// when there is no place beside (a mount point, a parent that can't be
// written) they stand in the target, as ".fixslate-new" and ".fixslate-lock".
// Both are gone after every run but a killed one; a leftover lock file locks
// nothing, a leftover stage is cleared by the next run.
//
// A file that stands there already as it would be written stays as it is, its
// time too; where all do, nothing is written. New files get 0644 and folders 0755
// under the umask; an output that is replaced keeps its permissions. Hand-made
// changes to an output are overwritten, except that a file no longer produced
// stays if it was changed.
//
// A *Refusal says that the target can't be used; any other error that the
// machine failed or ctx ended. After an error the target is as before, but for
// a move that could be neither finished nor undone, which says so.
//
// Oddities: two builds are kept apart by flock(2), which some network file
// systems ignore; whoever reads the folder during a move can see both sets;
// a folder opened by a program before a swap is the old one, now empty.
func Write(ctx context.Context, t Target, files []File) error {
	return write(ctx, t, writing{files: files})
}

// WriteOnly is Write for a part of the outputs: it replaces those files and
// leaves the manifest's others as they are.
func WriteOnly(ctx context.Context, t Target, files []File) error {
	return write(ctx, t, writing{files: files, only: true})
}

type writing struct {
	files []File
	only  bool
}

func write(ctx context.Context, t Target, r writing) error {
	if err := checkNames(r.files); err != nil {
		return err
	}
	p, err := openPlace(t.Dir)
	if err != nil {
		return err
	}
	defer p.close()
	release, err := lock(ctx, p.root, p.lock)
	if err != nil {
		return p.failed("lock it", err)
	}
	defer release()
	if err := p.recover(); err != nil {
		return p.failed("clear what a stopped run left beside it", err)
	}
	c, err := p.change(t, r)
	if err != nil || len(c.files) == 0 {
		return err
	}
	if err := p.commit(ctx, c); err != nil {
		return p.failed("write it", err)
	}
	return nil
}

// commit stages the change and brings it into the target, one way or another.
func (p *place) commit(ctx context.Context, c *change) error {
	defer p.discard()
	if err := p.fill(ctx, c); err != nil {
		return err
	}
	// From here on nothing is cancelled: it is a matter of renames.
	if !c.held.exists {
		if err := p.root.Rename(p.tree("."), p.dir); err != nil {
			return err
		}
		p.keepParent()
		syncFolder(p.root, ".") // the files are synced; a late error changes nothing
		return nil
	}
	if p.swap(c) {
		return nil
	}
	return p.move(c)
}

// change is one run worked out: what is written, what goes, what stays.
type change struct {
	held  *holding
	files []File   // to write, the manifest last; none where all is as it should be
	drop  []string // outputs of an earlier run, no longer produced
	carry []string // everything else in the target that is not a folder
	dirs  []string // folders of the new target, parents first
}

func (p *place) change(t Target, r writing) (*change, error) {
	names := namesOf(r.files)
	held, err := p.survey(names)
	if err != nil {
		return nil, err
	}
	c := &change{held: held, carry: held.users}
	next := newManifest(t, r.files)
	for _, e := range held.manifest.Files {
		if _, there := held.outputs[e.Name]; !there || slices.Contains(names, e.Name) {
			continue
		}
		if r.only || e.Set != t.Set {
			next.keep(e, held.manifest)
			c.carry = append(c.carry, e.Name)
			continue
		}
		same, err := p.unchanged(e)
		switch {
		case err != nil:
			return nil, p.failed("read "+e.Name, err)
		case same:
			c.drop = append(c.drop, e.Name)
		default:
			c.carry = append(c.carry, e.Name)
		}
	}
	c.files = append(slices.Clone(r.files), File{Name: manifestName, Bytes: next.bytes()})
	c.dirs = folders(append(names, c.carry...))
	if err := p.checkKept(t.Keep, c); err != nil {
		return nil, err
	}
	p.spare(c)
	slices.Sort(c.carry)
	return c, nil
}

func namesOf(files []File) []string {
	var names []string
	for _, f := range files {
		names = append(names, f.Name)
	}
	return names
}

// spare leaves the files alone that stand in the target as they would be
// written. The manifest is written with whatever else is: a move that was killed
// goes on from the staged one.
func (p *place) spare(c *change) {
	outputs := c.files[:len(c.files)-1]
	var stays []string
	var write []File
	for _, f := range outputs {
		if p.holds(f, c.held) {
			stays = append(stays, f.Name)
		} else {
			write = append(write, f)
		}
	}
	manifest := c.files[len(outputs)]
	if len(write) == 0 && p.holds(manifest, c.held) {
		c.files = nil
		return
	}
	c.files = append(write, manifest)
	c.carry = append(c.carry, stays...)
}

// holds tells whether the target has the file with just these contents.
func (p *place) holds(f File, held *holding) bool {
	info, there := held.outputs[f.Name]
	if !there || info.Size() != int64(len(f.Bytes)) {
		return false
	}
	data, err := readPlain(p.root, p.at(f.Name), info.Size())
	return err == nil && bytes.Equal(data, f.Bytes)
}

// checkKept refuses a change that would replace or remove a kept file.
func (p *place) checkKept(keep []string, c *change) error {
	for _, k := range keep {
		for _, stat := range []func(string) (fs.FileInfo, error){os.Stat, os.Lstat} {
			info, err := stat(k)
			if err != nil {
				continue // a file that is not there can't be lost
			}
			for _, f := range c.files {
				if c.held.is(f.Name, info) {
					return &Refusal{p.show(f.Name), "is " + k + " itself, which is read for this build", "choose another folder with -o"}
				}
			}
			for _, name := range c.drop {
				if c.held.is(name, info) {
					return &Refusal{p.show(name), "is " + k + " itself, which is read for this build", "move it out of the output folder"}
				}
			}
		}
	}
	return nil
}

// checkNames holds the registry to its promise: local slash paths, no two
// alike on a file system that folds case, none that is also a folder.
func checkNames(files []File) error {
	seen := map[string]string{fold(manifestName): manifestName}
	for _, f := range files {
		if !validName(f.Name) {
			return fmt.Errorf("output %q is not a plain slash path", f.Name)
		}
		if other, ok := seen[fold(f.Name)]; ok {
			return fmt.Errorf("outputs %q and %q have one name", f.Name, other)
		}
		seen[fold(f.Name)] = f.Name
	}
	for _, f := range files {
		for _, dir := range folders([]string{f.Name}) {
			if other, ok := seen[fold(dir)]; ok {
				return fmt.Errorf("output %q is also the folder of %q", other, f.Name)
			}
		}
	}
	return nil
}

// folders lists the folders above names, each once, parents first.
func folders(names []string) []string {
	set := map[string]bool{}
	for _, name := range names {
		for dir := path.Dir(name); dir != "."; dir = path.Dir(dir) {
			set[dir] = true
		}
	}
	return slices.Sorted(maps.Keys(set))
}

// failed puts a machine's error into words, without the names of temporaries.
func (p *place) failed(what string, err error) error {
	return inWords(p.shown, what, err)
}

func inWords(shown, what string, err error) error {
	var refusal *Refusal
	switch {
	case errors.As(err, &refusal):
		return err
	case errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return fmt.Errorf("%s: stopped, nothing was changed: %w", shown, err)
	}
	var stuck *halfway
	if errors.As(err, &stuck) {
		return err
	}
	return fmt.Errorf("%s: cannot %s, nothing was changed: %w", shown, what, cause(err))
}

// cause strips the paths from an error of package os: they name temporaries.
func cause(err error) error {
	var onPath *fs.PathError
	var onLink *os.LinkError
	switch {
	case errors.As(err, &onPath):
		return onPath.Err
	case errors.As(err, &onLink):
		return onLink.Err
	}
	return err
}
